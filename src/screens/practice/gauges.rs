//! The gauges that the jeweller owns.

use crate::parts::el::maybe;
use crate::parts::layout::{block, column, para};
use leptos::prelude::*;

use super::{head, to};
use crate::app::address::Setting;
use crate::app::clock;
use crate::app::state::{App, app};
use crate::book::id::ItemId;
use crate::book::settings;
use crate::book::value::OwnGauge;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::line::{Line, line, lines};
use crate::parts::page::page;
use crate::trade::fit::gauges::USUAL_SETS;
use crate::words::practice as say;

pub fn gauges() -> AnyView {
    let app = app();
    let none = move || app.practice(|practice| practice.gauges().is_empty());
    let rows = Signal::derive(move || app.practice(|practice| practice.gauges().into_iter().map(row).collect()));
    let usual = Memo::new(move |_| app.practice(|practice| lacking(&practice.gauges())));
    let content = column(vec![
        maybe(move || none().then(|| para("", say::NO_GAUGES))),
        lines(rows),
        maybe(move || usual.get().then(|| usual_sets(app))),
    ]);
    let add = link_button(Weight::Primary, say::ADD_GAUGE, to(Setting::Gauge(None)));
    page(head(Setting::Gauges, say::GAUGES), content, Some(add))
}

fn row((item, own): (ItemId, &OwnGauge)) -> Line {
    line(own.name.clone(), say::gauge(own), to(Setting::Gauge(Some(item)))).small(say::gauge_details(own))
}

/// Whether none of the usual sets is here.
fn lacking(gauges: &[(ItemId, &OwnGauge)]) -> bool {
    gauges.iter().all(|(_, own)| !USUAL_SETS.contains(&own.gauge))
}

fn usual_sets(app: App) -> AnyView {
    let add = move || {
        let set = |(name, gauge): (&str, _)| {
            let own = OwnGauge { name: name.to_owned(), gauge, calibration: Vec::new() };
            settings::gauge(ItemId(clock::random())).write(Some(own))
        };
        let writes = say::USUAL_SET_NAMES.into_iter().zip(USUAL_SETS).map(set).collect();
        app.set_practice(writes, say::USUAL_SETS_ADDED.to_owned(), || ());
    };
    block(
        "section",
        vec![
            button(Weight::Quiet, say::ADD_USUAL_SETS, add),
            para("small", say::usual_sets(USUAL_SETS.map(|gauge| gauge.width))),
        ],
    )
}
