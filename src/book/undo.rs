//! Taking changes back. A taking-back is a change like any other: it sets each field to what it held before, and can
//! be taken back in its turn.
//!
//! A choice between two sides is taken back by one change per side, saved in one transaction: a change sets a field
//! once, and neither may replace the other, so that both stand again and a person is asked again. After a decision
//! about archiving, what that had not seen is open again, unless it was written in knowledge of the decision. Each
//! side names who wrote it, not who took the choice back.

use std::collections::{BTreeMap, BTreeSet};

use super::change::{Change, Draft, Set};
use super::id::{InstallationId, Moment, Stamp};
use super::merge::conflict::TOLD_APART;
use super::record::Record;
use crate::trade::arrange::in_order;

impl Record {
    /// The latest change of this installation of which something stands, that has not been taken back and is no
    /// taking-back itself.
    pub fn undoable(&self, by: InstallationId) -> Option<&Change> {
        let undone = self.undone();
        let is_ours = |change: &Change| {
            change.by() == by && change.undoes.is_none() && !undone.contains(&change.stamp) && self.stands(change)
        };
        self.changes().iter().map(|change| &**change).rfind(|change| is_ours(change))
    }

    /// Whether anything that a change wrote still stands.
    fn stands(&self, change: &Change) -> bool {
        change.sets.iter().any(|set| !self.before(change, set).is_empty())
    }

    /// Whether a change has been taken back, and the taking-back has not.
    pub fn is_undone(&self, stamp: Stamp) -> bool {
        self.undone().contains(&stamp)
    }

    /// What is to be saved to take a change back, one draft after the other, none if nothing of it stands: each of its
    /// fields gets the value that it replaced, or that of a write that stands beside it. Where these are several, which
    /// a person had chosen from, each gets a draft, and they stand side by side again. A field that has been written
    /// again since keeps its newer value.
    pub fn undo(&self, stamp: Stamp, at: Moment) -> Vec<Draft> {
        let Some(change) = self.change(stamp) else { return Vec::new() };
        let mut rounds: Vec<Vec<Set>> = Vec::new();
        for set in &change.sets {
            for (round, restores) in self.before(change, set).into_iter().enumerate() {
                let value = restores.and_then(|before| self.written(&set.field, before)?.value.clone());
                let back = self.set(set.field.clone(), value, restores);
                match rounds.get_mut(round) {
                    Some(sets) => sets.push(back),
                    None => rounds.push(vec![back]),
                }
            }
        }
        let draft = |sets| Draft { at, undoes: Some(stamp), after: self.frontier(), sets };
        // The one that is shown comes last: the highest stamp is.
        rounds.into_iter().rev().map(draft).collect()
    }

    /// The writes whose values stand again once this one is taken back, the one that is shown first; a none for a
    /// field that held nothing. Empty if the write does not stand.
    fn before(&self, change: &Change, set: &Set) -> Vec<Option<Stamp>> {
        let is_its = |head: &Stamp| self.stands_for(&set.field, *head).any(|its| its == change.stamp);
        let (its, beside): (Vec<Stamp>, Vec<Stamp>) = self.standing(&set.field).partition(is_its);
        if its.is_empty() {
            return Vec::new();
        }
        // Several drafts of one taking-back go together.
        let goes_along = |head: &Stamp| {
            change.undoes.is_some() && self.change(*head).is_some_and(|other| other.undoes == change.undoes)
        };
        let mut before: Vec<Stamp> = beside.into_iter().filter(|head| !goes_along(head)).collect();
        if before.is_empty() {
            let known = set.replaces.iter().copied().filter(|stamp| self.written(&set.field, *stamp).is_some());
            before = in_order(known, |stamp| *stamp);
        }
        let value = |stamp: &Stamp| self.written(&set.field, *stamp).map(|set| &set.value);
        let mut told: Vec<Stamp> = Vec::new();
        for stamp in before.into_iter().rev() {
            if told.len() < TOLD_APART && !told.iter().any(|other| value(other) == value(&stamp)) {
                told.push(stamp);
            }
        }
        if told.is_empty() { vec![None] } else { told.into_iter().map(Some).collect() }
    }

    /// The changes that stand taken back. Of several that take back the same for one author the last one counts: drafts
    /// of one taking-back, or a later one. Changes that take one another back in a circle, as only a damaged record
    /// has them, take nothing back.
    fn undone(&self) -> BTreeSet<Stamp> {
        let mut last: BTreeMap<(Stamp, InstallationId), Stamp> = BTreeMap::new();
        let takes_back = |change: &Change| Some(((change.undoes?, change.by()), change.stamp));
        last.extend(self.changes().iter().filter_map(|change| takes_back(change)));
        let undoes: BTreeMap<Stamp, Stamp> = last.into_iter().map(|((undone, _), stamp)| (stamp, undone)).collect();
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
