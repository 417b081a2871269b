//! Which changes the author of a change had seen.

use std::collections::{BTreeMap, BTreeSet};

use crate::book::change::{Change, Draft};
use crate::book::field::Field;
use crate::book::id::{Moment, Stamp};
use crate::book::record::Record;

impl Record {
    /// The newest changes of a record: those that no other change has seen.
    pub(in crate::book) fn frontier(&self) -> Vec<Stamp> {
        self.newest_of(&|_| true)
    }

    /// What the author of a change had before them once it was made.
    pub(in crate::book) fn as_seen_by(&self, stamp: Stamp) -> Record {
        let seen = self.place(stamp).map(|place| seen_by(&causes(self), place)).unwrap_or_default();
        let changes = self.changes().iter().zip(seen).filter(|(_, seen)| *seen);
        Record::of(self.id, self.kind, changes.map(|(change, _)| change.clone()).collect())
    }

    /// Leaves in a draft for this record only what its author had seen: nothing else is replaced, and nothing else is
    /// said to be known.
    pub fn leave_unseen(&self, draft: &mut Draft, had_seen: &dyn Fn(Stamp) -> bool) {
        draft.sets.iter_mut().for_each(|set| set.replaces.retain(|stamp| had_seen(*stamp)));
        draft.after = self.newest_of(had_seen);
    }

    /// Of these changes those that no other of them has seen.
    fn newest_of(&self, wanted: &dyn Fn(Stamp) -> bool) -> Vec<Stamp> {
        let mut newest: Vec<bool> = self.changes().iter().map(|change| wanted(change.stamp)).collect();
        for (place, causes) in causes(self).into_iter().enumerate() {
            // Only what comes later can have seen it.
            if newest[place] {
                causes.into_iter().for_each(|cause| newest[cause] = false);
            }
        }
        let newest = self.changes().iter().zip(newest).filter(|(_, newest)| *newest);
        newest.map(|(change, _)| change.stamp).collect()
    }

    /// Whether any of these fields holds what the author of the write that stands in `settled` had not seen.
    pub(in crate::book) fn is_unseen_by(&self, settled: &Field, any: impl Fn(&Field) -> bool) -> bool {
        let Some(at) = self.touched(|field| field == settled).max() else { return false };
        let by = self.changes()[at].stamp.by;
        let mut earlier = Vec::new();
        for place in self.touched(any) {
            // Later than its own, an author can have seen nothing; what it wrote itself before, it has.
            if place > at {
                return true;
            }
            if self.changes()[place].stamp.by != by {
                earlier.push(place);
            }
        }
        if earlier.is_empty() {
            return false;
        }
        let seen = seen_by(&causes(self), at);
        earlier.into_iter().any(|place| !seen[place])
    }

    /// The changes whose time lies more than a day before that of a change which their author had seen: one of the two
    /// clocks was wrong.
    pub fn dated_back(&self) -> BTreeSet<Stamp> {
        let mut latest: Vec<Moment> = Vec::new();
        let mut dated_back = BTreeSet::new();
        for (change, causes) in self.changes().iter().zip(causes(self)) {
            // Causes come before.
            let seen = causes.into_iter().filter_map(|place| latest.get(place).copied()).max();
            if seen.is_some_and(|seen| seen.0.saturating_sub(change.at.0) > DAY_MS) {
                dated_back.insert(change.stamp);
            }
            latest.push(seen.map_or(change.at, |seen| seen.max(change.at)));
        }
        dated_back
    }
}

const DAY_MS: i64 = 86_400_000;

/// Of pairs of changes, by their places, those that know nothing of each other. What each change of the record had seen
/// is worked out once, and then followed for as many pairs at a time as a number has bits.
pub(super) fn strangers(record: &Record, pairs: &[(usize, usize)]) -> Vec<bool> {
    let mut are_strangers = Vec::new();
    if pairs.is_empty() {
        return are_strangers;
    }
    let causes = causes(record);
    for some in pairs.chunks(u64::BITS as usize) {
        let mut knows = vec![0_u64; causes.len()];
        for (bit, (one, other)) in some.iter().enumerate() {
            // Nobody can have seen what comes later in the order of stamps.
            knows[*one.min(other)] |= 1 << bit;
        }
        for (place, causes) in causes.iter().enumerate() {
            causes.iter().for_each(|cause| knows[place] |= knows[*cause]);
        }
        for (bit, (one, other)) in some.iter().enumerate() {
            are_strangers.push(knows[*one.max(other)] >> bit & 1 == 0);
        }
    }
    are_strangers
}

/// Which changes of a record, by their places, know nothing of this one and are not known to it.
pub(super) fn unaware(record: &Record, of: usize) -> Vec<bool> {
    let causes = causes(record);
    let known = seen_by(&causes, of);
    let knows = knowing_by(&causes, of);
    known.into_iter().zip(knows).map(|(known, knows)| !known && !knows).collect()
}

/// Which changes of a record, by their places, had seen this one, itself among them.
pub(super) fn knowing(record: &Record, of: usize) -> Vec<bool> {
    knowing_by(&causes(record), of)
}

/// Which changes this one had seen, itself among them. Causes come before.
fn seen_by(causes: &[Vec<usize>], of: usize) -> Vec<bool> {
    let mut seen = vec![false; causes.len()];
    seen[of] = true;
    for place in (0..=of).rev() {
        if seen[place] {
            causes[place].iter().for_each(|cause| seen[*cause] = true);
        }
    }
    seen
}

fn knowing_by(causes: &[Vec<usize>], of: usize) -> Vec<bool> {
    let mut knows = vec![false; causes.len()];
    knows[of] = true;
    for place in of + 1..causes.len() {
        knows[place] = causes[place].iter().any(|cause| knows[*cause]);
    }
    knows
}

/// For each change the places of those that its author had seen for certain; what these had seen, it has seen too.
fn causes(record: &Record) -> Vec<Vec<usize>> {
    let mut latest = BTreeMap::new();
    let changes = record.changes().iter().enumerate();
    changes.map(|(place, change)| causes_of(record, change, latest.insert(change.stamp.by, place))).collect()
}

fn causes_of(record: &Record, change: &Change, before: Option<usize>) -> Vec<usize> {
    let replaced = change.sets.iter().flat_map(|set| &set.replaces);
    let named = replaced.chain(&change.after).chain(&change.undoes);
    // A stamp higher than its own it cannot have seen.
    let named = named.filter(|stamp| **stamp < change.stamp).filter_map(|stamp| record.place(*stamp));
    before.into_iter().chain(named).collect()
}
