//! How the assay office or the courier works.

use leptos::prelude::*;

use super::closures::week;
use super::{back_to_usual, head, not_here, open};
use crate::app::address::Setting;
use crate::book::field::PracticeField;
use crate::forms::setup::place as form_of;
use crate::parts::choice::{Shape, option};
use crate::parts::layout::{all, para};
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::trade::dates::places::Place;
use crate::words::{dates as say_dates, planning as plan, practice as say, screens as say_frame};

pub fn place(which: Place) -> AnyView {
    let here = Setting::Place(which);
    // The workshop has a form of its own.
    if which == Place::Workshop {
        return not_here(here);
    }
    let page = open(here, |practice| form_of::start(practice, which));
    let form = page.form;
    let name = say_dates::place(which);
    let save = move || {
        let Some(write) = page.read(|texts| form_of::read(texts, which)) else { return };
        page.save(vec![write], say_frame::saved(name));
    };
    let shut = |key, legend: &'static str| {
        let words = vec![option(form_of::CLOSED, say::HOLIDAYS_CLOSED), option(form_of::OPEN, say::HOLIDAYS_WORKED)];
        fields::choice(form, key, legend, Shape::Segments, words)
    };
    let content = all(vec![
        para("small", plan::PLACE_WHY),
        fields::several(form, form_of::WEEKDAYS, say::WEEKDAYS, week()),
        shut(form_of::ON_HOLIDAYS, plan::PLACE_HOLIDAYS),
        shut(form_of::AT_CHRISTMAS, plan::PLACE_CHRISTMAS),
        back_to_usual(page, name, &[PracticeField::PlaceDays(which)]),
    ]);
    form_page(head(here, name), form, content, say_frame::SAVE, save)
}
