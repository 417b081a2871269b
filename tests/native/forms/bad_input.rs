//! Bad input of every kind, typed into every field of every form: each reader answers with one complaint at that field,
//! which has its sentence, or with a value that may stand there. None passes over a field, and none panics.
//!
//! A form gets a row in [`forms`]: texts that read without a complaint, its reader, and what each of its fields takes.

use bandwright::book::couple::Band;
use bandwright::book::id::RecordId;
use bandwright::book::practice::Practice;
use bandwright::book::record::{Kind as RecordKind, Record};
use bandwright::forms::{
    Complaint, Complaints, Key, Texts, compare, dates, order, paper_gauge, reading, remedy, size, stack,
};
use bandwright::trade::fit::Term;
use bandwright::trade::stack::House;
use bandwright::words::complaint::complaint;
use chrono::NaiveDate;

/// What a field takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A length or a share, never below nought.
    Figure,
    /// A length that may lie below nought.
    Signed,
    /// A whole number: days, per cent.
    Whole,
    Size,
    Widths,
    Day,
    Wedding,
    Time,
    Contact,
    Words,
    /// Picked and not typed: a word that stands for nothing reads as nothing.
    Choice,
    /// Not read beside the other texts of this row: another choice makes it count.
    Unread,
}

use Kind::*;

/// A field, what it takes, and whether it may be left blank.
pub struct Field {
    pub key: Key,
    pub kind: Kind,
    pub may_be_blank: bool,
}

/// Fields that have to be filled in.
pub fn needed(kind: Kind, keys: impl IntoIterator<Item = Key>) -> Vec<Field> {
    keys.into_iter().map(|key| Field { key, kind, may_be_blank: false }).collect()
}

/// Fields that may be left blank.
pub fn optional(kind: Kind, keys: impl IntoIterator<Item = Key>) -> Vec<Field> {
    keys.into_iter().map(|key| Field { key, kind, may_be_blank: true }).collect()
}

/// A form, filled in one way.
pub struct Form {
    pub name: &'static str,
    /// Reads without a complaint.
    pub filled: Texts,
    pub read: fn(&Texts) -> Result<(), Complaints>,
    pub fields: Vec<Field>,
}

/// What a tool's reader could read beside its complaints counts as read where there are none.
pub fn checked<T>((_, complaints): (T, Complaints)) -> Result<(), Complaints> {
    if complaints.is_empty() { Ok(()) } else { Err(complaints) }
}

/// Every form there is.
fn forms() -> Vec<Form> {
    let tools = vec![
        Form { name: "reading", ..reading_of_a_finger() },
        Form { name: "order size", ..order_size() },
        Form { name: "stack", ..stack_of_rings() },
        Form { name: "bands side by side", ..bands() },
        Form { name: "remedy: shaped", ..remedy_of("shaped", "bay") },
        Form { name: "remedy: lower", ..remedy_of("lower", "most-high") },
        Form { name: "remedy: gap", ..remedy_of("gap", "left-gap") },
        Form { name: "countdown", ..countdown() },
        Form { name: "size converter", ..size_converter() },
        Form { name: "paper gauge", ..a_print() },
    ];
    tools.into_iter().chain(super::bad_couple::forms()).chain(super::bad_setup::forms()).collect()
}

/// What nobody means to type, and the kinds of field in which it may stand for something all the same.
pub const BAD: [(&str, &[Kind]); 17] = [
    ("abc", &[Words]),
    ("-3", &[Signed, Words]),
    ("99999999999999999999", &[Contact, Words]),
    ("2.5 mm 1 in", &[Words]),
    // A day may be written with stops: the second of May.
    ("2..5", &[Day, Wedding, Words]),
    ("1e309", &[Words]),
    ("NaN", &[Words]),
    ("½½", &[Words]),
    ("31/2/2027", &[Words]),
    ("00:61", &[Words]),
    ("🙂", &[Words]),
    // A mark that is not seen is passed over; one that turns what follows it round is not.
    ("\u{200f}2.5", &[Figure, Signed, Size, Widths, Day, Wedding, Words]),
    ("\u{202e}2.5", &[Words]),
    ("2,5; 🙂", &[Words]),
    ("<b>2</b>", &[Words]),
    ("\0", &[Words]),
    (LONG, &[]),
];

/// Longer than any field takes: it stands for five thousand letters.
const LONG: &str = "long";

