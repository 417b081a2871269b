//! From a circumference to the sizes near it.

use super::reading::Stated;
use super::size::{Size, Step};
use super::systems::System;
use crate::trade::measure::{Circumference, Length};
use std::cmp::Reverse;
use std::ops::RangeInclusive;

/// How far a size is from the circumference that was wanted: above nought the size is the looser.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Off(pub Length);

/// Which way a size leans.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Lean {
    Exact,
    Tighter,
    Looser,
}

impl Off {
    /// How far `size` is from `wanted`.
    pub fn between(wanted: Circumference, size: Circumference) -> Off {
        Off(size.0 - wanted.0)
    }

    /// Which way it leans; less than half a hundredth of a millimetre is shown as 0.00 and counts as exact.
    pub fn lean(self) -> Lean {
        if self.0.abs() < Length::tenthousandths(50) {
            Lean::Exact
        } else if self.0 < Length::ZERO {
            Lean::Tighter
        } else {
            Lean::Looser
        }
    }
}

/// A size on a step, and how far it is off.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Nearest {
    pub size: Size,
    pub off: Off,
}

/// What a circumference is called in a system, and how far that is off: millimetres are stated as they are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Conversion {
    pub stated: Stated,
    pub off: Off,
}

impl Conversion {
    /// Whether the size lies beyond either end of the scale: more than half a step from its last one. There it has no
    /// size, and the last one is only the nearest that there is.
    pub fn is_beyond(&self) -> bool {
        let Stated::Size(size) = self.stated else { return false };
        let is_last = if self.off.0 > Length::ZERO {
            size == Size::first(size.system())
        } else {
            size.larger(Step::Quarter).is_none()
        };
        let (_, step) = even_scale(size.system(), Step::Quarter);
        is_last && self.off.0.abs() > step.half()
    }
}

/// What to call a circumference in a system: the nearest size on the step, or the millimetres themselves.
pub fn convert(system: System, wanted: Circumference, step: Step) -> Conversion {
    let stated = match system {
        System::Diameter => Stated::Diameter(wanted.diameter()),
        System::Circumference => Stated::Circumference(wanted),
        System::Uk | System::Us | System::Iso | System::Japan | System::Italy => {
            Stated::Size(nearest(system, wanted, step).size)
        }
    };
    Conversion { stated, off: Off::between(wanted, stated.circumference()) }
}

/// The size of a system nearest to a circumference, on the step or on the finest that the system has; half-way it is
/// the larger. Beyond either end of the scale it is the last size, and `off` tells how far that is.
///
/// ```
/// use bandwright::trade::measure::Circumference;
/// use bandwright::trade::sizing::{Lean, Size, Step, System, nearest};
/// let found = nearest(System::Us, Circumference::from_mm(54.0), Step::Quarter);
/// assert_eq!(Some(found.size), Size::new(System::Us, 27)); // 6¾
/// assert_eq!(found.off.lean(), Lean::Tighter);
/// ```
pub fn nearest(system: System, wanted: Circumference, step: Step) -> Nearest {
    let of = |size: Size| Nearest { size, off: Off::between(wanted, size.circumference()) };
    let first = of(Size::first(system));
    all(system, step).map(of).min_by_key(|found| (found.off.0.abs(), Reverse(found.size))).unwrap_or(first)
}

/// The smallest size of a system that is not tighter than a circumference, if the scale goes so far.
pub fn rounded_up(system: System, wanted: Circumference, step: Step) -> Option<Nearest> {
    let size = all(system, step).find(|size| size.circumference() >= wanted)?;
    Some(Nearest { size, off: Off::between(wanted, size.circumference()) })
}

/// Every size of a system whose circumference lies in a range, from small to large.
pub fn within(system: System, range: RangeInclusive<Circumference>, step: Step) -> Vec<Size> {
    all(system, step).filter(|size| range.contains(&size.circumference())).collect()
}

/// Every size of a system, from small to large, on the step or on the finest that the system has.
pub fn all(system: System, step: Step) -> impl Iterator<Item = Size> {
    let step = system.step(step);
    std::iter::successors(Some(Size::first(system)), |size| size.larger(Step::Quarter))
        .filter(move |size| size.is_on(step))
}

/// The even scale of circumferences that a system's sizes on a step lie on: its first size, and how much each further
/// one measures more.
///
/// Millimetres; the step to the nearest ten-thousandth, which over a whole scale of diameters comes to less than a
/// hundredth. Source: the system's row.
///
/// ```
/// use bandwright::trade::measure::{Circumference, Length};
/// use bandwright::trade::sizing::{Step, System, even_scale};
/// let halves = (Circumference::from_mm(37.5), Length::from_mm(0.625));
/// assert_eq!(even_scale(System::Uk, Step::Half), halves);
/// ```
pub fn even_scale(system: System, step: Step) -> (Circumference, Length) {
    let mut sizes = all(system, step).map(Size::circumference);
    let first = sizes.next().unwrap_or(Size::first(system).circumference());
    let next = sizes.next().unwrap_or(first);
    (first, next.0 - first.0)
}
