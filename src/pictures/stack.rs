//! A finger from above with every ring on it, and the room that is left to the joint.

use super::Picture;
use super::layout::{SMALL, TEXT, cut, spread, width_of};
use super::pen::{Anchor, At, Pen, WIDTH};
use crate::trade::measure::{Diameter, Length};
use crate::trade::stack::RingState;
use crate::words::pictures as words;

/// One ring of the stack, as it is seen from above.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ring {
    pub label: String,
    /// At three and nine o'clock.
    pub width: Length,
    /// At its top.
    pub top: Length,
    /// How far it stands above the finger.
    pub height: Length,
    pub state: RingState,
    /// How far its head reaches over a straight edge laid against its shoulders, to the web and to the fingertip.
    pub head: Option<(Length, Length)>,
    /// How far it stands off at the top from the one before it.
    pub apart: Length,
    /// How far a shaped band bends at its top round a head: to the fingertip, or below zero to the web.
    pub bend: Length,
}

/// What the stack is drawn from: rings from the web outwards.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stack {
    pub rings: Vec<Ring>,
    /// Left between two rings.
    pub gap: Length,
    /// From the web to the crease of the joint.
    pub free: Length,
    pub finger: Diameter,
    /// Whether the stack is more than the house rule likes: its dimension is then drawn in ochre.
    pub crowded: bool,
    /// What they take at the top, where a bay or a gap adds to their widths, and whether that is too much.
    pub at_top: Option<(Length, bool)>,
}

/// The finger before the web and behind the crease, in millimetres.
const BEFORE: f64 = 6.5;
const BEHIND: f64 = 6.5;
/// The tallest that a finger is drawn.
const TALLEST: f64 = 190.0;

/// Draws the stack.
pub fn stack(of: &Stack) -> Picture {
    let spans = spans(of);
    let later = spans.last().map_or(Length::ZERO, |span| span.1);
    let worn = of.rings.iter().filter(|ring| ring.state != RingState::Planned);
    let now = worn.clone().map(|ring| ring.width).sum::<Length>() + worn.skip(1).map(|_| of.gap).sum();

    let leans = leans(of);
    let lean = leans.last().map_or(Length::ZERO, |lean| lean.1);
    let reach = of.free.mm().max((later + lean).mm()).clamp(4.0, 400.0) + BEFORE + BEHIND;
    let across = of.finger.mm().clamp(8.0, 40.0);
    let unit = (WIDTH / reach).min(TALLEST / across);
    let x = |at: Length| (WIDTH - reach * unit) / 2.0 + (BEFORE + at.mm()) * unit;

    let tallest = of.rings.iter().map(|ring| tall(ring, unit)).fold(0.0, f64::max);
    let mut pen = Pen::to_scale(unit);
    let places: Vec<(f64, f64)> =
        spans.iter().zip(&leans).map(|(span, lean)| (x(span.0 + lean.0), x(span.1 + lean.0))).collect();
    let keyed = of.rings.len() > MOST_NAMED;
    let labels = labels(of, &places, keyed);
    let top = labels.depth + 22.0 + tallest;
    let bottom = top + across * unit;

    draw_finger(&mut pen, top, bottom, x(Length::ZERO), x(of.free));
    // Later rings are drawn under, heads over everything.
    for state in [RingState::Planned, RingState::Worn, RingState::Wanted] {
        for ((ring, place), lean) in
            of.rings.iter().zip(&places).zip(&leans).filter(|((ring, _), _)| ring.state == state)
        {
            draw_ring(&mut pen, ring, *place, (top, bottom), (unit, (lean.1 - lean.0).mm() * unit));
        }
    }
    for ((ring, place), lean) in of.rings.iter().zip(&places).zip(&leans) {
        if let Some(head) = ring.head {
            let middle = (place.0 + place.1) / 2.0 + (lean.1 - lean.0).mm() * unit;
            let half = ring.width.mm() / 2.0;
            let reach = |of: Length| (half + of.mm().clamp(0.0, 20.0)) * unit;
            draw_head(&mut pen, (middle - reach(head.0), middle + reach(head.1)), (top + bottom) / 2.0);
        }
    }
    labels.draw(&mut pen, of, &places, top - tallest - 8.0);
    let mut end = draw_totals(&mut pen, of, bottom + tallest, (now, later), &x);
    if keyed {
        end = draw_key(&mut pen, of, end);
    }

    let named: Vec<_> = of.rings.iter().map(|ring| (ring.label.as_str(), ring.width, ring.state)).collect();
    pen.finish("stack", WIDTH, end, &words::stack(&named, now, later, of.at_top.map(|it| it.0), of.free))
}

