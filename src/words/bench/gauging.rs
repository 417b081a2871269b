//! The words of the gauges that a screen and a sheet of paper make.

use super::*;

use crate::trade::glass::{Measured, Pixels, Screen, Thing};
use crate::trade::measure::{Circumference, Length, Standing};
use crate::trade::paper::{PAPER as PAPER_THICK, Verdict, one_percent};
use crate::trade::sizing::Size;
use crate::words::{format, standing};

pub const SCREEN_GAUGE: &str = "Screen gauge";
pub const SCREEN_GAUGE_HOW: &str =
    "Lay a ring on the glass, match a circle to it, and read its size and how sure that is.";
pub const PAPER_GAUGE: &str = "Paper gauge";
pub const PAPER_GAUGE_HOW: &str = "A strip and circles to print, with a line that tells whether the print is true.";

// The screen
pub const NOT_CALIBRATED: &str =
    "First tell this screen how large it is, with something of known size. Until then it gives no answer.";
pub const WAS_OTHERWISE: &str = "This screen was calibrated while the page was shown at another size: it has been zoomed, or the window has moved. \
                                 Calibrate it anew, or put the zoom back.";
pub const ENLARGED: &str = "The page is pinched larger than it is. Pinch it back: until then nothing is measured.";
pub const WITH: &str = "Calibrate it with";
pub const ROOM_ONLY: &str = "Offered is what goes onto this screen for certain.";
pub const MATCH_FIRST: &str = "Match the picture with what lies on the glass first: move the slider, or press + and −.";
pub const IT_FITS: &str = "It fits: keep that";
pub const KEPT_NOT: &str = "This phone keeps nothing for the app: it holds until you leave this page.";
pub const CALIBRATE_ANEW: &str = "Calibrate anew, or check it";
pub const MATCH_PATCH: &str = "Width of the patch";
pub const MATCH_CIRCLE: &str = "Width of the circle";
pub const MUCH_SMALLER: &str = "Much smaller";
pub const SMALLER: &str = "Smaller";
pub const LARGER: &str = "Larger";
pub const MUCH_LARGER: &str = "Much larger";
pub const LAY_CARD: &str = "Lay the card on the patch, its lower edge on the lower edge of the colour, upwards from there. Make the patch so wide that \
                            no colour shows on either side, and not a hair narrower.";
pub const LAY_COIN: &str = "Lay the coin on the patch. Make the patch so wide that no colour shows round the coin, and not a hair narrower. A worn \
                            coin is a little small.";
pub const LAY_RING: &str = "Lay the ring on the circle and look straight down on it with one eye. Make the circle so wide that its colour just fills the \
                            ring. It does not mind being touched; the buttons and the slide move it.";
pub const ZOOM_UNTOLD: &str =
    "Not every browser tells that a page is zoomed from its menu: if it was since, check with the card again.";
pub const IN_EVERY_SYSTEM: &str = "In every system";
pub const PIXEL: &str = "One pixel of this screen";
pub const PIXEL_WHY: &str = "nothing finer can be shown; in mm across";
pub const BY_EYE: &str = "Matched by eye";
pub const BY_EYE_WHY: &str = "0.1 mm across, and a pixel either way · common practice";
pub const GIVE_OR_TAKE: &str = "Give or take";
pub const GIVE_OR_TAKE_WHY: &str = "two times in three it is no farther off, in mm round the inside";
pub const NO_JEWELLERS_GAUGE: &str =
    "A screen is no jeweller’s gauge: take it for what it says it is sure of, and measure the finger all the same.";

/// What a screen is calibrated with, as a choice.
pub fn thing(thing: Thing) -> &'static str {
    match thing {
        Thing::CardShort => "Bank card, short side",
        Thing::CardLong => "Bank card, long side",
        Thing::TwoEuro => "2 euro",
        Thing::OneEuro => "1 euro",
        Thing::TwoPence => "2 pence",
        Thing::TenPence => "10 pence",
        Thing::UsQuarter => "US quarter",
    }
}

/// "53.98 mm: ISO/IEC 7810, ID-1 · published".
pub fn thing_known(thing: Thing) -> String {
    let row = thing.row();
    format!("{} mm: {} · {}", format::mm(row.across, 2), row.source, standing::standing(row.standing))
}

/// What the patch is, for ears.
pub fn patch_drawn(of: Thing) -> String {
    format!("A patch of colour to lay this on: {}.", thing(of))
}

/// "300 pixels wide", for ears while a patch is made wider.
pub fn pixels(wide: i64) -> String {
    format!("{} wide", format::counted(wide, "pixel", "pixels"))
}

pub fn circle_drawn(across: Length) -> String {
    format!("A filled circle, {} mm across.", format::mm(across, 2))
}

/// "17.20 mm", for ears while a circle is made wider.
pub fn circle_wide(screen: &Screen, wide: Pixels) -> String {
    format!("{} mm", format::mm(screen.length(wide), 2))
}

