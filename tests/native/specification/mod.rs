//! The specification as it goes to the bench: whole texts, the millimetres worked out by hand from the published
//! scales (UK letters: 37.5 mm and 1.25 mm a letter, divided by 3.14159 for across).

mod readings;

use crate::shared::date;
use bandwright::archive::merge::merge;
use bandwright::book::asks::{AnswerKey, Ask};
use bandwright::book::change::{Change, Write};
use bandwright::book::checklist::{self, Care, State, Topic};
use bandwright::book::couple::Couple;
use bandwright::book::example::couples;
use bandwright::book::field::{BandField, Field};
use bandwright::book::id::{InstallationId, ItemId, Moment, RecordId, Stamp};
use bandwright::book::preparation_list::PreparationList;
use bandwright::book::record::{Kind, Record};
use bandwright::book::value::{
    ChosenExtra, DatesSettled, ExtraWork, OrderSize, OwnGauge, OwnTerms, ReadingTaken, StackSeen, Value,
};
use bandwright::trade::band::Bore;
use bandwright::trade::dates::holidays::Region;
use bandwright::trade::dates::lead_times::Step as Work;
use bandwright::trade::dates::spread::{CalendarDays, Spread, WorkingDays};
use bandwright::trade::dates::wedding::Wedding;
use bandwright::trade::fit::{Gauge, GaugeKind, Hands, PerMm, Place, ReadAt};
use bandwright::trade::measure::{Circumference, Length};
use bandwright::trade::sizing::{Size, SizeAsRead, Stated, System};
use bandwright::trade::stack::House;
use bandwright::trade::wearer::{Digit, Finger, Hand, Wearer};
use bandwright::words::specification::{Called, specification, title};

fn mm(hundredths: i64) -> Length {
    Length::tenthousandths(hundredths * 100)
}

/// The example couple that has the most recorded, as of Wednesday 25 November 2026.
fn ines_and_callum() -> Record {
    let mut n = 0;
    let all = couples(date("2026-11-25"), || {
        n += 1;
        ItemId(n)
    });
    written(all.into_iter().next().unwrap())
}

fn written(writes: Vec<Write>) -> Record {
    let mut record = Record::new(RecordId(0x3f9a_2c00 << 96), Kind::Couple);
    add(&mut record, writes);
    record
}

fn add(record: &mut Record, writes: Vec<Write>) {
    let n = record.changes().len() as u64 + 1;
    if let Some(draft) = record.draft(writes, Moment(0)) {
        record.add(Change::stamped(draft, Stamp { n, by: InstallationId(1) }));
    }
}

#[track_caller]
fn check(record: &Record, called: Called, expected: &[&str]) {
    let text = specification(Couple(record), called, date("2026-11-25"), House::default());
    assert_eq!(text.lines().collect::<Vec<_>>(), expected);
}

#[test]
fn a_couple_half_way_says_what_is_there_and_what_is_open() {
    check(
        &ines_and_callum(),
        Called::Names,
        &[
            "Specification for two bands",
            "For Ines & Callum",
            "Written Wed 25 Nov 2026, reference 3f9a2c",
            "",
            "Band for Ines",
            "Hand and finger: left ring finger",
            "Order size: not settled yet",
            "Width: 2.5 mm",
            "Profile: court (domed inside and out)",
            "Height: 1.8 mm",
            "Finish: plain",
            "Metal: platinum 950",
            "Ring beside it: engagement ring, 2.6 mm at three and nine o’clock, 1.8 mm at the top, court, platinum 950, left ring finger",
            "Measured Mon 26 Oct 2026: UK M½, 53.13 mm round the inside, 16.91 mm across, base of the left ring finger, with “narrow rings” (ring set, 3 mm wide, flat inside), cold hands",
            "",
            "Band for Callum",
            "Hand and finger: left ring finger",
            "Order size: not settled yet",
            "Width: 6 mm",
            "Profile: flat court (domed inside, flat outside)",
            "Height: 1.8 mm",
            "Finish: plain",
            "Metal: platinum 950",
            "Rings beside it: none",
            "Measured Mon 26 Oct 2026: UK S½, 60.63 mm round the inside, 19.30 mm across, base of the left ring finger, with “narrow rings” (ring set, 3 mm wide, flat inside), normal hands",
            "Has never worn a ring",
            "",
            "Dates",
            "Wedding: Sat 29 May 2027",
            "Order by: not settled yet",
            "Read back with the couple: not yet",
            "",
            "Still open",
            "– order size of Ines: not done yet",
            "– order size of Callum: not done yet",
            "– dates: not done yet",
            "– read-back: not done yet",
            "",
            "Where a letter or number on your own gauge comes to other millimetres, the millimetres here count.",
        ],
    );
}

