//! The value of a field as JSON. What a value looks like follows from its field, so that the file reads plainly:
//! `{"field": "band.first.width", "value": 2.5}`.
//!
//! Days are ISO 8601 ("2027-05-22", a month "2027-05", a year "2027"), times "14:30", lengths and circumferences
//! millimetres with up to four decimals, choices the words of [`code`](super::code).

use chrono::{NaiveDate, NaiveTime, Timelike};
use serde_json::{Map, Value as Json, json};

use super::code::Code;
use super::list;
use crate::book::field::{AppointmentField, BandField, Field, PracticeField as P, RingField};
use crate::book::id::ItemId;
use crate::book::value::{
    ChosenExtra, DatesSettled, Extra, ExtraWork, NamedClosure, OrderSize, OwnGauge, ReadingTaken, Recorded, StackSeen,
    Value, When,
};
use crate::trade::band::alloys;
use crate::trade::dates::closed::{Closure, Weekdays};
use crate::trade::dates::spread::{CalendarDays, Spread, WorkingDays};
use crate::trade::dates::wedding::Wedding;
use crate::trade::fit::PerMm;
use crate::trade::fit::{Gauge, GaugeKind};
use crate::trade::measure::{Circumference, Diameter, Length, Percent};
use crate::trade::sizing::{Size, SizeAsRead, Stated};
use crate::trade::wearer::Finger;

/// A value as JSON.
pub fn write(value: &Value) -> Json {
    match value {
        Value::Text(text) => json!(text),
        Value::Yes(yes) => json!(yes),
        Value::Day(day) => write_day(*day),
        Value::When(when) => object([("day", write_day(when.day)), ("time", option(when.time, write_time))]),
        Value::Wedding(wedding) => write_wedding(*wedding),
        Value::Recorded(it) => object([("agrees", json!(it.agrees)), ("asked", write_day(it.asked))]),
        Value::Stage(stage) => json!(stage.code()),
        Value::Outcome(outcome) => json!(outcome.code()),
        Value::Finger(finger) => write_finger(*finger),
        Value::Reading(reading) => write_reading(reading),
        Value::Length(length) => write_length(*length),
        Value::Profile(profile) => json!(profile.code()),
        Value::Finish(finish) => json!(finish.code()),
        Value::Metal(alloy) => json!(alloy.code),
        Value::OrderSize(size) => write_order_size(size),
        Value::Stack(stack) => object([
            ("now", write_length(stack.now)),
            ("later", write_length(stack.later)),
            ("free", write_length(stack.free)),
            ("measured", json!(stack.measured)),
            ("seen", write_day(stack.seen)),
        ]),
        Value::Dates(dates) => object([
            ("region", json!(dates.region.code())),
            ("days_in_hand", json!(dates.in_hand.0)),
            ("making", write_spread(dates.making)),
            ("extras", dates.extras.iter().map(write_chosen).collect()),
            ("order_by", write_day(dates.order_by)),
            ("settled", write_day(dates.settled)),
        ]),
        Value::Region(region) => json!(region.code()),
        Value::System(system) => json!(system.code()),
        Value::Step(step) => json!(step.code()),
        Value::Gauge(gauge) => write_gauge(gauge),
        Value::Spread(spread) => write_spread(*spread),
        Value::Extra(extra) => object([("name", json!(extra.name)), ("days", write_spread(extra.spread))]),
        Value::Closure(closure) => object([
            ("name", json!(closure.name)),
            ("from", write_day(closure.days.from())),
            ("to", write_day(closure.days.to())),
        ]),
        Value::Weekdays(days) => days.iter(chrono::Weekday::Mon).map(|day| json!(day.code())).collect(),
        Value::Time(time) => write_time(*time),
        Value::Days(days) => json!(days.0),
        Value::Percent(percent) => json!(percent.0),
        Value::Said(said) => list::write_json(said),
        Value::Unknown(text) => serde_json::from_str(text).unwrap_or(Json::Null),
    }
}

