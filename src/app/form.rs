//! What is being typed: one text and at most one complaint a field. Every keystroke is kept, for a couple's form as a
//! draft, for a calculator in its address.

use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::address::{Address, Calculator, Query, with_query};
use super::route;
use crate::forms::{Complaints, Key, Reader, Texts};
use crate::parts::choice::Chosen;
use crate::storage::drafts::Draft;
use crate::storage::preferences;
use crate::storage::typed::{self, Others, Page};
use crate::words::complaint::complaints;
use crate::words::storage::CHANGED_MEANWHILE;

/// A form. Copy it freely: it is a handle.
#[derive(Clone, Copy)]
pub struct Form {
    entries: StoredValue<Vec<Entry>>,
    keep: StoredValue<Keep>,
    /// The name of its draft. It outlives the screen, which may be left before what was typed is saved.
    draft: Option<&'static str>,
    /// Words of an earlier visit were found and put back.
    pub restored: RwSignal<bool>,
    /// The form is open in another tab too, with words of its own.
    pub elsewhere: RwSignal<bool>,
    /// The phone does not take the words: they last as long as the page.
    pub unkept: RwSignal<bool>,
}

#[derive(Clone)]
struct Entry {
    name: &'static str,
    start: String,
    text: RwSignal<String>,
    complaint: RwSignal<Option<String>>,
}

#[derive(Clone)]
enum Keep {
    Draft,
    Address { calculator: Calculator, fixed: Query },
}

