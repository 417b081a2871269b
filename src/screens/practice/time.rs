//! How long one piece of work takes: a usual one, or one of the jeweller's own.

use crate::parts::el::{el, or_nothing};
use crate::parts::lay::{all, block, para};
use leptos::prelude::*;

use super::{back_to_usual, draft, head, keep, not_here, now, own, remove};
use crate::app::address::Setting;
use crate::app::clock;
use crate::app::state::app;
use crate::book::change::Write;
use crate::book::field::{Field, PracticeField};
use crate::book::id::ItemId;
use crate::book::value::{Extra, Value};
use crate::screens::fields::{self, SpreadKeys};
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::trade::dates::lead_times::{self, Step as Work};
use crate::trade::dates::spread::Spread;
use crate::words::{dates as say_dates, practice as say, screens as say_frame};

const KEYS: SpreadKeys = ["least-days", "usual-days", "most-days"];

/// One of the usual pieces of work.
pub fn usual(work: Work) -> AnyView {
    let app = app();
    let here = Setting::Time(work);
    let field = PracticeField::LeadTime(work);
    let row = lead_times::usual(work);
    let set = now(app, |practice| practice.is_set(field).then(|| practice.lead_time(work)));
    let form = draft(here, start(set).into());
    let name = say_dates::step(work);
    let save = move || {
        let Some(spread) = fields::read_optional_spread(form, KEYS) else { return show_first_complaint() };
        let spread = spread.unwrap_or(row.days);
        let write = own(field, Value::Spread(spread), spread == row.days);
        keep(app, here, form, vec![write], say_frame::saved(name));
    };
    let content = all(vec![
        el("p")
            .class("small")
            .text(say::days_usual(row.days, row.standing))
            .child(" ".into_any())
            .text(say::EMPTY_ARE_USUAL)
            .view(),
        block("ledger", vec![fields::spread(form, KEYS)]),
        or_nothing(back_to_usual(app, here, form, name, vec![field])),
    ]);
    form_page(head(here, name.to_owned()), form, content, say_frame::SAVE, save)
}

/// One of the jeweller's own, or a new one.
pub fn extra(which: Option<ItemId>) -> AnyView {
    let app = app();
    let here = Setting::Extra(which);
    let known = which.map(|item| {
        now(app, |practice| practice.extras().into_iter().find(|(known, _)| *known == item).map(|(_, it)| it.clone()))
    });
    if let Some(None) = known {
        return not_here(here);
    }
    let known = known.flatten();
    let mut begin = vec![("extra-name", known.as_ref().map(|extra| extra.name.clone()).unwrap_or_default())];
    begin.extend(start(known.as_ref().map(|extra| extra.spread)));
    let form = draft(here, begin);
    // Given once, so that a second press saves nothing twice.
    let field = PracticeField::Extra(which.unwrap_or(ItemId(clock::random())));
    let save = move || {
        let (name, spread) = (fields::read_name(form, "extra-name"), fields::read_spread(form, KEYS));
        let (Some(name), Some(spread)) = (name, spread) else { return show_first_complaint() };
        let said = say_frame::saved(&name);
        let extra = Value::Extra(Extra { name, spread });
        keep(app, here, form, vec![Write::set(Field::Practice(field), extra)], said);
    };
    let content = all(vec![
        fields::name(form, "extra-name", say::EXTRA_NAME).line(),
        para("", say::EXTRA_DAYS),
        block("ledger", vec![fields::spread(form, KEYS)]),
        or_nothing(known.as_ref().map(|extra| remove(app, here, form, field, extra.name.clone()))),
    ]);
    let title = known.map_or_else(|| say::NEW_EXTRA.to_owned(), |extra| extra.name);
    form_page(head(here, title), form, content, say_frame::SAVE, save)
}

fn start(spread: Option<Spread>) -> [(&'static str, String); 3] {
    let days = spread.map(|spread| [spread.least(), spread.usual(), spread.most()].map(|days| days.0.to_string()));
    let [least, usual, most] = days.unwrap_or_default();
    [(KEYS[0], least), (KEYS[1], usual), (KEYS[2], most)]
}
