//! Where the keys and the reader go after something else has come onto the page.
//!
//! The focus MUST be moved before anybody can tap or type again. The browser's next frame is too late: on a busy phone
//! it comes after the first letters, which were then typed into nothing, or scrolls away what a finger is on.

use leptos::prelude::*;
use leptos::task::tick;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlElement;

/// Runs `then` once what has just been changed is in the page, and before the browser hands on the next tap or key.
pub fn once_drawn(then: impl FnOnce() + 'static) {
    spawn_local(async {
        tick().await;
        then();
    });
}

/// Moves the focus to the first thing that `selector` finds, once it is drawn.
pub fn focus(selector: &'static str) {
    once_drawn(move || move_to(selector));
}

/// After another screen has come: its start is shown, and its heading has the focus, so that it is read out.
pub fn start_of_page() {
    once_drawn(|| {
        if let Some(window) = web_sys::window() {
            window.scroll_to_with_x_and_y(0.0, 0.0);
        }
        move_to("h1");
    });
}

fn move_to(selector: &str) {
    let found = document().query_selector(selector).ok().flatten();
    if let Some(found) = found.and_then(|found| found.dyn_into::<HtmlElement>().ok()) {
        let _ = found.focus();
    }
}
