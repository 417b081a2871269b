//! Reading many records within one transaction, block by block: to ask for each by itself takes several times as long.

use std::collections::BTreeMap;
use std::future::IntoFuture;

use idb::request::futures::{GetAllKeysStoreRequestFuture, GetAllStoreRequestFuture};
use idb::{KeyRange, ObjectStore};

use super::book::{key, read_row};
use super::error::StorageError;
use crate::book::id::RecordId;
use crate::book::record::Record;

/// So many records make a block: short enough for the page to stay awake while one is worked on.
pub const AT_ONCE: usize = 100;
/// A block is read from its first record to its last, unless so many rows lie there: then each is asked for.
const MOST_ROWS: u32 = 4 * AT_ONCE as u32;

/// A block that has been asked for. The next one can be asked for before the answer is there.
pub struct Asked {
    ids: Vec<RecordId>,
    keys: GetAllKeysStoreRequestFuture,
    rows: GetAllStoreRequestFuture,
}

/// Asks for the records of these ids, which are in their order.
pub fn ask(store: &ObjectStore, ids: Vec<RecordId>) -> Result<Asked, StorageError> {
    let [first, last] = [ids.first(), ids.last()].map(|id| key(id.copied().unwrap_or(RecordId(0))));
    let range = || KeyRange::bound(&first, &last, None, None).map(Into::into);
    let keys = store.get_all_keys(Some(range()?), Some(MOST_ROWS))?.into_future();
    let rows = store.get_all(Some(range()?), Some(MOST_ROWS))?.into_future();
    Ok(Asked { ids, keys, rows })
}

impl Asked {
    /// Those of them that are here.
    pub async fn answer(self, store: &ObjectStore) -> Result<BTreeMap<RecordId, Record>, StorageError> {
        let (keys, rows) = (self.keys.await?, self.rows.await?);
        let mut here = BTreeMap::new();
        if rows.len() < MOST_ROWS as usize {
            for (key, row) in keys.iter().zip(&rows) {
                let key = key.as_string().unwrap_or_default();
                let wanted = RecordId::parse(&key).filter(|id| self.ids.binary_search(id).is_ok());
                if let Some(id) = wanted {
                    here.insert(id, read_row(row, &key).map_err(StorageError::Unreadable)?);
                }
            }
            return Ok(here);
        }
        let mut asked = Vec::with_capacity(self.ids.len());
        for id in self.ids {
            asked.push((id, store.get(key(id))?.into_future()));
        }
        for (id, row) in asked {
            if let Some(row) = row.await? {
                here.insert(id, read_row(&row, &id.to_string()).map_err(StorageError::Unreadable)?);
            }
        }
        Ok(here)
    }
}
