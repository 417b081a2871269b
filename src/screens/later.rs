//! The screens that come in files of their own: fetched once the first screen can be used, or when they are opened
//! before that. The first load carries Today, Couples, a couple's checklist and a new couple; `public/build/split.mjs`
//! cuts the rest off at the functions marked here.

use std::future::Future;
use std::pin::Pin;
use std::task::{Context, Poll, Waker};
use std::time::Duration;

use leptos::prelude::*;
use leptos::wasm_split::{SplitLoaderError, wasm_split};
use wasm_bindgen_futures::spawn_local;

use super::taking::{self, Taking};
use super::{bench, copies, couple, list, practice, start_of_page};
use crate::app::address::{Address, Calculator, Part, Setting};
use crate::book::asks::Section;
use crate::book::id::RecordId;
use crate::parts::button::{Weight, button};
use crate::parts::el::{live, nothing};
use crate::parts::lay::para;
use crate::parts::page::{Head, page};
use crate::words::screens as say;

/// A file of screens could not be fetched.
pub struct NotFetched;

impl From<SplitLoaderError> for NotFetched {
    fn from(_: SplitLoaderError) -> Self {
        NotFetched
    }
}

#[wasm_split(bench, wasm_split_path = leptos::wasm_split, fallible, preload(fetch_bench))]
fn bench_screen(which: Calculator) -> Result<AnyView, NotFetched> {
    Ok(bench::calculator(which))
}

#[wasm_split(couple, wasm_split_path = leptos::wasm_split, fallible, preload(fetch_couple))]
fn couple_screen(id: RecordId, part: Part) -> Result<AnyView, NotFetched> {
    Ok(couple::part(id, part))
}

#[wasm_split(practice, wasm_split_path = leptos::wasm_split, fallible, preload(fetch_practice))]
fn practice_screen(setting: Setting) -> Result<AnyView, NotFetched> {
    Ok(practice::setting(setting))
}

#[wasm_split(copies, wasm_split_path = leptos::wasm_split, fallible, preload(fetch_copies))]
fn copies_of(id: RecordId, part: Part) -> Result<AnyView, NotFetched> {
    Ok(copies::part(id, part))
}

#[wasm_split(copies, wasm_split_path = leptos::wasm_split, fallible, preload(fetch_copies_too))]
fn copies_screen(setting: Setting) -> Result<AnyView, NotFetched> {
    Ok(copies::setting(setting))
}

#[wasm_split(list, wasm_split_path = leptos::wasm_split, fallible, preload(fetch_list))]
fn list_screen(section: Option<Section>) -> Result<AnyView, NotFetched> {
    Ok(list::list(section))
}

#[wasm_split(taking, wasm_split_path = leptos::wasm_split, fallible, preload(fetch_taking))]
fn taking_screen(what: Taking) -> Result<AnyView, NotFetched> {
    Ok(taking::taking(what))
}

type Drawing = Pin<Box<dyn Future<Output = Result<AnyView, NotFetched>>>>;
type Fetching = Pin<Box<dyn Future<Output = Result<(), SplitLoaderError>>>>;

/// The screen at this address, if it is one of those that come later, and the fetching of its file.
fn drawing(here: Address) -> Option<(Drawing, Fetching)> {
    Some(match here {
        Address::Calculator(which) => (Box::pin(bench_screen(which)), Box::pin(fetch_bench())),
        Address::TakeIn => (Box::pin(taking_screen(Taking::In)), Box::pin(fetch_taking())),
        Address::Invite => (Box::pin(taking_screen(Taking::Invite(None))), Box::pin(fetch_taking())),
        Address::Part(id, Part::Invite) => {
            (Box::pin(taking_screen(Taking::Invite(Some(id)))), Box::pin(fetch_taking()))
        }
        Address::Part(id, part) if copies::is_part(part) => (Box::pin(copies_of(id, part)), Box::pin(fetch_copies())),
        Address::Part(id, part) => (Box::pin(couple_screen(id, part)), Box::pin(fetch_couple())),
        Address::Setting(which) if copies::is_setting(which) => {
            (Box::pin(copies_screen(which)), Box::pin(fetch_copies_too()))
        }
        Address::Setting(which) => (Box::pin(practice_screen(which)), Box::pin(fetch_practice())),
        Address::List(section) => (Box::pin(list_screen(section)), Box::pin(fetch_list())),
        Address::Today
        | Address::Couples
        | Address::NewCouple
        | Address::Couple(_)
        | Address::Bench
        | Address::Practice
        | Address::Nowhere => return None,
    })
}

/// Fetches all that is still to come, one file after the other, once the first screen is there and at rest.
pub fn fetch_ahead() {
    let fetch = || {
        spawn_local(async {
            let files: [Fetching; 6] = [
                Box::pin(fetch_couple()),
                Box::pin(fetch_bench()),
                Box::pin(fetch_taking()),
                Box::pin(fetch_practice()),
                Box::pin(fetch_copies()),
                Box::pin(fetch_list()),
            ];
            for file in files {
                // What fails now is fetched when its screen is opened, and what fails then is said there.
                let _ = file.await;
            }
        });
    };
    set_timeout(fetch, Duration::from_millis(500));
}

/// Shows a screen that comes later: at once if it is there, otherwise as soon as it is.
pub fn later(here: Address) -> AnyView {
    match drawn(here) {
        Poll::Ready(view) => view,
        Poll::Pending => {
            let fetched = RwSignal::new(None);
            fetch(here, fetched);
            live(move || match fetched.get() {
                None => page(Head::new(say::OPENING), nothing(), None),
                Some(true) => match untrack(|| drawn(here)) {
                    Poll::Ready(view) => view,
                    Poll::Pending => failed(here, fetched),
                },
                Some(false) => failed(here, fetched),
            })
        }
    }
}

/// Draws the screen if its file is there.
fn drawn(here: Address) -> Poll<AnyView> {
    let Some((mut drawing, _)) = drawing(here) else { return Poll::Ready(nothing()) };
    match drawing.as_mut().poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(Ok(view)) => Poll::Ready(view),
        Poll::Ready(Err(NotFetched)) | Poll::Pending => Poll::Pending,
    }
}

fn fetch(here: Address, fetched: RwSignal<Option<bool>>) {
    spawn_local(async move {
        let Some((_, file)) = drawing(here) else { return };
        // The user may have left meanwhile.
        fetched.try_set(Some(file.await.is_ok()));
        request_animation_frame(start_of_page);
    });
}

fn failed(here: Address, fetched: RwSignal<Option<bool>>) -> AnyView {
    let again = move || {
        fetched.set(None);
        fetch(here, fetched);
    };
    let again = button(Weight::Primary, say::TRY_AGAIN, again);
    page(Head::new(say::NOT_FETCHED), para("", say::NOT_FETCHED_HOW), Some(again))
}