/// Where each ring begins and ends, from the web.
fn spans(of: &Stack) -> Vec<(Length, Length)> {
    let mut at = Length::ZERO;
    let mut spans = Vec::new();
    for ring in &of.rings {
        spans.push((at, at + ring.width));
        at = at + ring.width + of.gap;
    }
    spans
}

/// How far each ring is off at the shoulders and at the top, because those before it hold it off, or bend. A ring that
/// leans is half as far off at the shoulders; one that bends stays where it is there.
fn leans(of: &Stack) -> Vec<(Length, Length)> {
    let most = Length::tenthousandths(200_000);
    let mut lean = Length::ZERO;
    let mut leans = Vec::new();
    for ring in &of.rings {
        lean = lean + ring.apart.max(Length::ZERO).min(most);
        let bend = ring.bend.max(-most).min(most);
        leans.push((lean.half(), lean + bend));
        lean = lean + bend.max(Length::ZERO);
    }
    leans
}

fn tall(ring: &Ring, unit: f64) -> f64 {
    ring.height.mm().clamp(0.0, 6.0) * unit
}

fn draw_finger(pen: &mut Pen, top: f64, bottom: f64, web: f64, crease: f64) {
    pen.group("finger", |pen| {
        for (edge, out) in [(top, -1.0), (bottom, 1.0)] {
            pen.path(
                "",
                &[
                    ("M", &[0.0, edge + out * 7.0]),
                    ("C", &[web * 0.5, edge + out * 4.0, web * 0.8, edge, web, edge]),
                    ("L", &[crease - 26.0, edge - out * 1.0]),
                    (
                        "C",
                        &[crease - 12.0, edge + out, crease - 10.0, edge + out * 6.0, crease + 4.0, edge + out * 6.0],
                    ),
                    ("C", &[crease + 22.0, edge + out * 5.0, crease + 26.0, edge - out * 3.0, WIDTH, edge - out * 5.0]),
                ],
            );
        }
        let (middle, long) = ((top + bottom) / 2.0, (bottom - top) * 0.2);
        for (i, bow) in [(-1.0, 3.0), (0.0, 4.0), (1.0, 3.0)] {
            let at = crease + i * 5.0;
            let half = long - 4.0 * f64::abs(i);
            pen.path("thin soft crease", &[("M", &[at, middle - half]), ("Q", &[at + bow, middle, at, middle + half])]);
        }
    });
}

