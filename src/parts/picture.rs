//! A picture in the page, drawn anew when its figures change.
//!
//! The drawing itself MUST be an image with a text that says the same; that is for whoever draws it. One that is wider
//! than its place, because the text is large, MUST be reached by keys, so that it can be moved sideways.

use super::Words;
use super::el::el;
use leptos::prelude::*;

/// A large picture from SVG text. The text comes from `pictures`, which escapes every word that goes into it.
pub fn picture(svg: impl Into<Words>) -> AnyView {
    request_animation_frame(reachable);
    el("figure").class("picture").html(svg.into()).view()
}

/// Lets the keys reach the pictures that have to be moved to be seen whole.
fn reachable() {
    // No screen has as many.
    for _ in 0..100 {
        let Ok(Some(figure)) = document().query_selector("figure.picture:not([data-looked])") else { return };
        let _ = figure.set_attribute("data-looked", "");
        if figure.scroll_width() > figure.client_width() {
            let _ = figure.set_attribute("tabindex", "0");
        }
    }
}

/// A small drawing beside words.
pub fn sketch(svg: String) -> AnyView {
    el("span").class("drawing").html(svg.into()).view()
}
