//! Something to open where it stands.
//!
//! It MUST be native, so that it opens without us and is found by searching the page; its summary MUST be 44 px high.

use super::Words;
use super::el::el;
use super::layout::block;
use leptos::prelude::*;

/// A part of the page that is folded away at first.
pub fn details(summary: impl Into<Words>, inside: AnyView) -> AnyView {
    let summary = el("summary").words(summary.into()).view();
    el("details").class("details").child(summary).child(block("details-inside", vec![inside])).view()
}

/// The same, opened from the first time that something in it wants to be seen; whoever closes it then, closes it.
pub fn details_opened(summary: impl Into<Words>, inside: AnyView, wanted: Signal<bool>) -> AnyView {
    let summary = el("summary").words(summary.into()).view();
    let was = Memo::new(move |before: Option<&bool>| before == Some(&true) || wanted.get());
    el("details")
        .class("details")
        .live_attr("open", move || was.get().then(String::new))
        .child(summary)
        .child(block("details-inside", vec![inside]))
        .view()
}
