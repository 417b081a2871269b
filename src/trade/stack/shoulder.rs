//! Matching a band to the ring it is worn with.

use super::limits::{Quantity, StackError, within};
use crate::trade::measure::Length;

/// How much wider the band is than the ring beside it; below zero: narrower.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ShoulderMatch {
    /// Than the ring at three and nine o'clock: the one that counts.
    pub at_shoulders: Length,
    /// Than the ring at its top: shown so that nobody matches it by mistake.
    pub at_top: Length,
}

/// How a band compares with a ring that tapers: against its shoulders, at three and nine o'clock, and at its top.
///
/// difference = band - ring, at each place. Millimetres; widths from 0.8 to 20 (top to 40). Source: common practice.
///
/// ```
/// use bandwright::trade::{measure::Length, stack::shoulder_match};
/// let mm = Length::from_mm;
/// let found = shoulder_match(mm(3.0), mm(2.6), mm(1.8)).unwrap();
/// assert_eq!((found.at_shoulders, found.at_top), (mm(0.4), mm(1.2)));
/// ```
pub fn shoulder_match(band: Length, shoulders: Length, top: Length) -> Result<ShoulderMatch, StackError> {
    within(Quantity::BandWidth, band)?;
    within(Quantity::ShoulderWidth, shoulders)?;
    within(Quantity::TopWidth, top)?;
    Ok(ShoulderMatch { at_shoulders: band - shoulders, at_top: band - top })
}
