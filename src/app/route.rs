//! Which screen the address shows, followed as it changes.
//!
//! There is no router crate: it would weigh about 35 kB and knows no addresses behind the `#`. A typed enum,
//! [`super::address`], is a page of code.

use std::cell::{Cell, RefCell};
use std::time::Duration;

use leptos::prelude::*;

use super::address::{Address, Query, is_former, read, with_query};

/// An address that waits to be written: the timer that it waits for, the address that it follows, and what writes it.
struct Pending {
    timer: TimeoutHandle,
    follows: String,
    write: Box<dyn FnOnce()>,
}

thread_local! {
    static STAYING: Cell<bool> = const { Cell::new(false) };
    static HELD: Cell<bool> = const { Cell::new(false) };
    static TO_WRITE: RefCell<Option<Pending>> = const { RefCell::new(None) };
}

/// Some browsers limit how often an address may be written: it follows so long after the last key.
const WRITTEN_AFTER: Duration = Duration::from_millis(400);

/// Does what is to be done at the end of some work; where that leads is followed only if the screen is still the one
/// at which the work began (`path`): otherwise the user has gone elsewhere meanwhile, and stays there.
pub fn conclude(began: &str, what: impl FnOnce()) {
    STAYING.set(path() != began);
    what();
    STAYING.set(false);
}

/// Whether the screen stays as it is, whatever the address does.
pub fn hold(held: bool) {
    HELD.set(held);
}

/// The address as it stands.
pub fn here() -> String {
    hash()
}

/// The address of the screen, without what is asked there.
pub fn path() -> String {
    hash().split('?').next().unwrap_or_default().to_owned()
}

/// Where the app is: the screen, and what a calculator is asked.
#[derive(Clone, Copy)]
pub struct Route {
    address: RwSignal<(Address, Query)>,
    /// How many screens were opened since the page was loaded: so far the way back stays in the app.
    opened: StoredValue<u32>,
}

impl Route {
    /// Reads the address and follows it.
    pub fn follow() -> Route {
        let route = Route { address: RwSignal::new(arrive()), opened: StoredValue::new(0) };
        window_event_listener_untyped("hashchange", move |_| {
            if HELD.get() {
                return;
            }
            route.opened.update_value(|opened| *opened += 1);
            route.address.set(arrive());
        });
        route
    }

    /// The screen. Whoever asks hears of it only when it changes to another.
    pub fn screen(self) -> Memo<(Address, Option<String>)> {
        // A calculator opened for another couple or wearer is another screen; its inputs are not.
        Memo::new(move |_| {
            self.address.with(|(address, query)| {
                let whose = query.iter().filter(|(name, _)| name == "couple" || name == "who");
                let whose: Vec<&str> = whose.map(|(_, value)| value.as_str()).collect();
                (*address, (!whose.is_empty()).then(|| whose.join(" ")))
            })
        })
    }

    /// What the calculator at this address is asked.
    pub fn query(self) -> Query {
        // The address itself is asked: a calculator writes it without an event.
        read(&hash()).1
    }

    /// Where the app is and what is asked there. Whoever asks hears of every address that is gone to, another query
    /// of the same screen among them; what a calculator writes into its own address is not gone to.
    pub fn arrived(self) -> (Address, Query) {
        self.address.track();
        read(&hash())
    }
}

/// The route of the screen that asks.
pub fn route() -> Route {
    expect_context()
}

impl Route {
    /// Leaves a screen whose work is done: back to where the user came from, or up if the app began here.
    pub fn leave(self, up: Address) {
        if STAYING.get() {
            return;
        }
        let history = web_sys::window().and_then(|window| window.history().ok());
        match history {
            Some(history) if self.opened.get_value() > 0 => drop(history.back()),
            _ => go_instead(&up.to_string()),
        }
    }
}

/// The value of a name in a query.
pub fn asked<'a>(query: &'a Query, name: &str) -> Option<&'a str> {
    query.iter().find(|(known, _)| known == name).map(|(_, value)| value.as_str())
}

/// Goes to an address.
pub fn go(address: &str) {
    if let Some(window) = web_sys::window() {
        let _ = window.location().set_hash(address);
    }
}

/// The whole link to an address, for another phone.
pub fn link(address: &str) -> String {
    let href = web_sys::window().and_then(|window| window.location().href().ok()).unwrap_or_default();
    let mut link = href.split('#').next().unwrap_or_default().to_owned();
    link.push_str(address);
    link
}

/// Writes another address over this one, without going there.
pub fn rename(address: &str) {
    if let Some(history) = web_sys::window().and_then(|window| window.history().ok()) {
        let _ = history.replace_state_with_url(&wasm_bindgen::JsValue::NULL, "", Some(address));
    }
}

/// Has the address written in a moment, unless it is asked for again until then.
pub fn write_soon(write: impl FnOnce() + 'static) {
    let Ok(timer) = set_timeout_with_handle(write_now, WRITTEN_AFTER) else { return write() };
    let pending = Pending { timer, follows: here(), write: Box::new(write) };
    if let Some(earlier) = TO_WRITE.replace(Some(pending)) {
        earlier.timer.clear();
    }
}

/// Writes the address that waits for its moment, if one does. Where somebody has gone elsewhere meanwhile, it would be
/// written over the address that they went to.
pub fn write_now() {
    if let Some(Pending { timer, follows, write }) = TO_WRITE.take() {
        timer.clear();
        if here() == follows {
            write();
        }
    }
}

/// Goes to an address in the place of this one: the way back leads past it.
pub fn go_instead(address: &str) {
    if !STAYING.get()
        && let Some(window) = web_sys::window()
    {
        let _ = window.location().replace(address);
    }
}

/// Where the address leads. One of an earlier version is written anew.
fn arrive() -> (Address, Query) {
    let hash = hash();
    let (address, query) = read(&hash);
    if is_former(&hash) && address != Address::Nowhere {
        rename(&with_query(address, &query));
    }
    (address, query)
}

fn hash() -> String {
    web_sys::window().and_then(|window| window.location().hash().ok()).unwrap_or_default()
}
