//! Whether rings lie flush: heads that reach over the side of their shank hold the next ring off, or the one after it.

use crate::trade::band::section::Section;
use crate::trade::measure::Length;

/// A ring as it lies beside others.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Lying {
    /// At three and nine o'clock.
    pub width: Length,
    /// None where profile or height is not known: a head is then taken to meet a straight side, as high as need be.
    pub section: Option<Section>,
    pub head: Option<Head>,
    /// Across the inside.
    pub inside: Option<Length>,
}

/// The head of a ring. How far it reaches is measured from a straight edge laid against the ring's shoulders, at three
/// and nine o'clock: so far a straight band beside it lies, however narrow the ring is at its top. From its underside up it is taken to reach as far as it does at the height of a band: claws
/// flare, so that lower down they may reach less, and what is worked out is the most that a band is held off.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Head {
    /// Over the side of its shank that faces the web.
    pub to_web: Length,
    /// Over the side that faces the fingertip.
    pub to_tip: Length,
    /// The height of its underside above the finger.
    pub underside: Length,
}

/// Two neighbours, the first of them nearer the web.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Apart {
    pub rings: (usize, usize),
    /// How far they stand off at the top, pressed together: nothing means flush.
    pub top: Length,
    /// A rigid band that leans stands off half of it at the shoulders, and nothing at the palm.
    pub shoulders: Length,
    pub cause: Option<Cause>,
}

/// What holds two rings apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Cause {
    /// The ring with the head.
    pub head: usize,
    /// The ring it meets. Not its neighbour where the head reaches past that one.
    pub meets: usize,
    /// The other ring's head is what it meets.
    pub heads_meet: bool,
    /// The section of the ring it meets is not known: at most so far.
    pub at_most: bool,
}

/// How far neighbours stand apart when all of them are pressed together, from the web outwards.
///
/// Each ring is moved up to the one before it until it touches: its side, or any head of any ring. A head meets a
/// band's side where it is nearest: s = max over z of [o - b(z)], z from its underside, less the clearance, to the
/// band's height; b(z) how far the side has receded ([`Section::recess`]). The clearance shrinks by half of what the
/// ring with the head is larger across than the other, down to nothing, and grows by half of what it is smaller. A looser
/// ring is not taken to lift its head: it may sit higher by so much, or rest on the finger.
/// Millimetres. Source: geometry; the clearance of 0.2 mm is common practice.
///
/// ```
/// use bandwright::trade::{band::{Profile, section::*}, measure::Length, stack::*};
/// let mm = Length::from_mm;
/// let of = SectionInputs { profile: Profile::D, width: mm(4.0), height: mm(1.8), dome: Some(mm(0.5)), relief: None };
/// let band = Lying { width: mm(4.0), section: Section::new(&of).ok(), head: None, inside: None };
/// let head = Head { to_web: mm(0.8), to_tip: mm(0.8), underside: mm(1.5) };
/// let ring = Lying { width: mm(2.6), section: None, head: Some(head), inside: None };
/// assert!((flush(&[ring, band], Length::ZERO)[0].top.mm() - 0.37).abs() < 0.005);
/// ```
pub fn flush(rings: &[Lying], clearance: Length) -> Vec<Apart> {
    let mut starts: Vec<Length> = Vec::new();
    let mut apart = Vec::new();
    for (at, ring) in rings.iter().enumerate() {
        let Some(before) = at.checked_sub(1) else {
            starts.push(Length::ZERO);
            continue;
        };
        let touching = starts[before] + rings[before].width;
        let mut start = touching;
        let mut cause = None;
        for (other, lying) in rings[..at].iter().enumerate() {
            let side = starts[other] + lying.width;
            for (reach, found) in meetings((other, lying), (at, ring), clearance) {
                if side + reach > start {
                    start = side + reach;
                    cause = Some(found);
                }
            }
        }
        let top = start - touching;
        apart.push(Apart { rings: (before, at), top, shoulders: top.half(), cause });
        starts.push(start);
    }
    apart
}

/// What of two rings may meet, and how far apart their sides are then.
fn meetings(near: (usize, &Lying), far: (usize, &Lying), clearance: Length) -> Vec<(Length, Cause)> {
    let mut found = Vec::new();
    let mut one = |(owner, ring): (usize, &Lying), (other, meets): (usize, &Lying), reach: fn(&Head) -> Length| {
        let Some(head) = &ring.head else { return };
        let from = head.underside - needed(clearance, ring, meets);
        let recess = meets.section.map_or(Some(Length::ZERO), |section| nearest(&section, from));
        if let Some(recess) = recess {
            let cause = Cause { head: owner, meets: other, heads_meet: false, at_most: meets.section.is_none() };
            found.push((reach(head) - recess, cause));
        }
    };
    one(near, far, |head| head.to_tip);
    one(far, near, |head| head.to_web);
    if let (Some(head), Some(other)) = (&near.1.head, &far.1.head) {
        let cause = Cause { head: near.0, meets: far.0, heads_meet: true, at_most: false };
        found.push((head.to_tip + other.to_web, cause));
    }
    found
}