#[test]
fn a_settled_one_has_nothing_open_and_every_figure() {
    let mut record = ines_and_callum();
    // UK N is 37.5 + 13 * 1.25 = 53.75 round and 17.11 across, UK T½ 37.5 + 19.5 * 1.25 = 61.875 and 19.70.
    let size = |quarters, exact, overruled| OrderSize {
        size: Size::new(System::Uk, quarters).unwrap(),
        exact: Circumference(mm(exact)),
        from: Circumference(mm(exact - 70)),
        to: Circumference(mm(exact + 70)),
        in_stack: overruled,
        overruled,
        own: OwnTerms::default(),
        measure_again: false,
        settled: date("2026-11-25"),
    };
    let stick = Gauge {
        kind: GaugeKind::Stick { taper: PerMm(mm(22)) },
        width: mm(600),
        bore: Bore::Flat,
        relief: None,
        step: mm(62),
        own_error: mm(10),
    };
    let reading = ReadingTaken {
        size: SizeAsRead { stated: Stated::Circumference(Circumference(mm(6150))), typed: "61.5".into() },
        finger: Finger { hand: Hand::Left, digit: Digit::Ring },
        place: Place::Joint,
        gauge: OwnGauge { name: String::new(), gauge: stick, calibration: Vec::new() },
        read_at: ReadAt::LowerEdge,
        hands: Hands::Warm,
        beside: vec![mm(260), mm(200)],
        sits: None,
        taken: date("2026-11-24"),
        at: None,
        left_out: false,
    };
    let spread = |least, usual, most| Spread::new(WorkingDays(least), WorkingDays(usual), WorkingDays(most)).unwrap();
    let dates = DatesSettled {
        confidence: None,
        region: Region::EnglandAndWales,
        in_hand: CalendarDays(14),
        making: spread(15, 17, 20),
        extras: vec![
            ChosenExtra { work: ExtraWork::Usual(Work::Engraving), name: None, spread: spread(2, 3, 5) },
            ChosenExtra { work: ExtraWork::Own(ItemId(77)), name: Some("plating".into()), spread: spread(4, 4, 4) },
        ],
        order_by: date("2027-04-01"),
        settled: date("2026-11-25"),
    };
    let stack = StackSeen {
        now: mm(260),
        later: mm(520),
        free: mm(2400),
        measured: true,
        off: Length::ZERO,
        seen: date("2026-11-25"),
    };
    add(
        &mut record,
        vec![
            Write::set(Field::Reading(Wearer::Second, ItemId(90)), Value::Reading(reading)),
            Write::set(Field::Wedding, Value::Wedding(Wedding::Day(date("2027-05-22")))),
        ],
    );
    add(
        &mut record,
        vec![
            Write::set(Field::OrderSize(Wearer::First), Value::OrderSize(size(52, 5361, true))),
            Write::set(Field::OrderSize(Wearer::Second), Value::OrderSize(size(78, 6180, false))),
            Write::set(Field::Stack(Wearer::First), Value::Stack(stack)),
            Write::set(Field::Dates, Value::Dates(dates)),
            Write::set(Field::ReadBack, Value::Day(date("2026-11-25"))),
        ],
    );
    check(
        &record,
        Called::Initials,
        &[
            "Specification for two bands",
            "For I. & C.",
            "Written Wed 25 Nov 2026, reference 3f9a2c",
            "",
            "Band for I.",
            "Hand and finger: left ring finger",
            "Order size: UK N, 53.75 mm round the inside, 17.11 mm across",
            "Worked out: 53.61 mm round; 8 in 10 lie between 52.91 and 54.31 mm; to be worn beside the other rings",
            "The jeweller chose this size instead of the nearest to what was worked out",
            "Width: 2.5 mm",
            "Profile: court (domed inside and out)",
            "Height: 1.8 mm",
            "Finish: plain",
            "Metal: platinum 950",
            "Ring beside it: engagement ring, 2.6 mm at three and nine o’clock, 1.8 mm at the top, court, platinum 950, left ring finger",
            "Stack: 2.6 mm now, 5.2 mm with rings to come; free length of the finger 24 mm (measured)",
            "Measured Mon 26 Oct 2026: UK M½, 53.13 mm round the inside, 16.91 mm across, base of the left ring finger, with “narrow rings” (ring set, 3 mm wide, flat inside), cold hands",
            "",
            "Band for C.",
            "Hand and finger: left ring finger",
            "Order size: UK T½, 61.88 mm round the inside, 19.70 mm across",
            "Worked out: 61.80 mm round; 8 in 10 lie between 61.10 and 62.50 mm; to be worn alone",
            "Width: 6 mm",
            "Profile: flat court (domed inside, flat outside)",
            "Height: 1.8 mm",
            "Finish: plain",
            "Metal: platinum 950",
            "Rings beside it: none",
            "Measured Mon 26 Oct 2026: UK S½, 60.63 mm round the inside, 19.30 mm across, base of the left ring finger, with “narrow rings” (ring set, 3 mm wide, flat inside), normal hands",
            "Measured Tue 24 Nov 2026: 61.5 mm round, 61.50 mm round the inside, 19.58 mm across, joint of the left ring finger, with a ring stick, 6 mm wide, flat inside, read at the lower edge, warm hands, rings worn beside the gauge 2.6 mm and 2 mm",
            "Has never worn a ring",
            "",
            "Dates",
            "Wedding: Sat 22 May 2027",
            "Order by: Thu 1 Apr 2027",
            "In the couple’s hands by: Sat 8 May 2027",
            "Making: 15 to 20 working days, usually 17",
            "Engraving: 2 to 5 working days, usually 3",
            "plating: 4 working days",
            "Read back with the couple: Wed 25 Nov 2026",
            "",
            "Where a letter or number on your own gauge comes to other millimetres, the millimetres here count.",
        ],
    );
    assert_eq!(title(Couple(&record), Called::Initials), "Specification: I. & C.");
}

