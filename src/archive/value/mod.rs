//! The value of a field as JSON. What a value looks like follows from its field, so that the file reads plainly:
//! `{"field": "band.first.width", "value": 2.5}`.
//!
//! Days are ISO 8601 ("2027-05-22", a month "2027-05", a year "2027"), times "14:30", lengths and circumferences
//! millimetres with up to four decimals, choices the words of [`code`](super::code).
//!
//! Readings and sizes are in `fit`, what was chosen beside a head in `remedy`, days and lead times in `dates`, what all are written with in `json`.

mod dates;
mod fit;
mod json;
mod remedy;

use serde_json::{Value as Json, json};

use super::carried::settled;
use super::code::Code;
use super::day::{read_day, read_time, write_day, write_time};
use super::list;
use crate::book::field::Field;
use crate::book::value::{DatesSettled, Extra, Recorded, StackSeen, Value, ValueKind, When};
use crate::trade::band::alloys;
use crate::trade::dates::spread::CalendarDays;
use crate::trade::limits::Whole;
use crate::trade::measure::{Length, Percent};
use dates::*;
use fit::*;
use json::*;
use remedy::*;

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
            ("off", option(Some(stack.off).filter(|off| *off != Length::ZERO), write_length)),
            ("seen", write_day(stack.seen)),
        ]),
        Value::Remedy(remedy) => write_remedy(remedy),
        Value::Dates(dates) => object([
            ("region", json!(dates.region.code())),
            ("days_in_hand", json!(dates.in_hand.0)),
            ("making", write_spread(dates.making)),
            ("extras", dates.extras.iter().map(write_chosen).collect()),
            ("confidence", option(dates.confidence, |share| json!(share.0))),
            ("order_by", write_day(dates.order_by)),
            ("settled", write_day(dates.settled)),
        ]),
        Value::Region(region) => json!(region.code()),
        Value::System(system) => json!(system.code()),
        Value::Step(step) => json!(step.code()),
        Value::Gauge(gauge) => write_gauge(gauge),
        Value::TryOn(band) => write_try_on(band),
        Value::Fitted(fitted) => write_fitted(fitted),
        Value::Spread(spread) => write_spread(*spread),
        Value::Extra(extra) => object([("name", json!(extra.name)), ("days", write_spread(extra.spread))]),
        Value::Closure(closure) => write_closure(closure),
        Value::PlaceDays(days) => write_place_days(*days),
        Value::Weekdays(days) => write_weekdays(*days),
        Value::Months(months) => months.months().collect(),
        Value::Time(time) => write_time(*time),
        Value::Days(days) => json!(days.0),
        Value::Percent(percent) => json!(percent.0),
        Value::PreparationList(said) => list::write_json(said),
        Value::Place(place) => json!(place.0),
        Value::Unknown(text) => serde_json::from_str(text).unwrap_or(Json::Null),
    }
}

/// The value of a field from JSON; none if it is not what the field holds.
pub fn read(field: &Field, json: &Json) -> Option<Value> {
    let Some(kind) = field.kind() else { return Some(Value::Unknown(settled(json.to_string()))) };
    let value = read_kind(kind, json)?;
    match (field, &value) {
        (Field::PreparationList(id), Value::PreparationList(list)) if list.id != *id => None,
        _ => Some(value),
    }
}

fn read_kind(kind: ValueKind, json: &Json) -> Option<Value> {
    Some(match kind {
        ValueKind::Text => Value::Text(json.as_str()?.to_owned()),
        ValueKind::Yes => Value::Yes(json.as_bool()?),
        ValueKind::Day => Value::Day(read_day(json)?),
        ValueKind::When => {
            Value::When(When { day: read_day(json.get("day")?)?, time: optional(json, "time", read_time)? })
        }
        ValueKind::Wedding => Value::Wedding(read_wedding(json)?),
        ValueKind::Recorded => {
            Value::Recorded(Recorded { agrees: json.get("agrees")?.as_bool()?, asked: read_day(json.get("asked")?)? })
        }
        ValueKind::Stage => Value::Stage(choice(json)?),
        ValueKind::Outcome => Value::Outcome(choice(json)?),
        ValueKind::Finger => Value::Finger(read_finger(json)?),
        ValueKind::Reading => Value::Reading(read_reading(json)?),
        ValueKind::Length => Value::Length(read_length(json)?),
        ValueKind::Profile => Value::Profile(choice(json)?),
        ValueKind::Finish => Value::Finish(choice(json)?),
        ValueKind::Metal => Value::Metal(alloys::by_code(json.as_str()?)?),
        ValueKind::OrderSize => Value::OrderSize(read_order_size(json)?),
        ValueKind::Stack => Value::Stack(StackSeen {
            now: read_length(json.get("now")?)?,
            later: read_length(json.get("later")?)?,
            free: read_length(json.get("free")?)?,
            measured: json.get("measured")?.as_bool()?,
            off: optional(json, "off", read_length)?.unwrap_or_default(),
            seen: read_day(json.get("seen")?)?,
        }),
        ValueKind::Remedy => Value::Remedy(read_remedy(json)?),
        ValueKind::Dates => Value::Dates(DatesSettled {
            region: choice(json.get("region")?)?,
            in_hand: CalendarDays(read_whole(json.get("days_in_hand")?)?),
            making: read_spread(json.get("making")?)?,
            extras: json.get("extras")?.as_array()?.iter().map(read_chosen).collect::<Option<_>>()?,
            confidence: optional(json, "confidence", |share| read_whole(share).map(Percent))?,
            order_by: read_day(json.get("order_by")?)?,
            settled: read_day(json.get("settled")?)?,
        }),
        ValueKind::Region => Value::Region(choice(json)?),
        ValueKind::System => Value::System(choice(json)?),
        ValueKind::Step => Value::Step(choice(json)?),
        ValueKind::Gauge => Value::Gauge(read_gauge(json)?),
        ValueKind::TryOn => Value::TryOn(read_try_on(json)?),
        ValueKind::Fitted => Value::Fitted(read_fitted(json)?),
        ValueKind::Spread => Value::Spread(read_spread(json)?),
        ValueKind::Extra => {
            Value::Extra(Extra { name: string(json, "name")?, spread: read_spread(json.get("days")?)? })
        }
        ValueKind::Closure => Value::Closure(read_closure(json)?),
        ValueKind::PlaceDays => Value::PlaceDays(read_place_days(json)?),
        ValueKind::Weekdays => Value::Weekdays(read_weekdays(json)?),
        ValueKind::Months => Value::Months(read_months(json)?),
        ValueKind::Time => Value::Time(read_time(json)?),
        ValueKind::Days => Value::Days(CalendarDays(read_whole(json)?)),
        ValueKind::Percent => Value::Percent(Percent(read_whole(json)?)),
        ValueKind::PreparationList => Value::PreparationList(Box::new(list::read_json(json.clone()).ok()?)),
        ValueKind::Place => Value::Place(Whole(read_whole(json)?)),
    })
}
