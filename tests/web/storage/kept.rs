//! Half-typed words and preferences, in localStorage.

use super::unique;
use bandwright::storage::typed::{self, Others};
use bandwright::storage::{drafts, preferences};
use js_sys::{Function, Promise};
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

fn words(text: &str) -> drafts::Draft {
    [("note".to_owned(), text.to_owned())].into()
}

#[wasm_bindgen_test]
async fn each_page_keeps_its_own_words_of_a_form() {
    let form = unique();
    let theirs = format!("{form}~0123456789abcdef");
    assert!(drafts::keep(&theirs, &words("theirs")));
    // The other page is open: it holds the lock under its mark until it is told to let go.
    let held = Function::new_no_args(
        "return new Promise((is_held) => navigator.locks.request('bandwright.page.0123456789abcdef', () => {
           is_held();
           return new Promise((done) => (self.close_page = done));
         }));",
    );
    let held: Promise = held.call0(&JsValue::NULL).unwrap().into();
    wasm_bindgen_futures::JsFuture::from(held).await.unwrap();
    assert!(typed::is_elsewhere(&form));
    let Others::Open(page) = typed::others(&form).await else { panic!("the other page is open") };
    assert!(page.has_words());
    assert_eq!(typed::kept(&form), None);
    assert!(typed::keep(&form, &words("ours")));
    assert_eq!((typed::kept(&form), drafts::kept(&theirs)), (Some(words("ours")), Some(words("theirs"))));
    typed::forget(&form);
    assert_eq!((typed::kept(&form), drafts::kept(&theirs)), (None, Some(words("theirs"))));
    // It is gone: what it has left is this page's now, and nothing is left over.
    Function::new_no_args("self.close_page()").call0(&JsValue::NULL).unwrap();
    page.clone().is_gone().await;
    assert_eq!(typed::others(&form).await, Others::Left(words("theirs")));
    assert_eq!(typed::kept(&form), Some(words("theirs")));
    assert!(!page.has_words() && !typed::is_elsewhere(&form));
    typed::forget(&form);
    assert_eq!(typed::others(&form).await, Others::Nothing);
}

#[wasm_bindgen_test]
async fn words_of_an_earlier_version_and_of_several_pages_come_back_one_after_the_other() {
    let form = unique();
    for (name, text) in [(form.clone(), "old"), (format!("{form}~aa"), "one"), (format!("{form}~bb"), "two")] {
        assert!(drafts::keep(&name, &words(text)));
    }
    let mut back = Vec::new();
    while let Others::Left(left) = typed::others(&form).await {
        assert_eq!(typed::kept(&form), Some(left.clone()));
        // As long as this page has words of its own, the others wait.
        assert_eq!(typed::others(&form).await, Others::Nothing);
        back.push(left["note"].clone());
        typed::forget(&form);
    }
    back.sort();
    assert_eq!(back, ["old", "one", "two"]);
}

#[wasm_bindgen_test]
fn words_that_the_phone_does_not_take_last_as_long_as_the_page() {
    let form = unique();
    let run = |body: &str| Function::new_no_args(body).call0(&JsValue::NULL).unwrap();
    run("self.kept = Storage.prototype.setItem;
         Storage.prototype.setItem = () => { throw new DOMException('no room', 'QuotaExceededError'); };");
    let kept = typed::keep(&form, &words("half"));
    run("Storage.prototype.setItem = self.kept;");
    assert!(!kept);
    assert_eq!(typed::kept(&form), Some(words("half")));
    assert!(typed::all().contains(&(form.clone(), words("half"))));
    typed::forget(&form);
    assert_eq!(typed::kept(&form), None);
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
