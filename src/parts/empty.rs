//! What stands where nothing is yet: a small drawing, what will be here, and what to do.
//!
//! The drawing MUST be hidden from ears: the words say it all.

use super::Words;
use super::el::el;
use super::layout::para;
use leptos::prelude::*;

/// An empty place: a drawing, words, and what to do if there is something.
pub fn empty(drawing: AnyView, text: impl Into<Words>, action: Option<AnyView>) -> AnyView {
    el("div").class("empty").child(drawing).child(para("", text)).maybe_child(action).view()
}
