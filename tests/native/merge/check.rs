//! What must hold after every history.

use std::collections::BTreeSet;

use bandwright::archive::merge::merge;
use bandwright::archive::row;
use bandwright::book::field::{AppointmentField as P, Field, RingField as R};
use bandwright::book::merge::conflict::Conflict;
use bandwright::book::record::{Kind, Record};

use super::history::{COUPLE, Happened, Phone, World};

pub fn check(world: &World) {
    converged(world);
    laws(world);
    let phone = &world.phones[0];
    if phone.record.erased().is_some() {
        return nothing_is_left(phone);
    }
    no_value_vanished(world, phone);
    if !world.cloned {
        as_the_registers_have_it(world, phone);
        put_away_unseen(world, phone);
        unseen_removals(world, phone);
    }
}

/// Everybody shows the same and would write the same file.
fn converged(world: &World) {
    let first = &world.phones[0];
    let text = row::write(&first.record);
    for phone in &world.phones {
        assert_eq!(phone.record, first.record);
        assert_eq!(row::write(&phone.record), text);
    }
    assert_eq!(row::read(&text).as_ref(), Ok(&first.record));
}

/// On parts of the history: each phone's own changes, and whatever is reached from them.
fn laws(world: &World) {
    let whole = &world.phones[0].record;
    let part = |of: usize| {
        let some = whole.changes().iter().enumerate().filter(|(at, _)| at % 3 == of || at % 5 == of);
        let changes = some.map(|(_, change)| change.clone());
        let record = Record::of(COUPLE, Kind::Couple, bandwright::archive::collision::separate(changes.collect()));
        if of == 2 && whole.erased().is_some() { whole.clone() } else { record }
    };
    let [a, b, c] = [part(0), part(1), part(2)];
    assert_eq!(merge(&a, &b), merge(&b, &a), "commutative");
    assert_eq!(merge(&merge(&a, &b), &c), merge(&a, &merge(&b, &c)), "associative");
    assert_eq!(merge(&a, &a), a, "idempotent");
    for part in [&a, &b, &c] {
        assert_eq!(merge(whole, part), *whole, "what is known already is no change");
        assert_eq!(merge(part, whole), *whole);
    }
}

fn nothing_is_left(phone: &Phone) {
    assert!(phone.record.changes().is_empty() && phone.record.fields().next().is_none());
    let text = row::write(&phone.record);
    assert!(!text.contains("field") && !text.contains("value"), "{text}");
}

/// Every value that was ever saved stands, or was replaced by somebody who had seen it.
fn no_value_vanished(world: &World, phone: &Phone) {
    let happened: Vec<(usize, &Happened)> = known(world, phone);
    for (at, it) in &happened {
        for set in &it.change.sets {
            let stands = phone.record.standing_writes().any(|(field, change, value)| {
                *field == set.field && change.made_under() == it.change.stamp && value == set.value.as_ref()
            });
            let is_replaced = happened.iter().any(|(_, later)| {
                later.knew & (1 << at) != 0 && later.change.sets.iter().any(|other| other.field == set.field)
            });
            assert!(stands || is_replaced, "{:?} of {:?}", set, it.change.stamp);
            assert!(world.cloned || stands != is_replaced, "stands although it was replaced: {set:?}");
        }
    }
    assert_eq!(phone.record.changes().len(), happened.len(), "nothing is lost from the history, nor there twice");
}

/// Those that reached anybody who is still there.
fn known<'a>(world: &'a World, phone: &Phone) -> Vec<(usize, &'a Happened)> {
    world.happened.iter().enumerate().filter(|(at, _)| phone.knows & (1 << at) != 0).collect()
}

/// The same values side by side as in the registers of another project.
fn as_the_registers_have_it(world: &World, phone: &Phone) {
    for (field, register) in &phone.registers {
        let theirs = register.read().val.into_iter();
        let theirs: BTreeSet<String> =
            theirs.map(|(at, value)| format!("{:?} {value:?}", world.happened[at].change.stamp)).collect();
        let ours = phone.record.standing_writes().filter(|(its, ..)| *its == field);
        let ours: BTreeSet<String> =
            ours.map(|(_, change, value)| format!("{:?} {:?}", change.stamp, value.cloned())).collect();
        assert_eq!(ours, theirs, "{field:?}");
    }
}

