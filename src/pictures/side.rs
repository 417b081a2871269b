//! Rings side by side, cut through at the top of the finger, web to the left: heads over their neighbours, and how far
//! each is held off.

use super::Picture;
use super::layout::{SMALL, TEXT, cut, spread, width_of};
use super::pen::{Anchor, At, Pen, WIDTH};
use crate::trade::band::section::Section;
use crate::trade::measure::Length;
use crate::trade::stack::{Head, RingState};
use crate::words::pictures as words;

/// One ring, as far as it is known.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ring {
    pub label: String,
    pub width: Length,
    /// Without one the ring is drawn as a plain block.
    pub section: Option<Section>,
    pub head: Option<Head>,
    pub state: RingState,
    /// How far it stands off from the one before it.
    pub apart: Length,
    /// So much of it is the bay of a shaped band, which lies flush otherwise.
    pub bay: Length,
}

/// So high a ring is drawn whose section is not known, and so far a head rises over everything.
const BLOCK: f64 = 1.8;
const HEAD: f64 = 1.6;
const TALLEST: f64 = 130.0;
const STEPS: u16 = 16;

/// Draws the rings.
pub fn side(rings: &[Ring]) -> Picture {
    let mut at = 0.0;
    let mut places: Vec<(f64, f64)> = Vec::new();
    for ring in rings {
        at += if places.is_empty() { 0.0 } else { ring.apart.mm().clamp(0.0, 20.0) };
        let width = ring.width.mm().clamp(0.1, 40.0);
        places.push((at, at + width));
        at += width;
    }
    let over = |of: Length| of.mm().clamp(0.0, 20.0);
    let mut ends = (0.0_f64, at);
    for (ring, place) in rings.iter().zip(&places) {
        if let Some(head) = &ring.head {
            ends = (ends.0.min(place.0 - over(head.to_web)), ends.1.max(place.1 + over(head.to_tip)));
        }
    }
    let crown = rings.iter().map(|ring| high(ring).max(ring.head.map_or(0.0, |head| over(head.underside) + HEAD)));
    let crown = crown.fold(1.0, f64::max);
    // Room at both ends for the heights.
    let unit = ((WIDTH - 110.0) / (ends.1 - ends.0).max(0.1)).min(TALLEST / crown);
    let mut pen = Pen::to_scale(unit);
    let x = |mm: f64| (WIDTH - (ends.1 - ends.0) * unit) / 2.0 + (mm - ends.0) * unit;
    let top = 44.0;
    let floor = top + crown * unit;
    let y = |mm: f64| floor - mm * unit;

    pen.line("thin soft", (4.0, floor), (WIDTH - 4.0, floor));
    for (ring, place) in rings.iter().zip(&places) {
        draw_ring(&mut pen, ring, (x(place.0), x(place.1)), floor, unit);
    }
    for (ring, place) in rings.iter().zip(&places) {
        let Some(head) = &ring.head else { continue };
        let (left, right) = (x(place.0 - over(head.to_web)), x(place.1 + over(head.to_tip)));
        draw_head(&mut pen, (left, right), (y(over(head.underside)), top), (x(place.0), x(place.1)), y(high(ring)));
    }
    names(&mut pen, rings, &places, &x);
    heights(&mut pen, rings, (x(ends.0), x(ends.1)), floor, unit);
    let end = gaps(&mut pen, rings, &places, floor + 18.0, &x);
    pen.finish(
        "side-view",
        WIDTH,
        end,
        &words::side(rings.iter().map(|ring| (ring.label.as_str(), ring.apart, ring.bay, ring.head))),
    )
}

fn high(ring: &Ring) -> f64 {
    ring.section.map_or(BLOCK, |section| section.height().mm().clamp(0.1, 20.0))
}

fn draw_ring(pen: &mut Pen, ring: &Ring, place: At, floor: f64, unit: f64) {
    let class = match (ring.section.is_some(), ring.state) {
        (false, RingState::Planned) => "paper dashed body",
        (false, RingState::Worn | RingState::Wanted) => "paper dotted body",
        (true, RingState::Wanted) => "wash-rouge rouge body",
        (true, RingState::Worn | RingState::Planned) => "wash-ink body",
    };
    match &ring.section {
        Some(section) => {
            let middle = (place.0 + place.1) / 2.0;
            let points: Vec<At> = section
                .outline(STEPS)
                .into_iter()
                .map(|(x, z)| (middle + x.mm() * unit, floor - z.mm() * unit))
                .collect();
            pen.outline(class, &points);
        }
        None => {
            pen.rect(class, (place.0, floor - BLOCK * unit), (place.1 - place.0, BLOCK * unit), 0.0);
        }
    }
}

