//! What kind of place the app runs in: in a tab, or from the home screen.

use js_sys::Reflect;
use leptos::prelude::window;
use wasm_bindgen::JsValue;

/// Whether it was opened from the home screen.
pub fn is_installed() -> bool {
    let displayed = window().match_media("(display-mode: standalone)").ok().flatten().is_some_and(|it| it.matches());
    displayed || navigator("standalone").is_truthy()
}

/// Whether the home screen's app would start with an empty book here: on those phones whose navigator says whether it
/// stands alone, tabs and installed apps keep their storage apart.
pub fn keeps_tabs_apart() -> bool {
    navigator("standalone").as_bool().is_some()
}

fn navigator(name: &str) -> JsValue {
    Reflect::get(&window().navigator(), &name.into()).unwrap_or(JsValue::UNDEFINED)
}
