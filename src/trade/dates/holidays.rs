//! The public holidays of a year in a region, worked out from the table by one small engine that knows no country.
//!
//! The table is `holidays.txt`, one line a rule, each with its source. While the app is built it becomes [`Region`],
//! [`HolidayName`] and two arrays: another country is more lines there, and nothing here.
//!
//! A holiday on a Saturday stays beside its substitute: a workshop that works Tuesday to Saturday is shut on both.
//! Bank holidays are proclaimed year by year; what follows from the rules beyond the last proclaimed year is a
//! projection, and is said to be one.

use super::easter::easter;
use crate::trade::arrange::in_order;
use chrono::{Datelike, NaiveDate, TimeDelta, Weekday};

include!(concat!(env!("OUT_DIR"), "/holidays.rs"));

/// The last day that is planned for.
pub const LAST_DAY: NaiveDate = date(2199, 12, 31);

/// How a holiday finds its day in a year.
#[derive(Clone, Copy)]
enum Rule {
    /// The same day of the same month.
    Fixed { day: u32, month: u32 },
    /// The first such weekday from that day on: the third Monday in May is the first from the 15th on.
    From { weekday: Weekday, day: u32, month: u32 },
    /// So many days after Easter Sunday, or before it.
    Easter(i16),
}

/// What happens when a holiday falls on a Saturday or Sunday, or on another day that does not suit.
#[derive(Clone, Copy)]
enum OnWeekend {
    /// Nothing: the day is not given again.
    Stays,
    /// Given again on the next day from Monday to Friday that is not a holiday already; earlier holidays choose first.
    NextFreeWeekday,
    /// So many days later, by the weekday it falls on, Monday first; given again there, or moved there.
    Shift { by: [i8; 7], again: bool },
}

/// One holiday that comes every year.
struct Row {
    places: u64,
    name: HolidayName,
    rule: Rule,
    from: i32,
    to: i32,
    /// Every year, or every fifth.
    every: i32,
    weekend: OnWeekend,
    by_choice: bool,
}

/// One day proclaimed for one year, in place of another or on top.
struct OneOff {
    places: u64,
    name: HolidayName,
    day: NaiveDate,
    /// The day that the rule gave and that is an ordinary day instead.
    replaces: Option<NaiveDate>,
}

impl Row {
    fn applies(&self, year: i32) -> bool {
        (self.from..=self.to).contains(&year) && (year - self.from) % self.every == 0
    }

    /// Whether its day of one year may have a say in another: in the same one always, in a neighbouring one where it is
    /// given again across the year's end. No rule moves a day by two months.
    fn reaches(&self, one: i32, other: i32) -> bool {
        let month = match self.rule {
            Rule::Fixed { month, .. } | Rule::From { month, .. } => month,
            Rule::Easter(_) => 4,
        };
        one == other || if one < other { month >= 11 } else { month <= 2 }
    }
}

/// A date written in the table; one that does not exist would not compile.
const fn date(year: i32, month: u32, day: u32) -> NaiveDate {
    match NaiveDate::from_ymd_opt(year, month, day) {
        Some(date) => date,
        None => panic!(),
    }
}

const fn has(places: u64, region: Region) -> bool {
    places >> region as u32 & 1 == 1
}

/// How a holiday came to stand on its day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum HolidayKind {
    /// By its rule.
    Itself,
    /// By its rule, on a Saturday or Sunday, and given again on a substitute day. Lists of bank holidays leave it
    /// out; a workshop that opens on Saturdays is still shut on Christmas Day.
    OnWeekend,
    /// In place of a Saturday or Sunday.
    Substitute,
    /// Moved for one year.
    Moved,
    /// Given for one year only.
    Extra,
}

/// One holiday on one day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Holiday {
    pub day: NaiveDate,
    pub name: HolidayName,
    pub kind: HolidayKind,
    /// Counted only where somebody has switched it on: it depends on the employer, or on the parish.
    pub by_choice: bool,
}

