//! A couple's preparation list as it is handed over: one JSON object, described in `public/list.schema.json`.
//!
//! ```json
//! {"schema": "1.0", "kind": "preparation-list", "id": "<32 hex>", "saved": "2027-01-09", "asked": "2027-01-09",
//!  "invitation": {"for": "Ada", "when": "2027-01-16T10:00", "region": "scotland"},
//!  "answers": {"name.first": "Ada", "wedding": "22 May 2027", "ring-width.first.1": "2.6"}}
//! ```
//!
//! An answer is text as it was typed, or the code of a choice, under what was asked, of whom, and of which ring.
//! The same object stands in the couple's record, and on the couple's own phone. How it is found in a message again is
//! in [`find`](super::find).

use std::collections::BTreeMap;

use chrono::NaiveDate;
use serde_json::{Map, Value as Json, json};

use super::carried::{carried, rest};
use super::code::Code;
use super::day::{read_day, read_time, write_day, write_time};
use super::version::version;
use crate::book::asks::{AnswerKey, ROWS};
use crate::book::id::ItemId;
use crate::book::preparation_list::{Invitation, PreparationList, is_offered};
use crate::book::value::When;
use crate::trade::entry::read_text;
use crate::trade::limits::Limit;
use crate::trade::wearer::Wearer;

/// The version written: a higher minor adds, a higher major breaks.
pub const MAJOR: u32 = 1;
pub const MINOR: u32 = 0;

pub const KIND: &str = "preparation-list";

/// What is read at most, in bytes: six times as much as the longest list comes to.
pub const LIMIT: usize = 1_000_000;

/// Why what was handed over is no list that can be taken in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ListError {
    Empty,
    /// More than [`LIMIT`].
    TooLarge,
    /// A packed folder.
    Zip,
    /// Text in an encoding of two bytes a character.
    Utf16,
    /// A picture, a sound or the like.
    NotText,
    /// Words, and no list among them.
    NoList,
    /// The list ends before its end.
    CutOff,
    /// Nested deeper than any list.
    TooDeep,
    /// JSON of another program.
    NotOurs,
    /// JSON of this app, but no list.
    OtherKind,
    /// Written by a newer version of the app, with this major version.
    Newer(u32),
    /// A part that every list has is missing or is not what it should be.
    Damaged,
}

/// A list as one line of JSON, the same for the same list.
pub fn write(said: &PreparationList) -> String {
    write_json(said).to_string()
}

/// Whether a newer version of the app has written in it.
pub fn is_newer(said: &PreparationList) -> bool {
    carried(said.unknown.as_deref()).contains_key("schema")
}

/// How many answers it carries that this version does not know.
pub fn unknown_answers(said: &PreparationList) -> usize {
    carried(said.unknown.as_deref()).get("answers").and_then(Json::as_object).map_or(0, Map::len)
}

/// The name of an answer: "ring-width.first.1".
pub fn write_answer_key(spot: AnswerKey) -> String {
    let mut name = spot.ask.row().code.to_owned();
    if let Some(who) = spot.who {
        name.push('.');
        name.push_str(who.code());
    }
    if let Some(ring) = spot.ring {
        name.push('.');
        name.push_str(&ring.to_string());
    }
    name
}

/// The answer of a name, if anything is asked under it.
pub fn read_answer_key(name: &str) -> Option<AnswerKey> {
    let mut parts = name.split('.');
    let code = parts.next()?;
    let ask = ROWS.iter().find(|row| row.code == code)?.ask;
    let who = match parts.next() {
        Some(who) => Some(Wearer::from_code(who)?),
        None => None,
    };
    let ring = match parts.next() {
        Some(ring) => Some(ring.parse().ok()?),
        None => None,
    };
    let spot = AnswerKey { ask, who, ring };
    (parts.next().is_none() && spot.exists() && write_answer_key(spot) == name).then_some(spot)
}

/// What a link says, by the names in its query. What is too long, or is none of it, is left out.
pub fn read_invitation<'a>(pairs: impl Iterator<Item = (&'a str, &'a str)>) -> Invitation {
    let mut invitation = Invitation::default();
    let name = |text| read_text(text, Limit::NameText).ok().flatten();
    for (key, text) in pairs {
        match key {
            "for" => invitation.first = name(text),
            "with" => invitation.second = name(text),
            "when" => invitation.when = read_when(text),
            "region" => invitation.region = Code::from_code(text),
            _ => {}
        }
    }
    invitation
}

