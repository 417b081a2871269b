//! One couple under two ids, as when two phones have written down the same two people: how that is noticed, and how
//! the two entries are joined.
//!
//! Noticed by one rule: the same names, in either order and whatever the case and spaces, and weddings that are known
//! and can be on the same day. It is offered, never done by itself.
//!
//! Joined, the entry with the lower id stays: a rule that two phones follow without asking one another. It gets what
//! the other one holds, beside what it holds itself where the two say different things, so that these wait for a
//! decision like any other. The other entry keeps everything, is put away, and says whose it was. All of that is
//! ordinary changes to two records: it merges, travels and is taken back like them.
//!
//! Why a rule from the ids: two phones may join the same two entries without knowing of each other. If each chose
//! which entry stays, each could archive the other's, and the couple would be out of sight on both. Why no change
//! is moved from one entry to the other: it would then be named in two records, and could not be taken back.

use std::collections::{BTreeMap, BTreeSet};

use super::change::{Draft, Set, Write};
use super::couple::Couple;
use super::field::Field;
use super::id::{Moment, RecordId, Stamp};
use super::record::Record;
use super::search::Lower;
use super::value::Value;
use crate::trade::dates::wedding::Wedding;
use crate::trade::wearer::Wearer;

/// What a couple is recognised by.
#[derive(Clone, Debug, PartialEq)]
pub struct Marks {
    names: [String; 2],
    wedding: Wedding,
}

impl Marks {
    /// None for a couple that is not to be recognised: one without names or without a known wedding, an invented one,
    /// one that was put away.
    pub fn of(couple: Couple<'_>, lower: Lower) -> Option<Marks> {
        let wedding = couple.wedding().filter(|wedding| wedding.earliest().is_some())?;
        if couple.is_example() || couple.put_away().is_some() {
            return None;
        }
        let [one, other] = names(couple, lower);
        let names = if one <= other { [one, other] } else { [other, one] };
        if names.iter().all(String::is_empty) { None } else { Some(Marks { names, wedding }) }
    }
}

/// Those of these couples that may be this one, and of which nobody has said whether they are.
pub fn like<'a>(couple: Couple<'_>, all: impl Iterator<Item = &'a Record>, lower: Lower) -> Vec<RecordId> {
    let Some(marks) = Marks::of(couple, lower) else { return Vec::new() };
    let is_like = |other: &&Record| {
        other.id != couple.0.id
            // What is quick to tell comes first: there may be many.
            && Couple(other).wedding().is_some_and(|wedding| meet(wedding, marks.wedding))
            && !is_said(couple.0, other)
            && Marks::of(Couple(other), lower).is_some_and(|other| other.names == marks.names)
    };
    all.filter(is_like).map(|record| record.id).collect()
}

/// Couples to be recognised among others, however many these are.
#[derive(Clone, Debug, Default)]
pub struct Sought {
    by_names: BTreeMap<[String; 2], Vec<(RecordId, Wedding)>>,
}

impl Sought {
    pub fn add(&mut self, couple: Couple<'_>, lower: Lower) {
        if let Some(Marks { names, wedding }) = Marks::of(couple, lower) {
            self.by_names.entry(names).or_default().push((couple.0.id, wedding));
        }
    }

    pub fn is_empty(&self) -> bool {
        self.by_names.is_empty()
    }

    /// Those that may be this couple.
    pub fn like(&self, couple: Couple<'_>, lower: Lower) -> Vec<RecordId> {
        let Some(marks) = Marks::of(couple, lower) else { return Vec::new() };
        let found = self.by_names.get(&marks.names).map(Vec::as_slice).unwrap_or_default();
        let like = found.iter().filter(|(id, wedding)| *id != couple.0.id && meet(*wedding, marks.wedding));
        like.map(|(id, _)| *id).collect()
    }
}

/// Whether somebody has said already that they are one couple, or that they are two.
pub fn is_said(one: &Record, other: &Record) -> bool {
    let says = |one: &Record, other: &Record| one.get(&Field::SameAs(other.id)).is_some();
    says(one, other) || says(other, one)
}

