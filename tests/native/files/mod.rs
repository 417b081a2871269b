//! The book as a file: the same bytes again, a clear answer to whatever comes in, nothing changed before it is wanted.

mod mutate;
mod mutated;
mod previews;
mod refused;
mod samples;

use crate::arbitrary;
use crate::shared::cases;
use bandwright::archive::file::{FileError, Header, Holds, Reader, Row, Writer, open, write};
use bandwright::archive::installation::Installation;
use bandwright::book::change::Write;
use bandwright::book::couple::Couple;
use bandwright::book::field::Field;
use bandwright::book::id::{InstallationId, Moment, RecordId, Stamp};
use bandwright::book::leaving::{Refusing, Stays, may_leave};
use bandwright::book::record::{Kind, Record};
use bandwright::book::value::{Recorded, Value};
use proptest::collection::vec;
use proptest::prelude::*;

const NOW: Moment = Moment(1_792_000_000_000);

fn header() -> Header {
    Header { written: NOW, by: arbitrary::OURS, practice: None, holds: Holds::Couples, unknown: None }
}

fn installation() -> Installation {
    Installation { id: arbitrary::OURS, practice: RecordId(1), next: 100, former: vec![], unknown: None }
}

fn rows(reader: &mut Reader) -> Result<Vec<Row>, FileError> {
    std::iter::from_fn(|| reader.next_row()).collect()
}

/// All records of a file of which every row can be read.
fn records(text: &str) -> Vec<Record> {
    let mut reader = open(text.into()).unwrap_or_else(|why| panic!("{why:?}: {text}"));
    rows(&mut reader).unwrap().into_iter().map(|row| row.read.unwrap()).collect()
}

/// A couple that was met somewhere, written down by somebody.
fn couple(id: u128, by: InstallationId, n: u64, place: &str) -> Record {
    let mut record = Record::new(RecordId(id), Kind::Couple);
    arbitrary::say(&mut record, by, n, vec![Write::set(Field::Met, Value::Text(place.into()))]);
    record
}

/// A book of a few couples, a practice and marks of what was erased.
fn books() -> impl Strategy<Value = Vec<Record>> {
    let mark = (any::<u128>(), any::<u128>(), 1u64..1 << 53)
        .prop_map(|(id, by, n)| Record::mark(RecordId(id), Kind::Couple, Stamp { n, by: InstallationId(by) }));
    vec(prop_oneof![6 => arbitrary::record(), 1 => mark], 0..6).prop_map(|mut records| {
        records.sort_by_key(|record| record.id);
        records.dedup_by_key(|record| record.id);
        records
    })
}

fn headers() -> impl Strategy<Value = Header> {
    (any::<i64>(), any::<u128>(), proptest::option::of(any::<u128>()), any::<bool>()).prop_map(
        |(written, by, practice, whole)| Header {
            written: Moment(written),
            by: InstallationId(by),
            practice: practice.map(RecordId),
            holds: if whole { Holds::Book } else { Holds::Couples },
            unknown: None,
        },
    )
}

proptest! {
    #![proptest_config(cases(64))]

    #[test]
    fn written_read_and_written_again_it_is_the_same(header in headers(), book in books()) {
        let text = write(&header, &book);
        let mut reader = open(text.clone().into()).unwrap();
        prop_assert_eq!(reader.header(), &header);
        let again = records(&text);
        let refusing = Refusing::of(book.iter());
        let leaving: Vec<&Record> =
            book.iter().filter(|it| it.kind == Kind::Practice || refusing.may_leave(Couple(it)).is_ok()).collect();
        prop_assert_eq!(again.iter().collect::<Vec<_>>(), leaving);
        prop_assert_eq!(&write(&header, &again), &text);
        prop_assert!(rows(&mut reader).is_ok() && reader.next_row().is_none());
        // JSON it is, also to others, and a line a record.
        let json: serde_json::Value = serde_json::from_str(&text).unwrap();
        prop_assert_eq!(json["records"].as_array().unwrap().len(), again.len());
        prop_assert_eq!(text.lines().count(), again.len() + 3);
    }

    /// In whatever order the records come, with whatever is written around them, and wherever they went through.
    #[test]
    fn the_same_book_gives_the_same_bytes(book in books()) {
        let text = write(&header(), &book);
        prop_assert_eq!(&write(&header(), book.iter().rev()), &text);
        let expected = records(&text);
        let windows = text.replace('\n', "\r\n");
        for around in [format!("\u{feff}{text}"), format!("Hello, our couples:\n\n{text}\nSee you, Ines"), windows] {
            prop_assert_eq!(&records(&around), &expected);
        }
        // Another program has put its keys in another order, and spaces in between.
        let json: serde_json::Value = serde_json::from_str(&text).unwrap();
        prop_assert_eq!(&records(&json.to_string()), &expected);
        prop_assert_eq!(&records(&serde_json::to_string_pretty(&json).unwrap()), &expected);
    }

    #[test]
    fn cut_off_anywhere_it_is_refused(book in books(), at in any::<prop::sample::Index>()) {
        let text = write(&header(), &book);
        let end = text.trim_end().len() - 1;
        let at = at.index(end);
        let cut = &text.as_bytes()[..at];
        let answer = open(cut.to_vec()).and_then(|mut reader| rows(&mut reader).map(|_| ()));
        let expected = if at == 0 { FileError::Empty } else { FileError::CutOff };
        prop_assert_eq!(answer, Err(expected));
    }
}

// ---- What is shown ----

