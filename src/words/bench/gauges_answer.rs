//! What the gauges of a screen and a sheet of paper answer, in words.

use crate::answers::Tone;
use crate::answers::paper_gauge::PutRight;
use crate::answers::screen_gauge::ScreenAnswer;
use crate::forms::paper_gauge::ReadWith;
use crate::trade::glass::Pixels;
use crate::words::answer::{Headline, Reason, reason};
use crate::words::{bench as say, format, sizing};

/// The size of a ring on the glass, and how sure it is.
pub fn glass_headline(found: &ScreenAnswer) -> Headline {
    let names: Vec<String> = found.in_range.iter().map(|size| sizing::size_name(*size)).collect();
    let lines = say::measured(&found.found, &names);
    Headline { figure: sizing::size_name(found.nearest), lines, tone: Tone::Act }
}

/// What that rests on.
pub fn glass_reasons(of: &ScreenAnswer) -> Vec<Reason> {
    let (screen, found) = (&of.screen, &of.found);
    let sum = reason(say::GIVE_OR_TAKE, format::mm(found.u, 2), say::GIVE_OR_TAKE_WHY);
    vec![
        reason(say::PIXEL, format::mm(screen.finest(), 3), say::PIXEL_WHY),
        reason(say::BY_EYE, format::mm(found.u_match, 2), say::BY_EYE_WHY),
        reason(say::calibrated_by(screen), format::mm(found.u_screen, 2), say::calibrated_why(screen)),
        Reason { sum: true, ..sum },
    ]
}

/// "300 pixels wide", in whole pixels of the page.
pub fn patch_wide(of: Pixels) -> String {
    say::pixels(of.0 / 1_000)
}

/// A reading on paper, put right.
pub fn paper_headline(right: &PutRight) -> Headline {
    let lines = say::put_right(right.at, right.u, right.with == ReadWith::Strip);
    Headline { figure: sizing::size_name(right.nearest), lines, tone: Tone::Act }
}
