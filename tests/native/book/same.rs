//! One couple under two ids: noticed by one rule, joined by ordinary changes, and taken apart again.

use crate::arbitrary::{OURS, say};
use bandwright::archive::merge::merge;
use bandwright::book::change::{Change, Write};
use bandwright::book::couple::Couple;
use bandwright::book::field::{BandField, Field};
use bandwright::book::id::{InstallationId, ItemId, Moment, RecordId, Stamp};
use bandwright::book::merge::conflict::Conflict;
use bandwright::book::record::{Kind, Record};
use bandwright::book::same::{self, Marks, joined, like, take_over, taken_over, two_couples};
use bandwright::book::value::Value;
use bandwright::trade::dates::wedding::Wedding;
use bandwright::trade::measure::Length;
use bandwright::trade::wearer::Wearer;

const THEIRS: InstallationId = InstallationId(0xb0b);

fn text(words: &str) -> Value {
    Value::Text(words.into())
}

fn day(day: &str) -> Wedding {
    Wedding::Day(day.parse().unwrap())
}

/// An entry of two names and a wedding.
fn entry(id: u128, by: InstallationId, n: u64, names: [&str; 2], wedding: Wedding) -> Record {
    let mut record = Record::new(RecordId(id), Kind::Couple);
    let [first, second] = names.map(text);
    let names = [Write::set(Field::Name(Wearer::First), first), Write::set(Field::Name(Wearer::Second), second)];
    say(&mut record, by, n, names.into_iter().chain([Write::set(Field::Wedding, Value::Wedding(wedding))]).collect());
    record
}

fn lower(words: &str) -> String {
    words.to_lowercase()
}

/// Saves a draft, as the storage does.
fn save(record: &mut Record, n: u64, draft: Option<bandwright::book::change::Draft>) {
    record.add(Change::stamped(draft.expect("there is something to save"), Stamp { n, by: OURS }));
}

#[test]
fn recognised_by_names_and_wedding() {
    let day = day("2027-05-22");
    let check = |names: [&str; 2], wedding: Wedding, expected: bool| {
        let one = entry(1, OURS, 1, ["Ada", "Bo"], day);
        let other = entry(2, THEIRS, 1, names, wedding);
        let book = [one.clone(), other.clone()];
        assert_eq!(like(Couple(&one), book.iter(), lower) == [RecordId(2)], expected, "{names:?} {wedding:?}");
        assert_eq!(like(Couple(&other), book.iter(), lower) == [RecordId(1)], expected, "{names:?} {wedding:?}");
    };
    check(["Ada", "Bo"], day, true);
    check(["bo", "  ADA "], day, true);
    check(["Ada", "Bo"], Wedding::Month { year: 2027, month: 5 }, true);
    check(["Ada", "Bo"], Wedding::Year(2027), true);
    check(["Ada", "Bo"], Wedding::Month { year: 2027, month: 6 }, false);
    check(["Ada", "Bo"], Wedding::NotYet, false);
    check(["Ada", "Cleo"], day, false);
    check(["Ada", ""], day, false);
}

#[test]
fn nobody_is_recognised_who_is_not_to_be() {
    let wedding = day("2027-05-22");
    let with = |writes: Vec<Write>| {
        let mut record = entry(2, THEIRS, 1, ["Ada", "Bo"], wedding);
        say(&mut record, THEIRS, 2, writes);
        Marks::of(Couple(&record), lower)
    };
    assert!(with(vec![Write::set(Field::Met, text("fair"))]).is_some());
    assert_eq!(with(vec![Write::set(Field::Example, Value::Yes(true))]), None);
    assert_eq!(with(vec![Write::set(Field::PutAway, Value::Day("2026-11-25".parse().unwrap()))]), None);
    let nameless = [Wearer::First, Wearer::Second].map(|who| Write::clear(Field::Name(who)));
    assert_eq!(with(nameless.into()), None);
    // Said to be two, they are not asked about again, from whichever side.
    let (one, mut two) = (entry(1, OURS, 1, ["Ada", "Bo"], wedding), entry(2, THEIRS, 1, ["Ada", "Bo"], wedding));
    let (second, writes) = two_couples(two.id, one.id);
    assert_eq!(second, two.id);
    say(&mut two, OURS, 3, writes);
    let book = [one.clone(), two.clone()];
    assert!(like(Couple(&one), book.iter(), lower).is_empty() && like(Couple(&two), book.iter(), lower).is_empty());
}

