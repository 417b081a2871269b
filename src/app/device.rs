//! What kind of place the app runs in: in a tab, or from the home screen; and what the screen tells of itself.

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

/// What the browser tells of the screen.
#[derive(Clone, Debug, PartialEq)]
pub struct Display {
    /// Its sides in pixels of the page, the shorter first: the same however the phone is held.
    pub screen: String,
    /// How many pixels of the screen there are to one of the page's.
    pub ratio: f64,
    /// The page is pinched larger than it is.
    pub enlarged: bool,
    /// How wide the page is.
    pub room: f64,
}

/// The screen as it is now.
pub fn display() -> Display {
    let window = window();
    let number = |of: &JsValue, name: &str| Reflect::get(of, &name.into()).ok().and_then(|it| it.as_f64());
    let part = |name: &str| Reflect::get(&window, &name.into()).unwrap_or(JsValue::UNDEFINED);
    let (screen, seen) = (part("screen"), part("visualViewport"));
    let side = |name: &str| number(&screen, name).unwrap_or_default();
    let (one, other) = (side("width"), side("height"));
    Display {
        screen: format!("{}x{}", one.min(other) as u32, one.max(other) as u32),
        ratio: window.device_pixel_ratio(),
        enlarged: number(&seen, "scale").is_some_and(|scale| (scale - 1.0).abs() > 0.001),
        room: number(&window, "innerWidth").unwrap_or_default(),
    }
}

fn navigator(name: &str) -> JsValue {
    Reflect::get(&window().navigator(), &name.into()).unwrap_or(JsValue::UNDEFINED)
}
