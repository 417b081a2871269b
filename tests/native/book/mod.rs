//! The book: changes and what stands after them, taking back, the checklist, today, search, what may leave.

mod changes;
mod checklist;
mod examples;
mod finding;
mod fitting;
mod lowered;
mod orders;
mod remedies;
mod same;
mod today;
mod undo;
mod values;

use crate::arbitrary::{OURS, new_couple, say, undo as take_back};
use crate::shared::met;
use bandwright::book::change::Write;
use bandwright::book::couple::Couple;
use bandwright::book::field::{Field, PracticeField};
use bandwright::book::id::{RecordId, Stamp};
use bandwright::book::record::{Kind, Record};
use bandwright::book::value::Value;

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

/// A practice with these settings.
fn practice(fields: Vec<(PracticeField, Value)>) -> Record {
    let mut record = Record::new(RecordId(0), Kind::Practice);
    let writes = fields.into_iter().map(|(field, value)| Write::set(Field::Practice(field), value)).collect();
    say(&mut record, OURS, 1, writes);
    record
}
