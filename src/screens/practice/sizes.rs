//! The size system shown first, and the step in which the bench makes sizes.

use leptos::prelude::*;

use super::{back_to_usual, head, open};
use crate::app::address::Setting;
use crate::archive::code::Code;
use crate::forms::setup::sizes as form_of;
use crate::parts::choice::{Shape, choice_with, option};
use crate::parts::layout::all;
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::trade::sizing::{Step, System};
use crate::words::practice as say;
use crate::words::{screens as say_frame, sizing as say_sizing};

const HERE: Setting = Setting::Sizes;

pub fn sizes() -> AnyView {
    let page = open(HERE, form_of::start);
    let form = page.form;
    let save = move || {
        page.save(untrack(|| form_of::read(&form.texts())), say_frame::saved(say::SIZES));
    };
    let systems = System::ALL.map(|it| option(it.code(), say_sizing::system_name(it))).into();
    let steps = Step::ALL.map(|it| option(it.code(), say_sizing::step_name(it))).into();
    let place = Signal::derive(move || say_sizing::system_where(form_of::system(&form.texts())).to_owned());
    let content = all(vec![
        choice_with(
            form_of::FIRST_SYSTEM.name(),
            say::FIRST_SYSTEM.into(),
            Some(place.into()),
            Shape::Chips,
            systems,
            form.text(form_of::FIRST_SYSTEM),
        ),
        fields::choice(form, form_of::STEP, say::STEP, Shape::Chips, steps),
        back_to_usual(page, say::SIZES, &form_of::FIELDS),
    ]);
    form_page(head(HERE, say::SIZES), form, content, say_frame::SAVE, save)
}
