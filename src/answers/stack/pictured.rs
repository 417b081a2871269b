//! The numbers of the stack's pictures: how far rings stand off, and which of them are seen side by side.

use super::{Pair, StackAnswer};
use crate::trade::measure::Length;
use crate::trade::stack::RingState;

impl StackAnswer {
    /// A ring and the one before it once all are there.
    pub fn before(&self, ring: usize) -> Option<&Pair> {
        let of = |pair: &&Pair| pair.apart.rings.1 == ring && pair.apart.rings.0 + 1 == ring;
        self.pairs.iter().rfind(of)
    }

    /// How far the shanks of a ring and the one before it are from each other at the top, and how much of it is the
    /// curve.
    pub fn at_shanks(&self, ring: usize) -> (Length, Length) {
        let Some(pair) = self.before(ring) else { return (Length::ZERO, Length::ZERO) };
        let curve = self.curve.filter(|_| self.is_of_band(pair)).unwrap_or_default();
        (curve + pair.left, curve)
    }

    /// How far the band bends at its top, away from the head that its curve is for: to the tip, or below zero to the
    /// web.
    pub fn bend(&self, ring: usize) -> Length {
        let curve = self.curve.filter(|_| self.rings.get(ring).is_some_and(|it| it.state == RingState::Wanted));
        let curve = curve.unwrap_or_default();
        let beyond = self.held_off().find_map(|pair| pair.apart.cause).is_some_and(|cause| cause.head > cause.meets);
        if beyond { -curve } else { curve }
    }

    /// The first and the last ring of each side view: a head with the rings beside it, and the further one that it
    /// reaches. Rings that lie in one picture already are drawn there alone.
    pub fn side_views(&self) -> Vec<(usize, usize)> {
        let run = |at: usize| {
            let causes = self.pairs.iter().filter_map(|pair| pair.apart.cause).filter(|cause| cause.head == at);
            let beside = (at.saturating_sub(1), (at + 1).min(self.rings.len().saturating_sub(1)));
            causes.fold(beside, |(from, to), cause| (from.min(cause.meets), to.max(cause.meets)))
        };
        let heads = self.rings.iter().enumerate().filter(|(_, ring)| ring.lying.head.is_some());
        let runs: Vec<(usize, usize)> = heads.map(|(at, _)| run(at)).collect();
        let within = |one: (usize, usize), other: (usize, usize)| other.0 <= one.0 && one.1 <= other.1;
        let is_elsewhere = |at: usize| {
            let mut others = runs.iter().enumerate().filter(|(other, _)| *other != at);
            others.any(|(other, run)| within(runs[at], *run) && (runs[at] != *run || other < at))
        };
        (0..runs.len()).filter(|at| !is_elsewhere(*at)).map(|at| runs[at]).collect()
    }

    /// The neighbours of a side view of which there is something to say.
    pub fn pairs_in_view(&self, (from, to): (usize, usize)) -> Vec<&Pair> {
        let inside = |pair: &&Pair| from <= pair.apart.rings.0 && pair.apart.rings.1 <= to;
        let has_head = |at: usize| self.rings.get(at).is_some_and(|ring| ring.lying.head.is_some());
        let concerns =
            |pair: &&Pair| pair.apart.cause.is_some() || has_head(pair.apart.rings.0) || has_head(pair.apart.rings.1);
        self.pairs.iter().filter(inside).filter(concerns).collect()
    }
}
