//! Days on which the workshop, or another place, is closed.

use chrono::NaiveDate;

use crate::archive::code::Code;
use crate::book::id::ItemId;
use crate::book::practice::Practice;
use crate::book::value::NamedClosure;
use crate::forms::complaint::{Complaint, Complaints};
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::trade::dates::closed::{Closure, Repeats};
use crate::trade::dates::places::Place;
use crate::trade::limits::Limit;

pub const NAME: Key = Key::new("closure-name");
pub const FROM: Key = Key::new("closure-from");
pub const TO: Key = Key::new("closure-to");
pub const PLACE: Key = Key::new("closure-place");
pub const REPEATS: Key = Key::new("closure-repeats");

/// A closure that is known, or a new one. `day` writes a day as it is typed.
pub fn start(known: Option<&NamedClosure>, day: fn(NaiveDate) -> String) -> Texts {
    let day = |of: fn(Closure) -> NaiveDate| known.map(|it| day(of(it.days))).unwrap_or_default();
    Texts::default()
        .with(NAME, known.map(|it| it.name.clone()).unwrap_or_default())
        .with(FROM, day(Closure::from))
        .with(TO, day(Closure::to))
        .with(PLACE, known.map_or(Place::Workshop, |it| it.place).code())
        .with(REPEATS, known.map_or(Repeats::Once, |it| it.days.repeats()).code())
}

/// The first day that is typed; before there is one, today. A last day without a year is the next such day after it.
pub fn first_day(texts: &Texts, today: NaiveDate) -> NaiveDate {
    Reader::new(texts).day(FROM, today, today).unwrap_or(today)
}

/// Reads the form of this closure. The calendar is asked whether it takes one more, and whether anybody still works
/// then.
pub fn read(texts: &Texts, practice: Practice<'_>, item: ItemId, today: NaiveDate) -> Result<NamedClosure, Complaints> {
    let mut form = Reader::new(texts);
    let name = form.needed(NAME, Limit::NameText);
    let from = form.day(FROM, today, today);
    let to = form.day(TO, first_day(texts, today), today);
    let closure = (|| {
        let days = Closure::new(from?, to?).map_err(Complaint::Calendar);
        let days = form.note(TO, days)?.repeating(form.choice(REPEATS).unwrap_or_default());
        let place = form.choice(PLACE).unwrap_or_default();
        let name = name?;
        let calendar = practice.calendar_with(place, item, days).map_err(Complaint::Calendar);
        let works = form.note(NAME, calendar)?.works_in_the_year_after(days.to());
        form.note(TO, if works { Ok(()) } else { Err(Complaint::NeverWorks(days.to())) })?;
        Some(NamedClosure { name, place, days })
    })();
    form.checked(closure)
}
