//! Taking files in, taking that back, and erasing, over real IndexedDB.

use bandwright::archive::file::{Header, Holds, write};
use bandwright::archive::import::{Here, News, Offer, Plan, plan};
use bandwright::archive::row::{self, RowError};
use bandwright::book::couple::Couple;
use bandwright::book::field::{Field, PracticeField};
use bandwright::book::id::{InstallationId, Moment, RecordId};
use bandwright::book::record::{Kind, Record};
use bandwright::storage::book::{Loaded, add, load, quarantine, reload};
use bandwright::storage::database::{Database, META, RECORDS};
use bandwright::storage::error::StorageError;
use bandwright::storage::import::{erase, import, keep_import, last_import, undo_import};
use bandwright::trade::wearer::Wearer;
use wasm_bindgen_test::wasm_bindgen_test;

use super::mutate::mutate;
use super::{FRESH, couple, drafted, met, opened, put, saved, stored, text, unique};

const NOW: Moment = Moment(1_792_000_000_000);
const ANOTHER: InstallationId = InstallationId(0xf12e5);

/// What a colleague's phone holds, as a file.
async fn file(loaded: &Loaded, holds: Holds) -> String {
    let practice = (holds == Holds::Book).then_some(loaded.installation.practice);
    let header = Header { written: NOW, by: loaded.installation.id, practice, holds, unknown: None };
    write(&header, &loaded.records)
}

async fn planned(db: &Database, text: &str) -> Plan {
    let here = load(db, FRESH).await.unwrap();
    let find = |id| here.records.iter().find(|record| record.id == id).map_or(Here::Nothing, Here::Record);
    plan(text.into(), &here.installation, find, NOW).unwrap()
}

async fn colleague() -> (Database, Loaded) {
    let db = Database::named(&unique());
    let loaded = load(&db, (InstallationId(0xb0b), RecordId(0xbe7c4))).await.unwrap();
    (db, loaded)
}

/// The rows of the book as they stand.
async fn rows(db: &Database) -> Vec<String> {
    load(db, FRESH).await.unwrap().records.iter().map(row::write).collect()
}

#[wasm_bindgen_test]
async fn two_phones_swap_files_and_hold_the_same_book() {
    let name = unique();
    let (ours, _) = opened(&name).await;
    let (theirs, _) = colleague().await;
    let start = saved(&ours, &couple(1), met("fair")).await;
    let given = file(&load(&ours, FRESH).await.unwrap(), Holds::Couples).await;
    import(&theirs, &planned(&theirs, &given).await, false, ANOTHER, NOW).await.unwrap();
    let seen = reload(&theirs, RecordId(1)).await.unwrap().unwrap();
    assert_eq!(seen, start);
    saved(&theirs, &seen, met("barn")).await;
    saved(&theirs, &couple(2), met("van")).await;
    saved(&ours, &start, met("studio")).await;
    // Swapped, in the wrong order and twice.
    for _ in 0..2 {
        let back = file(&load(&theirs, FRESH).await.unwrap(), Holds::Couples).await;
        import(&ours, &planned(&ours, &back).await, false, ANOTHER, NOW).await.unwrap();
        let forth = file(&load(&ours, FRESH).await.unwrap(), Holds::Couples).await;
        for text in [&given, &forth] {
            import(&theirs, &planned(&theirs, text).await, false, ANOTHER, NOW).await.unwrap();
        }
    }
    assert_eq!(rows(&ours).await, rows(&theirs).await);
    let record = reload(&ours, RecordId(1)).await.unwrap().unwrap();
    assert_eq!((record.changes().len(), record.conflicts().len()), (3, 1));
    // The next number is above every one that was read.
    let chosen = saved(&ours, &record, met("studio")).await;
    assert_eq!(chosen.changes().last().map(|change| change.stamp.n), Some(chosen.highest()));
    assert!(!chosen.is_in_conflict());
    assert_eq!(load(&ours, FRESH).await.unwrap().installation.id, FRESH.0);
}

