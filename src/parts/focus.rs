//! Where the keys and the reader go after something else has come onto the page.
//!
//! The focus MUST be moved before anybody can tap or type again. The browser's next frame is too late: on a busy phone
//! it comes after the first letters, which were then typed into nothing, or scrolls away what a finger is on.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlElement;

/// Runs `then` once what has just been changed is in the page, and before the browser hands on the next tap or key.
pub fn once_drawn(then: impl FnOnce() + 'static) {
    // What draws is woken by now, and stands before this in the queue of what is to be done.
    spawn_local(async { then() });
}

/// Moves the focus to the first thing that `selector` finds, once it is drawn.
pub fn focus(selector: &'static str) {
    arrive(selector, false);
}

/// After another screen has come: its start is shown, and its heading has the focus, so that it is read out.
pub fn start_of_page() {
    arrive("h1", true);
}

fn arrive(selector: &'static str, at_the_top: bool) {
    once_drawn(move || {
        if at_the_top {
            window().scroll_to_with_x_and_y(0.0, 0.0);
        }
        let found = document().query_selector(selector).ok().flatten();
        if let Some(found) = found.and_then(|found| found.dyn_into::<HtmlElement>().ok()) {
            let _ = found.focus();
        }
    });
}
