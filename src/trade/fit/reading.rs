//! One measurement, as it was taken. Plain data: records keep it, nothing here computes.

use super::constants::PerMm;
use crate::trade::band::Bore;
use crate::trade::measure::{Circumference, Length};
use chrono::NaiveDate;

/// What was measured. Base and joint are never averaged together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Place {
    Base,
    Joint,
}

impl Place {
    pub const ALL: [Place; 2] = [Place::Base, Place::Joint];
}

/// How the hands were.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Hands {
    Cold,
    Normal,
    Warm,
}

impl Hands {
    pub const ALL: [Hands; 3] = [Hands::Cold, Hands::Normal, Hands::Warm];
}

/// How a ring that is worn already sits. It is felt through the days, warm and cold, and so stands for how the hands
/// were.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Sits {
    Tight,
    Right,
    Spins,
    /// Right for most of the year, and not to be got off in summer.
    SticksInSummer,
}

impl Sits {
    pub const ALL: [Sits; 4] = [Sits::Tight, Sits::Right, Sits::Spins, Sits::SticksInSummer];
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum GaugeKind {
    /// A set of rings, tried on the finger.
    RingSet,
    /// A tapering stick on which a ring is read. The taper belongs to the stick: millimetres of circumference a
    /// millimetre of its length.
    Stick { taper: PerMm },
}

/// Where on a stick the ring was read. A flat bore touches at its lower edge, a domed bore at mid-width
/// (ISO 8653:2016).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ReadAt {
    LowerEdge,
    Centre,
}

impl ReadAt {
    pub const ALL: [ReadAt; 2] = [ReadAt::LowerEdge, ReadAt::Centre];

    /// Where a ring of this bore touches the stick, and so where it is read rightly.
    pub fn right_for(bore: Bore) -> ReadAt {
        match bore {
            Bore::Flat => ReadAt::LowerEdge,
            Bore::Domed => ReadAt::Centre,
        }
    }
}

/// A sizing ring set or ring stick. On a stick, `width`, `bore` and `relief` are those of the ring that was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Gauge {
    pub kind: GaugeKind,
    pub width: Length,
    pub bore: Bore,
    /// The edge relief of a domed bore where it was measured.
    pub relief: Option<Length>,
    /// From one mark, or one ring of the set, to the next, in circumference.
    pub step: Length,
    /// The gauge's own error, one standard deviation.
    pub own_error: Length,
}

/// One measurement of a finger, or of a ring that is worn on it.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Reading {
    /// What the gauge said, before anything is put right.
    pub as_read: Circumference,
    pub gauge: Gauge,
    /// Where a ring was read on the stick; without meaning for a ring set.
    pub read_at: ReadAt,
    pub hands: Hands,
    pub place: Place,
    /// The widths of the rings worn beside the gauge.
    pub beside: Vec<Length>,
    /// Of a ring already worn: how it sits. None for a gauge.
    pub sits: Option<Sits>,
    /// How much larger the gauge is here than it says, by its calibration; nothing where nobody has calibrated it.
    pub gauge_off: Length,
    /// The readings of one day share what the finger was like on it.
    pub day: NaiveDate,
}
