//! Plain arrangements that screens are put together from, and parts that change while they are shown.
//!
//! Each is one type of view whatever is put into it: a screen made of these adds words and calls to the app, not
//! another copy of the rendering code. That is most of what a screen weighs.

use leptos::prelude::*;

use super::Words;

/// Nothing to be seen.
pub fn nothing() -> AnyView {
    ().into_any()
}

/// One after the other, without anything round them.
pub fn all(views: Vec<AnyView>) -> AnyView {
    views.into_any()
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

/// A block with a class of the style sheet.
pub fn block(class: &'static str, views: Vec<AnyView>) -> AnyView {
    view! { <div class=class>{views}</div> }.into_any()
}

/// A part of the page under a heading.
pub fn section(heading: impl Into<Words>, inside: Vec<AnyView>) -> AnyView {
    let heading = heading.into();
    view! { <section class="section"><h2>{heading}</h2>{inside}</section> }.into_any()
}

/// A paragraph; its class may be empty.
pub fn para(class: &'static str, text: impl Into<Words>) -> AnyView {
    let text = text.into();
    view! { <p class=class>{text}</p> }.into_any()
}

/// A list of entries, each of several views.
pub fn entries(class: &'static str, entry: &'static str, entries: Vec<Vec<AnyView>>) -> AnyView {
    let entries: Vec<AnyView> =
        entries.into_iter().map(|views| view! { <li class=entry>{views}</li> }.into_any()).collect();
    view! { <ul class=class>{entries}</ul> }.into_any()
}

/// What is drawn anew whenever a signal that it reads changes.
pub fn live(draw: impl Fn() -> AnyView + Send + 'static) -> AnyView {
    drawn(Box::new(draw))
}

/// The same for what is there only sometimes.
pub fn maybe(draw: impl Fn() -> Option<AnyView> + Send + 'static) -> AnyView {
    live(move || draw().unwrap_or_else(nothing))
}

/// Boxed first, so that every live part is of one type.
fn drawn(draw: Box<dyn Fn() -> AnyView + Send>) -> AnyView {
    (move || draw()).into_any()
}
