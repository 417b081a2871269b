//! One file a screen. This file is the frame around them and says which address shows which.
//!
//! INVARIANT: a screen reads signals, lays out what `answers` says, sends verbs of the book to the state, and computes
//! nothing itself.

mod bench;
mod copies;
mod couple;
mod couples;
mod late;
mod later;
mod list;
mod new_couple;
mod practice;
mod shell;
mod taking;
mod today;

use std::time::Duration;

use crate::parts::el::{el, live, maybe};
use crate::parts::focus::start_of_page;
use crate::parts::layout::{all, para};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use crate::app::address::{Address, Setting};
use crate::app::clock;
use crate::app::keeping::Keeping;
use crate::app::route::{Route, go};
use crate::app::show::CleanView;
use crate::app::state::{App, NoticeKind, Status};
use crate::app::updates;
use crate::parts::button::{Weight, button};
use crate::parts::notice::{Notice, banner, done, notices, wrong};
use crate::parts::page::{PageHeader, page};
use crate::parts::places::{NavLink, places};
use crate::words::{copies as say_copies, screens as say, storage as storage_words};

/// After so long the phone is taken to be slow in giving the book out.
const LONG: Duration = Duration::from_secs(10);

/// Starts the app in the place of the page's shell.
pub fn start() {
    console_error_panic_hook::set_once();
    let Some(root) = document().get_element_by_id("app") else { return };
    root.set_inner_html("");
    leptos::mount::mount_to(root.unchecked_into(), frame).forget();
}

fn frame() -> AnyView {
    let app = App::open();
    let route = Route::follow();
    let clean_view = CleanView::open();
    provide_context(Keeping::watch(app));
    provide_context(clean_view);
    provide_context(app);
    provide_context(route);
    updates::watch(move || app.update_ready.set(true));
    follow_the_day(app);
    let screen = route.screen();
    let alone = Memo::new(move |_| matches!(screen.get().0, Address::List(_)));
    // A screen follows what it shows by itself: a change to the book must not make it anew under the fingers.
    let here = move || {
        let here = screen.get().0;
        untrack(|| view_of(here))
    };
    // The couple's own list does not wait for a book, and does not mind if there is none.
    let shown = move || {
        if alone.get() {
            return here();
        }
        match app.status.get() {
            Status::Opening => opening(slow(app)),
            Status::HeldUp => opening(para("", storage_words::HELD_UP)),
            Status::Arriving => opening(later::arriving()),
            Status::Failed(error) => failed(app, storage_words::not_opened(&error)),
            Status::Open => here(),
        }
    };
    Effect::new(move |before: Option<(Address, Option<String>)>| {
        let here = screen.get();
        if alone.get() || app.status.get() == Status::Open {
            mark_ready();
        }
        if before.is_some_and(|before| before != here) {
            app.turn_page();
            start_of_page();
        }
        here
    });
    let update = move || app.update_ready.get().then(|| say::update_ready().to_owned());
    let place = move |address: Address, label: &'static str, here: fn(Address) -> bool| NavLink {
        href: address.to_string(),
        label: label.into(),
        here: Signal::derive(move || here(screen.get().0)),
    };
    let bar = move || {
        places([
            place(Address::Today, say::TODAY, |here| matches!(here, Address::Today | Address::Nowhere)),
            place(Address::Couples, say::COUPLES, |here| {
                matches!(
                    here,
                    Address::Couples
                        | Address::NewCouple
                        | Address::TakeIn
                        | Address::Invite
                        | Address::Couple(_)
                        | Address::Part(..)
                )
            }),
            place(Address::Bench, say::TOOLS, |here| matches!(here, Address::Bench | Address::Calculator(_))),
            place(Address::Practice, say::SETUP, |here| matches!(here, Address::Practice | Address::Setting(_))),
        ])
    };
    let frame = el("div")
        .live_attr("class", move || Some(if alone.get() { "frame alone" } else { "frame" }.to_owned()))
        .live_attr("hidden", move || clean_view.shows().then(String::new));
    let book = frame
        .children(vec![
            banner(Signal::derive(update), say::update_now().to_owned(), updates::apply),
            live(shown),
            notices(Signal::derive(move || shown_notice(app))),
            maybe(move || (!alone.get()).then(bar)),
        ])
        .view();
    all(vec![book, shell::show::view(clean_view)])
}

fn view_of(address: Address) -> AnyView {
    match address {
        Address::Today | Address::Nowhere => today::today(),
        Address::Couples => couples::couples(),
        Address::NewCouple
        | Address::TakeIn
        | Address::Invite
        | Address::List(_)
        | Address::Couple(_)
        | Address::Part(..)
        | Address::Bench
        | Address::Calculator(_)
        | Address::Practice
        | Address::Setting(_) => later::later(address),
    }
}

/// What is said where the phone does not give the book out: some do not answer the first time they are asked.
fn slow(app: App) -> AnyView {
    let long = RwSignal::new(false);
    let wait = set_timeout_with_handle(move || long.set(true), LONG);
    on_cleanup(move || drop(wait.map(|wait| wait.clear())));
    let again = move || button(Weight::Quiet, say::TRY_AGAIN, move || app.reopen());
    maybe(move || long.get().then(|| all(vec![para("", storage_words::SLOW), again()])))
}

fn opening(said: AnyView) -> AnyView {
    page(PageHeader::new(say::OPENING), said, None)
}

fn failed(app: App, sentence: String) -> AnyView {
    let again = button(Weight::Primary, say::TRY_AGAIN, move || app.reopen());
    page(PageHeader::new(say::NOT_OPENED), all(vec![para("", sentence), later::rescue()]), Some(again))
}

fn shown_notice(app: App) -> Vec<Notice> {
    let Some(notice) = app.notice.get() else { return Vec::new() };
    vec![match notice.kind {
        NoticeKind::Saved(id, stamp) => {
            done(notice.text, Some((say::UNDO.to_owned(), Callback::new(move |()| app.undo(id, stamp)))))
        }
        NoticeKind::Undone(id, stamp) => {
            done(notice.text, Some((say::PUT_BACK.to_owned(), Callback::new(move |()| app.undo(id, stamp)))))
        }
        NoticeKind::Message => done(notice.text, None),
        // What is in the book already can still leave the phone.
        NoticeKind::Failed => {
            let to = Callback::new(move |()| go(&Address::Setting(Setting::Copies).to_string()));
            wrong(notice.text, Some((say_copies::MAKE_ONE.to_owned(), to)), move || app.notice.set(None))
        }
    }]
}

/// A page that stays open over midnight, or wakes on another day, counts from the new day.
fn follow_the_day(app: App) {
    let look = move || {
        let today = clock::now().0;
        if app.today.get_untracked() != today {
            app.today.set(today);
        }
    };
    window_event_listener_untyped("visibilitychange", move |_| look());
    window_event_listener_untyped("focus", move |_| look());
    let _ = set_interval_with_handle(look, Duration::from_secs(60));
}

/// Tells whoever measures that the book is there and can be used; then the rest of the app is fetched.
fn mark_ready() {
    if let Some(html) = document().document_element()
        && !html.has_attribute("data-ready")
    {
        let _ = html.set_attribute("data-ready", "");
        later::fetch_ahead();
    }
}
