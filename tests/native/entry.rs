//! What people type: figures, texts and ways to reach somebody, and what we say when it cannot be taken.

use crate::shared::cases;
use bandwright::trade::dates::closed::Closure;
use bandwright::trade::dates::spread::Spread;
use bandwright::trade::entry::{
    Contact, read_contact, read_length, read_needed, read_note, read_percent, read_size, read_text, read_whole,
    read_widths,
};
use bandwright::trade::limits::{self, Limit};
use bandwright::trade::sizing::{SizeAsRead, Stated, System};
use bandwright::words::entry as words;
use bandwright::words::sizing::{stated_in_full, stated_name, trimmed};
use proptest::prelude::*;

#[track_caller]
fn check_length(text: &str, limit: Limit, expected: &str) {
    let found = match read_length(text, limit) {
        Ok(length) => trimmed(length),
        Err(error) => words::number_error(error),
    };
    assert_eq!(found, expected, "{text:?}");
}

#[test]
fn lengths() {
    for text in [
        "2.5", "2,5", "2 1/2", "2½", "2-1/2", "5/2", "2.5 mm", "2.5mm", "0.25 cm", ".25cm", "+2.5", "٢٫٥", "2.5",
        "02.50",
    ] {
        check_length(text, Limit::BandWidth, "2.5");
    }
    check_length("1", Limit::BandWidth, "1");
    check_length("20", Limit::BandWidth, "20");
    check_length("2.", Limit::BandWidth, "2");
    check_length("1/8 in", Limit::BandWidth, "3.175");
    check_length("2 1/3", Limit::BandWidth, "2.3333");
    check_length("2 2/3", Limit::BandWidth, "2.6667");
    check_length("0.00005", Limit::OwnShift, "0.0001"); // halves away from nought
    check_length("-0.00005", Limit::OwnShift, "−0.0001");
    check_length("0.3125", Limit::OwnShift, "0.3125");
    check_length("−0.5", Limit::OwnShift, "−0.5");
    check_length("-.5", Limit::OwnShift, "−0.5");
}

/// Widths of rings: a comma that may stand between two rings or in one figure is asked about.
#[test]
fn widths_of_rings() {
    let said = |text: &str| match read_widths(text, 3) {
        Ok(widths) => words::widths_understood(&widths),
        Err(error) => words::widths_error(error),
    };
    assert_eq!(said(""), "");
    assert_eq!(said("2.6"), "One ring of 2.6 mm.");
    for two in ["2.6 and 2", "2.6; 2", "2.6, 2", "2,6 and 2", "2.6 & 2", "2.6 + 2"] {
        assert_eq!(said(two), "2 rings: 2.6 and 2 mm.", "{two:?}");
    }
    assert_eq!(said("2,2"), "One ring of 2.2 mm, or two of 2 mm: write 2.2, or 2 and 2.");
    assert_eq!(said("3,2 mm"), "One ring of 3.2 mm, or two, 3 and 2 mm: write 3.2, or 3 and 2.");
    assert_eq!(said("٢,٢"), said("2,2"), "in whatever digits");
    // No ring is 0 or 12.5 and 5: there is one reading.
    assert_eq!((said("2,0"), said("2,25"), said("12,5")), (said("2.0"), said("2.25"), said("12.5")));
    assert_eq!(said("1 and 2 and 3 and 4"), "Enter at most 3 widths, like 2.6 and 2.");
}

#[test]
fn lengths_that_cannot_be_taken() {
    let range = "between 1 and 20 mm, like 2.5.";
    let check = |text: &str, expected: &str| check_length(text, Limit::BandWidth, &format!("{expected} {range}"));
    check("", "Enter a band width");
    check("   ", "Enter a band width");
    for text in ["wide", "💍", "2.5 kg", "2 5", "1/0", "--3", "mm", "2e1", "½½", "."] {
        check(text, "Enter a band width in figures,");
    }
    check("2..", "Enter a band width with one decimal point,");
    check("1,234.5", "Enter a band width with one decimal point,");
    check("2.5.1", "Enter a band width with one decimal point,");
    for text in ["0", "-2.5", "0.9999", "20.0001", "99999999999999999999999999", "1 in"] {
        check(text, "A band width must be");
    }
    check(&"1".repeat(10_000), "Enter a band width in a few figures,");
    check_length("9", Limit::FreeLength, "A free length of finger must be between 10 and 45 mm, like 24.");
    check_length("6", Limit::OwnShift, "A shift of your own must be between −5 and 5 mm, like 0.5.");
    let named = read_length("0", Limit::RingWidth).map_err(|e| words::number_error_named(e, "a width at the top"));
    assert_eq!(named.unwrap_err(), "A width at the top must be between 0.5 and 25 mm, like 2.6.");
}

