//! The stack of one of a couple: as recorded, what it lacks, and what would be written down of it.

use chrono::NaiveDate;

use super::{StackAnswer, StackRules, answer};
use crate::book::change::Write;
use crate::book::checklist::Topic;
use crate::book::couple::{Couple, Ring};
use crate::book::field::{BandField, Field};
use crate::book::remedy::Way;
use crate::book::value::{StackSeen, Value};
use crate::forms::stack::{ROWS, StackTyped, finger_of_band, rings_here};
use crate::trade::measure::{Circumference, Diameter, Length};
use crate::trade::stack::{House, RingOnFinger, When};
use crate::trade::wearer::{Finger, Wearer};

/// A finger of size M½ or so, where nothing is known of it: only the drawing needs it.
pub const USUAL_FINGER: Diameter = Diameter(Length::tenthousandths(170_000));

/// How far the finger is across, by the settled size or the newest reading.
pub fn finger_across(couple: Couple<'_>, who: Wearer) -> Option<Diameter> {
    let settled = couple.order_size(who).map(|size| size.size.circumference());
    let read = || couple.readings(who).last().map(|(_, it)| it.size.circumference());
    settled.or_else(read).map(Circumference::diameter)
}

/// The stack as recorded; none where there is no band to compute it for.
pub fn of_couple(couple: Couple<'_>, rules: &StackRules, who: Wearer) -> Option<StackAnswer> {
    let typed = StackTyped::recorded(Some((couple, who)), &rules.house);
    Some(answer(&typed, rules)).filter(StackAnswer::has_band)
}

/// What a couple lacks for a stack.
pub fn lacking(couple: Couple<'_>, who: Wearer) -> Vec<Topic> {
    let band = couple.band(who).width.is_none().then_some(Topic::Band(who));
    let unasked = couple.rings(who).is_empty() && !couple.has_no_rings(who);
    band.into_iter().chain(unasked.then_some(Topic::Rings(who))).collect()
}

/// What the rings take at the top of the finger, now and with those to come, where a remedy was chosen that adds to the
/// stack that was noted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TopNoted {
    pub way: Way,
    pub now: Length,
    pub later: Length,
}

/// What the noted stack takes at the top by what was chosen. What was noted is the figure at the palm: to it come the
/// depth of the curve, or the gap that was accepted, and every other gap that a head leaves there, as the stack's own
/// answer has them. A band that is thin enough adds nothing.
pub fn noted_at_top(couple: Couple<'_>, house: House, who: Wearer) -> Option<TopNoted> {
    let seen = couple.stack(who)?;
    let chosen = couple.remedy(who).filter(|it| it.way != Way::Lower)?;
    let found = of_couple(couple, &StackRules::from(house), who);
    let gaps = |later: bool| {
        let of =
            |found: &StackAnswer| found.gaps_at_top(later, |pair| chosen.way == Way::Shaped || !found.is_of_band(pair));
        found.as_ref().map(of).unwrap_or_default()
    };
    let (now, later) = (seen.now + chosen.by + gaps(false), seen.later + chosen.by + gaps(true));
    Some(TopNoted { way: chosen.way, now, later })
}

/// Where a ring lies on the finger of the band, counted from the web, the band among them; none for one on another
/// finger.
pub fn place_on_finger(couple: Couple<'_>, who: Wearer, ring: &Ring) -> Option<u16> {
    let at = rings_here(couple, who).iter().position(|it| it.item == ring.item)?;
    let band = couple.band(who);
    let nearer = band.width.is_some() && usize::from(band.place.map_or(0, |place| place.0)) <= at;
    Some((at + 1 + usize::from(nearer)) as u16)
}

/// Rings that hold those nearer the web, each with how many lie there.
pub fn holding(couple: Couple<'_>, who: Wearer) -> Vec<(Ring, usize)> {
    let here = rings_here(couple, who).into_iter().filter(|ring| ring.holds);
    here.filter_map(|ring| Some((place_on_finger(couple, who, &ring)?, ring)))
        .map(|(place, ring)| (ring, usize::from(place) - 1))
        .collect()
}

