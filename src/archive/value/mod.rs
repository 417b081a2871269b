//! The value of a field as JSON. What a value looks like follows from its field, so that the file reads plainly:
//! `{"field": "band.first.width", "value": 2.5}`.
//!
//! Days are ISO 8601 ("2027-05-22", a month "2027-05", a year "2027"), times "14:30", lengths and circumferences
//! millimetres with up to four decimals, choices the words of [`code`](super::code).
//!
//! Readings and sizes are in `fit`, rings and bands in `rings`, days and lead times in `dates`, what all are written with in `json`.

mod dates;
mod fit;
mod json;
mod rings;

use serde_json::{Value as Json, json};

use super::code::Code;
use super::list;
use super::row::settled;
use crate::book::field::{AppointmentField, Field, PracticeField as P};
use crate::book::value::{DatesSettled, Extra, Recorded, StackSeen, Value, When};
use crate::trade::dates::spread::CalendarDays;
use crate::trade::measure::{Length, Percent};
use dates::*;
pub(super) use dates::{read_day, read_time, write_day, write_time};
use fit::*;
use json::*;
use rings::*;

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
        Value::Said(said) => list::write_json(said),
        Value::Place(place) => json!(place.0),
        Value::Unknown(text) => serde_json::from_str(text).unwrap_or(Json::Null),
    }
}

/// The value of a field from JSON; none if it is not what the field holds.
pub fn read(field: &Field, json: &Json) -> Option<Value> {
    Some(match field {
        Field::Name(_) | Field::Reach(_) | Field::Met | Field::Note(_) | Field::Practice(P::Fair | P::PhoneName(_)) => {
            text(json)?
        }
        Field::Appointment(_, AppointmentField::Place) => text(json)?,
        Field::Ring(_, _, part) => read_ring(*part, json)?,
        Field::Band(_, part) => read_band(*part, json)?,
        Field::Wedding => Value::Wedding(read_wedding(json)?),
        Field::Appointment(_, AppointmentField::When) => {
            Value::When(When { day: read_day(json.get("day")?)?, time: optional(json, "time", read_time)? })
        }
        Field::Appointment(_, AppointmentField::Outcome) => Value::Outcome(choice(json)?),
        Field::Recorded => {
            Value::Recorded(Recorded { agrees: json.get("agrees")?.as_bool()?, asked: read_day(json.get("asked")?)? })
        }
        Field::Stage => Value::Stage(choice(json)?),
        Field::Reached(_) | Field::PutAway | Field::ReadBack | Field::WorkDone(_) | Field::MilestoneDone(_) => {
            Value::Day(read_day(json)?)
        }
        Field::Example
        | Field::SameAs(_)
        | Field::FirstRing(_)
        | Field::NoRings(_)
        | Field::Practice(P::WorksOnHolidays | P::Holiday(_) | P::CountsToday) => Value::Yes(json.as_bool()?),
        Field::Finger(_) => Value::Finger(read_finger(json)?),
        Field::Reading(..) => Value::Reading(read_reading(json)?),
        Field::FreeLength(_)
        | Field::FreeLengthOf(..)
        | Field::Practice(P::FreeLength | P::Gap | P::Constant(_) | P::Clearance | P::Catch | P::Thinnest) => {
            Value::Length(read_length(json)?)
        }
        Field::Wish(..) => Value::Yes(json.as_bool()?),
        Field::Remedy(_) => Value::Remedy(read_remedy(json)?),
        Field::MeasureAgain(_) | Field::RingGone(_) | Field::RingBack(_) => Value::Day(read_day(json)?),
        Field::Fitted(_) => Value::Fitted(read_fitted(json)?),
        Field::OrderSize(_) => Value::OrderSize(read_order_size(json)?),
        Field::Stack(_) => Value::Stack(StackSeen {
            now: read_length(json.get("now")?)?,
            later: read_length(json.get("later")?)?,
            free: read_length(json.get("free")?)?,
            measured: json.get("measured")?.as_bool()?,
            off: optional(json, "off", read_length)?.unwrap_or_default(),
            seen: read_day(json.get("seen")?)?,
        }),
        Field::Dates => Value::Dates(DatesSettled {
            region: choice(json.get("region")?)?,
            in_hand: CalendarDays(read_whole(json.get("days_in_hand")?)?),
            making: read_spread(json.get("making")?)?,
            extras: json.get("extras")?.as_array()?.iter().map(read_chosen).collect::<Option<_>>()?,
            confidence: optional(json, "confidence", |share| read_whole(share).map(Percent))?,
            order_by: read_day(json.get("order_by")?)?,
            settled: read_day(json.get("settled")?)?,
        }),
        Field::Said(whole) => Value::Said(Box::new(list::read_own(json, *whole)?)),
        Field::Practice(P::Region) => Value::Region(choice(json)?),
        Field::Practice(P::FirstSystem) => Value::System(choice(json)?),
        Field::Practice(P::Step) => Value::Step(choice(json)?),
        Field::Practice(P::Gauge(_)) => Value::Gauge(read_gauge(json)?),
        Field::Practice(P::TryOn(_)) => Value::TryOn(read_try_on(json)?),
        Field::Practice(P::LeadTime(_)) => Value::Spread(read_spread(json)?),
        Field::Practice(P::Extra(_)) => {
            Value::Extra(Extra { name: string(json, "name")?, spread: read_spread(json.get("days")?)? })
        }
        Field::Practice(P::Closure(_)) => Value::Closure(read_closure(json)?),
        Field::Practice(P::PlaceDays(_)) => Value::PlaceDays(read_place_days(json)?),
        Field::Practice(P::Weekdays) => Value::Weekdays(read_weekdays(json)?),
        Field::Practice(P::BusyMonths) => Value::Months(read_months(json)?),
        Field::Practice(P::CutOff) => Value::Time(read_time(json)?),
        Field::Practice(P::DaysInHand | P::TryOnAfter) => Value::Days(CalendarDays(read_whole(json)?)),
        Field::Practice(P::Roomy | P::Full | P::Confidence | P::BusyChance | P::BusyLonger | P::ResizeChance) => {
            Value::Percent(Percent(read_whole(json)?))
        }
        Field::Unknown(_) => Value::Unknown(settled(json.to_string())),
    })
}