/// The value of a field from JSON; none if it is not what the field holds.
pub fn read(field: &Field, json: &Json) -> Option<Value> {
    Some(match field {
        Field::Name(_) | Field::Reach(_) | Field::Met | Field::Note(_) | Field::Practice(P::Fair | P::PhoneName(_)) => {
            text(json)?
        }
        Field::Appointment(_, AppointmentField::Place) | Field::Ring(_, _, RingField::Name) => text(json)?,
        Field::Wedding => Value::Wedding(read_wedding(json)?),
        Field::Appointment(_, AppointmentField::When) => {
            Value::When(When { day: read_day(json.get("day")?)?, time: optional(json, "time", read_time)? })
        }
        Field::Appointment(_, AppointmentField::Outcome) => Value::Outcome(choice(json)?),
        Field::Recorded => {
            Value::Recorded(Recorded { agrees: json.get("agrees")?.as_bool()?, asked: read_day(json.get("asked")?)? })
        }
        Field::Stage => Value::Stage(choice(json)?),
        Field::Reached(_) | Field::PutAway | Field::ReadBack => Value::Day(read_day(json)?),
        Field::Example | Field::FirstRing(_) | Field::NoRings(_) | Field::Practice(P::WorksOnHolidays) => {
            Value::Yes(json.as_bool()?)
        }
        Field::Ring(_, _, RingField::Planned) => Value::Yes(json.as_bool()?),
        Field::Finger(_) | Field::Ring(_, _, RingField::Finger) => Value::Finger(read_finger(json)?),
        Field::Reading(..) => Value::Reading(read_reading(json)?),
        Field::Ring(_, _, RingField::ShoulderWidth | RingField::TopWidth)
        | Field::Band(_, BandField::Width)
        | Field::FreeLength(_)
        | Field::Practice(P::FreeLength | P::Gap | P::Constant(_)) => Value::Length(read_length(json)?),
        Field::Ring(_, _, RingField::Profile) | Field::Band(_, BandField::Profile) => Value::Profile(choice(json)?),
        Field::Ring(_, _, RingField::Metal) | Field::Band(_, BandField::Metal) => {
            Value::Metal(alloys::by_code(json.as_str()?)?)
        }
        Field::Band(_, BandField::Finish) => Value::Finish(choice(json)?),
        Field::OrderSize(_) => Value::OrderSize(read_order_size(json)?),
        Field::Stack(_) => Value::Stack(StackSeen {
            now: read_length(json.get("now")?)?,
            later: read_length(json.get("later")?)?,
            free: read_length(json.get("free")?)?,
            measured: json.get("measured")?.as_bool()?,
            seen: read_day(json.get("seen")?)?,
        }),
        Field::Dates => Value::Dates(DatesSettled {
            region: choice(json.get("region")?)?,
            in_hand: CalendarDays(read_days(json.get("days_in_hand")?)?),
            making: read_spread(json.get("making")?)?,
            extras: json.get("extras")?.as_array()?.iter().map(read_chosen).collect::<Option<_>>()?,
            order_by: read_day(json.get("order_by")?)?,
            settled: read_day(json.get("settled")?)?,
        }),
        Field::Said(whole) => Value::Said(Box::new(list::read_own(json, *whole)?)),
        Field::Practice(P::Region) => Value::Region(choice(json)?),
        Field::Practice(P::FirstSystem) => Value::System(choice(json)?),
        Field::Practice(P::Step) => Value::Step(choice(json)?),
        Field::Practice(P::Gauge(_)) => Value::Gauge(read_gauge(json)?),
        Field::Practice(P::LeadTime(_)) => Value::Spread(read_spread(json)?),
        Field::Practice(P::Extra(_)) => {
            Value::Extra(Extra { name: string(json, "name")?, spread: read_spread(json.get("days")?)? })
        }
        Field::Practice(P::Closure(_)) => Value::Closure(NamedClosure {
            name: string(json, "name")?,
            days: Closure::new(read_day(json.get("from")?)?, read_day(json.get("to")?)?).ok()?,
        }),
        Field::Practice(P::Weekdays) => {
            let days: Option<Vec<chrono::Weekday>> = json.as_array()?.iter().map(choice).collect();
            Value::Weekdays(days?.into_iter().collect::<Weekdays>())
        }
        Field::Practice(P::CutOff) => Value::Time(read_time(json)?),
        Field::Practice(P::DaysInHand) => Value::Days(CalendarDays(read_days(json)?)),
        Field::Practice(P::Roomy | P::Full) => Value::Percent(Percent(read_days(json)?)),
        Field::Unknown(_) => Value::Unknown(json.to_string()),
    })
}

