//! How full the phone's storage is, and whether the browser may clear it by itself.

use js_sys::Reflect;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;

/// What the browser says of the storage. None where it does not say.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Room {
    pub used_bytes: Option<f64>,
    pub quota_bytes: Option<f64>,
    pub persistent: Option<bool>,
}

/// Asks how full the storage is and whether it is persistent.
pub async fn room() -> Room {
    let Some(manager) = manager() else { return Room::default() };
    let mut room = Room::default();
    if let Ok(promise) = manager.estimate()
        && let Ok(estimate) = JsFuture::from(promise).await
    {
        room.used_bytes = number(&estimate, "usage");
        room.quota_bytes = number(&estimate, "quota");
    }
    if let Ok(promise) = manager.persisted()
        && let Ok(persisted) = JsFuture::from(promise).await
    {
        room.persistent = persisted.as_bool();
    }
    room
}

/// Asks the browser to keep the storage for good. Its answer; none where it cannot be asked.
pub async fn ask_to_persist() -> Option<bool> {
    let promise = manager()?.persist().ok()?;
    JsFuture::from(promise).await.ok()?.as_bool()
}

fn manager() -> Option<web_sys::StorageManager> {
    let navigator = web_sys::window()?.navigator();
    // Absent on pages that are not served securely.
    let present = Reflect::get(&navigator, &"storage".into()).is_ok_and(|value| !value.is_undefined());
    present.then(|| navigator.storage())
}

fn number(object: &JsValue, name: &str) -> Option<f64> {
    Reflect::get(object, &name.into()).ok()?.as_f64()
}
