//! Half-typed words of forms. Each open page keeps its own, under its own mark: two tabs with the same form write over
//! nothing of each other's. What a page that is gone has left comes back in the next one that opens the form.
//!
//! A page shows that it lives by a lock of the browser's under its mark. Where there are no such locks every other
//! page counts as gone, and tabs share their words.

use std::cell::RefCell;
use std::collections::BTreeMap;

use js_sys::{Array, Function, Promise, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

use super::drafts::{self, Draft};

/// What other pages have of a form's words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Others {
    /// Nothing.
    Nothing,
    /// A page that is gone has left these, which are this page's now.
    Left(Draft),
    /// A page that is open has the form too, with words of its own.
    Open(Page),
}

/// Another page with words in a form.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Page(String);

impl Page {
    /// Whether its words are still there: they go when it saves them.
    pub fn has_words(&self) -> bool {
        drafts::kept(&self.0).is_some()
    }

    /// Waits until the page is gone.
    pub async fn is_gone(self) {
        if let (Some((locks, request)), Some((_, page))) = (locks("request"), self.0.split_once('~'))
            && let Ok(promise) = request.call2(&locks, &lock(page).into(), &Closure::once_into_js(|_: JsValue| ()))
        {
            let _ = JsFuture::from(Promise::from(promise)).await;
        }
    }
}

thread_local! {
    /// The mark of this page.
    static PAGE: String = mark();
    /// Words that the phone would not take: they last as long as the page.
    static HELD: RefCell<BTreeMap<String, Draft>> = const { RefCell::new(BTreeMap::new()) };
}

/// Keeps the words of a form. False if the phone would not take them: then they last as long as this page.
pub fn keep(form: &str, words: &Draft) -> bool {
    let kept = drafts::keep(&own(form), words);
    HELD.with_borrow_mut(|held| match kept {
        true => drop(held.remove(form)),
        false => drop(held.insert(form.to_owned(), words.clone())),
    });
    kept
}

/// The words that this page has kept of a form.
pub fn kept(form: &str) -> Option<Draft> {
    let held = HELD.with_borrow(|held| held.get(form).cloned());
    held.or_else(|| drafts::kept(&own(form)))
}

/// Forgets the words of a form that this page has kept.
pub fn forget(form: &str) {
    HELD.with_borrow_mut(|held| held.remove(form));
    drafts::forget(&own(form));
}

/// Forgets words under the name that [`all`] gives them, whichever page has kept them.
pub fn forget_kept(name: &str) {
    HELD.with_borrow_mut(|held| held.remove(name));
    drafts::forget(name);
}

/// Whether another page has, or had, words in a form that were not saved: known without asking the browser.
pub fn is_elsewhere(form: &str) -> bool {
    !elsewhere(form).is_empty()
}

/// What other pages have of a form's words. What a page that is gone has left is taken over, unless this page has words
/// of its own by then: they wait for the next time.
pub async fn others(form: &str) -> Others {
    let open = open_pages().await;
    let is_open = |name: &String| name.split_once('~').is_some_and(|(_, page)| open.iter().any(|it| it == page));
    let (open, left): (Vec<String>, Vec<String>) = elsewhere(form).into_iter().partition(is_open);
    if kept(form).is_none() {
        for name in left {
            if let Some(words) = drafts::kept(&name)
                && drafts::rename(&name, &own(form))
            {
                return Others::Left(words);
            }
        }
    }
    open.into_iter().next().map_or(Others::Nothing, |name| Others::Open(Page(name)))
}

/// The name under which words keep what their field held when they were begun.
pub fn begun_with(field: &str) -> String {
    format!("{field}{BEGUN}")
}

/// All that was typed and not saved, in whatever page, by the names of the forms.
pub fn all() -> Vec<(String, Draft)> {
    let mut all: Vec<(String, Draft)> =
        drafts::names().into_iter().filter_map(|name| Some((name.clone(), drafts::kept(&name)?))).collect();
    HELD.with_borrow(|held| all.extend(held.iter().map(|(form, words)| (form.clone(), words.clone()))));
    all.iter_mut().for_each(|(_, words)| words.retain(|field, _| !field.ends_with(BEGUN)));
    all
}

/// The names of what pages other than this one have kept of a form; one without a mark is of no page.
fn elsewhere(form: &str) -> Vec<String> {
    let marked = format!("{form}~");
    let is_other = |name: &String| name == form || (name.starts_with(&marked) && *name != own(form));
    drafts::names().into_iter().filter(is_other).collect()
}

fn own(form: &str) -> String {
    PAGE.with(|page| format!("{form}~{page}"))
}

/// A mark that no other page has, and the lock under it, which is held until the page is gone.
fn mark() -> String {
    let page: String = (0..4).map(|_| format!("{:04x}", (js_sys::Math::random() * 65536.0) as u32)).collect();
    if let Some((locks, request)) = locks("request") {
        let hold = Closure::once_into_js(|_: JsValue| Promise::new(&mut |_, _| ()));
        let _ = request.call2(&locks, &lock(&page).into(), &hold);
    }
    page
}

/// The marks of the pages that are open.
async fn open_pages() -> Vec<String> {
    let Some((locks, query)) = locks("query") else { return Vec::new() };
    let asked = query.call0(&locks).and_then(|promise| promise.dyn_into::<Promise>());
    let Ok(promise) = asked else { return Vec::new() };
    let Ok(answer) = JsFuture::from(promise).await else { return Vec::new() };
    let held: Array = Reflect::get(&answer, &"held".into()).unwrap_or_default().dyn_into().unwrap_or_default();
    let name = |lock: JsValue| Reflect::get(&lock, &"name".into()).ok()?.as_string();
    held.iter().filter_map(name).filter_map(|name| Some(name.strip_prefix(LOCK)?.to_owned())).collect()
}

/// No field's name ends so.
const BEGUN: &str = "~begun";
const LOCK: &str = "bandwright.page.";

fn lock(page: &str) -> String {
    format!("{LOCK}{page}")
}

/// The browser's locks and one of their functions, where there are any.
fn locks(function: &str) -> Option<(JsValue, Function)> {
    let locks = Reflect::get(&web_sys::window()?.navigator(), &"locks".into()).ok()?;
    let function = Reflect::get(&locks, &function.into()).ok()?.dyn_into().ok()?;
    Some((locks, function))
}
