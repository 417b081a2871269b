//! What a couple has for the order size, and what it lacks.

use super::super::Opened;
use super::reckon::{OTHER, TAKEN, no_beads_code};
use crate::app::form::Start;
use crate::archive::code::Code;
use crate::book::checklist::Topic;
use crate::book::couple::{Band, Couple};
use crate::book::value::ReadingTaken;
use crate::trade::band::{Bore, Finish, Profile};
use crate::trade::fit::{Hands, NoBeads, Place, ReadAt};
use crate::trade::measure::Length;
use crate::trade::wearer::Wearer;
use crate::words::{bench as say, lengths};

/// The newest reading of the base of the finger.
pub fn taken(couple: Couple<'_>, who: Wearer) -> Option<ReadingTaken> {
    newest(couple, who, Place::Base).cloned()
}

fn newest(couple: Couple<'_>, who: Wearer, place: Place) -> Option<&ReadingTaken> {
    let finger = couple.finger(who);
    let of = |it: &&ReadingTaken| it.place == place && finger.is_none_or(|finger| finger == it.finger);
    couple.readings(who).into_iter().map(|(_, it)| it).rfind(of)
}

/// The widths of the rings that are worn on this finger now.
fn worn_now(couple: Couple<'_>, who: Wearer) -> Vec<Length> {
    let finger = couple.finger(who);
    let here = |of| finger.is_none() || of == finger;
    let rings = couple.rings(who).into_iter();
    rings
        .filter(|ring| !ring.planned && (ring.finger.is_none() || here(ring.finger)))
        .filter_map(|it| it.shoulder_width)
        .collect()
}

/// What the calculator starts with: the couple's figures, or nothing.
pub fn start(opened: &Opened) -> Vec<Start> {
    let gauge = opened.app.practice(|practice| practice.gauges().first().map(|(item, _)| item.to_string()));
    let mut start: Vec<Start> = vec![
        ("size", String::new()),
        ("as", String::new()),
        ("gauge", gauge.unwrap_or_else(|| OTHER.to_owned())),
        ("gauge-kind", "set".to_owned()),
        ("gauge-width", String::new()),
        ("gauge-bore", Bore::Flat.code().to_owned()),
        ("read-at", ReadAt::LowerEdge.code().to_owned()),
        ("hands", Hands::Normal.code().to_owned()),
        ("beside", String::new()),
        ("width", String::new()),
        ("profile", Profile::Court.code().to_owned()),
        ("neighbours", String::new()),
        ("joint", String::new()),
        ("joint-as", String::new()),
        ("no-beads", String::new()),
        ("first-ring", String::new()),
        ("changing", String::new()),
        ("worn", "stack".to_owned()),
        ("make", String::new()),
    ];
    for (name, text) in opened.read(known).unwrap_or_default() {
        if let Some(entry) = start.iter_mut().find(|(of, _)| *of == name) {
            entry.1 = text;
        }
    }
    start
}

fn known(couple: Couple<'_>, who: Wearer) -> Vec<Start> {
    let mut known: Vec<Start> = vec![("neighbours", say::widths(&worn_now(couple, who)))];
    if let Some(taken) = newest(couple, who, Place::Base) {
        known.extend([
            ("size", say::retyped(&taken.size)),
            ("as", taken.size.stated.system().code().to_owned()),
            ("gauge", TAKEN.to_owned()),
            ("read-at", taken.read_at.code().to_owned()),
            ("hands", taken.hands.code().to_owned()),
            ("beside", say::widths(&taken.beside)),
        ]);
    }
    if let Some(joint) = newest(couple, who, Place::Joint) {
        known.push(("joint", say::retyped(&joint.size)));
        known.push(("joint-as", joint.size.stated.system().code().to_owned()));
    }
    let band = couple.band(who);
    known.extend(band.width.map(|width| ("width", lengths::plain(width))));
    known.extend(band.profile.map(|profile| ("profile", profile.code().to_owned())));
    known.extend(no_beads(&band).map(|why| ("no-beads", no_beads_code(why).to_owned())));
    if couple.first_ring(who) == Some(true) {
        known.push(("first-ring", "yes".to_owned()));
    }
    known
}

/// Why this band takes no beads, if it takes none.
pub fn no_beads(band: &Band) -> Option<NoBeads> {
    match (band.finish, band.metal) {
        (Some(Finish::SetAllRound), _) => Some(NoBeads::FullEternity),
        (_, Some(metal)) if metal.hard => Some(NoBeads::HardMetal),
        _ => None,
    }
}

/// The first thing that the couple lacks for an order size.
pub fn first_missing(couple: Couple<'_>, who: Wearer) -> Option<Topic> {
    lacking(couple, who).into_iter().next()
}

/// What the couple lacks for an order size.
pub fn lacking(couple: Couple<'_>, who: Wearer) -> Vec<Topic> {
    let band = couple.band(who);
    let reading = taken(couple, who).is_none().then_some(Topic::Finger(who));
    let width = (band.width.is_none() || band.profile.is_none()).then_some(Topic::Band(who));
    reading.into_iter().chain(width).collect()
}
