//! One band of the tray.

use crate::parts::el::{maybe, or_nothing};
use crate::parts::lay::all;
use leptos::prelude::*;

use super::{draft, head, keep, not_here, now, remove};
use crate::app::address::Setting;
use crate::app::clock;
use crate::app::form::Form;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::change::Write;
use crate::book::field::{Field, PracticeField};
use crate::book::id::ItemId;
use crate::book::value::{TryOnBand, Value};
use crate::parts::choice::{Shape, choice, option};
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::trade::band::Bore;
use crate::trade::limits::Limit;
use crate::trade::sizing::SizeAsRead;
use crate::words::{
    bench as say_bench, finger as say_finger, gauges as say, practice as say_practice, screens as say_frame,
    sizing::trimmed,
};

/// A band that is known, or a new one.
pub fn try_on(which: Option<ItemId>) -> AnyView {
    let app = app();
    let here = Setting::TryOn(which);
    let known = which.map(|item| {
        now(app, |practice| practice.tray().into_iter().find(|(known, _)| *known == item).map(|(_, it)| it.clone()))
    });
    if let Some(None) = known {
        return not_here(here);
    }
    let known = known.flatten();
    let form = draft(here, start(known.as_ref()));
    // Given once, so that a second press saves nothing twice.
    let field = PracticeField::TryOn(which.unwrap_or(ItemId(clock::random())));
    let save = move || {
        let Some(band) = read(form) else { return show_first_complaint() };
        let said = say_frame::saved(&say_finger::try_on_name(&band.number));
        keep(app, here, form, vec![Write::set(Field::Practice(field), Value::TryOn(band))], said);
    };
    let name = known.as_ref().map(|band| say_finger::try_on_name(&band.number));
    let bores =
        vec![option(Bore::Flat.code(), say_practice::BORE_FLAT), option(Bore::Domed.code(), say_practice::BORE_DOMED)];
    let content = all(vec![
        fields::name(form, "try-on-number", say::TRY_ON_NUMBER).hint(say::TRY_ON_NUMBER_HINT).line(),
        fields::text(form, "size", say::TRY_ON_SIZE).hint(say_frame::READ_SIZE_HINT).line(),
        maybe(move || fields::which_size(form, "size", "as", say_frame::READ_AS)),
        fields::mm(form, "try-on-width", say::TRY_ON_WIDTH).line(),
        choice("try-on-bore", say_practice::GAUGE_BORE, Shape::Segments, bores, form.text("try-on-bore")),
        fields::mm(form, "try-on-height", say::TRY_ON_HEIGHT).hint(say::TRY_ON_HEIGHT_HINT).enter("done").line(),
        or_nothing(name.clone().map(|name| remove(app, here, form, field, name))),
    ]);
    form_page(head(here, name.unwrap_or(say::NEW_TRY_ON.to_owned())), form, content, say_frame::SAVE, save)
}

fn start(known: Option<&TryOnBand>) -> Vec<(&'static str, String)> {
    vec![
        ("try-on-number", known.map(|it| it.number.clone()).unwrap_or_default()),
        ("size", known.map(|it| say_bench::retyped(&it.size)).unwrap_or_default()),
        ("as", known.map(|it| fields::meant(&it.size)).unwrap_or_default()),
        ("try-on-width", known.map(|it| trimmed(it.width)).unwrap_or_default()),
        ("try-on-bore", known.map_or(Bore::Flat, |it| it.bore).code().to_owned()),
        ("try-on-height", known.and_then(|it| it.height).map(trimmed).unwrap_or_default()),
    ]
}

fn read(form: Form) -> Option<TryOnBand> {
    let text = |key| form.text(key).get_untracked();
    let number = fields::read_name(form, "try-on-number");
    let stated = fields::read_size(form, "size", "as");
    let width = fields::read_length(form, "try-on-width", Limit::GaugeWidth);
    let height = fields::read_optional_length(form, "try-on-height", Limit::TryOnHeight);
    let size = SizeAsRead { stated: stated?, typed: text("size").trim().to_owned() };
    let bore = Bore::from_code(&text("try-on-bore"))?;
    Some(TryOnBand { number: number?, width: width?, bore, height: height?, size })
}
