//! A picture in the page, drawn anew when its figures change.
//!
//! The drawing itself MUST be an image with a text that says the same; that is for whoever draws it.

use super::Words;
use super::el::el;
use leptos::prelude::*;

/// A large picture from SVG text. The text comes from `pictures`, which escapes every word that goes into it.
pub fn picture(svg: impl Into<Words>) -> AnyView {
    el("figure").class("picture").html(svg.into()).view()
}

/// A small drawing beside words.
pub fn sketch(svg: String) -> AnyView {
    el("span").class("drawing").html(svg.into()).view()
}
