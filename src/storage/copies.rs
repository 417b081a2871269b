//! When the last copy left this phone. It is a fact about this phone and not about the jeweller's work, so it stands
//! beside the installation and not in the practice: there it would travel to other phones, and writing it down would
//! be a change that waits for a copy itself.
//!
//! A copy counts once the share sheet took it or the download began. A share sheet that was closed does not count,
//! nor does a file of some couples, nor a table.

use wasm_bindgen::JsValue;

use super::database::{Database, META, RECORDS, complete};
use super::error::StorageError;
use crate::archive::copy;
use crate::book::copies::LastCopy;

const KEY: &str = "copy";

/// The last copy, if there was one. A row that cannot be read counts as none and stays where it is until the next.
pub async fn last(db: &Database) -> Result<Option<LastCopy>, StorageError> {
    let transaction = db.read().await?;
    let value = transaction.object_store(META)?.get(JsValue::from_str(KEY))?.await?;
    Ok(value.and_then(|value| copy::read(&value.as_string()?).ok()))
}

/// Rows that cannot be read, as they stand, one a line: for whoever can mend them.
pub async fn quarantined(db: &Database, keys: &[String]) -> Result<String, StorageError> {
    let transaction = db.read().await?;
    let store = transaction.object_store(RECORDS)?;
    let mut text = String::new();
    for key in keys {
        let value = store.get(JsValue::from_str(key))?.await?.unwrap_or(JsValue::UNDEFINED);
        text.push_str(&as_line(key, &value));
    }
    Ok(text)
}

/// A row as it stands, on a line after its key. What is no text is shown as the browser shows it.
pub(super) fn as_line(key: &str, value: &JsValue) -> String {
    let row = value.as_string().or_else(|| js_sys::JSON::stringify(value).ok()?.as_string()).unwrap_or_default();
    format!("{key}\t{row}\n")
}

/// Notes a copy.
pub async fn note(db: &Database, last: &LastCopy) -> Result<(), StorageError> {
    let transaction = db.write().await?;
    let text = JsValue::from_str(&copy::write(last));
    transaction.object_store(META)?.put(&text, Some(&JsValue::from_str(KEY)))?.await?;
    complete(transaction).await
}
