//! The tray of try-on bands, and what a gauge was found to be.

use super::{format, sizing, standing};
use crate::book::field::Constant;
use crate::trade::fit::{Calibration, CalibrationPoint, Figure, Score};
use crate::trade::measure::{Circumference, Length};
use crate::trade::sizing::Stated;

// Try-on bands
pub const NEW_TRY_ON: &str = "New try-on band";
pub const ADD_TRY_ON: &str = "Add a try-on band";
pub const TRY_ON_WHY: &str = "Bands that are tried on as they are. The one that fits is a reading: its width and inside \
                              stand for the gauge.";
pub const TRY_ON_NUMBER: &str = "Its number";
pub const TRY_ON_NUMBER_HINT: &str = "What stands on it: 7, B2.";
pub const TRY_ON_WIDTH: &str = "Width";
pub const TRY_ON_HEIGHT: &str = "Thickness";
pub const TRY_ON_HEIGHT_HINT: &str = "Empty: not measured.";
pub const TRY_ON_SIZE: &str = "Its size";

/// How many bands there are.
pub fn tray(bands: usize) -> String {
    match bands {
        0 => "none yet".to_owned(),
        many => format::counted(many as i64, "band", "bands"),
    }
}

// Calibration
pub const CALIBRATION: &str = "Calibration";
pub const CALIBRATION_WHY: &str = "Lay it against a ring of a known size, or measure it with callipers, at a few of \
                                   its sizes: a size like UK M, or 17.1 mm across. Then every reading with it is put \
                                   right.";
pub const BOTH_OR_NEITHER: &str = "Enter both sizes, or leave both empty.";

/// What the gauge says at one of its sizes.
pub fn says(place: usize) -> String {
    format!("{place}: it says")
}

/// What it is there.
pub fn is(place: usize) -> String {
    format!("{place}: it is")
}

/// The line through the points of a calibration, as a sentence.
pub fn calibrated(found: &Calibration) -> String {
    format!(
        "On the average {} mm round the inside, and {} mm more for each 10 mm of size (least squares).",
        larger(found.offset),
        format::mm_signed(found.over_ten_mm(), 2),
    )
}

fn larger(off: Length) -> String {
    let way = if off < Length::ZERO { "smaller by" } else { "larger by" };
    format!("{way} {}", format::mm(off.abs(), 2))
}

/// What is left at each point: "Left over: 50 mm −0.30, 54 mm +0.60; in mm."
pub fn residuals(points: &[CalibrationPoint], left: &[Length]) -> String {
    let one = |(point, left): (&CalibrationPoint, &Length)| {
        format!("at {} {}", sizing::trimmed(point.says.0), format::mm_signed(*left, 2))
    };
    let all: Vec<String> = points.iter().zip(left).map(one).collect();
    format!("Left over, in mm: {}.", all.join(", "))
}

/// A single size that is off by more than a quarter size.
pub fn odd(at: Circumference, off: Length, is_stick: bool) -> String {
    let (at, off) = (sizing::trimmed(at.0), format::mm_signed(off, 2));
    if is_stick {
        format!("At {at} mm the stick is {off}: measure there again, or do not read there.")
    } else {
        format!("The {at} mm ring is {off}: replace it, or do not read with it.")
    }
}

/// A gauge that is off by more than a quarter size.
pub fn beyond_quarter(at: Circumference, off: Length) -> String {
    format!("Off by more than a quarter size: {} mm at {} mm round.", format::mm_signed(off, 2), format::mm(at.0, 1))
}

/// A length round the inside as it would be typed again.
pub fn retyped(at: Circumference) -> String {
    sizing::stated_in_full(Stated::Circumference(at))
}

/// What is published about a constant, beside what is customary.
pub fn published(of: Constant) -> &'static str {
    match of {
        Constant::Width | Constant::WidthSpread => {
            "Published: a wide band needs to be a little larger, without a figure (Brepohl, second hand); narrow gauges \
             to 4 mm of band, wide ones above (GIA benchmark)."
        }
        Constant::Bore | Constant::BoreSpread => "Published: nothing with a figure.",
        Constant::Cold | Constant::Warm | Constant::HandsSpread | Constant::NormalSpread => {
            "Published: hands that hung for 20 minutes are larger by about 1.15 mm on size 54 (derived from Siamwala et \
             al., Front. Physiol. 2018, of the whole hand), after a hard grip by about 0.6 mm (derived, nine people)."
        }
        Constant::Offset | Constant::OffsetSpread => "Published: nothing; it is your own bench’s.",
    }
}

// What fitted before
pub const LEARNED: &str = "What your bands say";
pub const NOTHING_LEARNED: &str = "Nothing yet. Once a band has been worn, write down under the finger whether it was \
                                   kept or resized: from such answers your own constants are worked out.";
pub const USE_LEARNED: &str = "Use these";
pub const LEARNED_USED: &str = "Your own constants are used from now on";
pub const NO_SCORE: &str = "Too few to tell whether they foretell better than the customary ones: three are needed.";

/// "From 5 bands that have been worn."
pub fn learned_from(bands: usize) -> String {
    let bands = format::counted(bands as i64, "band that has", "bands that have");
    format!("From {bands} been worn, with the customary figures to begin from (Bayesian regression):")
}

/// "give or take 0.08; customary 0.25 · common practice".
pub fn learned_why(sd: Length, customary: Figure<Length>) -> String {
    let founded = standing::standing(customary.standing);
    format!("give or take {}; customary {} · {founded}", format::mm(sd, 2), sizing::trimmed(customary.value))
}

/// How well each band is foretold from the others, and by the customary figures.
pub fn score(score: Score) -> String {
    format!(
        "Each band foretold without itself: off by {} mm; by the customary figures: {} mm (root of the mean square).",
        format::mm(score.learned, 2),
        format::mm(score.customary, 2),
    )
}
