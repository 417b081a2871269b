//! One gauge: a ring set or a ring stick.

use super::calibration;
use crate::archive::code::Code;
use crate::book::value::OwnGauge;
use crate::forms::complaint::Complaints;
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::forms::write;
use crate::trade::band::Bore;
use crate::trade::fit::constants::STICK_TAPER;
use crate::trade::fit::gauges::{HALF_LETTER, OWN_ERROR};
use crate::trade::fit::{Gauge, GaugeKind, PerMm};
use crate::trade::limits::Limit;
use crate::trade::sizing::System;

pub const NAME: Key = Key::new("gauge-name");
pub const KIND: Key = Key::new("gauge-kind");
pub const WIDTH: Key = Key::new("gauge-width");
pub const BORE: Key = Key::new("gauge-bore");
pub const RELIEF: Key = Key::new("gauge-relief");
pub const STEP: Key = Key::new("gauge-step");
pub const ERROR: Key = Key::new("gauge-error");
pub const TAPER: Key = Key::new("gauge-taper");

pub const SET: &str = "set";
pub const STICK: &str = "stick";

/// A gauge that is known, or a new one.
pub fn start(known: Option<&OwnGauge>) -> Texts {
    let gauge = known.map(|own| own.gauge);
    let (kind, taper) = match gauge.map(|gauge| gauge.kind) {
        Some(GaugeKind::Stick { taper }) => (STICK, taper),
        Some(GaugeKind::RingSet) | None => (SET, STICK_TAPER.value),
    };
    let texts = Texts::default()
        .with(NAME, known.map(|own| own.name.clone()).unwrap_or_default())
        .with(KIND, kind)
        .with(WIDTH, write::optional_mm(gauge.map(|gauge| gauge.width)))
        .with(BORE, gauge.map_or(Bore::Flat, |gauge| gauge.bore).code())
        .with(RELIEF, write::optional_mm(gauge.and_then(|gauge| gauge.relief)))
        .with(STEP, write::mm(gauge.map_or(HALF_LETTER, |gauge| gauge.step)))
        .with(ERROR, write::mm(gauge.map_or(OWN_ERROR, |gauge| gauge.own_error)))
        .with(TAPER, write::mm(taper.0));
    calibration::start(known.map(|own| own.calibration.as_slice()).unwrap_or_default(), texts)
}

/// Reads the form. What is not asked is not looked at.
pub fn read(texts: &Texts, first: System) -> Result<OwnGauge, Complaints> {
    let mut form = Reader::new(texts);
    let bore = bore(texts);
    let name = form.needed(NAME, Limit::NameText);
    let width = form.length(WIDTH, Limit::GaugeWidth);
    let relief = match bore {
        Bore::Flat => Some(None),
        Bore::Domed => form.optional_length(RELIEF, Limit::EdgeRelief),
    };
    let step = form.length(STEP, Limit::GaugeStep);
    let kind = if is_stick(texts) {
        form.length(TAPER, Limit::StickTaper).map(|taper| GaugeKind::Stick { taper: PerMm(taper) })
    } else {
        Some(GaugeKind::RingSet)
    };
    let own_error = form.length(ERROR, Limit::GaugeError);
    let calibration = calibration::read(&mut form, first);
    let own = (|| {
        let gauge = Gauge { kind: kind?, width: width?, bore, relief: relief?, step: step?, own_error: own_error? };
        Some(OwnGauge { name: name?, gauge, calibration: calibration? })
    })();
    form.checked(own)
}

pub fn is_stick(texts: &Texts) -> bool {
    texts.get(KIND) == STICK
}

/// The inside that is chosen.
pub fn bore(texts: &Texts) -> Bore {
    Reader::new(texts).choice(BORE).unwrap_or(Bore::Flat)
}