/// The rings on another finger, from the web outwards.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Elsewhere {
    pub finger: Finger,
    pub rings: Vec<RingOnFinger>,
    /// Rings of which no width is known.
    pub without_width: usize,
}

/// What lies on the other fingers of both hands, one entry a finger.
pub fn elsewhere(couple: Couple<'_>, who: Wearer) -> Vec<Elsewhere> {
    let Some(here) = finger_of_band(couple, who) else { return Vec::new() };
    let mut fingers: Vec<Elsewhere> = Vec::new();
    for ring in couple.rings(who) {
        let Some(finger) = ring.finger.filter(|finger| *finger != here) else { continue };
        if !fingers.iter().any(|it| it.finger == finger) {
            fingers.push(Elsewhere { finger, rings: Vec::new(), without_width: 0 });
        }
        let Some(there) = fingers.iter_mut().find(|it| it.finger == finger) else { continue };
        let when = if ring.planned { When::Later } else { When::Now };
        match ring.shoulder_width {
            Some(width) => there.rings.push(RingOnFinger { width, when }),
            None => there.without_width += 1,
        }
    }
    fingers
}

/// What about the couple's rings wants to be settled before the stack can be trusted.
#[derive(Clone, Debug, PartialEq)]
pub enum Unsettled {
    OnNoFinger(Ring),
    /// The finger of the band was not noted, and rings are on several.
    BandTakenFor(Finger),
    /// More rings than are counted beside the band, with those that are left out.
    NotCounted {
        recorded: usize,
        left_out: Vec<Ring>,
    },
}

pub fn unsettled(couple: Couple<'_>, who: Wearer) -> Vec<Unsettled> {
    let here = rings_here(couple, who);
    let no_finger = here.iter().filter(|ring| ring.finger.is_none());
    let mut all: Vec<Unsettled> = no_finger.cloned().map(Unsettled::OnNoFinger).collect();
    let guessed = finger_of_band(couple, who).filter(|_| couple.finger(who).is_none());
    all.extend(guessed.filter(|_| !elsewhere(couple, who).is_empty()).map(Unsettled::BandTakenFor));
    let left_out: Vec<Ring> = here.iter().skip(ROWS.len()).cloned().collect();
    if !left_out.is_empty() {
        all.push(Unsettled::NotCounted { recorded: here.len(), left_out });
    }
    all
}

impl StackAnswer {
    /// What is written down of the stack: what it came to, where the band lies, and the free lengths that were measured
    /// in the tool. `couple` is as the tool found it.
    pub fn writes(&self, couple: Couple<'_>, who: Wearer, today: NaiveDate) -> Vec<Write> {
        let Some(stack) = &self.stack else { return Vec::new() };
        let seen = StackSeen {
            now: stack.now.total,
            later: stack.later.total,
            free: stack.free_length,
            measured: self.measured.is_some(),
            off: self.off(),
            seen: today,
        };
        let length = |field, value: Option<Length>| Write { field, value: value.map(Value::Length) };
        let mut writes = Vec::new();
        if self.measured != couple.free_length(who) {
            writes.push(length(Field::FreeLength(who), self.measured));
        }
        if let Some(place) = self.place.filter(|place| couple.band(who).place != Some(*place)) {
            writes.push(Write::set(Field::Band(who, BandField::Place), Value::Place(place)));
        }
        for finger in elsewhere(couple, who).into_iter().map(|it| it.finger) {
            let free = self.free_elsewhere.iter().find(|(of, _)| *of == finger).map(|it| it.1);
            if free != couple.free_length_of(who, finger) {
                writes.push(length(Field::FreeLengthOf(who, finger), free));
            }
        }
        writes.push(Write::set(Field::Stack(who), Value::Stack(seen)));
        writes
    }
}
