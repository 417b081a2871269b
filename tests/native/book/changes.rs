//! Changes that are added, in whatever order, and what stands after them.

use crate::arbitrary::{self, held, new_couple};
use crate::shared::cases;
use bandwright::book::change::{Change, Set, Write};
use bandwright::book::couple::Couple;
use bandwright::book::field::Field;
use bandwright::book::id::{InstallationId, Moment, Stamp};
use bandwright::book::value::Value;
use bandwright::trade::wearer::Wearer;
use proptest::prelude::*;

fn stamp(by: u128, n: u64) -> Stamp {
    Stamp { n, by: InstallationId(by) }
}

fn met(stamp: Stamp, place: Option<&str>, replaces: &[Stamp]) -> Change {
    let value = place.map(|place| Value::Text(place.into()));
    let set = Set { field: Field::Met, value, replaces: replaces.to_vec(), restores: None, unknown: None };
    Change { stamp, claimed: None, at: Moment(0), undoes: None, after: vec![], sets: vec![set], unknown: None }
}

/// Adds the changes in every order, and says where they met each time.
fn check(changes: &[Change], expected: Option<&str>) {
    let mut orders = vec![vec![]];
    for change in changes {
        orders = orders
            .into_iter()
            .flat_map(|order: Vec<Change>| {
                (0..=order.len()).map(move |at| {
                    let mut order = order.clone();
                    order.insert(at, change.clone());
                    order
                })
            })
            .collect();
    }
    for order in orders {
        let mut record = new_couple();
        order.iter().for_each(|change| record.add(change.clone()));
        let stamps: Vec<u64> = order.iter().map(|change| change.stamp.n).collect();
        assert_eq!(Couple(&record).met(), expected, "added in the order {stamps:?}");
        assert_eq!(record.changes().len(), changes.len());
    }
}

#[test]
fn what_a_field_shows() {
    check(&[], None);
    check(&[met(stamp(1, 1), Some("fair"), &[])], Some("fair"));
    check(&[met(stamp(1, 1), None, &[])], None);
    // A write counts that replaces what it had seen, whoever made it.
    check(&[met(stamp(2, 8), Some("fair"), &[]), met(stamp(1, 9), Some("studio"), &[stamp(2, 8)])], Some("studio"));
    // What comes later in the order of stamps cannot have been seen: such a claim replaces nothing, nor does a circle.
    check(&[met(stamp(1, 9), Some("fair"), &[]), met(stamp(2, 1), Some("studio"), &[stamp(1, 9)])], Some("fair"));
    check(
        &[met(stamp(1, 1), Some("fair"), &[stamp(1, 2)]), met(stamp(1, 2), Some("studio"), &[stamp(1, 1)])],
        Some("studio"),
    );
    check(&[met(stamp(1, 1), Some("fair"), &[stamp(1, 1)])], Some("fair"));
    check(&[met(stamp(1, 1), Some("fair"), &[]), met(stamp(1, 2), None, &[stamp(1, 1)])], None);
    // Of writes that had not seen each other, the highest stamp is shown: the number first, then the installation.
    check(&[met(stamp(9, 4), Some("fair"), &[]), met(stamp(1, 5), Some("studio"), &[])], Some("studio"));
    check(&[met(stamp(9, 5), Some("fair"), &[]), met(stamp(1, 5), Some("studio"), &[])], Some("fair"));
    // One that had seen both settles it.
    check(
        &[
            met(stamp(1, 8), Some("fair"), &[]),
            met(stamp(2, 9), Some("studio"), &[]),
            met(stamp(3, 10), Some("market"), &[stamp(1, 8), stamp(2, 9)]),
        ],
        Some("market"),
    );
    // A chain, of which the middle comes late or first.
    check(
        &[
            met(stamp(1, 1), Some("a"), &[]),
            met(stamp(2, 2), Some("b"), &[stamp(1, 1)]),
            met(stamp(1, 3), Some("c"), &[stamp(2, 2)]),
        ],
        Some("c"),
    );
}

#[test]
fn writes_that_had_not_seen_each_other_are_both_kept() {
    let mut record = new_couple();
    record.add(met(stamp(1, 1), Some("fair"), &[]));
    record.add(met(stamp(2, 2), Some("studio"), &[]));
    // Shown is one; the next write replaces both of them, and both are still in the record.
    let draft = record.draft(super::met("market"), Moment(1)).unwrap();
    assert_eq!(draft.sets[0].replaces, [stamp(1, 1), stamp(2, 2)]);
    record.add(Change::stamped(draft, stamp(1, 3)));
    assert_eq!(record.changes().len(), 3);
    assert_eq!(Couple(&record).met(), Some("market"));
}

#[test]
fn writes_to_different_fields_are_both_there() {
    let start = new_couple();
    let (mut one, mut other) = (start.clone(), start);
    let name = Write::set(Field::Name(Wearer::First), Value::Text("Ines".into()));
    arbitrary::say(&mut one, InstallationId(1), 1, vec![name]);
    arbitrary::say(&mut other, InstallationId(2), 1, super::met("fair"));
    other.changes().iter().for_each(|change| one.add(change.clone()));
    assert_eq!((Couple(&one).name(Wearer::First), Couple(&one).met()), (Some("Ines"), Some("fair")));
}

#[test]
fn a_draft_leaves_out_what_changes_nothing() {
    let mut told = super::Told::new();
    assert_eq!(told.say(vec![Write::clear(Field::Met)]), None);
    assert!(told.say(super::met("fair")).is_some());
    assert_eq!(told.say(super::met("fair")), None);
    let both = [super::met("fair"), vec![Write::set(Field::Name(Wearer::First), Value::Text("Ines".into()))]].concat();
    let draft = told.record.draft(both, Moment(0)).unwrap();
    assert_eq!(draft.sets.iter().map(|set| &set.field).collect::<Vec<_>>(), [&Field::Name(Wearer::First)]);
}

#[test]
fn of_two_writes_to_one_field_the_last_one_counts() {
    let mut told = super::Told::new();
    let first = told.say([super::met("fair"), super::met("studio")].concat());
    assert_eq!(told.couple().met(), Some("studio"));
    assert_eq!(told.record.changes()[0].sets.len(), 1);
    // Back to what it holds already: nothing changes.
    assert_eq!(told.say([super::met("market"), super::met("studio")].concat()), None);
    told.undo(first);
    assert_eq!(told.couple().met(), None);
    // A change from elsewhere that has two.
    let mut change = met(stamp(1, 1), Some("fair"), &[]);
    change.sets.extend(met(stamp(1, 1), Some("studio"), &[]).sets);
    check(&[change.clone()], Some("studio"));
    check(&[change, met(stamp(1, 2), Some("market"), &[stamp(1, 1)])], Some("market"));
}

proptest! {
    #![proptest_config(cases(64))]

    #[test]
    fn adding_again_and_in_any_order_comes_to_the_same(record in arbitrary::record(), seed in any::<u64>()) {
        let mut changes = record.changes().to_vec();
        // Any order: sorted by a mix of the stamp and the seed, and each twice.
        changes.sort_by_key(|change| (change.stamp.n ^ seed).wrapping_mul(0x9e37_79b9_7f4a_7c15));
        let mut again = bandwright::book::record::Record::new(record.id, record.kind);
        changes.iter().chain(&changes).for_each(|change| again.add(change.clone()));
        prop_assert_eq!(held(&again), held(&record));
        prop_assert_eq!(again.changes().len(), record.changes().len());
    }
}