fn typed(bad: &str) -> String {
    if bad == LONG { "x".repeat(5_000) } else { bad.to_owned() }
}

#[test]
fn bad_input_is_complained_of_where_it_was_typed() {
    let mut faults = Vec::new();
    for form in forms() {
        assert_eq!((form.read)(&form.filled), Ok(()), "{}: the texts to begin with", form.name);
        for field in &form.fields {
            let bad = BAD.iter().map(|(bad, kinds)| (typed(bad), kinds.contains(&field.kind)));
            let blank = ["", "  ", "\u{200b}"].map(|blank| (blank.to_owned(), field.may_be_blank));
            faults.extend(bad.chain(blank).filter_map(|(typed, may_be_read)| fault(&form, field, &typed, may_be_read)));
        }
    }
    assert!(faults.is_empty(), "{} faults\n{}", faults.len(), faults.join("\n"));
}

/// What is wrong with the answer to one text in one field.
fn fault(form: &Form, field: &Field, typed: &str, may_be_read: bool) -> Option<String> {
    let is_there = |(key, what): &(Key, Complaint)| {
        let sentence = complaint(what);
        *key == field.key && sentence.len() > 10 && sentence.ends_with(['.', '?'])
    };
    let read = (form.read)(&form.filled.clone().with(field.key, typed));
    let is_right = match (field.kind, &read) {
        (Unread, read) => *read == Ok(()),
        // What cannot be picked may leave another field without what it needs.
        (Choice, read) => read.as_ref().err().is_none_or(|all| all.len() <= 1),
        (_, Ok(())) => may_be_read,
        (_, Err(all)) => matches!(all.as_slice(), [only] if is_there(only)),
    };
    let said: String = typed.chars().take(30).collect();
    let at = format!("{}: {said:?} in {:?}, which takes {:?}: {read:?}", form.name, field.key.name(), field.kind);
    (!is_right).then_some(at)
}

/// A field that a form has and its row has not would never be tried.
#[test]
fn every_field_of_every_form_is_tried() {
    for form in forms() {
        for (name, _) in form.filled.clone().into_pairs() {
            assert!(form.fields.iter().any(|field| field.key.name() == name), "{}: {name}", form.name);
        }
    }
}

// ---- The forms ----

fn today() -> NaiveDate {
    "2026-11-25".parse().unwrap()
}

pub fn practice() -> Record {
    Record::new(RecordId(0), RecordKind::Practice)
}

fn reading_of_a_finger() -> Form {
    use reading::*;
    Form {
        name: "",
        filled: start(super::LEFT, GAUGE_WORN.to_owned()).with(SIZE, "M½").with(WORN_WIDTH, "2.6"),
        read: |texts| read(texts, &super::known()).map(drop),
        fields: [
            needed(Size, [SIZE]),
            needed(Figure, [WORN_WIDTH]),
            optional(Widths, [BESIDE]),
            optional(Time, [TAKEN_AT]),
            optional(Choice, [HAND, DIGIT, MOVES, SIZE_AS, GAUGE, WORN_BORE, SITS, READ_AT, HANDS, PLACE]),
            optional(Choice, [GLASS, GLASS_OFF]),
        ]
        .into_iter()
        .flatten()
        .collect(),
    }
}

fn order_size() -> Form {
    use order::*;
    Form {
        name: "",
        filled: start(None, Practice(&practice()))
            .with(SIZE, "M½")
            .with(GAUGE_WIDTH, "3")
            .with(WIDTH, "4")
            .with(JOINT, "O"),
        read: |texts| checked(read(texts, &Known::of(None, Practice(&practice()), today()))),
        fields: [
            needed(Size, [SIZE]),
            needed(Figure, [GAUGE_WIDTH, WIDTH]),
            optional(Size, [JOINT]),
            optional(Figure, [GAUGE_ERROR, RELIEF, JOINT_WIDTH]),
            optional(Widths, [BESIDE, NEIGHBOURS]),
            optional(Signed, Term::ALL.map(own)),
            optional(Choice, [SIZE_AS, GAUGE, GAUGE_KIND, GAUGE_BORE, READ_AT, HANDS, PROFILE, JOINT_AS]),
            optional(Choice, [NO_BEADS, FIRST_RING, CHANGING, ALONE_READING, WORN, MAKE]),
        ]
        .into_iter()
        .flatten()
        .collect(),
    }
}

