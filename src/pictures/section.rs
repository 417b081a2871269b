//! A band cut through, to scale, the finger below it: width, height, dome and edge relief as dimensions.

use super::Picture;
use super::layout::{SMALL, TEXT, cut, width_of};
use super::pen::{Anchor, At, Pen, WIDTH};
use crate::trade::band::section::Section;
use crate::trade::measure::Length;
use crate::words::pictures as words;

/// Draws a section beside others, all of them to the scale at which the widest fills its place, with its name above it
/// where nothing else says it.
pub fn beside(of: &Section, widest: Length, name: Option<&str>) -> Picture {
    let unit = (NARROW - 76.0) / widest.mm().max(of.width().mm());
    let mut pen = Pen::to_scale(unit);
    let (half, high) = (of.width().mm() / 2.0 * unit, of.height().mm() * unit);
    let (middle, top) = ((NARROW - 52.0) / 2.0, if name.is_some() { 26.0 } else { 8.0 });
    let floor = top + high;
    if let Some(name) = name {
        pen.text("strong", (2.0, 13.0), Anchor::Start, name);
    }
    outline(&mut pen, of, (middle, floor), unit);
    pen.group("dim-width", |pen| pen.dimension("thin soft", floor + 12.0, middle - half, middle + half));
    pen.text("", (middle, floor + 30.0), Anchor::Middle, &words::width(of.width()));
    pen.group("dim-height", |pen| pen.upright("thin soft", middle + half + 10.0, top, floor));
    let said = words::width(of.height());
    let y = ((top + floor) / 2.0 + 4.5).max(13.0);
    pen.text("", (middle + half + 18.0, y), Anchor::Start, &said);
    pen.finish("section beside", NARROW, floor + 36.0, &words::section(words::band(), of))
}

/// The width of a picture that stands beside others.
const NARROW: f64 = 150.0;
/// The widest and the tallest that a section is drawn.
const WIDEST: f64 = 150.0;
const TALLEST: f64 = 80.0;
const STEPS: u16 = 24;

/// Draws a section under the name of its ring.
pub fn section(label: &str, of: &Section) -> Picture {
    let unit = (WIDEST / of.width().mm()).min(TALLEST / of.height().mm());
    let mut pen = Pen::to_scale(unit);
    let (middle, top) = (WIDTH / 2.0, 34.0);
    let (half, high) = (of.width().mm() / 2.0 * unit, of.height().mm() * unit);
    let floor = top + high;
    let (left, right) = (middle - half, middle + half);

    let name = cut(label, TEXT, true, WIDTH - 4.0);
    pen.text("strong", (2.0, 13.0), Anchor::Start, &name);
    pen.path(
        "thin soft",
        &[("M", &[left - 26.0, floor + 2.0]), ("Q", &[middle, floor - 1.0, right + 26.0, floor + 2.0])],
    );
    outline(&mut pen, of, (middle, floor), unit);

    let below = floor + 18.0;
    pen.group("dim-width", |pen| pen.dimension("thin soft", below, left, right));
    pen.text("", (middle, below + 18.0), Anchor::Middle, &words::across(of.width()));
    let beside = right + 16.0;
    pen.group("dim-height", |pen| pen.upright("thin soft", beside, top, floor));
    let said = words::high(of.height());
    let at = (beside + 9.0).min(WIDTH - 2.0 - width_of(&said, TEXT, false));
    pen.text("", (at, (top + floor) / 2.0 + 4.5), Anchor::Start, &said);

    let (dome, relief) = (of.dome().mm() * unit, of.relief().mm() * unit);
    let beside = left - 16.0;
    let mut side = |class: &str, from: f64, to: f64, y: f64, said: &str| {
        pen.group(class, |pen| pen.upright("thin soft", beside, from, to));
        pen.runs("soft", (beside - 8.0, y), Anchor::End, SMALL, &[("", said)]);
    };
    if dome > 0.0 {
        side("dim-dome", top, top + dome, top + 6.0, &words::dome(of.dome()));
    }
    if relief > 0.0 {
        side("dim-relief", floor - relief, floor, floor + 6.0, &words::relief(of.relief()));
    }
    pen.finish("section", WIDTH, below + 26.0, &words::section(label, of))
}

fn outline(pen: &mut Pen, of: &Section, (middle, floor): At, unit: f64) {
    let at = |(x, z): (Length, Length)| (middle + x.mm() * unit, floor - z.mm() * unit);
    let points: Vec<At> = of.outline(STEPS).into_iter().map(at).collect();
    pen.outline("wash-ink section", &points);
}
