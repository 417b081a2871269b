//! What people type as a day, a wedding date or a time -> the typed value, or why not. Numbers of days are whole
//! numbers like others: [`crate::trade::entry::read_whole`].
//!
//! Dates are read as they are written in the UK: the day first, then the month. A date written the other way round
//! is never guessed at: what cannot be read for certain is an error of its own.
//!
//! Why a date is typed and not picked: a few keys say "22 May 2027", "May 2027", "2027" or "not yet". A date
//! picker takes one day only, and many taps.

mod parts;
mod time;

pub use time::{TimeEntryError, read_time};

use super::holidays::LAST_DAY;
use super::wedding::Wedding;
use chrono::{Datelike, Months, NaiveDate, TimeDelta, Weekday};
use parts::{Written, written};

/// The furthest ahead that a date is accepted: twenty years.
pub const YEARS_AHEAD: u16 = 20;

/// Why a text is no date. A month is its number, 1 to 12, unless it says otherwise.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DateEntryError {
    Empty,
    TooLong,
    NotADate,
    /// Any number but 1 to 12 where the month should be.
    NoSuchMonth {
        month: u32,
    },
    /// The month has no such day; without a year, not in any year.
    NoSuchDay {
        day: u32,
        month: u32,
        year: Option<i32>,
    },
    /// The day falls on another weekday than the one typed.
    OtherWeekday {
        day: NaiveDate,
        typed: Weekday,
    },
    /// "May 27" may be the 27th of May or May 2027.
    DayOrYear {
        month: u32,
        number: u32,
    },
    /// "Thursday" on a Thursday is today or the next; "next Thursday" on a Monday is that of this week or of the next.
    EitherDay {
        first: NaiveDate,
        second: NaiveDate,
    },
    /// A month or a year where a day is needed.
    DayMissing,
    /// All of it lies in the past, and it may not.
    Past {
        wedding: Wedding,
    },
    TooFar {
        latest: NaiveDate,
    },
    TooLongAgo {
        earliest: NaiveDate,
    },
}

/// Reads a day, past or to come: "22 May 2027", "22/5/27", "22.5.2027", "2027-05-22", "Sat 22 May", "tomorrow",
/// "Thursday".
///
/// The day comes first, then the month. A year of two figures is one of this century; without a year it is the next
/// such day, today included. A weekday alone is the next such day after today. Where two days may be meant, both are
/// named: [`DateEntryError::EitherDay`].
///
/// ```
/// use bandwright::trade::dates::entry::read_day;
/// let date = |y, m, d| chrono::NaiveDate::from_ymd_opt(y, m, d).unwrap();
/// assert_eq!(read_day("22/5/27", date(2026, 11, 25)), Ok(date(2027, 5, 22)));
/// ```
pub fn read_day(text: &str, today: NaiveDate) -> Result<NaiveDate, DateEntryError> {
    read_day_from(text, today, today)
}

/// The same, where a day without a year is the next such day from `from` on: the last day of a closure.
pub fn read_day_from(text: &str, from: NaiveDate, today: NaiveDate) -> Result<NaiveDate, DateEntryError> {
    let day = match written(text)? {
        Written::Day { day, month, year, weekday } => day_of(day, month, year, weekday, from)?,
        Written::FromToday(days) => from_today(today, days)?,
        Written::Weekday(weekday, next) => next_such(weekday, next, today)?,
        Written::Month { .. } | Written::Year(_) => return Err(DateEntryError::DayMissing),
        Written::NotYet => return Err(DateEntryError::NotADate),
    };
    within(day, from)
}

/// Reads a wedding date: a day as [`read_day`] does, a month ("May 2027", "5/2027"), a year ("2027"), or that it is
/// not known ("not yet", "don't know"). A wedding in the past is refused; one today is not.
pub fn read_wedding(text: &str, today: NaiveDate) -> Result<Wedding, DateEntryError> {
    let wedding = match written(text)? {
        Written::Day { day, month, year, weekday } => Wedding::Day(day_of(day, month, year, weekday, today)?),
        Written::FromToday(days) => Wedding::Day(from_today(today, days)?),
        Written::Weekday(weekday, next) => Wedding::Day(next_such(weekday, next, today)?),
        Written::Month { month, year } => {
            let this_year = today.year() + i32::from(month < today.month());
            Wedding::Month { year: year.unwrap_or(this_year), month: real_month(month)? }
        }
        Written::Year(year) => Wedding::Year(year),
        Written::NotYet => Wedding::NotYet,
    };
    if wedding.is_past(today) {
        return Err(DateEntryError::Past { wedding });
    }
    if let Some(earliest) = wedding.earliest() {
        within(earliest.max(today), today)?;
    }
    Ok(wedding)
}

/// A day that exists; without a year, the next one from today.
fn day_of(
    day: u32,
    month: u32,
    year: Option<i32>,
    weekday: Option<Weekday>,
    today: NaiveDate,
) -> Result<NaiveDate, DateEntryError> {
    real_month(month)?;
    let found = match year {
        Some(year) => NaiveDate::from_ymd_opt(year, month, day),
        // A 29 February may be eight years off, across 2100.
        None => (0..=8)
            .filter_map(|ahead| NaiveDate::from_ymd_opt(today.year() + ahead, month, day))
            .find(|day| *day >= today),
    };
    let found = found.ok_or(DateEntryError::NoSuchDay { day, month, year })?;
    match weekday {
        Some(typed) if typed != found.weekday() => Err(DateEntryError::OtherWeekday { day: found, typed }),
        _ => Ok(found),
    }
}

fn from_today(today: NaiveDate, days: i64) -> Result<NaiveDate, DateEntryError> {
    today.checked_add_signed(TimeDelta::days(days)).ok_or(DateEntryError::TooFar { latest: LAST_DAY })
}

/// The next such weekday after today. On that weekday itself today may be meant as well; and with "next" before it,
/// that of next week, while the one of this week is still to come.
fn next_such(weekday: Weekday, next: bool, today: NaiveDate) -> Result<NaiveDate, DateEntryError> {
    let ahead = weekday.days_since(today.weekday());
    let first = from_today(today, i64::from(ahead))?;
    let a_week_on = from_today(first, 7)?;
    let is_this_week = today.weekday().num_days_from_monday() < weekday.num_days_from_monday();
    match (ahead, next) {
        (0, true) => Ok(a_week_on),
        (0, false) => Err(DateEntryError::EitherDay { first, second: a_week_on }),
        (_, true) if is_this_week => Err(DateEntryError::EitherDay { first, second: a_week_on }),
        _ => Ok(first),
    }
}

fn real_month(month: u32) -> Result<u32, DateEntryError> {
    if (1..=12).contains(&month) { Ok(month) } else { Err(DateEntryError::NoSuchMonth { month }) }
}

fn within(day: NaiveDate, today: NaiveDate) -> Result<NaiveDate, DateEntryError> {
    let earliest = NaiveDate::from_ymd_opt(1900, 1, 1).unwrap_or(NaiveDate::MIN);
    let ahead = today.checked_add_months(Months::new(u32::from(YEARS_AHEAD) * 12));
    let latest = ahead.unwrap_or(LAST_DAY).min(LAST_DAY);
    if day < earliest {
        Err(DateEntryError::TooLongAgo { earliest })
    } else if day > latest {
        Err(DateEntryError::TooFar { latest })
    } else {
        Ok(day)
    }
}