/// Who had not seen whose doing, by what the phones knew.
fn put_away_unseen(world: &World, phone: &Phone) {
    let happened = known(world, phone);
    let find = |stamp| happened.iter().find(|(_, it)| it.change.stamp == stamp).copied().unwrap();
    let conflicts = phone.record.conflicts();
    let told = conflicts.iter().find_map(|conflict| match conflict {
        Conflict::PutAway { away, edits } => Some((away.stamp, edits.iter().map(|(field, edit)| (*field, edit.stamp)))),
        Conflict::Field { .. } | Conflict::Removed { .. } => None,
    });
    let told: BTreeSet<_> = told.into_iter().flat_map(|(_, edits)| edits).collect();
    let away = phone.record.standing_writes().filter(|(field, ..)| **field == Field::PutAway).last();
    let Some((_, away, Some(_))) = away else { return assert!(told.is_empty()) };
    let (away_at, away) = find(away.stamp);
    // Where a decision was taken back, the putting-away that stands again had not seen what it was about either.
    let restored = away.change.sets.iter().find(|set| set.field == Field::PutAway).and_then(|set| set.restores);
    let before = restored.zip(away.change.undoes).map(|(first, decision)| (find(first), find(decision)));
    let edits = phone.record.standing_writes().filter(|(field, ..)| **field != Field::PutAway);
    let expected: BTreeSet<_> = edits
        .filter(|(_, edit, _)| {
            let (at, edit) = find(edit.stamp);
            let knows = |one: &Happened, other: usize| one.knew & (1 << other) != 0;
            let unaware = |(put_away_at, put_away): (usize, &Happened)| {
                at != put_away_at && !knows(put_away, at) && !knows(edit, put_away_at)
            };
            let is_open_again =
                before.is_some_and(|(first, decision)| unaware(first) && at != decision.0 && !knows(edit, decision.0));
            unaware((away_at, away)) || is_open_again
        })
        .map(|(field, edit, _)| (field, edit.stamp))
        .collect();
    if world.has_old {
        // An old version does not say what its user had seen: rather a question too many.
        assert!(told.is_superset(&expected));
    } else {
        assert_eq!(told, expected);
    }
}

/// What was taken out while others, unaware, wrote into it, by what the phones knew.
fn unseen_removals(world: &World, phone: &Phone) {
    let happened = known(world, phone);
    let find = |stamp| happened.iter().find(|(_, it)| it.change.stamp == stamp).copied().unwrap();
    // What its own phone did before, an author knows, also what came of the same tap.
    let knows = |one: &Happened, (at, other): (usize, &Happened)| {
        let (mine, theirs) = (one.change.stamp, other.change.stamp);
        one.knew & (1 << at) != 0 || (mine.by == theirs.by && theirs < mine)
    };
    let mut expected = BTreeSet::new();
    let is_part = |field: &Field| matches!(field, Field::Appointment(_, P::When) | Field::Ring(_, _, R::Planned));
    for part in phone.registers.keys().filter(|field| is_part(field)) {
        let standing = || phone.record.standing_writes().filter(|(field, ..)| field.is_of_same_item(part));
        let cleared = standing().filter(|(field, _, value)| *field == part && value.is_none());
        let Some(gone) = cleared.map(|(_, change, _)| change.stamp).max().map(find) else { continue };
        let sets = &gone.1.change.sets;
        let edits: Vec<_> = standing().filter(|(.., value)| value.is_some()).collect();
        let is_unaware = |stamp| {
            let edit = find(stamp);
            !knows(edit.1, gone) && !knows(gone.1, edit)
        };
        if !sets.iter().any(|set| set.field.is_of_same_item(part) && set.value.is_some())
            && edits.iter().all(|(_, edit, _)| is_unaware(edit.stamp))
        {
            expected.extend(edits.into_iter().map(|(field, edit, _)| (gone.1.change.stamp, field, edit.stamp)));
        }
    }
    let conflicts = phone.record.conflicts();
    let mut told = BTreeSet::new();
    for conflict in &conflicts {
        if let Conflict::Removed { removal, edits } = conflict {
            told.extend(edits.iter().map(|(field, edit)| (removal.stamp, *field, edit.stamp)));
        }
    }
    if world.has_old {
        assert!(told.is_superset(&expected), "{told:?} {expected:?}");
    } else {
        assert_eq!(told, expected);
    }
}
