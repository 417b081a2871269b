//! What forms start with and read, without a browser.

mod bad_couple;
mod bad_input;
mod bad_list;
mod bad_setup;
mod couple;
mod setup;

use bandwright::archive::code::Code;
use bandwright::book::couple::Band;
use bandwright::book::id::ItemId;
use bandwright::book::practice::Practice;
use bandwright::book::settings;
use bandwright::book::value::OwnGauge;
use bandwright::forms::{Texts, compare, reading, stack, write};
use bandwright::trade::band::Bore;
use bandwright::trade::entry::read_length;
use bandwright::trade::fit::{Gauge, GaugeKind, Hands, ReadAt};
use bandwright::trade::limits::Limit;
use bandwright::trade::measure::Length;
use bandwright::trade::sizing::System;
use bandwright::trade::stack::House;
use bandwright::trade::wearer::{Digit, Finger, Hand};
use bandwright::words::complaint as words;
use proptest::prelude::*;

const LEFT: Finger = Finger { hand: Hand::Left, digit: Digit::Ring };

#[test]
fn the_next_reading_starts_with_the_gauge_and_hands_of_the_one_before() {
    let first = reading::start(LEFT, "narrow".to_owned());
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

fn known() -> reading::Known {
    let gauge = Gauge {
        kind: GaugeKind::RingSet,
        width: Length::from_mm(3.0),
        bore: Bore::Domed,
        relief: None,
        step: Length::from_mm(0.625),
        own_error: Length::ZERO,
    };
    let own = OwnGauge { name: "narrow".to_owned(), gauge, calibration: Vec::new() };
    reading::Known {
        gauges: vec![("narrow".to_owned(), own)],
        first_system: System::Uk,
        today: "2026-11-25".parse().unwrap(),
        worn_on_stick: "on a stick".to_owned(),
        worn_on_glass: "on the glass".to_owned(),
    }
}

#[test]
fn a_reading_is_what_was_typed_or_says_what_to_put_right() {
    let start = reading::start(LEFT, "narrow".to_owned());
    let typed = start.clone().with(reading::SIZE, "M½").with(reading::BESIDE, "2.6 and 2");
    let taken = reading::read(&typed, &known()).unwrap();
    assert_eq!((taken.gauge.name.as_str(), taken.beside.len(), taken.sits), ("narrow", 2, None));
    assert_eq!(taken.read_at, ReadAt::Centre, "where a domed inside touches a stick");
    let wrong = start.with(reading::SIZE, "17").with(reading::BESIDE, "2,2").with(reading::TAKEN_AT, "25:00");
    let complaints = reading::read(&wrong, &known()).unwrap_err();
    let keys: Vec<_> = complaints.iter().map(|(key, _)| *key).collect();
    assert_eq!(keys, [reading::SIZE, reading::BESIDE, reading::TAKEN_AT]);
    assert!(words::complaints(&complaints).iter().all(|(_, said)| said.len() > 20), "each has its sentence");
}

/// What the screen gauge said stands for the gauge as long as nobody types another size.
#[test]
fn a_ring_from_the_glass_is_as_sure_as_the_screen_gauge_said() {
    let glass = reading::from_glass("17.19 mm across".to_owned(), Length::from_mm(0.3)).into_pairs();
    let mut texts = reading::start(LEFT, "narrow".to_owned());
    for (key, text) in glass {
        texts = Texts::of(
            texts.into_pairs().into_iter().map(|it| if it.0 == key { (key, text.clone()) } else { it }).collect(),
        );
    }
    let texts = texts.with(reading::WORN_WIDTH, "2.6");
    let gauge = reading::read(&texts, &known()).unwrap().gauge;
    assert_eq!((gauge.name.as_str(), gauge.gauge.own_error), ("on the glass", Length::from_mm(0.3)));
    let other = reading::read(&texts.with(reading::SIZE, "N"), &known()).unwrap().gauge;
    assert_eq!(other.name, "on a stick");
}

#[test]
fn the_usual_sets_are_at_hand_until_there_are_gauges_of_ones_own() {
    let mut practice = crate::arbitrary::practice_of_nothing();
    let names = |practice: &_| {
        let at_hand = reading::at_hand(Practice(practice), ["narrow rings", "wide rings"]);
        at_hand.into_iter().map(|(word, own)| (word, own.name)).collect::<Vec<_>>()
    };
    let usual = |name: &str| (name.to_owned(), name.to_owned());
    assert_eq!(names(&practice), [usual("narrow rings"), usual("wide rings")]);
    let own = OwnGauge { name: "the old stick".to_owned(), ..known().gauges.remove(0).1 };
    let writes = vec![settings::gauge(ItemId(7)).write(Some(own))];
    crate::arbitrary::say(&mut practice, crate::arbitrary::OURS, 1, writes);
    assert_eq!(names(&practice), [(ItemId(7).to_string(), "the old stick".to_owned())]);
}

#[test]
fn a_reading_of_another_finger_moves_the_band_by_a_word_alone() {
    let texts = reading::start(LEFT, String::new());
    let right = Finger { hand: Hand::Right, ..LEFT };
    assert_eq!(reading::moves(&texts, None), Some(true));
    assert_eq!(reading::moves(&texts, Some(LEFT)), Some(false));
    assert_eq!(reading::moves(&texts, Some(right)), None);
    let said = texts.with(reading::MOVES, reading::moves_code(true, LEFT));
    assert_eq!(reading::moves(&said, Some(right)), Some(true));
    let other = said.with(reading::HAND, "right").with(reading::DIGIT, "middle");
    assert_eq!(reading::moves(&other, Some(right)), None, "of another finger it is asked anew");
}

/// What no form takes: each reader answers with a complaint or a value, and never with a value that it made up.
#[test]
fn bad_input_never_becomes_a_value() {
    let bad = ["", " ", "abc", "2..5", "1e9", "-3", "99999999999999999999", "\u{202e}2.5", "½½", "0", "17", "2,2,2"];
    for text in bad {
        let taken = reading::read(&reading::start(LEFT, "narrow".into()).with(reading::SIZE, text), &known());
        assert!(taken.is_err(), "{text:?} is no clear size");
        let (bands, complaints) =
            compare::read(&compare::start(&Band::default()).with(compare::BANDS[0].width, text), &Band::default());
        assert!(text.trim().is_empty() || bands.len() + complaints.len() == 1, "{text:?}");
        let texts = stack::start(&stack::StackTyped::recorded(None, &House::default()), |_| String::new());
        for key in
            [stack::BAND, stack::BAND_THICKNESS, stack::GAP, stack::FREE, stack::ROWS[0].top, stack::ROWS[6].inside]
        {
            let (typed, complaints) = stack::read(&texts.clone().with(key, text));
            assert_eq!(typed.is_whole, complaints.is_empty(), "{text:?} in {key:?}");
        }
    }
}

proptest! {
    #[test]
    fn a_length_reads_back_as_it_was_written(units in 100_000i64..=400_000) {
        let length = Length::tenthousandths(units);
        let read = read_length(&write::mm(length), Limit::FreeLength);
        prop_assert_eq!(read, Ok(length), "{}", write::mm(length));
    }
}
