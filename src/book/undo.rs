//! Taking changes back. A taking-back is a change like any other: it sets each field to what it held before, and can
//! be taken back in its turn.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::change::{Change, Draft, Set};
use super::id::{InstallationId, Moment, Stamp};
use super::record::Record;

impl Record {
    /// The latest change of this installation that has not been taken back and is no taking-back itself.
    pub fn undoable(&self, by: InstallationId) -> Option<&Change> {
        let undone = self.undone();
        let ours =
            |change: &&Arc<Change>| change.by() == by && change.undoes.is_none() && !undone.contains(&change.stamp);
        self.changes().iter().rfind(ours).map(|change| &**change)
    }

    /// Whether a change has been taken back, and the taking-back has not.
    pub fn is_undone(&self, stamp: Stamp) -> bool {
        self.undone().contains(&stamp)
    }

    /// What is to be saved to take a change back: each of its fields gets the value that it replaced, or that of a
    /// write that stands beside it. A field that has been written again since keeps its newer value.
    pub fn undo(&self, stamp: Stamp, at: Moment) -> Option<Draft> {
        let change = self.change(stamp)?;
        let sets: Vec<Set> = change
            .sets
            .iter()
            .filter_map(|set| {
                let is_its = |head: &Stamp| self.stands_for(&set.field, *head).any(|its| its == stamp);
                let (its, beside): (Vec<Stamp>, Vec<Stamp>) = self.standing(&set.field).partition(is_its);
                its.first()?;
                let restores = beside.last().or(set.replaces.iter().max()).copied();
                let value = restores.and_then(|before| self.written(&set.field, before)?.value.clone());
                Some(self.set(set.field.clone(), value, restores))
            })
            .collect();
        if sets.is_empty() { None } else { Some(Draft { at, undoes: Some(stamp), after: self.frontier(), sets }) }
    }

    /// The changes that stand taken back. Changes that take one another back in a circle, as only a damaged record
    /// has them, take nothing back.
    fn undone(&self) -> BTreeSet<Stamp> {
        let mut undoes: BTreeMap<Stamp, Stamp> = BTreeMap::new();
        undoes.extend(self.changes().iter().filter_map(|change| Some((change.stamp, change.undoes?))));
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
