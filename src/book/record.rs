//! A record: the changes made to one couple, or to the practice, and what stands after them.

use std::collections::{BTreeMap, BTreeSet};

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
            // Of two writes to one field within a change the last one counts.
            heads.retain(|head| head.stamp != change.stamp && !set.replaces.contains(&head.stamp));
            if !seen_replaced {
                let place = heads.partition_point(|head| head.stamp < change.stamp);
                heads.insert(place, Head { stamp: change.stamp, value: set.value.clone() });
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

    /// The place in the list of changes of the latest write to any of these fields that still stands; later is higher.
    /// What was taken back does not count, nor does the taking-back: the write that stands again keeps its place.
    pub fn last_touched(&self, wanted: impl Fn(&Field) -> bool) -> Option<usize> {
        let heads = self.heads.iter().filter(|(field, _)| wanted(field));
        let stamps: Vec<Stamp> = heads.filter_map(|(field, heads)| self.source(field, heads.last()?.stamp)).collect();
        self.changes.iter().rposition(|change| stamps.contains(&change.stamp))
    }

    /// What is to be saved for these writes. Of two writes to one field the last one counts. Writes that would change
    /// nothing are left out, unless writing it again says that it still holds; none when none is left.
    pub fn draft(&self, writes: Vec<Write>, at: Moment) -> Option<Draft> {
        let last = |at: usize| writes[at + 1..].iter().all(|later| later.field != writes[at].field);
        let says = |write: &Write| {
            self.get(&write.field) != write.value.as_ref() || (write.field.is_settled() && write.value.is_some())
        };
        let sets: Vec<Set> = writes
            .iter()
            .enumerate()
            .filter(|(at, write)| last(*at) && says(write))
            .map(|(_, write)| self.set(write.field.clone(), write.value.clone(), None))
            .collect();
        if sets.is_empty() { None } else { Some(Draft { at, undoes: None, sets }) }
    }

    /// The latest change of this installation that has not been taken back and is no taking-back itself.
    pub fn undoable(&self, by: InstallationId) -> Option<&Change> {
        let undone = self.undone();
        self.changes
            .iter()
            .filter(|change| change.stamp.by == by && change.undoes.is_none() && !undone.contains(&change.stamp))
            .max_by_key(|change| change.stamp)
    }

    /// Whether a change has been taken back, and the taking-back has not.
    pub fn is_undone(&self, stamp: Stamp) -> bool {
        self.undone().contains(&stamp)
    }

    /// What is to be saved to take a change back: each of its fields gets the value that it replaced, or that of a
    /// write that stands beside it. A field that has been written again since keeps its newer value.
    pub fn undo(&self, stamp: Stamp, at: Moment) -> Option<Draft> {
        let change = self.changes.iter().find(|change| change.stamp == stamp)?;
        let sets: Vec<Set> = change
            .sets
            .iter()
            .filter_map(|set| {
                let is_its = |head: &&Head| self.stands_for(&set.field, head.stamp).any(|its| its == stamp);
                let (its, beside): (Vec<&Head>, Vec<&Head>) = self.heads.get(&set.field)?.iter().partition(is_its);
                its.first()?;
                let restores = beside.last().map(|head| head.stamp).or(set.replaces.iter().max().copied());
                let value = restores.and_then(|before| self.written(&set.field, before)?.value.clone());
                Some(self.set(set.field.clone(), value, restores))
            })
            .collect();
        if sets.is_empty() { None } else { Some(Draft { at, undoes: Some(stamp), sets }) }
    }

    fn set(&self, field: Field, value: Option<Value>, restores: Option<Stamp>) -> Set {
        let replaces = self.heads.get(&field).map(|h| h.iter().map(|head| head.stamp).collect()).unwrap_or_default();
        Set { field, value, replaces, restores, unknown: None }
    }

    /// The write of a change to a field.
    fn written(&self, field: &Field, stamp: Stamp) -> Option<&Set> {
        self.change(stamp)?.sets.iter().rfind(|set| set.field == *field)
    }

    fn change(&self, stamp: Stamp) -> Option<&Change> {
        self.changes.iter().find(|change| change.stamp == stamp)
    }

    /// The writes that a write stands for, one after the other: itself, then, for a taking-back, the one that it
    /// restored, and so on.
    fn stands_for(&self, field: &Field, stamp: Stamp) -> impl Iterator<Item = Stamp> {
        let restored = |stamp: &Stamp| self.written(field, *stamp)?.restores;
        // Bounded, because a damaged record may restore in a circle.
        std::iter::successors(Some(stamp), restored).take(self.changes.len())
    }

    /// The write behind any taking-back. None if that left the field as it was before anything was written.
    fn source(&self, field: &Field, stamp: Stamp) -> Option<Stamp> {
        let is_own = |stamp: &Stamp| self.change(*stamp).is_some_and(|change| change.undoes.is_none());
        self.stands_for(field, stamp).find(is_own)
    }

    /// The changes that stand taken back. Changes that take one another back in a circle, as only a damaged record
    /// has them, take nothing back.
    fn undone(&self) -> BTreeSet<Stamp> {
        let mut undoes: BTreeMap<Stamp, Stamp> = BTreeMap::new();
        undoes.extend(self.changes.iter().filter_map(|change| Some((change.stamp, change.undoes?))));
        let mut waits: BTreeMap<Stamp, usize> = BTreeMap::new();
        undoes.values().for_each(|undone| *waits.entry(*undone).or_default() += 1);
        let mut settled: Vec<Stamp> = undoes.keys().copied().filter(|stamp| !waits.contains_key(stamp)).collect();
        let mut undone = BTreeSet::new();
        while let Some(stamp) = settled.pop() {
            let Some(target) = undoes.get(&stamp) else { continue };
            if !undone.contains(&stamp) {
                undone.insert(*target);
            }
            if let Some(left) = waits.get_mut(target) {
                *left -= 1;
                if *left == 0 {
                    settled.push(*target);
                }
            }
        }
        undone
    }
}
