//! Practice: what the jeweller sets for their own work, a line each, and a small form behind each line.

mod calibration;
mod chances;
mod closure;
mod closures;
mod example;
mod fair;
mod fit;
mod gauge;
mod gauges;
mod holidays;
mod learned;
mod phone;
mod place;
mod sizes;
mod stack;
mod time;
mod times;
mod tray;
mod try_on;

pub use example::load_examples;

use crate::parts::layout::{column, para, section};
use leptos::prelude::*;

use crate::app::address::{Address, Setting};
use crate::app::clock;
use crate::app::state::{App, app};
use crate::book::field::{Constant, PracticeField};
use crate::book::id::ItemId;
use crate::book::practice::Practice;
use crate::book::verbs;
use crate::parts::el::or_nothing;
use crate::parts::line::{Line, line, lines};
use crate::parts::page::{PageHeader, page};
use crate::screens::shell::form_page::RecordForm;
use crate::screens::shell::setting_page::{head, now, open};
use crate::storage::preferences;
use crate::trade::dates::lead_times::Step as Work;
use crate::words::finger as say_finger;
use crate::words::gauges as say_gauges;
use crate::words::parts::Mark;
use crate::words::phones as say_phones;
use crate::words::{copies as say_copies, dates as say_dates, format, screens as say_frame, sizing as say_sizing};
use crate::words::{planning as plan, practice as say};

/// The list of what can be set, each line with what it is set to.
pub fn practice() -> AnyView {
    let app = app();
    let part = |heading: &'static str, rows: fn(App) -> Vec<Line>| {
        let rows = lines(Signal::derive(move || rows(app)));
        section(heading, vec![rows])
    };
    let content = column(vec![
        lines(Signal::derive(move || differences_line(app).into_iter().chain([fair_line(app)]).collect())),
        part(say::MEASURING, measuring),
        part(say::DAYS, days),
        part(say::APP, the_app),
    ]);
    page(PageHeader::new(say_frame::SETUP), content, None)
}

/// The screen behind a line.
pub fn setting(setting: Setting) -> AnyView {
    match setting {
        Setting::Fair => fair::fair(),
        Setting::Sizes => sizes::sizes(),
        Setting::Gauges => gauges::gauges(),
        Setting::Gauge(which) => gauge::gauge(which),
        Setting::Tray => tray::tray(),
        Setting::TryOn(which) => try_on::try_on(which),
        Setting::Times => times::times(),
        Setting::Time(work) => time::usual(work),
        Setting::Extra(which) => time::extra(which),
        Setting::Closures => closures::closures(),
        Setting::Place(which) => place::place(which),
        Setting::Holidays => holidays::holidays(),
        Setting::Chances => chances::chances(),
        Setting::Closure(which) => closure::closure(which),
        Setting::Stack => stack::stack(),
        Setting::Fit => fit::fit(),
        Setting::Phone => phone::phone(),
        Setting::Example => example::example(),
        // In a room of their own.
        Setting::PhoneName(_) | Setting::Install | Setting::Copies | Setting::BringIn | Setting::Differences => {
            not_here(setting)
        }
    }
}

fn to(setting: Setting) -> String {
    Address::Setting(setting).to_string()
}

fn fair_line(app: App) -> Line {
    let fair = app.practice(|practice| practice.fair().map(str::to_owned));
    line(say::FAIR, fair.unwrap_or_else(|| say::NOT_SET.to_owned()), to(Setting::Fair))
}

fn differences_line(app: App) -> Option<Line> {
    let count = app.practice(|practice| practice.0.conflicts().len());
    let row = || line(say_phones::differences(count), "", to(Setting::Differences)).mark(Mark::Care);
    (count > 0).then(row)
}

fn measuring(app: App) -> Vec<Line> {
    app.practice(|practice| {
        let gauges = practice.gauges();
        let names: Vec<&str> = gauges.iter().map(|(_, own)| own.name.as_str()).collect();
        let own = Constant::ALL.iter().filter(|which| practice.constant(**which).is_some()).count();
        vec![
            line(say::SIZES, say_sizing::system_name(practice.first_system()), to(Setting::Sizes))
                .small(say_sizing::step_name(practice.step())),
            line(say::GAUGES, say::gauges(&names), to(Setting::Gauges)),
            line(say_finger::TRAY, say_gauges::tray(practice.tray().len()), to(Setting::Tray)),
            line(say::FIT, say::own_constants(own), to(Setting::Fit)),
            line(say::STACK, "", to(Setting::Stack)).small(say::house(&practice.house())),
        ]
    })
}

fn days(app: App) -> Vec<Line> {
    let today = app.today.get();
    app.practice(|practice| {
        let to_come = practice.closures().iter().filter(|(_, closure)| !closure.is_over(today)).count();
        let region = say_dates::region(practice.region());
        vec![
            line(say::TIMES, "", to(Setting::Times)).small(format!(
                "{}: {}",
                say_dates::step(Work::Making),
                say_dates::spread(practice.lead_time(Work::Making))
            )),
            line(plan::CHANCES, plan::share(practice.confidence()), to(Setting::Chances))
                .small(plan::chances(practice.busy(), practice.resize_chance())),
            line(say::CLOSED_DAYS, region, to(Setting::Closures)).small(say::closed_days(
                practice.weekdays(),
                practice.on_bank_holidays(),
                to_come,
            )),
        ]
    })
}

fn the_app(app: App) -> Vec<Line> {
    let (untouched, edited) = (app.untouched_examples(), app.edited_examples());
    let last =
        app.last_copy.get().map_or_else(|| say_copies::NEVER.to_owned(), |last| format::day(clock::civil(last.at).0));
    vec![
        line(say_copies::COPIES, last, to(Setting::Copies)).small(say_copies::COPIES_SMALL),
        line(say_copies::BRING_IN, "", to(Setting::BringIn)).small(say_copies::BRING_IN_SMALL),
        line(say::PHONE, say::theme(&preferences::theme()), to(Setting::Phone))
            .small(say::version(env!("CARGO_PKG_VERSION"))),
        line(say::EXAMPLE, say::examples(untouched, edited), to(Setting::Example)),
    ]
}

/// What is shown at the address of an item that is not there, or not any more.
fn not_here(setting: Setting) -> AnyView {
    let head = head(setting, say_frame::NOT_HERE);
    page(head, para("", say_frame::NOT_HERE_WHY), None)
}

/// The item of an address, and what is known of it; for a new one an id, given once, so that a second press saves
/// nothing twice. None where it is not there, or not any more.
fn item<T: Clone>(
    which: Option<ItemId>,
    all: for<'a> fn(Practice<'a>) -> Vec<(ItemId, &'a T)>,
) -> Option<(ItemId, Option<T>)> {
    let Some(item) = which else { return Some((ItemId(clock::random()), None)) };
    let find =
        |practice: Practice<'_>| all(practice).into_iter().find(|(known, _)| *known == item).map(|it| it.1.clone());
    now(app(), find).map(|known| (item, Some(known)))
}

/// A button that takes back whatever was set in these fields; nothing where nothing was.
fn back_to_usual(page: RecordForm, what: &'static str, fields: &[PracticeField]) -> AnyView {
    let is_set = now(app(), |practice| fields.iter().any(|field| practice.is_set(*field)));
    let clear = || verbs::back_to_usual(fields);
    or_nothing(is_set.then(|| page.button(say::BACK_TO_USUAL, clear(), say::back_to_usual(what))))
}