#[track_caller]
fn check_whole(text: &str, limit: Limit, expected: &str) {
    let found = match read_whole(text, limit) {
        Ok(whole) => whole.0.to_string(),
        Err(error) => words::number_error(error),
    };
    assert_eq!(found, expected, "{text:?}");
}

#[test]
fn whole_numbers() {
    check_whole("15", Limit::LeadTimeDays, "15");
    check_whole(" 15 days ", Limit::LeadTimeDays, "15");
    check_whole("15 working days", Limit::LeadTimeDays, "15");
    check_whole("1 day", Limit::LeadTimeDays, "1");
    check_whole("0", Limit::DaysInHand, "0");
    check_whole("-0", Limit::LeadTimeDays, "0");
    check_whole("14 days", Limit::DaysInHand, "14");
    check_whole("367", Limit::DaysInHand, "A number of days must be between 0 and 366, like 14.");
    let days = "a number of working days";
    check_whole("", Limit::LeadTimeDays, &format!("Enter {days} between 0 and 260, like 15."));
    check_whole("soon", Limit::LeadTimeDays, &format!("Enter {days} in figures, between 0 and 260, like 15."));
    for text in ["15.5", "1,000", "15½", "30/2", "16,5", "½", "-0.5"] {
        check_whole(text, Limit::LeadTimeDays, &format!("Enter {days} as a whole number between 0 and 260, like 15."));
    }
    for text in ["-1", "261", "99999999999999999999"] {
        check_whole(text, Limit::LeadTimeDays, "A number of working days must be between 0 and 260, like 15.");
    }
    for text in ["💍", "days", "15 weeks", "-", "1e3"] {
        check_whole(text, Limit::LeadTimeDays, &format!("Enter {days} in figures, between 0 and 260, like 15."));
    }
    // What is typed and what a step or a closure may be are the same.
    let most = |limit| limits::of(limit).most;
    assert_eq!(most(Limit::LeadTimeDays), limits::Amount::Days(limits::Whole(Spread::LONGEST.0)));
    assert_eq!(most(Limit::DaysInHand), limits::Amount::Days(limits::Whole(Closure::LONGEST.0)));
    check_whole("5", Limit::BandWidth, "A band width must be between 1 and 20 mm, like 2.5."); // wrong kind: refused
}

#[test]
fn shares() {
    let percent = |text| read_percent(text, Limit::StackShare).map(|p| p.0).map_err(words::number_error);
    assert_eq!(percent("35"), Ok(35));
    assert_eq!(percent("35 %"), Ok(35));
    assert_eq!(percent("35%"), Ok(35));
    assert_eq!(percent("35 per cent"), Ok(35));
    let sentence = |text: &str| Err(format!("A share of the free length must be between 5 and 100 %{text}"));
    assert_eq!(percent("101"), sentence(", like 35."));
    assert_eq!(percent("-35"), sentence(", like 35."));
}

#[track_caller]
fn check_text(text: &str, expected: Result<Option<&str>, &str>) {
    let found = read_text(text, Limit::NameText).map_err(words::text_error);
    assert_eq!(found, expected.map(|text| text.map(str::to_owned)).map_err(str::to_owned), "{text:?}");
}