#[test]
fn what_the_couple_said_stands_apart_and_private_answers_stay() {
    let today = date("2026-11-20");
    let mut said = PreparationList::new(ItemId(5), today);
    for (spot, text) in [
        (AnswerKey::of(Ask::Name, Wearer::First), "Ines"),
        (AnswerKey::both(Ask::BudgetLeast), "900"),
        (AnswerKey::both(Ask::Else), "his mother must not know"),
        (AnswerKey::of(Ask::Engraving, Wearer::First), "22.5.27\u{202e} C"),
        (AnswerKey::of(Ask::Nickel, Wearer::Second), "yes"),
        (AnswerKey::ring(Ask::RingName, Wearer::First, 1), "signet ring"),
        (AnswerKey::ring(Ask::RingWidth, Wearer::First, 1), "4.1"),
    ] {
        said.set(spot, text.to_owned(), today);
    }
    let mut record = ines_and_callum();
    add(&mut record, vec![Write::set(Field::PreparationList(ItemId(5)), Value::PreparationList(Box::new(said)))]);
    let text = specification(Couple(&record), Called::Initials, date("2026-11-25"), House::default());
    let apart = text.split("Said by the couple, not measured by us\n").nth(1).unwrap();
    let apart: Vec<&str> = apart.lines().take_while(|line| !line.is_empty()).collect();
    assert_eq!(
        apart,
        [
            "C.: Nickel-free: yes, please",
            "I.: Engraving: 22.5.27 C",
            "I.: signet ring, 4.1 mm at three and nine o’clock",
        ]
    );
    for private in ["900", "mother", "Ines", "Callum"] {
        assert!(!text.contains(private), "{private} in\n{text}");
    }
}

