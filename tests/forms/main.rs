//! What forms start with and read, without a browser.

use bandwright::archive::code::Code;
use bandwright::forms::{Texts, reading, write};
use bandwright::trade::entry::read_length;
use bandwright::trade::fit::Hands;
use bandwright::trade::limits::Limit;
use bandwright::trade::measure::Length;
use bandwright::trade::wearer::{Digit, Finger, Hand};
use proptest::prelude::*;

#[test]
fn the_next_reading_starts_with_the_gauge_and_hands_of_the_one_before() {
    let finger = Finger { hand: Hand::Left, digit: Digit::Ring };
    let first = reading::start(finger, "narrow".to_owned());
    let added = first
        .with(reading::GAUGE, "wide")
        .with(reading::HANDS, Hands::Cold.code())
        .with(reading::SIZE, "M½")
        .with(reading::BESIDE, "2.6")
        .with(reading::TAKEN_AT, "14:30");
    let other = Finger { hand: Hand::Right, digit: Digit::Middle };
    let next: Texts = reading::start_after(&added, other);
    assert_eq!((next.get(reading::GAUGE), next.get(reading::HANDS)), ("wide", "cold"));
    assert_eq!((next.get(reading::HAND), next.get(reading::DIGIT)), ("right", "middle"));
    for key in [reading::SIZE, reading::BESIDE, reading::TAKEN_AT] {
        assert_eq!(next.get(key), "", "{key:?} belongs to the reading that was added");
    }
}

proptest! {
    #[test]
    fn a_length_reads_back_as_it_was_written(units in 50_000i64..=600_000) {
        let length = Length::tenthousandths(units);
        let read = read_length(&write::mm(length), Limit::FreeLength);
        prop_assert_eq!(read, Ok(length), "{}", write::mm(length));
    }
}