#[test]
fn joined_nothing_is_lost_and_what_differs_waits_and_it_can_be_taken_apart() {
    let wedding = day("2027-05-22");
    let width = |mm| Write::set(Field::Band(Wearer::First, BandField::Width), Value::Length(Length::from_mm(mm)));
    let mut kept = entry(1, OURS, 1, ["Ada", "Bo"], wedding);
    say(&mut kept, OURS, 2, vec![width(2.5)]);
    let before = kept.clone();
    let mut away = entry(2, THEIRS, 1, ["Ada", "Bo"], wedding);
    let note = Field::Note(ItemId(9));
    say(
        &mut away,
        THEIRS,
        2,
        vec![width(3.0), Write::set(note.clone(), text("rang")), Write::set(Field::Met, text("van"))],
    );
    let draft = take_over(&kept, &away, lower, Moment(1));
    save(&mut kept, 10, draft);
    assert_eq!((kept.get(&note), kept.get(&Field::Met)), (Some(&text("rang")), Some(&text("van"))));
    let told = kept.conflicts();
    let [Conflict::Field { field: Field::Band(Wearer::First, BandField::Width), sides }] = told.as_slice() else {
        panic!("{told:?}")
    };
    assert_eq!(sides.len(), 2);
    assert_eq!(joined(&kept), [away.id]);
    assert_eq!(take_over(&kept, &away, lower, Moment(2)), None, "once is enough");
    // What came into the other one since comes over too.
    say(&mut away, THEIRS, 11, vec![Write::set(Field::Note(ItemId(8)), text("wrote"))]);
    let draft = take_over(&kept, &away, lower, Moment(3));
    let mut later = kept.clone();
    save(&mut later, 12, draft);
    assert_eq!(Couple(&later).notes().len(), 2);
    // Taken apart, it says what it said before, however often something was taken over.
    for (joined, times) in [(kept, 1), (later, 2)] {
        let apart = take_apart(&joined, away.id, 13);
        assert!(apart.fields().eq(before.fields()) && !apart.is_in_conflict());
        let taken = taken_over(&joined, away.id);
        assert_eq!(taken.len(), times);
        assert!(taken.into_iter().all(|stamp| apart.is_undone(stamp)));
        assert_eq!(taken_over(&apart, away.id), []);
        // Joined once more, it has all of it again.
        let mut again = apart.clone();
        save(&mut again, 20, take_over(&apart, &away, lower, Moment(5)));
        assert_eq!(Couple(&again).notes().len(), 2);
        assert_eq!((again.get(&Field::Met), again.conflicts().len()), (Some(&text("van")), 1));
    }
}

fn take_apart(joined: &Record, other: RecordId, n: u64) -> Record {
    let mut apart = joined.clone();
    for (at, draft) in same::take_apart(joined, other, Moment(4)).into_iter().enumerate() {
        save(&mut apart, n + at as u64, Some(draft));
    }
    apart
}