#[test]
fn one_just_met_lists_all_that_is_missing_and_no_private_words() {
    let record = written(vec![
        Write::set(Field::Name(Wearer::First), Value::Text("Ada".into())),
        Write::set(Field::Name(Wearer::Second), Value::Text("Alex".into())),
        Write::set(Field::Met, Value::Text("Barn Lane".into())),
        Write::set(Field::Reach(ItemId(1)), Value::Text("07700 900123".into())),
        Write::set(Field::Note(ItemId(2)), Value::Text("argue about money".into())),
    ]);
    let text = specification(Couple(&record), Called::Initials, date("2026-11-25"), House::default());
    for private in ["Ada", "Alex", "Barn", "900123", "money"] {
        assert!(!text.contains(private), "{private} in\n{text}");
    }
    assert!(text.contains("Band for A., the first of the two\n"), "equal initials are told apart:\n{text}");
    let open = text.split("Still open\n").nth(1).unwrap();
    let open: Vec<&str> = open.lines().take_while(|line| !line.is_empty()).collect();
    assert_eq!(
        open,
        [
            "– wedding date: not done yet",
            "– reading of A., the first of the two: not done yet",
            "– hand and finger of A., the first of the two: not settled yet",
            "– reading of A., the second of the two: not done yet",
            "– hand and finger of A., the second of the two: not settled yet",
            "– rings of A., the first of the two: not done yet",
            "– rings of A., the second of the two: not done yet",
            "– band of A., the first of the two: not done yet",
            "– band of A., the second of the two: not done yet",
            "– order size of A., the first of the two: not done yet",
            "– order size of A., the second of the two: not done yet",
            "– dates: not done yet",
            "– read-back: not done yet",
        ]
    );
}

/// Two phones, one width each, and two wedding dates: nothing that is not settled reads as if it were.
#[test]
fn what_two_phones_say_differently_is_not_settled() {
    let start = ines_and_callum();
    let n = start.changes().len() as u64 + 1;
    let one = |by, width, wedding| {
        let mut record = start.clone();
        let writes = vec![
            Write::set(Field::Band(Wearer::First, BandField::Width), Value::Length(mm(width))),
            Write::set(Field::Wedding, Value::Wedding(Wedding::Day(date(wedding)))),
        ];
        let draft = record.draft(writes, Moment(0)).unwrap();
        record.add(Change::stamped(draft, Stamp { n, by: InstallationId(by) }));
        record
    };
    let both = merge(&one(1, 300, "2027-05-22"), &one(2, 350, "2027-06-05"));
    let text = specification(Couple(&both), Called::Initials, date("2026-11-25"), House::default());
    for line in [
        "Width: 3.5 mm – NOT SETTLED, see the end",
        "Wedding: Sat 5 Jun 2027 – NOT SETTLED, see the end",
        "– band of I.: not settled: 3.5 mm or 3 mm",
        "– wedding date: not settled: Sat 5 Jun 2027 or Sat 22 May 2027",
    ] {
        assert!(text.lines().any(|it| it == line), "{line}\n{text}");
    }
    for topic in [Topic::Band(Wearer::First), Topic::Wedding] {
        assert_eq!(checklist::state(Couple(&both), topic), State::Care(Care::Differs));
    }
    assert_eq!(checklist::state(Couple(&both), Topic::Band(Wearer::Second)), State::Done);
    // Chosen, it reads as ever.
    let mut chosen = both.clone();
    let width = both.get(&Field::Band(Wearer::First, BandField::Width)).cloned().unwrap();
    let wedding = both.get(&Field::Wedding).cloned().unwrap();
    let writes =
        vec![Write::set(Field::Band(Wearer::First, BandField::Width), width), Write::set(Field::Wedding, wedding)];
    let draft = chosen.draft(writes, Moment(0)).unwrap();
    chosen.add(Change::stamped(draft, Stamp { n: n + 1, by: InstallationId(1) }));
    assert!(
        !specification(Couple(&chosen), Called::Names, date("2026-11-25"), House::default()).contains("not settled: ")
    );
}
