//! Half-typed words, kept until they are saved or thrown away. A draft is text by field name, under the name of the
//! form it was typed into.
//!
//! They go to localStorage, which is written at once as far as a crashed page is concerned, and some seconds later
//! as far as a killed browser is.

use std::collections::BTreeMap;

use gloo_storage::{LocalStorage, Storage};

/// The words of one form by the names of its fields.
pub type Draft = BTreeMap<String, String>;

fn key(form: &str) -> String {
    format!("bandwright.draft.{form}")
}

/// Keeps the words. False if the phone would not take them.
pub fn keep(form: &str, draft: &Draft) -> bool {
    LocalStorage::set(key(form), draft).is_ok()
}

/// The words that were kept. What cannot be read is left where it is.
pub fn kept(form: &str) -> Option<Draft> {
    LocalStorage::get(key(form)).ok()
}

/// Forgets the words of a form.
pub fn forget(form: &str) {
    LocalStorage::delete(key(form));
}
