//! One band of the tray.

use leptos::prelude::*;

use super::{head, item, not_here, open};
use crate::app::address::Setting;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::id::ItemId;
use crate::book::settings;
use crate::forms::setup::try_on as form_of;
use crate::parts::choice::{Shape, option};
use crate::parts::el::{maybe, or_nothing};
use crate::parts::layout::all;
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::trade::band::Bore;
use crate::words::{finger as say_finger, gauges as say, practice as say_practice, screens as say_frame};

/// A band that is known, or a new one.
pub fn try_on(which: Option<ItemId>) -> AnyView {
    let app = app();
    let here = Setting::TryOn(which);
    let Some((item, known)) = item(which, |practice| practice.tray()) else { return not_here(here) };
    let page = open(here, |_| form_of::start(known.as_ref()));
    let form = page.form;
    let save = move || {
        let first = app.practice(|practice| practice.first_system());
        let Some(band) = page.read(|texts| form_of::read(texts, first)) else { return };
        let said = say_frame::saved(&say_finger::try_on_name(&band.number));
        page.save(vec![settings::try_on(item).write(Some(band))], said);
    };
    let name = known.map(|band| say_finger::try_on_name(&band.number));
    let remove = name.as_ref().map(|name| page.remove(vec![settings::try_on(item).write(None)], name));
    let bores =
        vec![option(Bore::Flat.code(), say_practice::BORE_FLAT), option(Bore::Domed.code(), say_practice::BORE_DOMED)];
    let height = fields::mm(form, form_of::HEIGHT, say::TRY_ON_HEIGHT).hint(say::TRY_ON_HEIGHT_HINT);
    let content = all(vec![
        fields::text(form, form_of::NUMBER, say::TRY_ON_NUMBER).hint(say::TRY_ON_NUMBER_HINT).line(),
        fields::text(form, form_of::SIZE, say::TRY_ON_SIZE).hint(say_frame::READ_SIZE_HINT).line(),
        maybe(move || fields::which_size(form, form_of::SIZE, form_of::SIZE_AS, say_frame::READ_AS)),
        fields::mm(form, form_of::WIDTH, say::TRY_ON_WIDTH).line(),
        fields::choice(form, form_of::BORE, say_practice::GAUGE_BORE, Shape::Segments, bores),
        height.enter("done").line(),
        or_nothing(remove),
    ]);
    form_page(head(here, name.unwrap_or(say::NEW_TRY_ON.to_owned())), form, content, say_frame::SAVE, save)
}
