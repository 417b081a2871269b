//! The table of public holidays: one row a rule, one row an exception, each with its source. No branches: another
//! country is more rows, and at most another [`Rule`] or [`Substitute`].
//!
//! Complete from 1995 on: holidays that ended earlier, and exceptions before then, are not listed. Which law gives a
//! day, and from which year, is from memory; the days themselves are tested against GOV.UK's lists.

use super::holidays::{HolidayName, Region};
use chrono::{NaiveDate, Weekday};

/// How a holiday finds its day in a year.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rule {
    /// The same day of the same month.
    Fixed { day: u32, month: u32 },
    /// The first, second ... such weekday of a month.
    Nth { n: u8, weekday: Weekday, month: u32 },
    /// The last such weekday of a month.
    Last { weekday: Weekday, month: u32 },
    /// So many days after Easter Sunday, or before it.
    Easter { days: i64 },
}

/// What happens when a holiday falls on a Saturday or Sunday.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Substitute {
    /// Nothing: the day is not given again.
    No,
    /// The next day from Monday to Friday that is not a holiday already; earlier holidays choose first.
    NextFreeWeekday,
}

/// One holiday that comes every year.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Row {
    pub places: &'static [Region],
    pub name: HolidayName,
    pub rule: Rule,
    /// The first year and the last.
    pub years: (i32, i32),
    pub substitute: Substitute,
    pub source: &'static str,
}

/// One day proclaimed for one year, in place of another or on top.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OneOff {
    pub places: &'static [Region],
    pub name: HolidayName,
    pub day: NaiveDate,
    /// The day that the rule gave and that is an ordinary day instead.
    pub replaces: Option<NaiveDate>,
    pub source: &'static str,
}

/// The last year whose holidays are settled; later ones are projections.
pub const PROCLAIMED_TO: [(Region, i32); 3] =
    [(Region::EnglandAndWales, 2028), (Region::Scotland, 2028), (Region::NorthernIreland, 2028)];

use HolidayName as H;
use Rule::{Easter, Fixed, Last, Nth};
use Substitute::{NextFreeWeekday, No};
use Weekday::Mon;

const UK: &[Region] = &[Region::EnglandAndWales, Region::Scotland, Region::NorthernIreland];
const NOT_SCOTLAND: &[Region] = &[Region::EnglandAndWales, Region::NorthernIreland];
const SCOTLAND: &[Region] = &[Region::Scotland];
const NORTHERN_IRELAND: &[Region] = &[Region::NorthernIreland];

const ACT: &str = "Banking and Financial Dealings Act 1971, schedule 1";
const PROCLAIMED: &str = "By proclamation each year under the Banking and Financial Dealings Act 1971";
const COMMON_LAW: &str = "Common law; a substitute day by Royal Proclamation";
const ST_ANDREW: &str = "St Andrew's Day Bank Holiday (Scotland) Act 2007";
const GOV_UK: &str = "GOV.UK bank holidays (Open Government Licence)";
const LIBRARY: &str = "PyPI holidays 0.109";
const MEMORY: &str = "from memory";

const fn row(
    places: &'static [Region],
    name: H,
    rule: Rule,
    from: i32,
    substitute: Substitute,
    source: &'static str,
) -> Row {
    Row { places, name, rule, years: (from, i32::MAX), substitute, source }
}

const fn one_off(places: &'static [Region], name: H, ymd: (i32, u32, u32), source: &'static str) -> OneOff {
    OneOff { places, name, day: date(ymd), replaces: None, source }
}

const fn moved(
    places: &'static [Region],
    name: H,
    from: (i32, u32, u32),
    to: (i32, u32, u32),
    source: &'static str,
) -> OneOff {
    OneOff { places, name, day: date(to), replaces: Some(date(from)), source }
}

/// A date written in the table; one that does not exist would not compile.
const fn date((year, month, day): (i32, u32, u32)) -> NaiveDate {
    match NaiveDate::from_ymd_opt(year, month, day) {
        Some(date) => date,
        None => panic!("a date in the table does not exist"),
    }
}

