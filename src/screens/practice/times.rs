//! How long each piece of work takes: the usual ones, and the jeweller's own.

use crate::parts::el::maybe;
use crate::parts::layout::{column, para, section};
use leptos::prelude::*;

use super::{head, to};
use crate::app::address::Setting;
use crate::app::state::app;
use crate::book::field::PracticeField;
use crate::book::practice::Practice;
use crate::parts::button::{Weight, link_button};
use crate::parts::line::{Line, line, lines};
use crate::parts::page::page;
use crate::trade::dates::lead_times::{EXTRAS, LeadTime, MAKING};
use crate::trade::measure::Standing;
use crate::words::{dates as say_dates, practice as say};

pub fn times() -> AnyView {
    let app = app();
    let usual = Signal::derive(move || {
        app.practice(|practice| [MAKING].into_iter().chain(EXTRAS).map(|row| usual(practice, row)).collect())
    });
    let own = Signal::derive(move || app.practice(extras));
    let content = column(vec![
        para("small", say::TIMES_WHY),
        lines(usual),
        section(
            say::OWN_EXTRAS,
            vec![maybe(move || own.with(Vec::is_empty).then(|| para("small", say::NO_EXTRAS))), lines(own)],
        ),
    ]);
    let add = link_button(Weight::Primary, say::ADD_EXTRA, to(Setting::Extra(None)));
    page(head(Setting::Times, say::TIMES), content, Some(add))
}

fn usual(practice: Practice<'_>, row: LeadTime) -> Line {
    let days = practice.lead_time(row.step);
    let set = practice.is_set(PracticeField::LeadTime(row.step));
    line(say_dates::step(row.step), say::days_range(days), to(Setting::Time(row.step)))
        .small(say::days_details(days, if set { Standing::Yours } else { row.standing }))
}

fn extras(practice: Practice<'_>) -> Vec<Line> {
    let extras = practice.extras().into_iter();
    extras
        .map(|(item, extra)| {
            line(extra.name.clone(), say::days_range(extra.spread), to(Setting::Extra(Some(item))))
                .small(say::days_details(extra.spread, Standing::Yours))
        })
        .collect()
}
