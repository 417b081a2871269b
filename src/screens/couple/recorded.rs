//! Whether they agree to be recorded, and when they were asked.

use leptos::prelude::*;

use super::{CouplePage, couple_page, open};
use crate::app::address::Part;
use crate::app::state::app;
use crate::book::asks::Ask;
use crate::book::id::RecordId;
use crate::book::verbs;
use crate::forms::couple::recorded as form_of;
use crate::parts::layout::{all, para};
use crate::screens::shell::beside::beside;
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::words::{format, screens as say};

pub fn recorded(id: RecordId) -> AnyView {
    let app = app();
    let CouplePage { head, leave } = couple_page(id, say::RECORDED, Part::Recorded);
    let today = app.today.get_untracked();
    let page = open(id, format!("recorded.{id}"), leave, |couple| form_of::start(couple, today, format::day));
    let save = move || {
        let read = page.read(|texts| form_of::read(texts, app.today.get_untracked()));
        let Some(recorded) = read else { return };
        page.save(vec![verbs::record(recorded)], say::saved(say::RECORDED));
    };
    let content = all(vec![
        beside(id, None, &[Ask::Recorded]),
        fields::may_record(page.form, form_of::MAY_RECORD),
        fields::day(page.form, form_of::ASKED, say::ASKED_ON),
        para("small", say::RECORDED_WHY),
    ]);
    form_page(head, page.form, content, say::SAVE, save)
}
