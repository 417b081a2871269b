//! A couple as it stands: the newest writes of its record, read as what they mean.

use std::collections::BTreeSet;

use chrono::NaiveDate;

use super::field::{AppointmentField, BandField, Field, Outcome, RingField, Stage, Wish};
use super::id::ItemId;
use super::record::Record;
use super::remedy::Remedy;
use super::said::Said;
use super::value::{DatesSettled, ExtraWork, FittedAt, OrderSize, ReadingTaken, Recorded, StackSeen, Value, When};
use crate::trade::arrange::in_order;
use crate::trade::band::alloys::Alloy;
use crate::trade::band::{Finish, Profile};
use crate::trade::dates::milestones::Milestone;
use crate::trade::dates::wedding::Wedding;
use crate::trade::limits::Whole;
use crate::trade::measure::Length;
use crate::trade::wearer::{Finger, Wearer};

/// Reads one kind of value; a value of another kind reads as none.
macro_rules! read {
    ($record:expr, $field:expr, $kind:ident) => {
        match $record.get(&$field) {
            Some(Value::$kind(value)) => Some(value),
            _ => None,
        }
    };
}
pub(super) use read;

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

/// A ring they own, or one to come.
#[derive(Clone, Debug, PartialEq)]
pub struct Ring {
    pub item: ItemId,
    pub name: Option<String>,
    pub finger: Option<Finger>,
    pub shoulder_width: Option<Length>,
    pub top_width: Option<Length>,
    pub back_width: Option<Length>,
    pub height: Option<Length>,
    /// Across the inside.
    pub inside: Option<Length>,
    pub profile: Option<Profile>,
    pub metal: Option<&'static Alloy>,
    pub head: Head,
    /// Stones down the shoulders.
    pub stones: bool,
    /// Which it is on the finger: the first is nearest the web.
    pub place: Option<Whole>,
    /// It holds those nearer the web.
    pub holds: bool,
    pub planned: bool,
}

/// The head of a ring, as far as it was measured.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Head {
    pub to_web: Option<Length>,
    pub to_tip: Option<Length>,
    pub underside: Option<Length>,
}

/// The band wanted, as far as it is settled.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Band {
    pub width: Option<Length>,
    pub profile: Option<Profile>,
    pub finish: Option<Finish>,
    pub metal: Option<&'static Alloy>,
    pub height: Option<Length>,
    pub dome: Option<Length>,
    pub relief: Option<Length>,
    /// How many rings lie between it and the web.
    pub place: Option<Whole>,
}

impl Ring {
    /// A ring of which nothing is known.
    pub fn unknown(item: ItemId) -> Ring {
        Ring {
            item,
            name: None,
            finger: None,
            shoulder_width: None,
            top_width: None,
            back_width: None,
            height: None,
            inside: None,
            profile: None,
            metal: None,
            head: Head::default(),
            stones: false,
            place: None,
            holds: false,
            planned: false,
        }
    }
}

impl Band {
    /// Whether the bench would know what to make.
    pub fn is_whole(&self) -> bool {
        self.width.is_some() && self.profile.is_some() && self.finish.is_some() && self.metal.is_some()
    }

    pub fn is_empty(&self) -> bool {
        self.width.is_none() && self.profile.is_none() && self.finish.is_none() && self.metal.is_none()
    }
}

