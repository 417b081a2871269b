//! One change as JSON, within its record's row.

use serde_json::{Map, Value as Json, json};

use super::carried::{rest, settled};
use super::object::{Object, list, put, says_the_same, text};
use super::{key, value};
use crate::book::change::{Change, Set};
use crate::book::field::Field;
use crate::book::id::{InstallationId, Moment, Stamp};
use crate::book::value::Value;

/// Writes a change. The same change gives the same text, whatever else is in the record.
pub(super) fn write(change: &Change, out: &mut String) {
    let mut row = Object::new(out, change.unknown.as_deref());
    if !change.after.is_empty() {
        row.unless_carried("after", &|out| put_stamps(&change.after, out));
    }
    row.part("at", &|out| put(out, format_args!("{}", change.at.0)));
    row.part("by", &|out| put(out, format_args!("\"{}\"", change.made_under().by)));
    row.part("n", &|out| put(out, format_args!("{}", change.made_under().n)));
    row.part("sets", &|out| list(out, &change.sets, write_set));
    if let Some(undoes) = change.undoes {
        row.unless_carried("undoes", &|out| put_stamp(&undoes, out));
    }
    row.end();
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

fn write_set(set: &Set, out: &mut String) {
    let mut row = Object::new(out, set.unknown.as_deref());
    row.part("field", &|out| text(&key::write(&set.field), out));
    if !set.replaces.is_empty() {
        row.unless_carried("replaces", &|out| put_stamps(&set.replaces, out));
    }
    if let Some(restores) = set.restores {
        row.unless_carried("restores", &|out| put_stamp(&restores, out));
    }
    if let Some(value) = &set.value {
        row.unless_carried("value", &|out| match value {
            Value::Text(words) => text(words, out),
            other => put(out, format_args!("{}", value::write(other))),
        });
    }
    row.end();
}

/// Writes a list of stamps.
pub(super) fn put_stamps(stamps: &[Stamp], out: &mut String) {
    list(out, stamps, put_stamp);
}

/// Writes a stamp.
pub(super) fn put_stamp(stamp: &Stamp, out: &mut String) {
    put(out, format_args!("{{\"by\":\"{}\",\"n\":{}}}", stamp.by, stamp.n));
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
            None if newer => Some(Value::Unknown(settled(json.to_string()))),
            None => return None,
        },
    };
    let replaces = read_stamps(&mut row, "replaces")?;
    let restores = read_optional_stamp(&mut row, "restores")?;
    Some(Set { field, value, replaces, restores, unknown: rest(row) })
}

/// Keeps a part as it stands in the file if it would be written differently: it carries more than is read from it.
fn carry(row: &mut Map<String, Json>, key: &str, read: Json, written: Json) {
    if !says_the_same(&read, &written) {
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

fn write_stamps(stamps: &[Stamp]) -> Json {
    stamps.iter().copied().map(write_stamp).collect()
}

fn write_stamp(stamp: Stamp) -> Json {
    json!({ "by": stamp.by.to_string(), "n": stamp.n })
}

pub(super) fn read_stamp(json: &Json) -> Option<Stamp> {
    Some(Stamp { by: InstallationId::parse(json.get("by")?.as_str()?)?, n: number(json.get("n")?)? })
}

/// The number of a change. From 2^53 on, readers in other languages would round it.
fn number(json: &Json) -> Option<u64> {
    json.as_u64().filter(|n| (1..1 << 53).contains(n))
}