fn write_reading(reading: &ReadingTaken) -> Json {
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

fn read_reading(json: &Json) -> Option<ReadingTaken> {
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

fn write_order_size(size: &OrderSize) -> Json {
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

fn read_order_size(json: &Json) -> Option<OrderSize> {
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

fn write_size(size: Size) -> Json {
    object([("system", json!(size.system().code())), ("quarters", json!(size.quarters()))])
}

fn read_size(json: &Json) -> Option<Size> {
    Size::new(choice(json.get("system")?)?, i32::try_from(json.get("quarters")?.as_i64()?).ok()?)
}

fn write_size_as_read(size: &SizeAsRead) -> Json {
    let (key, value) = match size.stated {
        Stated::Size(size) => ("size", write_size(size)),
        Stated::Diameter(diameter) => ("diameter", write_length(diameter.0)),
        Stated::Circumference(circumference) => ("circumference", write_length(circumference.0)),
    };
    object([(key, value), ("typed", json!(size.typed))])
}

fn read_size_as_read(json: &Json) -> Option<SizeAsRead> {
    let stated = if let Some(size) = json.get("size") {
        Stated::Size(read_size(size)?)
    } else if let Some(diameter) = json.get("diameter") {
        Stated::Diameter(Diameter(read_length(diameter)?))
    } else {
        Stated::Circumference(Circumference(read_length(json.get("circumference")?)?))
    };
    Some(SizeAsRead { stated, typed: string(json, "typed")? })
}

fn write_gauge(own: &OwnGauge) -> Json {
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

fn read_gauge(json: &Json) -> Option<OwnGauge> {
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

fn write_chosen(extra: &ChosenExtra) -> Json {
    let work = match extra.work {
        ExtraWork::Usual(work) => json!(work.code()),
        ExtraWork::Own(item) => json!(item.to_string()),
    };
    object([
        ("work", work),
        ("name", option(extra.name.as_deref(), |name| json!(name))),
        ("days", write_spread(extra.spread)),
    ])
}

fn read_chosen(json: &Json) -> Option<ChosenExtra> {
    let work = json.get("work")?.as_str()?;
    let work = match Code::from_code(work) {
        Some(usual) => ExtraWork::Usual(usual),
        None => ExtraWork::Own(ItemId::parse(work)?),
    };
    Some(ChosenExtra {
        work,
        name: optional(json, "name", |name| name.as_str().map(str::to_owned))?,
        spread: read_spread(json.get("days")?)?,
    })
}

fn write_spread(spread: Spread) -> Json {
    object([("least", json!(spread.least().0)), ("usual", json!(spread.usual().0)), ("most", json!(spread.most().0))])
}

fn read_spread(json: &Json) -> Option<Spread> {
    let days = |name| read_days(json.get(name)?).map(WorkingDays);
    Spread::new(days("least")?, days("usual")?, days("most")?).ok()
}

fn write_wedding(wedding: Wedding) -> Json {
    match wedding {
        Wedding::Day(day) => write_day(day),
        Wedding::Month { year, month } => json!(format!("{year:04}-{month:02}")),
        Wedding::Year(year) => json!(format!("{year:04}")),
        Wedding::NotYet => json!("not yet"),
    }
}

fn read_wedding(json: &Json) -> Option<Wedding> {
    let text = json.as_str()?;
    let wedding = if text == "not yet" {
        Wedding::NotYet
    } else if let Some(day) = read_day(json) {
        Wedding::Day(day)
    } else if let Some((year, month)) = text.rsplit_once('-').filter(|(year, _)| !year.is_empty()) {
        Wedding::Month { year: year.parse().ok()?, month: month.parse().ok()? }
    } else {
        Wedding::Year(text.parse().ok()?)
    };
    // What cannot be written back as it was read is no wedding date of ours, nor is a month without days.
    let exists = wedding == Wedding::NotYet || wedding.earliest().is_some();
    (exists && write_wedding(wedding) == *json).then_some(wedding)
}

fn write_finger(finger: Finger) -> Json {
    object([("hand", json!(finger.hand.code())), ("digit", json!(finger.digit.code()))])
}

fn read_finger(json: &Json) -> Option<Finger> {
    Some(Finger { hand: choice(json.get("hand")?)?, digit: choice(json.get("digit")?)? })
}

pub(super) fn write_day(day: NaiveDate) -> Json {
    json!(day.to_string())
}

pub(super) fn read_day(json: &Json) -> Option<NaiveDate> {
    // From the end, because a year may have a sign.
    let mut parts = json.as_str()?.rsplitn(3, '-');
    let mut part = || parts.next();
    let (day, month, year) = (part()?, part()?, part()?);
    let day = NaiveDate::from_ymd_opt(year.parse().ok()?, month.parse().ok()?, day.parse().ok()?)?;
    // What cannot be written back as it was read is no day of ours.
    (day.to_string() == json.as_str()?).then_some(day)
}

pub(super) fn write_time(time: NaiveTime) -> Json {
    json!(format!("{:02}:{:02}", time.hour(), time.minute()))
}

pub(super) fn read_time(json: &Json) -> Option<NaiveTime> {
    let (hour, minute) = json.as_str()?.split_once(':')?;
    NaiveTime::from_hms_opt(hour.parse().ok()?, minute.parse().ok()?, 0)
}

fn write_length(length: Length) -> Json {
    json!(length.mm())
}

fn read_length(json: &Json) -> Option<Length> {
    json.as_f64().filter(|mm| mm.abs() < 100_000.0).map(Length::from_mm)
}

fn read_days(json: &Json) -> Option<u16> {
    u16::try_from(json.as_u64()?).ok()
}

fn text(json: &Json) -> Option<Value> {
    Some(Value::Text(json.as_str()?.to_owned()))
}

fn string(json: &Json, name: &str) -> Option<String> {
    Some(json.get(name)?.as_str()?.to_owned())
}

fn choice<T: Code>(json: &Json) -> Option<T> {
    T::from_code(json.as_str()?)
}

fn option<T>(value: Option<T>, write: impl Fn(T) -> Json) -> Json {
    value.map_or(Json::Null, write)
}

/// A part that may be absent; one that is there has to be readable.
fn optional<T>(json: &Json, name: &str, read: impl Fn(&Json) -> Option<T>) -> Option<Option<T>> {
    match json.get(name) {
        None | Some(Json::Null) => Some(None),
        Some(value) => read(value).map(Some),
    }
}

/// An object of these keys; those that are nothing are left out.
fn object<const N: usize>(pairs: [(&str, Json); N]) -> Json {
    let pairs = pairs.into_iter().filter(|(_, value)| !value.is_null());
    let mut object = Map::new();
    pairs.for_each(|(key, value)| drop(object.insert(key.to_owned(), value)));
    Json::Object(object)
}