/// The holidays of a region in a year, in order of their days.
///
/// To a jeweller: the days on which couriers, assay offices and most benches stand still.
///
/// How: the one-off days, then the rules' own days (less those that moved), then the substitutes for what fell on a
/// weekend, earliest first, each on the next weekday still free. What lies near the ends of the neighbouring years is
/// worked out as well, so that a substitute may cross the year's end. Range: the United Kingdom from 1995, the others from 2012; a year that cannot be written has none.
/// Source: each line of the table names its own; GOV.UK's lists of 2012 to 2028 are in the tests.
///
/// ```
/// use bandwright::trade::dates::holidays::{HolidayName, Region, in_year};
/// let day = chrono::NaiveDate::from_ymd_opt(2027, 12, 28); // Boxing Day 2027 is a Sunday, Christmas takes the Monday
/// assert!(in_year(Region::Scotland, 2027).iter().any(|h| Some(h.day) == day && h.name == HolidayName::Boxing));
/// ```
pub fn in_year(region: Region, year: i32) -> Vec<Holiday> {
    let years = year.saturating_sub(1)..=year.saturating_add(1);
    let mut found = Vec::new();
    for one in ONE_OFFS.iter().filter(|one| has(one.places, region) && years.contains(&one.day.year())) {
        let kind = if one.replaces.is_some() { HolidayKind::Moved } else { HolidayKind::Extra };
        found.push(Holiday { day: one.day, name: one.name, kind, by_choice: false });
    }
    let mut to_substitute = Vec::new();
    for row in RULES.iter().filter(|row| has(row.places, region)) {
        for near in years.clone().filter(|near| row.applies(*near) && row.reaches(*near, year)) {
            let Some(day) = day_in(row.rule, near).filter(|day| !is_replaced(region, *day)) else { continue };
            let mut holiday = Holiday { day, name: row.name, kind: HolidayKind::Itself, by_choice: row.by_choice };
            match row.weekend {
                OnWeekend::NextFreeWeekday if is_weekend(day) => {
                    holiday.kind = HolidayKind::OnWeekend;
                    to_substitute.push(holiday);
                }
                OnWeekend::Shift { by, again } => {
                    let shift = by[day.weekday().num_days_from_monday() as usize];
                    let Some(shifted) = shifted(day, shift.into()) else { continue };
                    if again && shift != 0 {
                        found.push(Holiday { day: shifted, kind: HolidayKind::Substitute, ..holiday });
                        holiday.kind = HolidayKind::OnWeekend;
                    } else {
                        holiday.day = shifted;
                    }
                }
                OnWeekend::NextFreeWeekday | OnWeekend::Stays => {}
            }
            found.push(holiday);
        }
    }
    for holiday in in_order(to_substitute, |holiday| *holiday) {
        let free = holiday.day.iter_days().find(|day| !is_weekend(*day) && found.iter().all(|h| h.day != *day));
        if let Some(day) = free {
            found.push(Holiday { day, kind: HolidayKind::Substitute, ..holiday });
        }
    }
    found.retain(|h| h.day.year() == year);
    in_order(found, |holiday| *holiday)
}

/// The days that lists of public holidays name, from a day on and for as long as three years, in order.
///
/// ```
/// use bandwright::trade::dates::holidays::{HolidayName, Region, upcoming};
/// let day = |m, d| chrono::NaiveDate::from_ymd_opt(2026, m, d).unwrap();
/// let next = upcoming(Region::EnglandAndWales, day(11, 25)).next().unwrap();
/// assert_eq!((next.day, next.name), (day(12, 25), HolidayName::Christmas));
/// ```
pub fn upcoming(region: Region, from: NaiveDate) -> impl Iterator<Item = Holiday> {
    let years = from.year()..=from.year().saturating_add(2);
    let listed = move |holiday: &Holiday| holiday.day >= from && holiday.kind != HolidayKind::OnWeekend;
    years.flat_map(move |year| in_year(region, year)).filter(listed)
}

/// Whether the holidays of a year are still a projection: worked out by rule, not yet settled.
pub fn is_projection(region: Region, year: i32) -> bool {
    year > settled_to(region).1
}

/// Whether a region's holidays are proclaimed year by year, and the last year whose holidays are settled.
pub fn settled_to(region: Region) -> (bool, i32) {
    SETTLED[region as usize]
}

/// The day a rule gives in a year, if it gives one.
fn day_in(rule: Rule, year: i32) -> Option<NaiveDate> {
    match rule {
        Rule::Fixed { day, month } => NaiveDate::from_ymd_opt(year, month, day),
        Rule::From { weekday, day, month } => {
            let first = NaiveDate::from_ymd_opt(year, month, day)?;
            shifted(first, i64::from(weekday.days_since(first.weekday())))
        }
        Rule::Easter(days) => shifted(easter(year)?, days.into()),
    }
}

fn shifted(day: NaiveDate, by: i64) -> Option<NaiveDate> {
    day.checked_add_signed(TimeDelta::try_days(by)?)
}

fn is_replaced(region: Region, day: NaiveDate) -> bool {
    ONE_OFFS.iter().any(|one| one.replaces == Some(day) && has(one.places, region))
}

/// Saturday or Sunday, as the law means it; a workshop's own free days are in `closed`.
fn is_weekend(day: NaiveDate) -> bool {
    matches!(day.weekday(), Weekday::Sat | Weekday::Sun)
}
