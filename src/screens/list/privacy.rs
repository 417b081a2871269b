//! Who sees what the couple wrote, whether it may be recorded, and how to delete it.

use leptos::prelude::*;

use super::ask::question;
use crate::app::list as ours;
use crate::book::asks::Question;
use crate::book::preparation_list::PreparationList;
use crate::parts::button::{Weight, button};
use crate::parts::el::{el, live};
use crate::parts::layout::{block, column, para};
use crate::words::list::{guide, pages as say};

pub fn privacy() -> AnyView {
    let deleted: RwSignal<Option<PreparationList>> = RwSignal::new(None);
    let shown = move || match deleted.get() {
        None => all_of(deleted),
        Some(said) => {
            let back = move || {
                ours::put_back(&said);
                deleted.set(None);
            };
            block("list-deleted", vec![para("", say::DELETED), button(Weight::Quiet, say::PUT_BACK, back)])
        }
    };
    el("div").attr("aria-live", "polite").child(live(shown)).view()
}

fn all_of(deleted: RwSignal<Option<PreparationList>>) -> AnyView {
    let points = guide::PRIVACY.iter().map(|point| para("", *point)).collect();
    let delete = button(Weight::Quiet, say::DELETE, move || deleted.set(Some(ours::delete())));
    column(vec![column(points), question(Question::Recorded), delete])
}
