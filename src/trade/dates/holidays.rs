//! The public holidays of a year in a region, worked out from the table by one small engine that knows no country.

use super::easter::easter;
use super::holiday_table::{ONE_OFFS, PROCLAIMED_TO, RULES, Rule, Substitute};
use crate::trade::arrange::in_order;
use chrono::{Datelike, NaiveDate, TimeDelta, Weekday};

/// The last day that is planned for.
pub const LAST_DAY: NaiveDate = match NaiveDate::from_ymd_opt(2199, 12, 31) {
    Some(day) => day,
    None => NaiveDate::MAX,
};

/// Where the workshop's public holidays are those of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Region {
    EnglandAndWales,
    Scotland,
    NorthernIreland,
}

impl Region {
    pub const ALL: [Region; 3] = [Region::EnglandAndWales, Region::Scotland, Region::NorthernIreland];
}

/// Which holiday a day is; what people call it is in `words`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum HolidayName {
    NewYear,
    SecondJanuary,
    StPatrick,
    GoodFriday,
    EasterMonday,
    EarlyMay,
    Spring,
    Boyne,
    Summer,
    StAndrew,
    Christmas,
    Boxing,
    Millennium,
    GoldenJubilee,
    RoyalWedding,
    DiamondJubilee,
    PlatinumJubilee,
    StateFuneral,
    Coronation,
    WorldCup,
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
}

/// The holidays of a region in a year, in order of their days.
///
/// To a jeweller: the days on which couriers, assay offices and most benches stand still.
///
/// How: the one-off days, then the rules' own days (less those that moved), then the substitutes for what fell on a
/// weekend, earliest first, each on the next weekday still free. Neighbouring years are worked out as well, so that
/// a substitute may cross the year's end. Range: complete from 1995; a year that cannot be written has none.
/// Source: each row of the table names its own; GOV.UK's lists of 2012 to 2028 are in the tests.
///
/// ```
/// use bandwright::trade::dates::holidays::{HolidayName, Region, in_year};
/// let day = chrono::NaiveDate::from_ymd_opt(2027, 12, 28); // Boxing Day 2027 is a Sunday, Christmas takes the Monday
/// assert!(in_year(Region::Scotland, 2027).iter().any(|h| Some(h.day) == day && h.name == HolidayName::Boxing));
/// ```
pub fn in_year(region: Region, year: i32) -> Vec<Holiday> {
    let years = year.saturating_sub(1)..=year.saturating_add(1);
    let mut found: Vec<Holiday> = ONE_OFFS
        .iter()
        .filter(|o| o.places.contains(&region) && years.contains(&o.day.year()))
        .map(|o| {
            let kind = if o.replaces.is_some() { HolidayKind::Moved } else { HolidayKind::Extra };
            Holiday { day: o.day, name: o.name, kind }
        })
        .collect();
    let mut to_substitute = Vec::new();
    for row in RULES.iter().filter(|r| r.places.contains(&region)) {
        for year in years.clone().filter(|y| (row.years.0..=row.years.1).contains(y)) {
            let Some(day) = day_in(row.rule, year).filter(|day| !is_replaced(region, *day)) else { continue };
            let given_again = row.substitute == Substitute::NextFreeWeekday && is_weekend(day);
            let kind = if given_again { HolidayKind::OnWeekend } else { HolidayKind::Itself };
            let holiday = Holiday { day, name: row.name, kind };
            found.push(holiday);
            if given_again {
                to_substitute.push(holiday);
            }
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

/// The days that lists of bank holidays name, from a day on and for as long as three years, in order.
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

/// Whether the holidays of a year are still a projection: worked out by rule, not yet proclaimed.
pub fn is_projection(region: Region, year: i32) -> bool {
    proclaimed_to(region).is_none_or(|last| year > last)
}

/// The last year whose holidays are settled.
pub fn proclaimed_to(region: Region) -> Option<i32> {
    PROCLAIMED_TO.iter().find(|(place, _)| *place == region).map(|(_, last)| *last)
}

/// The day a rule gives in a year, if it gives one.
fn day_in(rule: Rule, year: i32) -> Option<NaiveDate> {
    match rule {
        Rule::Fixed { day, month } => NaiveDate::from_ymd_opt(year, month, day),
        Rule::Nth { n, weekday, month } => NaiveDate::from_weekday_of_month_opt(year, month, weekday, n),
        Rule::Last { weekday, month } => [5, 4].iter().find_map(|n| day_in(Rule::Nth { n: *n, weekday, month }, year)),
        Rule::Easter { days } => easter(year)?.checked_add_signed(TimeDelta::try_days(days)?),
    }
}

fn is_replaced(region: Region, day: NaiveDate) -> bool {
    ONE_OFFS.iter().any(|o| o.replaces == Some(day) && o.places.contains(&region))
}

/// Saturday or Sunday, as the law means it; a workshop's own free days are in `closed`.
fn is_weekend(day: NaiveDate) -> bool {
    matches!(day.weekday(), Weekday::Sat | Weekday::Sun)
}
