//! The shell: what starts the app in a browser.
//!
//! INVARIANT: nothing here computes anything of the trade.

pub mod updates;

use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// Replaces the page's shell by the app and marks the page as ready.
pub fn start() {
    console_error_panic_hook::set_once();
    let document = leptos::tachys::dom::document();
    let Some(root) = document.get_element_by_id("app") else { return };
    root.set_inner_html("");
    leptos::mount::mount_to(root.unchecked_into(), Frame).forget();
    if let Some(html) = document.document_element() {
        let _ = html.set_attribute("data-ready", "");
    }
}

#[component]
fn Frame() -> impl IntoView {
    let ready = RwSignal::new(false);
    updates::watch(move || ready.set(true));
    view! {
        <div class="frame">
            <main class="page">
                <header class="page-head"><h1>"Bandwright"</h1></header>
                <p role="status">{move || ready.get().then_some("A new version is ready.")}</p>
                {move || {
                    let apply = move |_| updates::apply();
                    ready.get().then(|| view! { <button type="button" on:click=apply>"Use the new version"</button> })
                }}
            </main>
            <nav class="places" aria-label="Places">
                <ul>
                    <li><a href="#/today">"Today"</a></li>
                    <li><a href="#/couples">"Couples"</a></li>
                    <li><a href="#/bench">"Bench"</a></li>
                    <li><a href="#/practice">"Practice"</a></li>
                </ul>
            </nav>
        </div>
    }
}