/// A ring that tapers or leans bends between its shoulders, at the edges of the finger, and its top, in the middle.
fn draw_ring(pen: &mut Pen, ring: &Ring, place: (f64, f64), finger: (f64, f64), (unit, lean): (f64, f64)) {
    let tall = tall(ring, unit);
    let class = match ring.state {
        RingState::Worn => "paper ring worn",
        RingState::Wanted => "wash-rouge rouge ring wanted",
        RingState::Planned => "paper dashed ring planned",
    };
    let (width, height) = (place.1 - place.0, finger.1 - finger.0 + 2.0 * tall);
    if ring.top == ring.width && lean == 0.0 {
        pen.rect(class, (place.0, finger.0 - tall), (width, height), (width * 0.3).min(5.0));
    } else {
        let (up, down) = (finger.0 - tall, finger.1 + tall);
        let middle = (up + down) / 2.0;
        let half = ring.top.mm().clamp(0.1, 40.0) / 2.0 * unit;
        let centre = (place.0 + place.1) / 2.0 + lean;
        // Through the top: a curve's middle lies half-way between its ends and the point that pulls it.
        let pull = |end: f64, top: f64| 2.0 * top - end;
        let (left, right) = (pull(place.0, centre - half), pull(place.1, centre + half));
        pen.path(
            class,
            &[
                ("M", &[place.0, up]),
                ("Q", &[left, middle, place.0, down]),
                ("L", &[place.1, down]),
                ("Q", &[right, middle, place.1, up]),
                ("Z", &[]),
            ],
        );
    }
    // A line of light on the band that is being made, where it turns.
    if ring.state == RingState::Wanted && width > 9.0 && lean == 0.0 {
        let at = place.0 + width * 0.28;
        pen.line("thin rouge", (at, finger.0 + 10.0), (at, finger.0 + 10.0 + height * 0.28));
    }
}

fn draw_head(pen: &mut Pen, across: (f64, f64), y: f64) {
    let r = (across.1 - across.0) / 2.0;
    let at = ((across.0 + across.1) / 2.0, y);
    pen.circle("paper head", at, r);
    let s = r * 0.62;
    pen.outline("thin", &[(at.0, at.1 - s), (at.0 + s, at.1), (at.0, at.1 + s), (at.0 - s, at.1)]);
}

/// The names above the rings, in one row where they fit and in steps where they do not.
struct Labels {
    texts: Vec<(String, String)>,
    at: Vec<At>,
    depth: f64,
    /// How deep one row of them is.
    deep: f64,
}

/// So many rings have their names beside them; of more, each has a number there and its name in a key below.
const MOST_NAMED: usize = 5;

fn labels(of: &Stack, places: &[(f64, f64)], keyed: bool) -> Labels {
    // The fewer there are, the more room each name has.
    let most = match of.rings.len() {
        0..=2 => 155.0,
        3 => 124.0,
        4 => 110.0,
        _ => 96.0,
    };
    let one = |ring: &Ring| (words::width(ring.width), cut(&ring.label, SMALL, false, most));
    let number = |at: usize| ((at + 1).to_string(), String::new());
    let texts: Vec<(String, String)> =
        if keyed { (0..of.rings.len()).map(number).collect() } else { of.rings.iter().map(one).collect() };
    let deep = if keyed { 17.0 } else { 31.0 };
    let widths: Vec<f64> =
        texts.iter().map(|(w, name)| width_of(w, TEXT, true).max(width_of(name, SMALL, false))).collect();
    let wanted: Vec<f64> = places.iter().map(|place| (place.0 + place.1) / 2.0).collect();
    let edges = (2.0, WIDTH - 2.0);
    // As few rows as will do: ring i goes to row i modulo the number of rows.
    for rows in 1..=texts.len().max(1) {
        let mut at = vec![(0.0, 0.0); texts.len()];
        let fits = (0..rows).all(|row| {
            let mine: Vec<usize> = (row..texts.len()).step_by(rows).collect();
            let pick = |from: &[f64]| mine.iter().map(|i| from[*i]).collect::<Vec<f64>>();
            match spread(&pick(&wanted), &pick(&widths), 9.0, edges) {
                Some(middles) => {
                    for (i, middle) in mine.iter().zip(middles) {
                        at[*i] = (middle, 13.0 + deep * row as f64);
                    }
                    true
                }
                None => false,
            }
        });
        if fits {
            return Labels { texts, at, depth: deep * rows as f64, deep };
        }
    }
    Labels { at: vec![(WIDTH / 2.0, 13.0); texts.len()], texts, depth: deep, deep }
}

