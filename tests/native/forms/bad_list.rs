//! Bad input typed into every answer of the couple's own list: kept as it is, and either understood or said in one
//! sentence.

use bandwright::book::asks::{Ask, Kind, ROWS};
use bandwright::forms::list::{NotUnderstood, is_no_width, not_understood};
use bandwright::words::dates::{Asked, date_entry};
use bandwright::words::list::asked;
use chrono::NaiveDate;

use super::bad_input::BAD;

fn today() -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 11, 25).unwrap()
}

fn sentence(ask: Ask, text: &str) -> Option<String> {
    not_understood(ask, text, today()).map(|why| match why {
        NotUnderstood::Wedding(error) => date_entry(error, Asked::Wedding),
        NotUnderstood::Answer(why) => asked::error(ask, why),
    })
}

#[test]
fn every_answer_of_the_list_takes_bad_input() {
    let mut said = 0;
    for row in &ROWS {
        for (text, _) in BAD {
            let Some(sentence) = sentence(row.ask, text) else { continue };
            said += 1;
            assert!(sentence.len() > 10 && sentence.ends_with('.'), "{:?}, {text:?}: {sentence:?}", row.ask);
        }
    }
    assert!(said > 50, "{said} complaints");
}

#[test]
fn a_date_that_is_none_is_said_and_a_width_in_words_is_taken() {
    assert!(sentence(Ask::Wedding, "31/2/2027").is_some() && sentence(Ask::Wedding, "next spring, perhaps").is_some());
    for text in ["", "  ", "22 May 2027", "May 2027", "2027"] {
        assert_eq!(sentence(Ask::Wedding, text), None, "{text:?}");
    }
    assert_eq!(sentence(Ask::RingWidth, "about two"), None, "their own words are welcome");
    assert!(is_no_width(Ask::RingWidth, "about two") && is_no_width(Ask::RingTop, "26"));
    assert!(!is_no_width(Ask::RingWidth, "2,6 mm") && !is_no_width(Ask::RingWidth, " "));
    assert!(!is_no_width(Ask::Name, "about two"), "only a width is one");
    assert!(ROWS.iter().any(|row| row.kind == Kind::Width));
}
