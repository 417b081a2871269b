//! The constants of the order size: one table, a row a figure, each with its standing and its source.

use crate::trade::measure::{Length, Standing};

/// Millimetres a millimetre: so much of one length for each millimetre of another.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PerMm(pub Length);

impl PerMm {
    /// The factor itself.
    pub(super) fn factor(self) -> f64 {
        self.0.mm()
    }
}

/// Where a figure comes from; the citation is in `words`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Source {
    /// ISO 8653:2016, the ring stick.
    RingStickStandard,
    /// What narrow and wide gauges differ by, and what benches add for a wide band.
    WideBandHabit,
    /// What benches take off for a domed bore.
    DomedBoreHabit,
    /// What benches allow for cold and warm hands.
    HandsHabit,
    /// What benches do about a large joint.
    JointHabit,
    /// A rule of this tool, in the absence of anything printed.
    HouseRule,
}

/// A row of the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Figure<T> {
    pub value: T,
    pub standing: Standing,
    pub source: Source,
}

const fn length(tenthousandths: i64, standing: Standing, source: Source) -> Figure<Length> {
    Figure { value: Length::tenthousandths(tenthousandths), standing, source }
}

const fn per_mm(tenthousandths: i64, standing: Standing, source: Source) -> Figure<PerMm> {
    Figure { value: PerMm(Length::tenthousandths(tenthousandths)), standing, source }
}

use Source::*;
use Standing::{CommonPractice, Derived};

// Whole ten-thousandths of a millimetre; "_SD" is one standard deviation.
#[rustfmt::skip]
mod rows {
    use super::*;

    /// k: circumference up for each millimetre that the band is wider than the gauge.
    pub const WIDTH_PER_MM: Figure<PerMm>    = per_mm(2_500, CommonPractice, WideBandHabit);
    pub const WIDTH_PER_MM_SD: Figure<PerMm> = per_mm(1_000, CommonPractice, WideBandHabit);
    /// The most that a narrower band takes off.
    pub const WIDTH_DOWN_MOST: Figure<Length> = length(6_000, CommonPractice, HouseRule);
    /// Over this far apart in width, the gauge is too unlike the band.
    pub const APART_MOST: Figure<Length>      = length(30_000, CommonPractice, HouseRule);
    /// eta: circumference down for each millimetre of room that the domed bore gives.
    pub const BORE_PER_MM: Figure<PerMm>     = per_mm(8_000, CommonPractice, DomedBoreHabit);
    pub const BORE_PER_MM_SD: Figure<PerMm>  = per_mm(3_000, CommonPractice, DomedBoreHabit);
    /// The most that the bore shifts, either way.
    pub const BORE_MOST: Figure<Length>       = length(5_000, CommonPractice, DomedBoreHabit);
    /// The radius of the dome inside a court band whose edge relief was not measured.
    pub const DOME_RADIUS: Figure<Length>     = length(160_000, CommonPractice, HouseRule);
    /// The most edge relief that is taken for granted.
    pub const RELIEF_MOST: Figure<Length>     = length(3_000, CommonPractice, HouseRule);
    pub const COLD: Figure<Length>            = length(5_000, CommonPractice, HandsHabit);
    pub const WARM: Figure<Length>            = length(-5_000, CommonPractice, HandsHabit);
    pub const HANDS_OFF_SD: Figure<Length>    = length(4_000, CommonPractice, HandsHabit);
    pub const HANDS_NORMAL_SD: Figure<Length> = length(3_000, CommonPractice, HandsHabit);
    /// No bench allows for its own leaning before it has looked.
    pub const OFFSET: Figure<Length>          = length(0, CommonPractice, HouseRule);
    /// What a ring already worn is put right by, by how it sits: half a UK letter, and a quarter for the summer.
    pub const SITS_TIGHT: Figure<Length>      = length(6_250, CommonPractice, HouseRule);
    pub const SITS_SPINS: Figure<Length>      = length(-6_250, CommonPractice, HouseRule);
    pub const SITS_SUMMER: Figure<Length>     = length(3_125, CommonPractice, HouseRule);
    pub const SITS_RIGHT_SD: Figure<Length>   = length(2_000, CommonPractice, HouseRule);
    pub const SITS_OFF_SD: Figure<Length>     = length(4_000, CommonPractice, HouseRule);
    /// A quarter of a UK letter: a gauge that is off by more is pointed out.
    pub const QUARTER_SIZE: Figure<Length>    = length(3_125, CommonPractice, HouseRule);
    /// How far off a bench may be, before its bands have been looked at.
    pub const OFFSET_PRIOR_SD: Figure<Length> = length(3_000, CommonPractice, HouseRule);
    /// The gauge that readings with unlike gauges are compared on: flat, and this wide.
    pub const PLAIN_WIDTH: Figure<Length>     = length(30_000, CommonPractice, HouseRule);
    /// Readings farther apart than two whole UK letters contradict each other.
    pub const READINGS_APART: Figure<Length>  = length(25_000, CommonPractice, HouseRule);
    /// What one reading is off by, at the least.
    pub const READING_SD: Figure<Length>      = length(3_500, CommonPractice, HouseRule);
    /// What a finger differs by from one day to another.
    pub const DAY_SD: Figure<Length>          = length(3_000, CommonPractice, HouseRule);
    /// A joint that was tried in a width over this far from the band's is to be tried again in the band's.
    pub const JOINT_APART: Figure<Length>     = length(10_000, CommonPractice, HouseRule);
    /// This near to half-way between two steps, both are shown; of small steps only as near as a fifth of one. In quarter
    /// letters, 0.3125 mm apart, two thirds of all answers would otherwise be half-way.
    pub const HALF_WAY: Figure<Length>        = length(1_000, CommonPractice, HouseRule);
    /// From this width on a flat band takes the larger of the two.
    pub const WIDE_FLAT: Figure<Length>       = length(50_000, CommonPractice, WideBandHabit);
    /// So loose at the base a ring for a large joint may be: leave it, beads or a spring, ask the bench.
    pub const LOOSE_ACCEPT: Figure<Length>    = length(12_500, CommonPractice, JointHabit);
    pub const LOOSE_BEADS: Figure<Length>     = length(25_000, CommonPractice, JointHabit);
    pub const LOOSE_BENCH: Figure<Length>     = length(50_000, CommonPractice, JointHabit);
    /// The stick of the standard: 35 mm of circumference (41 to 76) on a scale of 160 mm, if linear.
    pub const STICK_TAPER: Figure<PerMm>     = per_mm(2_190, Derived, RingStickStandard);
}
pub use rows::*;

