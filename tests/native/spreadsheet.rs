//! The book for a spreadsheet: quoted as RFC 4180 says, nothing in it worked out, no number spoilt.

use bandwright::archive::csv::line;
use bandwright::book::change::{Change, Write};
use bandwright::book::couple::Couple;
use bandwright::book::field::{Field, RingField};
use bandwright::book::id::{InstallationId, ItemId, Moment, RecordId, Stamp};
use bandwright::book::leaving::Refusing;
use bandwright::book::record::{Kind, Record};
use bandwright::book::value::{Recorded, Value};
use bandwright::trade::wearer::Wearer;
use bandwright::words::spreadsheet::table;

#[test]
fn each_cell_as_a_spreadsheet_takes_it() {
    let check = |text: &str, expected: &str| assert_eq!(line(&[text.to_owned()]), format!("{expected}\r\n"), "{text}");
    // The examples of RFC 4180, section 2.
    check("aaa", "\"aaa\"");
    check("b \r\nbb", "\"b \r\nbb\"");
    check("b\"bb", "\"b\"\"bb\"");
    assert_eq!(line(&["aaa".into(), "b,b".into(), String::new()]), "\"aaa\",\"b,b\",\"\"\r\n");
    // Telephone numbers keep their plus, their nought and every digit.
    check("+44 20 7946 0000", "\"+44 20 7946 0000\"");
    check("020 7946 0000", "\"020 7946 0000\"");
    check("07700900123", "\"07700 900123\"");
    check("+442079460000", "\"+4420 79460000\"");
    check("441632960000", "\"44163 2960000\"");
    // Formulas as they are tried, among them those of the OWASP page on CSV injection.
    check("=1+2\";=1+2", "\"'=1+2\"\";=1+2\"");
    check("=cmd|' /C calc'!A0", "\"'=cmd|' /C calc'!A0\"");
    check("+1+2", "\"'+1+2\"");
    check("+44-20-7946", "\"'+44-20-7946\"");
    check("-2+3", "\"'-2+3\"");
    check("@SUM(1)", "\"'@SUM(1)\"");
    check(" =1+2", "\"' =1+2\"");
    check("\t=1+2", "\"'\t=1+2\"");
    check("\r=1+2", "\"'\r=1+2\"");
    check("\u{ff1d}1+2", "\"'\u{ff1d}1+2\"");
    // What is none stays as it is.
    check("Zoë & Ines = a pair", "\"Zoë & Ines = a pair\"");
    check("54", "\"54\"");
    check("2027", "\"2027\"");
    check("M½", "\"M½\"");
}

#[test]
fn a_line_a_couple() {
    let mut record = Record::new(RecordId(7), Kind::Couple);
    let recorded = |agrees| Value::Recorded(Recorded { agrees, asked: "2026-10-03".parse().unwrap() });
    let say = |record: &mut Record, n, field, value| {
        let draft = record.draft(vec![Write::set(field, value)], Moment(0)).unwrap();
        record.add(Change::stamped(draft, Stamp { n, by: InstallationId(1) }));
    };
    say(&mut record, 1, Field::Name(Wearer::First), Value::Text("Zoë \"Z\"".into()));
    say(&mut record, 2, Field::Reach(ItemId(1)), Value::Text("+44 20 7946 0000".into()));
    say(&mut record, 3, Field::Note(ItemId(1)), Value::Text("=HYPERLINK(1)".into()));
    let ring = |part| Field::Ring(Wearer::First, ItemId(2), part);
    say(&mut record, 5, ring(RingField::Name), Value::Text("signet".into()));
    say(&mut record, 6, ring(RingField::Inscription), Value::Text("750 \"M\"".into()));
    say(&mut record, 4, Field::Recorded, recorded(true));
    let text = table([Couple(&record)].into_iter(), &Refusing::default());
    let lines: Vec<&str> = text.strip_prefix('\u{feff}').unwrap().lines().collect();
    assert_eq!(lines.len(), 2);
    assert!(
        lines[1].starts_with("\"Zoë \"\"Z\"\"\",\"\",\"enquiry\",") && lines[1].ends_with(",\"'=HYPERLINK(1)\""),
        "{}",
        lines[1]
    );
    assert!(lines[1].contains(",\"+44 20 7946 0000\",\"yes, "));
    assert!(lines[1].contains("\"signet, inside it says “750 \"\"M\"\"”\""), "{}", lines[1]);
    let cells = |line: &str| line.split("\",\"").count();
    assert_eq!(cells(lines[0]), 21);
    assert_eq!(cells(lines[1]), 21);
    // A no, and what holds nothing any more, are not in it.
    let mark = Record::mark(RecordId(8), Kind::Couple, Stamp { n: 9, by: InstallationId(1) });
    say(&mut record, 7, Field::Recorded, recorded(false));
    assert_eq!(table([Couple(&record), Couple(&mark)].into_iter(), &Refusing::default()).lines().count(), 1);
}
