//! How a ring is measured at home: where it is wide, and with what. For people who have never done it.

use super::Picture;
use super::pen::{Anchor, Pen, WIDTH};
use crate::trade::card;
use crate::words::list::guide as say;

/// A ring as a clock face, and from its side: the width at three and nine o'clock, and at the top.
pub fn clock() -> Picture {
    let mut pen = Pen::default();
    let (x, y) = (92.0, 108.0);
    pen.circle("leaf", (x, y), 62.0);
    pen.circle("paper", (x, y), 52.0);
    stone(&mut pen, (x, y - 62.0));
    for (text, at) in [("12", (x, y - 28.0)), ("3", (x + 36.0, y + 5.0)), ("9", (x - 36.0, y + 5.0))] {
        pen.text("soft", at, Anchor::Middle, text);
    }
    for side in [-1.0, 1.0] {
        pen.line("rouge thick", (x + side * 48.0, y), (x + side * 68.0, y));
    }
    let x = 236.0;
    band(&mut pen, x, y, 62.0);
    stone(&mut pen, (x, y - 62.0));
    pen.dimension("rouge", y, x - 20.0, x + 20.0);
    pen.text("rouge strong", (x + 30.0, y + 5.0), Anchor::Start, say::AT_SIDE);
    pen.dimension("soft", y - 44.0, x - 13.0, x + 13.0);
    pen.text("soft", (x + 30.0, y - 39.0), Anchor::Start, say::AT_TOP);
    pen.finish("measuring", WIDTH, 186.0, say::CLOCK_DRAWN)
}

/// A ruler across the band, its divisions to the same scale as the band: 3 mm.
pub fn ruler() -> Picture {
    let mut pen = Pen::default();
    let (x, y, mm) = (WIDTH / 2.0, 86.0, 13.5);
    band(&mut pen, x, y, 56.0);
    stone(&mut pen, (x, y - 56.0));
    pen.rect("leaf", (x - 8.0 * mm, y + 2.0), (16.0 * mm, 34.0), 2.0);
    for division in 0..=14 {
        let at = x + (f64::from(division) - 7.0) * mm + 0.5 * mm;
        let long = if division % 5 == 0 { 15.0 } else { 9.0 };
        pen.line("thin", (at, y + 2.0), (at, y + 2.0 + long));
    }
    pen.dimension("rouge", y - 8.0, x - 1.5 * mm, x + 1.5 * mm);
    pen.finish("measuring", WIDTH, 152.0, say::RULER_DRAWN)
}

/// A card with a strip along its short side, on which the width of a 3 mm band is marked eighteen times.
pub fn strip() -> Picture {
    let mut pen = Pen::default();
    let unit = 3.4;
    let (long, short) = (card::LONG_SIDE.mm() * unit, card::SHORT_SIDE.mm() * unit);
    let (left, top) = (24.0, 14.0);
    // Only the end of the card that is measured along; it runs out of the picture to the right.
    pen.rect("leaf", (left + 34.0, top), (long, short), 3.18 * unit);
    pen.rect("paper", (left, top - 4.0), (26.0, short + 8.0), 0.0);
    for mark in 0..=18 {
        let y = top + short * f64::from(mark) / 18.0;
        pen.line(if mark % 18 == 0 { "rouge" } else { "soft" }, (left + 12.0, y), (left + 26.0, y));
    }
    let middle = top + short / 2.0;
    pen.text("on-leaf soft", (left + 48.0, middle - 6.0), Anchor::Start, say::EIGHTEEN);
    pen.text("on-leaf rouge strong", (left + 48.0, middle + 14.0), Anchor::Start, say::SHORT_SIDE);
    pen.finish("measuring", WIDTH, top * 2.0 + short, say::CARD_DRAWN)
}

/// A band from its side: narrower at the top than at three o'clock, which is nearest to the eye.
fn band(pen: &mut Pen, x: f64, y: f64, half: f64) {
    let (top, middle) = (x - 13.0, x - 20.0);
    let mirrored = |at: f64| 2.0 * x - at;
    pen.path(
        "leaf",
        &[
            ("M", &[top, y - half]),
            ("C", &[top, y - half / 2.0, middle, y - half / 3.0, middle, y]),
            ("L", &[middle, y + half - 8.0]),
            ("Q", &[middle, y + half, middle + 8.0, y + half]),
            ("L", &[mirrored(middle + 8.0), y + half]),
            ("Q", &[mirrored(middle), y + half, mirrored(middle), y + half - 8.0]),
            ("L", &[mirrored(middle), y]),
            ("C", &[mirrored(middle), y - half / 3.0, mirrored(top), y - half / 2.0, mirrored(top), y - half]),
            ("Z", &[]),
        ],
    );
}

fn stone(pen: &mut Pen, at: (f64, f64)) {
    let (x, y) = at;
    pen.path(
        "paper",
        &[
            ("M", &[x - 13.0, y - 9.0]),
            ("L", &[x - 8.0, y - 16.0]),
            ("L", &[x + 8.0, y - 16.0]),
            ("L", &[x + 13.0, y - 9.0]),
            ("L", &[x, y + 5.0]),
            ("Z", &[]),
        ],
    );
    pen.line("thin", (x - 13.0, y - 9.0), (x + 13.0, y - 9.0));
}
