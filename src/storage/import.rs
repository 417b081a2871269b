//! Taking a file in, taking that back, and erasing: each in one transaction, all of it or nothing. What is still in
//! parcels of an earlier import is unpacked first.

use std::collections::BTreeMap;

use idb::{ObjectStore, Transaction};
use wasm_bindgen::JsValue;

use super::blocks::{AT_ONCE, ask};
use super::book::{delete_quarantined, key, put_installation, read_row, stored_installation};
use super::database::{Database, META, RECORDS, complete};
use super::error::StorageError;
use super::parcels::{Packing, unpack_within};
use crate::archive::import::log::{self, ImportLog, Taken};
use crate::archive::import::{Entry, Offer, Plan};
use crate::archive::installation::Installation;
use crate::archive::row::{self, RowError};
use crate::book::id::{InstallationId, Moment, RecordId, Stamp};
use crate::book::record::Record;

/// The key of what the last import added.
const LOG: &str = "import";

/// How the book is after an import, or after it was taken back.
#[derive(Clone, Debug, PartialEq)]
pub struct Imported {
    /// It may have a new id, or another practice.
    pub installation: Installation,
    /// The records that have changed, as they are now.
    pub records: Vec<Record>,
    /// The records that are no longer here.
    pub gone: Vec<RecordId>,
    /// What the import added; none once it was taken back.
    pub log: Option<ImportLog>,
}

/// Takes in what a plan says. Each record is read again inside the transaction and merged with what the file says, so
/// that nothing is lost that was written since the preview. `fresh` is the new id of this installation if it needs one.
/// A large import is in parcels then: [`unpack`](super::parcels::unpack) is due.
pub async fn import(
    db: &Database,
    plan: &Plan,
    take_practice: bool,
    fresh: InstallationId,
    at: Moment,
) -> Result<Imported, StorageError> {
    let transaction = db.write().await?;
    let result = import_within(&transaction, plan, take_practice, fresh, at).await;
    finish(transaction, result).await
}

/// What the last import added, if it can still be taken back.
pub async fn last_import(db: &Database) -> Result<Option<ImportLog>, StorageError> {
    let transaction = db.read().await?;
    stored_log(&transaction.object_store(META)?).await
}

/// Takes the last import back: exactly what it added. What was changed here since stays, and so does what it erased.
pub async fn undo_import(db: &Database) -> Result<Imported, StorageError> {
    let transaction = db.write().await?;
    let result = undo_within(&transaction).await;
    finish(transaction, result).await
}

/// Keeps what was imported for good: it can no longer be taken back in one go.
pub async fn keep_import(db: &Database) -> Result<(), StorageError> {
    let transaction = db.write().await?;
    transaction.object_store(META)?.delete(JsValue::from_str(LOG))?.await?;
    complete(transaction).await
}

/// Erases these records for good, with what was put aside of them, and answers with the marks that are left. One that
/// is not here, or is erased already, gets no mark.
pub async fn erase(db: &Database, ids: Vec<RecordId>) -> Result<Vec<Record>, StorageError> {
    let transaction = db.write().await?;
    let result = erase_within(&transaction, ids).await;
    finish(transaction, result).await
}

async fn import_within(
    transaction: &Transaction,
    plan: &Plan,
    take_practice: bool,
    fresh: InstallationId,
    at: Moment,
) -> Result<Imported, StorageError> {
    let meta = transaction.object_store(META)?;
    let store = transaction.object_store(RECORDS)?;
    unpack_within(&store).await?;
    let mut installation = stored_installation(&meta).await?.ok_or(StorageError::Gone)?;
    let next = installation.next;
    let mut log =
        ImportLog { at, by: plan.header.by, under: None, next, practice: None, records: Vec::new(), unknown: None };
    if let (Offer::Offered(id), true) = (plan.practice, take_practice)
        && stored_record(&store, installation.practice).await?.is_none_or(|practice| practice.changes().is_empty())
    {
        log.practice = Some(std::mem::replace(&mut installation.practice, id));
    }
    let mut is_news = log.practice.is_some();
    let mut records = Vec::with_capacity(plan.entries.len());
    let entries: BTreeMap<RecordId, &Entry> = plan.entries.iter().map(|entry| (entry.incoming.id, entry)).collect();
    let entries: Vec<&Entry> = entries.into_values().collect();
    let mut packing = (entries.len() > AT_ONCE).then(|| Packing::new(fresh));
    let mut blocks = entries.chunks(AT_ONCE);
    let mut ask_next = || {
        let block = blocks.next()?;
        Some(ask(&store, block.iter().map(|entry| entry.incoming.id).collect()).map(|asked| (block, asked)))
    };
    let mut next = ask_next().transpose()?;
    while let Some((block, asked)) = next {
        // The next block comes in while this one is worked on.
        next = ask_next().transpose()?;
        let here = asked.answer(&store).await?;
        for entry in block {
            let (record, taken) = log::take_in(here.get(&entry.incoming.id), &entry.incoming);
            installation.follow(record.highest());
            is_news |= taken.is_some() || here.get(&record.id) != Some(&record);
            log.records.extend(taken);
            match &mut packing {
                Some(packing) => packing.add(&store, &record)?,
                None => put_record(&store, &record)?,
            }
            records.push(record);
        }
    }
    if let Some(mut packing) = packing {
        packing.send(&store)?;
    }
    let erased = records.iter().filter(|record| record.erased().is_some()).map(|record| record.id);
    delete_quarantined(&store, &erased.collect::<Vec<_>>()).await?;
    if plan.claims_ours {
        installation.rename(fresh);
    }
    log.under = Some(installation.id);
    put_installation(&meta, &installation).await?;
    // Where all of it came in meanwhile, as by another tab, it is that import that can be taken back.
    let log = if is_news {
        meta.put(&JsValue::from_str(&log::write(&log)), Some(&JsValue::from_str(LOG)))?.await?;
        Some(log)
    } else {
        stored_log(&meta).await?
    };
    Ok(Imported { installation, records, gone: Vec::new(), log })
}

