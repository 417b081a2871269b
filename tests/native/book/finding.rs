//! Search by any word, and what may leave the phone.

use super::{Told, met};
use crate::shared::date;
use bandwright::book::change::Write;
use bandwright::book::couple::Couple;
use bandwright::book::field::{AppointmentField, Field, RingField};
use bandwright::book::id::ItemId;
use bandwright::book::leaving::{Stays, may_leave};
use bandwright::book::search;
use bandwright::book::value::{Recorded, Value};
use bandwright::trade::wearer::Wearer;

/// As the app asks, with the library's own tables of letters.
fn matches(couple: Couple<'_>, typed: &str) -> bool {
    search::matches(couple, typed, |words| words.to_lowercase())
}

fn text(field: Field, text: &str) -> Write {
    Write::set(field, Value::Text(text.into()))
}

fn written() -> Told {
    let mut told = Told::new();
    let item = ItemId(1);
    told.say(vec![
        text(Field::Name(Wearer::First), "Inés O'Dowd"),
        text(Field::Name(Wearer::Second), "ÅSA"),
        text(Field::Met, "Wharfside wedding fair"),
        text(Field::Reach(item), "07700 900123"),
        text(Field::Reach(ItemId(2)), "ines.asa@example.org"),
        text(Field::Appointment(item, AppointmentField::Place), "12 Barn Lane"),
        text(Field::Note(item), "Likes a brushed surface;\nnothing shiny."),
        text(Field::Ring(Wearer::First, item, RingField::Name), "Grandmother's eternity ring"),
    ]);
    told
}

#[test]
fn by_any_word_whatever_its_case() {
    let told = written();
    let check = |typed: &str, expected: bool| assert_eq!(matches(told.couple(), typed), expected, "{typed:?}");
    for found in [
        "",
        "   ",
        "inés",
        "INÉS",
        "åsa",
        "o'dowd",
        "wharf",
        "FAIR wharfside",
        "shiny brushed",
        "barn lane",
        "12",
        "example.org",
        "eternity",
        "inés åsa 0123",
        "  inés\tåsa ",
    ] {
        check(found, true);
    }
    for number in ["07700 900123", "07700900123", "0770 0900 123", "900123", "900 123", "7009"] {
        check(number, true);
    }
    for missed in ["priya", "inés priya", "shinybrushed", "07700 900124", "💍", "lanebarn"] {
        check(missed, false);
    }
}

#[test]
fn what_was_overwritten_is_not_found() {
    let mut told = written();
    told.say(met("Barn open day"));
    assert!(!matches(told.couple(), "wharfside"));
    assert!(matches(told.couple(), "open"));
    told.say(vec![Write::clear(Field::Met)]);
    assert!(!matches(told.couple(), "open"));
}

#[test]
fn what_may_leave() {
    let check = |writes: &[Write], expected: Result<(), Stays>| {
        let mut told = written();
        for write in writes {
            told.say(vec![write.clone()]);
        }
        assert_eq!(may_leave(told.couple()), expected, "{writes:?}");
    };
    let asked = date("2026-10-03");
    let recorded = |agrees| Write::set(Field::Recorded, Value::Recorded(Recorded { agrees, asked }));
    let example = |yes| Write::set(Field::Example, Value::Yes(yes));
    check(&[], Ok(()));
    check(&[recorded(true)], Ok(()));
    check(&[recorded(false)], Err(Stays::SaidNo));
    check(&[recorded(false), recorded(true)], Ok(()));
    check(&[recorded(true), recorded(false)], Err(Stays::SaidNo));
    check(&[recorded(true), example(true)], Err(Stays::Example));
    check(&[recorded(false), example(true)], Err(Stays::Example));
    check(&[Write::set(Field::PutAway, Value::Day(asked)), recorded(false)], Err(Stays::SaidNo));
}

/// As the app asks of half-typed words when a couple is erased.
fn mentions(told: &Told, words: &str) -> bool {
    bandwright::book::mentions::mentions(&told.record, words, |words| words.to_lowercase())
}

#[test]
fn half_typed_words_are_about_a_couple_if_they_name_them() {
    let mut told = written();
    for words in ["Inés O'Dowd", "for INÉS O’DOWD, Saturday", "åsa", "ring 07700900123 back", "07700 900 123"] {
        assert!(mentions(&told, words), "{words}");
    }
    // A name inside another word is another name; half of a double name is somebody else's as likely as theirs.
    for words in ["", "Inés", "Åsalind", "Dowd", "0770", "Wharfside wedding fair"] {
        assert!(!mentions(&told, words), "{words}");
    }
    // Who was written down wrongly at first may have been typed wrongly elsewhere too.
    told.say(vec![text(Field::Name(Wearer::Second), "Astrid")]);
    assert!(mentions(&told, "Åsa") && mentions(&told, "Astrid"));
    assert!(!mentions(&Told::new(), "anything at all"));
}
