//! Taking back, and putting back.

use super::{Told, met};
use crate::arbitrary::{self, OURS, held, new_couple};
use crate::shared::{cases, date, is_at_length};
use bandwright::book::change::{Change, Set, Write};
use bandwright::book::couple::Couple;
use bandwright::book::field::Field;
use bandwright::book::id::{InstallationId, Moment, Stamp};
use bandwright::book::value::Value;
use bandwright::trade::wearer::Wearer;
use proptest::collection::vec;
use proptest::prelude::*;

#[test]
fn taken_back_and_put_back() {
    let mut told = Told::new();
    told.say(met("fair"));
    let second = told.say(met("studio"));
    let back = told.undo(second);
    assert_eq!(told.couple().met(), Some("fair"));
    assert!(told.record.is_undone(second.unwrap()));
    // Twice is once.
    assert_eq!(told.undo(second), None);
    let forth = told.undo(back);
    assert_eq!(told.couple().met(), Some("studio"));
    assert!(!told.record.is_undone(second.unwrap()));
    told.undo(forth);
    assert_eq!(told.couple().met(), Some("fair"));
    // Put back, it can be taken back by its own name again.
    let mut told = Told::new();
    let first = told.say(met("fair"));
    let back = told.undo(first);
    told.undo(back);
    assert!(told.undo(first).is_some());
    assert_eq!(told.couple().met(), None);
    assert!(told.couple().is_blank());
}

#[test]
fn one_after_the_other() {
    let mut told = Told::new();
    let changes = ["a", "b", "c"].map(|place| told.say(met(place)));
    for (change, expected) in changes.into_iter().rev().zip([Some("b"), Some("a"), None]) {
        assert_eq!(told.record.undoable(OURS).map(|change| change.stamp), change);
        told.undo(change);
        assert_eq!(told.couple().met(), expected);
    }
    assert_eq!(told.record.undoable(OURS), None);
}

#[test]
fn a_newer_value_stays() {
    let mut told = Told::new();
    let name = |name: &str| Write::set(Field::Name(Wearer::First), Value::Text(name.into()));
    let first = told.say([met("fair"), vec![name("Ines")]].concat());
    told.say(met("studio"));
    told.undo(first);
    assert_eq!((told.couple().met(), told.couple().name(Wearer::First)), (Some("studio"), None));
    // Nothing left to take back.
    let mut told = Told::new();
    let first = told.say(met("fair"));
    told.say(met("studio"));
    assert_eq!(told.undo(first), None);
}

#[test]
fn put_away_and_brought_back() {
    let mut told = Told::new();
    told.say(met("fair"));
    let away = told.say(vec![Write::set(Field::PutAway, Value::Day(date("2026-10-03")))]);
    assert_eq!(told.couple().put_away(), Some(date("2026-10-03")));
    told.undo(away);
    assert_eq!(told.couple().put_away(), None);
    told.say(vec![Write::set(Field::PutAway, Value::Day(date("2026-10-04")))]);
    told.say(vec![Write::clear(Field::PutAway)]);
    assert_eq!((told.couple().put_away(), told.couple().met()), (None, Some("fair")));
}

#[test]
fn what_stands_beside_it_is_shown_again() {
    for (ours, theirs) in [(5, 4), (4, 5)] {
        let mut record = new_couple();
        let mut other = record.clone();
        let mine = arbitrary::say(&mut record, OURS, ours, met("fair")).unwrap();
        arbitrary::say(&mut other, InstallationId(1), theirs, met("studio"));
        record.add(other.changes()[0].clone());
        let back = arbitrary::undo(&mut record, OURS, 6, mine).unwrap();
        assert_eq!(Couple(&record).met(), Some("studio"), "our number {ours}, theirs {theirs}");
        arbitrary::undo(&mut record, OURS, 7, other.changes()[0].stamp);
        assert_eq!(Couple(&record).met(), None, "our number {ours}, theirs {theirs}");
        assert!(record.is_undone(mine) && !record.is_undone(back));
    }
}

#[test]
fn only_what_this_installation_did_is_offered() {
    let mut told = Told::new();
    let ours = told.say(met("fair"));
    arbitrary::say(
        &mut told.record,
        InstallationId(1),
        99,
        vec![Write::set(Field::Name(Wearer::First), Value::Text("Ines".into()))],
    );
    assert_eq!(told.record.undoable(OURS).map(|change| Some(change.stamp)), Some(ours));
    assert_eq!(told.record.undoable(InstallationId(2)), None);
}

#[test]
fn changes_that_take_one_another_back_in_a_circle() {
    let change = |n, undoes: u64| {
        let of = |n| Stamp { n, by: OURS };
        let set = Set {
            field: Field::Met,
            value: None,
            replaces: vec![of(undoes)],
            restores: Some(of(undoes)),
            unknown: None,
        };
        Change {
            stamp: of(n),
            claimed: None,
            at: Moment(0),
            undoes: Some(of(undoes)),
            after: vec![],
            sets: vec![set],
            unknown: None,
        }
    };
    for circle in [vec![change(1, 1)], vec![change(1, 2), change(2, 1)], vec![change(1, 2), change(2, 1), change(3, 1)]]
    {
        let mut record = new_couple();
        circle.iter().for_each(|change| record.add(change.clone()));
        for change in &circle {
            record.is_undone(change.stamp);
            record.undo(change.stamp, Moment(0));
        }
        assert_eq!(record.undoable(OURS), None);
        assert_eq!(record.touched(|_| true).max(), None);
    }
}

#[test]
fn back_and_forth_for_ever() {
    let mut told = Told::new();
    told.say(met("fair"));
    let mut last = told.say(met("studio"));
    for _ in 0..if is_at_length() { 2_000 } else { 400 } {
        last = told.undo(last);
        assert!(last.is_some());
    }
    assert_eq!(told.couple().met(), Some("studio"));
    assert_eq!(told.record.touched(|_| true).max(), Some(1));
}

proptest! {
    #![proptest_config(cases(48))]

    #[test]
    fn undone_in_turn_gives_back_what_was(acts in vec(arbitrary::writes(arbitrary::couple_fields()), 1..10)) {
        let mut told = Told::new();
        let mut before = Vec::new();
        for writes in acts {
            let earlier = held(&told.record);
            if let Some(stamp) = told.say(writes) {
                before.push((stamp, earlier));
            }
        }
        let after = held(&told.record);
        let mut backs = Vec::new();
        for (stamp, earlier) in before.iter().rev() {
            backs.push(told.undo(Some(*stamp)).unwrap());
            prop_assert_eq!(&held(&told.record), earlier);
        }
        prop_assert!(told.couple().is_blank());
        // And forth again.
        for back in backs.into_iter().rev() {
            told.undo(Some(back)).unwrap();
        }
        prop_assert_eq!(held(&told.record), after);
    }

    #[test]
    fn one_undo_puts_back_each_of_its_fields(record in arbitrary::record(), writes in arbitrary::writes(arbitrary::couple_fields())) {
        let mut record = record;
        let earlier = held(&record);
        if let Some(stamp) = arbitrary::say(&mut record, OURS, 1_000, writes) {
            let back = arbitrary::undo(&mut record, OURS, 1_001, stamp);
            prop_assert!(back.is_some());
            prop_assert_eq!(held(&record), earlier);
        }
    }
}
