//! The parts of a ring and of a band from JSON, and what was chosen for a band beside a head.

use serde_json::{Value as Json, json};

use super::dates::{read_day, write_day};
use super::json::{choice, object, option, optional, read_finger, read_length, read_whole, text, write_length};
use crate::archive::code::Code;
use crate::book::field::{BandField, RingField};
use crate::book::id::ItemId;
use crate::book::remedy::{Away, Remedy};
use crate::book::value::Value;
use crate::trade::band::alloys;
use crate::trade::limits::Whole;

/// A part of a ring; none if it is not what the part holds.
pub(super) fn read_ring(part: RingField, json: &Json) -> Option<Value> {
    use RingField as R;
    Some(match part {
        R::Name => text(json)?,
        R::Finger => Value::Finger(read_finger(json)?),
        R::ShoulderWidth | R::TopWidth | R::BackWidth | R::Height | R::Inside => Value::Length(read_length(json)?),
        R::HeadToWeb | R::HeadToTip | R::HeadUnderside => Value::Length(read_length(json)?),
        R::Profile => Value::Profile(choice(json)?),
        R::Metal => Value::Metal(alloys::by_code(json.as_str()?)?),
        R::Place => Value::Place(Whole(read_whole(json)?)),
        R::Stones | R::Holds | R::Planned => Value::Yes(json.as_bool()?),
    })
}

/// A part of a band; none if it is not what the part holds.
pub(super) fn read_band(part: BandField, json: &Json) -> Option<Value> {
    use BandField as B;
    Some(match part {
        B::Width | B::Height | B::Dome | B::Relief => Value::Length(read_length(json)?),
        B::Profile => Value::Profile(choice(json)?),
        B::Finish => Value::Finish(choice(json)?),
        B::Metal => Value::Metal(alloys::by_code(json.as_str()?)?),
        B::Place => Value::Place(Whole(read_whole(json)?)),
    })
}

pub(super) fn write_remedy(remedy: &Remedy) -> Json {
    let away = |away: Away| {
        object([
            ("ring", option(away.ring, |item| json!(item.to_string()))),
            ("from", option(away.from, write_day)),
            ("to", option(away.to, write_day)),
        ])
    };
    object([
        ("way", json!(remedy.way.code())),
        ("by", write_length(remedy.by)),
        ("impression", json!(remedy.impression)),
        ("template", json!(remedy.template)),
        ("away", option(remedy.ring, away)),
    ])
}

pub(super) fn read_remedy(json: &Json) -> Option<Remedy> {
    let away = |json: &Json| {
        Some(Away {
            ring: optional(json, "ring", |item| ItemId::parse(item.as_str()?))?,
            from: optional(json, "from", read_day)?,
            to: optional(json, "to", read_day)?,
        })
    };
    Some(Remedy {
        way: choice(json.get("way")?)?,
        by: read_length(json.get("by")?)?,
        impression: json.get("impression")?.as_bool()?,
        template: json.get("template")?.as_bool()?,
        ring: optional(json, "away", away)?,
    })
}
