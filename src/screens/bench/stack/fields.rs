//! The inputs of the stack: the band, and up to seven rings beside it.

use crate::parts::el::{el, maybe};
use crate::parts::layout::{all, pair, para};
use leptos::prelude::*;

use super::super::Opened;
use super::super::sheet::Sheet;
use crate::answers::stack::elsewhere;
use crate::app::form::Form;
use crate::forms::stack::{self as form_of, AFTER_WORN, BAND_MORE, FREE_OF, LATER, NEAREST_WEB, NOW, ROWS, RowKeys};
use crate::parts::choice::{Shape, choice, option};
use crate::parts::details::details_opened;
use crate::screens::shell::fields;
use crate::words::{bench as say, remedy as say_remedy, rings as say_rings, screens};

pub fn fields(opened: &Opened, sheet: Sheet) -> AnyView {
    let form = sheet.form;
    let free = opened.app.practice(|practice| say::free_hint(practice.house().free_length));
    let rows: Vec<AnyView> = (0..ROWS.len()).map(|at| row(sheet, at)).collect();
    let others = opened.read(elsewhere).unwrap_or_default().into_iter().filter_map(|it| {
        let (_, key) = FREE_OF.into_iter().find(|(finger, _)| *finger == it.finger)?;
        Some(sheet.mm(key.name(), &say::free_length_of(it.finger)).line())
    });
    let others = others.collect();
    let afresh = if opened.opener.is_some() { say::BACK_TO_THEIRS } else { say::AFRESH };
    all(vec![
        sheet.mm(form_of::BAND.name(), say::BAND_TO_MAKE).line(),
        details_opened(say::BAND_MORE, band(sheet), sheet.complains(&BAND_MORE)),
        all(rows),
        place(form),
        sheet.mm(form_of::FREE.name(), say::FREE_LENGTH).hint(free).line(),
        all(others),
        sheet.mm(form_of::GAP.name(), say::GAP).hint(say::GAP_HINT).line(),
        sheet.afresh(afresh),
    ])
}

/// Where the band lies, among as many rings as there are.
fn place(form: Form) -> AnyView {
    let rings = Memo::new(move |_| ROWS.iter().filter(|row| is_filled(form, row)).count());
    maybe(move || {
        let between = (1..=rings.get()).map(|n| option(n.to_string(), say::beyond_ring(n)));
        let ends = [option(NEAREST_WEB, say::NEAREST_WEB), option(AFTER_WORN, say::AFTER_WORN)];
        let places = ends.into_iter().chain(between.filter(|_| rings.get() > 1)).collect();
        Some(choice(form_of::PLACE.name(), say::BAND_PLACE, Shape::Chips, places, form.text(form_of::PLACE)))
    })
}

fn band(sheet: Sheet) -> AnyView {
    let form = sheet.form;
    let arcs = Memo::new(move |_| form_of::arcs(&form.texts()));
    let dome = move || {
        let (has_dome, _) = arcs.get();
        has_dome.then(|| sheet.mm(form_of::BAND_DOME.name(), say_rings::DOME).hint(say_rings::DOME_HINT).line())
    };
    let relief = move || {
        let (_, has_relief) = arcs.get();
        has_relief.then(|| sheet.mm(form_of::BAND_RELIEF.name(), say_rings::RELIEF).hint(say_rings::RELIEF_HINT).line())
    };
    all(vec![
        sheet.mm(form_of::BAND_THICKNESS.name(), say_rings::BAND_HEIGHT).line(),
        fields::profile(form, form_of::BAND_PROFILE.name()),
        maybe(dome),
        maybe(relief),
        fields::metal(form, form_of::BAND_METAL.name()),
        sheet.mm(form_of::BAND_CURVE.name(), say_remedy::BAY).hint(say_remedy::BAY_HINT).line(),
        sheet.yes(form_of::BAND_SET.name(), say::BAND_SET, Some(say_rings::STONES_HINT)),
        sheet.mm(form_of::BAND_INSIDE.name(), say_rings::INSIDE).hint(say_rings::INSIDE_HINT).line(),
    ])
}

fn is_filled(form: Form, row: &RowKeys) -> bool {
    [row.name, row.width].iter().any(|key| form.text(key).with(|it| !it.is_empty()))
}

/// A ring; it is there once the one before it has something in it, and then it stays.
fn row(sheet: Sheet, at: usize) -> AnyView {
    let keys = &ROWS[at];
    let form = sheet.form;
    let shown = Memo::new(move |before: Option<&bool>| {
        at == 0 || before == Some(&true) || ROWS[at - 1..].iter().any(|row| is_filled(form, row))
    });
    let inside = move || {
        shown.get().then(|| {
            let when = vec![option(NOW, say::WORN_NOW), option(LATER, screens::PLANNED)];
            el("fieldset")
                .class("bench-ring")
                .child(el("legend").text(say::ring_number(at + 1)).view())
                .child(sheet.field(keys.name.name(), screens::RING_NAME).hint(screens::RING_NAME_HINT).line())
                .child(pair(vec![
                    sheet.mm(keys.width.name(), say::AT_SHOULDERS).line(),
                    sheet.mm(keys.top.name(), screens::TOP_WIDTH).line(),
                ]))
                .child(choice(keys.when.name(), say::WHEN_WORN, Shape::Segments, when, form.text(keys.when)))
                .child(details_opened(say::RING_MORE, more(sheet, keys), sheet.complains(&keys.more)))
                .view()
        })
    };
    maybe(inside)
}

fn more(sheet: Sheet, keys: &'static RowKeys) -> AnyView {
    all(vec![
        pair(vec![
            sheet.mm(keys.back.name(), say_rings::BACK_WIDTH).line(),
            sheet.mm(keys.height.name(), say_rings::HEIGHT).line(),
        ]),
        fields::profile(sheet.form, keys.profile.name()),
        fields::metal(sheet.form, keys.metal.name()),
        para("small", say_rings::HEAD_HOW),
        pair(vec![
            sheet.mm(keys.web.name(), say_rings::TO_WEB).line(),
            sheet.mm(keys.tip.name(), say_rings::TO_TIP).line(),
        ]),
        sheet.mm(keys.under.name(), say_rings::UNDERSIDE).line(),
        sheet.yes(keys.stones.name(), say_rings::STONES, Some(say_rings::STONES_HINT)),
        sheet.mm(keys.inside.name(), say_rings::INSIDE).hint(say_rings::INSIDE_HINT).line(),
    ])
}