/// What benches customarily go up by, to be shown beside the answer. Nothing is computed from it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CustomaryUp {
    HalfUkLetter { at: Length },
    OneUkLetter { from: Length, to: Length },
    HalfUsSize { from: Length },
}

const fn whole(mm: i64) -> Length {
    Length::tenthousandths(mm * 10_000)
}

/// Standing of all three: common practice.
pub const CUSTOMARY_UPS: [CustomaryUp; 3] = [
    CustomaryUp::HalfUkLetter { at: whole(6) },
    CustomaryUp::OneUkLetter { from: whole(8), to: whole(10) },
    CustomaryUp::HalfUsSize { from: whole(5) },
];

/// The constants that a jeweller may set for themselves. The default is the customary ones.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Constants {
    pub width_per_mm: PerMm,
    pub width_per_mm_sd: PerMm,
    pub bore_per_mm: PerMm,
    pub bore_per_mm_sd: PerMm,
    /// Cold hands: up.
    pub cold: Length,
    /// Warm hands: down, and so below zero.
    pub warm: Length,
    pub hands_off_sd: Length,
    pub hands_normal_sd: Length,
    /// What every band comes out off by here, whatever its width and bore: nothing unless the jeweller says so.
    pub offset: Length,
    pub offset_sd: Length,
}

impl Default for Constants {
    fn default() -> Self {
        Constants {
            width_per_mm: WIDTH_PER_MM.value,
            width_per_mm_sd: WIDTH_PER_MM_SD.value,
            bore_per_mm: BORE_PER_MM.value,
            bore_per_mm_sd: BORE_PER_MM_SD.value,
            cold: COLD.value,
            warm: WARM.value,
            hands_off_sd: HANDS_OFF_SD.value,
            hands_normal_sd: HANDS_NORMAL_SD.value,
            offset: OFFSET.value,
            offset_sd: OFFSET.value,
        }
    }
}

/// The standing of a figure in use: the customary one's, or the jeweller's own where it was changed.
pub fn standing_of<T: PartialEq>(in_use: T, customary: Figure<T>) -> Standing {
    if in_use == customary.value { customary.standing } else { Standing::Yours }
}
