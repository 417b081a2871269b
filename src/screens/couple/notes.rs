//! Notes: entries that add up. Each can be changed or taken out; none is written over by another.

use leptos::prelude::*;

use super::{CouplePage, couple_page};
use crate::app::address::Part;
use crate::app::clock;
use crate::app::form::Form;
use crate::app::state::app;
use crate::book::id::{ItemId, RecordId};
use crate::book::verbs;
use crate::forms::couple::note as form_of;
use crate::parts::button::{Weight, button};
use crate::parts::el::{el, maybe};
use crate::parts::layout::{all, para};
use crate::screens::shell::fields;
use crate::screens::shell::form_page::{form_page, read};
use crate::words::harmless::harmless;
use crate::words::screens as say;

pub fn notes(id: RecordId) -> AnyView {
    let app = app();
    let CouplePage { head, .. } = couple_page(id, say::NOTES, Part::Notes);
    let form = Form::draft(format!("note.{id}"), form_of::start());
    let save = move || {
        let Some(text) = read(form, form_of::read) else { return };
        let write = verbs::note(ItemId(clock::random()), Some(text));
        app.save(id, vec![write], say::saved(say::NEW_NOTE), move || {
            form.done();
            form.reset();
        });
    };
    let written = move || {
        let notes = app.couple(id, |couple| {
            couple.notes().into_iter().map(|(item, text)| (item, text.to_owned())).collect::<Vec<_>>()
        });
        let note = |(item, text): (ItemId, String)| {
            let remove = move || app.save(id, vec![verbs::note(item, None)], say::removed(say::NEW_NOTE), || ());
            el("li")
                .class("note")
                .child(para("", harmless(&text)))
                .child(button(Weight::Plain, say::REMOVE, remove))
                .view()
        };
        let notes: Vec<AnyView> = notes.unwrap_or_default().into_iter().map(note).collect();
        (!notes.is_empty()).then(|| el("ul").class("notes").children(notes).view())
    };
    let field = fields::text(form, form_of::NOTE, say::NEW_NOTE).hint(say::NEW_NOTE_HINT).lines();
    form_page(head, form, all(vec![maybe(written), field]), say::ADD_NOTE, save)
}
