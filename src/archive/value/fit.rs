//! Readings, gauges and sizes as JSON.

use serde_json::{Value as Json, json};

use super::dates::{read_day, write_day};
use super::json::{choice, object, option, optional, read_finger, read_length, string, write_finger, write_length};
use crate::archive::code::Code;
use crate::book::value::{OrderSize, OwnGauge, ReadingTaken};
use crate::trade::fit::{Gauge, GaugeKind, PerMm};
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
        ("taken", write_day(reading.taken)),
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
        taken: read_day(json.get("taken")?)?,
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
    Some(OwnGauge { name: string(json, "name")?, gauge })
}
