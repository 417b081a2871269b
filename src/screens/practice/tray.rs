//! The tray of try-on bands.

use crate::parts::layout::{column, para};
use leptos::prelude::*;

use super::{head, to};
use crate::app::address::Setting;
use crate::app::state::app;
use crate::book::id::ItemId;
use crate::book::value::TryOnBand;
use crate::parts::button::{Weight, link_button};
use crate::parts::line::{Line, line, lines};
use crate::parts::page::page;
use crate::words::{finger as say_finger, gauges as say};

pub fn tray() -> AnyView {
    let app = app();
    let rows = Signal::derive(move || app.practice(|practice| practice.tray().into_iter().map(row).collect()));
    let content = column(vec![para("", say::TRY_ON_WHY), lines(rows)]);
    let add = link_button(Weight::Primary, say::ADD_TRY_ON, to(Setting::TryOn(None)));
    page(head(Setting::Tray, say_finger::TRAY), content, Some(add))
}

fn row((item, band): (ItemId, &TryOnBand)) -> Line {
    line(say_finger::try_on(band), "", to(Setting::TryOn(Some(item)))).small(say_finger::try_on_small(band))
}
