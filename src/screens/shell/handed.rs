//! What was opened on the one of two screens that could not read it, handed on to the other that can: a couple's list
//! where files of the book come in, and a file of the book where a list is taken in.

use std::cell::RefCell;

use leptos::prelude::AnyView;

use crate::parts::el::el;

thread_local! {
    static HANDED: RefCell<Option<Vec<u8>>> = const { RefCell::new(None) };
}

/// A link to the other screen, which hands on what there is when it is pressed, and only then: what is left where it
/// was does not come up again.
pub fn link(label: &'static str, to: String, bytes: impl Fn() -> Vec<u8> + 'static) -> AnyView {
    let hand_on = move |_| HANDED.set(Some(bytes()));
    el("a").class("button quiet").attr("href", to).text(label).on("click", hand_on).view()
}

/// Takes it, once.
pub fn take() -> Option<Vec<u8>> {
    HANDED.take()
}
