//! Readings that are not like the others, and names that somebody else wrote.

use bandwright::book::change::Write;
use bandwright::book::couple::Couple;
use bandwright::book::field::{Field, RingField};
use bandwright::book::id::ItemId;
use bandwright::book::record::Record;
use bandwright::book::value::{ChosenExtra, DatesSettled, ExtraWork, OwnGauge, ReadingTaken, Value};
use bandwright::trade::band::Bore;
use bandwright::trade::dates::holidays::Region;
use bandwright::trade::dates::spread::{CalendarDays, Spread, WorkingDays};
use bandwright::trade::fit::{Gauge, GaugeKind, Hands, Place, ReadAt, Sits};
use bandwright::trade::sizing::{Size, SizeAsRead, Stated, System};
use bandwright::trade::wearer::{Digit, Finger, Hand, Wearer};
use bandwright::words::specification::{Called, specification, title};

use super::{add, ines_and_callum, mm};
use crate::shared::date;

fn lines_with(record: &Record, words: &str) -> Vec<String> {
    let text = specification(Couple(record), Called::Names, date("2026-11-25"));
    text.lines().filter(|line| line.contains(words)).map(str::to_owned).collect()
}

/// A ring that they wear, 3 mm wide, of UK M: 37.5 + 12 * 1.25 = 52.50 round and 16.71 across.
fn worn(sits: Sits, digit: Digit) -> ReadingTaken {
    let gauge = Gauge {
        kind: GaugeKind::RingSet,
        width: mm(300),
        bore: Bore::Flat,
        relief: None,
        step: mm(62),
        own_error: mm(10),
    };
    ReadingTaken {
        size: SizeAsRead { stated: Stated::Size(Size::new(System::Uk, 48).unwrap()), typed: "M".into() },
        finger: Finger { hand: Hand::Left, digit },
        place: Place::Base,
        gauge: OwnGauge { name: "a ring they wear".into(), gauge, calibration: Vec::new() },
        read_at: ReadAt::LowerEdge,
        hands: Hands::Normal,
        beside: vec![],
        sits: Some(sits),
        taken: date("2026-11-24"),
        at: None,
        left_out: false,
    }
}

/// A ring that is worn stands for the gauge by how it sits, and a reading that does not count is not printed as if.
#[test]
fn a_reading_says_how_a_worn_ring_sits_and_whether_it_counts() {
    let start = "Measured Tue 24 Nov 2026: UK M, 52.50 mm round the inside, 16.71 mm across, base of the left";
    let check = |taken: ReadingTaken, expected: &str| {
        let mut record = ines_and_callum();
        add(&mut record, vec![Write::set(Field::Reading(Wearer::First, ItemId(90)), Value::Reading(taken))]);
        assert_eq!(lines_with(&record, "24 Nov"), [format!("{start} {expected}")]);
    };
    let with = "ring finger, with “a ring they wear” (ring, 3 mm wide, flat inside), how it sits:";
    check(worn(Sits::Tight, Digit::Ring), &format!("{with} tight"));
    check(worn(Sits::Right, Digit::Ring), &format!("{with} right"));
    check(worn(Sits::Spins, Digit::Ring), &format!("{with} spins"));
    check(worn(Sits::SticksInSummer, Digit::Ring), &format!("{with} sticks in summer"));
    let left_out = |sits, digit| ReadingTaken { left_out: true, ..worn(sits, digit) };
    check(left_out(Sits::Right, Digit::Ring), &format!("{with} right, left out by the jeweller: does not count"));
    let middle = with.replace("ring finger", "middle finger");
    check(worn(Sits::Right, Digit::Middle), &format!("{middle} right, not the band’s finger: does not count"));
}

/// A name from a file cannot end a line of ours and begin another, nor turn the words after it round.
#[test]
fn what_somebody_called_a_thing_makes_no_line() {
    let forged = |what: &str| format!("{what}\nOrder size: UK Z\u{202e}\u{2028}\r\u{85}Metal: tin");
    let mut record = ines_and_callum();
    let ring = Field::Ring(Wearer::First, ItemId(91), RingField::Name);
    let inside = Field::Ring(Wearer::First, ItemId(91), RingField::Inscription);
    let mut taken = worn(Sits::Right, Digit::Ring);
    taken.gauge.name = forged("gauge");
    let spread = Spread::new(WorkingDays(4), WorkingDays(4), WorkingDays(4)).unwrap();
    let dates = DatesSettled {
        confidence: None,
        region: Region::EnglandAndWales,
        in_hand: CalendarDays(14),
        making: spread,
        extras: vec![ChosenExtra { work: ExtraWork::Own(ItemId(77)), name: Some(forged("plating")), spread }],
        order_by: date("2027-04-01"),
        settled: date("2026-11-25"),
    };
    let before = specification(Couple(&record), Called::Names, date("2026-11-25"));
    add(
        &mut record,
        vec![
            Write::set(Field::Name(Wearer::First), Value::Text(forged("Ines"))),
            Write::set(ring.clone(), Value::Text(forged("signet"))),
            Write::set(inside.clone(), Value::Text(forged("750"))),
            Write::set(Field::Reading(Wearer::First, ItemId(90)), Value::Reading(taken)),
            Write::set(Field::Dates, Value::Dates(dates)),
        ],
    );
    let text = specification(Couple(&record), Called::Names, date("2026-11-25"));
    for what in ["gauge", "plating", "Ines", "signet", "750"] {
        assert!(text.contains(&format!("{what} Order size: UK Z   Metal: tin")), "{what}\n{text}");
    }
    assert!(!text.contains(['\u{202e}', '\u{2028}', '\u{85}', '\r']), "{text}");
    let starts = |text: &str, with: &str| text.lines().filter(|line| line.starts_with(with)).count();
    for start in ["Order size", "Metal"] {
        assert_eq!(starts(&text, start), starts(&before, start), "{text}");
    }
    assert!(text.contains(", inside it says “750 Order size"), "{text}");
    assert_eq!(title(Couple(&record), Called::Names).lines().count(), 1);
}
