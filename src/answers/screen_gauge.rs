//! The screen gauge: whether the screen is calibrated as it is now, how wide a patch or a circle may be made, and the
//! size of a ring that a circle was matched to.

use crate::trade::glass::{Measured, Pixels, Ratio, Screen, Thing};
use crate::trade::measure::Length;
use crate::trade::sizing::{self, Size, Step, System};

/// What the circle starts with: UK N, between most fingers.
const START: Length = Length::tenthousandths(17_1000);

/// What can be done on the screen as it is now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    /// The page is pinched larger than it is: nothing is measured.
    Enlarged,
    /// Nothing is answered before it is calibrated; it may have been, and is to be anew.
    Calibrating {
        known: Option<Screen>,
    },
    Measuring(Screen),
}

/// What a slide makes wider and narrower.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Slide {
    pub start: Pixels,
    pub least: Pixels,
    pub most: Pixels,
    /// One pixel of the screen itself.
    pub step: Pixels,
}

/// A ring on the glass.
#[derive(Clone, Debug, PartialEq)]
pub struct ScreenAnswer {
    pub screen: Screen,
    pub found: Measured,
    /// The nearest size of the first system, in the steps that the workshop makes,
    pub nearest: Size,
    /// and those that eight in ten lie between: that one where there is no other.
    pub in_range: Vec<Size>,
}

/// The state of a page: `known` is how the screen was calibrated as it is now.
pub fn state(is_enlarged: bool, known: Option<Screen>, calibrate_anew: bool) -> State {
    match known {
        _ if is_enlarged => State::Enlarged,
        Some(screen) if !calibrate_anew => State::Measuring(screen),
        known => State::Calibrating { known },
    }
}

/// What goes onto the screen for certain.
pub fn things(room: Pixels) -> Vec<Thing> {
    Thing::ALL.into_iter().filter(|thing| thing.fits(room)).collect()
}

/// The patch for a thing: as wide as it was when the screen was calibrated with it, otherwise as a phone shows it.
pub fn patch(thing: Thing, known: Option<&Screen>, room: Pixels, ratio: Ratio) -> Slide {
    let start = match known {
        Some(screen) if screen.thing() == thing => screen.span(),
        Some(_) | None => thing.usual(),
    };
    let start = start.min(room);
    Slide { start, least: Pixels(start.0 / 2), most: room, step: ratio.step() }
}

/// The circle: as wide as it was, where a ring can be so wide.
pub fn circle(screen: &Screen, typed: Option<Pixels>, room: Pixels, ratio: Ratio) -> Slide {
    let (least, most) = screen.circles();
    let most = most.min(room);
    let inside = typed.filter(|it| (least..=most).contains(it));
    Slide { start: inside.unwrap_or_else(|| screen.pixels(START).min(most)), least, most, step: ratio.step() }
}

/// The ring that a circle of so many pixels fills; none if no ring is that wide.
pub fn answer(screen: Screen, circle: Pixels, system: System, step: Step) -> Option<ScreenAnswer> {
    let found = screen.measured(circle)?;
    let nearest = sizing::nearest(system, found.round, step).size;
    let mut in_range = sizing::within(system, found.low..=found.high, step);
    if in_range.is_empty() {
        in_range.push(nearest);
    }
    Some(ScreenAnswer { screen, found, nearest, in_range })
}

impl Slide {
    /// So many steps wider, or narrower below nought, as far as it goes.
    pub fn moved(&self, from: Pixels, steps: i64) -> Pixels {
        Pixels(from.0.saturating_add(steps.saturating_mul(self.step.0)).min(self.most.0).max(self.least.0))
    }
}
