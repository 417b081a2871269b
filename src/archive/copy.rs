//! The row that says when the last copy of the whole book left this phone.
//!
//! ```json
//! {"schema": "1.2", "at": 1764064800000, "next": 8}
//! ```

use serde_json::{Map, Value as Json};

use super::carried::rest;
use super::row::{RowError, open};
use super::version::fresh;
use crate::book::copies::LastCopy;
use crate::book::id::Moment;

/// The row as text.
pub fn write(copy: &LastCopy) -> String {
    let mut row = fresh(copy.unknown.as_deref());
    row.insert("at".into(), copy.at.0.into());
    row.insert("next".into(), copy.next.into());
    Json::Object(row).to_string()
}

/// The row from text.
pub fn read(text: &str) -> Result<LastCopy, RowError> {
    let (row, _) = open(text)?;
    parts(row).ok_or(RowError::Damaged)
}

fn parts(mut row: Map<String, Json>) -> Option<LastCopy> {
    Some(LastCopy { at: Moment(row.remove("at")?.as_i64()?), next: row.remove("next")?.as_u64()?, unknown: rest(row) })
}
