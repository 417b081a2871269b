//! The size from the reading to the order, as a ladder of shifts above a size rule.

use super::Picture;
use super::layout::{SMALL, Scale, TEXT, cut, spread, width_of};
use super::pen::{Anchor, Pen, WIDTH};
use crate::trade::arrange::in_order;
use crate::trade::fit::Worn;
use crate::trade::measure::{Circumference, Length};
use crate::words::format;
use crate::words::pictures::{self as words, LadderSaid};

/// A place on the rule with its name: "N" at 53.75 mm. A tick without a name is drawn short.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named {
    pub at: Circumference,
    pub label: String,
}

/// One step of the ladder: what it is for and by how much.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shift {
    pub label: String,
    pub amount: Length,
}

/// One of several readings, as it was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Single {
    pub read: Named,
    /// It stands apart from the others.
    pub apart: bool,
}

/// What the ladder is drawn from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ladder {
    /// Every size of the rule, from well below to well above; those outside what is drawn are left out.
    pub ticks: Vec<Named>,
    /// Of several readings, where they come to together.
    pub reading: Named,
    /// Each of several readings; none where there is only one.
    pub singles: Vec<Single>,
    pub shifts: Vec<Shift>,
    /// Where reading and shifts lead, before it is made a size, and the range it may lie in; where the joint decides
    /// that of the base alone, which ends below.
    pub best: Circumference,
    pub range: (Circumference, Circumference),
    /// The size to order, how it is worn, and the size for the other way of wearing it where that differs.
    pub order: Named,
    pub worn: Worn,
    pub other: Option<Named>,
    /// The least size that passes the joint.
    pub joint: Option<Named>,
}

const EDGES: (f64, f64) = (3.0, WIDTH - 3.0);
const RULE: f64 = 36.0;
/// Farther from everything else than this, the joint is no limit and would only make the rest small. A reading that far
/// off is drawn at the edge, pointing outwards.
const MATTERS: f64 = 6.0;

/// Draws the ladder.
pub fn ladder(of: &Ladder) -> Picture {
    let scale = scale(of);
    let x = |c: Circumference| scale.x(c.mm());
    let mut pen = Pen::default();

    let singles = singles(of, scale);
    let first = singles.iter().map(|single| single.y + 8.0).fold(30.0, f64::max);
    let rows: Vec<Row> = rows(of, scale, first);
    let below = rows.last().map_or(first, |row| row.y + 24.0);
    let rule = below + 26.0;

    pen.line("thin soft dashed", (x(of.reading.at), 20.0), (x(of.reading.at), rule));
    let reading = cut(&words::reading(&of.reading.label, of.singles.len()), TEXT, false, WIDTH - 8.0);
    pen.text_inside("soft", (x(of.reading.at), 13.0), &reading, false);
    draw_singles(&mut pen, &singles);
    draw_rows(&mut pen, &rows);
    draw_range(&mut pen, of, scale, below, rows.last().map(|row| row.to));
    draw_rule(&mut pen, of, scale, rule);
    pen.group("order", |pen| pen.pointer("solid rouge thin", (x(of.order.at), rule - 2.0), true));
    let bottom = draw_below(&mut pen, of, scale, rule + RULE);
    pen.finish("ladder", WIDTH, bottom + 4.0, &said(of))
}

fn said(of: &Ladder) -> String {
    let shifts: Vec<(&str, Length)> = of.shifts.iter().map(|shift| (shift.label.as_str(), shift.amount)).collect();
    let singles: Vec<(&str, Circumference, bool)> =
        of.singles.iter().map(|single| (single.read.label.as_str(), single.read.at, single.apart)).collect();
    words::ladder(&LadderSaid {
        singles: &singles,
        reading: (&of.reading.label, of.reading.at),
        shifts: &shifts,
        best: of.best,
        range: of.range,
        order: (&of.order.label, of.worn),
        other: of.other.as_ref().map(|other| other.label.as_str()),
        joint: of.joint.as_ref().map(|joint| (joint.label.as_str(), joint.at)),
    })
}

fn scale(of: &Ladder) -> Scale {
    let mut points = vec![of.best, of.range.0, of.range.1, of.order.at, of.reading.at];
    let mut at = of.reading.at.0;
    for shift in &of.shifts {
        at = at + shift.amount;
        points.push(Circumference(at));
    }
    points.extend(of.other.iter().map(|other| other.at));
    let ends = |points: &[Circumference]| {
        let low = points.iter().map(|c| c.mm()).fold(f64::INFINITY, f64::min);
        let high = points.iter().map(|c| c.mm()).fold(f64::NEG_INFINITY, f64::max);
        (low, high)
    };
    let (low, high) = ends(&points);
    points.extend(of.singles.iter().map(|single| single.read.at).filter(|at| matters(*at, low, high)));
    points.extend(of.joint.iter().map(|joint| joint.at).filter(|at| matters(*at, low, high)));
    let (low, high) = ends(&points);
    Scale::fit((low - 0.7, high + 0.7), 4.6, EDGES)
}

