//! The couple's preparation list: what it holds, how it is handed over, and what becomes of it in the book.

mod found;
mod matched;
mod taken;

use crate::arbitrary;
use crate::shared::{cases, date};
use std::collections::BTreeMap;

use bandwright::archive::list::{
    ListError, is_newer, read_answer_key, read_json, unknown_answers, write, write_answer_key,
};
use bandwright::book::asks::{AnswerKey, Ask, Kind, Of, QUESTIONS, Question, ROWS, Section};
use bandwright::book::id::ItemId;
use bandwright::book::preparation_list::{AnswerError, Invitation, PreparationList, check};
use bandwright::trade::card;
use bandwright::trade::dates::wedding::Wedding;
use bandwright::trade::entry::TextFault;
use bandwright::trade::wearer::Wearer::{First, Second};
use bandwright::words::list::guide::{self, card_table};
use bandwright::words::list::{handing, pages};
use proptest::prelude::*;
use serde_json::{Value as Json, json};

pub const SAMPLE: &str = include_str!("../../reference/list-1.0.json");
const SCHEMA: &str = include_str!("../../../public/list.schema.json");

pub fn sample() -> PreparationList {
    read_json(serde_json::from_str(SAMPLE).unwrap()).unwrap()
}

fn changed(change: impl FnOnce(&mut Json)) -> Result<PreparationList, ListError> {
    let mut list: Json = serde_json::from_str(SAMPLE).unwrap();
    change(&mut list);
    read_json(list)
}

#[test]
fn the_list_of_1_0_still_reads_and_rewrites() {
    let said = sample();
    assert_eq!(write(&said), SAMPLE.trim_end());
    assert_eq!((said.name(First), said.name(Second)), (Some("Ada"), Some("Ben")));
    assert_eq!(said.get(AnswerKey::ring(Ask::RingTop, First, 1)), Some("1,8"));
    assert_eq!(said.agrees(), Some(true));
    assert_eq!(pages::progress(&said), "10 of 16 answered, 6 more by one of you");
    assert_eq!((said.rings(First), said.rings(Second)), (2, 0));
    assert_eq!(said.invitation.when.map(|when| when.day), Some(date("2026-12-03")));
    assert!(!is_newer(&said));
    assert_eq!(said.clone().checked(), (said, Vec::new()));
}

#[test]
fn what_a_newer_minor_adds_is_carried_through() {
    let said = changed(|list| {
        list["schema"] = json!("1.4");
        list["mood"] = json!({ "good": [true, null, 1.5] });
        list["answers"]["moon.first"] = json!("full");
        list["answers"]["hand.first"] = json!({ "hand": "left" });
        list["invitation"]["bring"] = json!("cake");
    })
    .unwrap();
    assert!(is_newer(&said));
    assert_eq!(unknown_answers(&said), 2);
    let again: Json = serde_json::from_str(&write(&said)).unwrap();
    assert_eq!(again["schema"], "1.4");
    assert_eq!(again["mood"], json!({ "good": [true, null, 1.5] }));
    assert_eq!(again["answers"]["moon.first"], "full");
    assert_eq!(again["answers"]["hand.first"], json!({ "hand": "left" }));
    assert_eq!(again["answers"]["name.first"], "Ada");
    assert_eq!(
        again["invitation"],
        json!({ "for": "Ada", "with": "Ben", "when": "2026-12-03T18:30", "region": "scotland", "bring": "cake" })
    );
}