/// The clearance under a head, less half of what its ring is larger across than the other; never below nothing.
fn needed(clearance: Length, with_head: &Lying, other: &Lying) -> Length {
    let larger = match (with_head.inside, other.inside) {
        (Some(with_head), Some(other)) => with_head - other,
        _ => Length::ZERO,
    };
    (clearance - larger.half()).max(Length::ZERO)
}

/// How far a band's side has receded where something from this height up is nearest to it; none if it is below that.
fn nearest(section: &Section, from: Length) -> Option<Length> {
    (from < section.height()).then(|| section.recess(from.max(section.edge().1)))
}

/// What can be done about a band that is held off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Remedies {
    /// How deep the bay of a shaped band is; so much it adds to the stack.
    pub bay: Length,
    /// Whether the straight band clears the head where it is thinner.
    pub height: Clears,
    /// The gap that is accepted otherwise.
    pub gap: Length,
}

/// Whether a thinner band clears a head.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Clears {
    /// At this height at most.
    At(Length),
    /// Not before it is too thin. No band is made thinner than `least`.
    TooThin { least: Length },
    /// Its profile or its height is not known. At `least` it does, whatever its profile, where that is given.
    NotKnown { least: Option<Length> },
    /// Two heads meet: how high a band is does not matter.
    HeadsMeet,
}

/// What can be done about a band that a head holds off by `apart`: a bay, a thinner band, or the gap.
///
/// bay = s + clearance. Greatest height = underside - clearance + how far the dome has fallen where the head ends.
/// Millimetres; not below `least`. Source: geometry; the clearance and the least height are common practice.
pub fn remedies(apart: &Apart, rings: &[Lying], clearance: Length, least: Length) -> Option<Remedies> {
    let cause = apart.cause?;
    let (with_head, band) = (rings.get(cause.head)?, rings.get(cause.meets)?);
    let height = match (with_head.head.filter(|_| !cause.heads_meet), band.section) {
        (None, _) => Clears::HeadsMeet,
        (Some(head), None) => {
            let clears = head.underside - needed(clearance, with_head, band) >= least;
            Clears::NotKnown { least: clears.then_some(least) }
        }
        (Some(head), Some(section)) => {
            let reach = if cause.head < cause.meets { head.to_tip } else { head.to_web };
            // What lies between the two takes up a part of the reach.
            let between = (cause.head.min(cause.meets) + 1..cause.head.max(cause.meets)).filter_map(|at| rings.get(at));
            let reach = reach - between.map(|ring| ring.width).sum();
            let under = head.underside - needed(clearance, with_head, band);
            let height = under + section.drop((section.width().half() - reach).max(Length::ZERO));
            // Down to the hundredth, so that what is shown does clear.
            let height = height - Length::tenthousandths(height.in_tenthousandths().rem_euclid(100));
            // A drop that was rounded up may have lifted it onto that hundredth; under a flat dome a hair of height is
            // a hundred times as much of reach.
            let clears = |at: &Section| nearest(at, under).is_none_or(|recess| recess >= reach);
            let held_off = section.at_height(height).is_ok_and(|at| !clears(&at));
            let height = if held_off { height - Length::tenthousandths(100) } else { height };
            let is_band = height >= least && section.at_height(height).is_ok();
            if is_band { Clears::At(height) } else { Clears::TooThin { least } }
        }
    };
    Some(Remedies { bay: apart.top + clearance, height, gap: apart.top })
}

impl Clears {
    /// The height that clears, where there is one.
    pub fn height(self) -> Option<Length> {
        match self {
            Clears::At(height) => Some(height),
            Clears::TooThin { .. } | Clears::NotKnown { .. } | Clears::HeadsMeet => None,
        }
    }

    /// What does for both of two heads.
    pub fn and(self, other: Clears) -> Clears {
        match (self, other) {
            (Clears::At(one), Clears::At(other)) => Clears::At(one.min(other)),
            (Clears::NotKnown { least: one }, Clears::NotKnown { least: other }) => {
                Clears::NotKnown { least: one.and(other) }
            }
            (Clears::At(_), no_way) | (no_way, _) => no_way,
        }
    }
}
