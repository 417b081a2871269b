//! The appointments of a couple, and one of them: day, time, place, and what became of it.

use leptos::prelude::*;

use super::{CouplePage, couple_page, open};
use crate::app::address::{Address, Part};
use crate::app::clock;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::couple::Appointment;
use crate::book::field::Outcome;
use crate::book::id::{ItemId, RecordId};
use crate::book::verbs;
use crate::forms::couple::appointment as form_of;
use crate::parts::button::{Weight, link_button};
use crate::parts::choice::{Shape, option};
use crate::parts::el::{maybe, or_nothing};
use crate::parts::layout::{all, para};
use crate::parts::line::{line, lines};
use crate::parts::page::page;
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::words::{book as say_book, format, screens as say};

pub fn appointments(id: RecordId) -> AnyView {
    let app = app();
    let CouplePage { head, .. } = couple_page(id, say::APPOINTMENTS, Part::Appointments);
    let rows = Signal::derive(move || {
        let row = |it: Appointment| {
            let outcome = it.outcome.map(|outcome| say_book::outcome(outcome).to_owned()).unwrap_or_default();
            let href = Address::Part(id, Part::Appointment(Some(it.item))).to_string();
            line(say_book::when(it.when), outcome, href).small(it.place.unwrap_or_default())
        };
        app.couple(id, |couple| couple.appointments().into_iter().map(row).collect::<Vec<_>>()).unwrap_or_default()
    });
    let none = move || rows.with(Vec::is_empty).then(|| para("", say::NONE_YET));
    let new = Address::Part(id, Part::Appointment(None)).to_string();
    page(head, all(vec![maybe(none), lines(rows)]), Some(link_button(Weight::Primary, say::NEW_APPOINTMENT, new)))
}

pub fn appointment(id: RecordId, which: Option<ItemId>) -> AnyView {
    let app = app();
    let CouplePage { head, leave } = couple_page(id, say::APPOINTMENT, Part::Appointment(which));
    let known = which.and_then(|item| app.couple(id, |couple| couple.appointment(item)).flatten());
    if which.is_some() && known.is_none() {
        return super::not_here();
    }
    let name = which.map_or_else(|| "new".to_owned(), |item| item.to_string());
    let page = open(id, format!("appointment.{id}.{name}"), leave, |_| form_of::start(known.as_ref(), format::day));
    let form = page.form;
    let item = which.unwrap_or_else(|| ItemId(clock::random()));
    let save = move || {
        let read = page.read(|texts| form_of::read(texts, item, app.today.get_untracked()));
        let Some(appointment) = read else { return };
        page.save(form_of::writes(appointment), say::saved(say::APPOINTMENT));
    };
    let outcomes = std::iter::once(option(form_of::OPEN, say::OUTCOME_OPEN))
        .chain(Outcome::ALL.map(|outcome| option(outcome.code(), say_book::outcome(outcome))));
    let outcome = || fields::choice(form, form_of::OUTCOME, say::OUTCOME, Shape::Chips, outcomes.collect());
    let content = all(vec![
        fields::day(form, form_of::DAY, say::DAY),
        fields::text(form, form_of::TIME, say::TIME).hint(say::TIME_HINT).line(),
        fields::text(form, form_of::PLACE, say::PLACE).enter("done").line(),
        or_nothing(which.map(|_| outcome())),
        or_nothing(which.map(|item| page.remove(verbs::cancel(item), say::APPOINTMENT))),
    ]);
    form_page(head, form, content, say::SAVE, save)
}
