//! What every form has: its words back after a crash, its fields, and one button that saves. And what a form about a
//! record does: it saves what was changed in it since it was opened, and is left then.

use crate::parts::el::{el, maybe};
use crate::parts::layout::{all, para};
use leptos::prelude::*;

use crate::app::form::Form;
use crate::app::seen::Seen;
use crate::app::state::{App, app};
use crate::book::change::Write;
use crate::book::id::RecordId;
use crate::forms::{Complaints, Texts};
use crate::parts::button::{Weight, button};
use crate::parts::focus::focus;
use crate::parts::page::{PageHeader, page};
use crate::words::{screens as say, storage as say_storage};

/// A page with a form. `save` is called when the button is pressed or the form is sent from the keyboard.
pub fn form_page(
    head: PageHeader,
    form: Form,
    fields: AnyView,
    label: &'static str,
    save: impl Fn() + Copy + Send + Sync + 'static,
) -> AnyView {
    let content = el("form")
        .class("column")
        .attr("novalidate", "")
        .on("submit", move |event| {
            event.prevent_default();
            save();
        })
        .child(restored(form))
        .child(fields)
        .child(
            el("button")
                .attr("type", "submit")
                .class("unseen")
                .attr("tabindex", "-1")
                .attr("aria-hidden", "true")
                .view(),
        )
        .view();
    page(head, content, Some(button(Weight::Primary, label, save)))
}

/// A form about a couple, or about the jeweller's own settings. Copy it freely: it is a handle.
#[derive(Clone, Copy)]
pub struct RecordForm {
    pub form: Form,
    app: App,
    /// None for the settings.
    couple: Option<RecordId>,
    seen: Seen,
    leave: Callback<()>,
}

impl RecordForm {
    /// A form about a couple. `name` is that of its draft, `leave` is what comes when its work is done.
    pub fn of_couple(id: RecordId, name: String, start: Texts, leave: Callback<()>) -> RecordForm {
        let app = app();
        RecordForm { form: Form::draft(name, start), app, couple: Some(id), seen: Seen::couple(app, id), leave }
    }

    /// A form about the jeweller's own settings.
    pub fn of_practice(name: String, start: Texts, leave: Callback<()>) -> RecordForm {
        let app = app();
        RecordForm { form: Form::draft(name, start), app, couple: None, seen: Seen::practice(app), leave }
    }

    /// What was typed, as [`read`] has it.
    pub fn read<T>(self, typed: impl FnOnce(&Texts) -> Result<T, Complaints>) -> Option<T> {
        read(self.form, typed)
    }

    /// Saves what of these writes was changed, says so, and leaves.
    pub fn save(self, writes: Vec<Write>, said: String) {
        self.write(self.seen.changed(writes), said);
    }

    /// Saves these writes whatever stood when the form was opened, says so, and leaves.
    pub fn write(self, writes: Vec<Write>, said: String) {
        let then = move || {
            self.form.done();
            let _ = self.leave.try_run(());
        };
        match self.couple {
            Some(id) => self.app.save(id, writes, said, then),
            None => self.app.set_practice(writes, said, then),
        }
    }

    /// A button that does this at once, and leaves.
    pub fn button(self, label: &'static str, writes: Vec<Write>, said: String) -> AnyView {
        button(Weight::Quiet, label, move || self.write(writes.clone(), said.clone()))
    }

    /// A button that takes out what the form is about.
    pub fn remove(self, writes: Vec<Write>, name: &str) -> AnyView {
        self.button(say::REMOVE, writes, say::removed(name))
    }
}

/// What was typed, unless something has to be put right: then that is said beside its field, and the first is shown.
pub fn read<T>(form: Form, read: impl FnOnce(&Texts) -> Result<T, Complaints>) -> Option<T> {
    let read = form.checked(untrack(|| read(&form.texts())));
    if read.is_none() {
        show_first_complaint();
    }
    read
}

/// Says that words of an earlier visit are back, and offers to throw them away; and what else is to be known about
/// where the words are.
pub fn restored(form: Form) -> AnyView {
    all(vec![
        maybe(move || {
            form.restored.get().then(|| {
                el("div")
                    .class("restored")
                    .attr("role", "status")
                    .child(para("", say::DRAFT_BACK))
                    .child(button(Weight::Plain, say::DRAFT_DISCARD, move || form.reset()))
                    .view()
            })
        }),
        maybe(move || form.elsewhere.get().then(|| said(say_storage::TYPED_ELSEWHERE))),
        maybe(move || form.unkept.get().then(|| said(say_storage::TYPED_UNKEPT))),
    ])
}

fn said(words: &'static str) -> AnyView {
    el("div").class("restored").attr("role", "status").child(para("", words)).view()
}

/// Moves to the first field that something is wrong with.
pub fn show_first_complaint() {
    focus("[aria-invalid='true']");
}