/// A field and what it starts with.
pub type Start = (&'static str, String);

impl Form {
    /// A form whose words are kept as a draft until [`Form::done`]. `name` says which form of which couple it is.
    pub fn draft(name: String, start: Texts) -> Form {
        let name: &'static str = Box::leak(name.into_boxed_str());
        let form = Form { draft: Some(name), ..Form::new(start.into_pairs(), Keep::Draft) };
        if let Some(kept) = typed::kept(name) {
            form.restore(&kept);
        } else {
            form.look_elsewhere(name);
        }
        Effect::new(move || {
            if form.is_touched() {
                let words = form.entries.with_value(|entries| {
                    // What was not typed in is not kept: it may have been changed elsewhere when the words come back.
                    let mut words = Draft::new();
                    for entry in entries {
                        let text = entry.text.get();
                        if text != entry.start {
                            words.insert(typed::begun_with(entry.name), entry.start.clone());
                            words.insert(entry.name.to_owned(), text);
                        }
                    }
                    words
                });
                form.unkept.set(!typed::keep(name, &words));
            } else {
                typed::forget(name);
            }
        });
        form
    }

    /// A form whose words live in the address. What the address says comes before what the form would start with.
    /// `fixed` is what the address also says and nobody types: the couple and the wearer. Without a couple the
    /// calculator remembers its last entries. Names that somebody gives a thing stay out of the address.
    pub fn address(calculator: Calculator, fixed: Query, asked: &Query, start: Vec<Start>) -> Form {
        let remember = fixed.is_empty();
        let form = Form::new(start, Keep::Address { calculator, fixed });
        form.entries.with_value(|entries| {
            for entry in entries {
                if let Some((_, text)) = asked.iter().find(|(name, _)| name == entry.name) {
                    entry.text.set(text.clone());
                }
            }
        });
        Effect::new(move |before: Option<String>| {
            let asked = form.asked(true);
            if before.as_ref().is_some_and(|before| *before != asked) {
                if remember {
                    preferences::keep_last_query(
                        calculator.code(),
                        asked.split_once('?').map_or("", |(_, query)| query),
                    );
                }
                route::write_soon(move || form.write_address());
            }
            asked
        });
        form
    }

    /// Every text as it is typed now. Whoever asks hears of a change to any of them.
    pub fn texts(self) -> Texts {
        self.entries.with_value(|entries| Texts::of(entries.iter().map(|it| (it.name, it.text.get())).collect()))
    }

    /// The text of a field. A name that the form does not have is a fault of the screen and reads as empty.
    pub fn text(self, name: impl AsRef<str>) -> RwSignal<String> {
        self.entry(name.as_ref()).map_or_else(|| RwSignal::new(String::new()), |entry| entry.text)
    }

    /// What is shown as chosen in a field that follows something else as long as its own text is empty: the first choice
    /// in it is its text from then on.
    pub fn following(self, name: &str, otherwise: Signal<String>) -> Chosen {
        let text = self.text(name);
        let shown = move || text.with(|text| if text.is_empty() { otherwise.get() } else { text.clone() });
        Chosen { shown: Signal::derive(shown), ..Chosen::from(text) }
    }

    /// The complaint about a field.
    pub fn complaint(self, name: &str) -> RwSignal<Option<String>> {
        self.entry(name).map_or_else(|| RwSignal::new(None), |entry| entry.complaint)
    }

    /// Hands on what was read of the whole form; what has to be put right is said beside each field, and of the others
    /// nothing.
    pub fn checked<T>(self, read: Result<T, Complaints>) -> Option<T> {
        let said = read.as_ref().err().map(complaints).unwrap_or_default();
        let _ = self.entries.try_with_value(|entries| {
            for entry in entries {
                let of_entry = said.iter().find(|(name, _)| *name == entry.name);
                entry.complaint.set(of_entry.map(|(_, sentence)| sentence.clone()));
            }
        });
        read.ok()
    }

    /// Looks at one field as it is left: what has to be put right in it is said beside it, and of the others nothing.
    pub fn look_at<T>(self, key: Key, read: impl FnOnce(&mut Reader<'_>, Key) -> Option<T>) {
        let texts = untrack(|| self.texts());
        let mut reader = Reader::new(&texts);
        let _ = read(&mut reader, key);
        let said = complaints(&reader.complaints()).into_iter().find(|(name, _)| *name == key.name());
        self.complaint(key.name()).set(said.map(|(_, sentence)| sentence));
    }

    /// Whether anything differs from what the form started with.
    pub fn is_touched(self) -> bool {
        // Every text is read, so that whoever asks hears of a change to any of them.
        self.entries.with_value(|entries| {
            entries.iter().filter(|entry| entry.text.with(|text| *text != entry.start)).count() > 0
        })
    }

    /// Whether its screen is gone: what is saved meanwhile must not ask it for anything.
    pub fn is_left(self) -> bool {
        self.restored.is_disposed()
    }

    /// Throws away what was typed.
    pub fn reset(self) {
        // The screen may have been left while its words were saved.
        let _ = self.entries.try_with_value(|entries| {
            for entry in entries {
                entry.text.set(entry.start.clone());
                entry.complaint.set(None);
            }
            self.restored.set(false);
        });
    }

    /// What some fields start with from now on: what is kept has changed meanwhile.
    pub fn start_with(self, start: &[Start]) {
        let _ = self.entries.try_update_value(|entries| {
            for (name, text) in start {
                if let Some(entry) = entries.iter_mut().find(|entry| entry.name == *name) {
                    entry.start = text.clone();
                }
            }
        });
    }

    /// The words are saved: the draft is not needed any more.
    pub fn done(self) {
        if let Some(name) = self.draft {
            typed::forget(name);
        }
    }

    fn new(start: Vec<Start>, keep: Keep) -> Form {
        let entry = |(name, start): Start| Entry {
            name,
            text: RwSignal::new(start.clone()),
            start,
            complaint: RwSignal::new(None),
        };
        Form {
            entries: StoredValue::new(start.into_iter().map(entry).collect()),
            keep: StoredValue::new(keep),
            draft: None,
            restored: RwSignal::new(false),
            elsewhere: RwSignal::new(false),
            unkept: RwSignal::new(false),
        }
    }

    /// Brings words back that a page has left which is gone; of one that is still open it says that it has some, and
    /// waits for them. What is typed there reaches this page a moment later: it looks again then.
    fn look_elsewhere(self, name: &'static str) {
        let page = StoredValue::new(None::<Page>);
        let is_looking = StoredValue::new(false);
        let has_words = move || page.try_with_value(|page| page.as_ref().is_some_and(Page::has_words)) == Some(true);
        let look = move || {
            if is_looking.get_value() || !typed::is_elsewhere(name) {
                return;
            }
            is_looking.set_value(true);
            spawn_local(async move {
                loop {
                    let others = typed::others(name).await;
                    match others {
                        Others::Nothing => break,
                        Others::Left(words) => break self.restore(&words),
                        Others::Open(other) => {
                            page.try_set_value(Some(other.clone()));
                            let _ = self.elsewhere.try_set(has_words());
                            other.is_gone().await;
                        }
                    }
                    // The screen may have been left meanwhile: then the words wait for the next time.
                    if self.elsewhere.is_disposed() {
                        return;
                    }
                }
                is_looking.try_set_value(false);
                let _ = self.elsewhere.try_set(has_words());
            });
        };
        let heard = window_event_listener_untyped("storage", move |_| {
            look();
            let _ = self.elsewhere.try_set(has_words());
        });
        on_cleanup(move || heard.remove());
        look();
    }

    /// Puts words back that were typed before.
    fn restore(self, kept: &Draft) {
        let _ = self.entries.try_with_value(|entries| {
            for entry in entries {
                if let Some(text) = kept.get(entry.name).filter(|text| **text != entry.start) {
                    entry.text.set(text.clone());
                    self.restored.set(true);
                    let begun = kept.get(&typed::begun_with(entry.name));
                    if begun.is_some_and(|begun| *begun != entry.start) {
                        entry.complaint.set(Some(CHANGED_MEANWHILE.to_owned()));
                    }
                }
            }
        });
    }

    fn entry(self, name: &str) -> Option<Entry> {
        self.entries.with_value(|entries| entries.iter().find(|entry| entry.name == name).cloned())
    }

    /// The address with what is asked, with or without the words that may name somebody.
    fn asked(self, with_names: bool) -> String {
        let Keep::Address { calculator, fixed } = self.keep.get_value() else { return String::new() };
        let mut query = fixed;
        self.entries.with_value(|entries| {
            for entry in entries {
                let text = entry.text.get();
                if text != entry.start && (with_names || !entry.name.ends_with("-name")) {
                    query.push((entry.name.to_owned(), text));
                }
            }
        });
        with_query(Address::Calculator(calculator), &query)
    }

    fn write_address(self) {
        let Some(address) = untrack(|| self.entries.try_with_value(|_| ()).map(|()| self.asked(false))) else { return };
        route::rename(&address);
    }
}
