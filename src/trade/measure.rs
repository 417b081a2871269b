//! What is measured, as types: lengths kept exactly, circumferences and diameters kept apart.

use std::f64::consts::PI;
use std::iter::Sum;
use std::ops::{Add, Mul, Neg, Sub};

/// A length, or a difference of two lengths, in whole ten-thousandths of a millimetre.
///
/// Whole numbers, because a quarter of a UK letter is 0.3125 mm: what was read is kept to the last figure.
/// Range: any `i64`; what a field accepts is settled where it is entered.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

impl Length {
    pub const ZERO: Length = Length(0);

    /// A length from ten-thousandths of a millimetre.
    pub const fn tenthousandths(value: i64) -> Self {
        Length(value)
    }

    /// A length from millimetres, rounded to the nearest ten-thousandth (halves away from zero).
    /// What is not a number, or is beyond the range, becomes the nearest length there is (not a number: zero).
    pub fn from_mm(mm: f64) -> Self {
        Length((mm * 10_000.0).round() as i64)
    }

    /// The length in millimetres.
    pub fn mm(self) -> f64 {
        self.0 as f64 / 10_000.0
    }

    /// The length in whole ten-thousandths of a millimetre.
    pub const fn in_tenthousandths(self) -> i64 {
        self.0
    }

    /// The same length without its sign.
    pub const fn abs(self) -> Self {
        Length(self.0.saturating_abs())
    }

    /// Half of it, rounded towards zero.
    pub const fn half(self) -> Self {
        Length(self.0 / 2)
    }
}

impl Add for Length {
    type Output = Length;
    fn add(self, other: Length) -> Length {
        Length(self.0.saturating_add(other.0))
    }
}

impl Sub for Length {
    type Output = Length;
    fn sub(self, other: Length) -> Length {
        Length(self.0.saturating_sub(other.0))
    }
}

impl Neg for Length {
    type Output = Length;
    fn neg(self) -> Length {
        Length(self.0.saturating_neg())
    }
}

impl Mul<f64> for Length {
    type Output = Length;
    fn mul(self, by: f64) -> Length {
        Length::from_mm(self.mm() * by)
    }
}

impl Sum for Length {
    fn sum<I: Iterator<Item = Length>>(lengths: I) -> Length {
        lengths.fold(Length::ZERO, Add::add)
    }
}

/// The inside circumference of a ring: the quantity every size system goes through.
///
/// Source: ISO 8653:2016 takes the inside circumference in millimetres as the ring size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Circumference(pub Length);

impl Circumference {
    /// A circumference from millimetres.
    pub fn from_mm(mm: f64) -> Self {
        Circumference(Length::from_mm(mm))
    }

    /// The circumference in millimetres.
    pub fn mm(self) -> f64 {
        self.0.mm()
    }

    /// The inside diameter that goes with it: d = C / pi, to the nearest ten-thousandth of a millimetre.
    ///
    /// ```
    /// use bandwright::trade::measure::Circumference;
    /// assert!((Circumference::from_mm(54.0).diameter().mm() - 17.1887).abs() < 0.0001);
    /// ```
    pub fn diameter(self) -> Diameter {
        Diameter(Length::from_mm(self.mm() / PI))
    }
}

/// The inside diameter of a ring.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Diameter(pub Length);

impl Diameter {
    /// A diameter from millimetres.
    pub fn from_mm(mm: f64) -> Self {
        Diameter(Length::from_mm(mm))
    }

    /// The diameter in millimetres.
    pub fn mm(self) -> f64 {
        self.0.mm()
    }

    /// The inside circumference that goes with it: C = pi d, to the nearest ten-thousandth of a millimetre.
    pub fn circumference(self) -> Circumference {
        Circumference(Length::from_mm(self.mm() * PI))
    }
}

/// A share of a whole, in whole per cent.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Percent(pub u16);

impl Percent {
    /// The share as a factor: 35 % is 0.35.
    pub fn share(self) -> f64 {
        f64::from(self.0) / 100.0
    }
}

/// How well a figure is founded; shown beside every figure. The better ones come first, and the jeweller's own last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Standing {
    /// Printed in a standard, a statute or a paper.
    Published,
    /// Worked out from published figures.
    Derived,
    /// What benches usually do; no published source.
    CommonPractice,
    /// Remembered, not looked up.
    FromMemory,
    /// The jeweller's own figure, in place of the customary one.
    Yours,
}
