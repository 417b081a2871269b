//! The bar of places at the bottom of every screen.
//!
//! It MUST be a named `<nav>` with real links; the place one is in MUST carry `aria-current`, and be told apart by
//! more than its colour (weight, and a stroke above it).

use super::Words;
use crate::words::parts::{PartWord, part};
use leptos::prelude::*;

/// One place: its address, its name, and whether one is there.
pub struct Place {
    pub href: String,
    pub label: Words,
    pub here: Signal<bool>,
}

/// The bar of four places.
pub fn places(places: [Place; 4]) -> AnyView {
    let links = places.map(|place| {
        let here = place.here;
        let current = move || here.get().then_some("page");
        view! { <li><a href=place.href aria-current=current>{move || place.label.get()}</a></li> }.into_any()
    });
    view! { <nav class="places" aria-label=part(PartWord::Places)><ul>{Vec::from(links)}</ul></nav> }.into_any()
}
