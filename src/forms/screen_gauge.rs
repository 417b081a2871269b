//! The screen gauge: what the screen is calibrated with, and how wide the circle is. Nothing of it is typed: it is
//! picked, and moved with a slide.

use super::texts::{Key, Texts};
use crate::trade::glass::{Pixels, Ratio, Screen, Thing};

/// What the screen is calibrated with.
pub const WITH: Key = Key::new("with");
/// How wide the circle is, in thousandths of a pixel of the page.
pub const CIRCLE: Key = Key::new("circle");

/// What the form starts with, on a page with so much room.
pub fn start(room: Pixels) -> Texts {
    let first = Thing::ALL.into_iter().find(|thing| thing.fits(room));
    Texts::default().with(WITH, first.map(|thing| thing.row().code).unwrap_or_default()).with_blank([CIRCLE])
}

/// What is picked to calibrate with.
pub fn thing(texts: &Texts) -> Option<Thing> {
    Thing::from_code(texts.get(WITH))
}

/// A width in pixels, as a slide has it.
pub fn read_pixels(text: &str) -> Option<Pixels> {
    text.trim().parse().ok().map(Pixels)
}

/// The text of a width in pixels.
pub fn pixels(of: Pixels) -> String {
    of.0.to_string()
}

/// The screen on which the thing that is picked is so wide; none while nothing is picked, and if no screen is like that.
pub fn screen(texts: &Texts, wide: Option<Pixels>, ratio: Ratio) -> Option<Screen> {
    Screen::new(thing(texts)?, wide?, ratio)
}

/// How a screen was calibrated, as the phone keeps it: what with, and how wide that was.
pub fn calibration(screen: &Screen) -> String {
    format!("{} {}", screen.thing().row().code, pixels(screen.span()))
}

/// Reads what the phone keeps; none where no screen is like that.
pub fn read_calibration(text: &str, ratio: Ratio) -> Option<Screen> {
    let (code, span) = text.split_once(' ')?;
    Screen::new(Thing::from_code(code)?, read_pixels(span)?, ratio)
}
