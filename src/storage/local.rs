//! localStorage, for a page that may not be allowed to have any.

use gloo_storage::{LocalStorage, Storage};
use serde::Serialize;
use serde::de::DeserializeOwned;

/// What stands under a key, if it is there and can be read.
pub fn get<T: DeserializeOwned>(key: &str) -> Option<T> {
    if is_allowed() { LocalStorage::get(key).ok() } else { None }
}

/// Whether anything stands under a key.
pub fn is_there(key: &str) -> bool {
    is_allowed() && matches!(LocalStorage::raw().get_item(key), Ok(Some(_)))
}

/// Keeps something under a key. False if the phone would not take it.
pub fn set<T: Serialize>(key: &str, value: &T) -> bool {
    is_allowed() && LocalStorage::set(key, value).is_ok()
}

pub fn delete(key: &str) {
    if is_allowed() {
        LocalStorage::delete(key);
    }
}

/// Every key that something stands under.
pub fn keys() -> Vec<String> {
    if !is_allowed() {
        return Vec::new();
    }
    let storage = LocalStorage::raw();
    let count = storage.length().unwrap_or_default();
    (0..count).filter_map(|at| storage.key(at).ok().flatten()).collect()
}

/// Moves what stands under a key, whatever it is, to another. False if the phone would not take it.
pub fn rename(from: &str, to: &str) -> bool {
    if !is_allowed() {
        return false;
    }
    let storage = LocalStorage::raw();
    let Ok(Some(text)) = storage.get_item(from) else { return true };
    storage.set_item(to, &text).is_ok() && storage.remove_item(from).is_ok()
}

/// The browser throws rather than answer where the page may store nothing, and the crate below panics then.
pub fn is_allowed() -> bool {
    web_sys::window().is_some_and(|window| matches!(window.local_storage(), Ok(Some(_))))
}
