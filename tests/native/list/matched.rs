//! Which couple of the book a list is of, and which of the two is which.

use super::sample;
use crate::arbitrary::{OURS, say};
use crate::shared::date;
use bandwright::answers::list_match::{has_list, is_crossed, names_others, offered, only_of_these_names};
use bandwright::book::asks::{AnswerKey, Ask};
use bandwright::book::couple::Couple;
use bandwright::book::id::RecordId;
use bandwright::book::preparation_list::{Again, take_in};
use bandwright::book::record::{Kind, Record};
use bandwright::book::verbs;

/// A couple of these names; the list of the sample is of Ada and Ben.
fn of(id: u128, first: &str, second: Option<&str>) -> Record {
    let mut record = Record::new(RecordId(id), Kind::Couple);
    let met = verbs::meet(first.into(), second.map(str::to_owned), None, date("2026-10-03"));
    say(&mut record, OURS, 1, met);
    record
}

fn put_away(mut record: Record) -> Record {
    say(&mut record, OURS, 2, vec![verbs::put_away(Some(date("2026-10-04")))]);
    record
}

fn all(records: &[Record]) -> impl Iterator<Item = Couple<'_>> {
    records.iter().map(Couple)
}

#[test]
fn a_list_of_two_others_is_not_of_the_couple_whose_page_is_open() {
    let check =
        |first: &str, second: Option<&str>| names_others(Couple(&of(1, first, second)), &sample(), str::to_lowercase);
    assert!(check("Ines", Some("Callum")));
    assert!(check("Ines", None));
    assert!(!check("ADA", Some("Callum")), "one of the two is enough, in any case");
    assert!(!check("Ben", None), "in either place");
    let nobody = Record::new(RecordId(1), Kind::Couple);
    assert!(!names_others(Couple(&nobody), &sample(), str::to_lowercase), "a couple without names is nobody else");
}

#[test]
fn the_two_change_places_only_where_their_names_say_so() {
    let check =
        |first: &str, second: Option<&str>| is_crossed(Couple(&of(1, first, second)), &sample(), str::to_lowercase);
    assert!(check("Ben", Some("Ada")));
    assert!(check("ben", None));
    assert!(!check("Ada", Some("Ben")));
    assert!(!check("Ada", Some("Ada")), "one of them stands where the list has her");
    assert!(!check("Ines", None));
}

#[test]
fn the_only_couple_of_both_names_is_theirs() {
    let found = |records: &[Record]| only_of_these_names(all(records), &sample(), str::to_lowercase).map(|id| id.0);
    assert_eq!(found(&[of(1, "Ines", Some("Ben")), of(2, "ben", Some("ada"))]), Some(2));
    assert_eq!(found(&[of(1, "Ada", Some("Ben")), of(2, "Ben", Some("Ada"))]), None, "of two nobody can say");
    assert_eq!(found(&[of(1, "Ada", Some("Ben")), put_away(of(2, "Ben", Some("Ada")))]), Some(1));
    assert_eq!(found(&[of(1, "Ada", None)]), None, "one name is too little");
}

#[test]
fn a_list_that_came_before_is_known_by_its_id_not_by_what_it_says() {
    let mut record = of(1, "Ada", Some("Ben"));
    let writes = take_in(sample(), Some(Couple(&record)), date("2026-11-27"));
    say(&mut record, OURS, 2, writes);
    let records = [of(2, "Ines", None), record];
    assert_eq!(has_list(all(&records), &sample()), Some((RecordId(1), Again::Same)));
    assert_eq!(
        has_list(all(&records), &sample().swapped()),
        Some((RecordId(1), Again::Same)),
        "told the other way round"
    );
    let mut later = sample();
    later.set(AnswerKey::both(Ask::Budget), "2000".to_owned(), date("2026-11-28"));
    assert_eq!(has_list(all(&records), &later), Some((RecordId(1), Again::Newer)));
    assert_eq!(has_list(all(&records[..1]), &sample()), None);
}

#[test]
fn those_in_sight_are_offered_first_whatever_is_looked_for() {
    let records: Vec<Record> =
        (1..=9).map(|id| of(id, if id % 2 == 0 { "Ada" } else { "Ines" }, None)).chain([blank(10)]).collect();
    let found = |words: &str, in_sight: [Option<u128>; 2]| {
        let in_sight = in_sight.map(|id| id.map(RecordId));
        let found = offered(all(&records), words, in_sight, 4, str::to_lowercase);
        found.into_iter().map(|couple| couple.0.id.0).collect::<Vec<_>>()
    };
    assert_eq!(found("ada", [None, None]), [2, 4, 6, 8]);
    assert_eq!(found("ada", [Some(9), Some(8)]), [8, 9, 2, 4], "the one that is chosen before all");
    assert_eq!(found("", [None, None]), [1, 2, 3, 4]);
    assert_eq!(found("nobody", [None, Some(3)]), [3]);
    assert_eq!(found("", [None, Some(10)])[0], 1, "a couple that was taken back is none");
}

fn blank(id: u128) -> Record {
    Record::new(RecordId(id), Kind::Couple)
}
