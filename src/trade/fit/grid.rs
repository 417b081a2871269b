//! The steps that a bench makes, as circumferences: which lies below, above, within.

use crate::trade::measure::{Circumference, Length};

/// An even scale of circumferences: `origin` and every whole number of steps from it, both ways. UK half letters:
/// from 37.5 mm in steps of 0.625 mm.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Grid {
    pub origin: Circumference,
    pub step: Length,
}

impl Grid {
    /// The step at or below a circumference. A grid whose step is not above zero answers with what it was given.
    ///
    /// ```
    /// use bandwright::trade::{fit::Grid, measure::{Circumference, Length}};
    /// let halves = Grid { origin: Circumference::from_mm(37.5), step: Length::from_mm(0.625) };
    /// assert_eq!(halves.below(Circumference::from_mm(54.75)), Circumference::from_mm(54.375));
    /// ```
    pub fn below(&self, at: Circumference) -> Circumference {
        let step = self.step.in_tenthousandths();
        if step <= 0 {
            return at;
        }
        let past = (at.0 - self.origin.0).in_tenthousandths().rem_euclid(step);
        Circumference(at.0 - Length::tenthousandths(past))
    }

    /// The step at or above a circumference.
    pub fn above(&self, at: Circumference) -> Circumference {
        let below = self.below(at);
        if below == at { at } else { Circumference(below.0 + self.step) }
    }

    /// Every step between two circumferences, both included, smallest first.
    pub fn within(&self, low: Circumference, high: Circumference) -> Vec<Circumference> {
        let mut steps = Vec::new();
        let mut at = self.above(low);
        while at <= high {
            steps.push(at);
            let next = Circumference(at.0 + self.step);
            if next <= at {
                break;
            }
            at = next;
        }
        steps
    }

    /// How far beyond half-way between its two neighbours on the grid a circumference lies, doubled, so that it
    /// stays whole; below zero while the smaller is nearer. None on a step.
    pub(super) fn twice_past_half(&self, at: Circumference) -> Option<Length> {
        let (below, above) = (self.below(at), self.above(at));
        (below != above).then(|| (at.0 - below.0) - (above.0 - at.0))
    }
}
