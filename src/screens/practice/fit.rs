//! The constants of the order size: the customary figure beside each, and room for one's own.

use crate::parts::el::{el, or_nothing};
use crate::parts::lay::{all, block, para, section};
use leptos::prelude::*;

use super::learned::learned;
use super::{back_to_usual, draft, head, keep, now, own};
use crate::app::address::Setting;
use crate::app::form::Form;
use crate::app::seen::Seen;
use crate::app::state::app;
use crate::book::change::Write;
use crate::book::field::{Constant, PracticeField};
use crate::book::practice::customary;
use crate::book::value::Value;
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::trade::limits::Limit;
use crate::trade::measure::Length;
use crate::words::{gauges as say_gauges, practice as say, screens as say_frame, sizing::trimmed};

const HERE: Setting = Setting::Fit;

/// The constants that belong together.
const PARTS: [&[Constant]; 4] = [
    &[Constant::Width, Constant::WidthSpread],
    &[Constant::Bore, Constant::BoreSpread],
    &[Constant::Cold, Constant::Warm, Constant::HandsSpread, Constant::NormalSpread],
    &[Constant::Offset, Constant::OffsetSpread],
];

pub fn fit() -> AnyView {
    let app = app();
    let start = |which| now(app, |practice| practice.constant(which)).map(|it| asked(which, it)).unwrap_or_default();
    let form = draft(HERE, Constant::ALL.into_iter().map(|which| (key(which), start(which))).collect());
    let seen = Seen::practice(app);
    let save = move || {
        // All of them are looked at, so that all complaints show at once.
        let writes: Vec<Option<Write>> = Constant::ALL.into_iter().map(|which| read(form, which)).collect();
        match writes.into_iter().collect::<Option<Vec<Write>>>() {
            Some(writes) => keep(app, HERE, form, seen.changed(writes), say_frame::saved(say::FIT)),
            None => show_first_complaint(),
        }
    };
    let fields = Constant::ALL.map(PracticeField::Constant).into();
    let content = all(vec![
        para("", say::FIT_WHY),
        all(PARTS.into_iter().filter_map(|part| part_of(form, part)).collect()),
        or_nothing(back_to_usual(app, HERE, form, say::FIT, fields)),
        learned(app, form),
    ]);
    form_page(head(HERE, say::FIT), form, content, say_frame::SAVE, save)
}

fn part_of(form: Form, constants: &'static [Constant]) -> Option<AnyView> {
    let first = *constants.first()?;
    let (heading, about) = say::fit_part(first);
    let field = |which: &Constant| {
        fields::mm(form, key(*which), say::constant(*which)).hint(say::constant_usual(customary(*which))).line()
    };
    let fields: Vec<AnyView> = constants.iter().map(field).collect();
    let part = section(
        heading,
        vec![
            el("p").class("small").text(about).child(" ".into_any()).text(say::from_source(customary(first))).view(),
            para("small", say_gauges::published(first)),
            block("ledger", fields),
        ],
    );
    Some(part)
}

fn read(form: Form, which: Constant) -> Option<Write> {
    let usual = customary(which).value;
    let read = fields::read_optional_length(form, key(which), limit(which))?;
    let signed = |it: Length| if which == Constant::Warm { -it } else { it };
    let value = read.map_or(usual, signed);
    Some(own(PracticeField::Constant(which), Value::Length(value), value == usual))
}

/// A shift down for warm hands is kept below zero and asked for without its sign.
fn asked(which: Constant, value: Length) -> String {
    trimmed(if which == Constant::Warm { value.abs() } else { value })
}

fn key(which: Constant) -> &'static str {
    match which {
        Constant::Width => "fit-width",
        Constant::WidthSpread => "fit-width-spread",
        Constant::Bore => "fit-bore",
        Constant::BoreSpread => "fit-bore-spread",
        Constant::Cold => "fit-cold",
        Constant::Warm => "fit-warm",
        Constant::HandsSpread => "fit-hands-spread",
        Constant::NormalSpread => "fit-normal-spread",
        Constant::Offset => "fit-offset",
        Constant::OffsetSpread => "fit-offset-spread",
    }
}

pub fn limit(which: Constant) -> Limit {
    match which {
        Constant::Width => Limit::WidthFactor,
        Constant::WidthSpread => Limit::WidthFactorSpread,
        Constant::Bore => Limit::BoreFactor,
        Constant::BoreSpread => Limit::BoreFactorSpread,
        Constant::Cold | Constant::Warm => Limit::ConditionShift,
        Constant::HandsSpread | Constant::NormalSpread | Constant::OffsetSpread => Limit::ConditionSpread,
        Constant::Offset => Limit::OwnShift,
    }
}
