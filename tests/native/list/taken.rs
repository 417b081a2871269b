//! A list in the book: beside what is there, never over it, and taken back as one.

use bandwright::archive::row;
use bandwright::book::asks::{AnswerKey, Ask};
use bandwright::book::change::Write;
use bandwright::book::couple::Couple;
use bandwright::book::field::{Field, Stage};
use bandwright::book::leaving::{Stays, may_leave};
use bandwright::book::preparation_list::{Again, PreparationList, again, take_in};
use bandwright::book::record::Record;
use bandwright::book::search;
use bandwright::book::value::{Recorded, Value, When};
use bandwright::trade::dates::wedding::Wedding;
use bandwright::trade::wearer::Wearer::{First, Second};

use super::sample;
use crate::arbitrary::{self, OURS};
use crate::shared::date;

fn refusing() -> PreparationList {
    let mut said = sample();
    said.set(AnswerKey::both(Ask::Recorded), "no".to_owned(), date("2026-11-26"));
    said
}

/// A couple of the jeweller's own.
fn known() -> Record {
    let mut record = arbitrary::new_couple();
    let writes = vec![
        Write::set(Field::Name(First), Value::Text("Adelaide".into())),
        Write::set(Field::Wedding, Value::Wedding(Wedding::Year(2028))),
        Write::set(Field::Recorded, Value::Recorded(Recorded { agrees: true, asked: date("2026-10-03") })),
    ];
    arbitrary::say(&mut record, OURS, 1, writes);
    record
}

fn taken(mut record: Record, said: PreparationList) -> Record {
    let writes = take_in(said, Some(Couple(&record)), date("2026-11-27"));
    let next = record.changes().len() as u64 + 1;
    arbitrary::say(&mut record, OURS, next, writes);
    record
}

fn new(said: PreparationList) -> Record {
    let mut record = arbitrary::new_couple();
    arbitrary::say(&mut record, OURS, 1, take_in(said, None, date("2026-11-27")));
    record
}

#[test]
fn a_new_couple_is_filled_as_far_as_the_list_goes() {
    let record = new(sample());
    let couple = Couple(&record);
    assert_eq!((couple.name(First), couple.name(Second)), (Some("Ada"), Some("Ben")));
    assert_eq!(couple.wedding(), Some(Wedding::Day(date("2027-05-22"))));
    assert_eq!(couple.recorded(), Some(Recorded { agrees: true, asked: date("2026-11-24") }));
    assert_eq!((couple.stage(), couple.reached(Stage::Enquiry)), (Stage::Enquiry, Some(date("2026-11-27"))));
    assert_eq!(couple.said(), [&sample()]);
    assert!(couple.rings(First).is_empty() && couple.finger(First).is_none(), "what they say is not what was measured");
    assert_eq!(row::read(&row::write(&record)), Ok(record.clone()));
    assert!(search::matches(couple, "eternity CLIMBING", str::to_lowercase), "found by any word of theirs");
}

#[test]
fn a_couple_that_is_there_keeps_what_is_ours() {
    let before = known();
    let record = taken(before.clone(), sample());
    let couple = Couple(&record);
    for (field, value) in before.fields() {
        assert_eq!(record.get(field), Some(value), "{field:?}");
    }
    assert_eq!(couple.name(Second), Some("Ben"), "filled in, where nothing was known");
    assert_eq!(couple.said(), [&sample()]);
    // Taken back, all is as it was.
    let mut back = record.clone();
    let stamp = record.changes().last().unwrap().stamp;
    arbitrary::undo(&mut back, OURS, 10, stamp).unwrap();
    assert_eq!(arbitrary::held(&back), arbitrary::held(&before));
}

#[test]
fn what_another_answer_has_made_void_does_not_leave() {
    let mut said = sample();
    let today = date("2026-11-26");
    let least = AnswerKey::both(Ask::BudgetLeast);
    said.set(least, "\u{a3}2,000".to_owned(), today);
    said.set(AnswerKey::ring(Ask::RingName, Second, 1), "signet".to_owned(), today);
    for (budget, owns, counts) in [("range", "some", true), ("in-person", "none", false), ("", "", true)] {
        said.set(AnswerKey::both(Ask::Budget), budget.to_owned(), today);
        said.set(AnswerKey::of(Ask::OwnsRings, Second), owns.to_owned(), today);
        let left = said.clone().as_agreed();
        assert_eq!(left.get(least).is_some(), counts, "{budget}");
        assert_eq!(left.rings(Second) > 0, counts, "{owns}");
        assert_eq!(said.get(least), Some("\u{a3}2,000"), "what was typed stays");
        let record = new(said.clone());
        assert_eq!(Couple(&record).said()[0].get(least).is_some(), counts, "nor is it taken in from an older list");
    }
}

