//! What one phone took out, an appointment or a ring, and another one, unaware of it, wrote into. Taken out it is by a
//! change that clears the part which each of them has; one that empties another part leaves it there.

use super::conflict::{Conflict, side};
use super::seen;
use crate::book::change::{Change, Write};
use crate::book::field::Field;
use crate::book::record::Record;

impl Record {
    /// The appointments and rings, as far as their fields are wanted, that were taken out by one who had not seen what
    /// others wrote into them, in the order of their fields.
    pub(super) fn unseen_removals(&self, wanted: impl Fn(&Field) -> bool) -> Vec<Conflict<'_>> {
        let (mut found, mut pairs) = (Vec::new(), Vec::new());
        let mut writes = self.standing_writes().filter(|(field, ..)| field.is_of_item() && wanted(field));
        let mut next = writes.next();
        while let Some((item, ..)) = next {
            let (mut removal, mut edits) = (None, Vec::new());
            // The fields of one item stand next to each other, and the writes of each in the order of their stamps.
            while let Some((field, change, value)) = next.filter(|(field, ..)| field.is_of_same_item(item)) {
                if value.is_some() {
                    edits.push((field, side(self, field, change, value)));
                } else if field.is_of_every_item() {
                    removal = Some((field, change));
                }
                next = writes.next();
            }
            // Whoever clears one thing and sets another has not taken it out.
            let takes_out =
                |change: &Change| !change.sets.iter().any(|set| set.field.is_of_same_item(item) && set.value.is_some());
            if let Some((field, change)) = removal.filter(|(_, change)| !edits.is_empty() && takes_out(change)) {
                let place = |stamp| self.place(stamp).unwrap_or_default();
                edits.iter().for_each(|(_, edit)| pairs.push((place(change.stamp), place(edit.stamp))));
                found.push(Conflict::Removed { removal: side(self, field, change, None), edits });
            }
        }
        // Nor has he taken it out who leaves something in it, and whoever writes into it later puts it there again.
        let mut are_strangers = seen::strangers(self, &pairs).into_iter();
        found.retain(|conflict| {
            let Conflict::Removed { edits, .. } = conflict else { return false };
            let known = edits.iter().filter(|_| are_strangers.next() != Some(true));
            known.count() == 0
        });
        found
    }

    /// Whether any of these fields is part of an appointment or a ring that was taken out so.
    pub fn is_removed_unseen(&self, wanted: impl Fn(&Field) -> bool) -> bool {
        !self.unseen_removals(wanted).is_empty()
    }

    /// What is to be written to have it back, with what was in it and what was written into it.
    pub fn undo_removal(&self, conflict: &Conflict<'_>) -> Vec<Write> {
        let Conflict::Removed { removal, edits } = conflict else { return Vec::new() };
        let (Some(change), Some((of, _))) = (self.change(removal.stamp), edits.first()) else { return Vec::new() };
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
pub fn confirm_removal(conflict: &Conflict<'_>) -> Vec<Write> {
    let Conflict::Removed { edits, .. } = conflict else { return Vec::new() };
    edits.iter().map(|(field, _)| Write::clear((*field).clone())).collect()
}
