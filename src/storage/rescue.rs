//! What is still there when the book does not open: rows as they stand, whatever version of the app has made the
//! stores; and a new register in the place of one that cannot be read.
//!
//! The register says which phone this is, and no couple needs it. With a new one the phone is another
//! installation, whose numbers follow all that it reads, so that nothing can clash. The old row is kept beside it.
//! A register of a newer version is not damage, and stays.

use std::cell::Cell;
use std::rc::Rc;

use idb::{Event, Factory, Request, Transaction, TransactionMode};
use wasm_bindgen::JsValue;

use super::book::{INSTALLATION, put_installation, read_row, stored_installation};
use super::copies::as_line;
use super::database::{Database, META, RECORDS, complete};
use super::error::StorageError;
use super::parcels;
use crate::archive::installation::Installation;
use crate::archive::row::RowError;
use crate::book::id::{InstallationId, RecordId};
use crate::book::record::Record;

/// What could be read, and what could not.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Found {
    /// Who this phone is, if its register can be read.
    pub installation: Option<Installation>,
    /// In the order of their ids.
    pub records: Vec<Record>,
    /// The rows that cannot be read, as they stand, one a line, each after its key.
    pub unreadable: String,
    /// How many these are.
    pub unreadable_rows: usize,
}

/// Looks for whatever can be read. Where there is no database nothing is found, and none is made.
pub async fn look(db: &Database) -> Result<Found, StorageError> {
    let factory = Factory::new().map_err(|_| StorageError::Denied)?;
    // Without a version, whatever is there is opened. What is not there would be made: that is called off.
    let mut request = factory.open(db.name(), None)?;
    let called_off = Rc::new(Cell::new(false));
    let noted = called_off.clone();
    request.on_upgrade_needed(move |event| {
        noted.set(true);
        if let Some(upgrade) = event.target().ok().and_then(|request| request.transaction()) {
            let _ = upgrade.abort();
        }
    });
    let database = match request.await {
        Ok(database) => database,
        Err(_) if called_off.get() => return Ok(Found::default()),
        Err(error) => return Err(error.into()),
    };
    let found = look_into(&database).await;
    database.close();
    found
}

/// Begins a new register where the one that is there cannot be read, which is moved aside: the book opens again then.
/// A register of a newer version is left alone, and so is one that can be read by now.
pub async fn renew(db: &Database, fresh: InstallationId, practice: RecordId) -> Result<(), StorageError> {
    let transaction = db.write().await?;
    match renew_within(&transaction, fresh, practice).await {
        Ok(()) => complete(transaction).await,
        Err(error) => {
            let _ = transaction.abort();
            Err(error)
        }
    }
}

async fn renew_within(
    transaction: &Transaction,
    fresh: InstallationId,
    practice: RecordId,
) -> Result<(), StorageError> {
    let meta = transaction.object_store(META)?;
    match stored_installation(&meta).await {
        Ok(_) => return Ok(()),
        Err(StorageError::Unreadable(why)) if !matches!(why, RowError::Newer(_)) => {}
        Err(error) => return Err(error),
    }
    if let Some(damaged) = meta.get(JsValue::from_str(INSTALLATION))?.await? {
        meta.put(&damaged, Some(&format!("aside.{INSTALLATION}.{fresh}").into()))?.await?;
    }
    put_installation(&meta, &Installation { id: fresh, practice, next: 1, former: Vec::new(), unknown: None }).await
}

async fn look_into(database: &idb::Database) -> Result<Found, StorageError> {
    let mut found = Found::default();
    let stores = database.store_names();
    let is_there = |store: &str| stores.iter().any(|name| name == store);
    if is_there(META) {
        let transaction = database.transaction(&[META], TransactionMode::ReadOnly)?;
        found.installation = stored_installation(&transaction.object_store(META)?).await.unwrap_or_default();
    }
    if is_there(RECORDS) {
        let transaction = database.transaction(&[RECORDS], TransactionMode::ReadOnly)?;
        let store = transaction.object_store(RECORDS)?;
        let keys = store.get_all_keys(None, None)?.await?;
        let rows = store.get_all(None, None)?.await?;
        for (key, row) in keys.iter().zip(rows) {
            let key = key.as_string().unwrap_or_default();
            match read_row(&row, &key) {
                Ok(record) => found.records.push(record),
                Err(_)
                    if parcels::is_parcel(&key)
                        && let Some(records) = parcels::open(&row) =>
                {
                    let here = std::mem::take(&mut found.records);
                    found.records = parcels::unpacked(here, records);
                }
                Err(_) => {
                    found.unreadable_rows += 1;
                    found.unreadable.push_str(&as_line(&key, &row));
                }
            }
        }
    }
    Ok(found)
}
