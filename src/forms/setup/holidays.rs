//! Which public holidays of the region the workshop keeps: each can be switched.

use chrono::{Datelike, NaiveDate};

use crate::book::change::Write;
use crate::book::practice::Practice;
use crate::book::settings;
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::forms::write;
use crate::trade::dates::holidays::{Holiday, HolidayName, Region, in_year};

/// The holidays that are kept.
pub const KEPT: Key = Key::new("kept");

/// Holidays of so many years are listed, so that one of every fifth year is among them.
const YEARS: i32 = 5;

/// The holidays of a region, each once, as it is next from the year of a day on.
pub fn listed(region: Region, today: NaiveDate) -> Vec<Holiday> {
    let year = today.year();
    let mut listed: Vec<Holiday> = Vec::new();
    for holiday in (year..year.saturating_add(YEARS)).flat_map(|year| in_year(region, year)) {
        if !listed.iter().any(|it| it.name == holiday.name) {
            listed.push(holiday);
        }
    }
    listed
}

pub fn start(practice: Practice<'_>, listed: &[Holiday]) -> Texts {
    let switched = practice.switched();
    let keeps = |holiday: &Holiday| {
        let switch = switched.iter().find(|(name, _)| *name == holiday.name);
        switch.map_or(!holiday.by_choice, |(_, on)| *on)
    };
    Texts::default().with(KEPT, write::codes(listed.iter().filter(|it| keeps(it)).map(|it| it.name)))
}

/// Reads the form, in which nothing can be wrong.
pub fn read(texts: &Texts, listed: &[Holiday]) -> Vec<Write> {
    let kept: Vec<HolidayName> = Reader::new(texts).choices(KEPT);
    let write = |it: &Holiday| settings::holiday(it.name).unless_usual(kept.contains(&it.name), !it.by_choice);
    listed.iter().map(write).collect()
}