#[rustfmt::skip]
pub static RULES: [Row; 19] = [
    row(NOT_SCOTLAND,     H::NewYear,       Fixed { day: 1, month: 1 },        1974, NextFreeWeekday, PROCLAIMED),
    row(SCOTLAND,         H::NewYear,       Fixed { day: 1, month: 1 },        1971, NextFreeWeekday, ACT),
    row(SCOTLAND,         H::SecondJanuary, Fixed { day: 2, month: 1 },        1973, NextFreeWeekday, ACT),
    row(NORTHERN_IRELAND, H::StPatrick,     Fixed { day: 17, month: 3 },       1971, NextFreeWeekday, ACT),
    row(NOT_SCOTLAND,     H::GoodFriday,    Easter { days: -2 },               1971, No,              COMMON_LAW),
    row(SCOTLAND,         H::GoodFriday,    Easter { days: -2 },               1971, No,              ACT),
    row(NOT_SCOTLAND,     H::EasterMonday,  Easter { days: 1 },                1971, No,              ACT),
    row(NOT_SCOTLAND,     H::EarlyMay,      Nth { n: 1, weekday: Mon, month: 5 }, 1978, No,              PROCLAIMED),
    row(SCOTLAND,         H::EarlyMay,      Nth { n: 1, weekday: Mon, month: 5 }, 1971, No,              ACT),
    row(NOT_SCOTLAND,     H::Spring,        Last { weekday: Mon, month: 5 },   1971, No,              ACT),
    row(SCOTLAND,         H::Spring,        Last { weekday: Mon, month: 5 },   1978, No,              PROCLAIMED),
    row(NORTHERN_IRELAND, H::Boyne,         Fixed { day: 12, month: 7 },       1971, NextFreeWeekday, PROCLAIMED),
    row(NOT_SCOTLAND,     H::Summer,        Last { weekday: Mon, month: 8 },   1971, No,              ACT),
    row(SCOTLAND,         H::Summer,        Nth { n: 1, weekday: Mon, month: 8 }, 1971, No,              ACT),
    row(SCOTLAND,         H::StAndrew,      Fixed { day: 30, month: 11 },      2007, NextFreeWeekday, ST_ANDREW),
    row(NOT_SCOTLAND,     H::Christmas,     Fixed { day: 25, month: 12 },      1971, NextFreeWeekday, COMMON_LAW),
    row(SCOTLAND,         H::Christmas,     Fixed { day: 25, month: 12 },      1971, NextFreeWeekday, ACT),
    row(NOT_SCOTLAND,     H::Boxing,        Fixed { day: 26, month: 12 },      1971, NextFreeWeekday, ACT),
    row(SCOTLAND,         H::Boxing,        Fixed { day: 26, month: 12 },      1974, NextFreeWeekday, PROCLAIMED),
];

#[rustfmt::skip]
pub static ONE_OFFS: [OneOff; 13] = [
    moved(UK,         H::EarlyMay,        (1995, 5, 1), (1995, 5, 8),  LIBRARY),
    one_off(UK,       H::Millennium,      (1999, 12, 31),              MEMORY),
    one_off(UK,       H::GoldenJubilee,   (2002, 6, 3),                LIBRARY),
    moved(UK,         H::Spring,          (2002, 5, 27), (2002, 6, 4), LIBRARY),
    one_off(UK,       H::RoyalWedding,    (2011, 4, 29),               LIBRARY),
    moved(UK,         H::Spring,          (2012, 5, 28), (2012, 6, 4), GOV_UK),
    one_off(UK,       H::DiamondJubilee,  (2012, 6, 5),                GOV_UK),
    moved(UK,         H::EarlyMay,        (2020, 5, 4), (2020, 5, 8),  GOV_UK),
    moved(UK,         H::Spring,          (2022, 5, 30), (2022, 6, 2), GOV_UK),
    one_off(UK,       H::PlatinumJubilee, (2022, 6, 3),                GOV_UK),
    one_off(UK,       H::StateFuneral,    (2022, 9, 19),               GOV_UK),
    one_off(UK,       H::Coronation,      (2023, 5, 8),                GOV_UK),
    one_off(SCOTLAND, H::WorldCup,        (2026, 6, 15), "Royal Proclamation, February 2026; PyPI holidays 0.109"),
];
