//! One act of the user: a change with its stamp, its time, and what it set.

use super::field::Field;
use super::id::{Moment, Stamp};
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
    pub sets: Vec<Set>,
}

/// A saved change.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    pub stamp: Stamp,
    pub at: Moment,
    /// The change that this one takes back.
    pub undoes: Option<Stamp>,
    pub sets: Vec<Set>,
    /// What a newer version wrote beside it, carried through unharmed.
    pub unknown: Option<String>,
}

impl Change {
    /// A draft that has been given its stamp.
    pub fn stamped(draft: Draft, stamp: Stamp) -> Self {
        Change { stamp, at: draft.at, undoes: draft.undoes, sets: draft.sets, unknown: None }
    }
}
