//! The connection to IndexedDB, and transactions that are on the disk when they are complete.

use std::cell::RefCell;
use std::rc::Rc;

use idb::{DatabaseEvent, Event, Factory, ObjectStoreParams, Request, Transaction, TransactionResult};
use js_sys::{Array, Object, Reflect};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::*;
use web_sys::DomException;

use super::error::StorageError;
use super::local;

/// One row per record: its id as the key, its text as the value. The text is what stands in files, so that there is one
/// format to keep compatible; and a row is read, extended and written within one transaction, so that two tabs lose
/// nothing.
pub const RECORDS: &str = "records";
/// The installation's own row.
pub const META: &str = "meta";

const NAME: &str = "bandwright";
const VERSION: u32 = 1;

#[wasm_bindgen]
extern "C" {
    /// `IDBDatabase` with the options that the bindings of its transactions leave out. Strict durability is one of them:
    /// since version 121 Chromium otherwise calls a transaction complete before it is on the disk.
    #[derive(Clone)]
    type Connection;

    #[wasm_bindgen(method, catch)]
    fn transaction(this: &Connection, stores: &Array, mode: &str, options: &Object) -> Result<JsValue, JsValue>;

    #[wasm_bindgen(method)]
    fn close(this: &Connection);
}

/// What the database says without being asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum News {
    /// An older version of the app in another tab holds the opening up. It goes on by itself when that tab is closed.
    HeldUp,
    /// A newer version of the app wants to change the stores: the connection was closed for it.
    Newer,
}

type Told = Rc<dyn Fn(News)>;

/// The database. It is opened when it is first needed, and again when the browser has dropped the connection.
pub struct Database {
    name: String,
    connection: RefCell<Option<Connection>>,
    told: Told,
}

impl Default for Database {
    fn default() -> Self {
        Database::named(NAME)
    }
}

impl Database {
    /// A database under another name, for tests.
    pub fn named(name: &str) -> Self {
        Database { name: name.to_owned(), connection: RefCell::default(), told: Rc::new(|_| ()) }
    }

    /// The same one; `told` hears its news.
    pub fn telling(self, told: impl Fn(News) + 'static) -> Self {
        Database { told: Rc::new(told), ..self }
    }

    pub(super) fn name(&self) -> &str {
        &self.name
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
        // The browser has dropped it, as phones do after a suspend: once more, before anybody hears of it.
        self.close();
        let connection = self.open().await?;
        self.connection.replace(Some(connection.clone()));
        begin(&connection, mode).map_err(|error| storage_error(&error))
    }

    async fn open(&self) -> Result<Connection, StorageError> {
        let factory = Factory::new().map_err(|_| StorageError::Denied)?;
        let mut request = factory.open(&self.name, Some(VERSION)).map_err(not_opened)?;
        let told = self.told.clone();
        request.on_blocked(move |_| told(News::HeldUp));
        request.on_upgrade_needed(|event| {
            // Both stores or nothing: one that cannot be made takes the upgrade back, and the opening fails.
            let made = event.database().is_ok_and(|database| make_stores(&database));
            if !made && let Some(upgrade) = event.target().ok().and_then(|request| request.transaction()) {
                let _ = upgrade.abort();
            }
        });
        let mut database = request.await.map_err(not_opened)?;
        // A newer version in another tab wants to change the stores: let it, rather than hold it up.
        let told = self.told.clone();
        database.on_version_change(move |event| {
            if let Some(target) = event.target() {
                target.unchecked_into::<Connection>().close();
            }
            // Without a new version the database is to be deleted, which is nobody's new version.
            if Reflect::get(&event, &"newVersion".into()).is_ok_and(|version| version.is_truthy()) {
                told(News::Newer);
            }
        });
        database.forget_callbacks();
        Ok(JsValue::from(database).unchecked_into())
    }
}

fn make_stores(database: &idb::Database) -> bool {
    let there = database.store_names();
    let mut all = true;
    for store in [RECORDS, META] {
        let is_there = there.iter().any(|name| name == store);
        all &= is_there || database.create_object_store(store, ObjectStoreParams::new()).is_ok();
    }
    all
}

/// A page that may store nothing hears that in various words, of an invalid state or something unknown.
fn not_opened(error: idb::Error) -> StorageError {
    match StorageError::from(error) {
        StorageError::Lost => StorageError::Denied,
        StorageError::Failed(_) if !local::is_allowed() => StorageError::Denied,
        other => other,
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
        // A value's own form for debugging would bring 1 kB into the first load.
        let error = value.dyn_ref::<js_sys::Error>().map(|error| String::from(error.message()));
        return StorageError::Failed(error.or_else(|| value.as_string()).unwrap_or_default());
    };
    match exception.name().as_str() {
        "QuotaExceededError" => StorageError::Full,
        "VersionError" => StorageError::Newer,
        "SecurityError" | "NotAllowedError" => StorageError::Denied,
        // The connection was closed.
        "InvalidStateError" => StorageError::Lost,
        name => StorageError::Failed(format!("{name}: {}", exception.message())),
    }
}
