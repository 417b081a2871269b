//! An appointment: day, time, place, and what became of it.

use chrono::NaiveDate;

use crate::archive::code::Code;
use crate::book::change::Write;
use crate::book::couple::Appointment;
use crate::book::id::ItemId;
use crate::book::value::{Outcome, When};
use crate::book::verbs;
use crate::forms::complaint::Complaints;
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::forms::write;

pub const DAY: Key = Key::new("day");
pub const TIME: Key = Key::new("time");
pub const PLACE: Key = Key::new("place");
pub const OUTCOME: Key = Key::new("outcome");

/// The word for one that has not become anything yet.
pub const OPEN: &str = "open";

/// `day` writes a day as it is typed.
pub fn start(known: Option<&Appointment>, day: fn(NaiveDate) -> String) -> Texts {
    let outcome = known.and_then(|it| it.outcome);
    Texts::default()
        .with(DAY, known.map(|it| day(it.when.day)).unwrap_or_default())
        .with(TIME, write::optional_time(known.and_then(|it| it.when.time)))
        .with(PLACE, known.and_then(|it| it.place.clone()).unwrap_or_default())
        .with(OUTCOME, outcome.map_or(OPEN, Outcome::code))
}

pub fn read(texts: &Texts, item: ItemId, today: NaiveDate) -> Result<Appointment, Complaints> {
    let mut form = Reader::new(texts);
    let day = form.day(DAY, today, today);
    let time = form.optional_time(TIME);
    let place = form.optional_line(PLACE);
    let outcome = form.choice(OUTCOME);
    let typed = (|| Some(Appointment { item, when: When { day: day?, time: time? }, place: place?, outcome }))();
    form.checked(typed)
}

/// What is written down.
pub fn writes(of: Appointment) -> Vec<Write> {
    let mut writes = verbs::book(of.item, of.when, of.place);
    writes.extend(verbs::conclude(of.item, of.outcome));
    writes
}
