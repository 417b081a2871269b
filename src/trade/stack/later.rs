//! What a ring to come does to the rings that are there already.

use super::stretch::{RingOnFinger, When};
use crate::trade::fit::PerMm;
use crate::trade::measure::Length;

/// A ring that will feel tighter once the later ones are there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tighter {
    /// Which of the rings that were handed in.
    pub ring: usize,
    /// By so much circumference. Today's order does not change for it.
    pub by: Length,
}

/// How much tighter each ring worn now will feel with the later ones beside it.
///
/// k x (half the widths of its neighbours then - half those of its neighbours now), at least 0. Millimetres of
/// circumference; k = 0.25 +/- 0.10. Source: common practice, as for the order size.
///
/// ```
/// use bandwright::trade::{fit::PerMm, measure::Length, stack::*};
/// let mm = Length::from_mm;
/// let ring = |width, when| RingOnFinger { width: mm(width), when };
/// let rings = [ring(2.6, When::Now), ring(3.0, When::Now), ring(2.4, When::Later)];
/// assert_eq!(tighter_later(&rings, PerMm(mm(0.25))), [Tighter { ring: 1, by: mm(0.3) }]);
/// ```
pub fn tighter_later(rings: &[RingOnFinger], k: PerMm) -> Vec<Tighter> {
    let beside = |at: usize, counts: fn(When) -> bool| {
        let before = rings[..at].iter().rev().find(|ring| counts(ring.when));
        let after = rings[at + 1..].iter().find(|ring| counts(ring.when));
        before.into_iter().chain(after).map(|ring| ring.width).sum::<Length>().half()
    };
    let worn = rings.iter().enumerate().filter(|(_, ring)| ring.when == When::Now);
    let all = worn.map(|(at, _)| {
        let more = beside(at, |_| true) - beside(at, |when| when == When::Now);
        Tighter { ring: at, by: more.max(Length::ZERO) * k.0.mm() }
    });
    all.filter(|tighter| tighter.by > Length::ZERO).collect()
}
