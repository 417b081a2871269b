//! The room that a domed bore gives.

use super::constants::{DOME_RADIUS, RELIEF_MOST};
use crate::trade::band::Bore;
use crate::trade::measure::Length;
use std::f64::consts::PI;

/// How far the edges of a domed bore stand back from its middle, where nobody has measured it.
///
/// s = min(w^2 / 8R, 0.30 mm), R = 16 mm the radius of the dome. Millimetres; range 0 to 0.30. Source: geometry of a
/// shallow arc; the radius and the cap are house rules.
///
/// ```
/// use bandwright::trade::{fit::edge_relief, measure::Length};
/// assert!((edge_relief(Length::from_mm(6.0)).mm() - 0.281).abs() < 0.0005);
/// ```
pub fn edge_relief(width: Length) -> Length {
    Length::from_mm(relief_mm(width.mm()))
}

/// How much more circumference a domed bore offers the finger than a flat one of the same size.
///
/// G = 2 pi s / 3, s the edge relief: taken over the width, a shallow arc stands back by a third of s, all round.
/// Millimetres; range 0 to 0.63 for an assumed relief. Source: geometry.
///
/// ```
/// use bandwright::trade::{fit::bore_room, measure::Length};
/// assert!((bore_room(Length::from_mm(0.28125)).mm() - 0.589).abs() < 0.0005);
/// ```
pub fn bore_room(relief: Length) -> Length {
    Length::from_mm(room_mm(relief.mm()))
}

pub(super) fn relief_mm(width: f64) -> f64 {
    (width * width / (8.0 * DOME_RADIUS.value.mm())).min(RELIEF_MOST.value.mm())
}

/// The width at which the assumed dome has a given relief.
pub(super) fn width_of_relief_mm(relief: f64) -> f64 {
    (8.0 * DOME_RADIUS.value.mm() * relief).sqrt()
}

pub(super) fn room_mm(relief: f64) -> f64 {
    2.0 * PI * relief / 3.0
}

/// The relief at which the room is a given one.
pub(super) fn relief_of_room_mm(room: f64) -> f64 {
    3.0 * room / (2.0 * PI)
}

/// The relief in use: none in a flat bore; in a domed one as measured, or else as assumed from the width.
pub(super) fn relief_in_use_mm(bore: Bore, measured: Option<Length>, width: f64) -> f64 {
    match (bore, measured) {
        (Bore::Flat, _) => 0.0,
        (Bore::Domed, Some(relief)) => relief.mm(),
        (Bore::Domed, None) => relief_mm(width),
    }
}
