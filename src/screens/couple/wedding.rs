//! The wedding date, as far as it is known.

use leptos::prelude::*;

use super::{CouplePage, couple_page, open};
use crate::app::address::Part;
use crate::app::state::app;
use crate::book::asks::Ask;
use crate::book::id::RecordId;
use crate::book::verbs;
use crate::forms::couple::wedding as form_of;
use crate::parts::layout::all;
use crate::screens::shell::beside::beside;
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::words::{dates, screens as say};

pub fn wedding(id: RecordId) -> AnyView {
    let app = app();
    let CouplePage { head, leave } = couple_page(id, say::WEDDING, Part::Wedding);
    let known = app.couple(id, |couple| couple.wedding()).flatten();
    let page = open(id, format!("wedding.{id}"), leave, |_| form_of::start(known, dates::wedding));
    let save = move || {
        let today = app.today.get_untracked();
        let read = page.read(|texts| form_of::read(texts, known, dates::wedding, today));
        let Some(wedding) = read else { return };
        page.save(vec![verbs::marry(wedding)], say::saved(say::WEDDING));
    };
    let field = fields::wedding(page.form, form_of::WEDDING);
    let content = all(vec![beside(id, None, &[Ask::Wedding, Ask::NeededBy]), field]);
    form_page(head, page.form, content, say::SAVE, save)
}
