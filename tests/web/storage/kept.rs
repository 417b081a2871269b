//! Half-typed words and preferences, in localStorage.

use super::unique;
use bandwright::storage::{drafts, preferences};
use js_sys::Function;
use wasm_bindgen::JsValue;
use wasm_bindgen_test::wasm_bindgen_test;

fn local() -> web_sys::Storage {
    web_sys::window().unwrap().local_storage().unwrap().unwrap()
}

#[wasm_bindgen_test]
fn half_typed_words_are_kept_until_they_are_forgotten() {
    let form = unique();
    assert_eq!(drafts::kept(&form), None);
    let words: drafts::Draft =
        [("name", "In"), ("notes", "💍 \"quoted\"\n\u{0}"), ("empty", "")].map(|(k, v)| (k.into(), v.into())).into();
    assert!(drafts::keep(&form, &words));
    assert_eq!(drafts::kept(&form), Some(words));
    assert_eq!(drafts::kept(&unique()), None);
    drafts::forget(&form);
    assert_eq!(drafts::kept(&form), None);
}

#[wasm_bindgen_test]
fn words_that_cannot_be_read_are_left_and_later_moved_aside() {
    let form = unique();
    let key = format!("bandwright.draft.{form}");
    local().set_item(&key, "{\"name\": 7").unwrap();
    assert_eq!(drafts::kept(&form), None);
    assert_eq!(local().get_item(&key).unwrap().as_deref(), Some("{\"name\": 7"), "reading leaves them");
    let words: drafts::Draft = [("name".to_owned(), "Ines".to_owned())].into();
    assert!(drafts::keep(&form, &words));
    assert_eq!(drafts::kept(&form), Some(words));
    let aside = format!("bandwright.aside.{form}");
    assert_eq!(local().get_item(&aside).unwrap().as_deref(), Some("{\"name\": 7"));
    // Forgetting does not lose them either.
    let form = unique();
    local().set_item(&format!("bandwright.draft.{form}"), "[]").unwrap();
    drafts::forget(&form);
    assert_eq!(local().get_item(&format!("bandwright.aside.{form}")).unwrap().as_deref(), Some("[]"));
}

#[wasm_bindgen_test]
fn preferences_are_kept() {
    local().remove_item("bandwright.theme").unwrap();
    assert_eq!(preferences::theme(), "system");
    assert!(preferences::keep_theme("dark"));
    assert_eq!(preferences::theme(), "dark");
    local().set_item("bandwright.theme", "{").unwrap();
    assert_eq!(preferences::theme(), "system");
    local().remove_item("bandwright.theme").unwrap();
    let calculator = unique();
    assert_eq!(preferences::last_query(&calculator), None);
    preferences::keep_last_query(&calculator, "read=M½&gauge=3");
    assert_eq!(preferences::last_query(&calculator).as_deref(), Some("read=M½&gauge=3"));
}

#[wasm_bindgen_test]
fn a_phone_that_takes_no_words_says_so() {
    let run = |body: &str| Function::new_no_args(body).call0(&JsValue::NULL).unwrap();
    let words = drafts::Draft::new();
    // Full.
    run("self.kept = Storage.prototype.setItem;
         Storage.prototype.setItem = () => { throw new DOMException('no room', 'QuotaExceededError'); };");
    let full = (drafts::keep("full", &words), preferences::keep_theme("dark"));
    run("Storage.prototype.setItem = self.kept;");
    assert_eq!(full, (false, false));
    // Not allowed at all: the browser throws as soon as it is asked for the storage.
    run("self.own = Object.getOwnPropertyDescriptor(window, 'localStorage');
         Object.defineProperty(window, 'localStorage', { configurable: true,
         get() { throw new DOMException('denied', 'SecurityError'); } });");
    let denied = (drafts::keep("denied", &words), drafts::kept("denied"), preferences::theme());
    drafts::forget("denied");
    preferences::keep_last_query("denied", "x");
    run("Object.defineProperty(window, 'localStorage', self.own);");
    assert_eq!(denied, (false, None, "system".to_owned()));
    assert!(drafts::keep("allowed", &words));
    drafts::forget("allowed");
}
