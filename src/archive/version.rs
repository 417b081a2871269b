//! The version of the format that rows and files are written in.

use serde_json::{Map, Value as Json};

use super::carried::carried;

/// The version written: a higher minor adds, a higher major breaks.
pub const MAJOR: u32 = 1;
pub const MINOR: u32 = 2;

/// Reads "1.1".
pub(super) fn version(schema: &str) -> Option<(u32, u32)> {
    let (major, minor) = schema.split_once('.')?;
    Some((major.parse().ok()?, minor.parse().ok()?))
}

/// A whole row to be filled: its version, unless a newer one is carried through, and what else was carried.
pub(super) fn fresh(text: Option<&str>) -> Map<String, Json> {
    let mut row = carried(text);
    row.entry("schema").or_insert_with(|| Json::String(format!("{MAJOR}.{MINOR}")));
    row
}
