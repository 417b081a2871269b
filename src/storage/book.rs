//! The book on this phone: reading all of it, and adding changes to it.

use std::future::IntoFuture;

use idb::{KeyRange, ObjectStore, Query, Transaction};
use wasm_bindgen::JsValue;

use super::database::{Database, META, RECORDS, complete};
use super::error::StorageError;
use super::parcels::is_parcel;
use crate::archive::installation::{self, Installation};
use crate::archive::row::{self, RowError};
use crate::book::change::{Change, Draft};
use crate::book::couple::Couple;
use crate::book::id::{InstallationId, Moment, RecordId, Stamp};
use crate::book::record::{Kind, Record};
use crate::book::verbs;

/// The key of the only row in the store of the installation.
pub(super) const INSTALLATION: &str = "installation";

/// A row that could not be read. It stays where it is, as it is: moving it would make worse whatever it suffers from, a
/// newer version or damage. Only a person moves a damaged one, by [`quarantine`].
#[derive(Clone, Debug, PartialEq)]
pub struct Quarantined {
    pub key: String,
    pub why: RowError,
}

impl Quarantined {
    /// Whether somebody has put it aside, so that its record may come in again from a file.
    pub fn is_for_good(&self) -> bool {
        self.key.starts_with(FOR_GOOD)
    }

    /// The record of which it is a row that somebody has put aside.
    pub fn for_good_of(&self) -> Option<RecordId> {
        for_good_of(&self.key)
    }

    /// Whether it may be put aside: what a newer version has written is no damage.
    pub fn is_damaged(&self) -> bool {
        !self.is_for_good() && !matches!(self.why, RowError::Newer(_))
    }
}

/// What the keys of rows begin with that were put aside for good: no record's id does. When it was, and the key that
/// it had, follow.
const FOR_GOOD: &str = "aside.";
/// Behind every such key, and before all else: the sign that follows the dot.
const BEHIND_FOR_GOOD: &str = "aside/";

/// Everything that the phone keeps of the book.
#[derive(Clone, Debug, PartialEq)]
pub struct Loaded {
    pub installation: Installation,
    pub records: Vec<Record>,
    pub quarantined: Vec<Quarantined>,
}

impl Loaded {
    /// How many parcels of imports are there still.
    pub fn parcels(&self) -> usize {
        self.quarantined.iter().filter(|row| is_parcel(&row.key)).count()
    }
}

/// What is to be added to one record.
#[derive(Clone, Debug)]
pub struct Addition {
    pub record: RecordId,
    pub kind: Kind,
    pub draft: Draft,
}

/// So many rows are read at a time: between two of them the page may paint.
const BLOCK: u32 = 400;

/// Reads everything. The very first time, the installation is given `fresh`: two ids of random bits, its own and its
/// practice's.
pub async fn load(db: &Database, fresh: (InstallationId, RecordId)) -> Result<Loaded, StorageError> {
    let installation = match installed(db).await? {
        Some(installation) => installation,
        None => install(db, fresh).await?,
    };
    let transaction = db.read().await?;
    let store = transaction.object_store(RECORDS)?;
    let mut loaded = Loaded { installation, records: Vec::new(), quarantined: Vec::new() };
    let mut after = None;
    loop {
        let range = after.map(|last: JsValue| KeyRange::lower_bound(&last, Some(true))).transpose()?;
        let range = || range.clone().map(Query::from);
        let keys = store.get_all_keys(range(), Some(BLOCK))?.into_future();
        let rows = store.get_all(range(), Some(BLOCK))?.into_future();
        let (keys, rows) = (keys.await?, rows.await?);
        let Some(last) = keys.last().cloned() else { break };
        for (key, value) in keys.iter().zip(rows) {
            let key = key.as_string().unwrap_or_default();
            match read_row(&value, &key) {
                Ok(record) => loaded.records.push(record),
                Err(why) => loaded.quarantined.push(Quarantined { key, why }),
            }
        }
        after = Some(last);
    }
    let highest = loaded.records.iter().map(Record::highest).fold(0, u64::max);
    if highest >= loaded.installation.next {
        loaded.installation = follow(db, highest).await?;
    }
    Ok(loaded)
}

/// Reads one record again, as another tab may have changed it. None if it is gone.
pub async fn reload(db: &Database, id: RecordId) -> Result<Option<Record>, StorageError> {
    let transaction = db.read().await?;
    let value = transaction.object_store(RECORDS)?.get(key(id))?.await?;
    value.map(|value| read_row(&value, &id.to_string()).map_err(StorageError::Unreadable)).transpose()
}

/// Puts rows that cannot be read under other keys, as they stand: their places are free for whole ones. A row that can
/// be read by now stays where it is.
pub async fn quarantine(db: &Database, keys: &[String], at: Moment) -> Result<(), StorageError> {
    let transaction = db.write().await?;
    let store = transaction.object_store(RECORDS)?;
    for key in keys {
        let Some(value) = store.get(JsValue::from_str(key))?.await? else { continue };
        if read_row(&value, key).is_err_and(|why| !matches!(why, RowError::Newer(_))) {
            store.put(&value, Some(&JsValue::from_str(&format!("{FOR_GOOD}{}.{key}", at.0))))?.await?;
            store.delete(JsValue::from_str(key))?.await?;
        }
    }
    complete(transaction).await
}

