//! One act of the user: a change with its stamp, its time, and what it set.

use std::collections::BTreeSet;
use std::sync::Arc;

use super::field::Field;
use super::id::{InstallationId, Moment, Stamp};
use super::value::Value;

/// What a verb wants: this field to hold this value, or nothing.
#[derive(Clone, Debug, PartialEq)]
pub struct Write {
    pub field: Field,
    pub value: Option<Value>,
}

impl Write {
    pub fn set(field: Field, value: Value) -> Self {
        Write { field, value: Some(value) }
    }

    pub fn clear(field: Field) -> Self {
        Write { field, value: None }
    }
}

/// A write with the writes to the same field that its author had seen, and that it replaces.
#[derive(Clone, Debug, PartialEq)]
pub struct Set {
    pub field: Field,
    pub value: Option<Value>,
    pub replaces: Vec<Stamp>,
    /// In a taking-back: the earlier write whose value stands again; none if the field held nothing before.
    pub restores: Option<Stamp>,
    /// What a newer version wrote beside it, carried through unharmed.
    pub unknown: Option<String>,
}

/// What is about to be saved: everything of a change but the stamp, which the storage gives out as it saves.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    pub at: Moment,
    pub undoes: Option<Stamp>,
    /// The newest changes that its author had seen in the record.
    pub after: Vec<Stamp>,
    pub sets: Vec<Set>,
}

impl Draft {
    /// Whether its author had seen anything of the record that it is a draft for.
    pub fn has_seen_any(&self) -> bool {
        self.undoes.is_some() || !self.after.is_empty() || self.sets.iter().any(|set| !set.replaces.is_empty())
    }
}

/// A saved change.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    pub stamp: Stamp,
    /// The stamp that it was made under, where several different changes claim that one: then each of them has a stamp
    /// in its place that follows from what it says.
    pub claimed: Option<Stamp>,
    pub at: Moment,
    /// The change that this one takes back.
    pub undoes: Option<Stamp>,
    /// Changes of other installations that its author had seen in the record, as far as that does not follow from
    /// what the changes before it had seen. See [`merge`](super::merge).
    pub after: Vec<Stamp>,
    pub sets: Vec<Set>,
    /// What a newer version wrote beside it, carried through unharmed.
    pub unknown: Option<String>,
}

impl Change {
    /// A draft that has been given its stamp.
    pub fn stamped(draft: Draft, stamp: Stamp) -> Self {
        let Draft { at, undoes, mut after, sets } = draft;
        // What its own installation did before, and what it replaces, it has seen anyway.
        let mut replaced: BTreeSet<&Stamp> = BTreeSet::new();
        replaced.extend(sets.iter().flat_map(|set| &set.replaces));
        after.retain(|seen| seen.by != stamp.by && !replaced.contains(seen));
        Change { stamp, claimed: None, at, undoes, after, sets, unknown: None }
    }

    /// Whether these changes are in the order of their stamps, each once.
    pub fn are_in_order(changes: &[Arc<Change>]) -> bool {
        changes.windows(2).all(|pair| pair[0].stamp < pair[1].stamp)
    }

    /// The stamp that it was made under.
    pub fn made_under(&self) -> Stamp {
        self.claimed.unwrap_or(self.stamp)
    }

    /// The installation that made it.
    pub fn by(&self) -> InstallationId {
        self.made_under().by
    }

    /// Whether two changes made under one stamp say the same.
    pub fn says_the_same(&self, other: &Change) -> bool {
        self.at == other.at
            && self.undoes == other.undoes
            && self.after == other.after
            && self.sets == other.sets
            && self.unknown == other.unknown
    }
}
