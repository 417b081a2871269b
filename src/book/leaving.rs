//! What may leave the phone. One rule, asked by everything that makes a file.

use std::collections::BTreeSet;

use super::couple::Couple;
use super::field::Field;
use super::id::RecordId;
use super::record::{Kind, Record};
use super::value::Value;

/// Why a couple stays on this phone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stays {
    /// They said that they do not want to be recorded.
    SaidNo,
    /// An entry that was joined with this one says so: it is about the same two people.
    JoinedSaidNo,
    /// An invented couple.
    Example,
}

/// Whether a couple may be part of a file that leaves the phone, and why not, as far as its own record says. What makes
/// a file asks [`Refusing::may_leave`], which knows the whole book.
///
/// A couple that was not asked yet may leave: the jeweller's own notes are theirs to move. A no keeps them in, also
/// one that stands beside a yes, or an answer of a newer version that cannot be read here.
/// An example that was edited is still an example: it never leaves.
pub fn may_leave(couple: Couple<'_>) -> Result<(), Stays> {
    let is_no = |value: &Value| !matches!(value, Value::Recorded(recorded) if recorded.agrees);
    if couple.0.holds(&Field::Example, |value| *value != Value::Yes(false)) {
        Err(Stays::Example)
    } else if couple.0.holds(&Field::Recorded, is_no) {
        Err(Stays::SaidNo)
    } else {
        Ok(())
    }
}

/// The couples of a book of which an entry says no. Entries that were joined are about the same two people, so that one
/// no keeps all of them in, until that entry says yes or they are taken apart.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Refusing(BTreeSet<RecordId>);

impl Refusing {
    /// Looked for in the whole book, whatever part of it is to leave.
    pub fn of<'a>(book: impl Iterator<Item = &'a Record> + Clone) -> Refusing {
        let couples = book.filter(|record| record.kind == Kind::Couple);
        let says_no = |record: &&Record| may_leave(Couple(record)) == Err(Stays::SaidNo);
        let mut found: BTreeSet<RecordId> = couples.clone().filter(says_no).map(|record| record.id).collect();
        // Mostly nobody has.
        if found.is_empty() {
            return Refusing(found);
        }
        let is_same = |(field, _, value): (&Field, _, Option<&Value>)| match field {
            Field::SameAs(id) if value == Some(&Value::Yes(true)) => Some(*id),
            _ => None,
        };
        let of_one =
            |record: &'a Record| record.standing_writes().filter_map(is_same).map(move |other| [record.id, other]);
        let joined: Vec<[RecordId; 2]> = couples.flat_map(of_one).collect();
        let mut before = 0;
        while found.len() > before {
            before = found.len();
            for pair in &joined {
                if pair.iter().any(|id| found.contains(id)) {
                    found.extend(pair);
                }
            }
        }
        Refusing(found)
    }

    /// Whether a couple of this book may be part of a file that leaves the phone, and why not.
    pub fn may_leave(&self, couple: Couple<'_>) -> Result<(), Stays> {
        may_leave(couple)?;
        if self.0.contains(&couple.0.id) { Err(Stays::JoinedSaidNo) } else { Ok(()) }
    }
}
