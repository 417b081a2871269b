//! One record as one JSON object.
//!
//! ```json
//! {"schema": "1.2", "id": "<32 hex>", "kind": "couple", "changes": [
//!   {"by": "<32 hex>", "n": 7, "at": 1792000000000, "undoes": {"by": "<32 hex>", "n": 6},
//!    "after": [{"by": "<32 hex>", "n": 6}], "sets": [
//!     {"field": "wedding", "value": "2027-05", "replaces": [{"by": "<32 hex>", "n": 6}],
//!      "restores": {"by": "<32 hex>", "n": 5}}]}]}
//! ```
//!
//! The changes stand in the order of their stamps: `n`, then `by`. `undoes` and `restores` stand in a taking-back
//! only: which change is taken back, and whose value stands again. `after` (since 1.1) names changes of other
//! installations that its author had seen, where that does not follow from what came before. Of an erased record only
//! a mark is left (since 1.1): `{"schema": "1.2", "id": ..., "kind": ..., "changes": [], "erased": {"by": ..., "n": 9}}`.

use std::cmp::Ordering;
use std::sync::Arc;

use serde_json::{Map, Value as Json};

use super::carried::rest;
use super::code::Code;
use super::object::{Object, list, put, text};
use super::version::{MAJOR, MINOR, version};
use super::{change, collision, plain};
use crate::book::id::RecordId;
use crate::book::record::Record;

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
    row.part("kind", &|out| text(record.kind.code(), out));
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
    let kind = Code::from_code(row.remove("kind")?.as_str()?)?;
    let Json::Array(changes) = row.remove("changes")? else { return None };
    let mut record = match change::read_optional_stamp(&mut row, "erased")? {
        // What was erased is gone: a mark that still holds something is none of ours.
        Some(_) if !changes.is_empty() => return None,
        Some(stamp) => Record::mark(id, kind, stamp),
        None => {
            let changes =
                changes.into_iter().map(|json| change::read(json, newer).map(Arc::new)).collect::<Option<Vec<_>>>()?;
            let count = changes.len();
            let record = Record::of(id, kind, collision::separate(changes));
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
