//! Where two phones say different things of a couple, or set different things in one practice: both side by side, with
//! who and when, until one is chosen. Of very many the first are drawn: what is settled makes room for the next.

use std::collections::BTreeSet;

use crate::parts::el::{el, live, or_nothing};
use crate::parts::layout::{all, block, column, heading, para, row};
use leptos::prelude::*;

use crate::app::address::{Address, Part, Setting};
use crate::app::state::{App, app};
use crate::book::change::Write;
use crate::book::couple::Couple;
use crate::book::field::Field;
use crate::book::id::{RecordId, Stamp};
use crate::book::merge::conflict::{Conflict, Side};
use crate::book::merge::removal::confirm_removal;
use crate::book::record::Record;
use crate::book::same;
use crate::book::value::Value;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::page::{PageHeader, page};
use crate::screens::shell::couple_page::{CouplePage, couple_page};
use crate::screens::shell::setting_page;
use crate::words::{copies as say_copies, fields, phones as say, same as say_same, screens};

/// So many differences are drawn, and of one of them so many sides.
const DRAWN: usize = 40;

/// What waits for a decision, ready to be shown.
struct Difference {
    heading: String,
    what: String,
    sides: Vec<Shown>,
    /// How many more sides there are.
    more: usize,
    /// What is chosen of the whole, where it is not one of the sides.
    choices: Vec<(String, Vec<Write>)>,
    /// Another screen on which it can be settled.
    elsewhere: Option<String>,
}

struct Shown {
    value: String,
    rest: String,
    who: String,
    /// The button that keeps this side.
    keep: Option<(String, Vec<Write>)>,
}

pub fn of_couple(id: RecordId) -> AnyView {
    let app = app();
    let CouplePage { head, .. } = couple_page(id, say::DIFFERENCES, Part::Differences);
    let all_of_them = move || app.couple(id, |couple| read(app, couple.0)).unwrap_or_default();
    differences(head, all_of_them, move |writes, said| app.save(id, writes, said, || ()))
}

pub fn of_practice() -> AnyView {
    let app = app();
    let head = setting_page::head(Setting::Differences, say::DIFFERENCES);
    let all_of_them = move || app.practice(|practice| read(app, practice.0));
    differences(head, all_of_them, move |writes, said| app.set_practice(writes, said, || ()))
}

fn differences(
    head: PageHeader,
    all_of_them: impl Fn() -> (Vec<Difference>, usize) + Send + Sync + 'static,
    save: impl Fn(Vec<Write>, String) + Copy + Send + Sync + 'static,
) -> AnyView {
    let content = move || {
        let (all_of_them, more) = all_of_them();
        if all_of_them.is_empty() {
            return para("settled", say::ALL_SETTLED);
        }
        let shown = all_of_them.into_iter().map(|difference| one(difference, save)).collect();
        all(vec![para("", say::DIFFERENCES_HOW), all(shown), and_more(more)])
    };
    page(head, column(vec![live(content)]), None)
}

fn one(of: Difference, save: impl Fn(Vec<Write>, String) + Copy + Send + Sync + 'static) -> AnyView {
    let Difference { heading: title, what, sides, more, choices, elsewhere } = of;
    let said = say::chosen(&title);
    let choose = |(label, writes): (String, Vec<Write>)| {
        let said = said.clone();
        button(Weight::Quiet, label, move || save(writes.clone(), said.clone()))
    };
    let side = |side: Shown| {
        let rest = or_nothing((!side.rest.is_empty()).then(|| para("side-rest", side.rest)));
        let keep = or_nothing(side.keep.map(choose));
        block("side", vec![para("side-value", side.value), rest, para("small", side.who), keep])
    };
    let choices: Vec<AnyView> = choices.into_iter().map(choose).collect();
    let sides = sides.into_iter().map(side).collect();
    let what = (!what.is_empty()).then(|| para("", what));
    el("section")
        .class("section difference")
        .child(heading(title))
        .maybe_child(what)
        .child(block("sides", sides))
        .child(and_more(more))
        .maybe_child((!choices.is_empty()).then(|| row(choices)))
        .maybe_child(elsewhere.map(|to| link_button(Weight::Quiet, say_same::SAME, to)))
        .view()
}

