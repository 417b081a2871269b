//! What waits for a copy, and when it is time for one; the row that says when the last one left.

use bandwright::archive::copy;
use bandwright::archive::row::RowError;
use bandwright::book::change::{Change, Write};
use bandwright::book::copies::{LastCopy, is_due, waiting};
use bandwright::book::field::Field;
use bandwright::book::id::{InstallationId, Moment, RecordId, Stamp};
use bandwright::book::record::{Kind, Record};
use bandwright::book::value::{Recorded, Value};
use bandwright::trade::wearer::Wearer;

const OURS: InstallationId = InstallationId(1);
const THEIRS: InstallationId = InstallationId(2);
const FORMER: InstallationId = InstallationId(3);

/// A couple with changes by these phones, under these numbers, at these moments.
fn couple(changes: &[(InstallationId, u64, i64)]) -> Record {
    let mut record = Record::new(RecordId(7), Kind::Couple);
    for (by, n, at) in changes {
        add(&mut record, *by, *n, *at, Write::set(Field::Name(Wearer::First), Value::Text(format!("name {n}"))));
    }
    record
}

fn add(record: &mut Record, by: InstallationId, n: u64, at: i64, write: Write) {
    let draft = record.draft(vec![write], Moment(at)).unwrap();
    record.add(Change::stamped(draft, Stamp { n, by }));
}

#[track_caller]
fn check(record: &Record, covered: Option<u64>, expected: Option<i64>) {
    let last = covered.map(|next| LastCopy { at: Moment(0), next, unknown: None });
    let found = waiting([record].into_iter(), &[OURS, FORMER], last.as_ref());
    assert_eq!(found, expected.map(Moment));
}

#[test]
fn the_earliest_change_of_this_phone_that_no_copy_holds_waits() {
    let record = couple(&[(OURS, 1, 500), (OURS, 2, 300), (THEIRS, 3, 100), (FORMER, 4, 400), (OURS, 5, 900)]);
    check(&record, None, Some(300));
    check(&record, Some(2), Some(300));
    check(&record, Some(3), Some(400));
    check(&record, Some(5), Some(900));
    check(&record, Some(6), None);
    check(&couple(&[(THEIRS, 1, 100)]), None, None);
    check(&couple(&[]), None, None);
}

#[test]
fn what_may_not_leave_waits_for_no_copy() {
    let mut no = couple(&[(OURS, 1, 500)]);
    let asked = "2026-11-25".parse().unwrap();
    add(&mut no, OURS, 2, 600, Write::set(Field::Recorded, Value::Recorded(Recorded { agrees: false, asked })));
    check(&no, None, None);
    let mut example = couple(&[(OURS, 1, 500)]);
    add(&mut example, OURS, 2, 600, Write::set(Field::Example, Value::Yes(true)));
    check(&example, None, None);
}

#[test]
fn it_is_time_after_seven_days_and_not_before() {
    let day = 86_400_000;
    assert!(!is_due(None, Moment(i64::MAX)));
    assert!(!is_due(Some(Moment(0)), Moment(7 * day - 1)));
    assert!(is_due(Some(Moment(0)), Moment(7 * day)));
    // A clock that runs backwards, or cannot be: no panic, no nagging.
    assert!(!is_due(Some(Moment(5)), Moment(0)));
    assert!(!is_due(Some(Moment(i64::MAX)), Moment(i64::MIN)));
    assert!(is_due(Some(Moment(i64::MIN)), Moment(i64::MAX)));
}

#[test]
fn the_row_reads_back_and_carries_what_it_does_not_know() {
    let text = r#"{"schema":"1.9","at":1764064800000,"next":8,"by":"post"}"#;
    let read = copy::read(text).unwrap();
    assert_eq!((read.at, read.next), (Moment(1_764_064_800_000), 8));
    let written: serde_json::Value = serde_json::from_str(&copy::write(&read)).unwrap();
    assert_eq!(written, serde_json::from_str::<serde_json::Value>(text).unwrap());
    for (damaged, why) in [
        ("", RowError::NotJson),
        (r#"{"at":1,"next":2}"#, RowError::NotARecord),
        (r#"{"schema":"2.0","at":1,"next":2}"#, RowError::Newer(2)),
        (r#"{"schema":"1.0","at":"now","next":2}"#, RowError::Damaged),
        (r#"{"schema":"1.0","at":1,"next":-2}"#, RowError::Damaged),
    ] {
        assert_eq!(copy::read(damaged), Err(why), "{damaged}");
    }
}
