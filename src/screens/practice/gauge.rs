//! One gauge: a ring set or a ring stick.

use leptos::prelude::*;

use super::{calibration, head, item, not_here, open};
use crate::app::address::Setting;
use crate::app::form::Form;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::id::ItemId;
use crate::book::settings;
use crate::forms::setup::gauge as form_of;
use crate::parts::choice::{Shape, option};
use crate::parts::el::{maybe, or_nothing};
use crate::parts::layout::all;
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::trade::band::Bore;
use crate::trade::fit::constants::STICK_TAPER;
use crate::trade::fit::gauges::OWN_ERROR;
use crate::words::practice as say;
use crate::words::screens as say_frame;

/// A gauge that is known, or a new one.
pub fn gauge(which: Option<ItemId>) -> AnyView {
    let app = app();
    let here = Setting::Gauge(which);
    let Some((item, known)) = item(which, |practice| practice.gauges()) else { return not_here(here) };
    let page = open(here, |_| form_of::start(known.as_ref()));
    let save = move || {
        let first = app.practice(|practice| practice.first_system());
        let Some(own) = page.read(|texts| form_of::read(texts, first)) else { return };
        let said = say_frame::saved(&own.name);
        page.save(vec![settings::gauge(item).write(Some(own))], said);
    };
    let remove = known.as_ref().map(|own| page.remove(vec![settings::gauge(item).write(None)], &own.name));
    let content = all(vec![inputs(page.form), or_nothing(remove)]);
    let title = known.map_or_else(|| say::NEW_GAUGE.to_owned(), |own| own.name);
    form_page(head(here, title), page.form, content, say_frame::SAVE, save)
}

fn inputs(form: Form) -> AnyView {
    let is_stick = Memo::new(move |_| form_of::is_stick(&form.texts()));
    let is_domed = Memo::new(move |_| form_of::bore(&form.texts()) == Bore::Domed);
    let kinds = vec![option(form_of::SET, say::RING_SET), option(form_of::STICK, say::STICK)];
    let bores = vec![option(Bore::Flat.code(), say::BORE_FLAT), option(Bore::Domed.code(), say::BORE_DOMED)];
    let width_hint = move || if is_stick.get() { say::WIDTH_ON_STICK } else { say::WIDTH_OF_SET }.to_owned();
    let relief = move || fields::mm(form, form_of::RELIEF, say::RELIEF).hint(say::RELIEF_HINT).line();
    let taper = move || {
        let hint = say::taper_hint(STICK_TAPER.value.0, STICK_TAPER.standing, STICK_TAPER.source);
        fields::mm(form, form_of::TAPER, say::TAPER).hint(hint).line()
    };
    all(vec![
        fields::text(form, form_of::NAME, say::GAUGE_NAME).hint(say::GAUGE_NAME_HINT).line(),
        fields::choice(form, form_of::KIND, say::GAUGE_KIND, Shape::Segments, kinds),
        fields::mm(form, form_of::WIDTH, say::GAUGE_WIDTH).hint(Signal::derive(width_hint)).line(),
        fields::choice(form, form_of::BORE, say::GAUGE_BORE, Shape::Segments, bores),
        maybe(move || is_domed.get().then(relief)),
        fields::mm(form, form_of::STEP, say::GAUGE_STEP).hint(say::GAUGE_STEP_HINT).line(),
        maybe(move || is_stick.get().then(taper)),
        fields::mm(form, form_of::ERROR, say::OWN_ERROR).hint(say::own_error_hint(OWN_ERROR)).line(),
        calibration::inputs(form),
    ])
}
