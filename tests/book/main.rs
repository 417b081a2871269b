//! The book: changes and what stands after them, taking back, the checklist, today, search, what may leave.

mod arbitrary;
mod changes;
mod checklist;
mod examples;
mod finding;
mod fitting;
mod orders;
mod remedies;
mod same;
mod today;
mod undo;
mod values;

use arbitrary::{OURS, new_couple, say, undo as take_back};
use bandwright::book::change::Write;
use bandwright::book::couple::Couple;
use bandwright::book::field::Field;
use bandwright::book::id::Stamp;
use bandwright::book::record::Record;
use bandwright::book::value::Value;
use chrono::NaiveDate;

/// A couple's record, written to by one installation, one change after the other.
struct Told {
    record: Record,
    n: u64,
}

impl Told {
    fn new() -> Self {
        Told { record: new_couple(), n: 0 }
    }

    fn say(&mut self, writes: Vec<Write>) -> Option<Stamp> {
        self.n += 1;
        say(&mut self.record, OURS, self.n, writes)
    }

    fn undo(&mut self, stamp: Option<Stamp>) -> Option<Stamp> {
        self.n += 1;
        take_back(&mut self.record, OURS, self.n, stamp?)
    }

    fn couple(&self) -> Couple<'_> {
        Couple(&self.record)
    }
}

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

fn met(place: &str) -> Vec<Write> {
    vec![Write::set(Field::Met, Value::Text(place.into()))]
}
