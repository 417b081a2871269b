//! A finger, from its readings: which of them count and how much, what they come to together, and of which other fingers
//! there are some.

use crate::book::couple::Couple;
use crate::book::fitting::{self, JointRead};
use crate::book::id::ItemId;
use crate::book::practice::Practice;
use crate::book::value::ReadingTaken;
use crate::trade::fit::{Combined, Part, Place};
use crate::trade::measure::{Circumference, Length};
use crate::trade::sizing::System;
use crate::trade::wearer::{Finger, Wearer};

/// How a reading counts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Counts {
    /// It is of another finger than the band.
    OfAnotherFinger,
    /// The jeweller left it out.
    LeftOut,
    /// It is the only one of its place.
    Alone,
    /// It is one of several.
    Part(Part),
}

/// A reading, and how it counts.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadingSeen {
    pub item: ItemId,
    pub taken: ReadingTaken,
    pub counts: Counts,
    /// What it stands for, where that is more than it says.
    pub put_right: Option<Circumference>,
}

#[derive(Clone, Debug, PartialEq)]
pub struct FingerAnswer {
    /// In the order in which they were taken.
    pub readings: Vec<ReadingSeen>,
    pub base: Option<Combined>,
    pub joint: Option<JointRead>,
    /// Other fingers that were read, each once: the band could go there.
    pub others: Vec<Finger>,
    /// The size system shown first.
    pub system: System,
}

/// The newest reading that a new one contradicts, and how much larger the new one is.
pub fn contradicted<'a>(
    couple: Couple<'a>,
    practice: Practice<'_>,
    who: Wearer,
    fresh: &ReadingTaken,
) -> Option<(&'a ReadingTaken, Length)> {
    fitting::contradicted(couple, practice, who, fresh)
}

/// What is known of the finger of one of a couple.
pub fn of_couple(couple: Couple<'_>, practice: Practice<'_>, who: Wearer) -> FingerAnswer {
    let found = Place::ALL.map(|place| {
        let counted = fitting::counted(couple, who, place).into_iter().map(|(item, _)| item);
        (counted.collect::<Vec<ItemId>>(), fitting::together(couple, practice, who, place))
    });
    let part = |item: ItemId| {
        found.iter().find_map(|(counted, together)| {
            let at = counted.iter().position(|other| *other == item)?;
            let parts = &together.as_ref()?.parts;
            parts.get(at).filter(|_| parts.len() > 1)
        })
    };
    let seen = |(item, taken): (ItemId, &ReadingTaken)| {
        let is_here = fitting::is_of_the_bands_finger(couple, who, taken);
        let counts = match part(item) {
            _ if !is_here => Counts::OfAnotherFinger,
            _ if taken.left_out => Counts::LeftOut,
            Some(part) => Counts::Part(*part),
            None => Counts::Alone,
        };
        let put_right = if is_here { fitting::put_right(taken, practice) } else { None };
        ReadingSeen { item, taken: taken.clone(), counts, put_right }
    };
    let readings: Vec<ReadingSeen> = couple.readings(who).into_iter().map(seen).collect();
    let mut others: Vec<Finger> = Vec::new();
    for it in readings.iter().filter(|it| it.counts == Counts::OfAnotherFinger) {
        if !others.contains(&it.taken.finger) {
            others.push(it.taken.finger);
        }
    }
    FingerAnswer {
        readings,
        base: fitting::together(couple, practice, who, Place::Base),
        joint: fitting::joint(couple, who),
        others,
        system: practice.first_system(),
    }
}
