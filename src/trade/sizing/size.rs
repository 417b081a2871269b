//! A size on a scale, in whole quarter steps.

use super::systems::{Counts, Row, System};
use crate::trade::limits::{self, Amount, Limit};
use crate::trade::measure::{Circumference, Diameter, Length, Standing};
use std::f64::consts::PI;

/// How fine a scale is taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Step {
    Quarter,
    Half,
    Whole,
}

impl Step {
    pub const ALL: [Step; 3] = [Step::Quarter, Step::Half, Step::Whole];

    /// How many quarters make it.
    pub(super) const fn quarters(self) -> i32 {
        match self {
            Step::Quarter => 1,
            Step::Half => 2,
            Step::Whole => 4,
        }
    }
}

/// A size on a scale: UK M½ is 50 quarters above A, US 6¾ is 27 quarters, 17.25 mm across is 69.
///
/// It always lies on a step of its system and between the accepted circumferences.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Size {
    system: System,
    quarters: i32,
}

impl Size {
    /// The size at this many quarters, if the system has it: not below its first size, not between its steps, and not
    /// outside the accepted circumferences.
    pub fn new(system: System, quarters: i32) -> Option<Size> {
        let row = system.row();
        let size = Size { system, quarters };
        let exists = quarters >= row.first
            && quarters % row.finest.quarters() == 0
            && limits::of(Limit::Circumference).holds(Amount::Length(size.circumference().0));
        exists.then_some(size)
    }

    /// The first size of a system.
    pub fn first(system: System) -> Size {
        Size { system, quarters: system.row().first }
    }

    pub fn system(self) -> System {
        self.system
    }

    /// The size in quarters: from A for letters, from nought for numbers.
    pub fn quarters(self) -> i32 {
        self.quarters
    }

    /// Whether it lies on this step: M½ lies on halves and not on wholes.
    pub fn is_on(self, step: Step) -> bool {
        self.quarters % step.quarters() == 0
    }

    /// How far it is round the inside of a ring of this size.
    ///
    /// C = m + r (q - a) / o for a scale of circumferences, pi times that for a scale of diameters, with m, r, a and o
    /// from the system's row: UK 37.5 + 1.25 i, US pi 25.4 (0.458 + 0.032 n), Japan pi (13 + (n - 1)/3), ISO n,
    /// Italy n + 40. Millimetres, exact for circumferences and to the nearest ten-thousandth for diameters.
    /// Range: 36 to 80 mm. Source: the system's row.
    ///
    /// ```
    /// use bandwright::trade::sizing::{Size, System};
    /// let m_and_a_half = Size::new(System::Uk, 12 * 4 + 2).unwrap();
    /// assert_eq!(m_and_a_half.circumference().mm(), 53.125);
    /// ```
    pub fn circumference(self) -> Circumference {
        let Row { counts, at, measures, rise, over, .. } = *self.system.row();
        let measure = measures as f64 + rise as f64 * (i64::from(self.quarters) - at) as f64 / over as f64;
        match counts {
            Counts::Circumference => Circumference(Length::tenthousandths(measure.round() as i64)),
            Counts::Diameter => Circumference(Length::from_mm(PI * measure / 10_000.0)),
        }
    }

    /// How well it is founded: as its scale, but the standard of ISO numbers counts whole millimetres only.
    pub fn standing(self) -> Standing {
        match self.system {
            System::Iso if !self.is_on(Step::Whole) => Standing::CommonPractice,
            system => system.standing(),
        }
    }

    /// How far it is across the inside of a ring of this size.
    pub fn diameter(self) -> Diameter {
        self.circumference().diameter()
    }

    /// The next larger size on this step, if there is one.
    pub fn larger(self, step: Step) -> Option<Size> {
        self.neighbour(step, 1)
    }

    /// The next smaller size on this step, if there is one.
    pub fn smaller(self, step: Step) -> Option<Size> {
        self.neighbour(step, -1)
    }

    fn neighbour(self, step: Step, towards: i32) -> Option<Size> {
        let width = self.system.step(step).quarters();
        let below = self.quarters.div_euclid(width) * width;
        let next = match (towards > 0, below == self.quarters) {
            (true, _) => below + width,
            (false, true) => below - width,
            (false, false) => below,
        };
        Size::new(self.system, next)
    }
}
