//! The appointments of a couple, and one of them: day, time, place, and what became of it.

use crate::parts::el::{maybe, or_nothing};
use crate::parts::lay::{all, para};
use leptos::prelude::*;

use super::{Whose, whose};
use crate::app::address::{Address, Part};
use crate::app::clock;
use crate::app::form::Form;
use crate::app::seen::Seen;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::couple::Appointment;
use crate::book::field::Outcome;
use crate::book::id::{ItemId, RecordId};
use crate::book::value::When;
use crate::book::verbs;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::choice::{Shape, choice, option};
use crate::parts::line::{line, lines};
use crate::parts::page::page;
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::words::{book as say_book, dates, screens as say};

pub fn appointments(id: RecordId) -> AnyView {
    let app = app();
    let Whose { head, .. } = whose(id, say::APPOINTMENTS, Part::Appointments);
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
    let Whose { head, leave } = whose(id, say::APPOINTMENT, Part::Appointment(which));
    let known = which.and_then(|item| app.couple(id, |couple| couple.appointment(item)).flatten());
    if which.is_some() && known.is_none() {
        return super::not_here();
    }
    let start = vec![
        ("day", known.as_ref().map(|it| crate::words::format::day(it.when.day)).unwrap_or_default()),
        ("time", known.as_ref().and_then(|it| it.when.time).map(dates::time).unwrap_or_default()),
        ("place", known.as_ref().and_then(|it| it.place.clone()).unwrap_or_default()),
        ("outcome", known.as_ref().and_then(|it| it.outcome).map_or("open", Outcome::code).to_owned()),
    ];
    let name = which.map_or_else(|| "new".to_owned(), |item| item.to_string());
    let form = Form::draft(format!("appointment.{id}.{name}"), start);
    let item = which.unwrap_or_else(|| ItemId(clock::random()));
    let seen = Seen::couple(app, id);
    let save = move || {
        let day = fields::read_day(form, "day", app.today.get_untracked());
        let time = fields::read_optional_time(form, "time");
        let place = fields::read_line(form, "place");
        let (Some(day), Some(time), Some(place)) = (day, time, place) else { return show_first_complaint() };
        let mut writes = verbs::book(item, When { day, time }, place);
        writes.extend(verbs::conclude(item, Outcome::from_code(&form.text("outcome").get_untracked())));
        app.save(id, seen.changed(writes), say::saved(say::APPOINTMENT), move || {
            form.done();
            let _ = leave.try_run(());
        });
    };
    let outcomes = std::iter::once(option("open", say::OUTCOME_OPEN))
        .chain(Outcome::ALL.map(|outcome| option(outcome.code(), say_book::outcome(outcome))));
    let remove = which.map(|item| {
        button(Weight::Quiet, say::REMOVE, move || {
            app.save(id, verbs::cancel(item), say::removed(say::APPOINTMENT), move || {
                form.done();
                let _ = leave.try_run(());
            });
        })
    });
    let content = all(vec![
        fields::day(form, "day", say::DAY),
        fields::text(form, "time", say::TIME).hint(say::TIME_HINT).line(),
        fields::text(form, "place", say::PLACE).enter("done").line(),
        or_nothing(
            which.map(|_| choice("outcome", say::OUTCOME, Shape::Chips, outcomes.collect(), form.text("outcome"))),
        ),
        or_nothing(remove),
    ]);
    form_page(head, form, content, say::SAVE, save)
}