fn matters(at: Circumference, low: f64, high: f64) -> bool {
    at.mm() > low - MATTERS && at.mm() < high + MATTERS
}

/// One of several readings, laid out.
struct Mark {
    x: f64,
    y: f64,
    /// What is written beside one that stands apart, and where.
    words: Option<(String, f64, Anchor)>,
    /// Beyond the edge: to the left, or to the right.
    beyond: Option<bool>,
}

/// Readings of the same size stand one under the other; each that stands apart has a row of its own, with its name.
fn singles(of: &Ladder, scale: Scale) -> Vec<Mark> {
    let mut marks: Vec<Mark> = Vec::new();
    for single in of.singles.iter().filter(|single| !single.apart) {
        let x = scale.x(single.read.at.mm());
        let above = marks.iter().filter(|mark| (mark.x - x).abs() < 7.5).count();
        marks.push(Mark { x, y: 22.0 + 8.0 * above as f64, words: None, beyond: None });
    }
    let mut y = marks.iter().map(|mark| mark.y).fold(17.0, f64::max);
    for single in of.singles.iter().filter(|single| single.apart) {
        y += 16.0;
        let there = scale.x(single.read.at.mm());
        let x = there.min(EDGES.1 - 8.0).max(EDGES.0 + 8.0);
        let beyond = (x != there).then_some(there < x);
        let label = words::apart(&single.read.label);
        let wide = width_of(&label, SMALL, true);
        let right = x + 12.0 + wide <= EDGES.1;
        let (at, anchor) = if right { (x + 12.0, Anchor::Start) } else { (x - 12.0, Anchor::End) };
        marks.push(Mark { x, y, words: Some((label, at, anchor)), beyond });
    }
    marks
}

fn draw_singles(pen: &mut Pen, marks: &[Mark]) {
    for mark in marks {
        let Mark { x, y, words, beyond } = mark;
        let Some((label, at, anchor)) = words else {
            pen.group("single", |pen| pen.circle("paper", (*x, *y), 3.2));
            continue;
        };
        pen.group("single-apart", |pen| {
            match beyond {
                Some(left) => {
                    let far = if *left { -7.0 } else { 7.0 };
                    pen.arrow("ochre", (*x - far, *y), (*x + far, *y));
                }
                None => pen.outline("ochre paper", &[(*x, *y - 5.0), (*x + 5.0, *y), (*x, *y + 5.0), (*x - 5.0, *y)]),
            }
            pen.runs("ochre strong", (*at, *y + 4.5), *anchor, SMALL, &[("", label)]);
        });
    }
}

/// One step, laid out.
struct Row {
    y: f64,
    from: f64,
    to: f64,
    up: bool,
    label: String,
    amount: String,
    words: (f64, f64, Anchor),
}

fn rows(of: &Ladder, scale: Scale, first: f64) -> Vec<Row> {
    let mut at = of.reading.at.0;
    let mut y = first;
    let mut rows = Vec::new();
    for shift in &of.shifts {
        let (from, to) = (scale.x(at.mm()), scale.x((at + shift.amount).mm()));
        at = at + shift.amount;
        let amount = format::mm_signed(shift.amount, 2);
        let amount_width = width_of(&amount, TEXT, true);
        let label = cut(&shift.label, TEXT, false, WIDTH - 24.0 - amount_width) + " ";
        let wide = width_of(&label, TEXT, false) + amount_width;
        let (left, right) = (from.min(to), from.max(to));
        y += 14.0;
        let words = if right + 9.0 + wide <= EDGES.1 {
            (right + 9.0, y + 4.5, Anchor::Start)
        } else if left - 9.0 - wide >= EDGES.0 {
            (left - 9.0, y + 4.5, Anchor::End)
        } else {
            let middle = ((left + right) / 2.0).min(EDGES.1 - wide / 2.0).max(EDGES.0 + wide / 2.0);
            y += 13.0;
            (middle, y - 9.0, Anchor::Middle)
        };
        rows.push(Row { y, from, to, up: shift.amount >= Length::ZERO, label, amount, words });
        y += 12.0;
    }
    rows
}

fn draw_rows(pen: &mut Pen, rows: &[Row]) {
    for (above, row) in rows.iter().zip(rows.iter().skip(1)) {
        pen.line("thin soft", (above.to, above.y), (row.from, row.y));
    }
    for row in rows {
        let colour = if row.up { "rouge" } else { "verdigris" };
        pen.group("shift", |pen| {
            pen.arrow(&format!("{colour} thick"), (row.from, row.y), (row.to, row.y));
            let (x, y, anchor) = row.words;
            pen.runs("", (x, y), anchor, TEXT, &[("", &row.label), ("strong", &row.amount)]);
        });
    }
}

