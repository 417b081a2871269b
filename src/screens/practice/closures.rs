//! Closed days: the region's bank holidays, the days worked, and the workshop's own closures.

use chrono::Weekday;
use leptos::prelude::*;

use super::{back_to_usual, head, open, to};
use crate::app::address::Setting;
use crate::app::form::Form;
use crate::app::state::{App, app};
use crate::archive::code::Code;
use crate::forms::setup::workshop as form_of;
use crate::parts::button::{Weight, link_button};
use crate::parts::choice::{Choosable, Shape, option};
use crate::parts::el::maybe;
use crate::parts::layout::{all, para, section};
use crate::parts::line::{Line, line, lines};
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::trade::dates::holidays::{Holiday, Region};
use crate::trade::dates::lead_times::IN_HAND;
use crate::trade::dates::places::Place;
use crate::words::{dates as say_dates, format, planning as plan, practice as say, screens as say_frame};

const HERE: Setting = Setting::Closures;
const WEEK: [Weekday; 7] =
    [Weekday::Mon, Weekday::Tue, Weekday::Wed, Weekday::Thu, Weekday::Fri, Weekday::Sat, Weekday::Sun];

pub fn closures() -> AnyView {
    let app = app();
    let page = open(HERE, form_of::start);
    let form = page.form;
    let save = move || {
        let Some(writes) = page.read(form_of::read) else { return };
        page.save(writes, say_frame::saved(say::CLOSED_DAYS));
    };
    let regions = Region::ALL.map(|it| (it.code().to_owned(), say_dates::region(it).to_owned())).into();
    let holidays = vec![option(form_of::CLOSED, say::HOLIDAYS_CLOSED), option(form_of::OPEN, say::HOLIDAYS_WORKED)];
    let in_hand = fields::days(form, form_of::DAYS_IN_HAND, say::IN_HAND).hint(say::in_hand_hint(IN_HAND));
    let content = all(vec![
        fields::pick(form, form_of::REGION, say::REGION, regions),
        fields::several(form, form_of::WEEKDAYS, say::WEEKDAYS, week()),
        fields::choice(form, form_of::ON_HOLIDAYS, say::ON_HOLIDAYS, Shape::Segments, holidays),
        fields::time(form, form_of::CUT_OFF, say::CUT_OFF, say::CUT_OFF_HINT),
        in_hand.enter("done").line(),
        back_to_usual(page, say::CLOSED_DAYS, &form_of::FIELDS),
        others(app),
        own_closures(app),
        next_holidays(app, form),
    ]);
    form_page(head(HERE, say::CLOSED_DAYS), form, content, say_frame::SAVE, save)
}

/// The days of a week to choose from.
pub(super) fn week() -> Vec<Choosable> {
    WEEK.map(|day| option(day.code(), say::weekday(day))).into()
}

/// The way to the calendars of the others, and to the holidays one by one.
fn others(app: App) -> AnyView {
    let rows = Signal::derive(move || {
        app.practice(|practice| {
            let place = |place| {
                let days = practice.place_days(place);
                let usual = days == place.usual_days();
                line(say_dates::place(place), "", to(Setting::Place(place))).small(plan::place_days(days, usual))
            };
            let kept = practice.switched().len();
            vec![
                line(plan::HOLIDAYS_KEPT, "", to(Setting::Holidays)).small(plan::switched(kept)),
                place(Place::AssayOffice),
                place(Place::Courier),
            ]
        })
    });
    section(plan::WHO_ELSE, vec![lines(rows)])
}

fn own_closures(app: App) -> AnyView {
    let rows = Signal::derive(move || {
        let today = app.today.get();
        app.practice(|practice| {
            let closures = practice.closures().into_iter();
            closures
                .map(|(item, closure)| {
                    let over = if closure.is_over(today) { say::IS_OVER } else { "" };
                    line(closure.name.clone(), over, to(Setting::Closure(Some(item)))).small(say::closure_days(closure))
                })
                .collect::<Vec<_>>()
        })
    });
    section(
        say::CLOSURES,
        vec![
            maybe(move || rows.with(Vec::is_empty).then(|| para("small", say::NO_CLOSURES))),
            lines(rows),
            link_button(Weight::Quiet, say::ADD_CLOSURE, to(Setting::Closure(None))),
        ],
    )
}

/// The next bank holidays of the region that is chosen in the form, saved or not.
fn next_holidays(app: App, form: Form) -> AnyView {
    let region = Memo::new(move |_| form_of::region(&form.texts()));
    let row = |region, holiday: Holiday| Line {
        href: None,
        ..line(format::day(holiday.day), "", "").small(say_dates::holiday_in_full(region, holiday))
    };
    let rows = Signal::derive(move || {
        let next = form_of::next_holidays(&form.texts(), app.today.get());
        next.into_iter().map(|holiday| row(region.get(), holiday)).collect::<Vec<_>>()
    });
    section(
        say::NEXT_HOLIDAYS,
        vec![lines(rows), para("small", Signal::derive(move || say_dates::projection(region.get())))],
    )
}
