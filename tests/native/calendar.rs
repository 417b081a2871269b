//! The calendar file: its lines against RFC 5545, what a couple's holds, and ten thousand random events, written for
//! two other people's parsers to read (`reference/generate/ics.py` and `ics.mjs`).

use crate::arbitrary::{OURS, say};
use crate::shared::date;
use bandwright::archive::calendar::{Event, write};
use bandwright::book::agenda::{self, What, agenda};
use bandwright::book::change::Write;
use bandwright::book::couple::Couple;
use bandwright::book::field::{Field, Outcome, Stage};
use bandwright::book::id::{ItemId, Moment, RecordId};
use bandwright::book::practice::Practice;
use bandwright::book::record::{Kind, Record};
use bandwright::book::schedule::OwnOrders;
use bandwright::book::value::{ChosenExtra, DatesSettled, ExtraWork, Value, When};
use bandwright::book::verbs;
use bandwright::trade::dates::holidays::Region;
use bandwright::trade::dates::lead_times::{MAKING, Step as Work, usual};
use bandwright::trade::dates::milestones::Milestone;
use bandwright::trade::dates::spread::CalendarDays;
use bandwright::trade::dates::wedding::Wedding;
use bandwright::words;
use chrono::{Days, NaiveDate, NaiveTime};
use serde_json::json;
use std::fmt::Write as _;

fn event(title: &str) -> Event {
    Event {
        uid: "a@b".into(),
        sequence: 3,
        day: date("2028-02-29"),
        time: None,
        title: title.into(),
        place: None,
        about: None,
        called_off: false,
        alarm: true,
    }
}

/// 25 November 2026, 09:20:00 UTC.
const NOW: Moment = Moment(1_795_598_400_000);

#[test]
fn a_whole_day_ends_on_the_next_not_included() {
    let file = write(&[event("Rings: try on")], NOW);
    let expected = "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Bandwright//EN\r\nCALSCALE:GREGORIAN\r\n\
        METHOD:PUBLISH\r\nBEGIN:VEVENT\r\nUID:a@b\r\nDTSTAMP:20261125T092000Z\r\nSEQUENCE:3\r\n\
        DTSTART;VALUE=DATE:20280229\r\nDTEND;VALUE=DATE:20280301\r\nTRANSP:TRANSPARENT\r\nSUMMARY:Rings: try on\r\n\
        STATUS:CONFIRMED\r\nBEGIN:VALARM\r\nACTION:DISPLAY\r\nDESCRIPTION:Rings: try on\r\nTRIGGER:-PT15H\r\n\
        END:VALARM\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n";
    assert_eq!(file, expected);
}

#[test]
fn an_hour_over_midnight_ends_the_next_day() {
    let late = Event { time: NaiveTime::from_hms_opt(23, 30, 0), day: date("2026-12-31"), ..event("x") };
    let file = write(&[late], NOW);
    assert!(file.contains("DTSTART:20261231T233000\r\nDTEND:20270101T003000\r\n"), "{file}");
}

#[test]
fn called_off_is_cancelled_without_an_alarm() {
    let file = write(&[Event { called_off: true, ..event("x") }], NOW);
    assert!(file.contains("STATUS:CANCELLED") && !file.contains("VALARM"));
}

/// RFC 5545, 3.1 and 3.3.11: 75 octets a line at most, no character torn, and unfolded the text is what it was.
#[test]
fn lines_fold_at_every_octet() {
    for letter in ["a", "é", "€", "😀"] {
        for before in 0..160 {
            let title = format!("{}{}", "x".repeat(before), letter.repeat(60));
            let file = write(&[event(&title)], NOW);
            assert!(file.split("\r\n").all(|line| line.len() <= 75), "{title}");
            assert!(!file.replace("\r\n", "").contains('\n'));
            assert!(file.replace("\r\n ", "").contains(&format!("SUMMARY:{title}\r\n")), "{title}");
        }
    }
}

#[test]
fn signs_that_mean_something_are_escaped() {
    let file = write(&[event("Ines, Callum; a\\b\nline\r\u{7}")], NOW);
    assert!(file.contains("SUMMARY:Ines\\, Callum\\; a\\\\b\\nline\r\n"), "{file}");
}

