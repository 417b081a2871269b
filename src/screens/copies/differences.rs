//! Where two phones say different things of a couple: both side by side, with who and when, until one is chosen.

use crate::parts::el::{el, live};
use crate::parts::lay::{all, block, column, heading, para, row};
use leptos::prelude::*;

use crate::app::address::Part;
use crate::app::state::{App, app};
use crate::book::change::Write;
use crate::book::couple::Couple;
use crate::book::field::Field;
use crate::book::id::RecordId;
use crate::book::merge::conflict::{Conflict, Side};
use crate::parts::button::{Weight, button};
use crate::parts::page::page;
use crate::screens::couple::{Whose, whose};
use crate::words::{fields, phones as say, screens};

/// What waits for a decision, ready to be shown.
struct Difference {
    heading: String,
    what: String,
    sides: Vec<Shown>,
    choices: Vec<(String, Write)>,
}

struct Shown {
    value: String,
    who: String,
}

pub fn differences(id: RecordId) -> AnyView {
    let app = app();
    let Whose { head, .. } = whose(id, say::DIFFERENCES, Part::Differences);
    let content = move || {
        let all_of_them = app.couple(id, |couple| read(app, couple)).unwrap_or_default();
        if all_of_them.is_empty() {
            return para("settled", say::ALL_SETTLED);
        }
        let shown = all_of_them.into_iter().map(|difference| one(app, id, difference)).collect();
        all(vec![para("", say::DIFFERENCES_HOW), all(shown)])
    };
    page(head, column(vec![live(content)]), None)
}

fn one(app: App, id: RecordId, of: Difference) -> AnyView {
    let Difference { heading: title, what, sides, choices } = of;
    let said = say::chosen(&title);
    let side = |side: Shown| block("side", vec![para("side-value", side.value), para("small", side.who)]);
    let choose = |(label, write): (String, Write)| {
        let said = said.clone();
        button(Weight::Quiet, label, move || app.save(id, vec![write.clone()], said.clone(), || ()))
    };
    let choices = choices.into_iter().map(choose).collect();
    let sides = sides.into_iter().map(side).collect();
    let what = (!what.is_empty()).then(|| para("", what));
    el("section")
        .class("section difference")
        .child(heading(title))
        .maybe_child(what)
        .child(block("sides", sides))
        .child(row(choices))
        .view()
}

fn read(app: App, couple: Couple<'_>) -> Vec<Difference> {
    couple.0.conflicts().iter().map(|conflict| difference(app, couple, conflict)).collect()
}

fn difference(app: App, couple: Couple<'_>, conflict: &Conflict<'_>) -> Difference {
    let dated_back = couple.0.dated_back();
    let shown = |value: String, side: &Side<'_>| {
        let mut who = app.who_and_when(side.by, side.at);
        if dated_back.contains(&side.source) {
            who = format!("{who} · {}", say::DATED_BACK);
        }
        Shown { value, who }
    };
    match conflict {
        Conflict::Field { field, sides } => Difference {
            heading: fields::field(couple, field),
            what: String::new(),
            sides: sides.iter().map(|side| shown(fields::value(side.value), side)).collect(),
            choices: sides
                .iter()
                .map(|side| {
                    let write = Write { field: (*field).clone(), value: side.value.cloned() };
                    (say::keep(&fields::value(side.value)), write)
                })
                .collect(),
        },
        Conflict::PutAway { away, edits } => {
            let edit = |(field, side): &(&Field, Side<'_>)| {
                shown(say::wrote(&fields::field(couple, field), &fields::value(side.value)), side)
            };
            let mut sides = vec![shown(screens::PUT_AWAY.to_owned(), away)];
            sides.extend(edits.iter().map(edit));
            let again = Write { field: Field::PutAway, value: away.value.cloned() };
            Difference {
                heading: say::AWAY_BUT_EDITED.to_owned(),
                what: say::AWAY_BUT_EDITED_HOW.to_owned(),
                sides,
                choices: vec![
                    (screens::BRING_BACK.to_owned(), Write::clear(Field::PutAway)),
                    (say::KEEP_AWAY.to_owned(), again),
                ],
            }
        }
    }
}
