//! Files in: chosen or pasted, looked at, and then all of it or nothing.

use std::sync::Arc;

use crate::parts::el::{el, live, maybe};
use crate::parts::layout::{all, block, column, para};
use leptos::prelude::*;

use super::brought::brought;
use super::list::last_import;
use super::preview;
use crate::app::address::{Address, Setting};
use crate::app::share::{self, Unread};
use crate::app::state::{App, app};
use crate::archive::file::{FileError, MOST_BYTES};
use crate::archive::find;
use crate::archive::import::{News, Offer, Plan};
use crate::archive::list::LIMIT;
use crate::book::id::RecordId;
use crate::parts::button::{Weight, button};
use crate::parts::field::Field;
use crate::parts::focus::start_of_page;
use crate::parts::page::page;
use crate::screens::shell::handed;
use crate::screens::shell::lower::lower;
use crate::screens::shell::setting_page::head;
use crate::words::list::taking;
use crate::words::{copies as say, files};

/// How far a file has come.
#[derive(Clone)]
enum Step {
    Asked,
    Reading(u8),
    Wrong(String),
    /// It is a couple's list, which is taken in elsewhere.
    List(Arc<Vec<u8>>),
    Looked(Arc<Plan>),
    /// It is being taken in: what was looked at stays, without its buttons.
    Bringing(Arc<Plan>),
}

impl Step {
    /// It did not come in: what was looked at has its buttons again.
    fn look_again(&mut self) {
        if let Step::Bringing(plan) = self {
            *self = Step::Looked(Arc::clone(plan));
        }
    }
}

pub fn bring_in() -> AnyView {
    let app = app();
    let step = RwSignal::new(Step::Asked);
    let take_practice = RwSignal::new(false);
    let pasted = RwSignal::new(String::new());
    let differ = RwSignal::new(None);
    if let Some(bytes) = handed::take() {
        look_at(app, step, bytes);
    }
    // Made anew only when a preview comes or goes: the field keeps its cursor while a file is read.
    let looked = Memo::new(move |_| step.with(|step| matches!(step, Step::Looked(_) | Step::Bringing(_))));
    let shown = move || {
        let _ = looked.get();
        untrack(|| match step.get() {
            Step::Looked(plan) | Step::Bringing(plan) => preview::preview(app, &plan, take_practice),
            Step::Asked | Step::Reading(_) | Step::Wrong(_) | Step::List(_) => ask(app, step, pasted, differ),
        })
    };
    let said = move || match step.get() {
        Step::Reading(percent) => para("", say::reading(percent)),
        Step::Wrong(sentence) => para("caution", sentence),
        Step::List(bytes) => {
            let take_in = handed::link(taking::TAKE_IN, Address::TakeIn.to_string(), move || bytes.to_vec());
            block("column near", vec![para("caution", files::IS_A_LIST), take_in])
        }
        // It stands for all to see where the buttons were.
        Step::Bringing(_) => para("unseen", say::BRINGING_IN),
        Step::Asked | Step::Looked(_) => ().into_any(),
    };
    let action = move || {
        let plan = match step.get() {
            Step::Looked(plan) => plan,
            Step::Bringing(_) => return Some(el("p").attr("aria-hidden", "true").text(say::BRINGING_IN).view()),
            _ => return None,
        };
        let leave = button(Weight::Quiet, say::LEAVE_IT, move || step.set(Step::Asked));
        // Where no record is new there may still be settings to take over.
        if plan.is_empty() && (plan.practice == Offer::None || !take_practice.get()) {
            return Some(leave);
        }
        let take = button(Weight::Primary, say::bring_in(plan.couples(), plan.count(News::Erased)), move || {
            let take_practice = take_practice.get_untracked() && plan.practice != Offer::None;
            let in_conflict = plan.entries.iter().filter(|entry| !entry.conflicts.is_empty());
            let ids: Vec<RecordId> = in_conflict.map(|entry| entry.incoming.id).collect();
            step.set(Step::Bringing(Arc::clone(&plan)));
            app.bring_in(Arc::clone(&plan), take_practice, move |is_in| {
                if !is_in {
                    let _ = step.try_update(Step::look_again);
                    return;
                }
                let _ = differ.try_set(Some(ids));
                let _ = pasted.try_set(String::new());
                // What became of it stands at the top of the page.
                if step.try_set(Step::Asked).is_none() {
                    start_of_page();
                }
            });
        });
        Some(all(vec![leave, take]))
    };
    let status = el("div").class("told").attr("role", "status").child(live(said));
    // The region stays while what is above it changes, or it is not read out.
    let content = column(vec![status.view(), live(shown)]);
    page(head(Setting::BringIn, say::BRING_IN), content, Some(maybe(action)))
}

fn ask(app: App, step: RwSignal<Step>, pasted: RwSignal<String>, differ: RwSignal<Option<Vec<RecordId>>>) -> AnyView {
    let input = el("input").attr("type", "file").attr("id", "file").attr("name", "file").class("unseen").on(
        "change",
        move |event| {
            if let Some(file) = share::picked(&event) {
                read(app, step, file);
            }
        },
    );
    let file = el("label").class("button quiet file").child(input.view()).text(say::CHOOSE_FILE);
    let look = move || {
        let text = pasted.get_untracked();
        look_at(app, step, text.into_bytes());
    };
    all(vec![
        brought(app, differ),
        para("", say::BRING_IN_HOW),
        file.view(),
        Field::new("pasted", say::PASTE, pasted).lines(),
        button(Weight::Quiet, say::LOOK_AT_IT, look),
        maybe(move || differ.with(Option::is_none).then(|| last_import(app))),
    ])
}

fn read(app: App, step: RwSignal<Step>, file: web_sys::File) {
    step.set(Step::Reading(0));
    // The first half is the phone's reading, the second ours.
    let progress = move |percent: u8| drop(step.try_set(Step::Reading(percent / 2)));
    share::read(file, MOST_BYTES, progress, move |bytes| match bytes {
        Ok(bytes) => look_at(app, step, bytes),
        Err(Unread::TooLarge) => drop(step.try_set(Step::Wrong(files::error(FileError::TooBig)))),
        Err(Unread::NotGiven) => drop(step.try_set(Step::Wrong(say::NOT_READ.to_owned()))),
    });
}

fn look_at(app: App, step: RwSignal<Step>, bytes: Vec<u8>) {
    if bytes.len() <= LIMIT && find::read(&bytes).is_ok() {
        return step.set(Step::List(Arc::new(bytes)));
    }
    let progress = move |percent: u8| step.try_set(Step::Reading(50 + percent / 2)).is_none();
    let done = move |result: Result<Plan, FileError>| {
        let next = match result {
            Ok(plan) => Step::Looked(Arc::new(plan)),
            Err(error) => Step::Wrong(files::error(error)),
        };
        let _ = step.try_set(next);
    };
    app.preview(bytes, lower, Box::new(progress), Box::new(done));
}
