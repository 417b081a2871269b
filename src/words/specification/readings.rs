//! Readings as the bench reads them.

use super::super::{band as say_band, finger, fit, format, sizing};
use super::{inside, mm};
use crate::book::couple::Couple;
use crate::book::fitting::is_of_the_bands_finger;
use crate::book::value::{OwnGauge, ReadingTaken};
use crate::trade::fit::{GaugeKind, Place, Sits};
use crate::trade::wearer::Wearer;

/// One reading, with the gauge as it was: how wide, which bore, and where a ring was read on a stick. Of a ring already
/// worn how it sits, and of one that does not count why not.
pub fn reading(couple: Couple<'_>, wearer: Wearer, taken: &ReadingTaken) -> String {
    let place = match taken.place {
        Place::Base => "base",
        Place::Joint => "joint",
    };
    let mut parts = vec![
        format!("{}, {}", sizing::stated_in_full(taken.size.stated), inside(taken.size.circumference())),
        format!("{place} of the {}", say_band::finger(taken.finger)),
        format!("with {}", gauge(&taken.gauge, taken.sits.is_some())),
    ];
    if matches!(taken.gauge.gauge.kind, GaugeKind::Stick { .. }) {
        parts.push(format!("read {}", fit::read_at(taken.read_at).to_ascii_lowercase()));
    }
    parts.push(taken.sits.map_or_else(|| fit::hands(taken.hands).to_ascii_lowercase(), how_it_sits));
    if !taken.beside.is_empty() {
        let widths: Vec<String> = taken.beside.iter().map(|width| mm(*width)).collect();
        parts.push(format!("rings worn beside the gauge {}", widths.join(" and ")));
    }
    parts.extend(does_not_count(couple, wearer, taken).map(str::to_owned));
    format!("Measured {}: {}", format::day(taken.taken), parts.join(", "))
}

fn how_it_sits(sits: Sits) -> String {
    format!("how it sits: {}", fit::sits(sits).to_ascii_lowercase())
}

/// Why the order size does not rest on a reading, if it does not.
fn does_not_count(couple: Couple<'_>, wearer: Wearer, taken: &ReadingTaken) -> Option<&'static str> {
    if !is_of_the_bands_finger(couple, wearer, taken) {
        return Some(finger::NOT_THE_BANDS);
    }
    taken.left_out.then_some("left out by the jeweller: does not count")
}

/// A gauge with its kind; of a ring that stands for one the kind says nothing.
fn gauge(own: &OwnGauge, is_worn: bool) -> String {
    let kind = match own.gauge.kind {
        GaugeKind::RingSet if is_worn => "ring",
        GaugeKind::RingSet => "ring set",
        GaugeKind::Stick { .. } => "ring stick",
    };
    let about = format!("{kind}, {} wide, {}", mm(own.gauge.width), say_band::bore(own.gauge.bore));
    if own.name.is_empty() { format!("a {about}") } else { format!("“{}” ({about})", own.name) }
}
