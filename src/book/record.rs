//! A record: the changes made to one couple, or to the practice, and what stands after them.
//!
//! Why a list of changes and not a row of values: two phones edit the same couple, one of them has the wrong
//! clock, and nobody may lose a line. With what each write replaces on record, undo, history and merging are the
//! same simple thing, and no clock decides. It costs a few bytes per change.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::change::{Change, Draft, Set, Write};
use super::field::Field;
use super::id::{Moment, RecordId, Stamp};
use super::value::Value;

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    Couple,
    Practice,
}

/// The place of a write that no other write has replaced.
#[derive(Clone, Copy, Debug, PartialEq)]
struct StandingWrite {
    change: u32,
    set: u32,
}

/// Stands for a write that another one has replaced.
const REPLACED: u32 = u32::MAX;

/// One record. The list of changes only grows, unless the record is erased.
#[derive(Clone, Debug, PartialEq)]
pub struct Record {
    pub id: RecordId,
    pub kind: Kind,
    /// In the order of their stamps, each once. States of a record share what they have in common.
    changes: Vec<Arc<Change>>,
    /// The writes that stand, in the order of their fields, and of each field in the order of their stamps.
    heads: Vec<StandingWrite>,
    erased: Option<Stamp>,
    /// What a newer version wrote beside the changes, carried through unharmed.
    pub unknown: Option<String>,
}

impl Record {
    /// A record in which nothing has been written yet.
    pub fn new(id: RecordId, kind: Kind) -> Self {
        Record { id, kind, changes: Vec::new(), heads: Vec::new(), erased: None, unknown: None }
    }

    /// A record of these changes, in whatever order they come. Of two under one stamp the first counts.
    pub fn of(id: RecordId, kind: Kind, changes: Vec<Arc<Change>>) -> Self {
        let mut record = Record::new(id, kind);
        record.changes = if Change::are_in_order(&changes) {
            changes
        } else {
            let mut ordered = BTreeMap::new();
            for change in changes {
                ordered.entry(change.stamp).or_insert(change);
            }
            ordered.into_values().collect()
        };
        record.settle();
        record
    }

    /// What is left of a record that was erased: a bare mark. It reads as a record in which nothing was written.
    pub fn mark(id: RecordId, kind: Kind, erased: Stamp) -> Self {
        Record { erased: Some(erased), ..Record::new(id, kind) }
    }

    /// The stamp of the erasing, if this is what is left of an erased record.
    pub fn erased(&self) -> Option<Stamp> {
        self.erased
    }

    /// All changes, in the order of their stamps.
    pub fn changes(&self) -> &[Arc<Change>] {
        &self.changes
    }

    /// The highest number of any stamp in it.
    pub fn highest(&self) -> u64 {
        self.changes.last().map(|change| change.stamp).max(self.erased).map_or(0, |stamp| stamp.n)
    }

    /// Adds a change. One that is already here, by its stamp, is left as it is; a mark takes none.
    pub fn add(&mut self, change: impl Into<Arc<Change>>) {
        let change = change.into();
        if self.erased.is_some() {
            return;
        }
        if let Err(place) = self.changes.binary_search_by_key(&change.stamp, |known| known.stamp) {
            self.changes.insert(place, change);
            self.settle();
        }
    }

    /// What the field holds. Of writes that had not seen each other the one with the highest stamp is shown; the
    /// others stay in the record.
    pub fn get(&self, field: &Field) -> Option<&Value> {
        self.value(*self.heads_of(field).last()?)
    }

    /// The fields that hold something, with what they hold, in the order of [`Field`].
    pub fn fields(&self) -> impl Iterator<Item = (&Field, &Value)> {
        self.shown().filter_map(|head| Some((self.field(head), self.value(head)?)))
    }

    /// Every write that stands, shown or beside another: its field, its change, its value.
    pub fn standing_writes(&self) -> impl Iterator<Item = (&Field, &Change, Option<&Value>)> {
        self.heads.iter().map(|head| (self.field(*head), self.change_of(*head), self.value(*head)))
    }

    /// Whether the field holds such a value, shown or beside another.
    pub fn holds(&self, field: &Field, such: impl Fn(&Value) -> bool) -> bool {
        self.heads_of(field).iter().filter_map(|head| self.value(*head)).any(such)
    }

    /// Whether different values stand for any of these fields, and a person has to choose.
    pub fn differs(&self, wanted: impl Fn(&Field) -> bool) -> bool {
        // Those of one field stand next to each other.
        let differ = |one: StandingWrite, other: StandingWrite| {
            let field = self.field(one);
            field == self.field(other) && self.value(one) != self.value(other) && wanted(field)
        };
        self.heads.windows(2).any(|pair| differ(pair[0], pair[1]))
    }

    /// The places in the list of changes of the writes to any of these fields that still stand; later is higher. What
    /// was taken back does not count, nor does the taking-back: the write that stands again keeps its place.
    pub fn touched(&self, wanted: impl Fn(&Field) -> bool) -> impl Iterator<Item = usize> {
        let source = |head: StandingWrite| self.source(self.field(head), self.change_of(head).stamp);
        let shown = self.shown().filter(move |head| wanted(self.field(*head)));
        shown.filter_map(move |head| source(head).and_then(|stamp| self.place(stamp)))
    }

    /// Those of these writes that say something new.
    pub fn changed(&self, mut writes: Vec<Write>) -> Vec<Write> {
        writes.retain(|write| self.is_new(write));
        writes
    }

