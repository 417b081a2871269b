//! What is shown to the couple: one picture and one answer, over the whole screen, while the book is out of reach.
//!
//! It stands in no address, which would put figures there, but beside the drafts: it is still shown after a reload, or
//! when the app is opened anew. While it is shown the address may change as it likes (the back button, a gesture,
//! somebody typing): no screen follows it, and closing leads back to where it was opened.
//!
//! One more entry of the history takes the first press of back; further ones change an address that nobody
//! follows.

use std::time::Duration;

use js_sys::{Function, Promise, Reflect};
use leptos::prelude::*;
use send_wrapper::SendWrapper;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_futures::spawn_local;

use super::route;
use crate::storage::drafts::{self, Draft};

pub use crate::words::answer::CoupleView as Shown;

/// The handle. Copy it freely.
#[derive(Clone, Copy)]
pub struct CleanView {
    shown: RwSignal<Option<Shown>>,
    /// The address that closing leads back to.
    from: StoredValue<String>,
    lock: StoredValue<Option<SendWrapper<JsValue>>>,
    /// It is being left: the browser is on its way back from the entry of the history that was put there.
    leaving: StoredValue<bool>,
}

/// The name under which it is kept.
pub(super) const KEPT: &str = "shown";
/// What marks the entry of the history that was put there to be gone back from.
const MARK: &str = "shown";
/// A browser that has not gone back after so long will not.
const BACK_TAKES: Duration = Duration::from_millis(500);

impl CleanView {
    /// Takes up what was shown when the page was left, if anything was.
    pub fn open() -> CleanView {
        let kept = drafts::kept(KEPT);
        let from = kept.as_ref().and_then(|kept| kept.get("from").cloned()).unwrap_or_default();
        let clean_view = CleanView {
            shown: RwSignal::new(kept.map(unpacked)),
            from: StoredValue::new(from),
            lock: StoredValue::new(None),
            leaving: StoredValue::new(false),
        };
        route::hold(clean_view.is_on());
        window_event_listener_untyped("popstate", move |_| {
            if clean_view.leaving.get_value() {
                clean_view.leave();
            } else if clean_view.is_on() {
                put_entry();
            }
        });
        window_event_listener_untyped("visibilitychange", move |_| clean_view.stay_awake());
        // Still shown after a reload: the phone still lies on the table.
        clean_view.stay_awake();
        clean_view
    }

    pub fn is_on(self) -> bool {
        self.shown.with_untracked(Option::is_some)
    }

    pub fn get(self) -> Option<Shown> {
        self.shown.get()
    }

    /// Whether anything is shown, followed.
    pub fn shows(self) -> bool {
        self.shown.with(Option::is_some)
    }

    /// Shows this and nothing else.
    pub fn show(self, shown: Shown) {
        if self.is_on() {
            return;
        }
        // A calculator writes its address a moment after the last key: closing leads back to what was asked last.
        route::write_now();
        self.from.set_value(route::here());
        drafts::keep(KEPT, &packed(&shown, self.from.get_value()));
        route::hold(true);
        self.shown.set(Some(shown));
        self.stay_awake();
        put_entry();
    }

    /// Back to where it was opened. It stays until the browser has left the entry that was put into its history: what is
    /// pressed while it is on its way would be gone back from.
    pub fn close(self) {
        if self.leaving.get_value() {
            return;
        }
        self.leaving.set_value(true);
        match window().history() {
            Ok(history) if is_entry() && history.back().is_ok() => {
                set_timeout(move || self.leave(), BACK_TAKES);
            }
            _ => self.leave(),
        }
    }

    fn leave(self) {
        if !self.leaving.get_value() {
            return;
        }
        self.leaving.set_value(false);
        drafts::forget(KEPT);
        route::hold(false);
        self.shown.set(None);
        if let Some(lock) = self.lock.get_value() {
            release(&lock);
        }
        self.lock.set_value(None);
        let from = self.from.get_value();
        if route::here() != from {
            // Going there tells of itself at once, in the middle of what is being told here.
            set_timeout(move || route::go_instead(&from), Duration::ZERO);
        }
    }

    /// Asks the phone not to darken while it lies on the table. Where it does not listen, nothing is lost.
    fn stay_awake(self) {
        if !self.is_on() {
            return;
        }
        let found = Reflect::get(&window().navigator(), &"wakeLock".into());
        let Ok(keeper) = found else { return };
        let Some(ask) = Reflect::get(&keeper, &"request".into()).ok().and_then(|it| it.dyn_into::<Function>().ok())
        else {
            return;
        };
        let Ok(asked) = ask.call1(&keeper, &"screen".into()) else { return };
        spawn_local(async move {
            if let Ok(lock) = JsFuture::from(Promise::resolve(&asked)).await {
                // Closed meanwhile: then it is let go at once.
                if self.is_on() {
                    self.lock.set_value(Some(SendWrapper::new(lock)));
                } else {
                    release(&lock);
                }
            }
        });
    }
}

fn release(lock: &JsValue) {
    if let Ok(release) = Reflect::get(lock, &"release".into())
        && let Ok(release) = release.dyn_into::<Function>()
    {
        let _ = release.call0(lock);
    }
}

/// One more entry of the history at the same address: going back from it leads to the same screen.
fn put_entry() {
    if let Ok(history) = window().history() {
        let _ = history.push_state(&MARK.into(), "");
    }
}

fn is_entry() -> bool {
    window().history().and_then(|history| history.state()).is_ok_and(|state| state == MARK)
}

fn packed(shown: &Shown, from: String) -> Draft {
    let mut words = Draft::new();
    let mut put = |name: &str, text: String| words.insert(name.to_owned(), text);
    put("title", shown.title.clone());
    put("picture", shown.picture.clone());
    put("figure", shown.figure.clone());
    put("lines", shown.lines.join("\n"));
    put("from", from);
    words
}

fn unpacked(mut words: Draft) -> Shown {
    let mut take = |name: &str| words.remove(name).unwrap_or_default();
    Shown {
        title: take("title"),
        picture: take("picture"),
        figure: take("figure"),
        lines: take("lines").lines().map(str::to_owned).collect(),
    }
}