/// What is to be saved to say that they are two couples: in the record that comes second.
pub fn two_couples(one: RecordId, other: RecordId) -> (RecordId, Vec<Write>) {
    let (kept, second) = (one.min(other), one.max(other));
    (second, vec![Write::set(Field::SameAs(kept), Value::Yes(false))])
}

/// The entry into which this one was joined, or those that were joined into it.
pub fn joined(record: &Record) -> Vec<RecordId> {
    let is_same = |(field, value): (&Field, &Value)| match field {
        Field::SameAs(id) if *value == Value::Yes(true) => Some(*id),
        _ => None,
    };
    record.fields().filter_map(is_same).collect()
}

/// What is to be saved in the entry that stays: what the other one shows and this one does not know. What differs is
/// put beside what stands, and replaces nothing. Where the two stand in the other order there, what is one's comes to
/// that one here. Each taking-over says whose it was.
pub fn take_over(kept: &Record, other: &Record, lower: Lower, at: Moment) -> Option<Draft> {
    let [first, second] = names(Couple(kept), lower);
    let theirs = names(Couple(other), lower);
    let same_names = theirs == [first.clone(), second.clone()];
    let is_turned = !same_names && theirs == [second, first];
    let taken = taken_over(kept, other.id);
    let joined = taken.last().map(|first| kept.as_seen_by(*first));
    let is_news = |field: &Field, value: &Value| {
        let stays = matches!(field, Field::PutAway | Field::Example | Field::SameAs(_) | Field::Unknown(_));
        // Written in another way they are the same names.
        let is_name = matches!(field, Field::Name(_)) && (same_names || is_turned);
        !stays && !is_name && !matches!(value, Value::Unknown(_)) && !is_known(kept, joined.as_ref(), field, value)
    };
    let beside = |(field, value): (&Field, &Value)| {
        let field = if is_turned { turned(field)? } else { field.clone() };
        // Beside what was taken back to nothing it would be asked whether there is to be anything.
        let is_nothing = |stamp: &Stamp| kept.source(&field, *stamp).is_none();
        let replaces = kept.standing(&field).filter(is_nothing).collect();
        is_news(&field, value).then(|| Set {
            field,
            value: Some(value.clone()),
            replaces,
            restores: None,
            unknown: None,
        })
    };
    let mut sets: Vec<Set> = other.fields().filter_map(beside).collect();
    if sets.is_empty() && !taken.is_empty() {
        return None;
    }
    sets.push(kept.set(Field::SameAs(other.id), Some(Value::Yes(true)), None));
    Some(Draft { at, undoes: None, after: kept.frontier(), sets })
}

/// Whether an entry holds a value. Once it was joined it also knows what it held then, and whatever was written into it
/// since: what was settled there is not news again.
fn is_known(kept: &Record, joined: Option<&Record>, field: &Field, value: &Value) -> bool {
    let is_it = |known: &Value| known == value;
    let is_since = |joined: &Record| {
        let since = kept.changes().iter().filter(|change| !joined.holds_change(change.stamp));
        let mut sets = since.flat_map(|change| &change.sets);
        sets.any(|set| set.field == *field && set.value.as_ref().is_some_and(is_it))
    };
    kept.holds(field, is_it) || joined.is_some_and(|joined| joined.holds(field, is_it) || is_since(joined))
}

/// The changes by which an entry took over what another one held, as long as they are joined, the newest first.
pub fn taken_over(kept: &Record, other: RecordId) -> Vec<Stamp> {
    let same = Field::SameAs(other);
    let mut found = BTreeSet::new();
    let mut next: Vec<Stamp> = kept.standing(&same).collect();
    while let Some(stamp) = next.pop() {
        let Some(set) = kept.written(&same, stamp).filter(|set| set.value == Some(Value::Yes(true))) else { continue };
        match set.restores {
            // One that was taken back is passed over.
            Some(before) => next.extend(Some(before).filter(|before| *before < stamp)),
            None if found.insert(stamp) => next.extend(set.replaces.iter().filter(|before| **before < stamp)),
            None => {}
        }
    }
    found.into_iter().rev().collect()
}

