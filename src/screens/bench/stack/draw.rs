//! The pictures of the stack, from what was reckoned: each as the jeweller sees it, and as it is shown to the couple,
//! where nobody's own words stand in it.

use super::reckon::{Pair, Reckoned, Ring};
use crate::app::show::Shown;
use crate::pictures::{section, side, stack as drawing, unrolled};
use crate::trade::measure::{Diameter, Length};
use crate::trade::stack::{Stretch, Verdict};
use crate::words::{bench as say, showing};

/// So high a ring is drawn whose height is not known: 1.8 mm, common practice. No figure is worked out from it.
const HEIGHT: Length = Length::tenthousandths(18_000);

/// A picture, and what becomes of it in the clean view.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Drawn {
    pub svg: String,
    pub shown: Shown,
}

/// What a ring is called in a picture.
pub type Label = fn(&Ring) -> String;

pub fn own(ring: &Ring) -> String {
    ring.name.clone()
}

pub fn plain(ring: &Ring) -> String {
    ring.plain.clone()
}

/// The finger from above with every ring, each called what `label` says.
pub fn from_above(found: &Reckoned, finger: Diameter, label: Label) -> Option<String> {
    let crowds = |of: &Stretch| matches!(of.verdict, Verdict::Crowded | Verdict::DoesNotFit);
    let later = found.later()?;
    let ring = |(at, ring): (usize, &Ring)| drawing::Ring {
        label: label(ring),
        width: ring.lying.width,
        top: ring.widths.top,
        height: ring.surface.height.unwrap_or(HEIGHT),
        state: ring.state,
        head: ring.lying.head.map(|head| (head.to_web, head.to_tip)),
        apart: found.before(at).map_or(Length::ZERO, |pair| pair.left),
        bend: found.bend(at),
    };
    let picture = drawing::stack(&drawing::Stack {
        rings: found.rings.iter().enumerate().map(ring).collect(),
        gap: found.gap?,
        free: found.stack.as_ref()?.free_length,
        finger,
        crowded: crowds(later),
        at_top: found.at_top.as_ref().map(|at_top| (at_top.later.total, crowds(&at_top.later))),
    });
    Some(picture.svg)
}

/// Each ring that tapers, laid flat, with the band against it.
pub fn laid_flat(found: &Reckoned, finger: Diameter) -> Vec<Drawn> {
    let tapers = found.matches.iter().filter_map(|it| Some((it, found.rings.get(it.ring)?)));
    tapers
        .filter(|(_, ring)| ring.widths.top != ring.widths.shoulders || ring.widths.back != ring.widths.shoulders)
        .map(|(it, ring)| {
            let round = ring.lying.inside.map_or(finger, Diameter).circumference();
            let draw =
                |label| unrolled::unrolled(&unrolled::Unrolled { label, ring: ring.widths, band: it.band, round }).svg;
            let shown = Shown {
                title: showing::FLAT_TITLE.to_owned(),
                picture: draw(plain(ring)),
                figure: say::shoulder_figures(it.band, ring.widths.shoulders),
                lines: vec![say::shoulder_said(it.found, ring.top_known)],
            };
            Drawn { svg: draw(own(ring)), shown }
        })
        .collect()
}

/// Each head with the rings beside it, and the further one that it reaches; rings that lie in one picture already are
/// drawn there alone.
pub fn from_the_side(found: &Reckoned) -> Vec<Drawn> {
    let run = |at: usize| {
        let causes = found.pairs.iter().filter_map(|pair| pair.apart.cause).filter(|cause| cause.head == at);
        let beside = (at.saturating_sub(1), (at + 1).min(found.rings.len().saturating_sub(1)));
        causes.fold(beside, |(from, to), cause| (from.min(cause.meets), to.max(cause.meets)))
    };
    let heads = found.rings.iter().enumerate().filter(|(_, ring)| ring.lying.head.is_some());
    let runs: Vec<(usize, usize)> = heads.map(|(at, _)| run(at)).collect();
    let within = |one: (usize, usize), other: (usize, usize)| other.0 <= one.0 && one.1 <= other.1;
    let is_elsewhere = |at: usize| {
        let others = runs.iter().enumerate().filter(|(other, _)| *other != at);
        others.into_iter().any(|(other, run)| within(runs[at], *run) && (runs[at] != *run || other < at))
    };
    (0..runs.len()).filter(|at| !is_elsewhere(*at)).map(|at| side_by_side(found, runs[at])).collect()
}

fn side_by_side(found: &Reckoned, (from, to): (usize, usize)) -> Drawn {
    let draw = |label: Label| {
        let ring = |(at, ring): (usize, &Ring)| {
            let (apart, bay) = found.at_shanks(at);
            side::Ring {
                label: label(ring),
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
    let inside = |pair: &&Pair| from <= pair.apart.rings.0 && pair.apart.rings.1 <= to;
    let has_head = |at: usize| found.rings.get(at).is_some_and(|ring| ring.lying.head.is_some());
    let concerns =
        |pair: &&Pair| pair.apart.cause.is_some() || has_head(pair.apart.rings.0) || has_head(pair.apart.rings.1);
    let said: Vec<&Pair> = found.pairs.iter().filter(inside).filter(concerns).collect();
    let off = said.iter().map(|pair| pair.left).max().unwrap_or_default();
    let shown = Shown {
        title: showing::SIDE_TITLE.to_owned(),
        picture: draw(plain),
        figure: showing::off(off),
        lines: said.iter().map(|pair| found.lie(pair, &|at| found.plain_name(at))).collect(),
    };
    Drawn { svg: draw(own), shown }
}

/// Every section that is known.
pub fn sections(found: &Reckoned) -> Vec<Drawn> {
    let known = found.rings.iter().filter_map(|ring| Some((ring, ring.lying.section?)));
    let draw = |(ring, of): (&Ring, _)| Drawn {
        svg: section::section(&ring.name, &of).svg,
        shown: Shown {
            title: showing::SECTION_TITLE.to_owned(),
            picture: section::section(&plain(ring), &of).svg,
            figure: showing::width_and_height(of.width(), of.height()),
            lines: Vec::new(),
        },
    };
    known.map(draw).collect()
}
