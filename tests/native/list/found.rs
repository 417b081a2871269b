//! A list among other words: in a file, in a message, and after what messengers do to it.

use crate::shared::{cases, date, set};
use bandwright::archive::file::{self, FileError, Header, Holds};
use bandwright::archive::find::{read, write_line};
use bandwright::archive::list::{LIMIT, ListError, write};
use bandwright::words::list::handing;
use proptest::prelude::*;

use super::{SAMPLE, sample};
use crate::arbitrary;
use bandwright::book::id::{ItemId, Moment};
use bandwright::book::preparation_list::take_in;

fn message() -> String {
    let said = sample();
    handing::message(&said, &write_line(&said))
}

/// The same list is found in it.
fn check(what: &str, text: &str) {
    assert_eq!(read(text.as_bytes()), Ok(sample()), "{what}: {text}");
}

fn refused(what: &str, bytes: &[u8], why: ListError) {
    assert_eq!(read(bytes), Err(why), "{what}");
}

#[test]
fn a_message_is_read_as_a_whole() {
    let message = message();
    assert!(message.contains("\nWedding: 22 May 2027\n") && message.contains("Engraving: für immer"), "{message}");
    assert!(message.contains("Ring 1: engagement ring, 2.6 mm at three and nine o\u{2019}clock, 1,8 mm at the top"));
    assert!(message.contains("Ring 2: about 3 at three"), "their words stay as they are: {message}");
    check("whole", &message);
    check("answered", &format!("Hello Mara,\nhere {{it}} is :-}}\n\n{message}\n-- \nsent from a phone {{}}"));
    check("a file", SAMPLE);
    check("a file, marked", &format!("\u{feff}{SAMPLE}"));
    check("a file in a message", &format!("Our list: {SAMPLE} Thanks"));
    let pretty = serde_json::to_string_pretty(&serde_json::from_str::<serde_json::Value>(SAMPLE).unwrap()).unwrap();
    check("laid out", &pretty);
    check("laid out in a message", &format!("See below\n{pretty}\nAda"));
}

#[test]
fn what_messengers_do_is_undone() {
    let message = message();
    check("other line breaks", &message.replace('\n', "\r\n"));
    check("line breaks lost", &message.replace('\n', " "));
    check("curly quotes", &curled(&message));
    check("guillemets", &message.replace('"', "»"));
    check("spaces that do not break", &message.replace(' ', "\u{a0}"));
    check("bold and italics", &format!("*{}*", message.replace("\\u", "\\*u*")));
    check("quoted", &message.lines().map(|line| format!("> > {line}\n")).collect::<String>());
    for width in [40, 60, 76] {
        check("wrapped", &wrapped(&message, width, "\n"));
        check("wrapped and quoted", &wrapped(&message, width, "\n> "));
        check("invisible breaks", &wrapped(&message, width, "\u{200b}"));
        check("all of it at once", &wrapped(&curled(&message), width, " \r\n\u{a0}>"));
    }
}

