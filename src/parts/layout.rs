//! Plain arrangements that screens are put together from.

use leptos::prelude::*;

use super::Words;
use super::el::el;

/// One after the other, without anything round them.
pub fn all(views: Vec<AnyView>) -> AnyView {
    views.into_any()
}

/// A block with a class of the style sheet.
pub fn block(class: &'static str, views: Vec<AnyView>) -> AnyView {
    el("div").class(class).children(views).view()
}

/// One under the other, with room between them.
pub fn column(views: Vec<AnyView>) -> AnyView {
    block("column", views)
}

/// Two short fields side by side where there is room.
pub fn pair(views: Vec<AnyView>) -> AnyView {
    block("pair", views)
}

/// Buttons beside each other.
pub fn row(views: Vec<AnyView>) -> AnyView {
    block("row", views)
}

/// A part of the page under a heading.
pub fn section(heading: impl Into<Words>, inside: Vec<AnyView>) -> AnyView {
    el("section").class("section").child(self::heading(heading)).children(inside).view()
}

/// The heading of a part of the page.
pub fn heading(words: impl Into<Words>) -> AnyView {
    el("h2").words(words.into()).view()
}

/// A paragraph with a class of the style sheet, which may be empty.
pub fn para(class: &'static str, words: impl Into<Words>) -> AnyView {
    el("p").class(class).words(words.into()).view()
}

/// A list, each entry of several views.
pub fn entries(class: &'static str, entry: &'static str, entries: Vec<Vec<AnyView>>) -> AnyView {
    let entries = entries.into_iter().map(|views| el("li").class(entry).children(views).view());
    el("ul").class(class).children(entries.collect()).view()
}
