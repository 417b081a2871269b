//! A picture in the page, drawn anew when its figures change.
//!
//! The drawing itself MUST be an image with a text that says the same; that is for whoever draws it.

use leptos::prelude::*;

/// A large picture from SVG text. The text comes from `pictures`, which escapes every word that goes into it.
pub fn picture(svg: impl Into<Signal<String>>) -> AnyView {
    let svg = svg.into();
    view! { <figure class="picture" inner_html=move || svg.get()></figure> }.into_any()
}

/// A small drawing beside words.
pub fn sketch(svg: String) -> AnyView {
    view! { <span class="drawing" inner_html=svg></span> }.into_any()
}
