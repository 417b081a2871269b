//! The number on the app's sign on the home screen, where the browser has one: how much is late, as of the last look.
//!
//! It is a reminder of what was seen, and no more: a closed app hears of no new day and changes nothing.

use js_sys::Promise;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::{JsFuture, spawn_local};

#[wasm_bindgen]
extern "C" {
    /// The navigator as far as it has a badge: it may be missing, which is an error when called.
    type Signs;

    #[wasm_bindgen(method, catch, js_name = setAppBadge)]
    fn set_app_badge(this: &Signs, count: u32) -> Result<Promise, JsValue>;
}

/// Shows a number; nought takes the sign away.
pub fn show(count: usize) {
    let signs: JsValue = leptos::prelude::window().navigator().into();
    let count = count.try_into().unwrap_or(u32::MAX);
    if let Ok(shown) = signs.unchecked_ref::<Signs>().set_app_badge(count) {
        // A browser that refuses it loses nothing.
        spawn_local(async { drop(JsFuture::from(shown).await) });
    }
}
