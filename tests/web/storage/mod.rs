//! The phone's storage, over real IndexedDB and localStorage.

mod failing;
mod imports;
mod kept;
#[path = "../../native/files/mutate.rs"]
mod mutate;
mod parcels;

use bandwright::archive::installation;
use bandwright::archive::row::{self, RowError};
use bandwright::book::change::{Draft, Write};
use bandwright::book::couple::Couple;
use bandwright::book::example;
use bandwright::book::field::Field;
use bandwright::book::id::{InstallationId, ItemId, Moment, RecordId, Stamp};
use bandwright::book::record::{Kind, Record};
use bandwright::book::value::Value;
use bandwright::storage::book::{Addition, Loaded, add, forget_examples, load, reload};
use bandwright::storage::database::{Database, META, RECORDS, complete, durability};
use bandwright::storage::error::StorageError;
use bandwright::trade::wearer::Wearer;
use js_sys::{Function, Math, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_test::wasm_bindgen_test;

/// A name that no other run has used.
fn unique() -> String {
    format!("test-{}-{}", js_sys::Date::now(), Math::random())
}

const FRESH: (InstallationId, RecordId) = (InstallationId(0xa11ce), RecordId(0xb00c));

async fn opened(name: &str) -> (Database, Loaded) {
    let db = Database::named(name);
    let loaded = load(&db, FRESH).await.unwrap();
    (db, loaded)
}

fn text(field: Field, text: &str) -> Vec<Write> {
    vec![Write::set(field, Value::Text(text.into()))]
}

fn met(place: &str) -> Vec<Write> {
    text(Field::Met, place)
}

/// What is drafted on a record as somebody has it.
fn drafted(on: &Record, writes: Vec<Write>) -> Addition {
    let draft: Draft = on.draft(writes, Moment(1_792_000_000_000)).unwrap();
    Addition { record: on.id, kind: on.kind, draft }
}

fn couple(id: u128) -> Record {
    Record::new(RecordId(id), Kind::Couple)
}

async fn saved(db: &Database, on: &Record, writes: Vec<Write>) -> Record {
    add(db, vec![drafted(on, writes)]).await.unwrap().remove(0)
}

/// Puts any text at all under a key, past the app.
async fn put(db: &Database, store: &str, key: &str, value: &JsValue) {
    let transaction = db.write().await.unwrap();
    let store = transaction.object_store(store).unwrap();
    store.put(value, Some(&key.into())).unwrap().await.unwrap();
    complete(transaction).await.unwrap();
}

async fn stored(db: &Database, store: &str, key: &str) -> Option<JsValue> {
    let transaction = db.read().await.unwrap();
    transaction.object_store(store).unwrap().get(JsValue::from(key)).unwrap().await.unwrap()
}

fn numbers(records: &[Record]) -> Vec<u64> {
    let mut all: Vec<u64> = records.iter().flat_map(Record::changes).map(|change| change.stamp.n).collect();
    all.sort_unstable();
    all
}

// ---- The installation ----

#[wasm_bindgen_test]
async fn the_first_time_an_installation_is_made_and_it_stays() {
    let name = unique();
    let (db, first) = opened(&name).await;
    assert_eq!((first.installation.id, first.installation.practice), FRESH);
    assert!(first.records.is_empty() && first.quarantined.is_empty());
    let other = (InstallationId(1), RecordId(2));
    assert_eq!(load(&db, other).await.unwrap().installation, first.installation);
    assert_eq!(load(&Database::named(&name), other).await.unwrap().installation, first.installation);
}

#[wasm_bindgen_test]
async fn of_two_tabs_at_once_one_settles_it() {
    let name = unique();
    let (one, other) = (Database::named(&name), Database::named(&name));
    let ids = [(InstallationId(1), RecordId(1)), (InstallationId(2), RecordId(2))];
    let (a, b) = futures(load(&one, ids[0]), load(&other, ids[1])).await;
    assert_eq!(a.unwrap().installation, b.unwrap().installation);
}

#[wasm_bindgen_test]
async fn an_installation_that_cannot_be_read_is_not_replaced() {
    let name = unique();
    let (db, _) = opened(&name).await;
    put(&db, META, "installation", &"{\"id\":".into()).await;
    assert_eq!(load(&db, FRESH).await, Err(StorageError::Unreadable(RowError::NotJson)));
    let refused = add(&db, vec![drafted(&couple(1), met("fair"))]).await;
    assert_eq!(refused, Err(StorageError::Unreadable(RowError::NotJson)));
    assert_eq!(stored(&db, META, "installation").await, Some("{\"id\":".into()));
    assert_eq!(stored(&db, RECORDS, &RecordId(1).to_string()).await, None);
}

#[wasm_bindgen_test]
async fn what_a_newer_version_has_added_to_the_installation_stays() {
    let name = unique();
    let (db, loaded) = opened(&name).await;
    let newer = installation::write(&loaded.installation).replace("\"1.1\"", "\"1.2\",\"shares\":true");
    put(&db, META, "installation", &newer.as_str().into()).await;
    saved(&db, &couple(1), met("fair")).await;
    let now = stored(&db, META, "installation").await.unwrap().as_string().unwrap();
    assert_eq!(now, newer.replace("\"next\":1,", "\"next\":2,"));
}

// ---- Saving ----

#[wasm_bindgen_test]
async fn what_one_tab_has_saved_another_sees() {
    let name = unique();
    let (db, loaded) = opened(&name).await;
    let record = saved(&db, &couple(7), met("fair")).await;
    assert_eq!(record.changes()[0].stamp, Stamp { by: loaded.installation.id, n: 1 });
    let (other, seen) = opened(&name).await;
    assert_eq!(seen.records, std::slice::from_ref(&record));
    assert_eq!(reload(&other, record.id).await, Ok(Some(record)));
    assert_eq!(reload(&other, RecordId(8)).await, Ok(None));
}

#[wasm_bindgen_test]
async fn two_tabs_writing_to_different_fields_keep_both() {
    let name = unique();
    let (one, _) = opened(&name).await;
    let (other, _) = opened(&name).await;
    let start = saved(&one, &couple(7), text(Field::Name(Wearer::First), "Ines")).await;
    // Both draft on what both have seen; neither has seen the other's.
    let (a, b) = futures(
        add(&one, vec![drafted(&start, met("fair"))]),
        add(&other, vec![drafted(&start, text(Field::Name(Wearer::Second), "Callum"))]),
    )
    .await;
    assert!(a.is_ok() && b.is_ok());
    for db in [&one, &other, &Database::named(&name)] {
        let record = reload(db, RecordId(7)).await.unwrap().unwrap();
        let couple = Couple(&record);
        assert_eq!(couple.met(), Some("fair"));
        assert_eq!(Wearer::BOTH.map(|who| couple.name(who)), [Some("Ines"), Some("Callum")]);
    }
}

#[wasm_bindgen_test]
async fn two_tabs_writing_to_one_field_lose_neither() {
    let name = unique();
    let (one, _) = opened(&name).await;
    let (other, _) = opened(&name).await;
    let start = saved(&one, &couple(7), met("fair")).await;
    saved(&one, &start, met("studio")).await;
    let both = saved(&other, &start, met("kitchen")).await;
    assert_eq!(Couple(&both).met(), Some("kitchen"));
    assert_eq!(both.draft(met("market"), Moment(0)).unwrap().sets[0].replaces.len(), 2);
}

#[wasm_bindgen_test]
async fn numbers_never_repeat() {
    let name = unique();
    let (one, _) = opened(&name).await;
    let (other, _) = opened(&name).await;
    for n in 0..5_u128 {
        let (record, same) = (couple(n), couple(n));
        let (a, b) = futures(
            add(&one, vec![drafted(&record, met("fair")), drafted(&couple(100 + n), met("fair"))]),
            add(&other, vec![drafted(&same, text(Field::Name(Wearer::First), "Ines"))]),
        )
        .await;
        assert!(a.is_ok() && b.is_ok());
    }
    let (_, loaded) = opened(&name).await;
    assert_eq!(numbers(&loaded.records), (1..=15).collect::<Vec<u64>>());
}

#[wasm_bindgen_test]
async fn saved_means_on_the_disk() {
    let db = Database::named(&unique());
    assert_eq!(durability(db.write().await.unwrap()).as_deref(), Some("strict"));
}

#[wasm_bindgen_test]
async fn all_of_several_or_none() {
    let name = unique();
    let (db, _) = opened(&name).await;
    put(&db, RECORDS, &RecordId(2).to_string(), &"scribble".into()).await;
    let all = [1, 2, 3].map(|id| drafted(&couple(id), met("fair")));
    assert_eq!(add(&db, all.to_vec()).await, Err(StorageError::Unreadable(RowError::NotJson)));
    let (_, loaded) = opened(&name).await;
    assert_eq!((loaded.records.len(), loaded.quarantined.len()), (0, 1));
    // The numbers were not used up.
    assert_eq!(numbers(&[saved(&db, &couple(1), met("fair")).await]), [1]);
}

#[wasm_bindgen_test]
async fn a_transaction_that_was_aborted_is_not_saved() {
    let (db, _) = opened(&unique()).await;
    let transaction = db.write().await.unwrap();
    let raw = JsValue::from(transaction);
    let abort: Function = Reflect::get(&raw, &"abort".into()).unwrap().unchecked_into();
    abort.call0(&raw).unwrap();
    let aborted = complete(raw.try_into().unwrap()).await;
    assert_eq!(aborted, Err(StorageError::Failed("aborted".into())));
}

/// A phone that is full says so only when it commits: the transaction aborts, and its error names the reason.
#[wasm_bindgen_test]
async fn a_phone_that_is_full_says_so() {
    let (db, _) = opened(&unique()).await;
    let raw = JsValue::from(db.write().await.unwrap());
    let full = Function::new_with_args(
        "transaction",
        "const error = new DOMException('no room', 'QuotaExceededError');
         Object.defineProperty(transaction, 'error', { get: () => error });
         transaction.abort();",
    );
    full.call1(&JsValue::NULL, &raw).unwrap();
    assert_eq!(complete(raw.try_into().unwrap()).await, Err(StorageError::Full));
}

#[wasm_bindgen_test]
async fn a_connection_that_was_closed_is_opened_again() {
    let (db, _) = opened(&unique()).await;
    let record = saved(&db, &couple(7), met("fair")).await;
    db.close();
    let record = saved(&db, &record, met("studio")).await;
    // Closed behind our back, as a phone may do after a suspend.
    let transaction = JsValue::from(db.read().await.unwrap());
    let connection = Reflect::get(&transaction, &"db".into()).unwrap();
    let close: Function = Reflect::get(&connection, &"close".into()).unwrap().unchecked_into();
    close.call0(&connection).unwrap();
    let record = saved(&db, &record, met("market")).await;
    assert_eq!(reload(&db, RecordId(7)).await, Ok(Some(record.clone())));
    assert_eq!(record.changes().len(), 3);
}

#[wasm_bindgen_test]
async fn a_newer_version_may_change_the_stores_and_is_then_named() {
    let name = unique();
    let (db, _) = opened(&name).await;
    // Another tab with a newer version: it must not be held up by this one.
    let newer = idb::Factory::new().unwrap().open(&name, Some(2)).unwrap().await.unwrap();
    assert_eq!(newer.version().unwrap(), 2);
    assert_eq!(add(&db, vec![drafted(&couple(7), met("fair"))]).await, Err(StorageError::Newer));
    assert_eq!(load(&db, FRESH).await, Err(StorageError::Newer));
    newer.close();
}

// ---- What cannot be read ----

#[wasm_bindgen_test]
async fn what_cannot_be_read_is_set_aside_and_never_written_over() {
    let name = unique();
    let (db, _) = opened(&name).await;
    let whole = saved(&db, &couple(1), met("fair")).await;
    let mut elsewhere = couple(1);
    elsewhere.add(whole.changes()[0].clone());
    let rows: [(u128, JsValue, RowError); 6] = [
        (2, row::write(&whole)[..40].into(), RowError::NotJson),
        (3, r#"{"contacts": []}"#.into(), RowError::NotARecord),
        (4, r#"{"schema": "2.0"}"#.into(), RowError::Newer(2)),
        (5, r#"{"schema": "1.0"}"#.into(), RowError::Damaged),
        (6, JsValue::from(42), RowError::NotJson),
        // A whole record, under the key of another.
        (7, row::write(&elsewhere).into(), RowError::Damaged),
    ];
    for (id, value, _) in &rows {
        put(&db, RECORDS, &RecordId(*id).to_string(), value).await;
    }
    let (_, loaded) = opened(&name).await;
    assert_eq!(loaded.records, std::slice::from_ref(&whole));
    let listed: Vec<_> = loaded.quarantined.into_iter().map(|row| (row.key, row.why)).collect();
    assert_eq!(listed, rows.each_ref().map(|(id, _, why)| (RecordId(*id).to_string(), *why)));
    for (id, value, why) in &rows {
        let refused = Err(StorageError::Unreadable(*why));
        assert_eq!(add(&db, vec![drafted(&couple(*id), met("studio"))]).await, refused, "{id}");
        assert_eq!(reload(&db, RecordId(*id)).await.err(), refused.err());
        assert_eq!(forget_examples(&db, vec![RecordId(*id)]).await, Ok(vec![]));
        assert_eq!(stored(&db, RECORDS, &RecordId(*id).to_string()).await.as_ref(), Some(value), "{id} is as it was");
    }
    assert_eq!(reload(&db, RecordId(1)).await, Ok(Some(whole)), "and so is the record of that key's row");
}

#[wasm_bindgen_test]
async fn what_a_newer_version_has_added_is_still_there_after_a_write() {
    let name = unique();
    let (db, _) = opened(&name).await;
    let record = saved(&db, &couple(1), met("fair")).await;
    let newer = row::write(&record)
        .replace(r#""schema":"1.2""#, r#""schema":"1.4","shared":[1,2]"#)
        .replace(r#""value":"fair""#, r#""value":"fair","sure":false"#);
    put(&db, RECORDS, &record.id.to_string(), &newer.as_str().into()).await;
    let record = reload(&db, record.id).await.unwrap().unwrap();
    saved(&db, &record, met("studio")).await;
    let now = stored(&db, RECORDS, &record.id.to_string()).await.unwrap().as_string().unwrap();
    for kept in [r#""schema":"1.4""#, r#""shared":[1,2]"#, r#""sure":false"#, r#""value":"studio""#] {
        assert!(now.contains(kept), "{kept} in {now}");
    }
}

// ---- Examples ----

#[wasm_bindgen_test]
async fn only_examples_that_nobody_has_edited_are_forgotten() {
    let name = unique();
    let (db, _) = opened(&name).await;
    let mut item = 0;
    let examples = example::couples("2026-10-03".parse().unwrap(), || {
        item += 1;
        ItemId(item)
    });
    let additions = (1..).zip(examples).map(|(id, writes)| drafted(&couple(id), writes)).collect();
    let loaded = add(&db, additions).await.unwrap();
    assert_eq!(loaded.len(), 4);
    saved(&db, &loaded[2], met("studio")).await;
    saved(&db, &couple(9), met("fair")).await;
    let asked = [1, 2, 3, 4, 9, 10].map(RecordId).to_vec();
    assert_eq!(forget_examples(&db, asked).await, Ok([1, 2, 4].map(RecordId).to_vec()));
    let (_, left) = opened(&name).await;
    assert_eq!(left.records.iter().map(|record| record.id.0).collect::<Vec<_>>(), [3, 9]);
    assert_eq!(forget_examples(&db, vec![]).await, Ok(vec![]));
}

/// Both at once.
async fn futures<A, B>(a: impl Future<Output = A>, b: impl Future<Output = B>) -> (A, B) {
    let (mut a, mut b) = (Box::pin(a), Box::pin(b));
    let (mut from_a, mut from_b) = (None, None);
    std::future::poll_fn(|context| {
        if from_a.is_none()
            && let std::task::Poll::Ready(value) = a.as_mut().poll(context)
        {
            from_a = Some(value);
        }
        if from_b.is_none()
            && let std::task::Poll::Ready(value) = b.as_mut().poll(context)
        {
            from_b = Some(value);
        }
        if from_a.is_some() && from_b.is_some() { std::task::Poll::Ready(()) } else { std::task::Poll::Pending }
    })
    .await;
    (from_a.unwrap(), from_b.unwrap())
}

#[wasm_bindgen_test]
async fn a_book_of_many_blocks_is_read_whole() {
    let name = unique();
    let (db, _) = opened(&name).await;
    // Blocks of 400: an empty last one, one that is full to the last row, and one that is not.
    for (have, more) in [(0, 400), (400, 1), (401, 650)] {
        let additions = (have + 1..=have + more).map(|id| drafted(&couple(id), met("fair")));
        add(&db, additions.collect()).await.unwrap();
        let (_, loaded) = opened(&name).await;
        let ids: Vec<u128> = loaded.records.iter().map(|record| record.id.0).collect();
        assert_eq!(ids, (1..=have + more).collect::<Vec<_>>());
    }
    // A row that cannot be read in the middle of a block costs itself alone.
    put(&db, RECORDS, &couple(500).id.to_string(), &"{".into()).await;
    let (_, loaded) = opened(&name).await;
    assert_eq!((loaded.records.len(), loaded.quarantined.len()), (1050, 1));
}