fn stack_of_rings() -> Form {
    use stack::*;
    let recorded = StackTyped::recorded(None, &House::default());
    let mut filled = start(&recorded, |_| String::new()).with(BAND, "3");
    let mut fields: Vec<Field> = [
        needed(Figure, [BAND, GAP]),
        optional(Figure, [FREE, BAND_THICKNESS, BAND_DOME, BAND_RELIEF, BAND_CURVE, BAND_INSIDE]),
        optional(Figure, FREE_OF.map(|(_, key)| key)),
        optional(Choice, [BAND_PROFILE, BAND_METAL, BAND_SET, PLACE]),
    ]
    .into_iter()
    .flatten()
    .collect();
    for row in &ROWS {
        filled = filled.with(row.name, "ring").with(row.width, "2.6").with(row.under, "1.5");
        fields.extend(needed(Figure, [row.width]));
        fields.extend(optional(Words, [row.name]));
        fields.extend(optional(Figure, [row.top, row.back, row.height, row.web, row.tip, row.under, row.inside]));
        fields.extend(optional(Choice, [row.when, row.profile, row.metal, row.stones]));
    }
    Form { name: "", filled, read: |texts| checked(read(texts)), fields }
}

fn bands() -> Form {
    use compare::*;
    let mut filled = start(&Band::default());
    let mut fields = Vec::new();
    for keys in &BANDS {
        filled = filled.with(keys.width, "3");
        // A band without a width is none.
        fields.extend(optional(Figure, [keys.width, keys.thickness]));
        fields.extend(optional(Choice, [keys.profile, keys.metal, keys.finish]));
    }
    Form { name: "", filled, read: |texts| checked(read(texts, &Band::default())), fields }
}

/// What is chosen for a band that a head holds off, by one of the three ways.
fn remedy_of(way: &str, figure: &str) -> Form {
    use bandwright::book::remedy::Way;
    use remedy::*;
    let couple = crate::arbitrary::new_couple();
    let couple = bandwright::book::couple::Couple(&couple);
    let start = start(couple, bandwright::trade::wearer::Wearer::First, None, |day| day.to_string());
    let shaped = way == "shaped";
    let mut filled = start.with(WAY, way).with(RING_ITSELF, if shaped { "yes" } else { "" });
    let mut fields = Vec::new();
    for key in Way::ALL.map(amount) {
        filled = filled.with(key, "1");
        fields.extend(needed(if key.name() == figure { Figure } else { Unread }, [key]));
    }
    fields.extend(optional(if shaped { Day } else { Unread }, [AWAY_FROM, AWAY_TO]));
    fields.extend(optional(Day, [RING_GONE, RING_BACK]));
    fields.extend(optional(Choice, [WAY, IMPRESSION, TEMPLATE, RING_ITSELF, WHICH_RING]));
    Form { name: "", filled, read: |texts| read(texts, today(), None).map(drop), fields }
}

fn countdown() -> Form {
    use dates::*;
    let words = bandwright::words::bench::wedding_typed;
    Form {
        name: "",
        filled: start(None, Practice(&practice()), words).with(WEDDING, "22 May 2027"),
        read: |texts| checked(read(texts, &Known::of(Practice(&practice()), today()))),
        fields: [
            needed(Wedding, [WEDDING]),
            needed(Whole, [LEAST, USUAL, MOST, IN_HAND, CONFIDENCE]),
            optional(Day, [DECIDED]),
            optional(Choice, [REGION, EXTRAS]),
        ]
        .into_iter()
        .flatten()
        .collect(),
    }
}

fn size_converter() -> Form {
    use size::*;
    Form {
        name: "",
        filled: start(None).with(SIZE, "M½"),
        read: |texts| checked(read(texts, bandwright::trade::sizing::System::Uk)),
        fields: needed(Size, [SIZE]).into_iter().chain(optional(Choice, [SIZE_AS])).collect(),
    }
}

fn a_print() -> Form {
    use paper_gauge::*;
    let mut fields = optional(Figure, [LINE]);
    fields.extend(optional(Size, [READ]));
    fields.extend(optional(Choice, [FIRST, PAPER, BY, READ_AS]));
    let filled = start(bandwright::trade::sizing::System::Uk).with(LINE, "99").with(READ, "17.5 mm");
    Form { name: "", filled, read: |texts| checked(read(texts)), fields }
}
