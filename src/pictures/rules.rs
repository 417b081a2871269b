//! The rules of several size scales, one under the other, all to the same scale of circumference: the size stands
//! across them, and what is nearest to it on each is marked.

use super::Picture;
use super::layout::{SMALL, Scale, TEXT, width_of};
use super::pen::{Anchor, Pen, WIDTH};
use crate::trade::measure::Circumference;
use crate::words::pictures as words;

/// A size of a scale. One without a name is drawn short.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tick {
    pub at: Circumference,
    pub label: String,
}

/// A scale: its short name, its sizes, the one that is nearest and how far that is off, in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    pub label: String,
    pub ticks: Vec<Tick>,
    pub nearest: Tick,
    pub off: String,
}

/// What the rules are drawn from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Rules {
    pub at: Circumference,
    pub rows: Vec<Row>,
}

/// So many millimetres of circumference are drawn.
const SPAN: f64 = 6.0;
const LEFT: f64 = 46.0;
const EDGES: (f64, f64) = (LEFT, WIDTH - 2.0);
const TOP: f64 = 22.0;
const TALL: f64 = 30.0;

/// Draws the rules.
pub fn rules(of: &Rules) -> Picture {
    let at = of.at.mm();
    let scale = Scale::fit((at - SPAN / 2.0, at + SPAN / 2.0), SPAN, EDGES);
    let mut pen = Pen::default();
    for (i, row) in of.rows.iter().enumerate() {
        let top = TOP + TALL * i as f64;
        pen.text("strong", (1.0, top + 20.0), Anchor::Start, &row.label);
        pen.rect("leaf thin", (EDGES.0, top), (EDGES.1 - EDGES.0, TALL), 0.0);
    }
    let bottom = TOP + TALL * of.rows.len() as f64;
    let x = scale.x(at);
    // Under the figures: their rim keeps it away from them.
    pen.line("rouge", (x, TOP - 4.0), (x, bottom + 3.0));
    for (i, row) in of.rows.iter().enumerate() {
        draw_row(&mut pen, row, scale, TOP + TALL * i as f64);
    }
    pen.pointer("solid rouge thin", (x, TOP - 1.0), true);
    pen.text_inside("strong rouge", (x, 10.0), &words::millimetres(of.at.0), true);
    let rows = of.rows.iter().map(|row| (row.label.as_str(), row.nearest.label.as_str(), row.off.as_str()));
    let said = words::rules(of.at.0, &rows.collect::<Vec<_>>());
    pen.finish("rules", WIDTH, bottom + 6.0, &said)
}

fn draw_row(pen: &mut Pen, row: &Row, scale: Scale, top: f64) {
    let nearest = scale.x(row.nearest.at.mm());
    let half = width_of(&row.nearest.label, TEXT, true) / 2.0;
    let inside = |x: f64, half: f64| x - half > EDGES.0 + 2.0 && x + half < EDGES.1 - 2.0;
    let (mut last_tick, mut last_word) = (f64::NEG_INFINITY, f64::NEG_INFINITY);
    for tick in row.ticks.iter().filter(|tick| tick.at != row.nearest.at) {
        let x = scale.x(tick.at.mm());
        if !inside(x, 0.0) || x - last_tick < 3.0 {
            continue;
        }
        last_tick = x;
        pen.line("thin tick", (x, top), (x, top + if tick.label.is_empty() { 5.0 } else { 9.0 }));
        let mine = width_of(&tick.label, SMALL, false) / 2.0;
        let crowded = x - mine < last_word + 4.0 || (x - nearest).abs() < half + mine + 5.0;
        if !tick.label.is_empty() && inside(x, mine) && !crowded {
            last_word = x + mine;
            pen.runs("on-leaf soft", (x, top + TALL - 6.0), Anchor::Middle, SMALL, &[("", &tick.label)]);
        }
    }
    if inside(nearest, 0.0) {
        pen.group("nearest", |pen| {
            pen.line("thick tick", (nearest, top), (nearest, top + 10.0));
            let x = nearest.min(EDGES.1 - half - 2.0).max(EDGES.0 + half + 2.0);
            pen.text("strong on-leaf", (x, top + TALL - 6.0), Anchor::Middle, &row.nearest.label);
        });
    }
}
