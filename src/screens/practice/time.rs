//! How long one piece of work takes: a usual one, or one of the jeweller's own.

use leptos::prelude::*;

use super::{back_to_usual, head, item, not_here, open};
use crate::app::address::Setting;
use crate::book::field::PracticeField;
use crate::book::id::ItemId;
use crate::book::settings;
use crate::forms::setup::lead_time as form_of;
use crate::parts::el::{el, or_nothing};
use crate::parts::layout::{all, block, para};
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::trade::dates::lead_times::Step as Work;
use crate::words::{dates as say_dates, practice as say, screens as say_frame};

/// One of the usual pieces of work.
pub fn usual(work: Work) -> AnyView {
    let here = Setting::Time(work);
    let page = open(here, |practice| form_of::start_usual(practice, work));
    let name = say_dates::step(work);
    let save = move || {
        let Some(write) = page.read(|texts| form_of::read_usual(texts, work)) else { return };
        page.save(vec![write], say_frame::saved(name));
    };
    let content = all(vec![
        el("p").class("small").text(say::days_usual(work)).child(" ".into_any()).text(say::EMPTY_ARE_USUAL).view(),
        block("ledger", vec![fields::spread(page.form, form_of::DAYS)]),
        back_to_usual(page, name, &[PracticeField::LeadTime(work)]),
    ]);
    form_page(head(here, name.to_owned()), page.form, content, say_frame::SAVE, save)
}

/// One of the jeweller's own, or a new one.
pub fn extra(which: Option<ItemId>) -> AnyView {
    let here = Setting::Extra(which);
    let Some((item, known)) = item(which, |practice| practice.extras()) else { return not_here(here) };
    let page = open(here, |_| form_of::start_own(known.as_ref()));
    let save = move || {
        let Some(extra) = page.read(form_of::read_own) else { return };
        let said = say_frame::saved(&extra.name);
        page.save(vec![settings::extra(item).write(Some(extra))], said);
    };
    let remove = known.as_ref().map(|extra| page.remove(vec![settings::extra(item).write(None)], &extra.name));
    let content = all(vec![
        fields::text(page.form, form_of::NAME, say::EXTRA_NAME).line(),
        para("", say::EXTRA_DAYS),
        block("ledger", vec![fields::spread(page.form, form_of::DAYS)]),
        or_nothing(remove),
    ]);
    let title = known.map_or_else(|| say::NEW_EXTRA.to_owned(), |extra| extra.name);
    form_page(head(here, title), page.form, content, say_frame::SAVE, save)
}
