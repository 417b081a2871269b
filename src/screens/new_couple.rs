//! A new couple, in under half a minute: one name is enough.

use leptos::prelude::*;

use super::shell::fields;
use super::shell::form_page::{form_page, read};
use super::shell::tab_warning::tab_warning;
use crate::app::address::Address;
use crate::app::clock;
use crate::app::form::Form;
use crate::app::route::go_instead;
use crate::app::state::app;
use crate::book::id::{ItemId, RecordId};
use crate::forms::couple::new_couple as form_of;
use crate::forms::couple::people::{FIRST_NAME, MET, SECOND_NAME};
use crate::forms::couple::recorded::MAY_RECORD;
use crate::forms::couple::wedding::WEDDING;
use crate::parts::el::or_nothing;
use crate::parts::layout::all;
use crate::parts::page::PageHeader;
use crate::words::screens as say;

pub fn new_couple() -> AnyView {
    let app = app();
    let form = Form::draft("new-couple".to_owned(), app.practice(|practice| form_of::start(practice.fair())));
    // Given once, so that a second press saves nothing twice.
    let id = RecordId(clock::random());
    let save = move || {
        let today = app.today.get_untracked();
        let Some(typed) = read(form, |texts| form_of::read(texts, today)) else { return };
        app.save(id, typed.writes(ItemId(clock::random()), today), say::saved(say::NEW_COUPLE), move || {
            form.done();
            go_instead(&Address::Couple(id).to_string());
        });
    };
    let first = app.with(|book| book.couples.is_empty());
    let content = all(vec![
        or_nothing(first.then(tab_warning).flatten()),
        fields::text(form, FIRST_NAME, say::FIRST_NAME).line(),
        fields::text(form, SECOND_NAME, say::SECOND_NAME).hint(say::SECOND_NAME_HINT).line(),
        fields::text(form, form_of::REACH, say::REACH).hint(say::REACH_HINT).line(),
        fields::wedding(form, WEDDING),
        fields::text(form, MET, say::MET).enter("done").line(),
        fields::may_record(form, MAY_RECORD),
    ]);
    let head = PageHeader::new(say::NEW_COUPLE).back(Address::Couples.to_string(), say::COUPLES);
    form_page(head, form, content, say::SAVE, save)
}