    /// What is to be saved for these writes. Of two writes to one field the last one counts. Writes that would change
    /// nothing are left out, unless writing it again says something: that it still holds, or which of several is
    /// chosen. None when none is left. A value that its field cannot hold is a fault of the program, and stops it: kept,
    /// it would read as nothing.
    pub fn draft(&self, writes: Vec<Write>, at: Moment) -> Option<Draft> {
        let misfit = writes.iter().find(|write| write.value.as_ref().is_some_and(|value| !write.field.takes(value)));
        assert!(misfit.is_none());
        let last = |at: usize| writes[at + 1..].iter().all(|later| later.field != writes[at].field);
        let sets: Vec<Set> = writes
            .iter()
            .enumerate()
            .filter(|(at, write)| last(*at) && (self.is_new(write) || self.settles(write)))
            .map(|(_, write)| self.set(write.field.clone(), write.value.clone(), None))
            .collect();
        if sets.is_empty() { None } else { Some(Draft { at, undoes: None, after: self.frontier(), sets }) }
    }

    pub(super) fn set(&self, field: Field, value: Option<Value>, restores: Option<Stamp>) -> Set {
        let replaces = self.standing(&field).collect();
        Set { field, value, replaces, restores, unknown: None }
    }

    /// The stamps of the writes to a field that stand, in their order.
    pub(super) fn standing(&self, field: &Field) -> impl Iterator<Item = Stamp> {
        self.heads_of(field).iter().map(|head| self.change_of(*head).stamp)
    }

    /// The write of a change to a field.
    pub(super) fn written(&self, field: &Field, stamp: Stamp) -> Option<&Set> {
        self.change(stamp)?.sets.iter().rfind(|set| set.field == *field)
    }

    /// Whether it holds the change of this stamp.
    pub fn holds_change(&self, stamp: Stamp) -> bool {
        self.place(stamp).is_some()
    }

    pub(super) fn change(&self, stamp: Stamp) -> Option<&Change> {
        Some(&self.changes[self.place(stamp)?])
    }

    /// The place of a change in the list.
    pub(super) fn place(&self, stamp: Stamp) -> Option<usize> {
        self.changes.binary_search_by_key(&stamp, |change| change.stamp).ok()
    }

    /// The writes that a write stands for, one after the other: itself, then, for a taking-back, the one that it
    /// restored, and so on.
    pub(super) fn stands_for(&self, field: &Field, stamp: Stamp) -> impl Iterator<Item = Stamp> {
        let restored = |stamp: &Stamp| self.written(field, *stamp)?.restores;
        // Bounded, because a damaged record may restore in a circle.
        std::iter::successors(Some(stamp), restored).take(self.changes.len())
    }

    fn is_new(&self, write: &Write) -> bool {
        self.get(&write.field) != write.value.as_ref() || (write.field.is_settled() && write.value.is_some())
    }

    /// Works out which writes stand. A write replaces those that it names, as far as its author can have seen them: a
    /// stamp higher than its own it cannot have seen, because numbers follow what was read. In a file edited by hand two
    /// values could otherwise replace each other, and both would be gone.
    fn settle(&mut self) {
        let mut standing: BTreeMap<(&Field, u32), u32> = BTreeMap::new();
        for (place, change) in (0..).zip(&self.changes) {
            for (at, set) in (0..).zip(&change.sets) {
                for seen in set.replaces.iter().filter(|stamp| **stamp < change.stamp) {
                    let before = self.place(*seen).and_then(|before| standing.get_mut(&(&set.field, before as u32)));
                    if let Some(before) = before {
                        *before = REPLACED;
                    }
                }
                // Of two writes to one field within a change the last one counts.
                standing.insert((&set.field, place), at);
            }
        }
        let heads = standing.into_iter().filter(|(_, set)| *set != REPLACED);
        self.heads = heads.map(|((_, change), set)| StandingWrite { change, set }).collect();
    }

    /// The writes to a field that stand.
    fn heads_of(&self, field: &Field) -> &[StandingWrite] {
        let from = self.heads.partition_point(|head| self.field(*head).cmp(field).is_lt());
        let rest = &self.heads[from..];
        &rest[..rest.partition_point(|head| self.field(*head) == field)]
    }

    /// Of each field the write that is shown.
    fn shown(&self) -> impl Iterator<Item = StandingWrite> {
        let mut heads = self.heads.iter().peekable();
        std::iter::from_fn(move || {
            let mut head = *heads.next()?;
            while let Some(beside) = heads.next_if(|next| self.field(**next) == self.field(head)) {
                head = *beside;
            }
            Some(head)
        })
    }

    fn field(&self, head: StandingWrite) -> &Field {
        &self.changes[head.change as usize].sets[head.set as usize].field
    }

    fn change_of(&self, head: StandingWrite) -> &Change {
        &self.changes[head.change as usize]
    }

    fn value(&self, head: StandingWrite) -> Option<&Value> {
        self.changes[head.change as usize].sets[head.set as usize].value.as_ref()
    }

    /// The write behind any taking-back. None if that left the field as it was before anything was written.
    pub(super) fn source(&self, field: &Field, stamp: Stamp) -> Option<Stamp> {
        let is_own = |stamp: &Stamp| self.change(*stamp).is_some_and(|change| change.undoes.is_none());
        self.stands_for(field, stamp).find(is_own)
    }
}
