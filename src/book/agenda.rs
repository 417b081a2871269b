//! What of a couple belongs in a calendar: its appointments and the days planned back from its wedding.

use chrono::{NaiveDate, NaiveTime};

use super::couple::Couple;
use super::field::Outcome;
use super::id::ItemId;
use super::practice::Practice;
use super::progress::{is_reached, plan};
use super::remedy::Move;
use super::schedule::OwnOrders;
use crate::trade::dates::milestones::Milestone;
use crate::trade::dates::wedding::Wedding;
use crate::trade::wearer::Wearer;

/// What an entry is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    Appointment(ItemId),
    Milestone(Milestone),
    /// A ring goes to the bench, or is due back.
    Ring(Wearer, Move),
    Wedding,
}

/// An entry of a calendar.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    pub what: What,
    pub day: NaiveDate,
    pub time: Option<NaiveTime>,
    pub place: Option<String>,
    pub called_off: bool,
    /// Behind already: nothing to be reminded of.
    pub done: bool,
}

/// Everything that belongs in a calendar. Appointments that were called off are among it, so that a calendar that has
/// them takes them out; a wedding is only where its day is known.
pub fn agenda(couple: Couple<'_>, practice: Practice<'_>, own: &OwnOrders, today: NaiveDate) -> Vec<Entry> {
    let whole = |what, day, done| Entry { what, day, time: None, place: None, called_off: false, done };
    let mut all: Vec<Entry> = Vec::new();
    for it in couple.appointments() {
        all.push(Entry {
            what: What::Appointment(it.item),
            day: it.when.day,
            time: it.when.time,
            place: it.place,
            called_off: it.outcome == Some(Outcome::CalledOff),
            done: it.outcome.is_some() || it.when.day < today,
        });
    }
    if let Some(plan) = plan(couple, practice, own, today) {
        let milestones = plan.milestones.into_iter();
        all.extend(milestones.map(|due| whole(What::Milestone(due.what), due.by, is_reached(couple, practice, due.what))));
    }
    for wearer in Wearer::BOTH {
        let Some(away) = couple.remedy(wearer).and_then(|remedy| remedy.ring) else { continue };
        let (gone, back) = (couple.ring_gone(wearer).is_some(), couple.ring_back(wearer).is_some());
        let moves = [(Move::Goes, away.from, gone || back), (Move::Returns, away.to, back)].into_iter();
        all.extend(moves.filter_map(|(what, day, done)| Some(whole(What::Ring(wearer, what), day?, done))));
    }
    if let Some(Wedding::Day(day)) = couple.wedding() {
        all.push(whole(What::Wedding, day, day < today));
    }
    all
}

/// A number that grows with everything that may move an entry.
pub fn sequence(couple: Couple<'_>, practice: Practice<'_>) -> usize {
    couple.0.changes().len() + practice.0.changes().len()
}
