//! The pocket checklist: what has to be known before a bench can make two bands without ringing back.

use super::couple::Couple;
use super::field::{BandField, Field, Stage};
use super::fitting;
use super::remedy;
use crate::trade::dates::wedding::Wedding;
use crate::trade::fit::Place;
use crate::trade::wearer::Wearer;

pub use super::care::Care;

/// One line of the checklist.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Topic {
    Wedding,
    Finger(Wearer),
    Rings(Wearer),
    Band(Wearer),
    OrderSize(Wearer),
    Stack(Wearer),
    Dates,
    Notes,
    ReadBack,
    /// What fitted in the end: asked once the bands are collected.
    Fitted(Wearer),
}

/// How a line stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    Open,
    Done,
    /// Something is there, and something about it wants another look.
    Care(Care),
}

/// The lines, in the order of the conversation. Notes are written at any time and never the next thing to do.
pub const TOPICS: [Topic; 14] = [
    Topic::Wedding,
    Topic::Finger(Wearer::First),
    Topic::Finger(Wearer::Second),
    Topic::Rings(Wearer::First),
    Topic::Rings(Wearer::Second),
    Topic::Band(Wearer::First),
    Topic::Band(Wearer::Second),
    Topic::OrderSize(Wearer::First),
    Topic::OrderSize(Wearer::Second),
    Topic::Stack(Wearer::First),
    Topic::Stack(Wearer::Second),
    Topic::Dates,
    Topic::Notes,
    Topic::ReadBack,
];

/// The lines of a couple: once the bands are collected, also what fitted each that had a size.
pub fn topics(couple: Couple<'_>) -> Vec<Topic> {
    let mut all = TOPICS.to_vec();
    if couple.stage() == Stage::Collected {
        let sized = Wearer::BOTH.into_iter().filter(|who| couple.order_size(*who).is_some());
        all.extend(sized.map(Topic::Fitted));
    }
    all
}

/// The next thing to do: the first line with nothing on it, otherwise the first that wants another look.
pub fn next(couple: Couple<'_>) -> Option<Topic> {
    let asked = || topics(couple).into_iter().filter(|topic| *topic != Topic::Notes);
    let open = asked().find(|topic| state(couple, *topic) == State::Open);
    open.or_else(|| asked().find(|topic| matches!(state(couple, *topic), State::Care(_))))
}

/// How a line stands.
pub fn state(couple: Couple<'_>, topic: Topic) -> State {
    if differs(couple, topic) { State::Care(Care::Differs) } else { settled(couple, topic) }
}

/// Whether two phones say different things of what a line is about, also of whether it is there at all.
pub fn differs(couple: Couple<'_>, topic: Topic) -> bool {
    let wanted = |field: &Field| is_of(field, topic);
    couple.0.differs(wanted) || (matches!(topic, Topic::Rings(_)) && couple.0.is_removed_unseen(wanted))
}

/// Whether what wants another look at a stack is what was chosen beside a head, and not the stack itself.
pub fn is_about_remedy(couple: Couple<'_>, topic: Topic) -> Option<Wearer> {
    let Topic::Stack(wearer) = topic else { return None };
    match state(couple, topic) {
        State::Care(Care::RemedyStale | Care::BenchOpen | Care::AwayOpen | Care::AwayAtWedding) => Some(wearer),
        _ => None,
    }
}

/// Whether a field is part of what a line is about.
pub fn is_of(field: &Field, topic: Topic) -> bool {
    match (topic, field) {
        (Topic::Wedding, Field::Wedding)
        | (Topic::Dates, Field::Dates)
        | (Topic::Notes, Field::Note(_))
        | (Topic::ReadBack, Field::ReadBack) => true,
        (Topic::Finger(whose), Field::Finger(of) | Field::FirstRing(of) | Field::Reading(of, _))
        | (Topic::Fitted(whose), Field::Fitted(of))
        | (Topic::Rings(whose), Field::NoRings(of) | Field::Ring(of, ..))
        | (Topic::Band(whose), Field::Band(of, _))
        | (Topic::OrderSize(whose), Field::OrderSize(of))
        | (Topic::Stack(whose), Field::Stack(of) | Field::FreeLength(of) | Field::FreeLengthOf(of, _))
        | (Topic::Stack(whose), Field::Remedy(of) | Field::RingGone(of) | Field::RingBack(of)) => whose == *of,
        _ => false,
    }
}