#[wasm_bindgen_test]
async fn an_import_is_taken_back_also_after_a_reload() {
    let name = unique();
    let (ours, _) = opened(&name).await;
    let (theirs, _) = colleague().await;
    let start = saved(&ours, &couple(1), met("fair")).await;
    let given = file(&load(&ours, FRESH).await.unwrap(), Holds::Couples).await;
    import(&theirs, &planned(&theirs, &given).await, false, ANOTHER, NOW).await.unwrap();
    saved(&theirs, &start, met("barn")).await;
    saved(&theirs, &couple(2), met("van")).await;
    let before = rows(&ours).await;
    let text = file(&load(&theirs, FRESH).await.unwrap(), Holds::Couples).await;
    let imported = import(&ours, &planned(&ours, &text).await, false, ANOTHER, NOW).await.unwrap();
    assert_eq!(imported.records.len(), 2);

    let (again, _) = opened(&name).await;
    assert_eq!(last_import(&again).await.unwrap().unwrap().records.len(), 2);
    let kept = self::text(Field::Name(Wearer::Second), "Callum");
    let record = reload(&again, RecordId(1)).await.unwrap().unwrap();
    saved(&again, &record, kept).await;
    let undone = undo_import(&again).await.unwrap();
    assert_eq!((undone.records.len(), undone.gone.as_slice()), (1, &[RecordId(2)][..]));
    let now = reload(&again, RecordId(1)).await.unwrap().unwrap();
    assert_eq!((Couple(&now).met(), Couple(&now).name(Wearer::Second)), (Some("fair"), Some("Callum")));
    assert_eq!((before.len(), rows(&again).await.len()), (1, 1));
    // Once is enough, and what is kept cannot be taken back.
    assert_eq!(last_import(&again).await, Ok(None));
    assert!(undo_import(&again).await.unwrap().records.is_empty());
    import(&again, &planned(&again, &text).await, false, ANOTHER, NOW).await.unwrap();
    keep_import(&again).await.unwrap();
    assert_eq!(last_import(&again).await, Ok(None));
}

#[wasm_bindgen_test]
async fn an_import_that_adds_nothing_leaves_the_one_before_to_be_taken_back() {
    let (ours, _) = opened(&unique()).await;
    let (theirs, _) = colleague().await;
    saved(&theirs, &couple(2), met("van")).await;
    let text = file(&load(&theirs, FRESH).await.unwrap(), Holds::Couples).await;
    // Two tabs have looked at one file before either took it in.
    let plan = planned(&ours, &text).await;
    let first = import(&ours, &plan, false, ANOTHER, NOW).await.unwrap();
    let second = import(&ours, &plan, false, ANOTHER, Moment(NOW.0 + 1)).await.unwrap();
    assert_eq!((first.log.as_ref().map(|log| log.records.len()), &second.log), (Some(1), &first.log));
    assert_eq!(last_import(&ours).await, Ok(first.log));
    assert_eq!(undo_import(&ours).await.unwrap().gone, [RecordId(2)]);
}

#[wasm_bindgen_test]
async fn all_of_a_file_or_nothing() {
    let name = unique();
    let (ours, _) = opened(&name).await;
    let (theirs, _) = colleague().await;
    for id in 1..=3 {
        saved(&theirs, &couple(id), met("van")).await;
    }
    let text = file(&load(&theirs, FRESH).await.unwrap(), Holds::Couples).await;
    let plan = planned(&ours, &text).await;
    // Damaged since the preview.
    put(&ours, RECORDS, &RecordId(2).to_string(), &"scribble".into()).await;
    let refused = import(&ours, &plan, false, ANOTHER, NOW).await;
    assert_eq!(refused, Err(StorageError::Unreadable(RowError::NotJson)));
    let loaded = load(&ours, FRESH).await.unwrap();
    assert_eq!((loaded.records.len(), loaded.quarantined.len(), loaded.installation.next), (0, 1, 1));
    assert_eq!(stored(&ours, META, "import").await, None);
}

/// Files that somebody has scribbled in, one after the other: what is refused leaves every row as it was, and so does
/// what is taken in and taken back.
#[wasm_bindgen_test]
async fn scribbled_over_files_leave_the_rows_as_they_were() {
    let (theirs, _) = colleague().await;
    for id in 1..=2 {
        saved(&theirs, &couple(id), met("van")).await;
    }
    let text = file(&load(&theirs, FRESH).await.unwrap(), Holds::Couples).await;
    let phone = || async {
        let (ours, _) = opened(&unique()).await;
        saved(&ours, &couple(1), met("fair")).await;
        saved(&ours, &couple(3), met("barn")).await;
        let before = rows(&ours).await;
        (ours, before)
    };
    let (mut ours, mut before) = phone().await;
    let (mut refused, mut taken) = (0, 0);
    for seed in 1..=300 {
        let here = load(&ours, FRESH).await.unwrap();
        let find = |id| here.records.iter().find(|record| record.id == id).map_or(Here::Nothing, Here::Record);
        let plan = plan(mutate(&text, seed), &here.installation, find, NOW);
        let imported = match &plan {
            Ok(plan) => import(&ours, plan, false, InstallationId(u128::MAX - u128::from(seed)), NOW).await.is_ok(),
            Err(_) => false,
        };
        if imported {
            taken += 1;
            undo_import(&ours).await.unwrap();
        } else {
            refused += 1;
        }
        // What is erased is gone for good.
        if plan.is_ok_and(|plan| plan.count(News::Erased) > 0) {
            (ours, before) = phone().await;
        }
        assert_eq!(rows(&ours).await, before, "seed {seed}");
    }
    assert!(refused > 0 && taken > 0, "{refused} refused, {taken} taken in");
}

