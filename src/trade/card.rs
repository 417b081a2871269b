//! A bank card as a measure that everybody has at hand.

use super::measure::Length;

/// The sides of a bank, library or loyalty card: ISO/IEC 7810, size ID-1, 85.60 x 53.98 mm.
pub const LONG_SIDE: Length = Length::tenthousandths(85_6000);
pub const SHORT_SIDE: Length = Length::tenthousandths(53_9800);

/// How round its corners are: 2.88 to 3.48 mm.
pub const CORNER: Length = Length::tenthousandths(3_1800);

/// The width of a band that goes so many times into the short side of a card, one beside the other.
///
/// width = 53.98 mm / times. Range: 1 to 255 times; none is no width.
///
/// ```
/// use bandwright::trade::card::width_of;
/// use bandwright::trade::measure::Length;
/// assert_eq!(width_of(20), Some(Length::from_mm(2.699)));
/// ```
pub fn width_of(times: u8) -> Option<Length> {
    let sum = SHORT_SIDE.in_tenthousandths();
    sum.checked_div(i64::from(times)).map(Length::tenthousandths)
}
