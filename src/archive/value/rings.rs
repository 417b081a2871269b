//! The parts of a ring and of a band from JSON.

use serde_json::Value as Json;

use super::dates::read_days;
use super::json::{choice, read_finger, read_length, text};
use crate::book::field::{BandField, RingField};
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
        R::Place => Value::Place(Whole(read_days(json)?)),
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
        B::Place => Value::Place(Whole(read_days(json)?)),
    })
}
