//! The pen that every picture is drawn with. All text goes through it and is escaped here.

use super::Picture;
use super::layout::{TEXT, width_of};

/// The width of every large picture in its own units: a phone of 360 px less its margins.
pub const WIDTH: f64 = 328.0;

/// Which end of a text stands at the given point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    Start,
    Middle,
    End,
}

/// A point of a drawing: to the right, and down.
pub type At = (f64, f64);

/// A drawing under way.
#[derive(Default)]
pub struct Pen {
    out: String,
    unit: f64,
}

impl Pen {
    /// A drawing to scale: so many units to a millimetre, both ways. It is written down with the drawing.
    pub fn to_scale(unit: f64) -> Pen {
        Pen { unit, ..Pen::default() }
    }

    pub fn line(&mut self, class: &str, from: At, to: At) {
        self.tag("line", class, &[("x1", from.0), ("y1", from.1), ("x2", to.0), ("y2", to.1)]);
    }

    pub fn rect(&mut self, class: &str, corner: At, size: At, round: f64) {
        let sides = [("x", corner.0), ("y", corner.1), ("width", size.0.max(0.0)), ("height", size.1.max(0.0))];
        self.tag("rect", class, &[sides[0], sides[1], sides[2], sides[3], ("rx", round)]);
    }

    pub fn circle(&mut self, class: &str, centre: At, radius: f64) {
        self.tag("circle", class, &[("cx", centre.0), ("cy", centre.1), ("r", radius.max(0.0))]);
    }