#[test]
fn any_day_and_any_moment_can_be_written() {
    for day in [NaiveDate::MIN, NaiveDate::MAX] {
        for moment in [i64::MIN, -1, 0, i64::MAX] {
            let file = write(&[Event { day, ..event("x") }], Moment(moment));
            assert!(file.ends_with("END:VCALENDAR\r\n"));
        }
    }
}

fn couple() -> Record {
    let mut record = Record::new(RecordId(7), Kind::Couple);
    let when = |on, hour| When { day: date(on), time: NaiveTime::from_hms_opt(hour, 0, 0) };
    let wedding = Value::Wedding(Wedding::Day(date("2027-05-22")));
    let acts = [
        verbs::meet("Ines".into(), Some("Callum".into()), None, date("2026-11-20")),
        vec![Write::set(Field::Wedding, wedding)],
        verbs::book(ItemId(1), when("2026-12-03", 18), Some("studio".into())),
        verbs::book(ItemId(2), when("2026-12-04", 9), None),
        verbs::conclude(ItemId(2), Some(Outcome::CalledOff)),
    ];
    for (writes, n) in acts.into_iter().zip(1..) {
        say(&mut record, OURS, n, writes).unwrap();
    }
    record
}

#[test]
fn a_couples_calendar_says_nothing_private_unless_wanted() {
    let (record, practice) = (couple(), Record::new(RecordId(0), Kind::Practice));
    let found = agenda(Couple(&record), Practice(&practice), &OwnOrders::default(), date("2026-11-25"));
    let said: Vec<String> =
        found.iter().map(|it| format!("{} {}", it.day, words::agenda::title(it.what, None))).collect();
    assert_eq!(
        said,
        [
            "2026-12-03 Rings: appointment",
            "2026-12-04 Rings: appointment",
            "2027-04-01 Rings: decide what is made",
            "2027-04-08 Rings: order",
            "2027-05-08 Rings: in hand",
            "2027-05-11 Rings: try on",
            // Seven working days back from Friday 21 May.
            "2027-05-12 Rings: last day to begin a change of size",
            "2027-05-22 Rings: wedding",
        ]
    );
    assert!(found[1].called_off && !found[0].called_off);
    let named = words::agenda::title(What::Milestone(Milestone::TryOn), Some("Ines & Callum"));
    assert_eq!(named, "Rings: try on, Ines & Callum");
}

#[test]
fn the_sequence_grows_with_every_change() {
    let mut record = couple();
    let practice = Record::new(RecordId(0), Kind::Practice);
    let before = agenda::sequence(Couple(&record), Practice(&practice));
    say(&mut record, OURS, 9, verbs::move_to(Stage::Ordered, date("2027-03-01"))).unwrap();
    assert!(agenda::sequence(Couple(&record), Practice(&practice)) > before);
}

