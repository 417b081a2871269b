//! One record as one JSON object.
//!
//! ```json
//! {"schema": "1.0", "id": "<32 hex>", "kind": "couple", "changes": [
//!   {"by": "<32 hex>", "n": 7, "at": 1792000000000, "undoes": {"by": "<32 hex>", "n": 6}, "sets": [
//!     {"field": "wedding", "value": "2027-05", "replaces": [{"by": "<32 hex>", "n": 6}],
//!      "restores": {"by": "<32 hex>", "n": 5}}]}]}
//! ```
//!
//! `undoes` and `restores` stand in a taking-back only: which change is taken back, and whose value stands again.

use std::cmp::Ordering;

use serde_json::{Map, Value as Json, json};

use super::{key, value};
use crate::book::change::{Change, Set};
use crate::book::field::Field;
use crate::book::id::{InstallationId, Moment, RecordId, Stamp};
use crate::book::record::{Kind, Record};
use crate::book::value::Value;

/// The version written: a higher minor adds, a higher major breaks.
pub const MAJOR: u32 = 1;
pub const MINOR: u32 = 0;

/// Why a row cannot be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RowError {
    /// Not JSON at all, or cut off.
    NotJson,
    /// JSON, but without a schema version of ours.
    NotARecord,
    /// Written by a newer version of the app, with this major version.
    Newer(u32),
    /// A part that every record has is missing or is not what it should be.
    Damaged,
}

/// A record as text. The same record gives the same text.
pub fn write(record: &Record) -> String {
    let mut row = fresh(record.unknown.as_deref());
    row.insert("id".into(), Json::String(record.id.to_string()));
    row.insert("kind".into(), Json::String(kind_code(record.kind).into()));
    row.insert("changes".into(), record.changes().iter().map(write_change).collect());
    Json::Object(row).to_string()
}

/// A record from text.
pub fn read(text: &str) -> Result<Record, RowError> {
    let (row, newer) = open(text)?;
    read_record(row, newer).ok_or(RowError::Damaged)
}

/// The object of a row of ours, and whether a newer minor version has written it. Its version is left in it then: what
/// it carries is still newer than what this version writes.
pub(super) fn open(text: &str) -> Result<(Map<String, Json>, bool), RowError> {
    let json: Json = serde_json::from_str(text).map_err(|_| RowError::NotJson)?;
    let Json::Object(mut row) = json else { return Err(RowError::NotARecord) };
    let schema = row.get("schema").and_then(Json::as_str).ok_or(RowError::NotARecord)?;
    let (major, minor) = version(schema).ok_or(RowError::NotARecord)?;
    match major.cmp(&MAJOR) {
        Ordering::Greater => return Err(RowError::Newer(major)),
        // There never was an older one.
        Ordering::Less => return Err(RowError::NotARecord),
        Ordering::Equal => {}
    }
    let newer = minor > MINOR;
    if !newer {
        row.remove("schema");
    }
    Ok((row, newer))
}

fn read_record(mut row: Map<String, Json>, newer: bool) -> Option<Record> {
    let id = RecordId::parse(row.remove("id")?.as_str()?)?;
    let kind = match row.remove("kind")?.as_str()? {
        "couple" => Kind::Couple,
        "practice" => Kind::Practice,
        _ => return None,
    };
    let Json::Array(changes) = row.remove("changes")? else { return None };
    let mut record = Record::new(id, kind);
    let count = changes.len();
    for change in changes {
        record.add(read_change(change, newer)?);
    }
    if record.changes().len() < count {
        // Two changes under one stamp: one of them would be lost.
        return None;
    }
    record.unknown = rest(row);
    Some(record)
}

fn write_change(change: &Change) -> Json {
    let mut row = carried(change.unknown.as_deref());
    row.insert("by".into(), Json::String(change.stamp.by.to_string()));
    row.insert("n".into(), change.stamp.n.into());
    row.insert("at".into(), change.at.0.into());
    if let Some(undoes) = change.undoes {
        row.entry("undoes").or_insert_with(|| write_stamp(undoes));
    }
    row.insert("sets".into(), change.sets.iter().map(write_set).collect());
    Json::Object(row)
}

