//! Merging: whatever happens to the phones, in the end all hold the same book, and nothing has vanished unseen.

mod check;
mod choosing;
mod history;
mod removal;

use crate::arbitrary::{self, say};
use crate::shared::{cases, set};
use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind};

use bandwright::archive::collision::separate;
use bandwright::archive::merge::merge;
use bandwright::book::change::Write;
use bandwright::book::id::InstallationId;
use bandwright::book::merge::conflict::Conflict;
use bandwright::book::record::Record;
use history::World;
use proptest::prelude::*;

/// The record once this was said to it.
fn said(record: &Record, by: InstallationId, n: u64, writes: Vec<Write>) -> Record {
    let mut record = record.clone();
    assert!(say(&mut record, by, n, writes).is_some());
    record
}

/// How many histories: 1,000,000 in `make prove`.
fn histories() -> u64 {
    set("HISTORIES", 1_500)
}

#[test]
fn random_histories() {
    let first = set("FIRST_SEED", 1);
    let last = first + histories() - 1;
    let (mut changes, mut conflicts, mut gone, mut clones, mut erased) = (0, 0, 0, 0, 0);
    for seed in first..=last {
        let outcome = catch_unwind(AssertUnwindSafe(|| {
            let world = World::of(seed);
            check::check(&world);
            world
        }));
        let world = outcome.unwrap_or_else(|why| {
            eprintln!("the history of seed {seed} fails: FIRST_SEED={seed} HISTORIES=1 runs it alone");
            resume_unwind(why)
        });
        changes += world.happened.len();
        conflicts += usize::from(world.phones[0].record.is_in_conflict());
        let is_gone = |conflict: &Conflict<'_>| matches!(conflict, Conflict::Removed { .. });
        gone += usize::from(world.phones[0].record.conflicts().iter().any(is_gone));
        clones += usize::from(world.cloned);
        erased += usize::from(world.phones[0].record.erased().is_some());
    }
    println!(
        "histories: seeds {first} to {last}, {changes} changes; {conflicts} end with a conflict, {gone} with something taken out but edited, {clones} have clones, {erased} an erasing"
    );
    // A few, as when one is run again, need not have everything.
    let are_many = histories() >= 500;
    assert!(!are_many || [conflicts, gone, clones, erased].iter().all(|count| *count > 0), "they are worth checking");
}

proptest! {
    #![proptest_config(cases(64))]

    /// With every field and value there is: any parts of one record come to the same, in whatever order.
    #[test]
    fn laws(record in arbitrary::record(), parts in any::<[u64; 3]>()) {
        let [a, b, c] = parts.map(|bits| {
            let some = record.changes().iter().enumerate().filter(|(at, _)| bits >> (at % 64) & 1 == 1);
            Record::of(record.id, record.kind, separate(some.map(|(_, change)| change.clone()).collect()))
        });
        prop_assert_eq!(merge(&a, &b), merge(&b, &a));
        prop_assert_eq!(merge(&merge(&a, &b), &c), merge(&a, &merge(&b, &c)));
        prop_assert_eq!(&merge(&a, &a), &a);
        prop_assert_eq!(&merge(&record, &a), &record);
        prop_assert_eq!(&merge(&a, &record), &record);
    }

    /// Whatever two records of one id hold, also where they claim the same stamps.
    #[test]
    fn strangers_under_one_id(one in arbitrary::record(), other in arbitrary::record(), third in arbitrary::record()) {
        let as_one = |other: &Record| Record::of(one.id, one.kind, other.changes().to_vec());
        let (other, third) = (as_one(&other), as_one(&third));
        let merged = merge(&one, &other);
        prop_assert_eq!(&merged, &merge(&other, &one));
        prop_assert_eq!(merge(&merged, &third), merge(&one, &merge(&other, &third)));
        prop_assert_eq!(&merge(&merged, &one), &merged);
        for change in one.changes().iter().chain(other.changes()) {
            let is_there = merged.changes().iter().any(|it| it.says_the_same(change) && it.made_under() == change.stamp);
            prop_assert!(is_there);
        }
    }
}
