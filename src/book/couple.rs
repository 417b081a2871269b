//! A couple as it stands: the newest writes of its record, read as what they mean.

use std::collections::BTreeSet;

use chrono::NaiveDate;

use super::field::{AppointmentField, Field};
use super::id::ItemId;
use super::record::Record;
use super::value::{
    DatesSettled, ExtraWork, FieldValue, FittedAt, OrderSize, Outcome, PreparationList, ReadingTaken, Recorded, Remedy,
    StackSeen, Stage, Value, When, Wish,
};
use crate::trade::arrange::in_order;
use crate::trade::dates::milestones::Milestone;
use crate::trade::dates::wedding::Wedding;
use crate::trade::limits::Whole;
use crate::trade::measure::Length;
use crate::trade::wearer::{Finger, Wearer};

pub use super::band::{Band, BandField};
pub use super::ring::{Head, Ring, RingField};

/// A reading view of a couple's record.
#[derive(Clone, Copy)]
pub struct Couple<'a>(pub &'a Record);

/// An appointment. It has at least a day.
#[derive(Clone, Debug, PartialEq)]
pub struct Appointment {
    pub item: ItemId,
    pub when: When,
    pub place: Option<String>,
    pub outcome: Option<Outcome>,
}

impl<'a> Couple<'a> {
    pub fn name(self, wearer: Wearer) -> Option<&'a str> {
        self.get(&Field::Name(wearer)).map(String::as_str)
    }

    /// Whether everything was taken back: such a record is kept and not shown.
    pub fn is_blank(self) -> bool {
        self.0.fields().next().is_none()
    }

    pub fn reach(self) -> Vec<(ItemId, &'a str)> {
        self.texts(|field| if let Field::Reach(item) = field { Some(*item) } else { None })
    }

    pub fn notes(self) -> Vec<(ItemId, &'a str)> {
        self.texts(|field| if let Field::Note(item) = field { Some(*item) } else { None })
    }

    pub fn met(self) -> Option<&'a str> {
        self.get(&Field::Met).map(String::as_str)
    }

    pub fn wedding(self) -> Option<Wedding> {
        self.get(&Field::Wedding).copied()
    }

    pub fn recorded(self) -> Option<Recorded> {
        self.get(&Field::Recorded).copied()
    }

    /// Where the couple stands. Everybody starts as an enquiry.
    pub fn stage(self) -> Stage {
        self.get(&Field::Stage).copied().unwrap_or(Stage::Enquiry)
    }

    pub fn reached(self, stage: Stage) -> Option<NaiveDate> {
        self.get(&Field::Reached(stage)).copied()
    }

    pub fn put_away(self) -> Option<NaiveDate> {
        self.get(&Field::PutAway).copied()
    }

    /// Whether this is one of the invented couples.
    pub fn is_example(self) -> bool {
        self.get(&Field::Example).copied().unwrap_or(false)
    }

    /// The appointments in the order of their days.
    pub fn appointments(self) -> Vec<Appointment> {
        let items = self.items(|field| match field {
            Field::Appointment(item, _) => Some(*item),
            _ => None,
        });
        in_order(items.into_iter().filter_map(|item| self.appointment(item)), |appointment| appointment.when)
    }

    pub fn appointment(self, item: ItemId) -> Option<Appointment> {
        let field = |part| Field::Appointment(item, part);
        Some(Appointment {
            item,
            when: *self.get(&field(AppointmentField::When))?,
            place: self.get(&field(AppointmentField::Place)).cloned(),
            outcome: self.get(&field(AppointmentField::Outcome)).copied(),
        })
    }

    pub fn finger(self, wearer: Wearer) -> Option<Finger> {
        self.get(&Field::Finger(wearer)).copied()
    }

    /// Whether the wearer has never worn a ring; none if nobody has asked.
    pub fn first_ring(self, wearer: Wearer) -> Option<bool> {
        self.get(&Field::FirstRing(wearer)).copied()
    }

    /// Whether the wearer was asked and owns no other ring for this finger.
    pub fn has_no_rings(self, wearer: Wearer) -> bool {
        self.get(&Field::NoRings(wearer)).copied().unwrap_or(false)
    }

    /// The readings of a wearer, oldest first.
    pub fn readings(self, wearer: Wearer) -> Vec<(ItemId, &'a ReadingTaken)> {
        let all = self.0.fields().filter_map(|(field, value)| match (field, value) {
            (Field::Reading(whose, item), Value::Reading(reading)) if *whose == wearer => Some((*item, reading)),
            _ => None,
        });
        in_order(all, |(item, _)| self.written(&Field::Reading(wearer, *item)))
    }

    /// The rings of a wearer from the web outwards; those without a place come last, as they were written down.
    pub fn rings(self, wearer: Wearer) -> Vec<Ring> {
        let items = self.items(|field| match field {
            Field::Ring(whose, item, _) if *whose == wearer => Some(*item),
            _ => None,
        });
        let all = items.into_iter().map(|item| self.ring(wearer, item));
        in_order(all, |ring| {
            let written = self.0.changes().iter().position(|change| {
                change.sets.iter().any(|set| matches!(&set.field, Field::Ring(_, item, _) if *item == ring.item))
            });
            (ring.place.unwrap_or(Whole(u16::MAX)), written)
        })
    }

    pub fn ring(self, wearer: Wearer, item: ItemId) -> Ring {
        let mut ring = Ring::unknown(item);
        for part in RingField::ALL {
            if let Some(value) = self.0.get(&Field::Ring(wearer, item, part)) {
                ring.put(part, value);
            }
        }
        ring
    }

    pub fn band(self, wearer: Wearer) -> Band {
        let mut band = Band::default();
        for part in BandField::ALL {
            if let Some(value) = self.0.get(&Field::Band(wearer, part)) {
                band.put(part, value);
            }
        }
        band
    }

    pub fn order_size(self, wearer: Wearer) -> Option<OrderSize> {
        self.get(&Field::OrderSize(wearer)).copied()
    }

    /// What is to be thought of about the finger.
    pub fn wishes(self, wearer: Wearer) -> Vec<Wish> {
        let said = |wish: &Wish| self.get(&Field::Wish(wearer, *wish)) == Some(&true);
        Wish::ALL.into_iter().filter(said).collect()
    }

    /// The day on which the finger is to be measured again.
    pub fn measure_again(self, wearer: Wearer) -> Option<NaiveDate> {
        self.get(&Field::MeasureAgain(wearer)).copied()
    }

    /// What the band was kept at or resized to.
    pub fn fitted(self, wearer: Wearer) -> Option<&'a FittedAt> {
        self.get(&Field::Fitted(wearer))
    }

    pub fn free_length(self, wearer: Wearer) -> Option<Length> {
        self.get(&Field::FreeLength(wearer)).copied()
    }

    /// The free length of one finger of a wearer.
    pub fn free_length_of(self, wearer: Wearer, finger: Finger) -> Option<Length> {
        if self.finger(wearer) == Some(finger) {
            return self.free_length(wearer);
        }
        self.get(&Field::FreeLengthOf(wearer, finger)).copied()
    }

    pub fn remedy(self, wearer: Wearer) -> Option<Remedy> {
        self.get(&Field::Remedy(wearer)).copied()
    }

    /// The day on which a ring was handed over for the bench.
    pub fn ring_gone(self, wearer: Wearer) -> Option<NaiveDate> {
        self.get(&Field::RingGone(wearer)).copied()
    }

    pub fn ring_back(self, wearer: Wearer) -> Option<NaiveDate> {
        self.get(&Field::RingBack(wearer)).copied()
    }

    pub fn stack(self, wearer: Wearer) -> Option<StackSeen> {
        self.get(&Field::Stack(wearer)).copied()
    }

    pub fn dates(self) -> Option<&'a DatesSettled> {
        self.get(&Field::Dates)
    }

    pub fn read_back(self) -> Option<NaiveDate> {
        self.get(&Field::ReadBack).copied()
    }

    /// The day on which a step of the order was finished.
    pub fn work_done(self, work: ExtraWork) -> Option<NaiveDate> {
        self.get(&Field::WorkDone(work)).copied()
    }

    /// The day on which a milestone was said to be reached.
    pub fn milestone_done(self, milestone: Milestone) -> Option<NaiveDate> {
        self.get(&Field::MilestoneDone(milestone)).copied()
    }

    /// What they said before they came, the first list that was taken in first.
    pub fn said(self) -> Vec<&'a PreparationList> {
        let all = self.0.fields().filter_map(|(field, value)| match value {
            Value::PreparationList(said) => Some((field, &**said)),
            _ => None,
        });
        in_order(all, |(field, _)| self.written(field)).into_iter().map(|(_, said)| said).collect()
    }

    /// Whether anything that the bench needs, or a list of their wishes, was written after the read-back.
    pub fn changed_since_read_back(self) -> bool {
        self.changed_since(&Field::ReadBack, |field| {
            matches!(
                field,
                Field::Wedding
                    | Field::Finger(_)
                    | Field::Reading(..)
                    | Field::NoRings(_)
                    | Field::Ring(..)
                    | Field::Band(..)
                    | Field::OrderSize(_)
                    | Field::Remedy(_)
                    | Field::Dates
                    | Field::PreparationList(_)
            )
        })
    }

    /// Whether any of these fields holds what the author of that one had not seen: written after it, or meanwhile on
    /// another phone. What was never written cannot be out of date.
    pub fn changed_since(self, settled: &Field, any: impl Fn(&Field) -> bool) -> bool {
        self.0.is_unseen_by(settled, any)
    }

    /// What a field holds, read as the type that it is wanted as. The field has to be one that holds such.
    fn get<T: FieldValue>(self, field: &Field) -> Option<&'a T> {
        debug_assert_eq!(field.kind(), Some(T::KIND), "{field:?}");
        self.0.get(field).and_then(T::of)
    }

    fn written(self, field: &Field) -> Option<usize> {
        self.0.changes().iter().position(|change| change.sets.iter().any(|set| set.field == *field))
    }

    fn items(self, of: impl Fn(&Field) -> Option<ItemId>) -> BTreeSet<ItemId> {
        let mut items = BTreeSet::new();
        items.extend(self.0.fields().filter_map(|(field, _)| of(field)));
        items
    }

    fn texts(self, of: impl Fn(&Field) -> Option<ItemId>) -> Vec<(ItemId, &'a str)> {
        let all = self.0.fields().filter_map(|(field, value)| match value {
            Value::Text(text) => Some((of(field)?, field, text.as_str())),
            _ => None,
        });
        let all = in_order(all, |(_, field, _)| self.written(field));
        all.into_iter().map(|(item, _, text)| (item, text)).collect()
    }
}
