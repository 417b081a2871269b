//! Where two people disagree, and a person has to choose.

use crate::book::change::{Change, Write};
use crate::book::field::Field;
use crate::book::id::{InstallationId, Moment, Stamp};
use crate::book::record::Record;
use crate::book::value::Value;

use super::seen;

/// So many sides of one field are told apart; of more, some may be shown twice.
pub(in crate::book) const TOLD_APART: usize = 20;

/// What two people did without having seen each other's doing, and what cannot both be so.
#[derive(Clone, Debug, PartialEq)]
pub enum Conflict<'a> {
    /// A field for which different values stand, the one that is shown first. Settled by writing the chosen one.
    Field { field: &'a Field, sides: Vec<Side<'a>> },
    /// The couple was put away by one who had not seen these writes of others. Settled by putting it away again, or by
    /// bringing it back.
    PutAway { away: Side<'a>, edits: Vec<(&'a Field, Side<'a>)> },
    /// An appointment or a ring was taken out by one who had not seen these writes into it. Settled by bringing it
    /// back, or by leaving it out.
    Removed { removal: Side<'a>, edits: Vec<(&'a Field, Side<'a>)> },
}

/// One of several writes that stand: who made it, when, and what it says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Side<'a> {
    pub stamp: Stamp,
    /// The write whose value stands: for a taking-back the one that it restored.
    pub source: Stamp,
    /// Who made that one, and when.
    pub by: InstallationId,
    pub at: Moment,
    /// None where it says that there is nothing.
    pub value: Option<&'a Value>,
}

impl<'a> Conflict<'a> {
    /// The field that it is about.
    pub fn field(&self) -> &'a Field {
        match self {
            Conflict::Field { field, .. } => field,
            Conflict::PutAway { .. } => &Field::PutAway,
            Conflict::Removed { edits, .. } => edits.first().map_or(&Field::PutAway, |(field, _)| field),
        }
    }
}

impl Conflict<'_> {
    /// Whether this version of the app can read all that it is between. Otherwise nobody can choose here.
    pub fn is_readable(&self) -> bool {
        let Conflict::Field { field, sides } = self else { return true };
        !matches!(field, Field::Unknown(_)) && sides.iter().all(|side| !matches!(side.value, Some(Value::Unknown(_))))
    }
}

impl Record {
    /// Everything in this record that waits for a decision.
    pub fn conflicts(&self) -> Vec<Conflict<'_>> {
        let mut found = Vec::new();
        let mut writes = self.standing_writes().peekable();
        while let Some((field, change, value)) = writes.next() {
            if writes.peek().is_none_or(|(next, ..)| *next != field) {
                continue;
            }
            let mut sides = vec![side(self, field, change, value)];
            while let Some((_, change, value)) = writes.next_if(|(next, ..)| *next == field) {
                sides.push(side(self, field, change, value));
            }
            sides.reverse();
            let mut told: Vec<Side<'_>> = Vec::new();
            for side in sides {
                if !told.iter().take(TOLD_APART).any(|other| other.value == side.value) {
                    told.push(side);
                }
            }
            if told.len() > 1 {
                found.push(Conflict::Field { field, sides: told });
            }
        }
        let removed = self.unseen_removals(|_| true);
        // Whether it is there at all comes before what stands in it.
        let is_within = |conflict: &Conflict<'_>| {
            let Conflict::Field { field, sides } = conflict else { return false };
            // Both are in the order of their fields, of which those of one item stand next to each other.
            let at = removed.partition_point(|one| one.field().cmp(field).is_lt());
            let is_removed =
                || removed[at.saturating_sub(1)..].iter().take(2).any(|one| one.field().is_of_same_item(field));
            sides.len() == 2 && sides.iter().any(|side| side.value.is_none()) && is_removed()
        };
        found.retain(|conflict| !is_within(conflict));
        found.extend(removed);
        found.extend(self.put_away_unseen());
        found
    }

    /// Whether anything in this record waits for a decision.
    pub fn is_in_conflict(&self) -> bool {
        !self.conflicts().is_empty()
    }

    /// Whether a write settles something, although it says what is shown already.
    pub(in crate::book) fn settles(&self, write: &Write) -> bool {
        let differs = |value: Option<&Value>| value != write.value.as_ref();
        self.standing_writes().any(|(field, _, value)| *field == write.field && differs(value))
            || (write.field == Field::PutAway && write.value.is_some() && self.put_away_unseen().is_some())
    }

    fn put_away_unseen(&self) -> Option<Conflict<'_>> {
        let (_, change, value) = self.standing_writes().filter(|(field, ..)| **field == Field::PutAway).last()?;
        value?;
        let unaware = self.unaware_of(change)?;
        // Who put the couple away as well, in the same go, does not disagree.
        let agrees = |change: &Change| change.sets.iter().any(|set| set.field == Field::PutAway && set.value.is_some());
        let is_unseen =
            |change: &Change| !agrees(change) && self.place(change.stamp).is_some_and(|place| unaware[place]);
        let edits = self.standing_writes().filter(|(field, edit, _)| **field != Field::PutAway && is_unseen(edit));
        let edits: Vec<_> = edits.map(|(field, edit, value)| (field, side(self, field, edit, value))).collect();
        if edits.is_empty() {
            None
        } else {
            Some(Conflict::PutAway { away: side(self, &Field::PutAway, change, value), edits })
        }
    }

    /// Which changes the author of a putting-away had not seen. Where it is a decision taken back, what that had decided
    /// on is open again: what the putting-away that stands again had not seen either, unless it was written in
    /// knowledge of the decision.
    fn unaware_of(&self, away: &Change) -> Option<Vec<bool>> {
        let mut unaware = seen::unaware(self, self.place(away.stamp)?);
        let restored = away.undoes.and_then(|undone| {
            let set = self.written(&Field::PutAway, away.stamp)?;
            Some((self.place(set.restores?)?, self.place(undone)?))
        });
        if let Some((first, decision)) = restored {
            let since = seen::knowing(self, decision);
            for (place, before) in seen::unaware(self, first).into_iter().enumerate() {
                unaware[place] |= before && !since[place];
            }
        }
        Some(unaware)
    }
}

pub(super) fn side<'a>(record: &Record, field: &Field, change: &Change, value: Option<&'a Value>) -> Side<'a> {
    let source = record.source(field, change.stamp).and_then(|stamp| record.change(stamp)).unwrap_or(change);
    Side { stamp: change.stamp, source: source.stamp, by: source.by(), at: source.at, value }
}
