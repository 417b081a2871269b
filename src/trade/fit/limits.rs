//! What an order size can be worked out from: the accepted ranges, one row each, and the check.

use super::constants::Constants;
use super::order::Inputs;
use super::reading::{GaugeKind, Place, Reading};
use super::terms::Term;
use crate::trade::measure::Length;

/// What is checked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Quantity {
    AsRead,
    Joint,
    BandWidth,
    GaugeWidth,
    /// A ring worn beside the band or beside the gauge.
    BesideWidth,
    BandRelief,
    GaugeRelief,
    GaugeStep,
    OwnError,
    Taper,
    MakeStep,
    WidthPerMm,
    WidthPerMmSd,
    BorePerMm,
    BorePerMmSd,
    Cold,
    Warm,
    HandsOffSd,
    HandsNormalSd,
    /// What bands come out off by here.
    Offset,
    OffsetSd,
    /// What a gauge is off by.
    GaugeOff,
    /// An amount of the jeweller's own in the place of a term.
    Own,
}

/// The least and the most that is accepted, both included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Range {
    pub least: Length,
    pub most: Length,
}

impl Range {
    /// A range in whole tenths of a millimetre.
    pub const fn tenths(least: i64, most: i64) -> Range {
        Range { least: Length::tenthousandths(least * 1_000), most: Length::tenthousandths(most * 1_000) }
    }
}

impl Quantity {
    /// The row of the table, in tenths of a millimetre, with its why. All of them are house rules.
    #[rustfmt::skip]
    pub const fn range(self) -> Range {
        match self {
            // a small child's finger to a very large thumb
            Quantity::AsRead | Quantity::Joint => Range::tenths(300, 900),
            // a wire to a cigar band
            Quantity::BandWidth => Range::tenths(8, 200),
            // the thinnest shank to the widest signet
            Quantity::BesideWidth => Range::tenths(5, 250),
            // a wire gauge to the widest
            Quantity::GaugeWidth => Range::tenths(5, 200),
            // deeper than any band is thick makes no sense
            Quantity::BandRelief | Quantity::GaugeRelief => Range::tenths(0, 20),
            // a fine mark to two whole sizes
            Quantity::GaugeStep | Quantity::MakeStep => Range::tenths(1, 60),
            // beyond this a gauge belongs in a drawer
            Quantity::OwnError => Range::tenths(0, 20),
            // a slim stick to a stubby one
            Quantity::Taper => Range::tenths(0, 10),
            // the size must not fall with the width; a millimetre a millimetre is already absurd
            Quantity::WidthPerMm | Quantity::WidthPerMmSd => Range::tenths(0, 10),
            // none of the room to twice of it
            Quantity::BorePerMm | Quantity::BorePerMmSd => Range::tenths(0, 20),
            Quantity::Cold | Quantity::HandsOffSd | Quantity::HandsNormalSd => Range::tenths(0, 20),
            Quantity::Warm => Range::tenths(-20, 0),
            Quantity::OffsetSd => Range::tenths(0, 20),
            // four UK letters either way
            Quantity::Offset | Quantity::GaugeOff | Quantity::Own => Range::tenths(-50, 50),
        }
    }
}

/// More rings than this are not worn beside one another.
pub const RINGS_BESIDE_MOST: usize = 9;

/// More readings of one finger than this are not taken.
pub const READINGS_MOST: usize = 60;

/// Why there is no order size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FitError {
    OutOfRange {
        what: Quantity,
        range: Range,
    },
    TooManyBeside {
        most: usize,
    },
    TooManyReadings {
        most: usize,
    },
    /// The reading is of the joint; the order size starts from the base.
    NotTheBase,
}

pub(super) fn check(inputs: &Inputs) -> Result<(), FitError> {
    if inputs.others.len() >= READINGS_MOST {
        return Err(FitError::TooManyReadings { most: READINGS_MOST });
    }
    inputs.readings().into_iter().try_for_each(reading)?;
    within(Quantity::BandWidth, inputs.band.width)?;
    optional(Quantity::BandRelief, inputs.band.relief)?;
    optional(Quantity::Joint, inputs.joint.map(|joint| joint.0))?;
    optional(Quantity::GaugeWidth, inputs.joint_width)?;
    beside(&inputs.neighbours)?;
    for term in Term::ALL {
        optional(Quantity::Own, inputs.overrules.of(term))?;
    }
    within(Quantity::MakeStep, inputs.grid.step)?;
    constants(&inputs.constants)
}

fn reading(reading: &Reading) -> Result<(), FitError> {
    if reading.place == Place::Joint {
        return Err(FitError::NotTheBase);
    }
    within(Quantity::AsRead, reading.as_read.0)?;
    within(Quantity::GaugeWidth, reading.gauge.width)?;
    within(Quantity::GaugeStep, reading.gauge.step)?;
    within(Quantity::OwnError, reading.gauge.own_error)?;
    within(Quantity::GaugeOff, reading.gauge_off)?;
    if let GaugeKind::Stick { taper } = reading.gauge.kind {
        within(Quantity::Taper, taper.0)?;
    }
    optional(Quantity::GaugeRelief, reading.gauge.relief)?;
    beside(&reading.beside)
}

fn constants(constants: &Constants) -> Result<(), FitError> {
    within(Quantity::WidthPerMm, constants.width_per_mm.0)?;
    within(Quantity::WidthPerMmSd, constants.width_per_mm_sd.0)?;
    within(Quantity::BorePerMm, constants.bore_per_mm.0)?;
    within(Quantity::BorePerMmSd, constants.bore_per_mm_sd.0)?;
    within(Quantity::Cold, constants.cold)?;
    within(Quantity::Warm, constants.warm)?;
    within(Quantity::HandsOffSd, constants.hands_off_sd)?;
    within(Quantity::HandsNormalSd, constants.hands_normal_sd)?;
    within(Quantity::Offset, constants.offset)?;
    within(Quantity::OffsetSd, constants.offset_sd)
}

fn beside(widths: &[Length]) -> Result<(), FitError> {
    if widths.len() > RINGS_BESIDE_MOST {
        return Err(FitError::TooManyBeside { most: RINGS_BESIDE_MOST });
    }
    widths.iter().try_for_each(|width| within(Quantity::BesideWidth, *width))
}

fn optional(what: Quantity, given: Option<Length>) -> Result<(), FitError> {
    given.map_or(Ok(()), |given| within(what, given))
}

fn within(what: Quantity, given: Length) -> Result<(), FitError> {
    let range = what.range();
    if (range.least..=range.most).contains(&given) { Ok(()) } else { Err(FitError::OutOfRange { what, range }) }
}
