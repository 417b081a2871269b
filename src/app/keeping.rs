//! Asking the browser to keep the book for good, at a moment when there is something to keep and the browser has
//! reason to agree: there is a couple, and the app is installed or has been opened before. Asked again on the second,
//! fourth, eighth opening and so on, because browsers change their minds and people dislike questions.

use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::device;
use super::state::{App, Status};
use crate::book::couple::Couple;
use crate::storage::preferences;
use crate::storage::room::{ask_to_persist, room};

/// Whether the browser has said no. Copy it freely.
#[derive(Clone, Copy)]
pub struct Keeping {
    pub refused: RwSignal<bool>,
}

impl Keeping {
    /// Watches for the moment.
    pub fn watch(app: App) -> Keeping {
        let keeping = Keeping { refused: RwSignal::new(false) };
        let visits = preferences::count_visit();
        let is_moment = (visits > 1 || device::is_installed()) && visits.is_power_of_two();
        let something = Memo::new(move |_| {
            let own = |couple: Couple<'_>| !couple.is_blank() && !couple.is_example();
            app.status.get() == Status::Open && app.with(|book| book.couples.values().any(|record| own(Couple(record))))
        });
        Effect::new(move |done: Option<bool>| {
            let is_due = something.get() && done != Some(true);
            if is_due {
                spawn_local(async move {
                    let kept = room().await.persistent;
                    if kept == Some(false) {
                        let agreed = is_moment && ask_to_persist().await == Some(true);
                        keeping.refused.set(!agreed && visits > 1);
                    }
                });
            }
            is_due || done == Some(true)
        });
        keeping
    }
}
