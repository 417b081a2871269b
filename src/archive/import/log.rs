//! What the last import added, so that it can be taken back, also after the app was closed.
//!
//! ```json
//! {"schema": "1.2", "at": 1792000000000, "by": "<32 hex>", "as": "<32 hex>", "next": 12, "practice": "<32 hex>", "records": [
//!   {"id": "<32 hex>"},
//!   {"id": "<32 hex>", "added": [{"by": "<32 hex>", "n": 7}]}]}
//! ```
//!
//! A record without `added` was not here before. `practice` stands there if another practice was taken over: the one
//! before. Of what was erased nothing is kept, so that cannot be taken back.
//!
//! Taking an import back may ask a question. Somebody imports "barn" in place of "fair", types "barn, by the
//! river" over it, and takes the import back. Of the two values that are left neither author knew of the other's:
//! they stand side by side, and somebody chooses. If the imported change were kept as history instead, importing
//! the same file again would bring nothing.

use std::collections::BTreeSet;
use std::sync::Arc;

use serde_json::{Map, Value as Json};

use crate::archive::carried::rest;
use crate::archive::change::{put_stamps, read_stamps};
use crate::archive::collision;
use crate::archive::installation::Installation;
use crate::archive::merge::{added, merge};
use crate::archive::object::{Object, list, put};
use crate::archive::row::{RowError, open};
use crate::archive::version::{MAJOR, MINOR};
use crate::book::change::Change;
use crate::book::id::{InstallationId, Moment, RecordId, Stamp};
use crate::book::record::Record;

/// What an import added.
#[derive(Clone, Debug, PartialEq)]
pub struct ImportLog {
    /// When it was imported.
    pub at: Moment,
    /// Who wrote the file.
    pub by: InstallationId,
    /// Who this phone was from then on: under an id that it had before, a clone of it may have written. None in a log of
    /// an earlier version.
    pub under: Option<InstallationId>,
    /// The number that the next change here was to get then: what this phone changed since has that or a higher one.
    pub next: u64,
    /// The practice before, if another one was taken over.
    pub practice: Option<RecordId>,
    pub records: Vec<Taken>,
    /// What a newer version wrote beside it.
    pub unknown: Option<String>,
}

/// What was added to one record: all of it, if it was not here before.
#[derive(Clone, Debug, PartialEq)]
pub struct Taken {
    pub id: RecordId,
    pub added: Option<Vec<Stamp>>,
}

impl ImportLog {
    /// A record as it was before the import, with what this phone has changed since; none if nothing is left of it.
    pub fn take_back(&self, taken: &Taken, record: &Record, installation: &Installation) -> Option<Record> {
        if record.erased().is_some() {
            return Some(record.clone());
        }
        let is_ours = self.is_ours(installation);
        let mut stamps: BTreeSet<&Stamp> = BTreeSet::new();
        stamps.extend(taken.added.iter().flatten());
        let stays = |change: &&Arc<Change>| match taken.added {
            None => is_ours(change),
            Some(_) => !stamps.contains(&change.stamp),
        };
        let left = collision::separate(record.changes().iter().filter(stays).cloned().collect());
        if left.is_empty() && taken.added.is_none() {
            return None;
        }
        let mut left = Record::of(record.id, record.kind, left);
        if taken.added.is_some() {
            left.unknown.clone_from(&record.unknown);
        }
        Some(left)
    }

    /// Whether this phone has changed a record since the import.
    pub fn is_changed_since(&self, record: &Record, installation: &Installation) -> bool {
        let is_ours = self.is_ours(installation);
        record.changes().iter().any(|change| is_ours(change))
    }

    /// Tells what this phone has changed since the import from what came from elsewhere, or was here before.
    fn is_ours(&self, installation: &Installation) -> impl Fn(&Change) -> bool {
        let (next, ids) = (self.next, self.ids_since(installation));
        move |change| {
            let stamp = change.made_under();
            stamp.n >= next && ids.contains(&stamp.by)
        }
    }

    /// The ids that this phone has had since the import.
    fn ids_since(&self, installation: &Installation) -> Vec<InstallationId> {
        let ids = installation.former.iter().chain([&installation.id]);
        let from = self.under.and_then(|under| ids.clone().position(|id| *id == under)).unwrap_or(0);
        ids.skip(from).copied().collect()
    }
}

/// A record with what a file says about it, and what that added; nothing if it added nothing or erased the record.
pub fn take_in(here: Option<&Record>, incoming: &Record) -> (Record, Option<Taken>) {
    let id = incoming.id;
    let Some(here) = here else {
        let taken = incoming.erased().is_none().then_some(Taken { id, added: None });
        return (incoming.clone(), taken);
    };
    let merged = merge(here, incoming);
    if merged.erased().is_some() {
        return (merged, None);
    }
    let added: Vec<Stamp> = added(here, &merged).iter().map(|change| change.stamp).collect();
    let taken = (!added.is_empty()).then_some(Taken { id, added: Some(added) });
    (merged, taken)
}

/// The log as text.
pub fn write(log: &ImportLog) -> String {
    let mut out = String::new();
    let mut row = Object::new(&mut out, log.unknown.as_deref());
    if let Some(under) = log.under {
        row.part("as", &|out| put(out, format_args!("\"{under}\"")));
    }
    row.part("at", &|out| put(out, format_args!("{}", log.at.0)));
    row.part("by", &|out| put(out, format_args!("\"{}\"", log.by)));
    row.part("next", &|out| put(out, format_args!("{}", log.next)));
    if let Some(practice) = log.practice {
        row.part("practice", &|out| put(out, format_args!("\"{practice}\"")));
    }
    row.part("records", &|out| list(out, &log.records, write_taken));
    row.unless_carried("schema", &|out| put(out, format_args!("\"{MAJOR}.{MINOR}\"")));
    row.end();
    out
}

/// The log from text.
pub fn read(text: &str) -> Result<ImportLog, RowError> {
    let (row, _) = open(text)?;
    read_parts(row).ok_or(RowError::Damaged)
}

fn read_parts(mut row: Map<String, Json>) -> Option<ImportLog> {
    Some(ImportLog {
        at: Moment(row.remove("at")?.as_i64()?),
        by: InstallationId::parse(row.remove("by")?.as_str()?)?,
        under: match row.remove("as") {
            Some(id) => Some(InstallationId::parse(id.as_str()?)?),
            None => None,
        },
        next: row.remove("next")?.as_u64()?,
        practice: match row.remove("practice") {
            Some(id) => Some(RecordId::parse(id.as_str()?)?),
            None => None,
        },
        records: row.remove("records")?.as_array()?.iter().map(read_taken).collect::<Option<_>>()?,
        unknown: rest(row),
    })
}

fn write_taken(taken: &Taken, out: &mut String) {
    let mut row = Object::new(out, None);
    if let Some(added) = &taken.added {
        row.part("added", &|out| put_stamps(added, out));
    }
    row.part("id", &|out| put(out, format_args!("\"{}\"", taken.id)));
    row.end();
}

fn read_taken(json: &Json) -> Option<Taken> {
    let mut row = json.as_object()?.clone();
    let is_new = !row.contains_key("added");
    let added = read_stamps(&mut row, "added")?;
    Some(Taken { id: RecordId::parse(row.get("id")?.as_str()?)?, added: (!is_new).then_some(added) })
}
