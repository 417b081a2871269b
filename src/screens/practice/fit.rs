//! The constants of the order size: the customary figure beside each, and room for one's own.

use leptos::prelude::*;

use super::learned::learned;
use super::{back_to_usual, head, open};
use crate::app::address::Setting;
use crate::app::form::Form;
use crate::app::state::app;
use crate::book::field::{Constant, PracticeField};
use crate::forms::setup::fit as form_of;
use crate::parts::el::el;
use crate::parts::layout::{all, block, para, section};
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::words::{gauges as say_gauges, practice as say, screens as say_frame};

const HERE: Setting = Setting::Fit;

/// The constants that belong together.
const PARTS: [&[Constant]; 4] = [
    &[Constant::Width, Constant::WidthSpread],
    &[Constant::Bore, Constant::BoreSpread],
    &[Constant::Cold, Constant::Warm, Constant::HandsSpread, Constant::NormalSpread],
    &[Constant::Offset, Constant::OffsetSpread],
];

pub fn fit() -> AnyView {
    let page = open(HERE, form_of::start);
    let save = move || {
        let Some(writes) = page.read(form_of::read) else { return };
        page.save(writes, say_frame::saved(say::FIT));
    };
    let content = all(vec![
        para("", say::FIT_WHY),
        all(PARTS.into_iter().filter_map(|part| part_of(page.form, part)).collect()),
        back_to_usual(page, say::FIT, &Constant::ALL.map(PracticeField::Constant)),
        learned(app(), page),
    ]);
    form_page(head(HERE, say::FIT), page.form, content, say_frame::SAVE, save)
}

fn part_of(form: Form, constants: &'static [Constant]) -> Option<AnyView> {
    let first = *constants.first()?;
    let (heading, about) = say::fit_part(first);
    let field = |which: &Constant| {
        let hint = say::constant_usual(*which);
        fields::mm(form, form_of::key(*which), say::constant(*which)).hint(hint).line()
    };
    let fields: Vec<AnyView> = constants.iter().map(field).collect();
    let part = section(
        heading,
        vec![
            el("p").class("small").text(about).child(" ".into_any()).text(say::from_source(first)).view(),
            para("small", say_gauges::published(first)),
            block("ledger", fields),
        ],
    );
    Some(part)
}
