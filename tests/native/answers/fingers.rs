//! A finger: which of its readings count, and of which others there are some.

use super::{LEFT, Told, WHO, read_practice, taken};
use bandwright::answers::finger::{Counts, FingerAnswer, of_couple};
use bandwright::book::id::ItemId;
use bandwright::book::value::ReadingTaken;
use bandwright::book::verbs;
use bandwright::trade::wearer::{Digit, Finger, Hand};
use bandwright::words::finger as words;

const RIGHT: Finger = Finger { hand: Hand::Right, digit: Digit::Middle };

fn seen(told: &Told) -> FingerAnswer {
    read_practice(|practice| of_couple(told.couple(), practice, WHO))
}

fn said(told: &Told) -> Vec<String> {
    seen(told).readings.iter().map(words::said_of).collect()
}

#[test]
fn each_reading_says_how_it_counts() {
    let mut told = Told::new();
    told.say(vec![verbs::choose_finger(WHO, LEFT)]);
    told.read(1, "R");
    assert_eq!(said(&told), [""], "one alone is all there is");
    told.read(2, "R½");
    assert_eq!(said(&told), ["counts 50 %", "counts 50 %"]);
    for (item, size) in [(3, "Q"), (4, "Q½")] {
        let there = ReadingTaken { finger: RIGHT, ..taken(size) };
        told.say(vec![verbs::reading(WHO, ItemId(item), Some(there))]);
    }
    let out = ReadingTaken { left_out: true, ..taken("S") };
    told.say(vec![verbs::reading(WHO, ItemId(5), Some(out))]);
    let found = seen(&told);
    let counts: Vec<Counts> = found.readings.iter().map(|it| it.counts).collect();
    assert_eq!(counts[2..], [Counts::OfAnotherFinger, Counts::OfAnotherFinger, Counts::LeftOut]);
    assert_eq!(said(&told)[2..], [words::NOT_THE_BANDS, words::NOT_THE_BANDS, words::LEFT_OUT]);
    assert_eq!(found.others, [RIGHT], "each other finger once");
    assert_eq!(words::comes_to(&found).len(), 1, "nobody read the joint");
    assert!(words::comes_to(&found)[0].ends_with("; 2 readings."));
}

#[test]
fn while_no_finger_is_chosen_every_finger_is_the_bands() {
    let mut told = Told::new();
    told.say(vec![verbs::reading(WHO, ItemId(1), Some(ReadingTaken { finger: RIGHT, ..taken("R") }))]);
    let found = seen(&told);
    assert_eq!((found.readings[0].counts, found.others.len()), (Counts::Alone, 0));
}