fn read_change(json: Json, newer: bool) -> Option<Change> {
    let Json::Object(mut row) = json else { return None };
    let stamp = Stamp { by: InstallationId::parse(row.remove("by")?.as_str()?)?, n: row.remove("n")?.as_u64()? };
    let at = Moment(row.remove("at")?.as_i64()?);
    let undoes = read_optional_stamp(&mut row, "undoes")?;
    let Json::Array(sets) = row.remove("sets")? else { return None };
    let sets = sets.into_iter().map(|set| read_set(set, newer)).collect::<Option<_>>()?;
    Some(Change { stamp, at, undoes, sets, unknown: rest(row) })
}

fn write_set(set: &Set) -> Json {
    let mut row = carried(set.unknown.as_deref());
    row.insert("field".into(), Json::String(key::write(&set.field)));
    if let Some(value) = &set.value {
        row.entry("value").or_insert_with(|| value::write(value));
    }
    if !set.replaces.is_empty() {
        row.entry("replaces").or_insert_with(|| write_stamps(&set.replaces));
    }
    if let Some(restores) = set.restores {
        row.entry("restores").or_insert_with(|| write_stamp(restores));
    }
    Json::Object(row)
}

fn read_set(json: Json, newer: bool) -> Option<Set> {
    let Json::Object(mut row) = json else { return None };
    let field = key::read(row.remove("field")?.as_str()?);
    if matches!(field, Field::Unknown(_)) && !newer {
        return None;
    }
    let value = match row.remove("value") {
        None => None,
        Some(json) => match value::read(&field, &json) {
            Some(value) => {
                carry(&mut row, "value", json, value::write(&value));
                Some(value)
            }
            None if newer => Some(Value::Unknown(json.to_string())),
            None => return None,
        },
    };
    let replaces = match row.remove("replaces") {
        None => Vec::new(),
        Some(json) => {
            let replaces = json.as_array()?.iter().map(read_stamp).collect::<Option<Vec<_>>>()?;
            // An empty list is not written at all.
            let written = if replaces.is_empty() { Json::Null } else { write_stamps(&replaces) };
            carry(&mut row, "replaces", json, written);
            replaces
        }
    };
    let restores = read_optional_stamp(&mut row, "restores")?;
    Some(Set { field, value, replaces, restores, unknown: rest(row) })
}

/// Keeps a part as it stands in the file if it would be written differently: it carries more than is read from it.
fn carry(row: &mut Map<String, Json>, key: &str, read: Json, written: Json) {
    if read != written {
        row.insert(key.to_owned(), read);
    }
}

fn read_optional_stamp(row: &mut Map<String, Json>, key: &str) -> Option<Option<Stamp>> {
    let Some(json) = row.remove(key) else { return Some(None) };
    let stamp = read_stamp(&json)?;
    carry(row, key, json, write_stamp(stamp));
    Some(Some(stamp))
}

fn write_stamps(stamps: &[Stamp]) -> Json {
    stamps.iter().copied().map(write_stamp).collect()
}

fn write_stamp(stamp: Stamp) -> Json {
    json!({ "by": stamp.by.to_string(), "n": stamp.n })
}

fn read_stamp(json: &Json) -> Option<Stamp> {
    Some(Stamp { by: InstallationId::parse(json.get("by")?.as_str()?)?, n: json.get("n")?.as_u64()? })
}

fn kind_code(kind: Kind) -> &'static str {
    match kind {
        Kind::Couple => "couple",
        Kind::Practice => "practice",
    }
}

fn version(schema: &str) -> Option<(u32, u32)> {
    let (major, minor) = schema.split_once('.')?;
    Some((major.parse().ok()?, minor.parse().ok()?))
}

/// What is left of an object once the known keys are taken out.
pub(super) fn rest(row: Map<String, Json>) -> Option<String> {
    if row.is_empty() { None } else { Some(Json::Object(row).to_string()) }
}

/// An object to be filled: what was carried through.
fn carried(text: Option<&str>) -> Map<String, Json> {
    text.and_then(|text| serde_json::from_str(text).ok()).unwrap_or_default()
}

/// A whole row to be filled: its version, unless a newer one is carried through, and what else was carried.
pub(super) fn fresh(text: Option<&str>) -> Map<String, Json> {
    let mut row = carried(text);
    row.entry("schema").or_insert_with(|| Json::String(format!("{MAJOR}.{MINOR}")));
    row
}
