//! The bar of places at the bottom of every screen.
//!
//! It MUST be a named `<nav>` with real links; the place one is in MUST carry `aria-current`, and be told apart by
//! more than its colour (weight, and a stroke above it).

use super::Words;
use super::el::el;
use crate::words::parts::{PartWord, part};
use leptos::prelude::*;

/// One place: its address, its name, and whether one is there.
pub struct NavLink {
    pub href: String,
    pub label: Words,
    pub here: Signal<bool>,
}

/// The bar of four places.
pub fn places(places: [NavLink; 4]) -> AnyView {
    let links = places.map(|place| {
        let here = place.here;
        let link = el("a")
            .attr("href", place.href)
            .live_attr("aria-current", move || here.get().then(|| "page".to_owned()))
            .words(place.label);
        el("li").child(link.view()).view()
    });
    let list = el("ul").children(Vec::from(links)).view();
    el("nav").class("places").attr("aria-label", part(PartWord::Places)).child(list).view()
}