/// Adds a change to each of these records, all of them or none, and answers with the records as they are then.
///
/// Each record is read again inside the transaction, so that what another tab has added meanwhile is kept. A record
/// that cannot be read is not written to.
pub async fn add(db: &Database, additions: Vec<Addition>) -> Result<Vec<Record>, StorageError> {
    let transaction = db.write().await?;
    match add_within(&transaction, additions).await {
        Ok(records) => {
            complete(transaction).await?;
            Ok(records)
        }
        Err(error) => {
            // Without this the numbers given out so far would be used up for nothing.
            let _ = transaction.abort();
            Err(error)
        }
    }
}

/// Forgets the example couples among these that nobody has edited, and answers with those that are gone.
pub async fn forget_examples(db: &Database, ids: Vec<RecordId>) -> Result<Vec<RecordId>, StorageError> {
    let transaction = db.write().await?;
    let store = transaction.object_store(RECORDS)?;
    let mut gone = Vec::new();
    for id in ids {
        let Some(value) = store.get(key(id))?.await? else { continue };
        let Ok(record) = read_row(&value, &id.to_string()) else { continue };
        if Couple(&record).is_example() && !verbs::is_edited_example(Couple(&record)) {
            store.delete(key(id))?.await?;
            gone.push(id);
        }
    }
    complete(transaction).await?;
    Ok(gone)
}

async fn add_within(transaction: &Transaction, additions: Vec<Addition>) -> Result<Vec<Record>, StorageError> {
    let meta = transaction.object_store(META)?;
    let store = transaction.object_store(RECORDS)?;
    let mut installation = stored_installation(&meta).await?.ok_or(StorageError::Gone)?;
    let mut records = Vec::with_capacity(additions.len());
    for addition in additions {
        let mut record = match store.get(key(addition.record))?.await? {
            Some(value) => read_row(&value, &addition.record.to_string()).map_err(StorageError::Unreadable)?,
            // What was written on more than nothing would be a scrap of the record without the rest of it.
            None if addition.draft.has_seen_any() => return Err(StorageError::Gone),
            None => Record::new(addition.record, addition.kind),
        };
        if record.erased().is_some() {
            return Err(StorageError::Erased);
        }
        installation.follow(record.highest());
        let stamp = Stamp { n: installation.next, by: installation.id };
        installation.next += 1;
        record.add(Change::stamped(addition.draft, stamp));
        store.put(&JsValue::from_str(&row::write(&record)), Some(&key(record.id)))?.await?;
        records.push(record);
    }
    put_installation(&meta, &installation).await?;
    Ok(records)
}

/// Deletes what was put aside of these records: nothing of one that is erased may be left.
pub(super) async fn delete_quarantined(store: &ObjectStore, erased: &[RecordId]) -> Result<(), StorageError> {
    if erased.is_empty() {
        return Ok(());
    }
    let range = KeyRange::bound(&FOR_GOOD.into(), &BEHIND_FOR_GOOD.into(), None, Some(true))?;
    for aside in store.get_all_keys(Some(range.into()), None)?.await? {
        let key = aside.as_string().unwrap_or_default();
        if for_good_of(&key).is_some_and(|id| erased.contains(&id)) {
            store.delete(aside)?.await?;
        }
    }
    Ok(())
}

fn for_good_of(key: &str) -> Option<RecordId> {
    let (_, id) = key.strip_prefix(FOR_GOOD)?.rsplit_once('.')?;
    RecordId::parse(id)
}

async fn installed(db: &Database) -> Result<Option<Installation>, StorageError> {
    let transaction = db.read().await?;
    let meta = transaction.object_store(META)?;
    stored_installation(&meta).await
}

/// Two tabs may get here at once: the first one through settles it for both.
async fn install(db: &Database, fresh: (InstallationId, RecordId)) -> Result<Installation, StorageError> {
    let transaction = db.write().await?;
    let meta = transaction.object_store(META)?;
    let installation = match stored_installation(&meta).await? {
        Some(installation) => installation,
        None => {
            let installation =
                Installation { id: fresh.0, practice: fresh.1, next: 1, former: Vec::new(), unknown: None };
            put_installation(&meta, &installation).await?;
            installation
        }
    };
    complete(transaction).await?;
    Ok(installation)
}

/// What was read by another way than an import, as from a restored copy of the phone, is followed too.
async fn follow(db: &Database, highest: u64) -> Result<Installation, StorageError> {
    let transaction = db.write().await?;
    let meta = transaction.object_store(META)?;
    let mut installation = stored_installation(&meta).await?.ok_or(StorageError::Gone)?;
    installation.follow(highest);
    put_installation(&meta, &installation).await?;
    complete(transaction).await?;
    Ok(installation)
}

pub(super) async fn stored_installation(meta: &ObjectStore) -> Result<Option<Installation>, StorageError> {
    let Some(value) = meta.get(JsValue::from_str(INSTALLATION))?.await? else { return Ok(None) };
    let text = value.as_string().ok_or(StorageError::Unreadable(RowError::NotJson))?;
    installation::read(&text).map(Some).map_err(StorageError::Unreadable)
}

pub(super) async fn put_installation(meta: &ObjectStore, installation: &Installation) -> Result<(), StorageError> {
    let text = installation::write(installation);
    meta.put(&JsValue::from_str(&text), Some(&JsValue::from_str(INSTALLATION)))?.await?;
    Ok(())
}

/// A row by its key. One that stands under another record's key is damaged: it would be written over that record.
pub(super) fn read_row(value: &JsValue, key: &str) -> Result<Record, RowError> {
    let record = row::read(&value.as_string().ok_or(RowError::NotJson)?)?;
    if record.id.to_string() == key { Ok(record) } else { Err(RowError::Damaged) }
}

pub(super) fn key(id: RecordId) -> JsValue {
    JsValue::from_str(&id.to_string())
}
