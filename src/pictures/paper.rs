//! A gauge to print: a line to measure, the outline of a card, strips to wrap round a finger, circles to lay rings on.
//! Four units are a millimetre, and the picture says so in its own size.

use super::Picture;
use super::ladder::Named;
use super::layout::{SMALL, width_of};
use super::pen::{Anchor, Pen};
use crate::answers::paper_gauge::SheetOfSizes;
use crate::trade::card;
use crate::trade::paper::{CONTROL, NARROW_STRIP, Paper, WIDE_STRIP};
use crate::trade::sizing::{Size, Step};
use crate::words::bench as say;
use crate::words::sizing as say_sizing;

/// What a sheet is drawn from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheet {
    pub paper: Paper,
    /// The name of the scale.
    pub scale: String,
    /// Its sizes on the strip; those without a name are short strokes.
    pub sizes: Vec<Named>,
    /// Those with a circle, from small to large: as many as there is room for.
    pub circles: Vec<Named>,
}

/// Units to a millimetre.
const MM: f64 = 4.0;
/// A strip goes on behind its last size.
const STRIP: f64 = 84.0;
/// The outer edge of a circle's stroke is the size.
const STROKE: f64 = 0.2;
/// Room round the drawing: what lies on the edge of the printed page is cut off.
const ROUND_IT: f64 = 1.0;
/// Words on a strip.
const TINY: f64 = 10.0;

impl Paper {
    /// The paper less its margins.
    fn inside(self) -> (f64, f64) {
        match self {
            Paper::A4 => (184.0, 268.0),
            Paper::A6 => (91.0, 133.0),
        }
    }

    /// Where the circles begin, and how far to the right they go: on small paper the line stands beside them.
    fn for_circles(self) -> (f64, f64) {
        match self {
            Paper::A4 => (106.0, 184.0),
            Paper::A6 => (25.0, 85.0),
        }
    }
}

impl Sheet {
    /// The sheet of a scale, whole sizes with their names.
    pub fn of(sizes: &SheetOfSizes) -> Sheet {
        let named = |size: &Size| Named { at: size.circumference(), label: say::on_sheet(*size) };
        let on_strip = |size: &Size| match size.is_on(Step::Whole) {
            true => named(size),
            false => Named { label: String::new(), ..named(size) },
        };
        Sheet {
            paper: sizes.paper,
            scale: say_sizing::system_name(sizes.scale).to_owned(),
            sizes: sizes.strip.iter().map(on_strip).collect(),
            circles: sizes.circles.iter().map(named).collect(),
        }
    }
}

/// The last size that there is room for, where that is not the last one.
pub fn circles_end(of: &Sheet) -> Option<&Named> {
    let placed = placed(of);
    placed.last().filter(|_| placed.len() < of.circles.len()).map(|(size, _)| *size)
}

/// Draws the sheet: as large as the paper less its margins.
pub fn sheet(of: &Sheet) -> Picture {
    let mut pen = Pen::to_scale(MM);
    let (width, height) = of.paper.inside();
    text(&mut pen, "strong", (0.0, 4.5), &say::sheet_title(&of.scale));
    text(&mut pen, "", (0.0, 9.5), say::SHEET_AT_FULL_SIZE);
    match of.paper {
        Paper::A4 => {
            control(&mut pen, 16.0);
            card_outline(&mut pen, 23.0);
            for (i, line) in say::SHEET_HOW.iter().enumerate() {
                text(&mut pen, "", (91.0, 27.5 + 5.5 * i as f64), line);
            }
            strip(&mut pen, &of.sizes, 83.0, WIDE_STRIP.mm(), true);
            strip(&mut pen, &of.sizes, 96.0, NARROW_STRIP.mm(), false);
            text(&mut pen, "", (STRIP + 4.0, 88.0), say::STRIP_WIDE);
            text(&mut pen, "", (STRIP + 4.0, 99.0), say::STRIP_NARROW);
        }
        Paper::A6 => {
            control_upright(&mut pen, 88.5, 16.0);
            strip(&mut pen, &of.sizes, 13.0, WIDE_STRIP.mm(), true);
        }
    }
    circles(&mut pen, of);
    let size = ((width + 2.0 * ROUND_IT) * MM, (height + 2.0 * ROUND_IT) * MM);
    pen.finish_at_size("sheet-picture", (ROUND_IT * MM, size), &say::sheet_drawn(&of.scale))
}

fn text(pen: &mut Pen, class: &str, at: (f64, f64), words: &str) {
    pen.runs(class, (at.0 * MM, at.1 * MM), Anchor::Start, SMALL, &[("", words)]);
}