#[test]
fn texts() {
    check_text("  Mara ", Ok(Some("Mara")));
    check_text("Zoë 💍 O’Neill", Ok(Some("Zoë 💍 O’Neill")));
    check_text("مارا", Ok(Some("مارا")));
    check_text("", Ok(None));
    check_text(" \u{200b}\u{a0} ", Ok(None));
    check_text(&"é".repeat(80), Ok(Some(&"é".repeat(80))));
    check_text(&"é".repeat(81), Err("Enter a name of at most 80 characters."));
    check_text(&"x".repeat(100_000), Err("Enter a name of at most 80 characters."));
    let control = "Enter a name without hidden control characters: type it anew.";
    check_text("Ma\u{7}ra", Err(control));
    check_text("Ma\nra", Err(control));
    check_text("\u{0}", Err(control));
    let direction = "Enter a name without characters that turn the writing direction: type it anew.";
    check_text("Mara \u{202e}olleh", Err(direction));
    for turn in ('\u{202a}'..='\u{202e}').chain('\u{2066}'..='\u{2069}') {
        check_text(&format!("Mara {turn}x"), Err(direction));
    }

    assert_eq!(read_needed("Mara", Limit::NameText), Ok("Mara".to_owned()));
    assert_eq!(read_needed(" ", Limit::NameText).map_err(words::text_error), Err("Enter a name.".to_owned()));
    assert_eq!(read_note("one\r\ntwo\rthree\tx\n", Limit::NoteText), Ok(Some("one\ntwo\nthree\tx".to_owned())));
    let long = read_note(&"x".repeat(4001), Limit::NoteText).map_err(words::text_error);
    assert_eq!(long, Err("Enter a note of at most 4,000 characters.".to_owned()));
}

#[track_caller]
fn check_contact(text: &str, expected: Result<Contact, &str>) {
    assert_eq!(read_contact(text).map_err(words::contact_error), expected, "{text:?}");
}

#[test]
fn contacts() {
    let phone = |text: &str| Ok(Contact::Phone(text.to_owned()));
    let email = |text: &str| Ok(Contact::Email(text.to_owned()));
    check_contact(" 0113 496 0000 ", phone("0113 496 0000"));
    check_contact("+44 (0)113-496-0000", phone("+44 (0)113-496-0000"));
    check_contact("+44 113 496", phone("+44 113 496"));
    check_contact("٠١١٣٤٩٦", phone("0113496"));
    check_contact("mara@example.org", email("mara@example.org"));
    check_contact("mara.o'neill+ring@shop.example.org", email("mara.o'neill+ring@shop.example.org"));
    check_contact("", Err("Enter a phone number or an e-mail address."));
    let digits = "A phone number must have between 5 and 20 digits.";
    check_contact("1234", Err(digits));
    check_contact("123456789012345678901", Err(digits));
    check_contact("+", Err(digits));
    let address = "Enter an e-mail address like name@example.org.";
    for text in [
        "mara@",
        "@example.org",
        "mara@example",
        "a@b@c.de",
        "a b@c.de",
        "mara@.org",
        "mara@a..b",
        "a,b@c.de",
        "a@b.c\u{202e}",
    ] {
        check_contact(text, Err(address));
    }
    let neither = "Enter a phone number in digits, or an e-mail address like name@example.org.";
    for text in ["ring me", "💍", "0113+496", "()", "0113 496 x12", "-"] {
        check_contact(text, Err(neither));
    }
    let long = "Enter one phone number or e-mail address of at most 254 characters.";
    check_contact(&"1".repeat(10_000), Err(long));
    assert_eq!(read_contact("+44 (0)113").unwrap().dials().as_deref(), Some("+440113"));
    assert_eq!(read_contact("a@b.c").unwrap().dials(), None);
}

/// Characters that people and mischief put into such fields.
const PALETTE: &[char] = &[
    'M', 'm', 'Z', 'z', 'A', 'U', 'S', 'K', 'I', 'O', 'J', 'P', 'T', 'E', 'D', 'Ø', '0', '1', '2', '4', '5', '7', '9',
    '½', '¼', '⅓', '⅟', '¹', '₂', '⁄', '/', '.', ',', '+', '-', '−', ' ', '\u{a0}', '%', '"', 'c', 'n', '@', '(', ')',
    '٤', '４', '\u{200b}', '\u{202e}', '\n', '\u{0}', '💍', 'é', 'ß',
];

