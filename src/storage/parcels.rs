//! A large import lies in parcels first: many records in one row, which a browser writes in a small part of the time
//! that it takes for as many rows (a twentieth, measured in Chromium). Each goes to its own place afterwards.
//!
//! A parcel stands among the records under a key that is no id, so that whoever opens the book finds it. Unpacking one
//! twice, or after its records were changed, takes nothing away: each is merged with what stands in its place.

use std::collections::BTreeMap;

use idb::{KeyRange, ObjectStore};
use wasm_bindgen::JsValue;

use super::blocks::{AT_ONCE, ask};
use super::book::key;
use super::database::{Database, RECORDS, complete};
use super::error::StorageError;
use crate::archive::merge::merge;
use crate::archive::row;
use crate::book::id::{InstallationId, RecordId};
use crate::book::record::Record;

/// What their keys begin with: no record's id does. A name of the import follows, and a number.
const PARCEL: &str = "parcel.";
/// Behind every such key, and before all else: the sign that follows the dot.
const BEHIND: &str = "parcel/";

/// Whether this is the key of a parcel.
pub fn is_parcel(key: &str) -> bool {
    key.starts_with(PARCEL)
}

/// Records on their way into parcels.
pub(super) struct Packing {
    /// Random bits: two tabs may pack at once.
    name: InstallationId,
    sent: u32,
    rows: String,
    count: usize,
}

impl Packing {
    pub(super) fn new(name: InstallationId) -> Packing {
        Packing { name, sent: 0, rows: String::new(), count: 0 }
    }

    /// Adds a record. Nobody waits for a parcel here: if one fails, the transaction does.
    pub(super) fn add(&mut self, store: &ObjectStore, record: &Record) -> Result<(), StorageError> {
        self.rows.push_str(&row::write(record));
        self.rows.push('\n');
        self.count += 1;
        if self.count == AT_ONCE { self.send(store) } else { Ok(()) }
    }

    /// Sends the parcel off that is not full yet.
    pub(super) fn send(&mut self, store: &ObjectStore) -> Result<(), StorageError> {
        if self.count > 0 {
            let key = format!("{PARCEL}{}.{:08}", self.name, self.sent);
            store.put(&JsValue::from_str(&self.rows), Some(&JsValue::from_str(&key)))?;
            self.sent += 1;
            self.count = 0;
            self.rows.clear();
        }
        Ok(())
    }
}

/// What a parcel holds; none if any of it cannot be read.
pub(super) fn open(row: &JsValue) -> Option<BTreeMap<RecordId, Record>> {
    let rows = row.as_string()?;
    rows.lines().map(|row| row::read(row).ok().map(|record| (record.id, record))).collect()
}

/// These records with those of a parcel, in the order of their ids.
pub(super) fn unpacked(here: Vec<Record>, parcel: BTreeMap<RecordId, Record>) -> Vec<Record> {
    let mut all: BTreeMap<RecordId, Record> = here.into_iter().map(|record| (record.id, record)).collect();
    for (id, record) in parcel {
        let record = all.get(&id).map_or_else(|| record.clone(), |here| merge(here, &record));
        all.insert(id, record);
    }
    all.into_values().collect()
}

/// Puts every record that is in a parcel in its place, and answers how many parcels are left: those that cannot be
/// read, or are for a record whose own row cannot.
pub async fn unpack(db: &Database) -> Result<usize, StorageError> {
    let transaction = db.write().await?;
    let left = unpack_within(&transaction.object_store(RECORDS)?).await?;
    complete(transaction).await?;
    Ok(left)
}

/// The same, as a part of a transaction.
pub(super) async fn unpack_within(store: &ObjectStore) -> Result<usize, StorageError> {
    let mut left = 0;
    let range = KeyRange::bound(&PARCEL.into(), &BEHIND.into(), None, Some(true))?;
    for parcel in store.get_all_keys(Some(range.into()), None)?.await? {
        let row = store.get(parcel.clone())?.await?;
        let Some(records) = row.as_ref().and_then(open) else {
            left += 1;
            continue;
        };
        let here = match ask(store, records.keys().copied().collect())?.answer(store).await {
            Ok(here) => here,
            Err(StorageError::Unreadable(_)) => {
                left += 1;
                continue;
            }
            Err(error) => return Err(error),
        };
        for (id, record) in &records {
            let text = here.get(id).map_or_else(|| row::write(record), |here| row::write(&merge(here, record)));
            store.put(&JsValue::from_str(&text), Some(&key(*id)))?;
        }
        store.delete(parcel)?.await?;
    }
    Ok(left)
}