fn settled(couple: Couple<'_>, topic: Topic) -> State {
    match topic {
        Topic::Wedding => wedding(couple),
        Topic::Finger(wearer) => {
            if fitting::counted(couple, wearer, Place::Base).is_empty() {
                State::Open
            } else {
                State::Done
            }
        }
        Topic::Rings(wearer) => rings(couple, wearer),
        Topic::Band(wearer) => {
            let band = couple.band(wearer);
            match (band.is_empty(), band.is_whole()) {
                (true, _) => State::Open,
                (_, true) => State::Done,
                _ => State::Care(Care::Incomplete),
            }
        }
        Topic::OrderSize(wearer) => order_size(couple, wearer),
        Topic::Stack(wearer) => stack(couple, wearer),
        Topic::Dates => dates(couple),
        Topic::Notes => {
            if couple.notes().is_empty() {
                State::Open
            } else {
                State::Done
            }
        }
        Topic::Fitted(wearer) if couple.fitted(wearer).is_some() => State::Done,
        Topic::Fitted(_) => State::Open,
        Topic::ReadBack => match couple.read_back() {
            None => State::Open,
            Some(_) if couple.changed_since_read_back() => State::Care(Care::Changed),
            Some(_) => State::Done,
        },
    }
}

fn wedding(couple: Couple<'_>) -> State {
    match couple.wedding() {
        None => State::Open,
        Some(Wedding::Day(_)) => State::Done,
        Some(_) => State::Care(Care::DateNotFixed),
    }
}

fn rings(couple: Couple<'_>, wearer: Wearer) -> State {
    let rings = couple.rings(wearer);
    if rings.iter().any(|ring| ring.shoulder_width.is_none()) {
        State::Care(Care::Incomplete)
    } else if rings.is_empty() && !couple.has_no_rings(wearer) {
        State::Open
    } else {
        State::Done
    }
}

fn order_size(couple: Couple<'_>, wearer: Wearer) -> State {
    let Some(size) = couple.order_size(wearer) else { return State::Open };
    let rests_on = |field: &Field| match field {
        // Where it lies, how high it is and how far it is domed do not change what size it is.
        Field::Band(_, BandField::Place | BandField::Height | BandField::Dome) => false,
        // Nor does a reading of another finger, taken to compare.
        Field::Reading(whose, item) => {
            let readings = couple.readings(wearer);
            let taken = readings.iter().find(|(other, _)| other == item);
            let aside = taken.is_some_and(|(_, taken)| !fitting::is_of_the_bands_finger(couple, wearer, taken));
            *whose == wearer && !aside
        }
        words if words.is_words_of_ring() => false,
        Field::Finger(whose) | Field::Ring(whose, ..) | Field::Band(whose, _) => *whose == wearer,
        _ => false,
    };
    if couple.changed_since(&Field::OrderSize(wearer), rests_on) {
        State::Care(Care::Changed)
    } else if size.measure_again {
        State::Care(Care::MeasureAgain)
    } else {
        State::Done
    }
}

fn stack(couple: Couple<'_>, wearer: Wearer) -> State {
    let Some(seen) = couple.stack(wearer) else { return State::Open };
    let rests_on = |field: &Field| match field {
        words if words.is_words_of_ring() => false,
        Field::Ring(whose, ..) | Field::Band(whose, _) | Field::FreeLength(whose) => *whose == wearer,
        _ => false,
    };
    if couple.changed_since(&Field::Stack(wearer), rests_on) {
        return State::Care(Care::Changed);
    }
    remedy::care(couple, wearer, seen.off).map_or(State::Done, State::Care)
}

/// Once it is ordered there is nothing left to count to: the plan says how the order stands.
fn dates(couple: Couple<'_>) -> State {
    match couple.dates() {
        _ if matches!(couple.stage(), Stage::Ordered | Stage::Collected) => State::Done,
        None => State::Open,
        Some(_) if couple.changed_since(&Field::Dates, |field| *field == Field::Wedding) => State::Care(Care::Changed),
        Some(_) => State::Done,
    }
}