/// What was settled after the two were joined is settled; only what was written into the other one since is news.
#[test]
fn what_was_settled_does_not_come_back_as_news() {
    let wedding = day("2027-05-22");
    let met = |words| vec![Write::set(Field::Met, text(words))];
    let mut kept = entry(1, OURS, 1, ["Ada", "Bo"], wedding);
    say(&mut kept, OURS, 2, met("studio"));
    say(&mut kept, OURS, 3, met("barn"));
    let mut away = entry(2, THEIRS, 1, ["Ada", "Bo"], wedding);
    let note = |words| vec![Write::set(Field::Note(ItemId(9)), text(words))];
    say(&mut away, THEIRS, 2, [met("van"), note("rang")].concat());
    say(&mut kept, OURS, 4, note("rang"));
    let draft = take_over(&kept, &away, lower, Moment(1));
    save(&mut kept, 10, draft);
    assert_eq!(kept.conflicts().len(), 1);
    // What one of them says is chosen, and what both said is written anew.
    say(&mut kept, OURS, 11, met("barn"));
    say(&mut kept, OURS, 12, note("rang twice"));
    assert_eq!(take_over(&kept, &away, lower, Moment(2)), None);
    // What the kept entry held long before they were joined is news all the same.
    for words in ["studio", "hall"] {
        let mut later = away.clone();
        say(&mut later, THEIRS, 13, met(words));
        let draft = take_over(&kept, &later, lower, Moment(3)).unwrap();
        assert!(draft.sets.iter().any(|set| set.value == Some(text(words))));
        let mut both = kept.clone();
        save(&mut both, 14, Some(draft));
        assert_eq!(both.conflicts().len(), 1);
        assert_eq!(take_over(&both, &later, lower, Moment(4)), None);
        // What was chosen since they were joined stays when they are taken apart.
        assert_eq!(Couple(&take_apart(&both, away.id, 15)).met(), Some("barn"));
    }
}

/// Where the two were written down in the other order, each finger stays with its owner.
#[test]
fn in_the_other_order_each_keeps_what_is_theirs() {
    let wedding = day("2027-05-22");
    let mut kept = entry(1, OURS, 1, ["Ada", "Bo"], wedding);
    let mut away = entry(2, THEIRS, 1, [" bo", "ADA"], wedding);
    let length = |mm| Value::Length(Length::from_mm(mm));
    say(&mut away, THEIRS, 2, vec![Write::set(Field::FreeLength(Wearer::First), length(19.0))]);
    let draft = take_over(&kept, &away, lower, Moment(1));
    save(&mut kept, 10, draft);
    assert_eq!(kept.get(&Field::FreeLength(Wearer::Second)), Some(&length(19.0)), "it is Bo's");
    assert_eq!(kept.get(&Field::FreeLength(Wearer::First)), None);
    assert_eq!((Couple(&kept).name(Wearer::First), Couple(&kept).name(Wearer::Second)), (Some("Ada"), Some("Bo")));
    assert!(!kept.is_in_conflict(), "names written in another way are the same names");
}

/// Two phones that join the same two entries, each without knowing of the other, end up with the same book, and with
/// nothing to settle that was not there before.
#[test]
fn two_phones_that_join_by_themselves_come_to_the_same() {
    let wedding = day("2027-05-22");
    let kept = entry(1, OURS, 1, ["Ada", "Bo"], wedding);
    let mut away = entry(2, THEIRS, 1, ["Ada", "Bo"], wedding);
    say(&mut away, THEIRS, 2, vec![Write::set(Field::Met, text("van"))]);
    let join = |by, n| {
        let (mut kept, mut away) = (kept.clone(), away.clone());
        let draft = take_over(&kept, &away, lower, Moment(1)).unwrap();
        kept.add(Change::stamped(draft, Stamp { n, by }));
        let put_away = Write::set(Field::PutAway, Value::Day("2026-11-25".parse().unwrap()));
        say(&mut away, by, n + 1, vec![Write::set(Field::SameAs(kept.id), Value::Yes(true)), put_away]);
        [kept, away]
    };
    let (ours, theirs) = (join(OURS, 10), join(THEIRS, 20));
    for at in 0..2 {
        let merged = merge(&ours[at], &theirs[at]);
        assert_eq!(merged, merge(&theirs[at], &ours[at]));
        assert_eq!(merged.conflicts(), []);
    }
    let merged = merge(&ours[0], &theirs[0]);
    assert_eq!(merged.get(&Field::Met), Some(&text("van")));
    // Somebody who had not seen it writes into the entry that was put away: that is asked about, as ever.
    let mut elsewhere = away.clone();
    say(&mut elsewhere, InstallationId(7), 15, vec![Write::set(Field::Met, text("studio"))]);
    let told = merge(&ours[1], &elsewhere);
    assert!(matches!(told.conflicts().as_slice(), [Conflict::PutAway { .. }]), "{:?}", told.conflicts());
}
