//! The gauges that most jewellers own, to begin with: rows, to be set to one's own.

use super::reading::{Gauge, GaugeKind};
use crate::trade::band::Bore;
use crate::trade::measure::Length;

/// From one ring to the next of a set in half UK letters.
pub const HALF_LETTER: Length = Length::tenthousandths(6_250);

/// What a set that is in order is off by, one standard deviation. Common practice.
pub const OWN_ERROR: Length = Length::tenthousandths(1_000);

/// A narrow set and a wide one, both flat inside. Standing of both: common practice.
pub const USUAL_SETS: [Gauge; 2] = [set(30_000), set(60_000)];

const fn set(width: i64) -> Gauge {
    Gauge {
        kind: GaugeKind::RingSet,
        width: Length::tenthousandths(width),
        bore: Bore::Flat,
        relief: None,
        step: HALF_LETTER,
        own_error: OWN_ERROR,
    }
}
