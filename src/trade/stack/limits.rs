//! What a stack can be worked out from: the accepted ranges, one row each, and the check.

use super::stretch::{House, StackInputs};
pub use crate::trade::fit::Range;
use crate::trade::measure::{Length, Percent};

/// What is checked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Quantity {
    RingWidth,
    Gap,
    FreeLength,
    BandWidth,
    ShoulderWidth,
    TopWidth,
}

impl Quantity {
    /// The row of the table, in tenths of a millimetre, with its why. All of them are house rules.
    #[rustfmt::skip]
    pub const fn range(self) -> Range {
        match self {
            // the thinnest shank to the widest signet
            Quantity::RingWidth | Quantity::ShoulderWidth => Range::tenths(5, 250),
            // a wire to a cigar band
            Quantity::BandWidth => Range::tenths(8, 200),
            // the top may carry a head or a cluster
            Quantity::TopWidth => Range::tenths(5, 400),
            // pressed tight to plainly apart
            Quantity::Gap => Range::tenths(0, 50),
            // a child's finger to a very long one
            Quantity::FreeLength => Range::tenths(50, 600),
        }
    }
}

/// More rings than this are not worn on one finger.
pub const RINGS_MOST: usize = 8;

/// Why there is no stack.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StackError {
    NoRings,
    TooManyRings {
        most: usize,
    },
    OutOfRange {
        what: Quantity,
        range: Range,
    },
    /// One ring alone is wider than the finger is free.
    WiderThanFinger {
        width: Length,
        free: Length,
    },
    /// Roomy has to end before full does, and neither beyond the whole finger.
    Thresholds {
        roomy: Percent,
        full: Percent,
    },
}

/// Whether roomy ends before full does, and neither beyond the whole finger.
pub fn thresholds(house: &House) -> Result<(), StackError> {
    let (roomy, full) = (house.roomy, house.full);
    if roomy < full && full <= Percent(100) { Ok(()) } else { Err(StackError::Thresholds { roomy, full }) }
}

pub(super) fn check(inputs: &StackInputs) -> Result<(), StackError> {
    if inputs.rings.is_empty() {
        return Err(StackError::NoRings);
    }
    if inputs.rings.len() > RINGS_MOST {
        return Err(StackError::TooManyRings { most: RINGS_MOST });
    }
    inputs.rings.iter().try_for_each(|ring| within(Quantity::RingWidth, ring.width))?;
    within(Quantity::Gap, inputs.house.gap)?;
    let free = inputs.measured.unwrap_or(inputs.house.free_length);
    within(Quantity::FreeLength, free)?;
    if let Some(wide) = inputs.rings.iter().find(|ring| ring.width > free) {
        return Err(StackError::WiderThanFinger { width: wide.width, free });
    }
    thresholds(&inputs.house)
}

pub(super) fn within(what: Quantity, given: Length) -> Result<(), StackError> {
    let range = what.range();
    if (range.least..=range.most).contains(&given) { Ok(()) } else { Err(StackError::OutOfRange { what, range }) }
}