pub fn write_invitation(invitation: &Invitation) -> Vec<(&'static str, String)> {
    let mut pairs = Vec::new();
    let mut add = |key, value: Option<String>| pairs.extend(value.map(|value| (key, value)));
    add("for", invitation.first.clone());
    add("with", invitation.second.clone());
    add("when", invitation.when.map(write_when));
    add("region", invitation.region.map(|region| region.code().to_owned()));
    pairs
}

pub fn write_json(said: &PreparationList) -> Json {
    let mut row = carried(said.unknown.as_deref());
    row.entry("schema").or_insert_with(|| json!(format!("{MAJOR}.{MINOR}")));
    row.insert("kind".into(), json!(KIND));
    row.insert("id".into(), json!(said.id.to_string()));
    row.insert("saved".into(), write_day(said.saved));
    if let Some(asked) = said.asked {
        row.insert("asked".into(), write_day(asked));
    }
    let invitation = write_invitation(&said.invitation);
    if !invitation.is_empty() {
        let invited = row.entry("invitation").or_insert_with(|| Json::Object(Map::new()));
        invitation.into_iter().for_each(|(key, value)| put(invited, key, value));
    }
    let answers = row.entry("answers").or_insert_with(|| Json::Object(Map::new()));
    said.answers.iter().for_each(|(spot, text)| put(answers, &write_answer_key(*spot), text.clone()));
    Json::Object(row)
}

pub fn read_json(json: Json) -> Result<PreparationList, ListError> {
    let Json::Object(mut row) = json else { return Err(ListError::NotOurs) };
    let schema = row.get("schema").and_then(Json::as_str).and_then(version);
    match (row.get("kind").and_then(Json::as_str), schema) {
        (Some(KIND), Some((major, _))) if major > MAJOR => return Err(ListError::Newer(major)),
        (Some(KIND), Some((MAJOR, minor))) => {
            row.remove("kind");
            // A newer version is left where it is: what the list carries is still newer than what this version writes.
            let newer = minor > MINOR;
            if !newer {
                row.remove("schema");
            }
        }
        (Some("couple" | "practice" | "bandwright-book"), Some(_)) => return Err(ListError::OtherKind),
        _ => return Err(ListError::NotOurs),
    }
    read_parts(row).ok_or(ListError::Damaged)
}

fn read_parts(mut row: Map<String, Json>) -> Option<PreparationList> {
    let id = ItemId::parse(row.remove("id")?.as_str()?)?;
    let saved = read_day(&row.remove("saved")?)?;
    let asked: Option<NaiveDate> = match row.remove("asked") {
        Some(asked) => Some(read_day(&asked)?),
        None => None,
    };
    let Json::Object(all) = row.remove("answers")? else { return None };
    // A newer version may offer choices of which this one knows nothing.
    let is_newer = row.contains_key("schema");
    let is_known = |spot: AnswerKey, text: &str| !is_newer || is_offered(spot.ask, text);
    let mut answers = BTreeMap::new();
    let mut others = Map::new();
    for (name, text) in all {
        match (read_answer_key(&name), text) {
            (Some(spot), Json::String(text)) if is_known(spot, &text) => drop(answers.insert(spot, text)),
            (_, other) => drop(others.insert(name, other)),
        }
    }
    if !others.is_empty() {
        row.insert("answers".into(), Json::Object(others));
    }
    let mut invitation = Invitation::default();
    let invited = row.remove("invitation");
    if let Some(Json::Object(mut all)) = invited {
        invitation = read_invitation(all.iter().filter_map(|(key, text)| Some((key.as_str(), text.as_str()?))));
        // What was understood is written as it was understood.
        for (key, _) in write_invitation(&invitation) {
            all.remove(key);
        }
        if !all.is_empty() {
            row.insert("invitation".into(), Json::Object(all));
        }
    } else if let Some(other) = invited {
        row.insert("invitation".into(), other);
    }
    Some(PreparationList { id, saved, asked, invitation, answers, unknown: rest(row) })
}

fn put(object: &mut Json, key: &str, text: String) {
    if let Json::Object(object) = object {
        object.insert(key.to_owned(), Json::String(text));
    }
}

/// "2027-05-22T10:00", or the day alone.
fn write_when(when: When) -> String {
    let mut text = when.day.to_string();
    if let Some(Json::String(time)) = when.time.map(write_time) {
        text.push('T');
        text.push_str(&time);
    }
    text
}

fn read_when(text: &str) -> Option<When> {
    let (day, time) = match text.split_once('T') {
        Some((day, time)) => (day, Some(read_time(&json!(time))?)),
        None => (text, None),
    };
    Some(When { day: read_day(&json!(day))?, time })
}
