//! A large import lies in parcels until it is in its places: nothing of it is lost meanwhile, whatever happens.

use bandwright::archive::file::{Header, Holds, write};
use bandwright::archive::import::{Here, plan};
use bandwright::book::couple::Couple;
use bandwright::book::id::{InstallationId, Moment, RecordId};
use bandwright::book::record::Record;
use bandwright::storage::book::load;
use bandwright::storage::database::{Database, RECORDS};
use bandwright::storage::import::{erase, import, undo_import};
use bandwright::storage::parcels::unpack;
use bandwright::storage::rescue::look;
use wasm_bindgen::JsValue;
use wasm_bindgen_test::wasm_bindgen_test;

use super::{FRESH, couple, met, opened, put, saved, unique};

const NOW: Moment = Moment(1_792_000_000_000);
const ANOTHER: InstallationId = InstallationId(0xf12e5);
const COUPLES: u128 = 250;

/// A phone with one couple, which has taken in a colleague's 250, that one among them, and was closed at once.
async fn cut_short() -> Database {
    let (ours, loaded) = opened(&unique()).await;
    let mine = saved(&ours, &couple(1), met("fair")).await;
    let (theirs, _) = opened(&unique()).await;
    let mut records = Vec::new();
    for id in 1..=COUPLES {
        records.push(saved(&theirs, &couple(id), met("barn")).await);
    }
    let colleague = InstallationId(0xb0b);
    let renamed = |record: &Record| write_as(record, colleague);
    let records: Vec<Record> = records.iter().map(renamed).collect();
    let header = Header { written: NOW, by: colleague, practice: None, holds: Holds::Couples, unknown: None };
    let find = |id| if id == mine.id { Here::Record(&mine) } else { Here::Nothing };
    let plan = plan(write(&header, &records).into(), &loaded.installation, find, NOW).unwrap();
    import(&ours, &plan, false, ANOTHER, NOW).await.unwrap();
    assert_eq!((in_places(&ours).await, load(&ours, FRESH).await.unwrap().parcels()), (1, 3));
    ours
}

/// The same record as another phone wrote it.
fn write_as(record: &Record, by: InstallationId) -> Record {
    let changes = record.changes().iter().map(|change| {
        let mut change = (**change).clone();
        change.stamp.by = by;
        change.into()
    });
    Record::of(record.id, record.kind, changes.collect())
}

async fn in_places(db: &Database) -> usize {
    load(db, FRESH).await.unwrap().records.len()
}

/// How many sides a couple has about where they were met.
async fn sides(db: &Database, id: u128) -> usize {
    let loaded = load(db, FRESH).await.unwrap();
    let record = loaded.records.iter().find(|record| record.id == RecordId(id)).unwrap();
    record.changes().len()
}

#[wasm_bindgen_test]
async fn each_goes_to_its_place_once() {
    let db = cut_short().await;
    // Unpacked twice, as by two tabs, nothing is there twice.
    for _ in 0..2 {
        assert_eq!(unpack(&db).await.unwrap(), 0);
        assert_eq!((in_places(&db).await, load(&db, FRESH).await.unwrap().parcels()), (COUPLES as usize, 0));
        assert_eq!((sides(&db, 1).await, sides(&db, 2).await), (2, 1));
    }
}

#[wasm_bindgen_test]
async fn what_another_tab_writes_meanwhile_stays() {
    let db = cut_short().await;
    let mine = load(&db, FRESH).await.unwrap().records.remove(0);
    saved(&db, &mine, met("studio")).await;
    unpack(&db).await.unwrap();
    assert_eq!(sides(&db, 1).await, 3);
}

#[wasm_bindgen_test]
async fn taking_it_back_and_erasing_find_all_of_it() {
    let db = cut_short().await;
    assert_eq!(erase(&db, vec![RecordId(2)]).await.unwrap().len(), 1);
    assert_eq!((in_places(&db).await, load(&db, FRESH).await.unwrap().parcels()), (COUPLES as usize, 0));

    let db = cut_short().await;
    undo_import(&db).await.unwrap();
    let left = load(&db, FRESH).await.unwrap();
    assert_eq!((left.records.len(), left.parcels()), (1, 0));
    assert_eq!(Couple(&left.records[0]).met(), Some("fair"));
}

#[wasm_bindgen_test]
async fn a_book_that_does_not_open_gives_it_out() {
    let db = cut_short().await;
    let found = look(&db).await.unwrap();
    assert_eq!((found.records.len(), found.unreadable_rows), (COUPLES as usize, 0));
    assert!(found.records.is_sorted_by_key(|record| record.id));
}

#[wasm_bindgen_test]
async fn one_that_cannot_be_read_stays_as_it_is() {
    let db = cut_short().await;
    put(&db, RECORDS, "parcel.x.00000000", &JsValue::from_str("{half a row")).await;
    assert_eq!(unpack(&db).await.unwrap(), 1);
    let loaded = load(&db, FRESH).await.unwrap();
    assert_eq!((loaded.records.len(), loaded.parcels()), (COUPLES as usize, 1));
    assert_eq!(loaded.quarantined[0].key, "parcel.x.00000000");
    assert_eq!(look(&db).await.unwrap().unreadable_rows, 1);
}
