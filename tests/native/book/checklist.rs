//! The checklist fills itself, and notices what has changed since.

use super::Told;
use crate::shared::{date, mm};
use bandwright::book::checklist::{Care, State, TOPICS, Topic, next, state, topics};
use bandwright::book::couple::{Band, Ring};
use bandwright::book::example;
use bandwright::book::field::{Field, Stage};
use bandwright::book::id::ItemId;
use bandwright::book::value::{DatesSettled, FittedAt, OrderSize, StackSeen, Value};
use bandwright::book::verbs;
use bandwright::book::{change::Write, field::RingField};
use bandwright::trade::band::{Finish, Profile, alloys};
use bandwright::trade::dates::holidays::Region;
use bandwright::trade::dates::lead_times;
use bandwright::trade::dates::wedding::Wedding;
use bandwright::trade::fit::Place;
use bandwright::trade::measure::{Circumference, Length};
use bandwright::trade::sizing::{Size, System};
use bandwright::trade::wearer::Wearer::{self, First, Second};
use bandwright::words::book as words;

fn wedding(wedding: Wedding) -> Vec<Write> {
    vec![Write::set(Field::Wedding, Value::Wedding(wedding))]
}

fn no_rings(wearer: Wearer) -> Vec<Write> {
    vec![Write::set(Field::NoRings(wearer), Value::Yes(true))]
}

/// The reading of the first example, in another's hand.
fn reading(wearer: Wearer, item: u128, place: Place) -> Vec<Write> {
    let examples = example::couples(date("2026-10-03"), || ItemId(0)).concat();
    let taken = examples.into_iter().find_map(|write| match write.value {
        Some(Value::Reading(reading)) => Some(reading),
        _ => None,
    });
    let mut taken = taken.unwrap();
    taken.place = place;
    vec![Write::set(Field::Reading(wearer, ItemId(item)), Value::Reading(taken))]
}

fn ring(wearer: Wearer, item: u128, shoulder_width: Option<Length>) -> Vec<Write> {
    verbs::note_ring(wearer, Ring { shoulder_width, ..Ring::unknown(ItemId(item)) })
}

fn band(wearer: Wearer, width: f64) -> Vec<Write> {
    let metal = alloys::by_code("platinum-950");
    let (profile, finish) = (Some(Profile::Court), Some(Finish::Plain));
    verbs::choose_band(wearer, Band { width: Some(mm(width)), profile, finish, metal, ..Band::default() })
}

fn order_size(wearer: Wearer, measure_again: bool) -> Vec<Write> {
    let around = Circumference::from_mm(53.1);
    let size = OrderSize {
        size: Size::new(System::Uk, 50).unwrap(),
        exact: around,
        from: around,
        to: around,
        in_stack: true,
        overruled: false,
        own: Default::default(),
        measure_again,
        settled: date("2026-10-03"),
    };
    vec![Write::set(Field::OrderSize(wearer), Value::OrderSize(size))]
}

fn stack(wearer: Wearer) -> Vec<Write> {
    let seen = StackSeen {
        now: mm(5.1),
        later: mm(5.1),
        free: mm(9.0),
        measured: true,
        off: mm(0.0),
        seen: date("2026-10-03"),
    };
    vec![Write::set(Field::Stack(wearer), Value::Stack(seen))]
}

fn dates() -> Vec<Write> {
    let settled = DatesSettled {
        region: Region::Scotland,
        confidence: None,
        in_hand: lead_times::IN_HAND,
        making: lead_times::MAKING.days,
        extras: vec![],
        order_by: date("2027-04-08"),
        settled: date("2026-10-03"),
    };
    vec![Write::set(Field::Dates, Value::Dates(settled))]
}

fn read_back() -> Vec<Write> {
    vec![Write::set(Field::ReadBack, Value::Day(date("2026-10-03")))]
}

fn note(text: &str) -> Vec<Write> {
    vec![Write::set(Field::Note(ItemId(9)), Value::Text(text.into()))]
}

