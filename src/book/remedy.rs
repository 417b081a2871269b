//! What was chosen for a band that a head holds off; for a shaped one, what the bench gets and when a ring is away.
//!
//! The way, its figure and what the workshop gets for it are one value, because they are true only together. That
//! a ring was handed over, and came back, are facts of their own, noted later and perhaps on another phone: they
//! must not wait for a decision about the choice.

use chrono::NaiveDate;

use super::care::Care;
use super::couple::Couple;
use super::field::{BandField, Field, RingField};
use crate::trade::dates::wedding::Wedding;
use crate::trade::measure::Length;
use crate::trade::wearer::Wearer;

pub use super::value::{Away, Remedy, Way};

/// What a ring does next.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Move {
    Goes,
    Returns,
}

/// Whether a ring is away when the wedding is, as far as both are known. The day it is to be back counts as away: a
/// courier may be late.
pub fn away_at(away: Away, wedding: Wedding) -> bool {
    let is_close = matches!(wedding, Wedding::Day(_) | Wedding::Month { .. });
    let days = away.from.zip(away.to).zip(wedding.earliest().zip(wedding.latest()));
    is_close && days.is_some_and(|((from, to), (earliest, latest))| from <= latest && earliest <= to)
}

/// What about the remedy of a band is still open, or wants another look. `off` is how far a head holds the band off.
pub fn care(couple: Couple<'_>, wearer: Wearer, off: Length) -> Option<Care> {
    let Some(remedy) = couple.remedy(wearer) else {
        return (off > Length::ZERO).then_some(Care::RemedyOpen);
    };
    // Where the band lies is written down by noting the stack; metals and names hold nothing off.
    let rests_on = |field: &Field| match field {
        Field::Band(_, BandField::Place | BandField::Metal | BandField::Finish)
        | Field::Ring(_, _, RingField::Metal) => false,
        words if words.is_words_of_ring() => false,
        Field::Ring(whose, ..) | Field::Band(whose, _) => *whose == wearer,
        _ => false,
    };
    let is_back = couple.ring_back(wearer).is_some();
    let away = remedy.ring.filter(|_| !is_back);
    if couple.changed_since(&Field::Remedy(wearer), rests_on) {
        Some(Care::RemedyStale)
    } else if !remedy.has_what_it_needs() {
        Some(Care::BenchOpen)
    } else if away.is_some_and(|away| away.from.is_none() || away.to.is_none()) {
        Some(Care::AwayOpen)
    } else if away.zip(couple.wedding()).is_some_and(|(away, wedding)| away_at(away, wedding)) {
        Some(Care::AwayAtWedding)
    } else {
        None
    }
}

/// Where a ring goes next, and by when; none once it is back.
pub fn next_move(couple: Couple<'_>, wearer: Wearer) -> Option<(Move, NaiveDate)> {
    let away = couple.remedy(wearer)?.ring?;
    if couple.ring_back(wearer).is_some() {
        None
    } else if couple.ring_gone(wearer).is_some() {
        away.to.map(|day| (Move::Returns, day))
    } else {
        away.from.map(|day| (Move::Goes, day))
    }
}