fn draw_range(pen: &mut Pen, of: &Ladder, scale: Scale, y: f64, last: Option<f64>) {
    let x = |c: Circumference| scale.x(c.mm());
    let (low, high, best) = (x(of.range.0), x(of.range.1), x(of.best));
    if let Some(last) = last {
        pen.line("thin soft", (last, y - 24.0), (last, y));
    }
    pen.group("range", |pen| {
        pen.dimension("", y, low, high);
        pen.circle("solid rouge bare best", (best, y), 4.2);
        if best > high {
            // The joint decides: the bar stands for itself, and its name under it.
            let half = width_of(words::range_of_base(), SMALL, false) / 2.0;
            let middle = ((low + high) / 2.0).clamp(EDGES.0 + half, EDGES.1 - half);
            let run = [("", words::range_of_base())];
            return pen.runs("soft", (middle, y + 17.0), Anchor::Middle, SMALL, &run);
        }
        let wide = width_of(words::range(), SMALL, false);
        let (at, anchor) = if high + 9.0 + wide <= EDGES.1 {
            (high + 9.0, Anchor::Start)
        } else if low - 9.0 - wide >= EDGES.0 {
            (low - 9.0, Anchor::End)
        } else {
            return;
        };
        pen.runs("soft", (at, y + 4.0), anchor, SMALL, &[("", words::range())]);
    });
}

fn draw_rule(pen: &mut Pen, of: &Ladder, scale: Scale, top: f64) {
    pen.rect("leaf", (EDGES.0, top), (EDGES.1 - EDGES.0, RULE), 1.0);
    let ticks = of.ticks.iter().filter(|tick| tick.at != of.order.at).chain([&of.order]);
    let ticks = in_order(ticks, |tick| tick.at);
    let inside = |x: f64| x > EDGES.0 + 4.0 && x < EDGES.1 - 4.0;
    let order = scale.x(of.order.at.mm());
    let joint = of.joint.as_ref().map_or(f64::NEG_INFINITY, |joint| scale.x(joint.at.mm()));
    let order_half = width_of(&of.order.label, TEXT, true) / 2.0 + 5.0;
    let (mut last_tick, mut last_word) = (f64::NEG_INFINITY, f64::NEG_INFINITY);
    for tick in ticks {
        let x = scale.x(tick.at.mm());
        let is_order = tick.at == of.order.at;
        if !inside(x) || (x - last_tick < 3.0 && !is_order) {
            continue;
        }
        last_tick = x;
        let long = if tick.label.is_empty() { 9.0 } else { 15.0 };
        pen.line(if is_order { "rouge tick" } else { "thin tick" }, (x, top), (x, top + long));
        let half = width_of(&tick.label, TEXT, is_order) / 2.0;
        let crowded =
            x - half < last_word + 5.0 || (x - order).abs() < half + order_half || (x - joint).abs() < half + 4.0;
        if tick.label.is_empty() || (!is_order && (crowded || x - half < EDGES.0 + 3.0 || x + half > EDGES.1 - 3.0)) {
            continue;
        }
        let x = x.min(EDGES.1 - half - 2.0).max(EDGES.0 + half + 2.0);
        last_word = x + half;
        pen.text(
            if is_order { "rimless strong rouge" } else { "rimless" },
            (x, top + RULE - 6.5),
            Anchor::Middle,
            &tick.label,
        );
    }
}

/// What stands under the rule: both ways of wearing it, and the joint. Returns where the drawing ends.
fn draw_below(pen: &mut Pen, of: &Ladder, scale: Scale, top: f64) -> f64 {
    let x = |named: &Named| scale.x(named.at.mm());
    let mut marks: Vec<(f64, String, &str, &str)> = Vec::new();
    if let Some(other) = &of.other {
        marks.push((x(&of.order), words::size_worn(&of.order.label, of.worn), "solid rouge thin", "rouge strong"));
        marks.push((x(other), words::size_worn(&other.label, of.worn.other()), "paper thin", ""));
    }
    if let Some(joint) = of.joint.as_ref().filter(|joint| x(joint) >= EDGES.0 && x(joint) <= EDGES.1) {
        let at = x(joint);
        pen.group("joint", |pen| {
            pen.line("ochre thick", (at, top - RULE - 6.0), (at, top + 4.0));
        });
        marks.push((at, words::joint(&joint.label), "solid ochre thin", "ochre strong"));
    }
    let mut marks = in_order(marks, |mark| Length::from_mm(mark.0));
    for mark in &mut marks {
        mark.1 = cut(&mark.1, TEXT, true, EDGES.1 - EDGES.0);
    }
    let wanted: Vec<f64> = marks.iter().map(|mark| mark.0).collect();
    let widths: Vec<f64> = marks.iter().map(|mark| width_of(&mark.1, TEXT, true)).collect();
    let placed = spread(&wanted, &widths, 10.0, EDGES);
    let mut bottom = top;
    for (i, (at, label, triangle, class)) in marks.iter().enumerate() {
        pen.pointer(triangle, (*at, top + 2.0), false);
        let (middle, y) = match &placed {
            Some(middles) => (middles[i], top + 27.0),
            None => (at.min(EDGES.1 - widths[i] / 2.0).max(EDGES.0 + widths[i] / 2.0), top + 27.0 + 17.0 * i as f64),
        };
        pen.text(class, (middle, y), Anchor::Middle, label);
        bottom = bottom.max(y + 4.0);
    }
    bottom
}
