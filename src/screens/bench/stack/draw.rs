//! The pictures of the stack, from what was reckoned.

use super::reckon::Reckoned;
use crate::pictures::{section, side, stack as drawing, unrolled};
use crate::trade::measure::{Diameter, Length};
use crate::trade::stack::Verdict;

/// So high a ring is drawn whose height is not known.
const HEIGHT: Length = Length::tenthousandths(18_000);

/// The finger from above with every ring, each called what `label` says.
pub fn from_above(found: &Reckoned, finger: Diameter, label: fn(&super::reckon::Ring) -> String) -> Option<String> {
    let later = found.later()?;
    let ring = |(at, ring): (usize, &super::reckon::Ring)| drawing::Ring {
        label: label(ring),
        width: ring.lying.width,
        top: ring.widths.top,
        height: ring.surface.height.unwrap_or(HEIGHT),
        state: ring.state,
        head: ring.lying.head.map(|head| (head.to_web, head.to_tip)),
        apart: found.apart_before(at),
    };
    let picture = drawing::stack(&drawing::Stack {
        rings: found.rings.iter().enumerate().map(ring).collect(),
        gap: found.gap?,
        free: found.stack.as_ref()?.free_length,
        finger,
        crowded: matches!(later.verdict, Verdict::Crowded | Verdict::DoesNotFit),
    });
    Some(picture.svg)
}

/// Each ring that tapers, laid flat, with the band against it.
pub fn laid_flat(found: &Reckoned, finger: Diameter) -> Vec<String> {
    let tapers = found.matches.iter().filter_map(|it| Some((it, found.rings.get(it.ring)?)));
    tapers
        .filter(|(_, ring)| ring.widths.top != ring.widths.shoulders || ring.widths.back != ring.widths.shoulders)
        .map(|(it, ring)| {
            let round = ring.lying.inside.map_or(finger, Diameter).circumference();
            let of = unrolled::Unrolled { label: ring.name.clone(), ring: ring.widths, band: it.band, round };
            unrolled::unrolled(&of).svg
        })
        .collect()
}

/// Each head with the rings beside it, and the further one that it reaches.
pub fn from_the_side(found: &Reckoned) -> Vec<String> {
    let heads = found.rings.iter().enumerate().filter(|(_, ring)| ring.lying.head.is_some());
    let run = |(at, _): (usize, _)| {
        let met = found.pairs.iter().filter_map(|pair| pair.apart.cause).filter(|cause| cause.head == at);
        let (mut from, mut to) = (at.saturating_sub(1), (at + 1).min(found.rings.len() - 1));
        met.for_each(|cause| (from, to) = (from.min(cause.meets), to.max(cause.meets)));
        let ring = |(at, ring): (usize, &super::reckon::Ring)| side::Ring {
            label: ring.name.clone(),
            width: ring.lying.width,
            section: ring.lying.section,
            head: ring.lying.head,
            state: ring.state,
            apart: found.apart_before(at),
        };
        let run: Vec<side::Ring> = found.rings.iter().enumerate().skip(from).take(to - from + 1).map(ring).collect();
        side::side(&run).svg
    };
    heads.map(run).collect()
}

/// Every section that is known.
pub fn sections(found: &Reckoned) -> Vec<String> {
    let known = found.rings.iter().filter_map(|ring| Some((ring, ring.lying.section?)));
    known.map(|(ring, of)| section::section(&ring.name, &of).svg).collect()
}