/// Beside the size on the glass: across, round, and what else it may be.
pub fn measured(found: &Measured, in_range: &[String]) -> Vec<String> {
    vec![
        format!("{} mm across, {} mm round the inside", format::mm(found.across.0, 2), format::mm(found.round.0, 1)),
        format!("give or take {} mm round", format::mm(found.u, 2)),
        eight_in_ten(in_range),
    ]
}

pub fn calibrated_by(screen: &Screen) -> String {
    format!("Calibrated with: {}", thing(screen.thing()))
}

pub fn calibrated_why(screen: &Screen) -> String {
    format!(
        "{}; it may be off by {} mm itself, from memory",
        thing_known(screen.thing()),
        plain(screen.thing().row().off_by)
    )
}

/// The button that takes the ring down as a reading: "Ines wears it: write it down".
pub fn write_down(name: &str) -> String {
    format!("{name} wears it: write it down")
}

// The paper
pub const PRINTED_LINE: &str = "The line on the print measures";
pub const PRINTED_LINE_HINT: &str = "With a ruler, from the first stroke to the last: it should be 100 mm.";
pub const READ_ON_IT: &str = "Read with";
pub const BY_STRIP: &str = "A strip";
pub const BY_CIRCLE: &str = "A circle";
pub const PAPER_READ: &str = "What it read";
pub const PUT_RIGHT: &str = "Put right";
pub const PAPER_NOTE: &str = "Print at 100 %, not to fit the page. A paper strip is no jeweller’s gauge: it gives, it slants, and it reads as wide as it was \
                              cut. Take it for a first idea (common practice).";

/// What a print that is not true does, with the size that people speak of.
pub fn one_percent_is(of: Circumference) -> String {
    format!(
        "A print that is 1 % too large or too small is {} mm off at size {}: measure the line before you trust it.",
        plain(one_percent(of)),
        plain(of.0)
    )
}

/// What is to be done about the print.
pub fn verdict(verdict: Verdict) -> String {
    match verdict {
        Verdict::True => "The print is as true as a ruler can tell.".to_owned(),
        Verdict::PutRight { off } => {
            format!("The print is {} % off: readings are put right here.", format::mm_signed(off, 1))
        }
        Verdict::PrintAgain { off } => {
            format!("The print is {} % off, made to fit the page: print it again at 100 %.", format::mm_signed(off, 1))
        }
    }
}

/// Beside the size that was put right, which is sure to so much.
pub fn put_right(at: Circumference, u: Length, by_strip: bool) -> Vec<String> {
    let mut lines = vec![format!("{} mm round, {} mm across", format::mm(at.0, 2), format::mm(at.diameter().0, 2))];
    if by_strip {
        lines.push(format!(
            "less {} mm for paper of {} mm",
            format::mm(PAPER_THICK * std::f64::consts::PI, 2),
            plain(PAPER_THICK)
        ));
    }
    lines.push(format!(
        "give or take {} mm round · {}",
        format::mm(u, 2),
        standing::standing(Standing::CommonPractice)
    ));
    lines
}

// On the sheet
pub const SHEET_AT_FULL_SIZE: &str = "Print at 100 %. Measure the line first.";
pub const CONTROL_LINE: &str = "100 mm";
pub const CARD_OUTLINE: &str = "a bank card, 85.6 by 54.0 mm";
pub const SHEET_HOW: [&str; 8] = [
    "1  The line must be 100 mm long.",
    "2  A bank card must fit its outline.",
    "3  Cut a strip out, its left end on the line.",
    "4  Wrap it round the base of the finger,",
    "not tight. Read where its end lies.",
    "5  Lay a ring on the circles: the one that",
    "just fills its inside is its size.",
    "6  No jeweller’s gauge: a first idea.",
];
pub const STRIP_END: &str = "cut; this end points";
pub const STRIP_WIDE: &str = "8 mm wide; below, mm round";
pub const STRIP_NARROW: &str = "4 mm wide";

pub fn sheet_title(scale: &str) -> String {
    format!("{PAPER_GAUGE}: {scale}")
}

pub fn sheet_drawn(scale: &str) -> String {
    format!(
        "The sheet to print: a line of 100 mm, strips to wrap round a finger and circles to lay rings on, in {scale}."
    )
}

/// Where the circles of a sheet end for want of room: "On this paper the circles end at S½, 60.6 mm round; ...".
pub fn circles_end(label: &str, at: Circumference) -> String {
    format!("On this paper the circles end at {label}, {} mm round; A4 has larger ones.", format::mm(at.0, 1))
}

/// A size in as few figures as it has: "N", "54", "17".
pub fn on_sheet(size: Size) -> String {
    crate::words::sizing::size_name(size).trim_end_matches(" mm").to_owned()
}

/// "16.91": across, in a circle.
pub fn across_short(at: Circumference) -> String {
    format::mm(at.diameter().0, 2)
}