/// What is to be saved in the entry that stays to take the two apart: a taking-back of each taking-over, made in one
/// go. What was written since stays, and what stands beside is all that stands.
pub fn take_apart(kept: &Record, other: RecordId, at: Moment) -> Vec<Draft> {
    let taken = taken_over(kept, other);
    let back = |set: &Set| {
        let is_its = |head: &Stamp| kept.stands_for(&set.field, *head).any(|its| taken.contains(&its));
        let (mut replaces, beside): (Vec<Stamp>, Vec<Stamp>) = kept.standing(&set.field).partition(is_its);
        if replaces.is_empty() {
            return None;
        }
        let restores = beside.last().copied();
        let value = restores.and_then(|beside| kept.written(&set.field, beside)?.value.clone());
        replaces.extend(restores);
        Some(Set { field: set.field.clone(), value, replaces, restores, unknown: None })
    };
    let draft = |stamp: &Stamp| {
        let sets = kept.change(*stamp)?.sets.iter().filter_map(back).collect();
        Some(Draft { at, undoes: Some(*stamp), after: kept.frontier(), sets })
    };
    taken.iter().filter_map(draft).collect()
}

/// The same field of the other one of the two. None for what speaks of both in one: it stays where it is.
fn turned(field: &Field) -> Option<Field> {
    Some(match field {
        Field::Name(who) => Field::Name(who.other()),
        Field::Finger(who) => Field::Finger(who.other()),
        Field::FirstRing(who) => Field::FirstRing(who.other()),
        Field::Reading(who, item) => Field::Reading(who.other(), *item),
        Field::NoRings(who) => Field::NoRings(who.other()),
        Field::Ring(who, item, part) => Field::Ring(who.other(), *item, *part),
        Field::Band(who, part) => Field::Band(who.other(), *part),
        Field::Wish(who, wish) => Field::Wish(who.other(), *wish),
        Field::MeasureAgain(who) => Field::MeasureAgain(who.other()),
        Field::Fitted(who) => Field::Fitted(who.other()),
        Field::OrderSize(who) => Field::OrderSize(who.other()),
        Field::FreeLength(who) => Field::FreeLength(who.other()),
        Field::FreeLengthOf(who, finger) => Field::FreeLengthOf(who.other(), *finger),
        Field::Stack(who) => Field::Stack(who.other()),
        Field::Remedy(who) => Field::Remedy(who.other()),
        Field::RingGone(who) => Field::RingGone(who.other()),
        Field::RingBack(who) => Field::RingBack(who.other()),
        Field::PreparationList(_) => return None,
        Field::Reach(_)
        | Field::Met
        | Field::Wedding
        | Field::Appointment(..)
        | Field::Recorded
        | Field::Stage
        | Field::Reached(_)
        | Field::PutAway
        | Field::Example
        | Field::Note(_)
        | Field::Dates
        | Field::WorkDone(_)
        | Field::MilestoneDone(_)
        | Field::ReadBack
        | Field::SameAs(_)
        | Field::Practice(_)
        | Field::Unknown(_) => field.clone(),
    })
}

/// Both names as they are compared.
fn names(couple: Couple<'_>, lower: Lower) -> [String; 2] {
    [Wearer::First, Wearer::Second].map(|wearer| {
        let words = lower(couple.name(wearer).unwrap_or_default());
        words.split_whitespace().collect::<Vec<_>>().join(" ")
    })
}

/// Whether two weddings, as far as they are known, can be on one day.
fn meet(one: Wedding, other: Wedding) -> bool {
    match (one.earliest().zip(one.latest()), other.earliest().zip(other.latest())) {
        (Some((from, to)), Some((since, until))) => from <= until && since <= to,
        _ => false,
    }
}
