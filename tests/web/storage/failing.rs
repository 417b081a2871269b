//! A database that does not do what it should: half made, cleared, held up; and what can be read all the same.

use std::cell::RefCell;
use std::rc::Rc;

use super::*;
use bandwright::archive::installation::Installation;
use bandwright::storage::database::News;
use bandwright::storage::rescue::{Found, look, renew};

fn run(body: &str) {
    Function::new_no_args(body).call0(&JsValue::NULL).unwrap();
}

/// Which stores the browser has under a name, with the version; none where there is no such database.
async fn databases() -> Vec<String> {
    let asked = Function::new_no_args("return indexedDB.databases()").call0(&JsValue::NULL).unwrap();
    let all: js_sys::Array = wasm_bindgen_futures::JsFuture::from(js_sys::Promise::from(asked)).await.unwrap().into();
    all.iter().map(|it| Reflect::get(&it, &"name".into()).unwrap().as_string().unwrap()).collect()
}

#[wasm_bindgen_test]
async fn an_upgrade_that_fails_half_way_is_taken_back_whole() {
    let name = unique();
    run("self.make = IDBDatabase.prototype.createObjectStore;
         IDBDatabase.prototype.createObjectStore = function (store) {
           if (store === 'meta') throw new DOMException('no', 'UnknownError');
           return self.make.call(this, store);
         };");
    let failed = load(&Database::named(&name), FRESH).await;
    run("IDBDatabase.prototype.createObjectStore = self.make;");
    assert!(matches!(failed, Err(StorageError::Failed(_))), "{failed:?}");
    assert!(!databases().await.contains(&name), "nothing is half made");
    // The next time it goes well.
    let (db, _) = opened(&name).await;
    saved(&db, &couple(1), met("fair")).await;
}

#[wasm_bindgen_test]
async fn a_database_that_was_cleared_takes_no_scraps() {
    let (db, _) = opened(&unique()).await;
    let record = saved(&db, &couple(1), met("fair")).await;
    let transaction = db.write().await.unwrap();
    let records = transaction.object_store(RECORDS).unwrap();
    records.delete(JsValue::from(RecordId(1).to_string())).unwrap().await.unwrap();
    complete(transaction).await.unwrap();
    // A change to a record that is gone would be all that is left of it.
    assert_eq!(add(&db, vec![drafted(&record, met("studio"))]).await, Err(StorageError::Gone));
    assert_eq!(reload(&db, RecordId(1)).await, Ok(None));
    saved(&db, &couple(2), met("fair")).await;
    // The register is gone too: somebody has cleared all of it.
    let transaction = db.write().await.unwrap();
    transaction.object_store(META).unwrap().delete(JsValue::from("installation")).unwrap().await.unwrap();
    complete(transaction).await.unwrap();
    assert_eq!(add(&db, vec![drafted(&couple(3), met("fair"))]).await, Err(StorageError::Gone));
    assert_eq!(reload(&db, RecordId(3)).await, Ok(None));
}

#[wasm_bindgen_test]
async fn a_newer_version_is_heard_of_and_one_that_is_held_up_says_so() {
    let name = unique();
    let news = Rc::new(RefCell::new(Vec::new()));
    let heard = news.clone();
    let db = Database::named(&name).telling(move |it| heard.borrow_mut().push(it));
    // An older version that does not let go.
    let mut old = idb::Factory::new().unwrap().open(&name, Some(1)).unwrap();
    old.on_upgrade_needed(|_| ());
    let old = old.await.unwrap();
    run("self.open = IDBFactory.prototype.open;
         IDBFactory.prototype.open = function (name, version) { return self.open.call(this, name, version + 1); };");
    let opening = load(&db, FRESH);
    let closing = async {
        for _ in 0..200 {
            if !news.borrow().is_empty() {
                break;
            }
            pause(10).await;
        }
        old.close();
    };
    let (loaded, ()) = futures(opening, closing).await;
    run("IDBFactory.prototype.open = self.open;");
    assert_eq!(*news.borrow(), [News::HeldUp]);
    assert!(loaded.unwrap().records.is_empty(), "it went on by itself, and has made both stores");
    let newer = idb::Factory::new().unwrap().open(&name, Some(7)).unwrap().await.unwrap();
    assert_eq!(*news.borrow(), [News::HeldUp, News::Newer]);
    newer.close();
}

async fn pause(ms: i32) {
    let wait = js_sys::Promise::new(&mut |done, _| {
        web_sys::window().unwrap().set_timeout_with_callback_and_timeout_and_arguments_0(&done, ms).unwrap();
    });
    wasm_bindgen_futures::JsFuture::from(wait).await.unwrap();
}

#[wasm_bindgen_test]
async fn whatever_can_be_read_is_found_under_any_version() {
    let name = unique();
    let db = Database::named(&name);
    assert_eq!(look(&db).await, Ok(Found::default()));
    assert!(!databases().await.contains(&name), "looking makes nothing");
    let (db, loaded) = opened(&name).await;
    let record = saved(&db, &couple(1), met("fair")).await;
    put(&db, RECORDS, &RecordId(2).to_string(), &"scribble".into()).await;
    put(&db, RECORDS, &RecordId(3).to_string(), &JsValue::from(42)).await;
    idb::Factory::new().unwrap().open(&name, Some(2)).unwrap().await.unwrap().close();
    assert_eq!(load(&db, FRESH).await, Err(StorageError::Newer));
    let found = look(&db).await.unwrap();
    assert_eq!(found.records, [record]);
    assert_eq!(found.installation.map(|it| it.id), Some(loaded.installation.id));
    assert_eq!(found.unreadable, format!("{}\tscribble\n{}\t42\n", RecordId(2), RecordId(3)));
    assert_eq!(found.unreadable_rows, 2);
}

#[wasm_bindgen_test]
async fn a_new_register_opens_the_book_again_and_the_old_one_is_kept() {
    let name = unique();
    let (db, _) = opened(&name).await;
    let record = saved(&db, &couple(1), met("fair")).await;
    let (fresh, practice) = (InstallationId(0xbee), RecordId(0xfee));
    // One that can be read stays.
    renew(&db, fresh, practice).await.unwrap();
    assert_eq!(load(&db, FRESH).await.unwrap().installation.id, FRESH.0);
    put(&db, META, "installation", &"{\"id\":".into()).await;
    assert_eq!(load(&db, FRESH).await, Err(StorageError::Unreadable(RowError::NotJson)));
    renew(&db, fresh, practice).await.unwrap();
    let loaded = load(&db, FRESH).await.unwrap();
    let next = record.highest() + 1;
    let wanted = Installation { id: fresh, practice, next, former: Vec::new(), unknown: None };
    assert_eq!((loaded.installation, loaded.records), (wanted, vec![record]));
    let aside = stored(&db, META, &format!("aside.installation.{fresh}")).await;
    assert_eq!(aside, Some("{\"id\":".into()));
    // One of a newer version is no damage.
    let newer = "{\"schema\":\"2.0\"}";
    put(&db, META, "installation", &newer.into()).await;
    assert_eq!(renew(&db, fresh, practice).await, Err(StorageError::Unreadable(RowError::Newer(2))));
    assert_eq!(stored(&db, META, "installation").await, Some(newer.into()));
}