/// Everything that is asked, one step after the other, each with the line that it settles.
fn journey() -> Vec<(Topic, Vec<Write>)> {
    vec![
        (Topic::Wedding, wedding(Wedding::Day(date("2027-05-22")))),
        (Topic::Finger(First), reading(First, 1, Place::Base)),
        (Topic::Finger(Second), reading(Second, 2, Place::Base)),
        (Topic::Rings(First), ring(First, 3, Some(mm(2.6)))),
        (Topic::Rings(Second), no_rings(Second)),
        (Topic::Band(First), band(First, 2.5)),
        (Topic::Band(Second), band(Second, 6.0)),
        (Topic::OrderSize(First), order_size(First, false)),
        (Topic::OrderSize(Second), order_size(Second, false)),
        (Topic::Stack(First), stack(First)),
        (Topic::Stack(Second), stack(Second)),
        (Topic::Dates, dates()),
        (Topic::ReadBack, read_back()),
    ]
}

fn told_all() -> Told {
    let mut told = Told::new();
    for (_, writes) in journey() {
        told.say(writes);
    }
    told
}

fn states(told: &Told) -> Vec<(Topic, State)> {
    TOPICS.into_iter().map(|topic| (topic, state(told.couple(), topic))).collect()
}

#[test]
fn it_fills_itself_line_by_line() {
    let mut told = Told::new();
    assert!(states(&told).iter().all(|(_, state)| *state == State::Open));
    for (at, (topic, writes)) in journey().into_iter().enumerate() {
        assert_eq!(next(told.couple()), Some(topic));
        told.say(writes);
        for (topic, now) in states(&told) {
            let done = journey()[..=at].iter().any(|(done, _)| *done == topic);
            assert_eq!(now, if done { State::Done } else { State::Open }, "{topic:?} after {at} steps");
        }
    }
    assert_eq!(next(told.couple()), None);
    assert_eq!(state(told.couple(), Topic::Notes), State::Open);
    told.say(note("Takes her rings off to climb."));
    assert_eq!((state(told.couple(), Topic::Notes), next(told.couple())), (State::Done, None));
}

/// Once the bands are collected it is asked what fitted, of each that had a size.
#[test]
fn what_fitted_is_asked_once_the_bands_are_collected() {
    let mut told = told_all();
    let asked = |told: &Told| topics(told.couple())[TOPICS.len()..].to_vec();
    told.say(vec![Write::set(Field::Stage, Value::Stage(Stage::Ordered))]);
    assert_eq!((asked(&told), next(told.couple())), (vec![], None));
    told.say(vec![Write::set(Field::Stage, Value::Stage(Stage::Collected))]);
    assert_eq!(asked(&told), [Topic::Fitted(First), Topic::Fitted(Second)]);
    assert_eq!(next(told.couple()), Some(Topic::Fitted(First)));
    let size = bandwright::trade::entry::read_size("UK N", System::Uk).unwrap().remove(0);
    let fitted = FittedAt { size, resized: false, noted: date("2027-06-01") };
    told.say(vec![Write::set(Field::Fitted(First), Value::Fitted(fitted))]);
    assert_eq!(next(told.couple()), Some(Topic::Fitted(Second)));
    assert_eq!(words::says(told.couple(), Topic::Fitted(First)).as_deref(), Some("kept at UK N"));
}

#[test]
fn what_wants_another_look() {
    let check = |writes: Vec<Vec<Write>>, topic, expected| {
        let mut told = Told::new();
        for writes in writes {
            told.say(writes);
        }
        assert_eq!(state(told.couple(), topic), expected, "{topic:?}");
    };
    let care = State::Care;
    check(vec![wedding(Wedding::NotYet)], Topic::Wedding, care(Care::DateNotFixed));
    check(vec![wedding(Wedding::Year(2027))], Topic::Wedding, care(Care::DateNotFixed));
    check(vec![wedding(Wedding::Month { year: 2027, month: 5 })], Topic::Wedding, care(Care::DateNotFixed));
    check(vec![reading(First, 1, Place::Joint)], Topic::Finger(First), State::Open);
    check(vec![reading(First, 1, Place::Base)], Topic::Finger(Second), State::Open);
    check(vec![ring(First, 3, None)], Topic::Rings(First), care(Care::Incomplete));
    check(vec![ring(First, 3, Some(mm(2.0))), ring(First, 4, None)], Topic::Rings(First), care(Care::Incomplete));
    check(vec![ring(First, 3, None), verbs::drop_ring(First, ItemId(3))], Topic::Rings(First), State::Open);
    let mut without_finish = band(First, 2.5);
    without_finish.remove(2);
    check(vec![without_finish], Topic::Band(First), care(Care::Incomplete));
    check(vec![order_size(First, true)], Topic::OrderSize(First), care(Care::MeasureAgain));
}