fn anything() -> impl Strategy<Value = String> {
    let mixed = proptest::collection::vec(proptest::sample::select(PALETTE), 0..14).prop_map(String::from_iter);
    prop_oneof![mixed, any::<String>()]
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..cases(3000) })]

    #[test]
    fn any_text_is_taken_or_answered(text in anything()) {
        for system in System::ALL {
            match read_size(&text, system) {
                Ok(found) => readable_again(&text, &found)?,
                Err(error) => sentence(&words::size_error(error))?,
            }
        }
        for limit in [Limit::BandWidth, Limit::OwnShift, Limit::Circumference] {
            match read_length(&text, limit) {
                Ok(length) => prop_assert_eq!(read_length(&trimmed(length), limit), Ok(length)),
                Err(error) => sentence(&words::number_error(error))?,
            }
        }
        match read_whole(&text, Limit::LeadTimeDays) {
            Ok(whole) => prop_assert_eq!(read_whole(&whole.0.to_string(), Limit::LeadTimeDays), Ok(whole)),
            Err(error) => sentence(&words::number_error(error))?,
        }
        if let Err(error) = read_percent(&text, Limit::StackShare) {
            sentence(&words::number_error(error))?;
        }
        match read_note(&text, Limit::NoteText) {
            Ok(Some(note)) => prop_assert_eq!(read_note(&note, Limit::NoteText), Ok(Some(note.clone()))),
            Ok(None) => {}
            Err(error) => sentence(&words::text_error(error))?,
        }
        match read_contact(&text) {
            Ok(contact) => prop_assert_eq!(read_contact(contact.text()), Ok(contact.clone())),
            Err(error) => sentence(words::contact_error(error))?,
        }
    }

    #[test]
    fn any_length_we_print_we_can_read(units in 1_0000_i64..=20_0000) {
        let length = bandwright::trade::measure::Length::tenthousandths(units);
        prop_assert_eq!(read_length(&trimmed(length), Limit::BandWidth), Ok(length));
        prop_assert_eq!(read_length(&format!("{} mm", trimmed(length)), Limit::BandWidth), Ok(length));
    }
}

/// Each reading is in range, differs from the others, and can be read again from what we print of it.
fn readable_again(text: &str, found: &[SizeAsRead]) -> Result<(), TestCaseError> {
    prop_assert!(!found.is_empty());
    for (place, read) in found.iter().enumerate() {
        prop_assert!((36.0..=80.0).contains(&read.circumference().mm()));
        prop_assert_eq!(read.typed.as_str(), text.trim());
        prop_assert!(found[..place].iter().all(|other| other.stated != read.stated));
        let again = |name: String, preferred| -> Vec<Stated> {
            read_size(&name, preferred).unwrap_or_default().iter().map(|read| read.stated).collect()
        };
        prop_assert_eq!(again(stated_in_full(read.stated), System::Uk), vec![read.stated]);
        prop_assert!(again(stated_name(read.stated), read.stated.system()).first() == Some(&read.stated));
    }
    Ok(())
}

fn sentence(text: &str) -> Result<(), TestCaseError> {
    prop_assert!(text.starts_with(char::is_uppercase) && text.ends_with('.'), "{}", text);
    prop_assert!(text.chars().count() < 130, "{}", text);
    Ok(())
}

#[test]
fn every_limit_takes_its_own_ends_and_its_example() {
    for range in limits::all() {
        let limit = range.limit;
        assert_eq!(limits::of(limit), range);
        assert!(!range.source.is_empty());
        for amount in [range.least, range.most, range.example] {
            assert!(range.holds(amount), "{limit:?} {amount:?}");
            let typed = words::figure(amount).replace(',', "");
            let taken = match amount {
                limits::Amount::Length(length) => read_length(&typed, limit) == Ok(length),
                limits::Amount::Percent(percent) => read_percent(&typed, limit) == Ok(percent),
                limits::Amount::Days(whole) | limits::Amount::Characters(whole) => {
                    read_whole(&typed, limit) == Ok(whole)
                }
            };
            assert!(taken, "{limit:?} {typed}");
        }
        assert!(words::limit_noun(limit).starts_with('a'));
    }
}
