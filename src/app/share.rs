//! Handing things over: the share sheet, a download, the clipboard, and a file that somebody picks.
//!
//! Nothing is sent by itself: each of these begins with a press, and the browser insists on that. What is handed over
//! is made before the press where it may take long, because a browser forgets the press after a second or two.

use js_sys::{Array, Function, Object, Promise, Reflect, Uint8Array};
use leptos::prelude::{document, set_timeout, window};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{Blob, BlobPropertyBag, DomException, Event, File, FilePropertyBag, HtmlElement, HtmlInputElement, Url};

pub const JSON: &str = "application/json";
pub const TEXT: &str = "text/plain";
pub const CSV: &str = "text/csv";
pub const CALENDAR: &str = "text/calendar";

/// So much of a file is read at a time: short enough for the page to stay awake in between.
const SLICE: f64 = 1_048_576.0;

/// What is told at the end, once.
pub type Done = Box<dyn FnOnce(bool)>;

#[wasm_bindgen]
extern "C" {
    /// The navigator as far as it can hand things over: any of this may be missing, which is an error when called.
    type Hands;

    #[wasm_bindgen(method, catch)]
    fn share(this: &Hands, data: &Object) -> Result<Promise, JsValue>;

    #[wasm_bindgen(method, catch, js_name = canShare)]
    fn can_share(this: &Hands, data: &Object) -> Result<bool, JsValue>;

    #[wasm_bindgen(method, getter)]
    fn clipboard(this: &Hands) -> JsValue;
}

/// Whether this phone has a share sheet for words.
pub fn can_share() -> bool {
    Reflect::get(&hands(), &"share".into()).is_ok_and(|it| it.is_function())
}

/// Whether this phone has a share sheet that takes files.
pub fn can_share_files() -> bool {
    takes(&file_data("", "a.txt", TEXT))
}

/// Hands words to the share sheet. `done` hears whether they were taken; without a share sheet they were not.
pub fn share_text(title: String, text: String, done: impl FnOnce(bool) + 'static) {
    let data = Object::new();
    set(&data, "title", &title.into());
    set(&data, "text", &text.into());
    share(&data, Box::new(done), None);
}

/// Hands a file to the share sheet; where that refuses this kind of file, as a text file; where it takes no files at
/// all, as a download. `done` hears whether it left: a closed share sheet is a no.
pub fn share_file(name: String, mime: &'static str, text: String, done: impl FnOnce(bool) + 'static) {
    let done: Done = Box::new(done);
    let own = file_data(&text, &name, mime);
    let plain = || file_data(&text, &as_text_file(&name), TEXT);
    let data = if takes(&own) { Some(own) } else { Some(plain()).filter(takes) };
    match data {
        Some(data) => share(&data, done, Some(Box::new(move || download(&name, mime, &text)))),
        None => done(download(&name, mime, &text)),
    }
}

/// Puts a file among the phone's downloads. False if the browser would not even begin.
pub fn download(name: &str, mime: &str, text: &str) -> bool {
    let options = BlobPropertyBag::new();
    options.set_type(mime);
    let parts = Array::of1(&text.into());
    let Ok(blob) = Blob::new_with_str_sequence_and_options(&parts, &options) else { return false };
    let Ok(address) = Url::create_object_url_with_blob(&blob) else { return false };
    let Ok(link) = document().create_element("a") else { return false };
    let _ = link.set_attribute("href", &address);
    let _ = link.set_attribute("download", name);
    link.unchecked_ref::<HtmlElement>().click();
    // The browser takes the file a moment after the press.
    set_timeout(move || drop(Url::revoke_object_url(&address)), std::time::Duration::from_secs(60));
    true
}

/// Puts words on the clipboard. `done` hears whether they are there; if not, they can still be selected by hand.
pub fn copy(text: String, done: impl FnOnce(bool) + 'static) {
    let done: Done = Box::new(done);
    let clipboard = hands().clipboard();
    let written = method(&clipboard, "writeText").and_then(|write| write.call1(&clipboard, &text.clone().into()).ok());
    spawn_local(async move {
        let copied = match written {
            Some(promise) => JsFuture::from(Promise::resolve(&promise)).await.is_ok(),
            None => false,
        };
        done(copied || copy_from_page(&text));
    });
}

/// Selects all the words of an element, for a hand to copy.
pub fn select(id: &str) {
    let selection = method(&window(), "getSelection").and_then(|get| get.call0(&window()).ok());
    if let Some(words) = document().get_element_by_id(id)
        && let Some(selection) = selection
        && let Some(select) = method(&selection, "selectAllChildren")
    {
        let _ = select.call1(&selection, &words);
    }
}