/// After everything is settled, one more change: these lines want another look, and no others.
fn check_changed(writes: Vec<Write>, expected: &[Topic]) {
    let mut told = told_all();
    let before = states(&told);
    let change = told.say(writes.clone());
    let changed = |told: &Told| -> Vec<Topic> {
        let changed = states(told).into_iter().filter(|(_, state)| *state == State::Care(Care::Changed));
        changed.map(|(topic, _)| topic).collect()
    };
    assert_eq!(changed(&told), expected, "{writes:?}");
    assert_eq!(next(told.couple()), expected.first().copied());
    // Taken back, nothing has changed.
    told.undo(change);
    assert_eq!(states(&told), before, "{writes:?} taken back");
    // Done again and settled again on the same day with the same result, all is well.
    told.say(writes.clone());
    journey().into_iter().for_each(|(topic, writes)| {
        if matches!(topic, Topic::OrderSize(_) | Topic::Stack(_) | Topic::Dates | Topic::ReadBack) {
            assert!(told.say(writes).is_some(), "{topic:?} is settled again");
        }
    });
    assert_eq!(changed(&told), [], "{writes:?} and settled again");
}

#[test]
fn what_has_changed_since() {
    let first = [Topic::OrderSize(First), Topic::Stack(First), Topic::ReadBack];
    check_changed(band(First, 3.0), &first);
    check_changed(ring(First, 3, Some(mm(2.7))), &first);
    check_changed(ring(First, 4, Some(mm(2.7))), &first);

    check_changed(reading(First, 5, Place::Joint), &[Topic::OrderSize(First), Topic::ReadBack]);
    check_changed(reading(Second, 5, Place::Base), &[Topic::OrderSize(Second), Topic::ReadBack]);
    let free = vec![Write::set(Field::FreeLength(First), Value::Length(mm(8.5)))];
    check_changed(free, &[Topic::Stack(First)]);
    check_changed(wedding(Wedding::Day(date("2027-05-29"))), &[Topic::Dates, Topic::ReadBack]);
    check_changed(note("Likes it brushed."), &[]);
    // What a ring is called and what stands inside it goes to the workshop, and changes no size and no stack.
    for part in [RingField::Name, RingField::Inscription] {
        let words = Write::set(Field::Ring(First, ItemId(3), part), Value::Text("gran's".into()));
        check_changed(vec![words], &[Topic::ReadBack]);
    }
    check_changed(super::met("fair"), &[]);
}

#[test]
fn a_ring_that_goes_leaves_the_line_open() {
    let mut told = told_all();
    told.say(verbs::drop_ring(First, ItemId(3)));
    assert_eq!(state(told.couple(), Topic::Rings(First)), State::Open);
    assert!(told.couple().rings(First).is_empty());
    for topic in [Topic::OrderSize(First), Topic::Stack(First), Topic::ReadBack] {
        assert_eq!(state(told.couple(), topic), State::Care(Care::Changed), "{topic:?}");
    }
    assert!(RingField::ALL.iter().all(|part| told.record.get(&Field::Ring(First, ItemId(3), *part)).is_none()));
}

#[test]
fn taking_back_the_second_read_back_brings_the_mark_back() {
    let mut told = told_all();
    told.say(band(First, 3.0));
    let again = told.say(read_back());
    assert_eq!(state(told.couple(), Topic::ReadBack), State::Done);
    told.undo(again);
    assert_eq!(state(told.couple(), Topic::ReadBack), State::Care(Care::Changed));
}
