//! Writing a file.

use std::collections::BTreeMap;

use serde_json::{Map, Value as Json};

use super::{Header, Holds, KIND};
use crate::archive::carried::carried;
use crate::archive::row;
use crate::archive::version::{MAJOR, MINOR};
use crate::book::couple::Couple;
use crate::book::leaving::{Refusing, Stays};
use crate::book::record::{Kind, Record};

/// A file of these records, which are the whole book, without those that stay on the phone.
pub fn write<'a>(header: &Header, records: impl IntoIterator<Item = &'a Record>) -> String {
    let mut ordered = BTreeMap::new();
    ordered.extend(records.into_iter().map(|record| (record.id, record)));
    let mut writer = Writer::new(header, Refusing::of(ordered.values().copied()));
    for record in ordered.into_values() {
        // Whoever wants to know what stays uses the writer.
        let _ = writer.add(record);
    }
    writer.finish()
}

/// Writes a file in pieces, so that a page can do other things in between.
pub struct Writer {
    text: String,
    is_first: bool,
    refusing: Refusing,
}

impl Writer {
    /// `refusing` is that of the whole book, also for a file of a part of it.
    pub fn new(header: &Header, refusing: Refusing) -> Self {
        let mut text = write_header(header);
        text.push_str(",\n\"records\":[");
        Writer { text, is_first: true, refusing }
    }

    /// Adds a record, unless it may not leave the phone. Records come in the order of their ids.
    pub fn add(&mut self, record: &Record) -> Result<(), Stays> {
        if record.kind == Kind::Couple {
            self.refusing.may_leave(Couple(record))?;
        }
        self.text.push_str(if self.is_first { "\n" } else { ",\n" });
        self.is_first = false;
        self.text.push_str(&row::write(record));
        Ok(())
    }

    /// The whole file.
    pub fn finish(mut self) -> String {
        self.text.push_str("\n]}\n");
        self.text
    }
}

/// The header without the closing brace. What says whose file it is stands first, for people who look into it.
fn write_header(header: &Header) -> String {
    let mut rest = carried(header.unknown.as_deref());
    let schema = rest.remove("schema").unwrap_or_else(|| Json::String(format!("{MAJOR}.{MINOR}")));
    let mut parts = vec![
        ("schema", schema),
        ("kind", Json::String(KIND.into())),
        ("written", header.written.0.into()),
        ("by", Json::String(header.by.to_string())),
    ];
    parts.extend(header.practice.map(|id| ("practice", Json::String(id.to_string()))));
    parts.push(("holds", Json::String(holds_code(header.holds).into())));
    let parts = parts.iter().map(|(key, value)| (*key, value)).chain(pairs(&rest));
    let parts: Vec<String> = parts.map(|(key, value)| format!("{}:{value}", Json::String(key.to_owned()))).collect();
    format!("{{{}", parts.join(","))
}

fn pairs(object: &Map<String, Json>) -> impl Iterator<Item = (&str, &Json)> {
    object.iter().map(|(key, value)| (key.as_str(), value))
}

pub(super) fn holds_code(holds: Holds) -> &'static str {
    match holds {
        Holds::Book => "book",
        Holds::Couples => "couples",
    }
}
