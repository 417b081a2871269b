//! Readings, gauges and sizes as JSON.

use serde_json::{Map, Value as Json, json};

use super::json::{choice, object, option, optional, read_finger, read_length, string, write_finger, write_length};
use crate::archive::code::Code;
use crate::archive::day::{read_day, read_time, write_day, write_time};
use crate::book::value::{FittedAt, OrderSize, OwnAmount, OwnGauge, OwnTerms, ReadingTaken, TryOnBand};
use crate::trade::fit::{CalibrationPoint, Gauge, GaugeKind, PerMm, Term};
use crate::trade::measure::{Circumference, Diameter};
use crate::trade::sizing::{Size, SizeAsRead, Stated};

pub(super) fn write_reading(reading: &ReadingTaken) -> Json {
    object([
        ("size", write_size_as_read(&reading.size)),
        ("finger", write_finger(reading.finger)),
        ("place", json!(reading.place.code())),
        ("gauge", write_gauge(&reading.gauge)),
        ("read_at", json!(reading.read_at.code())),
        ("hands", json!(reading.hands.code())),
        ("beside", reading.beside.iter().copied().map(write_length).collect()),
        ("sits", option(reading.sits, |sits| json!(sits.code()))),
        ("taken", write_day(reading.taken)),
        ("at", option(reading.at, write_time)),
        ("left_out", when(reading.left_out)),
    ])
}

pub(super) fn read_reading(json: &Json) -> Option<ReadingTaken> {
    Some(ReadingTaken {
        size: read_size_as_read(json.get("size")?)?,
        finger: read_finger(json.get("finger")?)?,
        place: choice(json.get("place")?)?,
        gauge: read_gauge(json.get("gauge")?)?,
        read_at: choice(json.get("read_at")?)?,
        hands: choice(json.get("hands")?)?,
        beside: json.get("beside")?.as_array()?.iter().map(read_length).collect::<Option<_>>()?,
        sits: optional(json, "sits", choice)?,
        taken: read_day(json.get("taken")?)?,
        at: optional(json, "at", read_time)?,
        left_out: optional(json, "left_out", Json::as_bool)?.unwrap_or(false),
    })
}

pub(super) fn write_order_size(size: &OrderSize) -> Json {
    object([
        ("size", write_size(size.size)),
        ("exact", write_length(size.exact.0)),
        ("from", write_length(size.from.0)),
        ("to", write_length(size.to.0)),
        ("in_stack", json!(size.in_stack)),
        ("overruled", json!(size.overruled)),
        ("own", write_own(&size.own)),
        ("measure_again", json!(size.measure_again)),
        ("settled", write_day(size.settled)),
    ])
}

pub(super) fn read_order_size(json: &Json) -> Option<OrderSize> {
    Some(OrderSize {
        size: read_size(json.get("size")?)?,
        exact: Circumference(read_length(json.get("exact")?)?),
        from: Circumference(read_length(json.get("from")?)?),
        to: Circumference(read_length(json.get("to")?)?),
        in_stack: json.get("in_stack")?.as_bool()?,
        overruled: json.get("overruled")?.as_bool()?,
        own: optional(json, "own", read_own)?.unwrap_or_default(),
        measure_again: json.get("measure_again")?.as_bool()?,
        settled: read_day(json.get("settled")?)?,
    })
}

pub(super) fn write_size(size: Size) -> Json {
    object([("system", json!(size.system().code())), ("quarters", json!(size.quarters()))])
}

pub(super) fn read_size(json: &Json) -> Option<Size> {
    Size::new(choice(json.get("system")?)?, i32::try_from(json.get("quarters")?.as_i64()?).ok()?)
}

pub(super) fn write_size_as_read(size: &SizeAsRead) -> Json {
    let (key, value) = match size.stated {
        Stated::Size(size) => ("size", write_size(size)),
        Stated::Diameter(diameter) => ("diameter", write_length(diameter.0)),
        Stated::Circumference(circumference) => ("circumference", write_length(circumference.0)),
    };
    object([(key, value), ("typed", json!(size.typed))])
}

pub(super) fn read_size_as_read(json: &Json) -> Option<SizeAsRead> {
    let stated = if let Some(size) = json.get("size") {
        Stated::Size(read_size(size)?)
    } else if let Some(diameter) = json.get("diameter") {
        Stated::Diameter(Diameter(read_length(diameter)?))
    } else {
        Stated::Circumference(Circumference(read_length(json.get("circumference")?)?))
    };
    Some(SizeAsRead { stated, typed: string(json, "typed")? })
}

