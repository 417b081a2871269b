//! What was chosen for a band beside a head, what the bench gets for it, and when a ring is away.

use chrono::NaiveDate;

use super::book::ring_name;
use super::{format, lengths};
use crate::answers::stack::noted_at_top;
use crate::book::couple::Couple;
use crate::book::remedy::{Away, Move, Remedy, Way};
use crate::trade::measure::Length;
use crate::trade::stack::House;
use crate::trade::wearer::Wearer;

pub const TITLE: &str = "Beside the head";
pub const WAY: &str = "What is chosen";
pub const BAY: &str = "Depth of the bay";
pub const BAY_HINT: &str = "Only if the band is shaped round a head.";
pub const WITH_BAY: &str = "With the bay, at the top";
pub const WITH_GAP: &str = "With the gap, at the top";
pub const MOST_HIGH: &str = "Height at most";
pub const MOST_HIGH_HINT: &str = "It becomes the height of the band.";
pub const GAP: &str = "Gap at the top";
/// How the figures are called in a complaint.
pub const BAY_NOUN: &str = "a depth of the bay";
pub const MOST_HIGH_NOUN: &str = "a height";
pub const GAP_NOUN: &str = "a gap at the top";
pub const FOR_BENCH: &str = "For the bench";
pub const IMPRESSION: &str = "An impression";
pub const IMPRESSION_HINT: &str = "Of the rings as they are worn.";
pub const TEMPLATE: &str = "A template";
pub const TEMPLATE_HINT: &str = "Of the curve, cut and tried on.";
pub const RING: &str = "The ring itself";
pub const RING_HINT: &str = "Give a receipt for it.";
pub const WHICH_RING: &str = "Which ring";
pub const FROM: &str = "At the bench from";
pub const TO: &str = "Back on";
pub const GONE: &str = "Handed over on";
pub const BACK: &str = "Came back on";
pub const WORKED_OUT: &str = "Worked out";
pub const NOT_HELD_OFF: &str = "By what is written down, no head holds this band off.";
pub const NO_BAND: &str = "There is no band to work it out for yet: its width is missing.";
pub const TO_STACK: &str = "See the stack";
pub const AT_WEDDING: &str =
    "The ring is at the bench when the wedding is. If it is wanted on the day, choose other days or a template.";
pub const TO_BEFORE_FROM: &str = "Enter a day that is not before the day it goes to the bench.";
pub const BACK_BEFORE_GONE: &str = "Enter a day that is not before the day it was handed over.";
pub const STILL_AWAY: &str = "Enter the day it came back: it was handed over, and would be lost sight of.";
pub const BACK_NOT_GONE: &str = "Enter the day it was handed over first.";

// Today
pub const AT_BENCH: &str = "Rings for the bench";

/// "Ines: beside the head".
pub fn whose(name: &str) -> String {
    format!("{name}: beside the head")
}

pub fn way(way: Way) -> &'static str {
    match way {
        Way::Shaped => "shaped",
        Way::Lower => "thinner",
        Way::Gap => "gap accepted",
    }
}

/// What a ring does next, with its day: "goes to the bench Mon 4 Jan 2027".
pub fn moves(what: Move, day: NaiveDate) -> String {
    match what {
        Move::Goes => format!("ring goes to the bench {}", format::day(day)),
        Move::Returns => format!("ring back from the bench {}", format::day(day)),
    }
}

/// "shaped, with a bay 0.57 mm deep", "no higher than 1.3 mm, to clear the head", "straight, the gap of 0.37 mm accepted".
pub fn shape(chosen: &Remedy) -> String {
    let by = mm(chosen.by);
    match chosen.way {
        Way::Shaped => format!("shaped, with a bay {by} deep"),
        Way::Lower => format!("straight, no higher than {by}, to clear the head"),
        Way::Gap => format!("straight, the gap of {by} at the top accepted"),
    }
}

/// What the bench gets: "an impression, a template, the engagement ring from Mon 4 to Fri 22 Jan 2027".
pub fn for_bench(chosen: &Remedy, ring: Option<String>) -> Option<String> {
    let away = |away: Away| {
        let ring = ring.unwrap_or_else(|| "the ring itself".to_owned());
        let days = match (away.from, away.to) {
            (None, None) => String::new(),
            (Some(from), None) => format!(" from {}", format::day(from)),
            (None, Some(to)) => format!(", back on {}", format::day(to)),
            (Some(from), Some(to)) => format!(" from {}, back on {}", format::day(from), format::day(to)),
        };
        format!("{ring}{days}")
    };
    let parts = [
        chosen.impression.then(|| "an impression of the rings as worn".to_owned()),
        chosen.template.then(|| "a template of the curve".to_owned()),
        chosen.ring.map(away),
    ];
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    (!parts.is_empty()).then(|| parts.join(", "))
}

/// What the rings take at the top by what was chosen: "at the top, with the bay, 5.8 mm now, 9.1 mm later".
pub fn at_top(couple: Couple<'_>, wearer: Wearer, house: House) -> Option<String> {
    let top = noted_at_top(couple, house, wearer)?;
    let with = if top.way == Way::Shaped { "with the bay" } else { "with the gap" };
    Some(match top.now == top.later {
        true => format!("at the top, {with}, {}", mm(top.later)),
        false => format!("at the top, {with}, {} now, {} later", mm(top.now), mm(top.later)),
    })
}

/// The same beside the figure at the palm: "9.1 mm at the top".
pub fn at_top_in_short(couple: Couple<'_>, wearer: Wearer, house: House) -> Option<String> {
    noted_at_top(couple, house, wearer).map(|top| format!("{} at the top", mm(top.later)))
}

/// All of it in one line.
pub fn in_full(chosen: &Remedy, ring: Option<String>) -> String {
    match for_bench(chosen, ring) {
        Some(gets) => format!("{}; the bench gets {gets}", shape(chosen)),
        None => shape(chosen),
    }
}

/// The ring that is away, as it stands in a sentence.
pub fn ring(couple: Couple<'_>, wearer: Wearer) -> Option<String> {
    let item = couple.remedy(wearer)?.ring?.ring?;
    let rings = couple.rings(wearer);
    rings.iter().find(|ring| ring.item == item).map(ring_name)
}

/// What became of the ring that goes to the bench: "handed over Mon 4 Jan 2027, back Fri 22 Jan 2027".
pub fn whereabouts(gone: Option<NaiveDate>, back: Option<NaiveDate>) -> Option<String> {
    let gone = gone.map(|day| format!("handed over {}", format::day(day)));
    let back = back.map(|day| format!("back {}", format::day(day)));
    let parts: Vec<String> = gone.into_iter().chain(back).collect();
    (!parts.is_empty()).then(|| parts.join(", "))
}

/// "the ring is to go to the bench Mon 4 Jan 2027": the title of an entry in a calendar.
pub fn entry(what: Move) -> &'static str {
    match what {
        Move::Goes => "a ring goes to the bench",
        Move::Returns => "a ring is back from the bench",
    }
}

fn mm(length: Length) -> String {
    format!("{} mm", lengths::plain(length))
}
