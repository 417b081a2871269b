//! A record: the changes made to one couple, or to the practice, and what stands after them.

use std::collections::BTreeMap;

use super::change::{Change, Draft, Set, Write};
use super::field::Field;
use super::id::{InstallationId, Moment, RecordId, Stamp};
use super::value::Value;

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    Couple,
    Practice,
}

/// A write that no other write has replaced.
#[derive(Clone, Debug, PartialEq)]
struct Head {
    stamp: Stamp,
    value: Option<Value>,
}

/// One record. The list of changes only grows.
#[derive(Clone, Debug, PartialEq)]
pub struct Record {
    pub id: RecordId,
    pub kind: Kind,
    changes: Vec<Change>,
    heads: BTreeMap<Field, Vec<Head>>,
    /// What a newer version wrote beside the changes, carried through unharmed.
    pub unknown: Option<String>,
}

impl Record {
    /// A record in which nothing has been written yet.
    pub fn new(id: RecordId, kind: Kind) -> Self {
        Record { id, kind, changes: Vec::new(), heads: BTreeMap::new(), unknown: None }
    }

    /// All changes, in the order in which they were added.
    pub fn changes(&self) -> &[Change] {
        &self.changes
    }

    /// Adds a change. One that is already here, by its stamp, is left as it is.
    pub fn add(&mut self, change: Change) {
        if self.changes.iter().any(|known| known.stamp == change.stamp) {
            return;
        }
        for set in &change.sets {
            let seen_replaced = self
                .changes
                .iter()
                .flat_map(|known| &known.sets)
                .any(|known| known.field == set.field && known.replaces.contains(&change.stamp));
            let heads = self.heads.entry(set.field.clone()).or_default();
            heads.retain(|head| !set.replaces.contains(&head.stamp));
            if !seen_replaced {
                heads.push(Head { stamp: change.stamp, value: set.value.clone() });
                heads.sort_by_key(|head| head.stamp);
            }
        }
        self.changes.push(change);
    }

    /// What the field holds. Of writes that had not seen each other the one with the highest stamp is shown; the
    /// others stay in the record.
    pub fn get(&self, field: &Field) -> Option<&Value> {
        self.heads.get(field)?.last()?.value.as_ref()
    }

    /// The fields that hold something, with what they hold, in the order of [`Field`].
    pub fn fields(&self) -> impl Iterator<Item = (&Field, &Value)> {
        self.heads.iter().filter_map(|(field, heads)| Some((field, heads.last()?.value.as_ref()?)))
    }

    /// The place in the list of changes of the latest write to any of these fields; later is higher.
    pub fn last_touched(&self, wanted: impl Fn(&Field) -> bool) -> Option<usize> {
        self.changes.iter().rposition(|change| change.sets.iter().any(|set| wanted(&set.field)))
    }

    /// What is to be saved for these writes. Writes that would change nothing are left out, but for the read-back:
    /// confirming again is news, even on the same day. None when none is left.
    pub fn draft(&self, writes: Vec<Write>, at: Moment) -> Option<Draft> {
        let sets: Vec<Set> = writes
            .into_iter()
            .filter(|write| write.field == Field::ReadBack || self.get(&write.field) != write.value.as_ref())
            .map(|write| self.set(write.field, write.value))
            .collect();
        if sets.is_empty() { None } else { Some(Draft { at, undoes: None, sets }) }
    }

    /// The latest change of this installation that has not been taken back and is no taking-back itself.
    pub fn undoable(&self, by: InstallationId) -> Option<&Change> {
        self.changes
            .iter()
            .filter(|change| change.stamp.by == by && change.undoes.is_none() && !self.is_undone(change.stamp))
            .max_by_key(|change| change.stamp)
    }

    /// Whether a change has been taken back, and the taking-back has not.
    pub fn is_undone(&self, stamp: Stamp) -> bool {
        self.changes.iter().any(|change| change.undoes == Some(stamp) && !self.is_undone(change.stamp))
    }

    /// What is to be saved to take a change back: each of its fields gets the value that it replaced. A field that
    /// has been written again since keeps its newer value.
    pub fn undo(&self, stamp: Stamp, at: Moment) -> Option<Draft> {
        let change = self.changes.iter().find(|change| change.stamp == stamp)?;
        let sets: Vec<Set> = change
            .sets
            .iter()
            .filter(|set| self.heads.get(&set.field).is_some_and(|h| h.iter().any(|head| head.stamp == stamp)))
            .map(|set| self.set(set.field.clone(), self.replaced_value(set)))
            .collect();
        if sets.is_empty() { None } else { Some(Draft { at, undoes: Some(stamp), sets }) }
    }

    fn set(&self, field: Field, value: Option<Value>) -> Set {
        let replaces = self.heads.get(&field).map(|h| h.iter().map(|head| head.stamp).collect()).unwrap_or_default();
        Set { field, value, replaces, unknown: None }
    }

    fn replaced_value(&self, set: &Set) -> Option<Value> {
        let before = set.replaces.iter().max()?;
        let change = self.changes.iter().find(|change| change.stamp == *before)?;
        change.sets.iter().find(|known| known.field == set.field)?.value.clone()
    }
}
