//! The pictures of a stack's answer: each as the jeweller sees it, and as it is shown to the couple, where nobody's own
//! words stand in it.

use super::{Picture, section, side, stack, unrolled};
use crate::answers::stack::{RingInStack, StackAnswer};
use crate::trade::measure::{Diameter, Length};
use crate::trade::stack::{Stretch, Verdict};
use crate::words::answer::CoupleView;
use crate::words::bench::{self as say, Called, how_they_lie, ring_label};
use crate::words::showing;

/// So high a ring is drawn whose thickness is not known: 1.8 mm, common practice. No figure is worked out from it.
const THICKNESS: Length = Length::tenthousandths(18_000);

/// A picture, and what becomes of it in the clean view.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Drawn {
    pub svg: String,
    pub shown: CoupleView,
}

/// The finger from above with every ring.
pub fn from_above(found: &StackAnswer, finger: Diameter, called: Called) -> Option<Picture> {
    let crowds = |of: &Stretch| matches!(of.verdict, Verdict::Crowded | Verdict::DoesNotFit);
    let later = found.later()?;
    let ring = |(at, ring): (usize, &RingInStack)| stack::Ring {
        label: ring_label(ring, called),
        width: ring.lying.width,
        top: ring.widths.top,
        height: ring.surface.height.unwrap_or(THICKNESS),
        state: ring.state,
        head: ring.lying.head.map(|head| (head.to_web, head.to_tip)),
        apart: found.before(at).map_or(Length::ZERO, |pair| pair.left),
        bend: found.bend(at),
    };
    Some(stack::stack(&stack::Stack {
        rings: found.rings.iter().enumerate().map(ring).collect(),
        gap: found.gap?,
        free: found.stack.as_ref()?.free_length,
        finger,
        crowded: crowds(later),
        at_top: found.at_top.as_ref().map(|at_top| (at_top.later.total, crowds(&at_top.later))),
    }))
}

/// The answer for the couple.
pub fn shown(found: &StackAnswer, finger: Diameter) -> Option<CoupleView> {
    let picture = from_above(found, finger, Called::Plain).map(|picture| picture.svg).unwrap_or_default();
    say::stack_shown(found).map(|view| CoupleView { picture, ..view })
}

/// Each ring that tapers, laid flat, with the band against it.
pub fn laid_flat(found: &StackAnswer, finger: Diameter) -> Vec<Drawn> {
    let tapers = found.matches.iter().filter_map(|it| Some((it, found.rings.get(it.ring)?)));
    tapers
        .filter(|(_, ring)| ring.widths.top != ring.widths.shoulders || ring.widths.back != ring.widths.shoulders)
        .map(|(it, ring)| {
            let round = ring.lying.inside.map_or(finger, Diameter).circumference();
            let draw = |called| {
                let label = ring_label(ring, called);
                unrolled::unrolled(&unrolled::Unrolled { label, ring: ring.widths, band: it.band, round }).svg
            };
            let shown = CoupleView {
                title: showing::FLAT_TITLE.to_owned(),
                picture: draw(Called::Plain),
                figure: say::shoulder_figures(it.band, ring.widths.shoulders),
                lines: vec![say::shoulder_said(it.found, ring.top_known)],
            };
            Drawn { svg: draw(Called::Own), shown }
        })
        .collect()
}

/// Each head with the rings beside it.
pub fn from_the_side(found: &StackAnswer) -> Vec<Drawn> {
    found.side_views().into_iter().map(|view| side_by_side(found, view)).collect()
}

fn side_by_side(found: &StackAnswer, view: (usize, usize)) -> Drawn {
    let (from, to) = view;
    let draw = |called| {
        let ring = |(at, ring): (usize, &RingInStack)| {
            let (apart, bay) = found.at_shanks(at);
            side::Ring {
                label: ring_label(ring, called),
                width: ring.lying.width,
                section: ring.lying.section,
                head: ring.lying.head,
                state: ring.state,
                apart,
                bay,
            }
        };
        let run: Vec<side::Ring> = found.rings.iter().enumerate().skip(from).take(to - from + 1).map(ring).collect();
        side::side(&run).svg
    };
    let pairs = found.pairs_in_view(view);
    let off = pairs.iter().map(|pair| pair.left).max().unwrap_or_default();
    let shown = CoupleView {
        title: showing::SIDE_TITLE.to_owned(),
        picture: draw(Called::Plain),
        figure: showing::off(off),
        lines: pairs.iter().map(|pair| how_they_lie(found, pair, Called::Plain)).collect(),
    };
    Drawn { svg: draw(Called::Own), shown }
}

/// Every section that is known.
pub fn sections(found: &StackAnswer) -> Vec<Drawn> {
    let known = found.rings.iter().filter_map(|ring| Some((ring, ring.lying.section?)));
    let draw = |(ring, of): (&RingInStack, _)| Drawn {
        svg: section::section(&ring_label(ring, Called::Own), &of).svg,
        shown: CoupleView {
            title: showing::SECTION_TITLE.to_owned(),
            picture: section::section(&ring_label(ring, Called::Plain), &of).svg,
            figure: showing::width_and_height(of.width(), of.height()),
            lines: Vec::new(),
        },
    };
    known.map(draw).collect()
}
