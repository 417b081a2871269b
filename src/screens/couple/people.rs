//! The names of the two, the ways to reach them, and where they were met.

use leptos::prelude::*;

use super::{CouplePage, couple_page, open};
use crate::app::address::Part;
use crate::app::clock;
use crate::app::state::app;
use crate::book::id::{ItemId, RecordId};
use crate::forms::couple::people::{self as form_of, FIRST_NAME, MET, SECOND_NAME};
use crate::parts::layout::all;
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::words::screens as say;

pub fn people(id: RecordId) -> AnyView {
    let CouplePage { head, leave } = couple_page(id, say::PEOPLE, Part::People);
    let items = app().couple(id, |couple| couple.reach().into_iter().map(|(item, _)| item).collect::<Vec<ItemId>>());
    let items = StoredValue::new(items.unwrap_or_default());
    let known = items.with_value(Vec::len);
    let page = open(id, format!("people.{id}"), leave, form_of::start);
    let form = page.form;
    let save = move || {
        let Some(typed) = page.read(|texts| form_of::read(texts, known)) else { return };
        let writes = items.with_value(|items| typed.writes(items, ItemId(clock::random())));
        page.save(writes, say::saved(say::PEOPLE_SHORT));
    };
    let reach = form_of::reach(known).iter().enumerate().map(|(at, key)| {
        let label = if at == 0 { say::REACH } else { say::REACH_ANOTHER };
        fields::text(form, *key, label).line()
    });
    let content = all(vec![
        fields::text(form, FIRST_NAME, say::FIRST_NAME).line(),
        fields::text(form, SECOND_NAME, say::SECOND_NAME).line(),
        all(reach.collect()),
        fields::text(form, MET, say::MET).line(),
    ]);
    form_page(head, form, content, say::SAVE, save)
}
