//! One couple under two ids: both entries side by side, to be joined, or told apart.

use crate::parts::el::{el, live};
use crate::parts::layout::{all, block, column, heading, para, row};
use leptos::prelude::*;

use crate::app::address::{Address, Part};
use crate::app::clock;
use crate::app::state::{App, app};
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::book::same as one_couple;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::page::page;
use crate::screens::shell::couple_page::{CouplePage, couple_page};
use crate::screens::shell::lower::lower;
use crate::words::harmless::harmless;
use crate::words::{book as say_book, dates, same as say};

pub fn same(id: RecordId) -> AnyView {
    let app = app();
    let CouplePage { head, .. } = couple_page(id, say::SAME, Part::Same);
    let content = move || {
        let like = app.like(id, lower);
        let joined = app.couple(id, |couple| one_couple::joined(couple.0)).unwrap_or_default();
        let joined: Vec<RecordId> = joined.into_iter().filter(|other| app.couple(*other, |_| ()).is_some()).collect();
        if like.is_empty() && joined.is_empty() {
            return para("settled", say::NOBODY);
        }
        let asked = like.into_iter().map(|other| ask(app, id, other));
        all(asked.chain(joined.into_iter().map(|other| known(app, id, other))).collect())
    };
    page(head, column(vec![live(content)]), None)
}

/// Two entries of which nobody has said yet whether they are of one couple.
fn ask(app: App, id: RecordId, other: RecordId) -> AnyView {
    let two = move || {
        let (second, writes) = one_couple::two_couples(id, other);
        app.save(second, writes, say::said_two(), || ());
    };
    // What differs within one of them would be taken over as if it were settled.
    let differs = |id| app.couple(id, |couple| couple.0.is_in_conflict()).unwrap_or(false);
    let join = match [id, other].into_iter().find(|id| differs(*id)) {
        None => button(Weight::Quiet, say::JOIN, move || app.join(id, other, lower)),
        Some(id) => link_button(Weight::Quiet, say::SETTLE_FIRST, Address::Part(id, Part::Differences).to_string()),
    };
    let choices = vec![join, button(Weight::Quiet, say::TWO, two)];
    both(app, (id, other), say::THESE_TWO, vec![para("", say::SAME_HOW), para("small", say::JOIN_HOW)], choices)
}

/// Two entries that were joined.
fn known(app: App, id: RecordId, other: RecordId) -> AnyView {
    let (kept, away) = (id.min(other), id.max(other));
    let since = app
        .couple(kept, |kept| {
            app.couple(away, |away| one_couple::take_over(kept.0, away.0, lower, clock::moment()).is_some())
        })
        .flatten()
        .unwrap_or(false);
    let mut choices = Vec::new();
    if since {
        choices.push(button(Weight::Quiet, say::TAKE_OVER, move || app.join(id, other, lower)));
    }
    choices.push(button(Weight::Quiet, say::TAKE_APART, move || app.take_apart(id, other)));
    both(app, (id, other), say::IS_JOINED, vec![para("", say::IS_JOINED_HOW)], choices)
}

fn both(
    app: App,
    (id, other): (RecordId, RecordId),
    title: &'static str,
    how: Vec<AnyView>,
    choices: Vec<AnyView>,
) -> AnyView {
    let sides = vec![side(app, say::THIS_ENTRY, id), side(app, say::OTHER_ENTRY, other)];
    let open = link_button(Weight::Quiet, say::OTHER_ENTRY, Address::Couple(other).to_string());
    let mut row_of = choices;
    row_of.push(open);
    el("section")
        .class("section difference")
        .child(heading(title))
        .child(all(how))
        .child(block("sides", sides))
        .child(row(row_of))
        .view()
}

/// What an entry is known by.
fn side(app: App, which: &'static str, id: RecordId) -> AnyView {
    let read = |couple: Couple<'_>| {
        let mut lines = vec![para("small", which), para("side-value", harmless(&say_book::names(couple)))];
        let wedding = couple.wedding().map(dates::wedding);
        let told = [wedding, Some(say_book::standing(couple)), couple.met().map(harmless)];
        lines.extend(told.into_iter().flatten().filter(|text| !text.is_empty()).map(|text| para("", text)));
        if couple.put_away().is_some() {
            lines.push(para("small", say::PUT_AWAY));
        }
        if let Some(first) = couple.0.changes().first() {
            lines.push(para("small", say::first_written(&app.who_and_when(first.by(), first.at))));
        }
        block("side", lines)
    };
    app.couple(id, read).unwrap_or_else(|| para("", ""))
}
