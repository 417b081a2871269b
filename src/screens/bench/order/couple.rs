//! What a couple has for the order size, and what it lacks.

use super::super::Opened;
use super::reckon::{OTHER, TAKEN, no_beads_code};
use crate::app::form::Start;
use crate::archive::code::Code;
use crate::book::checklist::Topic;
use crate::book::couple::Couple;
use crate::book::fitting;
use crate::book::value::ReadingTaken;
use crate::screens::fields;
use crate::trade::band::{Bore, Profile};
use crate::trade::fit::{Hands, Place, ReadAt, Term};
use crate::trade::sizing::Stated;
use crate::trade::wearer::Wearer;
use crate::words::{bench as say, lengths, sizing as say_sizing};

/// The readings of the base of the finger that count, the newest first.
pub fn taken(couple: Couple<'_>, who: Wearer) -> Vec<ReadingTaken> {
    fitting::counted(couple, who, Place::Base).into_iter().map(|(_, taken)| taken.clone()).collect()
}

/// The key of the field for an amount of the jeweller's own.
pub fn own_key(term: Term) -> &'static str {
    match term {
        Term::Gauge => "own-gauge",
        Term::Stick => "own-stick",
        Term::Width => "own-width",
        Term::Bore => "own-bore",
        Term::Hands => "own-hands",
        Term::Sits => "own-sits",
        Term::Offset => "own-offset",
        Term::Joint => "own-joint",
    }
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
        ("gauge-error", String::new()),
        // Where the ring touches the stick, until another place is chosen.
        ("read-at", String::new()),
        ("hands", Hands::Normal.code().to_owned()),
        ("beside", String::new()),
        ("width", String::new()),
        ("profile", Profile::Court.code().to_owned()),
        ("relief", String::new()),
        ("neighbours", String::new()),
        ("joint", String::new()),
        ("joint-as", String::new()),
        ("joint-width", String::new()),
        ("no-beads", String::new()),
        ("first-ring", String::new()),
        ("changing", String::new()),
        ("alone-reading", String::new()),
        ("worn", "stack".to_owned()),
        ("make", String::new()),
    ];
    start.extend(Term::ALL.map(|term| (own_key(term), String::new())));
    for (name, text) in opened.read(known).unwrap_or_default() {
        if let Some(entry) = start.iter_mut().find(|(of, _)| *of == name) {
            entry.1 = text;
        }
    }
    start
}

fn known(couple: Couple<'_>, who: Wearer) -> Vec<Start> {
    let mut known: Vec<Start> = vec![("neighbours", say::widths(&fitting::worn_beside(couple, who)))];
    if let Some((_, taken)) = fitting::counted(couple, who, Place::Base).first() {
        known.extend([
            ("size", say::retyped(&taken.size)),
            ("as", fields::meant(&taken.size)),
            ("gauge", TAKEN.to_owned()),
            ("read-at", read_at(taken)),
            ("hands", taken.hands.code().to_owned()),
            ("beside", say::widths(&taken.beside)),
        ]);
    }
    if let Some(joint) = fitting::joint(couple, who) {
        let taken = fitting::counted(couple, who, Place::Joint);
        let as_read = taken.iter().find(|(_, taken)| taken.size.circumference() == joint.passes_at);
        match as_read.filter(|_| joint.readings == 1) {
            Some((_, only)) => {
                known.extend([("joint", say::retyped(&only.size)), ("joint-as", fields::meant(&only.size))]);
            }
            // Of several their mean, in millimetres round; of one what its calibration makes of it.
            None => known.push(("joint", say_sizing::stated_in_full(Stated::Circumference(joint.passes_at)))),
        }
        known.push(("joint-width", lengths::plain(joint.width)));
    }
    let band = couple.band(who);
    known.extend(band.width.map(|width| ("width", lengths::plain(width))));
    known.extend(band.relief.map(|relief| ("relief", say_sizing::trimmed(relief))));
    known.extend(band.profile.map(|profile| ("profile", profile.code().to_owned())));
    known.extend(fitting::no_beads(&band).map(|why| ("no-beads", no_beads_code(why).to_owned())));
    if couple.first_ring(who) == Some(true) {
        known.push(("first-ring", "yes".to_owned()));
    }
    known
}

/// The word for where a reading was read; none for where its ring touches the stick.
fn read_at(taken: &ReadingTaken) -> String {
    let touches = taken.read_at == ReadAt::right_for(taken.gauge.gauge.bore);
    if touches { String::new() } else { taken.read_at.code().to_owned() }
}

/// The first thing that the couple lacks for an order size.
pub fn first_missing(couple: Couple<'_>, who: Wearer) -> Option<Topic> {
    lacking(couple, who).into_iter().next()
}

/// What the couple lacks for an order size.
pub fn lacking(couple: Couple<'_>, who: Wearer) -> Vec<Topic> {
    let band = couple.band(who);
    let reading = fitting::counted(couple, who, Place::Base).is_empty().then_some(Topic::Finger(who));
    let width = (band.width.is_none() || band.profile.is_none()).then_some(Topic::Band(who));
    reading.into_iter().chain(width).collect()
}
