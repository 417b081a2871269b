//! One change as JSON, within its record's row.

use serde_json::{Map, Value as Json, json};

use super::row::{carried, rest};
use super::{key, value};
use crate::book::change::{Change, Set};
use crate::book::field::Field;
use crate::book::id::{InstallationId, Moment, Stamp};
use crate::book::value::Value;

/// A change as JSON. The same change gives the same JSON, whatever else is in the record.
pub(super) fn write(change: &Change) -> Json {
    let mut row = carried(change.unknown.as_deref());
    row.insert("by".into(), Json::String(change.made_under().by.to_string()));
    row.insert("n".into(), change.made_under().n.into());
    row.insert("at".into(), change.at.0.into());
    if let Some(undoes) = change.undoes {
        row.entry("undoes").or_insert_with(|| write_stamp(undoes));
    }
    if !change.after.is_empty() {
        row.entry("after").or_insert_with(|| write_stamps(&change.after));
    }
    row.insert("sets".into(), change.sets.iter().map(write_set).collect());
    Json::Object(row)
}

/// A change from JSON; `newer` if a newer minor version has written it.
pub(super) fn read(json: Json, newer: bool) -> Option<Change> {
    let Json::Object(mut row) = json else { return None };
    let stamp = Stamp { by: InstallationId::parse(row.remove("by")?.as_str()?)?, n: number(&row.remove("n")?)? };
    let at = Moment(row.remove("at")?.as_i64()?);
    let undoes = read_optional_stamp(&mut row, "undoes")?;
    let after = read_stamps(&mut row, "after")?;
    let Json::Array(sets) = row.remove("sets")? else { return None };
    let sets = sets.into_iter().map(|set| read_set(set, newer)).collect::<Option<_>>()?;
    Some(Change { stamp, claimed: None, at, undoes, after, sets, unknown: rest(row) })
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
    let replaces = read_stamps(&mut row, "replaces")?;
    let restores = read_optional_stamp(&mut row, "restores")?;
    Some(Set { field, value, replaces, restores, unknown: rest(row) })
}

/// Keeps a part as it stands in the file if it would be written differently: it carries more than is read from it.
fn carry(row: &mut Map<String, Json>, key: &str, read: Json, written: Json) {
    if read != written {
        row.insert(key.to_owned(), read);
    }
}

pub(super) fn read_optional_stamp(row: &mut Map<String, Json>, key: &str) -> Option<Option<Stamp>> {
    let Some(json) = row.remove(key) else { return Some(None) };
    let stamp = read_stamp(&json)?;
    carry(row, key, json, write_stamp(stamp));
    Some(Some(stamp))
}

pub(super) fn read_stamps(row: &mut Map<String, Json>, key: &str) -> Option<Vec<Stamp>> {
    let Some(json) = row.remove(key) else { return Some(Vec::new()) };
    let stamps = json.as_array()?.iter().map(read_stamp).collect::<Option<Vec<_>>>()?;
    // An empty list is not written at all.
    let written = if stamps.is_empty() { Json::Null } else { write_stamps(&stamps) };
    carry(row, key, json, written);
    Some(stamps)
}

pub(super) fn write_stamps(stamps: &[Stamp]) -> Json {
    stamps.iter().copied().map(write_stamp).collect()
}

pub(super) fn write_stamp(stamp: Stamp) -> Json {
    json!({ "by": stamp.by.to_string(), "n": stamp.n })
}

pub(super) fn read_stamp(json: &Json) -> Option<Stamp> {
    Some(Stamp { by: InstallationId::parse(json.get("by")?.as_str()?)?, n: number(json.get("n")?)? })
}

/// The number of a change. From 2^53 on, readers in other languages would round it.
fn number(json: &Json) -> Option<u64> {
    json.as_u64().filter(|n| (1..1 << 53).contains(n))
}