/// A choice that a newer version offers is none of this one's answers: it is carried through, and named where the
/// version is not newer.
#[test]
fn a_choice_of_a_newer_minor_is_carried_through() {
    let (hand, spot) = ("hand.first", AnswerKey::of(Ask::Hand, First));
    let of = |schema: &str| {
        changed(|list| {
            list["schema"] = json!(schema);
            list["answers"][hand] = json!("third");
        })
        .unwrap()
    };
    let (newer, wrong) = of("1.4").checked();
    assert_eq!((newer.get(spot), unknown_answers(&newer), wrong), (None, 1, vec![]));
    let again: Json = serde_json::from_str(&write(&newer)).unwrap();
    assert_eq!((&again["schema"], &again["answers"][hand]), (&json!("1.4"), &json!("third")));
    assert_eq!(read_json(again).as_ref(), Ok(&newer));
    let mut chosen = newer.clone();
    chosen.set(spot, "left".to_owned(), date("2026-11-26"));
    let again: Json = serde_json::from_str(&write(&chosen)).unwrap();
    assert_eq!(again["answers"][hand], "left", "an answer of ours takes its place");
    assert_eq!(of("1.0").checked().1, [(spot, AnswerError::NotOffered)]);
}

#[test]
fn what_is_no_list_says_why() {
    let check = |change: fn(&mut Json), why: ListError| assert_eq!(changed(change).err(), Some(why));
    check(|list| *list = json!([1, 2]), ListError::NotOurs);
    check(|list| *list = json!({ "name": "Ada" }), ListError::NotOurs);
    check(|list| list["kind"] = json!("shopping"), ListError::NotOurs);
    check(|list| list["schema"] = json!(1), ListError::NotOurs);
    check(|list| list["schema"] = json!("0.9"), ListError::NotOurs);
    check(|list| list["kind"] = json!("couple"), ListError::OtherKind);
    check(|list| list["kind"] = json!("bandwright-book"), ListError::OtherKind);
    check(|list| list["schema"] = json!("2.0"), ListError::Newer(2));
    check(|list| list["id"] = json!("7"), ListError::Damaged);
    check(|list| list["saved"] = json!("2026-02-30"), ListError::Damaged);
    check(|list| list["asked"] = json!(true), ListError::Damaged);
    check(|list| list["answers"] = json!(null), ListError::Damaged);
    check(|list| drop(list.as_object_mut().unwrap().remove("answers")), ListError::Damaged);
}

#[test]
fn impossible_answers_are_named_and_left_out() {
    let mut said = sample();
    let wrong = [
        (AnswerKey::of(Ask::Name, First), "A\u{202E}da", AnswerError::Text(TextFault::Direction)),
        (AnswerKey::of(Ask::Name, Second), &"x".repeat(81), AnswerError::Text(TextFault::TooLong)),
        (AnswerKey::of(Ask::Hand, First), "middle", AnswerError::NotOffered),
        (AnswerKey::both(Ask::NeededBy), "April\u{0}", AnswerError::Text(TextFault::Control)),
        (AnswerKey::both(Ask::Recorded), "maybe", AnswerError::NotOffered),
    ];
    for (spot, text, _) in &wrong {
        said.answers.insert(*spot, (*text).to_owned());
    }
    let (good, named) = said.checked();
    let named: BTreeMap<AnswerKey, AnswerError> = named.into_iter().collect();
    assert_eq!(named, wrong.iter().map(|(spot, _, why)| (*spot, *why)).collect());
    assert!(wrong.iter().all(|(spot, ..)| good.get(*spot).is_none()));
    assert_eq!(good.agrees(), None, "what cannot be read is no consent");
    // Markup is only text, and a width in words is theirs to write.
    assert_eq!(check(Ask::Name, " <b>Ada</b> "), Ok(Some("<b>Ada</b>".to_owned())));
    assert_eq!(check(Ask::RingWidth, "900 mm, I think"), Ok(Some("900 mm, I think".to_owned())));
}

