//! One closure of the workshop.

use leptos::prelude::*;

use super::{head, item, not_here, open};
use crate::app::address::Setting;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::id::ItemId;
use crate::book::settings;
use crate::forms::setup::closure as form_of;
use crate::parts::choice::{Shape, option};
use crate::parts::el::or_nothing;
use crate::parts::layout::all;
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::trade::dates::closed::Repeats;
use crate::trade::dates::places::Place;
use crate::words::{dates as say_dates, format, planning as plan, practice as say, screens as say_frame};

/// A closure that is known, or a new one.
pub fn closure(which: Option<ItemId>) -> AnyView {
    let app = app();
    let here = Setting::Closure(which);
    let Some((item, known)) = item(which, |practice| practice.closures()) else { return not_here(here) };
    let page = open(here, |_| form_of::start(known.as_ref(), format::day));
    let form = page.form;
    let save = move || {
        let today = app.today.get_untracked();
        let read = page.read(|texts| app.practice(|practice| form_of::read(texts, practice, item, today)));
        let Some(closure) = read else { return };
        let said = say_frame::saved(&closure.name);
        page.save(vec![settings::closure(item).write(Some(closure))], said);
    };
    let remove = known.as_ref().map(|it| page.remove(vec![settings::closure(item).write(None)], &it.name));
    // A last day without a year is the next such day after the first.
    let first = Signal::derive(move || form_of::first_day(&form.texts(), app.today.get()));
    let places = Place::ALL.map(|place| option(place.code(), say_dates::place(place))).into();
    let repeats = [Repeats::Once, Repeats::SameDates, Repeats::SameWeekday];
    let repeats = repeats.map(|it| option(it.code(), plan::repeats(it))).into();
    let content = all(vec![
        fields::text(form, form_of::NAME, say::CLOSURE_NAME).hint(say::CLOSURE_NAME_HINT).line(),
        fields::day(form, form_of::FROM, say::CLOSURE_FROM),
        fields::day_from(form, form_of::TO, say::CLOSURE_TO, first),
        fields::choice(form, form_of::REPEATS, plan::CLOSURE_REPEATS, Shape::Chips, repeats),
        fields::choice(form, form_of::PLACE, plan::CLOSURE_PLACE, Shape::Chips, places),
        or_nothing(remove),
    ]);
    let title = known.map_or_else(|| say::NEW_CLOSURE.to_owned(), |it| it.name);
    form_page(head(here, title), form, content, say_frame::SAVE, save)
}
