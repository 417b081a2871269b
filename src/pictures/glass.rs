//! What a thing is matched to on the glass: a patch of colour, in pixels of the page and at its own size.

use super::Picture;
use super::pen::Pen;
use crate::trade::card;
use crate::trade::glass::{Pixels, Screen, Thing};
use crate::words::bench as say;

/// What is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Patch {
    /// The lower end of a card that is so wide; the card lies upwards from it, off the buttons.
    Card { wide: Pixels, long_side: bool },
    /// For a coin, or for the inside of a ring.
    Disc(Pixels),
}

/// How high the patch's ground is at least, so that nothing moves under it.
const GROUND: f64 = 200.0;
const ROUND_IT: f64 = 12.0;

/// What a thing of known size is laid on.
pub fn patch(thing: Thing, wide: Pixels, room: Pixels) -> Picture {
    let patch = match thing.is_card() {
        true => Patch::Card { wide, long_side: thing == Thing::CardLong },
        false => Patch::Disc(wide),
    };
    glass(patch, room, &say::patch_drawn(thing))
}

/// What a ring is laid on.
pub fn circle(screen: &Screen, wide: Pixels, room: Pixels) -> Picture {
    glass(Patch::Disc(wide), room, &say::circle_drawn(screen.length(wide)))
}

/// The patch in the middle of a ground that is so wide. It MUST be shown at its own size.
pub fn glass(patch: Patch, room: Pixels, alternative: &str) -> Picture {
    let mut pen = Pen::default();
    let room = room.of_page();
    let middle = room / 2.0;
    let height = match patch {
        Patch::Card { wide, long_side } => {
            card_end(&mut pen, middle, wide.of_page(), long_side);
            GROUND
        }
        Patch::Disc(across) => {
            let across = across.of_page();
            let height = (across + 2.0 * ROUND_IT).max(GROUND);
            // Where the middle is, for whoever lays a ring down.
            for (from, to) in [(0.0, middle - across / 2.0 - ROUND_IT), (middle + across / 2.0 + ROUND_IT, room)] {
                pen.line("guide", (from, height / 2.0), (to, height / 2.0));
            }
            pen.circle("patch", (middle, height / 2.0), across / 2.0);
            height
        }
    };
    pen.finish_at_size("glass-picture", (0.0, (room, height)), alternative)
}

fn card_end(pen: &mut Pen, middle: f64, wide: f64, long_side: bool) {
    let side = if long_side { card::LONG_SIDE } else { card::SHORT_SIDE };
    let corner = wide * card::CORNER.mm() / side.mm();
    let (left, right, bottom) = (middle - wide / 2.0, middle + wide / 2.0, GROUND - ROUND_IT);
    pen.path(
        "patch",
        &[
            ("M", &[left, 0.0]),
            ("L", &[left, bottom - corner]),
            ("A", &[corner, corner, 0.0, 0.0, 0.0, left + corner, bottom]),
            ("L", &[right - corner, bottom]),
            ("A", &[corner, corner, 0.0, 0.0, 0.0, right, bottom - corner]),
            ("L", &[right, 0.0]),
            ("Z", &[]),
        ],
    );
}