#[wasm_bindgen_test]
async fn a_cloned_phone_takes_a_new_name_and_keeps_both() {
    let (one, clone) = (unique(), unique());
    let (ours, _) = opened(&one).await;
    let (theirs, _) = opened(&clone).await;
    saved(&ours, &couple(1), met("fair")).await;
    saved(&theirs, &couple(1), met("barn")).await;
    let text = file(&load(&theirs, FRESH).await.unwrap(), Holds::Couples).await;
    let plan = planned(&ours, &text).await;
    assert!(plan.claims_ours);
    let imported = import(&ours, &plan, false, ANOTHER, NOW).await.unwrap();
    assert_eq!((imported.installation.id, imported.installation.former.as_slice()), (ANOTHER, &[FRESH.0][..]));
    let both = reload(&ours, RecordId(1)).await.unwrap().unwrap();
    assert_eq!((both.changes().len(), both.conflicts().len()), (2, 1));
    let chosen = saved(&ours, &both, met("fair")).await;
    assert_eq!(chosen.changes().last().map(|change| change.stamp.by), Some(ANOTHER));
    assert!(!chosen.is_in_conflict());
}

#[wasm_bindgen_test]
async fn a_lost_phone_gets_its_settings_back() {
    let (theirs, loaded) = colleague().await;
    let practice = Record::new(loaded.installation.practice, Kind::Practice);
    saved(&theirs, &practice, text(Field::Practice(PracticeField::Fair), "barn")).await;
    let text = file(&load(&theirs, FRESH).await.unwrap(), Holds::Book).await;
    let (ours, before) = opened(&unique()).await;
    let plan = planned(&ours, &text).await;
    assert_eq!(plan.practice, Offer::Offered(practice.id));
    import(&ours, &plan, true, ANOTHER, NOW).await.unwrap();
    assert_eq!(load(&ours, FRESH).await.unwrap().installation.practice, practice.id);
    undo_import(&ours).await.unwrap();
    assert_eq!(load(&ours, FRESH).await.unwrap().installation.practice, before.installation.practice);
    import(&ours, &plan, false, ANOTHER, NOW).await.unwrap();
    assert_eq!(load(&ours, FRESH).await.unwrap().installation.practice, before.installation.practice);
    // They stand beside now, and the same file can still bring them into use.
    let again = planned(&ours, &text).await;
    assert_eq!((again.is_empty(), again.practice), (true, Offer::Offered(practice.id)));
    import(&ours, &again, true, ANOTHER, NOW).await.unwrap();
    assert_eq!(load(&ours, FRESH).await.unwrap().installation.practice, practice.id);
    assert_eq!(last_import(&ours).await.unwrap().unwrap().practice, Some(before.installation.practice));
    undo_import(&ours).await.unwrap();
    assert_eq!(load(&ours, FRESH).await.unwrap().installation.practice, before.installation.practice);
    assert_eq!(reload(&ours, practice.id).await.unwrap().unwrap().changes().len(), 1, "it was beside before");
}

