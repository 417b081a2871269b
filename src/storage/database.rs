//! The connection to IndexedDB, and transactions that are on the disk when they are complete.

use std::cell::RefCell;

use idb::{DatabaseEvent, Factory, ObjectStoreParams, Transaction, TransactionResult};
use js_sys::{Array, Object, Reflect};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::*;
use web_sys::DomException;

use super::error::StorageError;

/// One row a record: its id as the key, its text as the value.
pub const RECORDS: &str = "records";
/// The installation's own row.
pub const META: &str = "meta";

const NAME: &str = "bandwright";
const VERSION: u32 = 1;

#[wasm_bindgen]
extern "C" {
    /// `IDBDatabase` with the options that the bindings of its transactions leave out.
    #[derive(Clone)]
    type Connection;

    #[wasm_bindgen(method, catch)]
    fn transaction(this: &Connection, stores: &Array, mode: &str, options: &Object) -> Result<JsValue, JsValue>;

    #[wasm_bindgen(method)]
    fn close(this: &Connection);
}

/// The database. It is opened when it is first needed, and again when the browser has dropped the connection.
#[derive(Default)]
pub struct Database {
    name: Option<String>,
    connection: RefCell<Option<Connection>>,
}

impl Database {
    /// A database under another name, for tests.
    pub fn named(name: &str) -> Self {
        Database { name: Some(name.to_owned()), connection: RefCell::default() }
    }

    /// A transaction on both stores that may write. Its durability is strict: complete means on the disk.
    pub async fn write(&self) -> Result<Transaction, StorageError> {
        self.begin("readwrite").await
    }

    /// A transaction on both stores that only reads.
    pub async fn read(&self) -> Result<Transaction, StorageError> {
        self.begin("readonly").await
    }

    /// Closes the connection, as the browser may do after a suspend.
    pub fn close(&self) {
        if let Some(connection) = self.connection.take() {
            connection.close();
        }
    }

    async fn begin(&self, mode: &str) -> Result<Transaction, StorageError> {
        let known = self.connection.borrow().clone();
        if let Some(connection) = known
            && let Ok(transaction) = begin(&connection, mode)
        {
            return Ok(transaction);
        }
        let connection = self.open().await?;
        self.connection.replace(Some(connection.clone()));
        begin(&connection, mode).map_err(|error| match storage_error(&error) {
            StorageError::Failed(_) => StorageError::Lost,
            other => other,
        })
    }

    async fn open(&self) -> Result<Connection, StorageError> {
        let name = self.name.as_deref().unwrap_or(NAME);
        let factory = Factory::new().map_err(|_| StorageError::Denied)?;
        let mut request = factory.open(name, Some(VERSION)).map_err(StorageError::from)?;
        request.on_upgrade_needed(|event| {
            // A store that cannot be made fails the upgrade, and with it the opening: nothing is half made.
            if let Ok(database) = event.database() {
                for store in [RECORDS, META] {
                    let _ = database.create_object_store(store, ObjectStoreParams::new());
                }
            }
        });
        let mut database = request.await.map_err(StorageError::from)?;
        // A newer version in another tab wants to change the stores: let it, rather than hold it up.
        database.on_version_change(|event| {
            if let Some(target) = event.target() {
                target.unchecked_into::<Connection>().close();
            }
        });
        database.forget_callbacks();
        Ok(JsValue::from(database).unchecked_into())
    }
}

/// Waits until a transaction is complete; an aborted one is an error. A phone that is full often says so only now.
pub async fn complete(transaction: Transaction) -> Result<(), StorageError> {
    let raw = JsValue::from(transaction);
    let transaction = Transaction::try_from(raw.clone())?;
    if let Ok(TransactionResult::Committed) = transaction.await {
        return Ok(());
    }
    match Reflect::get(&raw, &"error".into()) {
        Ok(error) if error.is_object() => Err(storage_error(&error)),
        _ => Err(StorageError::Failed("aborted".to_owned())),
    }
}

/// The durability that the browser says a transaction has, where it says so.
pub fn durability(transaction: Transaction) -> Option<String> {
    let value = JsValue::from(transaction);
    Reflect::get(&value, &"durability".into()).ok()?.as_string()
}

fn begin(connection: &Connection, mode: &str) -> Result<Transaction, JsValue> {
    let options = Object::new();
    Reflect::set(&options, &"durability".into(), &"strict".into())?;
    let stores = Array::of2(&RECORDS.into(), &META.into());
    let transaction = connection.transaction(&stores, mode, &options)?;
    Transaction::try_from(transaction).map_err(|error| error.to_string().into())
}

impl From<idb::Error> for StorageError {
    fn from(error: idb::Error) -> Self {
        match error {
            idb::Error::DomException(exception) => storage_error(&exception),
            idb::Error::IndexedDbOpenFailed(value)
            | idb::Error::UpdateFailed(value)
            | idb::Error::GetFailed(value)
            | idb::Error::GetAllFailed(value)
            | idb::Error::GetAllKeysFailed(value)
            | idb::Error::DeleteFailed(value) => storage_error(&value),
            other => StorageError::Failed(other.to_string()),
        }
    }
}

fn storage_error(value: &JsValue) -> StorageError {
    let Some(exception) = value.dyn_ref::<DomException>() else {
        return StorageError::Failed(value.as_string().unwrap_or_else(|| format!("{value:?}")));
    };
    match exception.name().as_str() {
        "QuotaExceededError" => StorageError::Full,
        "VersionError" => StorageError::Newer,
        "SecurityError" | "NotAllowedError" => StorageError::Denied,
        name => StorageError::Failed(format!("{name}: {}", exception.message())),
    }
}
