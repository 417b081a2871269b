//! Merging: whatever happens to the phones, in the end all hold the same book, and nothing has vanished unseen.

#[path = "../book/arbitrary.rs"]
mod arbitrary;
mod check;
mod history;

use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind};

use history::World;

/// How many histories: 1,000,000 in `make prove`.
fn histories() -> u64 {
    std::env::var("HISTORIES").ok().and_then(|count| count.parse().ok()).unwrap_or(1_500)
}

#[test]
fn random_histories() {
    let first = std::env::var("FIRST_SEED").ok().and_then(|seed| seed.parse().ok()).unwrap_or(1);
    let last = first + histories() - 1;
    let (mut changes, mut conflicts, mut clones, mut erased) = (0, 0, 0, 0);
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
        clones += usize::from(world.cloned);
        erased += usize::from(world.phones[0].record.erased().is_some());
    }
    println!(
        "histories: seeds {first} to {last}, {changes} changes; {conflicts} end with a conflict, {clones} have clones, {erased} an erasing"
    );
    assert!(conflicts > 0 && clones > 0 && (erased > 0 || histories() < 500), "they are worth checking");
}