pub(super) fn write_gauge(own: &OwnGauge) -> Json {
    let gauge = &own.gauge;
    let (kind, taper) = match gauge.kind {
        GaugeKind::RingSet => ("rings", Json::Null),
        GaugeKind::Stick { taper } => ("stick", write_length(taper.0)),
    };
    object([
        ("name", json!(own.name)),
        ("kind", json!(kind)),
        ("taper", taper),
        ("width", write_length(gauge.width)),
        ("bore", json!(gauge.bore.code())),
        ("relief", option(gauge.relief, write_length)),
        ("step", write_length(gauge.step)),
        ("own_error", write_length(gauge.own_error)),
        ("calibration", write_calibration(&own.calibration)),
    ])
}

pub(super) fn read_gauge(json: &Json) -> Option<OwnGauge> {
    let kind = match json.get("kind")?.as_str()? {
        "rings" => GaugeKind::RingSet,
        "stick" => GaugeKind::Stick { taper: PerMm(read_length(json.get("taper")?)?) },
        _ => return None,
    };
    let gauge = Gauge {
        kind,
        width: read_length(json.get("width")?)?,
        bore: choice(json.get("bore")?)?,
        relief: optional(json, "relief", read_length)?,
        step: read_length(json.get("step")?)?,
        own_error: read_length(json.get("own_error")?)?,
    };
    let calibration = optional(json, "calibration", read_calibration)?.unwrap_or_default();
    Some(OwnGauge { name: string(json, "name")?, gauge, calibration })
}

pub(super) fn write_try_on(band: &TryOnBand) -> Json {
    object([
        ("number", json!(band.number)),
        ("width", write_length(band.width)),
        ("bore", json!(band.bore.code())),
        ("height", option(band.height, write_length)),
        ("size", write_size_as_read(&band.size)),
    ])
}

pub(super) fn read_try_on(json: &Json) -> Option<TryOnBand> {
    Some(TryOnBand {
        number: string(json, "number")?,
        width: read_length(json.get("width")?)?,
        bore: choice(json.get("bore")?)?,
        height: optional(json, "height", read_length)?,
        size: read_size_as_read(json.get("size")?)?,
    })
}

pub(super) fn write_fitted(fitted: &FittedAt) -> Json {
    object([
        ("size", write_size_as_read(&fitted.size)),
        ("resized", json!(fitted.resized)),
        ("noted", write_day(fitted.noted)),
    ])
}

pub(super) fn read_fitted(json: &Json) -> Option<FittedAt> {
    Some(FittedAt {
        size: read_size_as_read(json.get("size")?)?,
        resized: json.get("resized")?.as_bool()?,
        noted: read_day(json.get("noted")?)?,
    })
}

/// A yes that is written only where it is one.
fn when(yes: bool) -> Json {
    if yes { json!(true) } else { Json::Null }
}

fn write_calibration(points: &[CalibrationPoint]) -> Json {
    if points.is_empty() {
        return Json::Null;
    }
    let point =
        |point: &CalibrationPoint| object([("says", write_length(point.says.0)), ("is", write_length(point.is.0))]);
    points.iter().map(point).collect()
}

fn read_calibration(json: &Json) -> Option<Vec<CalibrationPoint>> {
    let round = |json: &Json, name| Some(Circumference(read_length(json.get(name)?)?));
    let point = |json: &Json| Some(CalibrationPoint { says: round(json, "says")?, is: round(json, "is")? });
    json.as_array()?.iter().map(point).collect()
}

/// The overruled terms by their names; none where nothing was.
fn write_own(own: &OwnTerms) -> Json {
    let mut all = Map::new();
    for term in Term::ALL {
        if let Some(amount) = own.of(term) {
            let amount = object([("worked_out", write_length(amount.worked_out)), ("used", write_length(amount.used))]);
            all.insert(term.code().to_owned(), amount);
        }
    }
    if all.is_empty() { Json::Null } else { Json::Object(all) }
}

fn read_own(json: &Json) -> Option<OwnTerms> {
    let mut own = OwnTerms::default();
    for (term, amount) in json.as_object()? {
        let length = |name| read_length(amount.get(name)?);
        own.set(Term::from_code(term)?, OwnAmount { worked_out: length("worked_out")?, used: length("used")? });
    }
    Some(own)
}
