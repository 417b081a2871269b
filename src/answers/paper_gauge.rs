//! The paper gauge: the sizes of the sheet, whether a print is true, and a reading on it put right.

use crate::forms::paper_gauge::{PaperTyped, ReadWith};
use crate::trade::measure::{Circumference, Length};
use crate::trade::paper::{Paper, Verdict, WIDE_STRIP};
use crate::trade::sizing::{self, Size, Step, System};

/// The sizes on the strip, and those with a circle, round the inside.
const STRIP: (Circumference, Circumference) = (round(40), round(78));
const CIRCLES: (Circumference, Circumference) = (round(44), round(72));

/// The size that a print which is not true is explained with.
pub const EXAMPLE: Circumference = round(54);

const fn round(mm: i64) -> Circumference {
    Circumference(Length::tenthousandths(mm * 10_000))
}

/// What becomes of a print and of what was read on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PaperAnswer {
    /// None while the line was not measured.
    pub verdict: Option<Verdict>,
    /// None on a print that has to be made again, and while nothing clear was read.
    pub right: Option<PutRight>,
}

/// A reading put right.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PutRight {
    pub at: Circumference,
    /// How sure it is, one standard deviation, round the inside.
    pub u: Length,
    pub with: ReadWith,
    /// The nearest size of the scale, in the steps that the workshop makes.
    pub nearest: Size,
}

/// What a sheet has on it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SheetOfSizes {
    pub paper: Paper,
    pub scale: System,
    pub strip: Vec<Size>,
    /// From small to large; how many of them there is room for, the drawing tells.
    pub circles: Vec<Size>,
}

/// The answer to what was typed, in the steps that the workshop makes.
pub fn answer(typed: &PaperTyped, step: Step) -> PaperAnswer {
    let verdict = typed.print.map(|print| print.verdict());
    PaperAnswer { verdict, right: put_right(typed, step) }
}

fn put_right(typed: &PaperTyped, step: Step) -> Option<PutRight> {
    let print = typed.print.filter(|print| !matches!(print.verdict(), Verdict::PrintAgain { .. }))?;
    let read = typed.read.meant()?.circumference();
    let (at, u) = match typed.with {
        ReadWith::Strip => {
            let finger = print.finger(read);
            (finger, print.finger_u(finger))
        }
        ReadWith::Circle => {
            let ring = print.ring(read.diameter()).circumference();
            (ring, print.ring_u(ring))
        }
    };
    Some(PutRight { at, u, with: typed.with, nearest: sizing::nearest(typed.first, at, step).size })
}

/// The sheet that is chosen: halves on the strip; on small paper whole sizes alone have a circle.
pub fn sheet(typed: &PaperTyped) -> SheetOfSizes {
    let step = match typed.paper {
        Paper::A4 => Step::Half,
        Paper::A6 => Step::Whole,
    };
    let scale = typed.first;
    SheetOfSizes {
        paper: typed.paper,
        scale,
        strip: sizing::within(scale, STRIP.0..=STRIP.1, Step::Half),
        circles: sizing::within(scale, CIRCLES.0..=CIRCLES.1, step),
    }
}

impl PutRight {
    /// How wide the gauge was that the finger was read with; a circle is none.
    pub fn gauge_width(&self) -> Option<Length> {
        (self.with == ReadWith::Strip).then_some(WIDE_STRIP)
    }
}