#[test]
fn a_name_from_elsewhere_is_kept_and_shown_harmlessly() {
    let name = Field::Name(bandwright::trade::wearer::Wearer::First);
    let typed = "Wren<img src=x onerror=alert(1)>\u{202e}snekil\u{2066}\u{7}\u{0}\tÅsa\u{200f}";
    let mut record = couple(5, arbitrary::OURS, 1, "fair");
    arbitrary::say(&mut record, arbitrary::OURS, 2, vec![Write::set(name, Value::Text(typed.into()))]);
    let again = records(&write(&header(), [&record]));
    assert_eq!(again, [record]);
    let shown = bandwright::words::book::names(Couple(&again[0]));
    assert_eq!(shown, "Wren<img src=x onerror=alert(1)>snekil   Åsa\u{200f}");
    assert_eq!(bandwright::words::harmless::harmless("two\nlines"), "two\nlines");
}

// ---- What leaves ----

#[test]
fn a_no_never_leaves_nor_an_example() {
    let with = |by, n, field: Field, value: Value| {
        let mut record = couple(5, arbitrary::OURS, 1, "fair");
        arbitrary::say(&mut record, by, n, vec![Write::set(field, value)]);
        record
    };
    let recorded = |agrees| Value::Recorded(Recorded { agrees, asked: "2026-10-03".parse().unwrap() });
    let other = InstallationId(1);
    let no = with(arbitrary::OURS, 2, Field::Recorded, recorded(false));
    let yes = with(other, 3, Field::Recorded, recorded(true));
    let example = with(arbitrary::OURS, 2, Field::Example, Value::Yes(true));
    // A no stands beside a yes that is shown: neither had seen the other.
    let both = bandwright::archive::merge::merge(&no, &yes);
    assert!(Couple(&both).recorded().unwrap().agrees);
    for (record, expected) in
        [(&no, Err(Stays::SaidNo)), (&both, Err(Stays::SaidNo)), (&example, Err(Stays::Example)), (&yes, Ok(()))]
    {
        let mut writer = Writer::new(&header(), Refusing::of([record].into_iter()));
        assert_eq!(writer.add(record), expected);
        let text = writer.finish();
        assert_eq!(text.contains("fair"), expected.is_ok());
        assert_eq!(records(&text).len(), usize::from(expected.is_ok()));
    }
    // Asked again, by one who had seen both: a yes.
    let mut asked = both.clone();
    arbitrary::say(&mut asked, other, 4, vec![Write::set(Field::Recorded, recorded(true))]).unwrap();
    assert_eq!(may_leave(Couple(&asked)), Ok(()));
    // Nothing of it is left once it is erased, so the mark may leave.
    let mark = Record::mark(no.id, Kind::Couple, Stamp { n: 9, by: other });
    assert!(!write(&header(), [&mark]).contains("fair"));
    assert_eq!(records(&write(&header(), [&mark])), [mark]);
}

/// Entries that were joined are about the same two people: a no of one keeps the others in too, and no other couple.
#[test]
fn a_no_keeps_in_what_was_joined_with_it() {
    let recorded = |agrees| Value::Recorded(Recorded { agrees, asked: "2026-10-03".parse().unwrap() });
    let with = |id, place: &str, writes: &[(Field, Value)]| {
        let mut record = couple(id, arbitrary::OURS, id as u64, place);
        for (n, (field, value)) in (10..).zip(writes) {
            arbitrary::say(&mut record, arbitrary::OURS, n, vec![Write::set(field.clone(), value.clone())]);
        }
        record
    };
    let no = (Field::Recorded, recorded(false));
    let yes = (Field::Recorded, recorded(true));
    let same = |id, yes| (Field::SameAs(RecordId(id)), Value::Yes(yes));
    // The second says so of the first, the third of the second; the fourth was told apart, the fifth is somebody else.
    let book = |answer: (Field, Value), at: u128| {
        let of = |id| if id == at { answer.clone() } else { yes.clone() };
        [
            with(1, "fair", &[of(1)]),
            with(2, "barn", &[of(2), same(1, true)]),
            with(3, "mill", &[of(3), same(2, true)]),
            with(4, "quay", &[of(4), same(1, false)]),
            with(5, "loft", &[of(5)]),
        ]
    };
    for at in 1..=3 {
        let book = book(no.clone(), at);
        let text = write(&header(), &book);
        let places = ["fair", "barn", "mill", "quay", "loft"].map(|place| text.contains(place));
        assert_eq!(places, [false, false, false, true, true], "the no of {at}");
        let refusing = Refusing::of(book.iter());
        let why = |record: &Record| refusing.may_leave(Couple(record));
        for record in &book[..3] {
            let expected = if record.id.0 == at { Stays::SaidNo } else { Stays::JoinedSaidNo };
            assert_eq!(why(record), Err(expected));
        }
        // Of a part of the book too, and as a table.
        let mut writer = Writer::new(&header(), refusing.clone());
        assert!(writer.add(&book[0]).is_err() && writer.add(&book[4]).is_ok());
        let table = bandwright::words::spreadsheet::table(book.iter().map(Couple), &refusing);
        assert!(!table.contains("barn") && table.contains("loft"));
    }
    assert_eq!(records(&write(&header(), &book(yes.clone(), 1))).len(), 5);
    // A link beside which another phone says that they are two holds until that is settled.
    let mut two = with(2, "barn", std::slice::from_ref(&yes));
    let one = [(7, true), (8, false)].map(|(by, yes)| {
        let mut side = two.clone();
        let (field, value) = same(1, yes);
        arbitrary::say(&mut side, InstallationId(by), 20, vec![Write::set(field, value)]);
        side
    });
    two = bandwright::archive::merge::merge(&one[0], &one[1]);
    assert!(!write(&header(), [&with(1, "fair", &[no]), &two]).contains("barn"));
}