impl Labels {
    fn draw(&self, pen: &mut Pen, of: &Stack, places: &[(f64, f64)], rings: f64) {
        for (place, at) in places.iter().zip(&self.at) {
            let middle = (place.0 + place.1) / 2.0;
            pen.line("thin soft", (at.0, at.1 + self.deep - 14.0), (middle, rings));
            pen.dimension("thin soft", rings, place.0, place.1);
        }
        for ((ring, (width, name)), at) in of.rings.iter().zip(&self.texts).zip(&self.at) {
            let class = if ring.state == RingState::Wanted { "strong rouge" } else { "strong" };
            pen.text(class, *at, Anchor::Middle, width);
            pen.runs("soft", (at.0, at.1 + 13.5), Anchor::Middle, SMALL, &[("", name)]);
        }
    }
}

/// Number, width and name of each ring, below the picture in two columns.
fn draw_key(pen: &mut Pen, of: &Stack, below: f64) -> f64 {
    let half = of.rings.len().div_ceil(2);
    for (at, ring) in of.rings.iter().enumerate() {
        let (x, y) = (2.0 + (at / half) as f64 * WIDTH / 2.0, below + 12.0 + (at % half) as f64 * 18.0);
        let class = if ring.state == RingState::Wanted { "strong rouge" } else { "strong" };
        let number = (at + 1).to_string();
        pen.text(class, (x, y), Anchor::Start, &number);
        let name = cut(&words::keyed(&ring.label, ring.width), SMALL, false, WIDTH / 2.0 - 22.0);
        pen.runs("soft", (x + 14.0, y), Anchor::Start, SMALL, &[("", &name)]);
    }
    below + 12.0 + half as f64 * 18.0
}

fn draw_totals(pen: &mut Pen, of: &Stack, below: f64, total: (Length, Length), x: &dyn Fn(Length) -> f64) -> f64 {
    let (now, later) = total;
    let free = x(of.free);
    let mut y = below + 18.0;
    let colour = if of.crowded || later > of.free { "ochre" } else { "rouge" };
    let mut row = |pen: &mut Pen, (from, to): (Length, Length), label: &str, class: &str, right: Option<&str>| {
        let web = x(from);
        pen.group("total", |pen| pen.dimension(&format!("{class} thick"), y, web, x(to)));
        let class = format!("strong {class}");
        let wide = width_of(label, TEXT, true);
        let left = ((web + x(to)) / 2.0).max(wide / 2.0 + 2.0);
        match right {
            None => pen.text(&class, (left, y + 18.0), Anchor::Middle, label),
            Some(right) => {
                // The two figures side by side if they can, otherwise each at its end.
                let widths = [wide, width_of(right, TEXT, true)];
                let want = [left, (x(to) + free) / 2.0];
                let middles = spread(&want, &widths, 12.0, (2.0, WIDTH - 2.0)).unwrap_or(want.to_vec());
                pen.text(&class, (middles[0], y + 18.0), Anchor::Middle, label);
                let class = if later > of.free { "strong ochre" } else { "" };
                pen.text(class, (middles[1], y + 18.0), Anchor::Middle, right);
            }
        }
        y += 34.0;
    };
    let left = words::left_of(of.free - later, of.free);
    let whole = |to: Length| (Length::ZERO, to);
    if now != later {
        row(pen, whole(now), &words::total_now(now), "", None);
    }
    if let Some((at_top, crowded)) = of.at_top {
        // A band that bends to the web begins nearer to it at the top.
        let from = of.rings.iter().map(|ring| ring.bend).min().unwrap_or_default().min(Length::ZERO);
        let colour = if crowded { "ochre" } else { "" };
        row(pen, (from, from + at_top), &words::total_at_top(at_top), colour, None);
    }
    if now != later {
        row(pen, whole(later), &words::total_later(later), colour, Some(&left));
    } else {
        row(pen, whole(later), &words::width(later), colour, Some(&left));
    }
    let last = y - 34.0;
    pen.group("free", |pen| pen.dimension("thin soft", last, x(later), free));
    pen.runs("soft", (WIDTH / 2.0, last + 36.0), Anchor::Middle, SMALL, &[("", words::on_the_palm_side())]);
    last + 44.0
}
