//! From a reading to the order size: gauge, width, bore, hands, joint, and how sure the answer is.
//!
//! INVARIANT: works in circumferences and knows no size system; a scale is a [`Grid`], and the screens name its
//! steps. Every shift is listed with its amount and its standing, and the listed shifts add up to the answer
//! exactly. For given other inputs the order size never falls as the band grows wider, and is never below the joint.

mod bore;
pub mod constants;
pub mod gauges;
mod grid;
mod joint;
mod limits;
mod order;
mod reading;
mod shifts;

pub use bore::{bore_room, edge_relief};
pub use constants::{CUSTOMARY_UPS, Constants, CustomaryUp, Figure, PerMm, Source};
pub use grid::Grid;
pub use joint::{JointFinding, JointHelp, NoBeads};
pub use limits::{FitError, Quantity, RINGS_BESIDE_MOST, Range};
pub use order::{Answer, Band, Inputs, MeasureAgain, Order, Tie, Worn, order};
pub use reading::{Gauge, GaugeKind, Hands, Place, ReadAt, Reading};
pub use shifts::{Shift, ShiftKind};