async fn undo_within(transaction: &Transaction) -> Result<Imported, StorageError> {
    let meta = transaction.object_store(META)?;
    let store = transaction.object_store(RECORDS)?;
    unpack_within(&store).await?;
    let mut installation = stored_installation(&meta).await?.ok_or(StorageError::Gone)?;
    let mut imported =
        Imported { installation: installation.clone(), records: Vec::new(), gone: Vec::new(), log: None };
    let Some(log) = stored_log(&meta).await? else { return Ok(imported) };
    let all: BTreeMap<RecordId, &Taken> = log.records.iter().map(|taken| (taken.id, taken)).collect();
    let all: Vec<&Taken> = all.into_values().collect();
    for block in all.chunks(AT_ONCE) {
        let here = ask(&store, block.iter().map(|taken| taken.id).collect())?.answer(&store).await?;
        for taken in block {
            let Some(record) = here.get(&taken.id) else { continue };
            match log.take_back(taken, record, &installation) {
                Some(record) => {
                    put_record(&store, &record)?;
                    imported.records.push(record);
                }
                None => {
                    store.delete(key(taken.id))?;
                    imported.gone.push(taken.id);
                }
            }
        }
    }
    if let Some(practice) = log.practice
        // Settings that were taken over stay where one of them was changed since: the change would be out of sight.
        && !stored_record(&store, installation.practice)
            .await?
            .is_some_and(|taken_over| log.is_changed_since(&taken_over, &installation))
    {
        installation.practice = practice;
        put_installation(&meta, &installation).await?;
        imported.installation = installation;
    }
    meta.delete(JsValue::from_str(LOG))?.await?;
    Ok(imported)
}

async fn erase_within(transaction: &Transaction, ids: Vec<RecordId>) -> Result<Vec<Record>, StorageError> {
    let meta = transaction.object_store(META)?;
    let store = transaction.object_store(RECORDS)?;
    unpack_within(&store).await?;
    let mut installation = stored_installation(&meta).await?.ok_or(StorageError::Gone)?;
    let mut marks = Vec::with_capacity(ids.len());
    delete_quarantined(&store, &ids).await?;
    for id in ids {
        let Some(record) = stored_record(&store, id).await?.filter(|record| record.erased().is_none()) else {
            continue;
        };
        installation.follow(record.highest());
        let mark = Record::mark(id, record.kind, Stamp { n: installation.next, by: installation.id });
        installation.follow(mark.highest());
        put_record(&store, &mark)?;
        marks.push(mark);
    }
    put_installation(&meta, &installation).await?;
    Ok(marks)
}

/// Completes a transaction whose work went well, and takes back one whose work did not.
async fn finish<T>(transaction: Transaction, result: Result<T, StorageError>) -> Result<T, StorageError> {
    if result.is_ok() {
        complete(transaction).await?;
        return result;
    }
    // One that the phone has broken off says why; what came of it in here is only that nothing works any more.
    if let Some(why) = transaction.error() {
        return Err(idb::Error::DomException(why).into());
    }
    let _ = transaction.abort();
    result
}

async fn stored_record(store: &ObjectStore, id: RecordId) -> Result<Option<Record>, StorageError> {
    let value = store.get(key(id))?.await?;
    value.map(|value| read_row(&value, &id.to_string()).map_err(StorageError::Unreadable)).transpose()
}

/// Nobody waits for it here: if it fails, the transaction does.
fn put_record(store: &ObjectStore, record: &Record) -> Result<(), StorageError> {
    store.put(&JsValue::from_str(&row::write(record)), Some(&key(record.id)))?;
    Ok(())
}

async fn stored_log(meta: &ObjectStore) -> Result<Option<ImportLog>, StorageError> {
    let Some(value) = meta.get(JsValue::from_str(LOG))?.await? else { return Ok(None) };
    let text = value.as_string().ok_or(StorageError::Unreadable(RowError::NotJson))?;
    log::read(&text).map(Some).map_err(StorageError::Unreadable)
}
