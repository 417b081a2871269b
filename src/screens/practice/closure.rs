//! One closure of the workshop.

use crate::parts::el::or_nothing;
use crate::parts::lay::all;
use chrono::NaiveDate;
use leptos::prelude::*;

use super::{draft, head, keep, not_here, now, remove};
use crate::app::address::Setting;
use crate::app::clock;
use crate::app::form::Form;
use crate::app::state::{App, app};
use crate::archive::code::Code;
use crate::book::change::Write;
use crate::book::field::{Field, PracticeField};
use crate::book::id::ItemId;
use crate::book::value::{NamedClosure, Value};
use crate::parts::choice::{Shape, choice, option};
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::trade::dates::closed::{Closure, Repeats};
use crate::trade::dates::entry::read_day;
use crate::trade::dates::places::Place;
use crate::words::{dates as say_dates, format, planning as plan, practice as say, screens as say_frame};

/// A closure that is known, or a new one.
pub fn closure(which: Option<ItemId>) -> AnyView {
    let app = app();
    let here = Setting::Closure(which);
    let known = which.map(|item| {
        now(app, |practice| practice.closures().into_iter().find(|(known, _)| *known == item).map(|(_, it)| it.clone()))
    });
    if let Some(None) = known {
        return not_here(here);
    }
    let known = known.flatten();
    let day = |of: fn(Closure) -> NaiveDate| known.as_ref().map(|it| format::day(of(it.days))).unwrap_or_default();
    let start = vec![
        ("closure-name", known.as_ref().map(|it| it.name.clone()).unwrap_or_default()),
        ("closure-from", day(Closure::from)),
        ("closure-to", day(Closure::to)),
        ("closure-place", known.as_ref().map_or(Place::Workshop, |it| it.place).code().to_owned()),
        ("closure-repeats", known.as_ref().map_or(Repeats::Once, |it| it.days.repeats()).code().to_owned()),
    ];
    let form = draft(here, start);
    // Given once, so that a second press saves nothing twice.
    let item = which.unwrap_or(ItemId(clock::random()));
    let field = PracticeField::Closure(item);
    let save = move || {
        let Some(closure) = read(app, form, item) else { return show_first_complaint() };
        let said = say_frame::saved(&closure.name);
        keep(app, here, form, vec![Write::set(Field::Practice(field), Value::Closure(closure))], said);
    };
    // A last day without a year is the next such day after the first.
    let first = Signal::derive(move || first_day(form, app.today.get()));
    let places = Place::ALL.map(|place| option(place.code(), say_dates::place(place))).into();
    let repeats = [Repeats::Once, Repeats::SameDates, Repeats::SameWeekday];
    let repeats = repeats.map(|it| option(it.code(), plan::repeats(it))).into();
    let content = all(vec![
        fields::name(form, "closure-name", say::CLOSURE_NAME).hint(say::CLOSURE_NAME_HINT).line(),
        fields::day(form, "closure-from", say::CLOSURE_FROM),
        fields::day_from(form, "closure-to", say::CLOSURE_TO, first),
        choice("closure-repeats", plan::CLOSURE_REPEATS, Shape::Chips, repeats, form.text("closure-repeats")),
        choice("closure-place", plan::CLOSURE_PLACE, Shape::Chips, places, form.text("closure-place")),
        or_nothing(known.as_ref().map(|it| remove(app, here, form, field, it.name.clone()))),
    ]);
    let title = known.map_or_else(|| say::NEW_CLOSURE.to_owned(), |it| it.name);
    form_page(head(here, title), form, content, say_frame::SAVE, save)
}

fn first_day(form: Form, today: NaiveDate) -> NaiveDate {
    form.text("closure-from").with(|text| read_day(text, today)).unwrap_or(today)
}

fn read(app: App, form: Form, item: ItemId) -> Option<NamedClosure> {
    let today = app.today.get_untracked();
    let name = fields::read_name(form, "closure-name");
    let from = fields::read_day(form, "closure-from", today);
    let to = fields::read_day_from(form, "closure-to", untrack(|| first_day(form, today)), today);
    let days = Closure::new(from?, to?).map_err(say_dates::calendar_error);
    let repeats = Repeats::from_code(&form.text("closure-repeats").get_untracked()).unwrap_or_default();
    let place = Place::from_code(&form.text("closure-place").get_untracked()).unwrap_or_default();
    let days = form.judge("closure-to", days)?.repeating(repeats);
    // The calendar is asked whether it takes one more, and whether anybody still works then.
    let calendar = now(app, |practice| practice.calendar_with(place, item, days));
    let name = name?;
    let calendar = form.judge("closure-name", calendar.map_err(say_dates::calendar_error))?;
    let works = calendar.works_in_the_year_after(days.to());
    form.judge("closure-to", works.then_some(()).ok_or_else(|| plan::never_works(days.to())))?;
    Some(NamedClosure { name, place, days })
}