fn draw_head(pen: &mut Pen, across: At, (underside, top): At, shank: At, crown: f64) {
    let inset = (shank.1 - shank.0) * 0.3;
    if underside < crown {
        pen.path("thin", &[("M", &[shank.0 + inset, crown]), ("L", &[shank.0 + inset, underside])]);
        pen.path("thin", &[("M", &[shank.1 - inset, crown]), ("L", &[shank.1 - inset, underside])]);
    }
    // Claws at both ends and a girdle between them; the box is what is reckoned with.
    pen.rect("head dashed", (across.0, top), (across.1 - across.0, underside - top), 0.0);
    let (middle, third) = ((across.0 + across.1) / 2.0, (underside - top) / 3.0);
    pen.outline("thin", &[(across.0 + 2.0, top + third), (across.1 - 2.0, top + third), (middle, underside - 2.0)]);
}

fn names(pen: &mut Pen, rings: &[Ring], places: &[(f64, f64)], x: &dyn Fn(f64) -> f64) {
    let most = (WIDTH - 4.0) / rings.len().max(1) as f64 - 8.0;
    let texts: Vec<String> = rings.iter().map(|ring| cut(&ring.label, SMALL, true, most.max(20.0))).collect();
    let widths: Vec<f64> = texts.iter().map(|text| width_of(text, SMALL, true)).collect();
    let wanted: Vec<f64> = places.iter().map(|place| x((place.0 + place.1) / 2.0)).collect();
    let middles = spread(&wanted, &widths, 8.0, (2.0, WIDTH - 2.0)).unwrap_or(wanted);
    for ((text, middle), ring) in texts.iter().zip(middles).zip(rings) {
        let class = if ring.state == RingState::Wanted { "strong rouge" } else { "strong" };
        pen.runs(class, (middle, 13.0), Anchor::Middle, SMALL, &[("", text)]);
    }
}

/// How high the first and the last ring are, and the underside of the first head, at the ends.
fn heights(pen: &mut Pen, rings: &[Ring], (left, right): At, floor: f64, unit: f64) {
    let mut one = |class: &str, at: f64, mm: Length, end: bool, said: &str| {
        pen.group(class, |pen| pen.upright("thin soft", at, floor - mm.mm() * unit, floor));
        let (x, anchor) = if end { (at + 7.0, Anchor::Start) } else { (at - 7.0, Anchor::End) };
        pen.text("", (x, floor - mm.mm() * unit / 2.0 + 4.5), anchor, said);
    };
    let Some(with_head) = rings.iter().position(|ring| ring.head.is_some()) else { return };
    // The neighbour that stands off, or any; its height at its own end, the underside at the other.
    let known = |at: &usize| *at != with_head && rings[*at].section.is_some();
    let off = |at: &usize| rings[*at.max(&with_head)].apart > Length::ZERO;
    let band = (0..rings.len()).filter(known).find(off).or_else(|| (0..rings.len()).rev().find(known));
    let band_right = band.is_none_or(|band| band > with_head);
    let ends = [(left - 10.0, false), (right + 10.0, true)];
    let [of_head, of_band] = if band_right { ends } else { [ends[1], ends[0]] };
    if let Some(head) = rings[with_head].head {
        one("dim-underside", of_head.0, head.underside, of_head.1, &words::width(head.underside));
    }
    if let Some(section) = band.and_then(|band| rings[band].section) {
        one("dim-height", of_band.0, section.height(), of_band.1, &words::width(section.height()));
    }
}

/// Each gap as a dimension under the finger.
fn gaps(pen: &mut Pen, rings: &[Ring], places: &[(f64, f64)], line: f64, x: &dyn Fn(f64) -> f64) -> f64 {
    let mut said = Vec::new();
    for (pair, ring) in places.windows(2).zip(&rings[1..]) {
        if ring.apart > Length::ZERO {
            let (from, to) = (x(pair[0].1), x(pair[1].0));
            let (class, colour) = if ring.bay > Length::ZERO { ("dim-bay", "rouge") } else { ("dim-gap", "ochre") };
            pen.group(class, |pen| pen.dimension(&format!("{colour} thick"), line, from, to));
            let bay = (ring.bay > Length::ZERO).then(|| words::bay(ring.bay));
            let gap = (ring.apart > ring.bay).then(|| words::gap(ring.apart - ring.bay));
            let text: Vec<String> = bay.into_iter().chain(gap).collect();
            said.push(((from + to) / 2.0, text.join(", "), colour));
        }
    }
    if said.is_empty() {
        pen.text("verdigris", (WIDTH / 2.0, line + 8.0), Anchor::Middle, words::flush());
        return line + 18.0;
    }
    let widths: Vec<f64> = said.iter().map(|(_, text, _)| width_of(text, TEXT, true)).collect();
    let wanted: Vec<f64> = said.iter().map(|(at, ..)| *at).collect();
    let middles = spread(&wanted, &widths, 10.0, (2.0, WIDTH - 2.0)).unwrap_or(wanted);
    for ((_, text, colour), middle) in said.iter().zip(middles) {
        pen.text(&format!("strong {colour}"), (middle, line + 19.0), Anchor::Middle, text);
    }
    line + 28.0
}
