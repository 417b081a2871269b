//! What all values are written with: lengths, choices, what may be absent, objects.

use serde_json::{Map, Value as Json, json};

use crate::archive::code::Code;
use crate::trade::measure::Length;
use crate::trade::wearer::Finger;

pub(super) fn write_finger(finger: Finger) -> Json {
    object([("hand", json!(finger.hand.code())), ("digit", json!(finger.digit.code()))])
}

pub(super) fn read_finger(json: &Json) -> Option<Finger> {
    Some(Finger { hand: choice(json.get("hand")?)?, digit: choice(json.get("digit")?)? })
}

pub(super) fn write_length(length: Length) -> Json {
    json!(length.mm())
}

pub(super) fn read_length(json: &Json) -> Option<Length> {
    json.as_f64().filter(|mm| mm.abs() < 100_000.0).map(Length::from_mm)
}

pub(super) fn string(json: &Json, name: &str) -> Option<String> {
    Some(json.get(name)?.as_str()?.to_owned())
}

pub(super) fn choice<T: Code>(json: &Json) -> Option<T> {
    T::from_code(json.as_str()?)
}

pub(super) fn option<T>(value: Option<T>, write: impl Fn(T) -> Json) -> Json {
    value.map_or(Json::Null, write)
}

/// A part that may be absent; one that is there has to be readable.
pub(super) fn optional<T>(json: &Json, name: &str, read: impl Fn(&Json) -> Option<T>) -> Option<Option<T>> {
    match json.get(name) {
        None | Some(Json::Null) => Some(None),
        Some(value) => read(value).map(Some),
    }
}

/// An object of these keys; those that are nothing are left out.
pub(super) fn object<const N: usize>(pairs: [(&str, Json); N]) -> Json {
    let pairs = pairs.into_iter().filter(|(_, value)| !value.is_null());
    let mut object = Map::new();
    pairs.for_each(|(key, value)| drop(object.insert(key.to_owned(), value)));
    Json::Object(object)
}

/// A whole number of days, of per cents, or a place on the finger.
pub(super) fn read_whole(json: &Json) -> Option<u16> {
    u16::try_from(json.as_u64()?).ok()
}
