//! What fitted in the end: the size that a band was kept at or resized to, once it had been worn.

use leptos::prelude::*;

use super::super::{CouplePage, open, page_of_wearer};
use crate::app::address::Part;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::id::RecordId;
use crate::book::verbs;
use crate::forms::couple::fitted as form_of;
use crate::parts::button::{Weight, button};
use crate::parts::choice::{Shape, option};
use crate::parts::el::{maybe, or_nothing};
use crate::parts::layout::{all, para};
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::trade::wearer::Wearer;
use crate::words::{finger as say, screens as say_frame};

pub fn fitted(id: RecordId, wearer: Wearer) -> AnyView {
    let app = app();
    let CouplePage { head, leave } = page_of_wearer(id, wearer, say::FITTED, Part::Fitted(wearer));
    let is_known = app.couple(id, |couple| couple.fitted(wearer).is_some()).unwrap_or(false);
    let page = open(id, format!("fitted.{id}.{}", wearer.code()), leave, |couple| form_of::start(couple, wearer));
    let form = page.form;
    let keep = move |fitted| page.save(vec![verbs::fit(wearer, fitted)], say_frame::saved(say::FITTED));
    let save = move || {
        let first = app.practice(|practice| practice.first_system());
        let read = page.read(|texts| form_of::read(texts, first, app.today.get_untracked()));
        let Some(fitted) = read else { return };
        keep(Some(fitted));
    };
    let how = vec![option(form_of::KEPT, say::KEPT), option(form_of::RESIZED, say::RESIZED)];
    let content = all(vec![
        para("", say::FITTED_WHY),
        fields::choice(form, form_of::HOW, say::FITTED_HOW, Shape::Segments, how),
        fields::text(form, form_of::SIZE, say::FITTED_SIZE).hint(say_frame::READ_SIZE_HINT).line(),
        maybe(move || fields::which_size(form, form_of::SIZE, form_of::SIZE_AS, say_frame::READ_AS)),
        or_nothing(is_known.then(|| button(Weight::Quiet, say_frame::REMOVE, move || keep(None)))),
    ]);
    form_page(head, form, content, say_frame::SAVE, save)
}
