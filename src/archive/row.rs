//! One record as one JSON object.
//!
//! ```json
//! {"schema": "1.1", "id": "<32 hex>", "kind": "couple", "changes": [
//!   {"by": "<32 hex>", "n": 7, "at": 1792000000000, "undoes": {"by": "<32 hex>", "n": 6},
//!    "after": [{"by": "<32 hex>", "n": 6}], "sets": [
//!     {"field": "wedding", "value": "2027-05", "replaces": [{"by": "<32 hex>", "n": 6}],
//!      "restores": {"by": "<32 hex>", "n": 5}}]}]}
//! ```
//!
//! The changes stand in the order of their stamps: `n`, then `by`. `undoes` and `restores` stand in a taking-back
//! only: which change is taken back, and whose value stands again. `after` (since 1.1) names changes of other
//! installations that its author had seen, where that does not follow from what came before. Of an erased record only
//! a mark is left (since 1.1): `{"schema": "1.1", "id": ..., "kind": ..., "changes": [], "erased": {"by": ..., "n": 9}}`.

use std::cmp::Ordering;
use std::sync::Arc;

use serde_json::{Map, Value as Json};

use super::object::{Object, list, put, text};
use super::{change, plain, twins};
use crate::book::id::RecordId;
use crate::book::record::{Kind, Record};

/// The version written: a higher minor adds, a higher major breaks.
pub const MAJOR: u32 = 1;
pub const MINOR: u32 = 1;

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
    let mut out = String::new();
    let mut row = Object::new(&mut out, record.unknown.as_deref());
    row.part("changes", &|out| list(out, record.changes(), |change, out| change::write(change, out)));
    if let Some(stamp) = record.erased() {
        row.unless_carried("erased", &|out| change::put_stamp(&stamp, out));
    }
    row.part("id", &|out| put(out, format_args!("\"{}\"", record.id)));
    row.part("kind", &|out| text(kind_code(record.kind), out));
    row.unless_carried("schema", &|out| put(out, format_args!("\"{MAJOR}.{MINOR}\"")));
    row.end();
    out
}

/// A record from text.
pub fn read(text: &str) -> Result<Record, RowError> {
    if let Some(record) = plain::read(text) {
        return Ok(record);
    }
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
    let kind = read_kind(row.remove("kind")?.as_str()?)?;
    let Json::Array(changes) = row.remove("changes")? else { return None };
    let mut record = match change::read_optional_stamp(&mut row, "erased")? {
        // What was erased is gone: a mark that still holds something is none of ours.
        Some(_) if !changes.is_empty() => return None,
        Some(stamp) => Record::mark(id, kind, stamp),
        None => {
            let changes =
                changes.into_iter().map(|json| change::read(json, newer).map(Arc::new)).collect::<Option<Vec<_>>>()?;
            let count = changes.len();
            let record = Record::of(id, kind, twins::told_apart(changes));
            if record.changes().len() < count {
                // One change twice.
                return None;
            }
            record
        }
    };
    record.unknown = rest(row);
    Some(record)
}

pub(super) fn read_kind(code: &str) -> Option<Kind> {
    [Kind::Couple, Kind::Practice].into_iter().find(|kind| kind_code(*kind) == code)
}

fn kind_code(kind: Kind) -> &'static str {
    match kind {
        Kind::Couple => "couple",
        Kind::Practice => "practice",
    }
}

pub(super) fn version(schema: &str) -> Option<(u32, u32)> {
    let (major, minor) = schema.split_once('.')?;
    Some((major.parse().ok()?, minor.parse().ok()?))
}

/// What is left of an object once the known keys are taken out.
pub(super) fn rest(row: Map<String, Json>) -> Option<String> {
    if row.is_empty() { None } else { Some(settled(Json::Object(row).to_string())) }
}

/// A JSON text that reads and writes as itself. The library reads numbers of more than fifteen digits with an error in
/// the last one, so that each copy of such a text could differ from the one before.
pub(super) fn settled(mut text: String) -> String {
    for _ in 0..8 {
        let again = serde_json::from_str::<Json>(&text).unwrap_or_default().to_string();
        if again == text {
            break;
        }
        text = again;
    }
    text
}

/// An object to be filled: what was carried through.
pub(super) fn carried(text: Option<&str>) -> Map<String, Json> {
    text.and_then(|text| serde_json::from_str(text).ok()).unwrap_or_default()
}

/// A whole row to be filled: its version, unless a newer one is carried through, and what else was carried.
pub(super) fn fresh(text: Option<&str>) -> Map<String, Json> {
    let mut row = carried(text);
    row.entry("schema").or_insert_with(|| Json::String(format!("{MAJOR}.{MINOR}")));
    row
}
