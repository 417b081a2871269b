//! Matching a band to the ring it is worn with: a ring that tapers is as wide as it is at each angle.

use super::limits::{Quantity, StackError, within};
use crate::trade::band::Profile;
use crate::trade::measure::Length;

/// The widths of a ring round the finger: at its top, at three and nine o'clock, and at its back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Taper {
    pub top: Length,
    pub shoulders: Length,
    pub back: Length,
}

/// Whole degrees from the top of a ring, either way round: 90 is three and nine o'clock, 180 the back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FromTop(pub u16);

impl Taper {
    /// A ring that is as wide all round.
    pub fn even(width: Length) -> Taper {
        Taper { top: width, shoulders: width, back: width }
    }

    /// How far the top reaches over a straight edge laid against the shoulders, on each side, if it is as far on both;
    /// nothing where the ring narrows. Millimetres. Source: geometry.
    pub fn over_shoulders(&self) -> Length {
        (self.top - self.shoulders).half().max(Length::ZERO)
    }

    /// How wide the ring is at an angle: straight from the top to the shoulders, and straight on to the back.
    ///
    /// w(a) = top + (shoulders - top) a / 90 up to 90 degrees, then shoulders + (back - shoulders) (a - 90) / 90.
    /// Millimetres; angles beyond 180 as 180. Source: common practice, a shank is filed to a straight taper.
    ///
    /// ```
    /// use bandwright::trade::{measure::Length, stack::{FromTop, Taper}};
    /// let mm = Length::from_mm;
    /// let ring = Taper { top: mm(1.8), shoulders: mm(2.6), back: mm(2.0) };
    /// assert_eq!((ring.at(FromTop(45)), ring.at(FromTop(135))), (mm(2.2), mm(2.3)));
    /// ```
    pub fn at(&self, angle: FromTop) -> Length {
        let share = |degrees: u16| f64::from(degrees.min(90)) / 90.0;
        if angle.0 <= 90 {
            self.top + (self.shoulders - self.top) * share(angle.0)
        } else {
            self.shoulders + (self.back - self.shoulders) * share(angle.0 - 90)
        }
    }
}

/// How much wider the band is than the ring beside it; below zero: narrower.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ShoulderMatch {
    /// Than the ring at three and nine o'clock: the one that counts.
    pub at_shoulders: Length,
    /// Than the ring at its top: shown so that nobody matches it by mistake.
    pub at_top: Length,
    pub at_back: Length,
    /// The width of a band that is matched to the top instead.
    pub if_top: Length,
    /// How much wider than the ring's shoulders that band would be.
    pub if_top_at_shoulders: Length,
}

/// How a band compares with a ring that tapers: against its shoulders, at three and nine o'clock, at its top and back.
///
/// difference = band - ring, at each place. Millimetres; widths from 0.8 to 20 (top to 40). Source: common practice.
///
/// ```
/// use bandwright::trade::{measure::Length, stack::{Taper, shoulder_match}};
/// let mm = Length::from_mm;
/// let found = shoulder_match(mm(3.0), &Taper { top: mm(1.8), shoulders: mm(2.6), back: mm(2.6) }).unwrap();
/// assert_eq!((found.at_shoulders, found.at_top, found.if_top_at_shoulders), (mm(0.4), mm(1.2), mm(-0.8)));
/// ```
pub fn shoulder_match(band: Length, ring: &Taper) -> Result<ShoulderMatch, StackError> {
    within(Quantity::BandWidth, band)?;
    within(Quantity::ShoulderWidth, ring.shoulders)?;
    within(Quantity::TopWidth, ring.top)?;
    within(Quantity::ShoulderWidth, ring.back)?;
    Ok(ShoulderMatch {
        at_shoulders: band - ring.shoulders,
        at_top: band - ring.top,
        at_back: band - ring.back,
        if_top: ring.top,
        if_top_at_shoulders: ring.top - ring.shoulders,
    })
}

/// How the band's profile goes with the ring's. Both are fine.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ProfileMatch {
    /// The same outside and inside: looks calm.
    Calm,
    /// Another one: a choice.
    Deliberate,
}

/// Common practice: the same profile looks calm, a different one is a choice and no fault.
pub fn profile_match(band: Profile, ring: Profile) -> ProfileMatch {
    if band == ring { ProfileMatch::Calm } else { ProfileMatch::Deliberate }
}
