//! Two rings beside each other: how they match, how far a head keeps them apart, and what the rings take at the top.

use super::{RingInStack, StackAnswer};
use crate::trade::measure::Length;
use crate::trade::stack::{
    self, Apart, House, Lying, ProfileMatch, Remedies, RingState, ShoulderMatch, Stack, StackInputs, Wear,
};

/// The band against a ring that lies next to it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Match {
    /// Which of the rings.
    pub ring: usize,
    pub band: Length,
    pub found: ShoulderMatch,
    pub profile: Option<ProfileMatch>,
}

/// Two neighbours.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pair {
    /// Only once the rings to come are there.
    pub later: bool,
    pub apart: Apart,
    /// How far they stand off at the top with the curve of the band.
    pub left: Length,
    /// Where what is held off is still to be made.
    pub remedies: Option<Remedies>,
    pub wear: Wear,
}

/// The band against each ring that lies next to it.
pub(super) fn matches(rings: &[RingInStack]) -> Vec<Match> {
    let Some(at) = rings.iter().position(|ring| ring.state == RingState::Wanted) else { return Vec::new() };
    let band = &rings[at];
    let beside = [at.checked_sub(1), Some(at + 1)].into_iter().flatten();
    let one = |at: usize| {
        let ring = rings.get(at)?;
        let found = stack::shoulder_match(band.lying.width, &ring.widths).ok()?;
        let profile = band.profile.zip(ring.profile).map(|(band, ring)| stack::profile_match(band, ring));
        Some(Match { ring: at, band: band.lying.width, found, profile })
    };
    beside.filter_map(one).collect()
}

/// Every two neighbours as they are worn now; of those with the rings to come, the ones that are new.
pub(super) fn pairs(rings: &[RingInStack], house: &House, curve: Option<Length>) -> Vec<Pair> {
    let worn: Vec<usize> = (0..rings.len()).filter(|at| rings[*at].state != RingState::Planned).collect();
    let mut found = neighbours(rings, &worn, house, curve);
    if worn.len() < rings.len() {
        let every: Vec<usize> = (0..rings.len()).collect();
        let later = neighbours(rings, &every, house, curve);
        let is_new = |pair: &Pair| {
            !found.iter().any(|now| now.apart.rings == pair.apart.rings && now.apart.top == pair.apart.top)
        };
        let new: Vec<Pair> = later.into_iter().filter(is_new).map(|pair| Pair { later: true, ..pair }).collect();
        found.extend(new);
    }
    found
}

fn neighbours(rings: &[RingInStack], order: &[usize], house: &House, curve: Option<Length>) -> Vec<Pair> {
    let lying: Vec<Lying> = order.iter().map(|at| rings[*at].lying).collect();
    let one = |apart: Apart| {
        let made = apart.cause.is_some_and(|cause| rings[order[cause.meets]].state != RingState::Worn);
        let remedies = stack::remedies(&apart, &lying, house.clearance, house.thinnest).filter(|_| made);
        let pair = (order[apart.rings.0], order[apart.rings.1]);
        let wear = stack::wear(&rings[pair.0].surface, &rings[pair.1].surface, house.catch);
        let cause =
            apart.cause.map(|cause| stack::Cause { head: order[cause.head], meets: order[cause.meets], ..cause });
        // The curve gives way to a head that meets the band.
        let of_band = cause.is_some_and(|cause| !cause.heads_meet && rings[cause.meets].state == RingState::Wanted);
        let curve = curve.filter(|_| of_band).unwrap_or_default();
        let left = (apart.top - curve).max(Length::ZERO);
        Pair { later: false, apart: Apart { rings: pair, cause, ..apart }, left, remedies, wear }
    };
    stack::flush(&lying, house.clearance).into_iter().map(one).collect()
}

impl StackAnswer {
    /// Two neighbours, the second of them this ring: as they are worn now, or once all are there.
    fn pair_before(&self, ring: usize, later: bool) -> Option<&Pair> {
        self.pairs.iter().rfind(|pair| pair.apart.rings.1 == ring && (later || !pair.later))
    }

    /// What all gaps between neighbours add at the top, now or with the rings to come.
    pub fn gaps_at_top(&self, later: bool, counts: impl Fn(&Pair) -> bool) -> Length {
        let pairs = (0..self.rings.len()).filter_map(|ring| self.pair_before(ring, later));
        pairs.filter(|pair| counts(pair)).map(|pair| pair.left).sum()
    }

    /// What the rings take at the top; none where nothing adds to their widths.
    pub(super) fn stack_at_top(&self, inputs: &StackInputs) -> Option<Stack> {
        let curve = self.curve.unwrap_or_default();
        let widened = |later: bool| {
            let mut inputs = inputs.clone();
            for (at, (ring, on)) in self.rings.iter().zip(&mut inputs.rings).enumerate() {
                let curve = if ring.state == RingState::Wanted { curve } else { Length::ZERO };
                let gap = self.pair_before(at, later).map_or(Length::ZERO, |pair| pair.left);
                on.width = on.width + curve + gap;
            }
            stack::stack(&inputs).ok()
        };
        let any = curve > Length::ZERO || self.pairs.iter().any(|pair| pair.left > Length::ZERO);
        let (now, later) = (widened(false).filter(|_| any)?, widened(true)?);
        Some(Stack { now: now.now, ..later })
    }

    /// Whether it is the band that a head holds off: what can be done about it is done to the band.
    pub fn is_of_band(&self, pair: &Pair) -> bool {
        let cause = pair.apart.cause.and_then(|cause| self.rings.get(cause.meets));
        pair.remedies.is_some() && cause.is_some_and(|ring| ring.state == RingState::Wanted)
    }

    /// Whether the curve of the band is deep enough for the head: there is nothing more to be done.
    pub fn is_settled(&self, pair: &Pair) -> bool {
        self.curve.is_some() && self.is_of_band(pair) && pair.left == Length::ZERO
    }

    /// The neighbours as they are worn now whose head holds the band off, otherwise those with the rings to come.
    pub(super) fn held_off(&self) -> impl Iterator<Item = &Pair> {
        let of_band = |pair: &&Pair| self.is_of_band(pair);
        let now = self.pairs.iter().filter(of_band).any(|pair| !pair.later);
        self.pairs.iter().filter(of_band).filter(move |pair| pair.later != now)
    }
}
