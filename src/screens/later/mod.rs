//! The screens that come in files of their own: fetched once the first screen can be used, or when they are opened
//! before that. The first load carries Today and Couples; the rest is cut off in `files`: what the jeweller works with
//! in one file, the couple's own list in another.

#[cfg_attr(feature = "one-file", path = "one_file.rs")]
mod files;

use std::future::Future;
use std::pin::Pin;
use std::task::{Context, Poll, Waker};
use std::time::Duration;

use leptos::prelude::*;
use leptos::wasm_split::SplitLoaderError;
use wasm_bindgen_futures::spawn_local;

use super::shell::couple_page::gone;
use super::taking::{Taking, taking};
use super::{bench, copies, couple, late, new_couple, practice};
use crate::app::address::{Address, Part, Setting};
use crate::app::state::app;
use crate::book::id::RecordId;
use crate::parts::button::{Weight, button};
use crate::parts::el::{live, maybe, nothing};
use crate::parts::focus::start_of_page;
use crate::parts::layout::para;
use crate::parts::page::{PageHeader, page};
use crate::words::screens as say;

/// A file of screens could not be fetched.
pub struct NotFetched;

impl From<SplitLoaderError> for NotFetched {
    fn from(_: SplitLoaderError) -> Self {
        NotFetched
    }
}

/// What comes later.
#[derive(Clone, Copy)]
enum Later {
    Screen(Address),
    /// What stands below the sentence when the book does not open.
    Rescue,
    /// What stands on the page while an import is put in its places before the book opens.
    Arriving,
    /// What stands on a Today that is empty.
    Examples,
    /// What stands on Today of orders.
    Orders,
}

fn work(what: Later) -> AnyView {
    match what {
        Later::Screen(here) => screen(here),
        Later::Rescue => copies::rescue(),
        Later::Arriving => copies::arriving(),
        Later::Examples => practice::load_examples(),
        Later::Orders => late::orders(),
    }
}

fn screen(here: Address) -> AnyView {
    match here {
        Address::TakeIn => taking(Taking::In),
        Address::Invite => taking(Taking::Invite(None)),
        Address::NewCouple => new_couple::new_couple(),
        Address::Couple(id) => couple::couple(id),
        Address::Part(id, what) => part(id, what),
        Address::Bench => bench::bench(),
        Address::Calculator(which) => bench::calculator(which),
        Address::Practice => practice::practice(),
        Address::Setting(which) => setting(which),
        // They are drawn elsewhere.
        Address::Today | Address::Couples | Address::Nowhere | Address::List(_) => nothing(),
    }
}

fn part(id: RecordId, part: Part) -> AnyView {
    if !app().couple(id, |couple| !couple.is_blank()).unwrap_or(false) {
        return gone(app(), id);
    }
    match part {
        Part::Specification | Part::Copy | Part::Differences | Part::Same | Part::History | Part::Erase => {
            copies::part(id, part)
        }
        Part::Invite => taking(Taking::Invite(Some(id))),
        part => couple::part(id, part),
    }
}

fn setting(setting: Setting) -> AnyView {
    match setting {
        Setting::PhoneName(_) | Setting::Install | Setting::Copies | Setting::BringIn | Setting::Differences => {
            copies::setting(setting)
        }
        setting => practice::setting(setting),
    }
}

type Drawing = Pin<Box<dyn Future<Output = Result<AnyView, NotFetched>>>>;
type Fetching = Pin<Box<dyn Future<Output = Result<(), SplitLoaderError>>>>;

fn drawing(what: Later) -> Drawing {
    match what {
        Later::Screen(Address::List(section)) => Box::pin(files::list(section)),
        _ => Box::pin(files::work(what)),
    }
}

/// The file that it is in.
fn file(what: Later) -> Fetching {
    match what {
        Later::Screen(Address::List(_)) => Box::pin(files::fetch_list()),
        _ => Box::pin(files::fetch_work()),
    }
}

/// Fetches all that is still to come, one file after the other, once the first screen is there and at rest.
pub fn fetch_ahead() {
    let fetch = || {
        spawn_local(async {
            // What fails now is fetched when its screen is opened, and what fails then is said there.
            let _ = files::fetch_work().await;
            let _ = files::fetch_list().await;
        });
    };
    set_timeout(fetch, Duration::from_millis(100));
}

/// Shows a screen that comes later: at once if it is there, otherwise as soon as it is.
pub fn later(here: Address) -> AnyView {
    let here = Later::Screen(here);
    if let Some(view) = drawn(here) {
        return view;
    }
    let fetched = RwSignal::new(None);
    fetch(here, fetched);
    live(move || match fetched.get() {
        None => page(PageHeader::new(say::OPENING).busy(), nothing(), None),
        Some(true) => untrack(|| drawn(here)).unwrap_or_else(|| failed(here, fetched)),
        Some(false) => failed(here, fetched),
    })
}

/// What can still be done when the book does not open; nothing where the file with it cannot be fetched.
pub fn rescue() -> AnyView {
    below(Later::Rescue)
}

/// Puts in its places what was brought in; nothing where the file that does it cannot be fetched.
pub fn arriving() -> AnyView {
    below(Later::Arriving)
}

/// The way to load the example book, on a Today that is empty; nothing where the file with it cannot be fetched.
pub fn examples() -> AnyView {
    below(Later::Examples)
}

/// What stands on Today of orders.
pub fn orders() -> AnyView {
    below(Later::Orders)
}

/// Something that is added to a screen of the first load, as soon as it is there.
fn below(what: Later) -> AnyView {
    let fetched = RwSignal::new(false);
    spawn_local(async move {
        let _ = file(what).await;
        let _ = fetched.try_set(true);
    });
    maybe(move || if fetched.get() { untrack(|| drawn(what)) } else { None })
}

/// Draws it if its file is there.
fn drawn(what: Later) -> Option<AnyView> {
    match drawing(what).as_mut().poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(Ok(view)) => Some(view),
        Poll::Ready(Err(NotFetched)) | Poll::Pending => None,
    }
}

fn fetch(here: Later, fetched: RwSignal<Option<bool>>) {
    spawn_local(async move {
        let arrived = file(here).await.is_ok();
        // The user may have left meanwhile.
        if fetched.try_set(Some(arrived)).is_none() {
            start_of_page();
        }
    });
}

fn failed(here: Later, fetched: RwSignal<Option<bool>>) -> AnyView {
    let again = move || {
        fetched.set(None);
        fetch(here, fetched);
    };
    let again = button(Weight::Primary, say::TRY_AGAIN, again);
    page(PageHeader::new(say::NOT_FETCHED), para("", say::NOT_FETCHED_HOW), Some(again))
}
