//! Frozen samples: every version ever written still opens.

use std::collections::BTreeSet;

use super::{records, rows};
use bandwright::archive::file::{Header, Holds, open, write};
use bandwright::archive::version::MINOR;
use bandwright::book::couple::Couple;
use bandwright::book::field::Field;
use bandwright::book::id::{InstallationId, Moment, RecordId};
use bandwright::book::merge::conflict::Conflict;
use bandwright::book::value::Value;
use bandwright::trade::wearer::Wearer;

const BOOK_1_0: &str = include_str!("../../reference/book-1.0.json");
const BOOK_1_1: &str = include_str!("../../reference/book-1.1.json");
const BOOK_1_2: &str = include_str!("../../reference/book-1.2.json");
const OURS: InstallationId = InstallationId(0x4be1_07a9_3d52_48cc_9f16_0b7e_52d3_a801);
const VAN: InstallationId = InstallationId(0x5d20_9b1c_77e4_4f0a_a3c6_10b2_9e85_4402);

/// The file with the version that is written now, of itself and of its rows.
fn as_of_now(text: &str) -> String {
    let now = format!("\"schema\":\"1.{MINOR}\"");
    text.replace("\"schema\":\"1.0\"", &now).replace("\"schema\":\"1.1\"", &now)
}

fn header(text: &str) -> Header {
    open(text.into()).unwrap().header().clone()
}

#[test]
fn the_book_of_1_0_still_reads_and_is_rewritten_as_of_now() {
    let book = records(BOOK_1_0);
    let names: Vec<_> = book.iter().map(|record| Couple(record).met()).collect();
    assert_eq!(names, [Some("Wharfside wedding fair"), None]);
    let text = write(&header(BOOK_1_0), &book);
    assert_eq!(text, as_of_now(BOOK_1_0));
}

#[test]
fn the_book_of_1_1_still_reads_and_rewrites() {
    let book = records(BOOK_1_1);
    assert_eq!(write(&header(BOOK_1_1), &book), as_of_now(BOOK_1_1));
    let practice = RecordId(0x71f0_2b9d_e6a3_4c85_b7d8_3e5f_60c1_94aa);
    let expected = Header {
        written: Moment(1_792_100_000_000),
        by: OURS,
        practice: Some(practice),
        holds: Holds::Book,
        unknown: None,
    };
    assert_eq!(header(BOOK_1_1), expected);
    let [mark, couple, practice_record, twins] = book.as_slice() else { panic!("{} records", book.len()) };
    assert_eq!(mark.erased().map(|stamp| (stamp.n, stamp.by)), Some((12, VAN)));
    assert_eq!(practice_record.id, practice);
    let told = couple.conflicts();
    let [Conflict::Field { field: Field::Met, sides }, Conflict::PutAway { away, edits }] = told.as_slice() else {
        panic!("{told:?}")
    };
    let values: Vec<_> = sides.iter().map(|side| (side.by, side.value.cloned())).collect();
    let text = |text: &str| Some(Value::Text(text.into()));
    assert_eq!(values, [(VAN, text("the van")), (OURS, text("Barn Lane open day"))]);
    let unseen: BTreeSet<_> = edits.iter().map(|(_, edit)| edit.by).collect();
    assert_eq!((away.by, unseen, edits.len()), (OURS, [VAN].into(), 3));
    // Two phones of one name have written the third change; both are there, and neither is called by that name.
    let claims: Vec<_> = twins.changes().iter().map(|change| (change.made_under(), change.stamp.by)).collect();
    assert_eq!((claims.len(), claims[0].0, claims[1].0.n), (2, claims[1].0, 3));
    assert!(claims.iter().all(|(made_under, stand_in)| made_under.by == VAN && *stand_in != VAN));
    assert_eq!(twins.conflicts().len(), 1, "where they say the same, nobody has to choose");
}

#[test]
fn the_book_of_1_2_still_reads_and_rewrites() {
    let book = records(BOOK_1_2);
    assert_eq!(write(&header(BOOK_1_2), &book), BOOK_1_2);
    let rings = Couple(&book[0]).rings(Wearer::First);
    assert_eq!(rings[0].inscription.as_deref(), Some("18 CT · “ever thine” 1937"));
}

#[test]
fn samples_hold_nothing_that_cannot_be_read() {
    for text in [BOOK_1_0, BOOK_1_1, BOOK_1_2] {
        let mut reader = open(text.into()).unwrap();
        assert!(rows(&mut reader).unwrap().iter().all(|row| row.read.is_ok()));
        assert_eq!(reader.progress().0, reader.progress().1);
    }
}
