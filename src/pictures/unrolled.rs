//! A ring that tapers, cut open at its back and laid flat, and the band laid against it: where it is as wide, and what
//! it would be if it were matched to the top.

use super::Picture;
use super::layout::{SMALL, TEXT, cut, width_of};
use super::pen::{Anchor, At, Pen, WIDTH};
use crate::trade::measure::{Circumference, Length};
use crate::trade::stack::{FromTop, Taper};
use crate::words::pictures as words;

/// What is drawn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unrolled {
    pub label: String,
    pub ring: Taper,
    pub band: Length,
    pub round: Circumference,
}

const MARGIN: f64 = 8.0;

/// Draws the ring and the band, both all the way round, to one scale.
pub fn unrolled(of: &Unrolled) -> Picture {
    let long = WIDTH - 2.0 * MARGIN;
    let round = of.round.mm().clamp(20.0, 120.0);
    let unit = long / round;
    let mut pen = Pen::to_scale(unit);
    let widest = [of.ring.top, of.ring.shoulders, of.ring.back].map(|width| width.mm().clamp(0.1, 40.0));
    let half = widest.into_iter().fold(0.0, f64::max) / 2.0 * unit;
    let middle = 44.0 + half;
    // From the back by nine o'clock, the top and three o'clock to the back again.
    let x = |degrees: f64| MARGIN + (degrees + 180.0) / 360.0 * long;
    let edge = |degrees: i32| of.ring.at(FromTop(degrees.unsigned_abs() as u16)).mm().clamp(0.1, 40.0) / 2.0 * unit;
    let along = [-180, -90, 0, 90, 180];
    let upper = along.map(|degrees| (x(f64::from(degrees)), middle - edge(degrees)));
    let lower = along.map(|degrees| (x(f64::from(degrees)), middle + edge(degrees)));
    let points: Vec<At> = upper.into_iter().chain(lower.into_iter().rev()).collect();

    pen.text("strong", (2.0, 13.0), Anchor::Start, &cut(&of.label, TEXT, true, WIDTH - 4.0));
    pen.outline("wash-ink ring", &points);
    for (degrees, width) in [(0, of.ring.top), (90, of.ring.shoulders), (-90, of.ring.shoulders)] {
        let at = x(f64::from(degrees));
        pen.group("dim-width", |pen| pen.upright("thin soft", at, middle - edge(degrees), middle + edge(degrees)));
        pen.text("", (at, middle - half - 8.0), Anchor::Middle, &words::width(width));
    }
    let back = words::width(of.ring.back);
    pen.text("", (x(180.0), middle - half - 8.0), Anchor::End, &back);

    let start = middle + half;
    let band = of.band.mm().clamp(0.1, 40.0) * unit;
    pen.rect("wash-rouge rouge band", (MARGIN, start), (long, band), 0.0);
    let if_top = of.ring.top.mm().clamp(0.1, 40.0) * unit;
    if of.ring.top != of.ring.shoulders {
        pen.line("dashed ochre if-top", (MARGIN, start + if_top), (WIDTH - MARGIN, start + if_top));
    }
    let deep = start + band.max(if_top);
    for (at, name) in words::places_round().into_iter().enumerate() {
        let wide = width_of(name, SMALL, false);
        let at = x(-180.0 + 90.0 * at as f64).clamp(wide / 2.0 + 2.0, WIDTH - wide / 2.0 - 2.0);
        pen.runs("soft", (at, deep + 15.0), Anchor::Middle, SMALL, &[("", name)]);
    }
    pen.text("strong rouge", (2.0, deep + 34.0), Anchor::Start, &words::band_wide(of.band));
    let mut end = deep + 42.0;
    if of.ring.top != of.ring.shoulders {
        pen.text("ochre", (2.0, deep + 52.0), Anchor::Start, &words::if_top(of.ring.top));
        end += 18.0;
    }
    pen.finish("unrolled", WIDTH, end, &words::unrolled(&of.label, &of.ring, of.band))
}
