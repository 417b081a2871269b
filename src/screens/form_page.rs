//! What every form has: its words back after a crash, its fields, and one button that saves.

use crate::parts::el::{el, maybe};
use crate::parts::lay::{all, para};
use leptos::prelude::*;

use crate::app::form::Form;
use crate::parts::button::{Weight, button};
use crate::parts::focus::focus;
use crate::parts::page::{Head, page};
use crate::words::{screens as say, storage as say_storage};

/// A page with a form. `save` is called when the button is pressed or the form is sent from the keyboard.
pub fn form_page(
    head: Head,
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
