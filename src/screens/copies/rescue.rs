//! What a phone whose book does not open can still give: the book as far as it can be read, rows that cannot be read,
//! and what was typed and not saved.

use std::sync::Arc;

use leptos::prelude::*;

use crate::app::state::rescue::{Rescued, Settings, Typed};
use crate::app::state::{App, Status, app};
use crate::app::{clock, share};
use crate::archive::row::RowError;
use crate::parts::button::{Weight, button};
use crate::parts::el::{el, live, nothing, or_nothing};
use crate::parts::layout::{all, block, para, section};
use crate::storage::error::StorageError;
use crate::words::harmless::harmless;
use crate::words::{copies as say_copies, format, storage as say};

pub fn rescue() -> AnyView {
    let app = app();
    let found = RwSignal::new(None::<Arc<Rescued>>);
    // The book may open meanwhile, and the screen be gone.
    app.rescue(Box::new(move |rescued| drop(found.try_set(Some(Arc::new(rescued))))));
    let said = move || match found.get() {
        None => para("", say::RESCUE_LOOKING),
        Some(found) => all(vec![register(app, &found), book(app, &found), typed(app, found)]),
    };
    el("div").class("column").attr("role", "status").child(live(said)).view()
}

/// Where the register is all that is in the way, a new one.
fn register(app: App, found: &Rescued) -> AnyView {
    let is_damaged = |why: &RowError| !matches!(why, RowError::Newer(_));
    match app.status.get_untracked() {
        Status::Failed(StorageError::Unreadable(why)) if is_damaged(&why) => {
            let renew = |words: String, practice| button(Weight::Quiet, words, move || app.renew_register(practice));
            match found.practices.as_slice() {
                several @ [_, _, ..] => {
                    let with = |it: &Settings| {
                        let day = clock::civil(it.last_set).0;
                        let phones: Vec<String> = it.phones.iter().map(|name| harmless(name)).collect();
                        let words = say::renew_with(&phones, it.fair.as_deref().map(harmless).as_deref(), day);
                        renew(words, Some(it.practice))
                    };
                    let mut offered = vec![para("", say::RENEW_HOW), para("", say::RENEW_WHICH)];
                    offered.extend(several.iter().map(with));
                    offered.push(renew(say::RENEW_WITH_NONE.to_owned(), None));
                    block("column near", offered)
                }
                one => {
                    let practice = one.first().map(|only| only.practice);
                    all(vec![para("", say::RENEW_HOW), renew(say::RENEW.to_owned(), practice)])
                }
            }
        }
        _ => nothing(),
    }
}

fn book(app: App, found: &Arc<Rescued>) -> AnyView {
    let count = found.unreadable_rows;
    let aside = (count > 0).then(|| {
        let found = Arc::clone(found);
        let out = move || hand_out(app, "bandwright-set-aside.txt", share::TEXT, &found.unreadable);
        all(vec![para("caution", say::quarantined(count)), button(Weight::Quiet, say::RESCUE_UNREADABLE, out)])
    });
    let readable = match &found.file {
        Some(_) => {
            let found = Arc::clone(found);
            let day = format::day_sortable(app.today.get_untracked());
            let name = format!("bandwright-book-{day}.json");
            let out = move || hand_out(app, &name, share::JSON, found.file.as_deref().unwrap_or_default());
            all(vec![para("", say::RESCUE_HOW), button(Weight::Quiet, say::RESCUE_BOOK, out)])
        }
        None => nothing(),
    };
    let said = if found.couples + found.said_no + found.examples == 0 && found.file.is_none() {
        say::RESCUE_NOTHING.to_owned()
    } else {
        say::rescued(found.couples, found.said_no, found.examples)
    };
    section(say::RESCUE, vec![para("", said), readable, or_nothing(aside)])
}

fn typed(app: App, found: Arc<Rescued>) -> AnyView {
    if found.typed.is_empty() {
        return nothing();
    }
    let mut inside: Vec<AnyView> = found.typed.iter().map(one).collect();
    let text: String = found.typed.iter().filter(|typed| !typed.stays).map(as_text).collect();
    if !text.is_empty() {
        let out = move || hand_out(app, "bandwright-not-saved.txt", share::TEXT, &text);
        inside.push(button(Weight::Quiet, say::RESCUE_TYPED_OUT, out));
    }
    section(say::RESCUE_TYPED, inside)
}

fn one(typed: &Typed) -> AnyView {
    let mut said = vec![el("h3").text(about(typed)).view()];
    let line =
        |(field, words): (&String, &String)| para("", format!("{}: {}", say::typed_field(field), harmless(words)));
    said.extend(typed.words.iter().map(line));
    el("div").class("column near").children(said).view()
}

fn as_text(typed: &Typed) -> String {
    let line = |(field, words): (&String, &String)| format!("{}: {words}\n", say::typed_field(field));
    let lines: String = typed.words.iter().map(line).collect();
    format!("{}\n{lines}\n", about(typed))
}

fn about(typed: &Typed) -> String {
    typed.names.clone().unwrap_or_else(|| say::RESCUE_NOT_IN_BOOK.to_owned())
}

fn hand_out(app: App, name: &str, mime: &str, text: &str) {
    let left = share::download(name, mime, text);
    app.say(if left { say_copies::DOWNLOADED } else { say_copies::FILE_NOT_SHARED }.to_owned());
}
