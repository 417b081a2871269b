//! One gauge: a ring set or a ring stick.

use crate::parts::el::{maybe, or_nothing};
use crate::parts::lay::all;
use leptos::prelude::*;

use super::{calibration, draft, head, keep, not_here, now, remove};
use crate::app::address::Setting;
use crate::app::clock;
use crate::app::form::Form;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::change::Write;
use crate::book::field::{Field, PracticeField};
use crate::book::id::ItemId;
use crate::book::value::{OwnGauge, Value};
use crate::parts::choice::{Shape, choice, option};
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::trade::band::Bore;
use crate::trade::fit::constants::STICK_TAPER;
use crate::trade::fit::gauges::{HALF_LETTER, OWN_ERROR};
use crate::trade::fit::{Gauge, GaugeKind, PerMm};
use crate::trade::limits::Limit;
use crate::words::practice as say;
use crate::words::{screens as say_frame, sizing::trimmed};

const SET: &str = "set";
pub const STICK: &str = "stick";

/// A gauge that is known, or a new one.
pub fn gauge(which: Option<ItemId>) -> AnyView {
    let app = app();
    let here = Setting::Gauge(which);
    let known = which.map(|item| {
        now(app, |practice| practice.gauges().into_iter().find(|(known, _)| *known == item).map(|(_, it)| it.clone()))
    });
    if let Some(None) = known {
        return not_here(here);
    }
    let known = known.flatten();
    let form = draft(here, start(known.as_ref()));
    // Given once, so that a second press saves nothing twice.
    let item = which.unwrap_or(ItemId(clock::random()));
    let field = PracticeField::Gauge(item);
    let save = move || {
        let Some(own) = read(form) else { return show_first_complaint() };
        let said = say_frame::saved(&own.name);
        keep(app, here, form, vec![Write::set(Field::Practice(field), Value::Gauge(own))], said);
    };
    let content =
        all(vec![inputs(form), or_nothing(known.as_ref().map(|own| remove(app, here, form, field, own.name.clone())))]);
    let title = known.map_or_else(|| say::NEW_GAUGE.to_owned(), |own| own.name);
    form_page(head(here, title), form, content, say_frame::SAVE, save)
}

fn start(known: Option<&OwnGauge>) -> Vec<(&'static str, String)> {
    let gauge = known.map(|own| own.gauge);
    let (kind, taper) = match gauge.map(|gauge| gauge.kind) {
        Some(GaugeKind::Stick { taper }) => (STICK, taper),
        Some(GaugeKind::RingSet) | None => (SET, STICK_TAPER.value),
    };
    let mut start = vec![
        ("gauge-name", known.map(|own| own.name.clone()).unwrap_or_default()),
        ("gauge-kind", kind.to_owned()),
        ("gauge-width", gauge.map(|gauge| trimmed(gauge.width)).unwrap_or_default()),
        ("gauge-bore", gauge.map_or(Bore::Flat, |gauge| gauge.bore).code().to_owned()),
        ("gauge-relief", gauge.and_then(|gauge| gauge.relief).map(trimmed).unwrap_or_default()),
        ("gauge-step", trimmed(gauge.map_or(HALF_LETTER, |gauge| gauge.step))),
        ("gauge-error", trimmed(gauge.map_or(OWN_ERROR, |gauge| gauge.own_error))),
        ("gauge-taper", trimmed(taper.0)),
    ];
    start.extend(calibration::start(known.map(|own| own.calibration.as_slice()).unwrap_or_default()));
    start
}

fn inputs(form: Form) -> AnyView {
    let (kind, bore) = (form.text("gauge-kind"), form.text("gauge-bore"));
    let is_stick = Memo::new(move |_| kind.with(|kind| kind == STICK));
    let is_domed = Memo::new(move |_| bore.with(|bore| bore == Bore::Domed.code()));
    let kinds = vec![option(SET, say::RING_SET), option(STICK, say::STICK)];
    let bores = vec![option(Bore::Flat.code(), say::BORE_FLAT), option(Bore::Domed.code(), say::BORE_DOMED)];
    let width_hint = move || if is_stick.get() { say::WIDTH_ON_STICK } else { say::WIDTH_OF_SET }.to_owned();
    let taper = || say::taper_hint(STICK_TAPER.value.0, STICK_TAPER.standing, STICK_TAPER.source);
    all(vec![
        fields::name(form, "gauge-name", say::GAUGE_NAME).hint(say::GAUGE_NAME_HINT).line(),
        choice("gauge-kind", say::GAUGE_KIND, Shape::Segments, kinds, kind),
        fields::mm(form, "gauge-width", say::GAUGE_WIDTH).hint(Signal::derive(width_hint)).line(),
        choice("gauge-bore", say::GAUGE_BORE, Shape::Segments, bores, bore),
        maybe(move || {
            let field = || fields::mm(form, "gauge-relief", say::RELIEF).hint(say::RELIEF_HINT).line();
            is_domed.get().then(field)
        }),
        fields::mm(form, "gauge-step", say::GAUGE_STEP).hint(say::GAUGE_STEP_HINT).line(),
        maybe(move || is_stick.get().then(|| fields::mm(form, "gauge-taper", say::TAPER).hint(taper()).line())),
        fields::mm(form, "gauge-error", say::OWN_ERROR).hint(say::own_error_hint(OWN_ERROR)).line(),
        calibration::inputs(form),
    ])
}

/// What was typed; none if something has to be put right first. What is not asked is not looked at.
fn read(form: Form) -> Option<OwnGauge> {
    let text = |key| form.text(key).get_untracked();
    let bore = Bore::from_code(&text("gauge-bore")).unwrap_or(Bore::Flat);
    let name = fields::read_name(form, "gauge-name");
    let width = fields::read_length(form, "gauge-width", Limit::GaugeWidth);
    let relief = match bore {
        Bore::Flat => Some(None),
        Bore::Domed => fields::read_optional_length(form, "gauge-relief", Limit::EdgeRelief),
    };
    let step = fields::read_length(form, "gauge-step", Limit::GaugeStep);
    let kind = if text("gauge-kind") == STICK {
        let taper = fields::read_length(form, "gauge-taper", Limit::StickTaper);
        taper.map(|taper| GaugeKind::Stick { taper: PerMm(taper) })
    } else {
        Some(GaugeKind::RingSet)
    };
    let own_error = fields::read_length(form, "gauge-error", Limit::GaugeError);
    let calibration = calibration::read(form);
    let gauge = Gauge { kind: kind?, width: width?, bore, relief: relief?, step: step?, own_error: own_error? };
    Some(OwnGauge { name: name?, gauge, calibration: calibration? })
}