#[test]
fn the_appointment_of_the_invitation_is_noted_for_a_new_couple() {
    let mut said = sample();
    for (when, expected) in [("2026-12-03", 1), ("2026-11-27", 1), ("2026-11-20", 0)] {
        said.invitation.when = Some(When { day: date(when), time: None });
        let record = new(said.clone());
        let appointments = Couple(&record).appointments();
        assert_eq!(appointments.len(), expected, "{when}");
        assert_eq!(take_in(said.clone(), Some(Couple(&record)), date("2026-11-27")).len(), 1, "not twice");
    }
}

#[test]
fn the_same_list_again_changes_nothing_and_a_later_one_takes_its_place() {
    let record = taken(known(), sample());
    let again = take_in(sample(), Some(Couple(&record)), date("2026-12-24"));
    assert_eq!(record.changed(again), [], "nothing new");
    let mut later = sample();
    later.set(AnswerKey::both(Ask::NeededBy), "by March".to_owned(), date("2026-12-01"));
    let record = taken(record, later.clone());
    assert_eq!(Couple(&record).said(), [&later]);
    // Another list of theirs, from the other phone, stands beside it.
    let mut other = sample();
    other.id = bandwright::book::id::ItemId(8);
    let mut record = record;
    let writes = take_in(other.clone(), Some(Couple(&record)), date("2026-12-02"));
    arbitrary::say(&mut record, OURS, 11, writes);
    assert_eq!(Couple(&record).said(), [&later, &other]);
}

#[test]
fn a_no_is_kept_and_nothing_else() {
    let record = new(refusing());
    let couple = Couple(&record);
    let held: Vec<&Field> = record.fields().map(|(field, _)| field).collect();
    let names =
        [Field::Name(First), Field::Name(Second), Field::Recorded, Field::Stage, Field::Reached(Stage::Enquiry)];
    assert_eq!(held, names.iter().collect::<Vec<_>>());
    assert_eq!(couple.recorded(), Some(Recorded { agrees: false, asked: date("2026-11-26") }));
    assert_eq!(may_leave(couple), Err(Stays::SaidNo));
    assert!(!row::write(&record).contains("climbing"));
    // In a couple that is there, it counts too, and takes out what an earlier list said.
    let record = taken(taken(known(), sample()), refusing());
    assert_eq!(may_leave(Couple(&record)), Err(Stays::SaidNo));
    assert!(Couple(&record).said().is_empty());
    assert_eq!(Couple(&record).wedding(), Some(Wedding::Year(2028)));
}

#[test]
fn a_yes_does_not_speak_over_a_no() {
    let mut record = known();
    let no = Recorded { agrees: false, asked: date("2026-11-01") };
    arbitrary::say(&mut record, OURS, 2, vec![Write::set(Field::Recorded, Value::Recorded(no))]);
    let record = taken(record, sample());
    assert_eq!(Couple(&record).recorded(), Some(no));
}

#[test]
fn the_same_list_again_says_which_of_the_two_was_saved_later() {
    let known = PreparationList { saved: date("2026-12-01"), ..sample() };
    let changed = |saved: &str| {
        let mut said = sample();
        said.set(AnswerKey::both(Ask::Wedding), "29 May 2027".to_owned(), date(saved));
        said
    };
    assert_eq!(again(&known, &known), Again::Same);
    assert_eq!(again(&known, &known.clone().swapped()), Again::Same);
    assert_eq!(again(&known, &changed("2026-12-02")), Again::Newer);
    assert_eq!(again(&known, &changed("2026-12-01")), Again::Newer, "a day is as exact as a list says it");
    assert_eq!(again(&known, &changed("2026-11-30")), Again::Older(date("2026-12-01")));
}

#[test]
fn a_list_that_comes_after_the_read_back_opens_it_again() {
    let mut record = taken(known(), sample());
    let next = record.changes().len() as u64 + 1;
    arbitrary::say(&mut record, OURS, next, vec![Write::set(Field::ReadBack, Value::Day(date("2026-11-28")))]);
    assert!(!Couple(&record).changed_since_read_back(), "what was said before is what was read back");
    let mut later = sample();
    later.set(AnswerKey::both(Ask::Wedding), "29 May 2027".to_owned(), date("2026-11-29"));
    assert!(Couple(&taken(record, later)).changed_since_read_back());
}
