//! What is planned for: the chance of being in time, a busy season, a change of size, and whether today counts.

use crate::parts::el::or_nothing;
use crate::parts::lay::{all, block, para};
use leptos::prelude::*;

use super::{back_to_usual, draft, head, keep, now, own};
use crate::app::address::Setting;
use crate::app::form::Form;
use crate::app::seen::Seen;
use crate::app::state::app;
use crate::book::change::Write;
use crate::book::field::PracticeField::{
    self, BusyChance, BusyLonger, BusyMonths, Confidence, CountsToday, ResizeChance, TryOnAfter,
};
use crate::book::value::Value;
use crate::parts::choice::{Shape, choice, option, several};
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::trade::dates::countdown::{CONFIDENCE, RESIZE_CHANCE, TRY_ON_AFTER};
use crate::trade::dates::season::MonthSet;
use crate::trade::limits::Limit;
use crate::trade::measure::Percent;
use crate::words::{dates as say_dates, planning as plan, practice as say, screens as say_frame};

const HERE: Setting = Setting::Chances;
const FIELDS: [PracticeField; 7] =
    [Confidence, CountsToday, ResizeChance, TryOnAfter, BusyChance, BusyLonger, BusyMonths];
const NOT_TODAY: &str = "no";
const TODAY_TOO: &str = "yes";

pub fn chances() -> AnyView {
    let app = app();
    let start = now(app, |practice| {
        let busy = practice.busy();
        let shown = |field, figure: u16| if practice.is_set(field) { figure.to_string() } else { String::new() };
        vec![
            ("confidence", shown(Confidence, practice.confidence().0)),
            ("counts-today", if practice.counts_today() { TODAY_TOO } else { NOT_TODAY }.to_owned()),
            ("resize-chance", shown(ResizeChance, practice.resize_chance().0)),
            ("try-on-after", shown(TryOnAfter, practice.try_on_after().0)),
            ("busy-chance", shown(BusyChance, busy.chance.0)),
            ("busy-longer", shown(BusyLonger, busy.longer.0)),
            ("busy-months", if practice.is_set(BusyMonths) { ticked(busy.months) } else { String::new() }),
        ]
    });
    let form = draft(HERE, start);
    let seen = Seen::practice(app);
    let save = move || match read(form) {
        Some(writes) => keep(app, HERE, form, seen.changed(writes), say_frame::saved(plan::CHANCES)),
        None => show_first_complaint(),
    };
    let share = |key, label: &str, hint: String| fields::percent(form, key, label).hint(hint).line();
    let today = vec![option(TODAY_TOO, plan::COUNTED), option(NOT_TODAY, plan::NOT_COUNTED)];
    let months = (1..=12).map(|month| option(month.to_string(), say_dates::month_short(month))).collect();
    let content = all(vec![
        para("small", say::EMPTY_IS_USUAL),
        block(
            "ledger",
            vec![
                share("confidence", plan::CONFIDENCE, plan::confidence_hint(CONFIDENCE)),
                share("resize-chance", plan::RESIZE_CHANCE, plan::resize_hint(RESIZE_CHANCE)),
                fields::days(form, "try-on-after", plan::TRY_ON_AFTER).hint(plan::try_on_hint(TRY_ON_AFTER)).line(),
                share("busy-chance", plan::BUSY_CHANCE, plan::BUSY_HINT.to_owned()),
                share("busy-longer", plan::BUSY_LONGER, plan::BUSY_LONGER_HINT.to_owned()),
            ],
        ),
        several(
            "busy-months",
            plan::BUSY_MONTHS_ASKED,
            months,
            form.text("busy-months"),
            form.complaint("busy-months"),
        ),
        choice("counts-today", plan::COUNTS_TODAY, Shape::Segments, today, form.text("counts-today")),
        or_nothing(back_to_usual(app, HERE, form, plan::CHANCES, FIELDS.into())),
    ]);
    form_page(head(HERE, plan::CHANCES), form, content, say_frame::SAVE, save)
}

fn read(form: Form) -> Option<Vec<Write>> {
    let confidence = fields::read_optional_percent(form, "confidence", Limit::ConfidenceShare);
    let resize = fields::read_optional_percent(form, "resize-chance", Limit::ChanceShare);
    let wait = fields::read_optional_days(form, "try-on-after");
    let busy = fields::read_optional_percent(form, "busy-chance", Limit::ChanceShare);
    let longer = fields::read_optional_percent(form, "busy-longer", Limit::LongerShare);
    let counts = form.text("counts-today").get_untracked() == TODAY_TOO;
    let (confidence, resize, wait) = (confidence?.unwrap_or(CONFIDENCE), resize?.unwrap_or(RESIZE_CHANCE), wait?);
    let wait = wait.unwrap_or(TRY_ON_AFTER);
    let (busy, longer) = (busy?.unwrap_or(Percent(0)), longer?.unwrap_or(Percent(0)));
    let months = form.text("busy-months").get_untracked();
    let months = MonthSet::of(months.split(' ').filter_map(|month| month.parse().ok())).unwrap_or(MonthSet::ALL);
    // None ticked and all ticked are the same: all the year.
    let all_year = months.is_empty() || months == MonthSet::ALL;
    Some(vec![
        own(Confidence, Value::Percent(confidence), confidence == CONFIDENCE),
        own(CountsToday, Value::Yes(counts), counts),
        own(ResizeChance, Value::Percent(resize), resize == RESIZE_CHANCE),
        own(TryOnAfter, Value::Days(wait), wait == TRY_ON_AFTER),
        own(BusyChance, Value::Percent(busy), busy == Percent(0)),
        own(BusyLonger, Value::Percent(longer), longer == Percent(0)),
        own(BusyMonths, Value::Months(months), all_year),
    ])
}

/// The months as a group of boxes has them: "5 6 7 12".
fn ticked(months: MonthSet) -> String {
    months.months().map(|month| month.to_string()).collect::<Vec<_>>().join(" ")
}
