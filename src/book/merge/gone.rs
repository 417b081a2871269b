//! What one phone took out, an appointment or a ring, and another one, unaware of it, wrote into.

use super::conflict::{Conflict, side};
use super::seen;
use crate::book::change::{Change, Write};
use crate::book::field::Field;
use crate::book::record::Record;
use crate::book::value::Value;

/// A write that stands: its field, its change, its value.
type Standing<'a> = (&'a Field, &'a Change, Option<&'a Value>);

impl Record {
    /// The appointments and rings that were taken out by one who had not seen what others wrote into them.
    pub(super) fn gone_unseen(&self) -> Vec<Conflict<'_>> {
        let mut found = Vec::new();
        let mut item: Vec<Standing<'_>> = Vec::new();
        // The fields of one item stand next to each other.
        for write in self.standing_writes().filter(|(field, ..)| field.is_of_item()) {
            if item.last().is_some_and(|(last, ..)| !last.is_of_same_item(write.0)) {
                found.extend(self.gone(&item));
                item.clear();
            }
            item.push(write);
        }
        found.extend(self.gone(&item));
        found
    }

    fn gone<'a>(&'a self, item: &[Standing<'a>]) -> Option<Conflict<'a>> {
        let cleared = item.iter().filter(|(_, _, value)| value.is_none());
        let (field, gone, value) = *cleared.max_by_key(|(_, change, _)| change.stamp)?;
        // Whoever clears one thing and sets another has not taken it out.
        let sets_any = gone.sets.iter().any(|set| set.field.is_of_same_item(field) && set.value.is_some());
        let edits: Vec<_> = item.iter().filter(|(_, _, value)| value.is_some()).collect();
        if sets_any || edits.is_empty() {
            return None;
        }
        // Nor has he who leaves something in it, and whoever writes into it later puts it there again.
        let unaware = seen::unaware(self, self.place(gone.stamp)?);
        let is_unseen = |change: &Change| self.place(change.stamp).is_some_and(|place| unaware[place]);
        if !edits.iter().all(|(_, edit, _)| is_unseen(edit)) {
            return None;
        }
        let edits = edits.into_iter().map(|(field, edit, value)| (*field, side(self, field, edit, *value))).collect();
        Some(Conflict::Gone { gone: side(self, field, gone, value), edits })
    }

    /// What is to be written to have it back, with what was in it and what was written into it.
    pub fn bring_back(&self, conflict: &Conflict<'_>) -> Vec<Write> {
        let Conflict::Gone { gone, edits } = conflict else { return Vec::new() };
        let (Some(change), Some((of, _))) = (self.change(gone.stamp), edits.first()) else { return Vec::new() };
        let sets = change.sets.iter().filter(|set| set.field.is_of_same_item(of));
        let write = |set: &crate::book::change::Set| {
            let edit = edits.iter().rfind(|(field, _)| **field == set.field).and_then(|(_, side)| side.value.cloned());
            let before = || set.replaces.iter().max().and_then(|stamp| self.written(&set.field, *stamp)?.value.clone());
            Write { field: set.field.clone(), value: edit.or_else(before) }
        };
        sets.map(write).collect()
    }
}

/// What is to be written to leave it out.
pub fn leave_out(conflict: &Conflict<'_>) -> Vec<Write> {
    let Conflict::Gone { edits, .. } = conflict else { return Vec::new() };
    edits.iter().map(|(field, _)| Write::clear((*field).clone())).collect()
}
