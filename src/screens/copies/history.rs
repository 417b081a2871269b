//! The history of a couple: who changed what and when, the latest first; of one field every value it ever had, each of
//! which can be put back.

use std::collections::BTreeSet;
use std::sync::Arc;

use crate::parts::el::{el, live, maybe};
use crate::parts::layout::{block, column, entries, para};
use leptos::prelude::*;

use crate::app::address::Part;
use crate::app::state::{App, app};
use crate::archive::key;
use crate::book::change::{Change, Set, Write};
use crate::book::couple::Couple;
use crate::book::field::Field;
use crate::book::id::RecordId;
use crate::parts::button::{Weight, button};
use crate::parts::choice::pick;
use crate::parts::page::page;
use crate::screens::shell::couple_page::{CouplePage, couple_page};
use crate::words::{fields, phones as say, screens};

/// So many changes are drawn at first, and so many more at each asking.
const ROWS: usize = 30;

pub fn history(id: RecordId) -> AnyView {
    let app = app();
    let CouplePage { head, .. } = couple_page(id, say::HISTORY, Part::History);
    let rows = RwSignal::new(ROWS);
    let of = RwSignal::new(String::new());
    let options = app.couple(id, every_field).unwrap_or_default();
    let field = move || of.with(|of| (!of.is_empty()).then(|| key::read(of)));
    let shown = move || {
        let rows = rows.get();
        let all = app.couple(id, |couple| changes(app, id, couple, field().as_ref(), rows)).unwrap_or_default();
        entries("history", "history-entry", all)
    };
    let more = move || {
        let count = app.couple(id, |couple| written(couple, field().as_ref()).count()).unwrap_or_default();
        let left = count.saturating_sub(rows.get());
        (left > 0).then(|| {
            button(Weight::Quiet, screens::show_more(left.min(ROWS)), move || rows.update(|rows| *rows += ROWS))
        })
    };
    let content =
        vec![para("", say::HISTORY_HOW), pick("history-of", say::OF_WHAT, options, of), live(shown), maybe(more)];
    page(head, column(content), None)
}

/// Every field that was ever written, by its name.
fn every_field(couple: Couple<'_>) -> Vec<(String, String)> {
    let mut written: BTreeSet<&Field> = BTreeSet::new();
    written.extend(couple.0.changes().iter().flat_map(|change| change.sets.iter().map(|set| &set.field)));
    let mut named = vec![(String::new(), say::EVERYTHING.to_owned())];
    for field in written {
        let name = fields::field(couple, field);
        // Two readings of one finger are two things: what each begins with tells them apart, or else a number.
        let is_item =
            matches!(field, Field::Reading(..) | Field::Note(_) | Field::PreparationList(_) | Field::Reach(_));
        let said = couple.0.get(field).filter(|_| is_item).map(|value| fields::value(Some(value)));
        let name = said.map_or_else(|| name.clone(), |said| say::beginning(&name, &said));
        let before = named.iter().filter(|(_, other)| say::is_numbered(other, &name)).count();
        named.push((key::write(field), say::numbered(name, before)));
    }
    named
}

/// The changes that wrote anything, or this field, each with what it wrote there, the latest first.
fn written<'a>(couple: Couple<'a>, field: Option<&Field>) -> impl Iterator<Item = (&'a Change, Vec<&'a Set>)> {
    let written = move |change: &'a Arc<Change>| {
        let is_wanted = |set: &&Set| field.is_none_or(|field| set.field == *field);
        let sets: Vec<&Set> = change.sets.iter().filter(is_wanted).collect();
        (!sets.is_empty()).then_some((&**change, sets))
    };
    couple.0.changes().iter().rev().filter_map(written)
}

fn changes(app: App, id: RecordId, couple: Couple<'_>, field: Option<&Field>, rows: usize) -> Vec<Vec<AnyView>> {
    let dated_back = couple.0.dated_back();
    let entry = |(change, sets): (&Change, Vec<&Set>)| {
        let mut entry = vec![para("small", about(app, couple, change, dated_back.contains(&change.stamp)))];
        entry.extend(sets.into_iter().map(|set| one(app, id, couple, set, field.is_some())));
        entry
    };
    written(couple, field).take(rows).map(entry).collect()
}

/// Who, when, and whether it still counts.
fn about(app: App, couple: Couple<'_>, change: &Change, dated_back: bool) -> String {
    let mut said = app.who_and_when(change.by(), change.at);
    let marks = [
        (dated_back, say::DATED_BACK),
        (couple.0.is_undone(change.stamp), say::TAKEN_BACK),
        (change.undoes.is_some(), say::TAKES_BACK),
    ];
    for (is_so, mark) in marks {
        if is_so {
            said = format!("{said} · {mark}");
        }
    }
    said
}

fn one(app: App, id: RecordId, couple: Couple<'_>, set: &Set, choosable: bool) -> AnyView {
    let (name, value) = (fields::field(couple, &set.field), fields::value(set.value.as_ref()));
    let said = para("history-value", say::wrote(&name, &value));
    if !choosable {
        return said;
    }
    let stands = couple.0.get(&set.field) == set.value.as_ref();
    let end = if stands {
        el("p").class("small").text(say::STANDS).view()
    } else {
        let write = Write { field: set.field.clone(), value: set.value.clone() };
        button(Weight::Quiet, say::put_back(&value), move || {
            app.save(id, vec![write.clone()], say::was_put_back(&name), || ());
        })
    };
    block("history-choice", vec![said, end])
}
