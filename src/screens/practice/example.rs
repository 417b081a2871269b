//! The example book: loaded and removed with one tap.

use crate::parts::el::live;
use crate::parts::layout::{block, column, para};
use leptos::prelude::*;

use super::head;
use crate::app::address::Setting;
use crate::app::state::app;
use crate::parts::button::{Weight, button};
use crate::parts::page::page;
use crate::parts::picture::sketch;
use crate::pictures::ornament;
use crate::words::{practice as say, screens};

/// The way to load them, on a Today that is empty.
pub fn load_examples() -> AnyView {
    let app = app();
    button(Weight::Quiet, screens::LOAD_EXAMPLES, move || app.load_examples())
}

pub fn example() -> AnyView {
    let app = app();
    let loaded = Memo::new(move |_| app.untouched_examples() > 0);
    let state = move || say::examples(app.untouched_examples(), app.edited_examples());
    let content = column(vec![
        block("practice-ornament", vec![sketch(ornament::two_bands().svg)]),
        para("", say::EXAMPLE_WHAT),
        para("", say::EXAMPLE_FLAGGED),
    ]);
    let action = move || {
        if loaded.get() {
            button(Weight::Primary, say::EXAMPLE_REMOVE, move || app.remove_examples())
        } else {
            button(Weight::Primary, say::EXAMPLE_LOAD, move || app.load_examples())
        }
    };
    let head = head(Setting::Example, say::EXAMPLE).subtitle(Signal::derive(state));
    page(head, content, Some(live(action)))
}