    /// A path through steps such as `("M", &[0.0, 4.0])`.
    pub fn path(&mut self, class: &str, steps: &[(&str, &[f64])]) {
        let mut d = String::new();
        for (verb, figures) in steps {
            d += verb;
            for figure in *figures {
                d += &n(*figure);
                d.push(' ');
            }
        }
        self.out += &format!(r#"<path class="{class}" d="{}"/>"#, d.trim_end());
    }

    /// A stroke that is drawn from its beginning to its end when it appears, with a head at its end.
    pub fn arrow(&mut self, class: &str, from: At, to: At) {
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let long = dx.hypot(dy);
        if long < 0.5 {
            return self.circle(&format!("{class} solid"), to, 2.5);
        }
        let (ux, uy) = (dx / long, dy / long);
        let head = 7.0_f64.min(long);
        let foot = (to.0 - ux * head, to.1 - uy * head);
        let wing = (uy * head * 0.6, -ux * head * 0.6);
        let ends = [("x1", from.0), ("y1", from.1), ("x2", to.0), ("y2", to.1)];
        self.out += &format!(r#"<line class="{class} shaft drawn" pathLength="1"{}/>"#, figures(&ends));
        self.path(
            &format!("{class} solid thin"),
            &[
                ("M", &[to.0, to.1]),
                ("L", &[foot.0 + wing.0, foot.1 + wing.1]),
                ("L", &[foot.0 - wing.0, foot.1 - wing.1]),
                ("Z", &[]),
            ],
        );
    }

    /// A line between two short cross strokes: a dimension.
    pub fn dimension(&mut self, class: &str, y: f64, from: f64, to: f64) {
        self.line(&format!("{class} span"), (from, y), (to, y));
        for x in [from, to] {
            self.line(class, (x, y - 4.5), (x, y + 4.5));
        }
    }

    /// The same, upright.
    pub fn upright(&mut self, class: &str, x: f64, from: f64, to: f64) {
        self.line(&format!("{class} span"), (x, from), (x, to));
        for y in [from, to] {
            self.line(class, (x - 4.5, y), (x + 4.5, y));
        }
    }

    /// A closed outline through points.
    pub fn outline(&mut self, class: &str, points: &[At]) {
        let flat: Vec<[f64; 2]> = points.iter().map(|at| [at.0, at.1]).collect();
        let mut steps: Vec<(&str, &[f64])> = Vec::new();
        for (i, at) in flat.iter().enumerate() {
            steps.push((if i == 0 { "M" } else { "L" }, at));
        }
        steps.push(("Z", &[]));
        self.path(class, &steps);
    }

    /// A small triangle that points down (or up) at a point.
    pub fn pointer(&mut self, class: &str, tip: At, down: bool) {
        let rise = if down { -10.0 } else { 10.0 };
        self.path(
            class,
            &[
                ("M", &[tip.0, tip.1]),
                ("L", &[tip.0 - 6.0, tip.1 + rise]),
                ("L", &[tip.0 + 6.0, tip.1 + rise]),
                ("Z", &[]),
            ],
        );
    }

    /// One line of text in the usual size.
    pub fn text(&mut self, class: &str, at: At, anchor: Anchor, text: &str) {
        self.runs(class, at, anchor, TEXT, &[("", text)]);
    }

    /// One line of text made of runs, each with a class of its own.
    pub fn runs(&mut self, class: &str, at: At, anchor: Anchor, size: f64, runs: &[(&str, &str)]) {
        let anchor = match anchor {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        };
        let place = figures(&[("x", at.0), ("y", at.1), ("font-size", size)]);
        self.out += &format!(r#"<text class="{class}" text-anchor="{anchor}"{place}>"#);
        for (class, text) in runs {
            self.out += &match *class {
                "" => escape(text),
                class => format!(r#"<tspan class="{class}">{}</tspan>"#, escape(text)),
            };
        }
        self.out += "</text>";
    }

    /// A group, so that a test or a style can find what belongs together.
    pub fn group(&mut self, class: &str, draw: impl FnOnce(&mut Pen)) {
        self.out += &format!(r#"<g class="{class}">"#);
        draw(self);
        self.out += "</g>";
    }

    /// Text set on the line at `at`, moved sideways so that it stays between the edges.
    pub fn text_inside(&mut self, class: &str, at: At, text: &str, strong: bool) {
        let half = width_of(text, TEXT, strong) / 2.0;
        let x = at.0.min(WIDTH - half - 2.0).max(half + 2.0);
        self.text(class, (x, at.1), Anchor::Middle, text);
    }

    /// The finished picture, as large as the page makes it.
    pub fn finish(self, kind: &str, width: f64, height: f64, alternative: &str) -> Picture {
        self.finished(kind, (0.0, (width, height)), alternative, "")
    }

    /// The finished picture at its own size: a unit is a pixel of the page, or with a scale so many are a millimetre.
    /// There is so much room round it, within that size, that a stroke on its edge is whole.
    pub fn finish_at_size(self, kind: &str, (round, size): (f64, At), alternative: &str) -> Picture {
        let (per, unit) = if self.unit > 0.0 { (self.unit, "mm") } else { (1.0, "") };
        let (width, height) = (n(size.0 / per), n(size.1 / per));
        self.finished(kind, (round, size), alternative, &format!(r#" width="{width}{unit}" height="{height}{unit}""#))
    }

    fn finished(self, kind: &str, (round, (width, height)): (f64, At), alternative: &str, sides: &str) -> Picture {
        let from = n(-round);
        let scale = if self.unit > 0.0 { figures(&[("data-unit", self.unit)]) } else { String::new() };
        let svg = format!(
            r#"<svg xmlns="http://www.w3.org/2000/svg" class="{kind}"{scale}{sides} viewBox="{from} {from} {} {}" role="img" aria-label="{}">{}</svg>"#,
            n(width),
            n(height),
            escape(alternative),
            self.out
        );
        Picture { svg }
    }

    fn tag(&mut self, name: &str, class: &str, attributes: &[(&str, f64)]) {
        self.out += &format!(r#"<{name} class="{class}"{}/>"#, figures(attributes));
    }
}

fn figures(attributes: &[(&str, f64)]) -> String {
    attributes.iter().map(|(name, value)| format!(r#" {name}="{}""#, n(*value))).collect()
}

/// A figure with two decimals at most; what is not a number or far away becomes something that can be drawn.
fn n(value: f64) -> String {
    let hundredths = (value.clamp(-1e6, 1e6) * 100.0).round() as i64;
    let (sign, size) = (if hundredths < 0 { "-" } else { "" }, hundredths.abs());
    match (size / 100, size % 100) {
        (whole, 0) => format!("{sign}{whole}"),
        (whole, part) => format!("{sign}{whole}.{part:02}"),
    }
}

fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out += "&amp;",
            '<' => out += "&lt;",
            '>' => out += "&gt;",
            '"' => out += "&quot;",
            c if c.is_control() => out.push(' '),
            c => out.push(c),
        }
    }
    out
}
