//! Buttons, and links that look like them.
//!
//! What does something MUST be a `<button>`, what leads somewhere MUST be a link; both MUST be 44 px at least and
//! have a name in words. A page has one primary button at most.

use super::el::el;
use super::{Press, Words};
use leptos::prelude::*;

/// How much a button asks to be pressed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weight {
    /// The one thing to do next.
    Primary,
    /// One of several.
    Quiet,
    /// Hardly more than words.
    Plain,
}

fn class(weight: Weight) -> &'static str {
    match weight {
        Weight::Primary => "button primary",
        Weight::Quiet => "button quiet",
        Weight::Plain => "button plain",
    }
}

/// A button that does something.
pub fn button(weight: Weight, label: impl Into<Words>, press: impl Into<Press>) -> AnyView {
    let press = press.into();
    el("button")
        .attr("type", "button")
        .class(class(weight))
        .on("click", move |_| press.run(()))
        .words(label.into())
        .view()
}

/// A link that looks like a button.
pub fn link_button(weight: Weight, label: impl Into<Words>, href: impl Into<Words>) -> AnyView {
    el("a").class(class(weight)).words_attr("href", href.into()).words(label.into()).view()
}