/// The file that was picked in an input, which is emptied so that the same one can be picked again.
pub fn picked(event: &Event) -> Option<File> {
    let input: HtmlInputElement = event.target()?.dyn_into().ok()?;
    let file = input.files()?.get(0);
    input.set_value("");
    file
}

/// Why a file was not read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unread {
    /// It is larger than anything that is wanted.
    TooLarge,
    /// The phone would not give it, or has no room for it.
    NotGiven,
}

/// Reads a file of at most so many bytes, whatever it is called; a larger one is not begun. `progress` hears how many
/// hundredths have been read; `done` the bytes, or why there are none.
pub fn read(
    file: File,
    most: usize,
    progress: impl Fn(u8) + 'static,
    done: impl FnOnce(Result<Vec<u8>, Unread>) + 'static,
) {
    if file.size() > most as f64 {
        return done(Err(Unread::TooLarge));
    }
    let progress: Box<dyn Fn(u8)> = Box::new(progress);
    let done: Box<dyn FnOnce(Result<Vec<u8>, Unread>)> = Box::new(done);
    spawn_local(async move { done(read_slices(&file, progress).await.ok_or(Unread::NotGiven)) });
}

/// Lets the page draw and answer before the next piece of long work.
pub async fn breathe() {
    let wait = Promise::new(&mut |done: Function, _| {
        let _ = window().set_timeout_with_callback(&done);
    });
    let _ = JsFuture::from(wait).await;
}

async fn read_slices(file: &File, progress: Box<dyn Fn(u8)>) -> Option<Vec<u8>> {
    let size = file.size();
    let mut bytes = Vec::new();
    bytes.try_reserve_exact(size as usize).ok()?;
    let mut from = 0.0;
    while from < size {
        let to = f64::min(from + SLICE, size);
        let slice = file.slice_with_f64_and_f64(from, to).ok()?;
        let buffer = JsFuture::from(slice.array_buffer()).await.ok()?;
        bytes.extend(Uint8Array::new(&buffer).to_vec());
        from = to;
        progress((from / size * 100.0) as u8);
    }
    Some(bytes)
}

/// A share sheet that was closed is a no; one that failed for another reason is followed by `otherwise`.
fn share(data: &Object, done: Done, otherwise: Option<Box<dyn FnOnce() -> bool>>) {
    let asked = hands().share(data);
    spawn_local(async move {
        let answer = match asked {
            Ok(promise) => JsFuture::from(promise).await,
            Err(error) => Err(error),
        };
        let left = match answer {
            Ok(_) => true,
            Err(error) if error.dyn_ref::<DomException>().is_some_and(|it| it.name() == "AbortError") => false,
            Err(_) => otherwise.is_some_and(|otherwise| otherwise()),
        };
        done(left);
    });
}

/// The way before there was a clipboard for pages: a field with the words, selected, and the browser told to copy.
fn copy_from_page(text: &str) -> bool {
    let (Ok(field), Some(body)) = (document().create_element("textarea"), document().body()) else { return false };
    field.set_text_content(Some(text));
    field.set_class_name("unseen");
    let _ = body.append_child(&field);
    let copied = method(&field, "select").is_some_and(|select| select.call0(&field).is_ok())
        && method(&document(), "execCommand")
            .and_then(|command| command.call1(&document(), &"copy".into()).ok())
            .is_some_and(|copied| copied.is_truthy());
    field.remove();
    copied
}

fn file_data(text: &str, name: &str, mime: &str) -> Object {
    let data = Object::new();
    let options = FilePropertyBag::new();
    options.set_type(mime);
    if let Ok(file) = File::new_with_str_sequence_and_options(&Array::of1(&text.into()), name, &options) {
        set(&data, "files", &Array::of1(&file));
    }
    data
}

fn takes(data: &Object) -> bool {
    hands().can_share(data).unwrap_or(false)
}

/// "book.json" as "book.json.txt": it says what is in it, and any import takes any name.
fn as_text_file(name: &str) -> String {
    format!("{name}.txt")
}

fn hands() -> Hands {
    window().navigator().unchecked_into()
}

fn method(of: &JsValue, name: &str) -> Option<Function> {
    Reflect::get(of, &name.into()).ok()?.dyn_into().ok()
}

fn set(data: &Object, name: &str, value: &JsValue) {
    let _ = Reflect::set(data, &name.into(), value);
}