#[wasm_bindgen_test]
async fn settings_go_back_with_the_import_unless_they_were_changed_since() {
    let fair = |place| text(Field::Practice(PracticeField::Fair), place);
    let (theirs, loaded) = colleague().await;
    let practice = Record::new(loaded.installation.practice, Kind::Practice);
    let first = saved(&theirs, &practice, fair("barn")).await;
    let earlier = file(&load(&theirs, FRESH).await.unwrap(), Holds::Book).await;
    saved(&theirs, &first, fair("mill")).await;
    let later = file(&load(&theirs, FRESH).await.unwrap(), Holds::Book).await;
    // The settings stand beside already, or do not; the import brings more of them, or only takes them over.
    for beside in [None, Some(&earlier), Some(&later)] {
        for is_changed in [false, true] {
            let (ours, before) = opened(&unique()).await;
            if let Some(beside) = beside {
                import(&ours, &planned(&ours, beside).await, false, ANOTHER, NOW).await.unwrap();
            }
            import(&ours, &planned(&ours, &later).await, true, ANOTHER, NOW).await.unwrap();
            if is_changed {
                let taken_over = reload(&ours, practice.id).await.unwrap().unwrap();
                saved(&ours, &taken_over, fair("quay")).await;
            }
            undo_import(&ours).await.unwrap();
            let now = load(&ours, FRESH).await.unwrap().installation.practice;
            let expected = if is_changed { practice.id } else { before.installation.practice };
            assert_eq!(now, expected, "beside before: {}, changed: {is_changed}", beside.is_some());
        }
    }
}

#[wasm_bindgen_test]
async fn erased_is_gone_and_does_not_come_back() {
    let name = unique();
    let (db, _) = opened(&name).await;
    let record = saved(&db, &couple(1), met("fair")).await;
    saved(&db, &couple(2), met("barn")).await;
    let old = file(&load(&db, FRESH).await.unwrap(), Holds::Couples).await;
    let marks = erase(&db, vec![RecordId(1), RecordId(9)]).await.unwrap();
    assert_eq!(marks.iter().map(|mark| (mark.id, mark.erased().is_some())).collect::<Vec<_>>(), [(RecordId(1), true)]);
    let row = stored(&db, RECORDS, &RecordId(1).to_string()).await.unwrap().as_string().unwrap();
    assert!(!row.contains("fair"), "{row}");
    assert_eq!(add(&db, vec![drafted(&record, met("studio"))]).await, Err(StorageError::Erased));
    let plan = planned(&db, &old).await;
    assert_eq!((plan.is_empty(), plan.erased_here, plan.same), (true, 1, 1));
    import(&db, &plan, false, ANOTHER, NOW).await.unwrap();
    assert_eq!(reload(&db, RecordId(1)).await.unwrap().as_ref(), marks.first());
    // The mark erases it on another phone too, and taking that import back does not bring it back.
    let (theirs, _) = colleague().await;
    import(&theirs, &planned(&theirs, &old).await, false, ANOTHER, NOW).await.unwrap();
    let text = file(&load(&db, FRESH).await.unwrap(), Holds::Couples).await;
    import(&theirs, &planned(&theirs, &text).await, false, ANOTHER, NOW).await.unwrap();
    undo_import(&theirs).await.unwrap();
    assert_eq!(rows(&theirs).await, rows(&db).await);
}

#[wasm_bindgen_test]
async fn nothing_that_was_put_aside_outlasts_being_erased() {
    let (db, _) = opened(&unique()).await;
    let record = saved(&db, &couple(1), met("fair")).await;
    saved(&db, &couple(2), met("barn")).await;
    let copy = file(&load(&db, FRESH).await.unwrap(), Holds::Couples).await;
    // Both were damaged, twice the first, and came in again from the copy.
    let spoil = async |ids: &[u128], at: i64| {
        for id in ids {
            put(&db, RECORDS, &RecordId(*id).to_string(), &format!("spoilt row of {id}").into()).await;
        }
        let keys: Vec<String> = ids.iter().map(|id| RecordId(*id).to_string()).collect();
        quarantine(&db, &keys, Moment(at)).await.unwrap();
        import(&db, &planned(&db, &copy).await, false, ANOTHER, NOW).await.unwrap();
    };
    spoil(&[1], 5).await;
    spoil(&[1, 2], 6).await;
    let aside = async || {
        let keys = load(&db, FRESH).await.unwrap().quarantined.into_iter().map(|row| row.key);
        keys.collect::<Vec<_>>()
    };
    assert_eq!(aside().await.len(), 3);
    // Erased on another phone: the mark takes along what was put aside here.
    let (theirs, _) = colleague().await;
    import(&theirs, &planned(&theirs, &copy).await, false, ANOTHER, NOW).await.unwrap();
    erase(&theirs, vec![record.id]).await.unwrap();
    let mark = file(&load(&theirs, FRESH).await.unwrap(), Holds::Couples).await;
    import(&db, &planned(&db, &mark).await, false, ANOTHER, NOW).await.unwrap();
    assert_eq!(aside().await, [format!("aside.6.{}", RecordId(2))]);
    // And erased here.
    erase(&db, vec![RecordId(2)]).await.unwrap();
    assert!(aside().await.is_empty());
}