#[test]
fn a_no_leaves_names_and_the_no_alone() {
    let mut said = sample();
    said.unknown = Some(r#"{"answers":{"moon":"full"}}"#.to_owned());
    assert_eq!(said.clone().as_agreed(), said);
    said.set(AnswerKey::both(Ask::Recorded), "no".to_owned(), date("2026-11-26"));
    let left = said.as_agreed();
    let spots: Vec<AnswerKey> = left.answers.keys().copied().collect();
    assert_eq!(
        spots,
        [AnswerKey::of(Ask::Name, First), AnswerKey::of(Ask::Name, Second), AnswerKey::both(Ask::Recorded)]
    );
    assert_eq!((left.unknown, left.asked), (None, Some(date("2026-11-26"))));
    assert_eq!(left.invitation, Invitation::default(), "what the jeweller's link said goes too");
}

#[test]
fn how_a_ring_was_measured_is_said_and_a_guess_is_none() {
    let mut said = PreparationList::new(ItemId(7), date("2026-11-25"));
    said.set(AnswerKey::ring(Ask::RingWidth, First, 1), "2.6".to_owned(), date("2026-11-25"));
    for (how, expected) in [
        ("ruler", "measured with a ruler"),
        ("calliper", "measured with a calliper"),
        ("card", "measured with a paper strip and a card"),
        ("guess", "a guess, not measured"),
    ] {
        said.set(AnswerKey::ring(Ask::RingHow, First, 1), how.to_owned(), date("2026-11-25"));
        let ring = handing::ring(&said, First, 1).unwrap();
        assert_eq!(ring, format!("2.6 mm at three and nine o\u{2019}clock, {expected}"));
    }
}

#[test]
fn answers_are_counted_by_question() {
    let mut said = PreparationList::new(ItemId(7), date("2026-11-25"));
    assert_eq!(said.answered(), 0);
    said.set(AnswerKey::of(Ask::Hand, First), "left".to_owned(), date("2026-11-26"));
    said.set(AnswerKey::of(Ask::Finger, Second), "ring".to_owned(), date("2026-11-26"));
    assert_eq!((said.answered(), said.saved), (1, date("2026-11-26")), "each has said something of one question");
    assert_eq!(said.waits_for(Question::Wearing), None);
    said.set(AnswerKey::both(Ask::Else), "   ".to_owned(), date("2026-11-26"));
    assert_eq!(said.answered(), 1, "blank is no answer");
    said.set(AnswerKey::of(Ask::Hand, First), String::new(), date("2026-11-26"));
    assert_eq!(said.waits_for(Question::Wearing), Some(First));
    assert_eq!(said.answered(), 0, "one of the two is not both");
    assert_eq!(pages::progress(&said), "0 of 16 answered, 1 more by one of you");
    assert_eq!(pages::small_of(Section::Wearing, &said), "Still to answer: One of you");
    assert_eq!(pages::small_of(Section::Look, &said), pages::small(Section::Look));
    said.set(AnswerKey::of(Ask::Finger, Second), String::new(), date("2026-11-26"));
    assert_eq!((said.answered(), said.waits_for(Question::Wearing)), (0, None));
    said.set(AnswerKey::both(Ask::Budget), "unsure".to_owned(), date("2026-11-26"));
    assert_eq!((said.answered(), said.waits_for(Question::Budget)), (1, None), "asked of both together");
    // Every question stands on exactly one page.
    let mut questions: Vec<Question> = Section::ALL.into_iter().flat_map(|it| it.questions().iter().copied()).collect();
    questions.sort();
    assert_eq!(questions.len(), QUESTIONS);
    questions.dedup();
    assert_eq!(questions.len(), QUESTIONS);
    assert!(ROWS.iter().all(|row| questions.contains(&row.question)));
    assert!(Section::ALL.into_iter().all(|section| Section::from_code(section.code()) == Some(section)));
}

#[test]
fn a_wedding_without_its_year_counts_from_the_day_of_the_list() {
    let mut said = PreparationList::new(ItemId(7), date("2026-11-25"));
    said.answers.insert(AnswerKey::both(Ask::Wedding), "22 May".to_owned());
    let wedding = Wedding::Day(date("2027-05-22"));
    assert_eq!(said.wedding(date("2026-12-01")), Some(wedding));
    assert_eq!(said.wedding(date("2027-05-22")), Some(wedding));
    assert_eq!(said.wedding(date("2027-05-23")), None, "it is past, and not a year off");
}

#[test]
fn every_answer_has_a_name_of_its_own() {
    let spots = arbitrary::spots();
    let names: BTreeMap<String, AnswerKey> = spots.iter().map(|spot| (write_answer_key(*spot), *spot)).collect();
    assert_eq!(names.len(), spots.len());
    assert!(names.iter().all(|(name, spot)| read_answer_key(name) == Some(*spot) && spot.exists()));
    for no in [
        "",
        "name",
        "name.third",
        "wedding.first",
        "ring-name.first",
        "ring-name.first.0",
        "ring-name.first.7",
        "ring-name.first.01",
        "hand.first.1",
        "name.first.1.2",
    ] {
        assert_eq!(read_answer_key(no), None, "{no}");
    }
}

#[test]
fn the_schema_lists_what_is_asked() {
    let schema: Json = serde_json::from_str(SCHEMA).unwrap();
    let patterns = schema["properties"]["answers"]["patternProperties"].as_object().unwrap();
    let rows: BTreeMap<String, Json> = ROWS
        .iter()
        .map(|row| {
            let behind = match row.of {
                Of::Both => "",
                Of::Each => r"\.(first|second)",
                Of::Ring => r"\.(first|second)\.[1-6]",
            };
            let value = match row.kind {
                Kind::Choice(codes) => json!({ "enum": codes }),
                Kind::Name => json!({ "type": "string", "maxLength": 80 }),
                Kind::Note => json!({ "type": "string", "maxLength": 4000 }),
                Kind::Line | Kind::Wedding | Kind::Width => json!({ "type": "string", "maxLength": 160 }),
            };
            (format!("^{}{behind}$", row.code), value)
        })
        .collect();
    assert_eq!(patterns.iter().map(|(key, value)| (key.clone(), value.clone())).collect::<BTreeMap<_, _>>(), rows);
    let sample: Json = serde_json::from_str(SAMPLE).unwrap();
    let known = schema["properties"].as_object().unwrap();
    assert!(sample.as_object().unwrap().keys().all(|key| known.contains_key(key)));
}

#[test]
fn a_card_measures_a_band() {
    // ISO/IEC 7810 ID-1 is 85.60 by 53.98 mm; 53.98 / 18 and / 27 by hand.
    assert_eq!((card::LONG_SIDE.mm(), card::SHORT_SIDE.mm()), (85.6, 53.98));
    assert_eq!(card::width_of(18).unwrap().mm(), 2.9988);
    assert_eq!(card::width_of(27).unwrap().mm(), 1.9992);
    assert_eq!(card::width_of(0), None);
    let table = card_table();
    assert!(
        table.contains(&"18 times: 3 mm".to_owned()) && table.contains(&"21 times: 2.6 mm".to_owned()),
        "{table:?}"
    );
    // What is said of another number gives the same widths: it is off by less than the strip is.
    let side: f64 = guide::CARD_OTHER.split(' ').find_map(|word| word.parse().ok()).unwrap();
    for row in table {
        let (times, width) = row.split_once(" times: ").unwrap();
        let off = side / times.parse::<f64>().unwrap() - width.trim_end_matches(" mm").parse::<f64>().unwrap();
        assert!(off.abs() <= 0.051, "{row}: {off}");
    }
}

proptest! {
    #![proptest_config(cases(256))]

    #[test]
    fn written_read_and_written_again_it_is_the_same(said in arbitrary::said(ItemId(9))) {
        let text = write(&said);
        let again = read_json(serde_json::from_str(&text).unwrap());
        prop_assert_eq!(again.as_ref(), Ok(&said));
        prop_assert_eq!(write(&again.unwrap()), text);
        prop_assert_eq!(said.clone().swapped().swapped(), said);
    }
}
