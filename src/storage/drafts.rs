//! Half-typed words, kept until they are saved or thrown away. A draft is text by field name, under the name of the
//! form it was typed into. One that cannot be read is moved aside before another takes its place.
//!
//! They go to localStorage, at every key. A page that crashes loses nothing. A browser that is killed loses more: Chromium
//! writes to the disk some five seconds after the first change, and then about once a minute while a page is young (from
//! memory of its source). `tests/web/crash.spec.js` prints how much: from 2 to 55 of 58 characters were seen. What was
//! shown as saved is never lost: that is in IndexedDB.

use std::collections::BTreeMap;

use super::local;

const PREFIX: &str = "bandwright.draft.";

/// The words of one form by the names of its fields.
pub type Draft = BTreeMap<String, String>;

/// Keeps the words. False if the phone would not take them.
pub fn keep(form: &str, draft: &Draft) -> bool {
    quarantined(form) && local::set(&key(form), draft)
}

/// The words that were kept. What cannot be read is left where it is.
pub fn kept(form: &str) -> Option<Draft> {
    local::get(&key(form))
}

/// The names of all that is kept.
pub fn names() -> Vec<String> {
    let own = |key: String| Some(key.strip_prefix(PREFIX)?.to_owned());
    local::keys().into_iter().filter_map(own).collect()
}

/// Keeps words under another name from now on. False if the phone would not.
pub fn rename(from: &str, to: &str) -> bool {
    local::rename(&key(from), &key(to))
}

/// Forgets the words of a form.
pub fn forget(form: &str) {
    if quarantined(form) {
        local::delete(&key(form));
    }
}

/// Forgets the words of every form about something, by its id.
pub fn forget_about(id: &str) {
    for key in local::keys() {
        if key.starts_with("bandwright.") && key.contains(id) {
            local::delete(&key);
        }
    }
}

/// Moves words that cannot be read out of the way, if there are any. False if that failed: then they stay.
fn quarantined(form: &str) -> bool {
    let unreadable = local::is_there(&key(form)) && kept(form).is_none();
    !unreadable || local::rename(&key(form), &format!("bandwright.aside.{form}"))
}

fn key(form: &str) -> String {
    format!("{PREFIX}{form}")
}
