//! The installation's own row.

use bandwright::archive::installation::{Installation, read, write};
use bandwright::archive::row::RowError;
use bandwright::archive::version::MINOR;
use bandwright::book::id::{InstallationId, RecordId};
use proptest::prelude::*;

const SAMPLE: &str = include_str!("../../reference/installation-1.0.json");

#[test]
fn the_installation_of_1_0_still_reads_and_rewrites() {
    let installation = read(SAMPLE).unwrap();
    assert_eq!(write(&installation), SAMPLE.trim_end().replace("1.0", &format!("1.{MINOR}")));
    let id = InstallationId(0x4be1_07a9_3d52_48cc_9f16_0b7e_52d3_a801);
    assert_eq!((installation.id, installation.next, installation.unknown), (id, 10, None));
}

#[test]
fn what_a_newer_minor_adds_is_carried_through() {
    let newer = SAMPLE.trim_end().replace("\"schema\":\"1.0\"", "\"schema\":\"1.3\",\"shares\":[{\"with\":\"bench\"}]");
    let mut installation = read(&newer).unwrap();
    assert_eq!(write(&installation), newer);
    installation.next += 1;
    assert_eq!(write(&installation), newer.replace("\"next\":10", "\"next\":11"));
}

#[test]
fn what_cannot_be_read_says_why() {
    let check = |from: &str, to: &str, expected| {
        assert!(SAMPLE.contains(from));
        assert_eq!(read(&SAMPLE.replace(from, to)), Err(expected), "{from} -> {to}");
    };
    check("}", "", RowError::NotJson);
    check(SAMPLE, "", RowError::NotJson);
    check(SAMPLE, "[]", RowError::NotARecord);
    check("\"schema\":\"1.0\"", "\"schema\":1", RowError::NotARecord);
    check("1.0", "2.0", RowError::Newer(2));
    check("\"id\":\"4be1", "\"id\":\"4BE1", RowError::Damaged);
    check("\"practice\"", "\"practise\"", RowError::Damaged);
    for next in ["0", "-1", "1.5", "\"10\"", "null", "9007199254740992", "18446744073709551615"] {
        check("\"next\":10", &format!("\"next\":{next}"), RowError::Damaged);
    }
}

proptest! {
    #[test]
    fn written_and_read_it_is_the_same(id in any::<u128>(), practice in any::<u128>(), next in 1u64..1 << 53, former in prop::collection::vec(any::<u128>(), 0..3)) {
        let (id, practice) = (InstallationId(id), RecordId(practice));
        let installation = Installation { id, practice, next, former: former.into_iter().map(InstallationId).collect(), unknown: None };
        prop_assert_eq!(read(&write(&installation)), Ok(installation));
    }
}
