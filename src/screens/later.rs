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

use super::{bench, couple, practice, start_of_page};
use crate::app::address::{Address, Calculator, Part, Setting};
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
fn calculator(which: Calculator) -> Result<AnyView, NotFetched> {
    Ok(bench::calculator(which))
}

#[wasm_split(couple, wasm_split_path = leptos::wasm_split, fallible, preload(fetch_couple))]
fn part(id: RecordId, part: Part) -> Result<AnyView, NotFetched> {
    Ok(couple::part(id, part))
}

#[wasm_split(practice, wasm_split_path = leptos::wasm_split, fallible, preload(fetch_practice))]
fn setting(setting: Setting) -> Result<AnyView, NotFetched> {
    Ok(practice::setting(setting))
}

type Drawing = Pin<Box<dyn Future<Output = Result<AnyView, NotFetched>>>>;

/// The screen at this address, if it is one of those that come later.
fn drawing(here: Address) -> Option<Drawing> {
    Some(match here {
        Address::Calculator(which) => Box::pin(calculator(which)),
        Address::Part(id, which) => Box::pin(part(id, which)),
        Address::Setting(which) => Box::pin(setting(which)),
        _ => return None,
    })
}

/// Fetches all that is still to come, one file after the other, once the first screen is there and at rest.
pub fn fetch_ahead() {
    let fetch = || {
        spawn_local(async {
            // What fails now is fetched when its screen is opened, and what fails then is said there.
            let _ = fetch_couple().await;
            let _ = fetch_bench().await;
            let _ = fetch_practice().await;
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
    let Some(mut drawing) = drawing(here) else { return Poll::Ready(nothing()) };
    match drawing.as_mut().poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(Ok(view)) => Poll::Ready(view),
        Poll::Ready(Err(NotFetched)) | Poll::Pending => Poll::Pending,
    }
}

fn fetch(here: Address, fetched: RwSignal<Option<bool>>) {
    spawn_local(async move {
        let result = match here {
            Address::Calculator(_) => fetch_bench().await,
            Address::Part(..) => fetch_couple().await,
            _ => fetch_practice().await,
        };
        // The user may have left meanwhile.
        fetched.try_set(Some(result.is_ok()));
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
