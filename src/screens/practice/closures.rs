//! Closed days: the region's bank holidays, the days worked, and the workshop's own closures.

use crate::parts::el::{maybe, or_nothing};
use crate::parts::lay::{all, para, section};
use chrono::Weekday;
use leptos::prelude::*;

use super::{back_to_usual, draft, head, keep, now, own, to};
use crate::app::address::Setting;
use crate::app::form::Form;
use crate::app::seen::Seen;
use crate::app::state::{App, app};
use crate::archive::code::Code;
use crate::book::change::Write;
use crate::book::field::PracticeField::{self, CutOff, DaysInHand, Region as RegionField, WorksOnHolidays};
use crate::book::practice::USUAL_REGION;
use crate::book::value::Value;
use crate::parts::button::{Weight, link_button};
use crate::parts::choice::{Choosable, Shape, choice, option, pick, several};
use crate::parts::line::{Line, line, lines};
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::trade::dates::closed::{Calendar, MON_TO_FRI, OnBankHolidays, Weekdays};
use crate::trade::dates::holidays::{Holiday, Region, upcoming};
use crate::trade::dates::lead_times::IN_HAND;
use crate::trade::dates::places::Place;
use crate::words::{dates as say_dates, format, planning as plan, practice as say, screens as say_frame};

const HERE: Setting = Setting::Closures;
pub(super) const CLOSED: &str = "closed";
pub(super) const OPEN: &str = "open";
const WEEK: [Weekday; 7] =
    [Weekday::Mon, Weekday::Tue, Weekday::Wed, Weekday::Thu, Weekday::Fri, Weekday::Sat, Weekday::Sun];

/// About a year of them.
const HOLIDAYS_SHOWN: usize = 10;

pub fn closures() -> AnyView {
    let app = app();
    let form = draft(HERE, start(app));
    let seen = Seen::practice(app);
    let save = move || match read(form) {
        Some(writes) => keep(app, HERE, form, seen.changed(writes), say_frame::saved(say::CLOSED_DAYS)),
        None => show_first_complaint(),
    };
    let regions = Region::ALL.map(|it| (it.code().to_owned(), say_dates::region(it).to_owned())).into();
    let holidays = vec![option(CLOSED, say::HOLIDAYS_CLOSED), option(OPEN, say::HOLIDAYS_WORKED)];
    let content = all(vec![
        pick("region", say::REGION, regions, form.text("region")),
        several("weekdays", say::WEEKDAYS, week(), form.text("weekdays"), form.complaint("weekdays")),
        choice("on-holidays", say::ON_HOLIDAYS, Shape::Segments, holidays, form.text("on-holidays")),
        fields::time(form, "cut-off", say::CUT_OFF, say::CUT_OFF_HINT),
        fields::days(form, "in-hand", say::IN_HAND).hint(say::in_hand_hint(IN_HAND)).enter("done").line(),
        or_nothing(back_to_usual(app, HERE, form, say::CLOSED_DAYS, FIELDS.into())),
        others(app),
        own_closures(app),
        next_holidays(app, form),
    ]);
    form_page(head(HERE, say::CLOSED_DAYS), form, content, say_frame::SAVE, save)
}

/// What this form sets; the closures have forms of their own.
const FIELDS: [PracticeField; 5] = [RegionField, PracticeField::Weekdays, WorksOnHolidays, CutOff, DaysInHand];

fn start(app: App) -> Vec<(&'static str, String)> {
    now(app, |practice| {
        let days: Vec<&str> = practice.weekdays().iter(Weekday::Mon).map(Code::code).collect();
        let on_holidays = match practice.on_bank_holidays() {
            OnBankHolidays::Closed => CLOSED,
            OnBankHolidays::Works => OPEN,
        };
        let in_hand = practice.is_set(DaysInHand).then(|| practice.in_hand().0.to_string());
        vec![
            ("region", practice.region().code().to_owned()),
            ("weekdays", days.join(" ")),
            ("on-holidays", on_holidays.to_owned()),
            ("cut-off", practice.cut_off().map(say_dates::time).unwrap_or_default()),
            ("in-hand", in_hand.unwrap_or_default()),
        ]
    })
}

fn read(form: Form) -> Option<Vec<Write>> {
    let text = |key| form.text(key).get_untracked();
    let region = Region::from_code(&text("region")).unwrap_or(USUAL_REGION);
    let days = read_week(form, "weekdays");
    let cut_off = fields::read_optional_time(form, "cut-off");
    let in_hand = fields::read_optional_days(form, "in-hand");
    let (days, cut_off, in_hand) = (days?, cut_off?, in_hand?.unwrap_or(IN_HAND));
    let works = text("on-holidays") == OPEN;
    Some(vec![
        own(RegionField, Value::Region(region), region == USUAL_REGION),
        own(PracticeField::Weekdays, Value::Weekdays(days), days == MON_TO_FRI),
        own(WorksOnHolidays, Value::Yes(works), !works),
        own(CutOff, Value::Time(cut_off.unwrap_or_default()), cut_off.is_none()),
        own(DaysInHand, Value::Days(in_hand), in_hand == IN_HAND),
    ])
}

/// The days of a week to choose from.
pub(super) fn week() -> Vec<Choosable> {
    WEEK.map(|day| option(day.code(), say::weekday(day))).into()
}

/// The days that are chosen. A week without a working day says so itself.
pub(super) fn read_week(form: Form, key: &str) -> Option<Weekdays> {
    let chosen = form.text(key).get_untracked();
    let days: Weekdays = chosen.split(' ').filter_map(Weekday::from_code).collect();
    let worked = Calendar::new(USUAL_REGION, OnBankHolidays::Closed, days, Vec::new());
    form.judge(key, worked.map_err(say_dates::calendar_error)).map(|_| days)
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
    let region = form.text("region");
    let region = Memo::new(move |_| region.with(|code| Region::from_code(code)).unwrap_or(USUAL_REGION));
    let row = |region, holiday: Holiday| Line {
        href: None,
        ..line(format::day(holiday.day), "", "").small(say_dates::holiday_in_full(region, holiday))
    };
    let rows = Signal::derive(move || {
        let next = upcoming(region.get(), app.today.get()).take(HOLIDAYS_SHOWN);
        next.map(|holiday| row(region.get(), holiday)).collect::<Vec<_>>()
    });
    section(
        say::NEXT_HOLIDAYS,
        vec![lines(rows), para("small", Signal::derive(move || say_dates::projection(region.get())))],
    )
}
