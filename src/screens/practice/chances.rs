//! What is planned for: the chance of being in time, a busy season, a change of size, and whether today counts.

use leptos::prelude::*;

use super::{back_to_usual, head, open};
use crate::app::address::Setting;
use crate::forms::setup::chances as form_of;
use crate::parts::choice::{Shape, option};
use crate::parts::layout::{all, block, para};
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::trade::dates::countdown::{CONFIDENCE, RESIZE_CHANCE, TRY_ON_AFTER};
use crate::words::{dates as say_dates, planning as plan, practice as say, screens as say_frame};

const HERE: Setting = Setting::Chances;

pub fn chances() -> AnyView {
    let page = open(HERE, form_of::start);
    let form = page.form;
    let save = move || {
        let Some(writes) = page.read(form_of::read) else { return };
        page.save(writes, say_frame::saved(plan::CHANCES));
    };
    let share = |key, label: &str, hint: String| fields::percent(form, key, label).hint(hint).line();
    let today = vec![option(form_of::TODAY_TOO, plan::COUNTED), option(form_of::NOT_TODAY, plan::NOT_COUNTED)];
    let months = (1..=12).map(|month| option(month.to_string(), say_dates::month_short(month))).collect();
    let content = all(vec![
        para("small", say::EMPTY_IS_USUAL),
        block(
            "ledger",
            vec![
                share(form_of::CONFIDENCE_WANTED, plan::CONFIDENCE, plan::confidence_hint(CONFIDENCE)),
                share(form_of::RESIZE, plan::RESIZE_CHANCE, plan::resize_hint(RESIZE_CHANCE)),
                fields::days(form, form_of::WAIT, plan::TRY_ON_AFTER).hint(plan::try_on_hint(TRY_ON_AFTER)).line(),
                share(form_of::BUSY, plan::BUSY_CHANCE, plan::BUSY_HINT.to_owned()),
                share(form_of::LONGER, plan::BUSY_LONGER, plan::BUSY_LONGER_HINT.to_owned()),
            ],
        ),
        fields::several(form, form_of::MONTHS, plan::BUSY_MONTHS_ASKED, months),
        fields::choice(form, form_of::COUNTS_TODAY, plan::COUNTS_TODAY, Shape::Segments, today),
        back_to_usual(page, plan::CHANCES, &form_of::FIELDS),
    ]);
    form_page(head(HERE, plan::CHANCES), form, content, say_frame::SAVE, save)
}