impl<'a> Couple<'a> {
    pub fn name(self, wearer: Wearer) -> Option<&'a str> {
        read!(self.0, Field::Name(wearer), Text).map(String::as_str)
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
        read!(self.0, Field::Met, Text).map(String::as_str)
    }

    pub fn wedding(self) -> Option<Wedding> {
        read!(self.0, Field::Wedding, Wedding).copied()
    }

    pub fn recorded(self) -> Option<Recorded> {
        read!(self.0, Field::Recorded, Recorded).copied()
    }

    /// Where the couple stands. Everybody starts as an enquiry.
    pub fn stage(self) -> Stage {
        read!(self.0, Field::Stage, Stage).copied().unwrap_or(Stage::Enquiry)
    }

    pub fn reached(self, stage: Stage) -> Option<NaiveDate> {
        read!(self.0, Field::Reached(stage), Day).copied()
    }

    pub fn put_away(self) -> Option<NaiveDate> {
        read!(self.0, Field::PutAway, Day).copied()
    }

    /// Whether this is one of the invented couples.
    pub fn is_example(self) -> bool {
        read!(self.0, Field::Example, Yes).copied().unwrap_or(false)
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
            when: *read!(self.0, field(AppointmentField::When), When)?,
            place: read!(self.0, field(AppointmentField::Place), Text).cloned(),
            outcome: read!(self.0, field(AppointmentField::Outcome), Outcome).copied(),
        })
    }

    pub fn finger(self, wearer: Wearer) -> Option<Finger> {
        read!(self.0, Field::Finger(wearer), Finger).copied()
    }

    /// Whether the wearer has never worn a ring; none if nobody has asked.
    pub fn first_ring(self, wearer: Wearer) -> Option<bool> {
        read!(self.0, Field::FirstRing(wearer), Yes).copied()
    }

    /// Whether the wearer was asked and owns no other ring for this finger.
    pub fn has_no_rings(self, wearer: Wearer) -> bool {
        read!(self.0, Field::NoRings(wearer), Yes).copied().unwrap_or(false)
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
        let field = |part| Field::Ring(wearer, item, part);
        let length = |part| read!(self.0, field(part), Length).copied();
        let yes = |part| read!(self.0, field(part), Yes).copied().unwrap_or(false);
        Ring {
            item,
            name: read!(self.0, field(RingField::Name), Text).cloned(),
            finger: read!(self.0, field(RingField::Finger), Finger).copied(),
            shoulder_width: length(RingField::ShoulderWidth),
            top_width: length(RingField::TopWidth),
            back_width: length(RingField::BackWidth),
            height: length(RingField::Height),
            inside: length(RingField::Inside),
            profile: read!(self.0, field(RingField::Profile), Profile).copied(),
            metal: read!(self.0, field(RingField::Metal), Metal).copied(),
            head: Head {
                to_web: length(RingField::HeadToWeb),
                to_tip: length(RingField::HeadToTip),
                underside: length(RingField::HeadUnderside),
            },
            stones: yes(RingField::Stones),
            place: read!(self.0, field(RingField::Place), Place).copied(),
            holds: yes(RingField::Holds),
            planned: yes(RingField::Planned),
        }
    }

    pub fn band(self, wearer: Wearer) -> Band {
        let field = |part| Field::Band(wearer, part);
        let length = |part| read!(self.0, field(part), Length).copied();
        Band {
            width: length(BandField::Width),
            profile: read!(self.0, field(BandField::Profile), Profile).copied(),
            finish: read!(self.0, field(BandField::Finish), Finish).copied(),
            metal: read!(self.0, field(BandField::Metal), Metal).copied(),
            height: length(BandField::Height),
            dome: length(BandField::Dome),
            relief: length(BandField::Relief),
            place: read!(self.0, field(BandField::Place), Place).copied(),
        }
    }

    pub fn order_size(self, wearer: Wearer) -> Option<OrderSize> {
        read!(self.0, Field::OrderSize(wearer), OrderSize).copied()
    }

    /// What is to be thought of about the finger.
    pub fn wishes(self, wearer: Wearer) -> Vec<Wish> {
        let said = |wish: &Wish| read!(self.0, Field::Wish(wearer, *wish), Yes) == Some(&true);
        Wish::ALL.into_iter().filter(said).collect()
    }

    /// The day on which the finger is to be measured again.
    pub fn measure_again(self, wearer: Wearer) -> Option<NaiveDate> {
        read!(self.0, Field::MeasureAgain(wearer), Day).copied()
    }

    /// What the band was kept at or resized to.
    pub fn fitted(self, wearer: Wearer) -> Option<&'a FittedAt> {
        read!(self.0, Field::Fitted(wearer), Fitted)
    }

    pub fn free_length(self, wearer: Wearer) -> Option<Length> {
        read!(self.0, Field::FreeLength(wearer), Length).copied()
    }

    /// The free length of one finger of a wearer.
    pub fn free_length_of(self, wearer: Wearer, finger: Finger) -> Option<Length> {
        if self.finger(wearer) == Some(finger) {
            return self.free_length(wearer);
        }
        read!(self.0, Field::FreeLengthOf(wearer, finger), Length).copied()
    }

    pub fn remedy(self, wearer: Wearer) -> Option<Remedy> {
        read!(self.0, Field::Remedy(wearer), Remedy).copied()
    }

    /// The day on which a ring was handed over for the bench.
    pub fn ring_gone(self, wearer: Wearer) -> Option<NaiveDate> {
        read!(self.0, Field::RingGone(wearer), Day).copied()
    }

    pub fn ring_back(self, wearer: Wearer) -> Option<NaiveDate> {
        read!(self.0, Field::RingBack(wearer), Day).copied()
    }

    pub fn stack(self, wearer: Wearer) -> Option<StackSeen> {
        read!(self.0, Field::Stack(wearer), Stack).copied()
    }

    pub fn dates(self) -> Option<&'a DatesSettled> {
        read!(self.0, Field::Dates, Dates)
    }

    pub fn read_back(self) -> Option<NaiveDate> {
        read!(self.0, Field::ReadBack, Day).copied()
    }

    /// The day on which a step of the order was finished.
    pub fn work_done(self, work: ExtraWork) -> Option<NaiveDate> {
        read!(self.0, Field::WorkDone(work), Day).copied()
    }

    /// The day on which a milestone was said to be reached.
    pub fn milestone_done(self, milestone: Milestone) -> Option<NaiveDate> {
        read!(self.0, Field::MilestoneDone(milestone), Day).copied()
    }

    /// What they said before they came, the first list that was taken in first.
    pub fn said(self) -> Vec<&'a Said> {
        let all = self.0.fields().filter_map(|(field, value)| match value {
            Value::Said(said) => Some((field, &**said)),
            _ => None,
        });
        in_order(all, |(field, _)| self.written(field)).into_iter().map(|(_, said)| said).collect()
    }

    /// Whether anything that the bench needs was written after the read-back.
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
            )
        })
    }

    /// Whether any of these fields holds what the author of that one had not seen: written after it, or meanwhile on
    /// another phone. What was never written cannot be out of date.
    pub fn changed_since(self, settled: &Field, any: impl Fn(&Field) -> bool) -> bool {
        self.0.is_unseen_by(settled, any)
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