/// The line of 100 mm, a stroke each centimetre.
fn control(pen: &mut Pen, y: f64) {
    let long = CONTROL.mm();
    pen.group("control", |pen| {
        pen.line("span", (0.0, y * MM), (long * MM, y * MM));
        for at in 0..=10 {
            let (x, half) = (long / 10.0 * f64::from(at) * MM, if at % 10 == 0 { 2.5 } else { 1.0 } * MM);
            pen.line("tick", (x, y * MM - half), (x, y * MM + half));
        }
        text(pen, "", (long + 3.0, y + 1.1), say::CONTROL_LINE);
    });
}

fn control_upright(pen: &mut Pen, x: f64, top: f64) {
    let long = CONTROL.mm();
    pen.group("control", |pen| {
        pen.line("span", (x * MM, top * MM), (x * MM, (top + long) * MM));
        for at in 0..=10 {
            let (y, half) = ((top + long / 10.0 * f64::from(at)) * MM, if at % 10 == 0 { 2.0 } else { 1.0 } * MM);
            pen.line("tick", (x * MM - half, y), (x * MM + half, y));
        }
        pen.runs("", ((x + 2.0) * MM, (top + long + 6.0) * MM), Anchor::End, SMALL, &[("", say::CONTROL_LINE)]);
    });
}

fn card_outline(pen: &mut Pen, y: f64) {
    let (long, short, corner) = (card::LONG_SIDE.mm() * MM, card::SHORT_SIDE.mm() * MM, card::CORNER.mm() * MM);
    pen.rect("card", (0.0, y * MM), (long, short), corner);
    pen.runs("", (long / 2.0, y * MM + short / 2.0), Anchor::Middle, SMALL, &[("", say::CARD_OUTLINE)]);
}

/// A strip whose left end is nought. It is cut there; wrapped round a finger, its end lies at the size.
fn strip(pen: &mut Pen, sizes: &[Named], y: f64, wide: f64, with_mm: bool) {
    let (top, bottom) = (y * MM, (y + wide) * MM);
    pen.group("strip", |pen| {
        pen.rect("outline", (0.0, top), (STRIP * MM, wide * MM), 0.0);
        pen.runs("", (2.0 * MM, top + wide * MM / 2.0 + 3.5), Anchor::Start, TINY, &[("", say::STRIP_END)]);
        let (long, short) = if with_mm { (1.8, 1.0) } else { (1.0, 0.6) };
        let mut free_from = 0.0;
        for size in sizes.iter().filter(|size| size.at.mm() < STRIP) {
            let x = size.at.mm() * MM;
            let tall = if size.label.is_empty() { short } else { long };
            pen.line("size-tick", (x, top), (x, top + tall * MM));
            let half = width_of(&size.label, TINY, true) / 2.0;
            if !size.label.is_empty() && x - half > free_from {
                pen.runs("strong", (x, top + long * MM + TINY), Anchor::Middle, TINY, &[("", &size.label)]);
                free_from = x + half + 1.0;
            }
        }
        for mm in (36..=80).filter(|_| with_mm) {
            let x = f64::from(mm) * MM;
            let tall = if mm % 5 == 0 { 1.8 } else { 1.0 };
            pen.line("mm-tick", (x, bottom), (x, bottom - tall * MM));
        }
    });
}

/// Circles from left to right, row by row, as many as there is room for.
fn circles(pen: &mut Pen, of: &Sheet) {
    for (size, (x, y)) in placed(of) {
        let across = size.at.diameter().mm();
        pen.group("ring", |pen| {
            pen.circle("bore", (x * MM, y * MM), (across - STROKE) / 2.0 * MM);
            pen.runs("strong", (x * MM, y * MM), Anchor::Middle, SMALL, &[("", &size.label)]);
            pen.runs("", (x * MM, y * MM + 13.0), Anchor::Middle, SMALL, &[("", &say::across_short(size.at))]);
        });
    }
}

/// Those that there is room for, with their middles.
fn placed(of: &Sheet) -> Vec<(&Named, (f64, f64))> {
    let (top, right) = of.paper.for_circles();
    let (_, bottom) = of.paper.inside();
    let (mut left, mut row) = (0.0, top);
    let mut tallest = 0.0_f64;
    let mut all = Vec::new();
    for size in &of.circles {
        let across = size.at.diameter().mm();
        if left + across > right {
            (left, row, tallest) = (0.0, row + tallest + APART, 0.0);
        }
        if row + across > bottom {
            break;
        }
        all.push((size, (left + across / 2.0, row + across / 2.0)));
        left += across + APART;
        tallest = tallest.max(across);
    }
    all
}

/// Between two circles.
const APART: f64 = 2.5;