/// How many there are that are not drawn.
fn and_more(more: usize) -> AnyView {
    or_nothing((more > 0).then(|| para("small", say_copies::and_more(more))))
}

/// The first of what waits for a decision, and how much more there is.
fn read(app: App, record: &Record) -> (Vec<Difference>, usize) {
    let conflicts = record.conflicts();
    let dated_back = record.dated_back();
    let drawn = conflicts.iter().take(DRAWN);
    let drawn: Vec<_> = drawn.map(|conflict| difference(app, Couple(record), conflict, &dated_back)).collect();
    let more = conflicts.len() - drawn.len();
    (drawn, more)
}

fn difference(app: App, couple: Couple<'_>, conflict: &Conflict<'_>, dated_back: &BTreeSet<Stamp>) -> Difference {
    let shown = |value: String, side: &Side<'_>| {
        let mut who = app.who_and_when(side.by, side.at);
        if dated_back.contains(&side.source) {
            who = format!("{who} · {}", say::DATED_BACK);
        }
        Shown { value, rest: String::new(), who, keep: None }
    };
    match conflict {
        Conflict::Field { field, sides } => {
            let free = |side: &Side<'_>| matches!(side.value, Some(Value::Text(_)));
            let more = sides.len().saturating_sub(DRAWN);
            let sides = &sides[..sides.len() - more];
            let values: Vec<_> = sides.iter().map(|side| (fields::value(side.value), free(side))).collect();
            let is_readable = conflict.is_readable();
            let side = |(told, side): (say::OneSide, &Side<'_>)| {
                let write = Write { field: (*field).clone(), value: side.value.cloned() };
                let keep = is_readable.then(|| (told.keep, vec![write]));
                Shown { rest: told.rest, keep, ..shown(told.value, side) }
            };
            Difference {
                heading: fields::field(couple, field),
                what: if is_readable { String::new() } else { say::NEWER.to_owned() },
                sides: say::sides(&values).into_iter().zip(sides).map(side).collect(),
                more,
                choices: Vec::new(),
                elsewhere: None,
            }
        }
        Conflict::Removed { removal, edits } => {
            let edit = |(field, side): &(&Field, Side<'_>)| {
                shown(say::wrote(&fields::field(couple, field), &fields::value(side.value)), side)
            };
            let mut sides = vec![shown(say::TAKEN_OUT.to_owned(), removal)];
            sides.extend(edits.iter().take(DRAWN).map(edit));
            Difference {
                heading: say::GONE_BUT_EDITED.to_owned(),
                what: say::GONE_BUT_EDITED_HOW.to_owned(),
                sides,
                more: edits.len().saturating_sub(DRAWN),
                choices: vec![
                    (say::BRING_IT_BACK.to_owned(), couple.0.undo_removal(conflict)),
                    (say::LEAVE_IT_OUT.to_owned(), confirm_removal(conflict)),
                ],
                elsewhere: None,
            }
        }
        Conflict::PutAway { away, edits } => {
            let edit = |(field, side): &(&Field, Side<'_>)| {
                shown(say::wrote(&fields::field(couple, field), &fields::value(side.value)), side)
            };
            let mut sides = vec![shown(screens::PUT_AWAY.to_owned(), away)];
            sides.extend(edits.iter().take(DRAWN).map(edit));
            let again = Write { field: Field::PutAway, value: away.value.cloned() };
            let is_joined = !same::joined(couple.0).is_empty();
            let mut what = say::AWAY_BUT_EDITED_HOW.to_owned();
            if is_joined {
                what = format!("{} {what}", say::WAS_JOINED);
            }
            Difference {
                heading: say::AWAY_BUT_EDITED.to_owned(),
                what,
                elsewhere: is_joined.then(|| Address::Part(couple.0.id, Part::Same).to_string()),
                sides,
                more: edits.len().saturating_sub(DRAWN),
                choices: vec![
                    (screens::BRING_BACK.to_owned(), vec![Write::clear(Field::PutAway)]),
                    (say::KEEP_AWAY.to_owned(), vec![again]),
                ],
            }
        }
    }
}
