//! What of a couple belongs in a calendar: its appointments and the days planned back from its wedding.

use chrono::{NaiveDate, NaiveTime};

use super::couple::Couple;
use super::field::{Field, Outcome, Stage};
use super::id::ItemId;
use super::practice::Practice;
use super::progress::{is_reached, plan};
use super::remedy::Move;
use super::schedule::OwnOrders;
use super::value::{ExtraWork, Value};
use crate::trade::dates::lead_times::Step as Work;
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

/// Everything that belongs in a calendar. What fell away since an earlier file could have brought it is among it, called
/// off, so that a calendar that has it takes it out; a wedding is only where its day is known.
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
        let done = |what| is_reached(couple, what);
        all.extend(milestones.map(|due| whole(What::Milestone(due.what), due.by, done(due.what))));
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
    let fallen = fallen_away(couple, today).into_iter().filter(|(what, _)| !all.iter().any(|it| it.what == *what));
    let fallen = fallen.map(|(what, day)| Entry { called_off: true, ..whole(what, day, true) });
    let fallen: Vec<Entry> = fallen.collect();
    all.extend(fallen);
    // Nobody goes by the days of a couple who went elsewhere, or were put away before their wedding.
    let is_over = couple.wedding().is_some_and(|wedding| wedding.is_past(today));
    if !is_over && (couple.stage() == Stage::Lost || couple.put_away().is_some()) {
        all.iter_mut().for_each(|entry| entry.called_off = true);
    }
    all
}

/// Whatever the changes to the couple could have put into a calendar, each once, on a day that will do: a calendar
/// knows an entry by its UID. Appointments on their last day; a ring likewise; milestones on the last wedding day that
/// was spoken of. After the wedding its milestones are history and stay where they are.
fn fallen_away(couple: Couple<'_>, today: NaiveDate) -> Vec<(What, NaiveDate)> {
    let mut all: Vec<(What, NaiveDate)> = Vec::new();
    let mut put = |what: What, day: NaiveDate| match all.iter_mut().find(|(known, _)| *known == what) {
        Some((_, last)) => *last = day,
        None => all.push((what, day)),
    };
    let is_over = couple.wedding().is_some_and(|wedding| wedding.is_past(today));
    let (mut wedding, mut engraved) = (None, false);
    for set in couple.0.changes().iter().flat_map(|change| &change.sets) {
        match (&set.field, &set.value) {
            (Field::Appointment(item, _), Some(Value::When(when))) => put(What::Appointment(*item), when.day),
            (Field::Remedy(wearer), Some(Value::Remedy(remedy))) => {
                let (from, to) = remedy.ring.map_or((None, None), |away| (away.from, away.to));
                for (moves, day) in [(Move::Goes, from), (Move::Returns, to)] {
                    day.into_iter().for_each(|day| put(What::Ring(*wearer, moves), day));
                }
            }
            (Field::Dates, Some(Value::Dates(dates))) => {
                engraved |= dates.extras.iter().any(|extra| extra.work == ExtraWork::Usual(Work::Engraving));
            }
            (Field::Wedding, Some(Value::Wedding(known))) => {
                wedding = known.earliest().or(wedding);
                if let Wedding::Day(day) = known {
                    put(What::Wedding, *day);
                }
            }
            _ => {}
        }
    }
    let could_be = |what: &Milestone| *what != Milestone::EngravingText || engraved;
    for day in wedding.into_iter().filter(|_| !is_over) {
        Milestone::ALL.into_iter().filter(could_be).for_each(|what| put(What::Milestone(what), day));
    }
    all
}

/// A number that grows with everything that may move an entry.
pub fn sequence(couple: Couple<'_>, practice: Practice<'_>) -> usize {
    couple.0.changes().len() + practice.0.changes().len()
}