#[test]
fn what_is_no_list_says_why() {
    let whole = message();
    refused("nothing", b"", ListError::Empty);
    refused("spaces", " \n\u{feff} ".as_bytes(), ListError::NoList);
    refused("words", b"Hello Mara, see you on Friday {maybe}.", ListError::NoList);
    refused("cut off", &whole.as_bytes()[..whole.len() - 40], ListError::CutOff);
    refused("a file cut off", &SAMPLE.as_bytes()[..500], ListError::CutOff);
    refused("too large", &vec![b' '; LIMIT + 1], ListError::TooLarge);
    refused("a packed folder", b"PK\x03\x04\x14\x00\x00\x00list", ListError::Zip);
    refused("a picture", b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00\x01", ListError::NotText);
    let utf_16: Vec<u16> = SAMPLE.encode_utf16().collect();
    let little: Vec<u8> = utf_16.iter().flat_map(|unit| unit.to_le_bytes()).collect();
    let big: Vec<u8> = utf_16.iter().flat_map(|unit| unit.to_be_bytes()).collect();
    refused("UTF-16", &little, ListError::Utf16);
    refused("UTF-16, the other way round", &big, ListError::Utf16);
    refused("UTF-16, marked", &[&[0xff, 0xfe][..], &little].concat(), ListError::Utf16);
    refused("another program's", br#"{"contacts": [{"name": "Ada"}], "version": 3}"#, ListError::NotOurs);
    refused("a number", b"17", ListError::NoList);
    refused("a couple of the book", br#"{"schema": "1.0", "kind": "couple", "id": "7"}"#, ListError::OtherKind);
    refused("a newer major", SAMPLE.replace(r#""schema":"1.0""#, r#""schema":"3.0""#).as_bytes(), ListError::Newer(3));
    let deep = |open: &str, close: &str| format!("{}1{}", open.repeat(200), close.repeat(200));
    refused("200 levels of lists", deep("[", "]").as_bytes(), ListError::TooDeep);
    refused("200 levels of objects", deep(r#"{"a":"#, "}").as_bytes(), ListError::TooDeep);
    let carried =
        SAMPLE.replace(r#""schema":"1.0""#, &format!(r#""schema":"1.4","more":{}"#, "[".repeat(60) + &"]".repeat(60)));
    refused("60 levels in a newer one", carried.as_bytes(), ListError::TooDeep);
    refused(
        "an answer without its name",
        SAMPLE.replace(r#""answers":{"#, r#""answers":{"x","#).as_bytes(),
        ListError::Damaged,
    );
    // Never longer than it takes to look at a few beginnings.
    refused("many braces", "{\"".repeat(LIMIT / 2).as_bytes(), ListError::TooDeep);
}

/// A couple's record with their list in it, as a file of the book.
fn book() -> String {
    let mut record = arbitrary::new_couple();
    let writes = take_in(sample(), None, date("2026-11-27"));
    arbitrary::say(&mut record, arbitrary::OURS, 1, writes);
    let header =
        Header { written: Moment(1), by: arbitrary::OURS, practice: None, holds: Holds::Couples, unknown: None };
    file::write(&header, [&record])
}

/// Whatever became of it on the way: it is the other screen's, which says what is wrong with it.
#[test]
fn a_file_of_the_book_with_a_list_in_it_is_no_list() {
    let book = book();
    let list = write(&sample());
    assert!(book.contains(&list), "{book}");
    let bring_in = |text: &str| {
        let mut reader = file::open(text.into())?;
        std::iter::from_fn(|| reader.next_row()).map(|row| row.map(|_| ())).collect::<Result<Vec<()>, FileError>>()
    };
    let among_words = |text: &str| format!("Hello {{Mara}},\nour couples:\n\n{text}\nSee you, Kim");
    for text in [book.clone(), among_words(&book), book.replace('\n', " "), book.replace('\n', "\r\n> ")] {
        refused("whole", text.as_bytes(), ListError::OtherKind);
    }
    assert_eq!(bring_in(&format!("Our couples:\n\n{book}\nSee you, Kim")).map(|rows| rows.len()), Ok(1));
    for width in [40, 60, 76] {
        refused("wrapped", wrapped(&among_words(&curled(&book)), width, "\n> ").as_bytes(), ListError::OtherKind);
    }
    let records = book.find("\n{").unwrap();
    let end = book.rfind(']').unwrap();
    for cut in (records..end).step_by(7).filter(|at| book.is_char_boundary(*at)) {
        let cut = &book[..cut];
        refused("cut off", cut.as_bytes(), ListError::OtherKind);
        assert_eq!(bring_in(&format!("{cut}\nSee you")), Err(FileError::CutOff), "{cut}");
        refused("cut off among words", among_words(cut).as_bytes(), ListError::OtherKind);
        refused("cut off and wrapped", wrapped(&among_words(cut), 70, "\n> ").as_bytes(), ListError::OtherKind);
        // Without its head it is still no list, from wherever on it was copied.
        for from in [records, book.find("{\"at\"").unwrap(), book.find("{\"field\":\"said").unwrap()] {
            assert!(read(&book.as_bytes()[from..cut.len().max(from)]).is_err(), "{}", &book[from..]);
        }
    }
    // A list that was sent again after one that was cut off is found.
    check("again", &format!("Hello, {} Sorry, here it is: {list}", &list[..100]));
}

#[test]
fn the_line_of_a_message_has_plain_signs_only() {
    let line = write_line(&sample());
    assert!(line.chars().all(|c| c.is_ascii_alphanumeric() || "{}[]:,.\"\\-".contains(c)), "{line}");
    assert!(!line.contains("--"));
    assert_eq!(
        serde_json::from_str::<serde_json::Value>(&line).unwrap(),
        serde_json::from_str::<serde_json::Value>(&write(&sample())).unwrap()
    );
}

proptest! {
    #![proptest_config(cases(128))]

    #[test]
    fn any_list_comes_through(said in arbitrary::said(ItemId(9)), width in 20usize..90, before in "[^{\\x00]{0,40}") {
        let line = write_line(&said);
        prop_assert_eq!(read(line.as_bytes()), Ok(said.clone()));
        let sent = format!("{before}\n{}\nBye", wrapped(&curled(&line), width, "\n> "));
        prop_assert_eq!(read(sent.as_bytes()), Ok(said));
    }

}

/// How many lists: 1,000,000 in `make prove`.
fn mutations() -> u32 {
    u32::try_from(set("MUTATIONS", 512)).unwrap_or(u32::MAX)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(mutations()))]

    /// Bytes changed, taken out or put in, anywhere and several times: it is a list or it is not, and nothing panics;
    /// what is done with a list that was read does not either.
    #[test]
    fn scribbled_over_lists(said in arbitrary::said(ItemId(9)), file in any::<bool>(), edits in proptest::collection::vec((any::<prop::sample::Index>(), any::<u8>(), 0u8..3), 1..8)) {
        let mut bytes = if file { write(&said) } else { handing::message(&said, &write_line(&said)) }.into_bytes();
        for (at, byte, how) in edits {
            let at = at.index(bytes.len());
            match how {
                0 => bytes[at] = byte,
                1 => drop(bytes.remove(at)),
                _ => bytes.insert(at, byte),
            }
        }
        if let Ok(said) = read(&bytes) {
            let (checked, _) = said.clone().checked();
            handing::groups(&checked);
            let today = said.saved;
            bandwright::book::preparation_list::take_in(checked, None, today);
            prop_assert_eq!(read(write(&said).as_bytes()), Ok(said));
        }
    }
}

fn curled(text: &str) -> String {
    let mut open = false;
    let curl = |c| match c {
        '"' => {
            open = !open;
            if open { '\u{201c}' } else { '\u{201d}' }
        }
        c => c,
    };
    text.chars().map(curl).collect()
}

fn wrapped(text: &str, width: usize, with: &str) -> String {
    let chars: Vec<char> = text.chars().collect();
    chars.chunks(width).map(|line| line.iter().collect::<String>()).collect::<Vec<_>>().join(with)
}