/// What an earlier file brought and what does not stand any more is called off under the UID it had.
#[test]
fn what_fell_away_is_taken_out() {
    let mut record = couple();
    let practice = Record::new(RecordId(0), Kind::Practice);
    let on = |record: &Record, today: &str| {
        let found = agenda(Couple(record), Practice(&practice), &OwnOrders::default(), date(today));
        let (off, on): (Vec<_>, Vec<_>) = found.into_iter().partition(|it| it.called_off);
        let whats = |all: Vec<agenda::Entry>| all.into_iter().map(|it| it.what).collect::<Vec<_>>();
        (whats(on), whats(off))
    };
    let dates = |extras: Vec<ChosenExtra>| {
        let settled = date("2026-11-25");
        let (in_hand, order_by) = (CalendarDays(14), date("2027-04-01"));
        let region = Region::EnglandAndWales;
        let (making, confidence) = (MAKING.days, None);
        vec![Write::set(
            Field::Dates,
            Value::Dates(DatesSettled { region, in_hand, making, extras, confidence, order_by, settled }),
        )]
    };
    let engraving =
        ChosenExtra { work: ExtraWork::Usual(Work::Engraving), name: None, spread: usual(Work::Engraving).days };
    let text = What::Milestone(Milestone::EngravingText);
    let cancelled = What::Appointment(ItemId(2));
    assert_eq!(on(&record, "2026-11-25").1, [cancelled]);
    say(&mut record, OURS, 6, dates(vec![engraving])).unwrap();
    assert!(on(&record, "2026-11-25").0.contains(&text));
    say(&mut record, OURS, 7, dates(vec![])).unwrap();
    assert_eq!(on(&record, "2026-11-25").1, [cancelled, text]);
    // The day is open again: the plan stands, counted from the first of the month, and the wedding is taken out.
    let set = |wedding| vec![Write::set(Field::Wedding, Value::Wedding(wedding))];
    say(&mut record, OURS, 8, set(Wedding::Month { year: 2027, month: 5 })).unwrap();
    assert_eq!(on(&record, "2026-11-25").1, [cancelled, What::Wedding, text]);
    // A couple who went elsewhere, and came back.
    say(&mut record, OURS, 20, verbs::move_to(Stage::Lost, date("2026-11-25"))).unwrap();
    assert_eq!(on(&record, "2026-11-25").0, []);
    say(&mut record, OURS, 21, verbs::move_to(Stage::Booked, date("2026-11-25"))).unwrap();
    assert_eq!(on(&record, "2026-11-25").1, [cancelled, What::Wedding, text]);
    // No plan stands any more.
    say(&mut record, OURS, 22, set(Wedding::NotYet)).unwrap();
    say(&mut record, OURS, 23, verbs::cancel(ItemId(1))).unwrap();
    let (stands, off) = on(&record, "2026-11-25");
    assert_eq!(stands, []);
    assert_eq!(off.len(), 3 + Milestone::ALL.len(), "{off:?}");
    assert!(off.contains(&What::Appointment(ItemId(1))) && off.contains(&What::Wedding));
    // After the wedding its milestones are history: nothing takes them out.
    say(&mut record, OURS, 24, set(Wedding::Day(date("2027-05-22")))).unwrap();
    let (stands, off) = on(&record, "2027-05-23");
    assert_eq!(stands, [What::Wedding]);
    assert!(off.iter().all(|what| matches!(what, What::Appointment(_))), "{off:?}");
}

/// Ten thousand random events, and what they say as one line of JSON each, for the parsers to compare.
#[test]
fn ten_thousand_events_for_other_parsers() {
    const WORDS: [&str; 12] =
        ["ring", "Zoë", "O’Neill", "a;b", "c,d", "e\\f", "g\nh", "指輪", "חתונה", "💍", "x:y", "\"q\""];
    let mut state = 5u64;
    let mut dice = move |sides: u64| {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (state >> 33) % sides
    };
    let mut events = Vec::new();
    let mut expected = String::new();
    for n in 0..10_000 {
        let mut text = |most| {
            let words: Vec<&str> = (0..=dice(most)).map(|_| WORDS[dice(12) as usize]).collect();
            words.join(" ")
        };
        let (title, about) = (text(20), text(60));
        let time = NaiveTime::from_hms_opt(dice(24) as u32, dice(60) as u32, 0).filter(|_| dice(3) > 0);
        let event = Event {
            uid: format!("{n}@test"),
            sequence: dice(1000) as usize,
            day: date("2012-01-01") + Days::new(dice(20_000)),
            time,
            place: (dice(2) == 0).then(|| title.clone()),
            title,
            about: Some(about),
            called_off: dice(9) == 0,
            alarm: dice(2) == 0,
        };
        let starts = event.time.map_or(event.day.to_string(), |time| format!("{}T{time}", event.day));
        let ends = match event.time {
            Some(time) => (event.day.and_time(time) + chrono::TimeDelta::hours(1)).to_string().replace(' ', "T"),
            None => (event.day + Days::new(1)).to_string(),
        };
        let line = json!({
            "uid": event.uid, "sequence": event.sequence, "title": event.title, "place": event.place,
            "about": event.about, "starts": starts, "ends": ends,
            "status": if event.called_off { "CANCELLED" } else { "CONFIRMED" },
            "alarms": usize::from(event.alarm && !event.called_off),
        });
        writeln!(expected, "{line}").unwrap();
        events.push(event);
    }
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR"));
    let file = write(&events, NOW);
    assert_eq!(file.matches("BEGIN:VEVENT").count(), 10_000);
    std::fs::write(folder.join("calendar.ics"), file).unwrap();
    std::fs::write(folder.join("calendar.jsonl"), expected).unwrap();
}
