//! From a reading to the order size: gauge, width, bore, hands, joint, and how sure the answer is.
//!
//! INVARIANT: works in circumferences and knows no size system; a scale is a [`Grid`], and the screens name its
//! steps. Every shift is listed with its amount and its standing, and the listed shifts add up to the answer
//! exactly. For given other inputs the order size never falls as the band grows wider, and is never below the joint, unless the jeweller puts an amount of
//! their own in the place of one of the shifts.

mod bore;
mod calibrate;
mod combine;
pub mod constants;
pub mod gauges;
mod grid;
mod joint;
mod learn;
mod limits;
mod order;
mod reading;
mod shifts;
mod terms;

pub use bore::{bore_room, edge_relief};
pub use calibrate::{Calibration, CalibrationPoint, calibrate};
pub use combine::{Combined, Part, combine};
pub use constants::{CUSTOMARY_UPS, Constants, CustomaryUp, Figure, PerMm, Source};
pub use grid::Grid;
pub use joint::{JointFinding, JointHelp, NoBeads};
pub use learn::{Estimate, Learned, Score, WornBand, learn, worn_band};
pub use limits::{FitError, Quantity, READINGS_MOST, RINGS_BESIDE_MOST, Range};
pub(in crate::trade) use order::EIGHT_IN_TEN;
pub use order::{Answer, Band, Inputs, MeasureAgain, Order, Tie, Wider, Worn, order, wider};
pub use reading::{Gauge, GaugeKind, Hands, Place, ReadAt, Reading, Sits};
pub use shifts::stick_off;
pub use terms::{Overrules, Shift, ShiftKind, Term};
