//! The forms of a couple: what is recorded reads back as it was, and what is typed comes to the right writes.

use super::LEFT;
use crate::arbitrary::{OURS, new_couple, say};
use crate::shared::{date, mm};
use bandwright::book::change::Write;
use bandwright::book::couple::{Band, Couple, Head, Ring};
use bandwright::book::field::{Field, Stage};
use bandwright::book::id::ItemId;
use bandwright::book::practice::Practice;
use bandwright::book::record::Record;
use bandwright::book::value::{ExtraWork, FittedAt, OrderSize, OwnTerms, Recorded, Value, When};
use bandwright::book::verbs;
use bandwright::forms::couple::*;
use bandwright::forms::{Complaint, Texts, reading};
use bandwright::trade::band::alloys::ALLOYS;
use bandwright::trade::band::{Finish, Profile};
use bandwright::trade::dates::holidays::Region;
use bandwright::trade::dates::lead_times::Step as Work;
use bandwright::trade::dates::milestones::Milestone;
use bandwright::trade::dates::wedding::Wedding;
use bandwright::trade::limits::Whole;
use bandwright::trade::sizing::{Size, System};
use bandwright::trade::wearer::{Digit, Finger, Hand, Wearer};
use bandwright::words::{complaint as words, dates, format};
use chrono::{NaiveDate, NaiveTime};

const FIRST: Wearer = Wearer::First;

fn today() -> NaiveDate {
    date("2026-11-25")
}

pub(super) fn couple(writes: Vec<Write>) -> Record {
    let mut record = new_couple();
    say(&mut record, OURS, 1, verbs::meet("Ines".into(), Some("Callum".into()), Some("fair".into()), today()));
    say(&mut record, OURS, 2, writes);
    record
}

/// What a form saves of a record in which nobody has typed: nothing.
#[track_caller]
fn unchanged(record: &Record, writes: Vec<Write>) {
    assert!(!writes.is_empty(), "it writes what it starts with");
    assert_eq!(record.changed(writes), []);
}

#[test]
fn people_read_back_and_one_more_way_to_reach_them_is_new() {
    let (one, two) = (ItemId(1), ItemId(2));
    let record = couple(vec![
        verbs::reach(one, Some("07700 900123".into())),
        verbs::reach(two, Some("ines@example.org".into())),
    ]);
    let texts = people::start(Couple(&record));
    let keys = people::reach(2);
    assert_eq!(keys.len(), 3, "those there are and one more");
    let read = |texts: &Texts| people::read(texts, 2).unwrap().writes(&[one, two], ItemId(9));
    unchanged(&record, read(&texts));
    let changed = |key, text: &str| record.changed(read(&texts.clone().with(key, text)));
    assert_eq!(changed(keys[1], ""), [verbs::reach(two, None)]);
    assert_eq!(changed(keys[2], "07700 900456"), [verbs::reach(ItemId(9), Some("07700 900456".into()))]);
    assert_eq!(people::reach(6).len(), 6, "there are so many fields and no more");
}

#[test]
fn a_new_couple_starts_at_the_fair_and_is_asked_today() {
    let texts = new_couple::start(Some("spring fair")).with(people::FIRST_NAME, "Ines");
    let typed = new_couple::read(&texts, today()).unwrap();
    let met = verbs::meet("Ines".into(), None, Some("spring fair".into()), today());
    assert_eq!(typed.writes(ItemId(1), today()), met, "what nobody has answered is not written");
    let texts = texts.with(recorded::MAY_RECORD, "no").with(new_couple::REACH, "07700 900123");
    let writes = new_couple::read(&texts, today()).unwrap().writes(ItemId(1), today());
    let agreed = Recorded { agrees: false, asked: today() };
    let more = [verbs::reach(ItemId(1), Some("07700 900123".into())), verbs::record(Some(agreed))];
    assert_eq!(writes[met.len()..], more);
    let wrong = new_couple::start(None).with(new_couple::REACH, "ring me").with(wedding::WEDDING, "soon");
    let keys: Vec<_> = new_couple::read(&wrong, today()).unwrap_err().into_iter().map(|it| it.0).collect();
    assert_eq!(keys, [people::FIRST_NAME, new_couple::REACH, wedding::WEDDING], "all of them at once");
}

/// A wedding that was entered and is past by now is no mistake of whoever opens the form.
#[test]
fn a_wedding_in_the_past_stays_until_somebody_types() {
    let known = Some(Wedding::Day(date("2026-05-23")));
    let texts = wedding::start(known, dates::wedding);
    assert_eq!(wedding::read(&texts, known, dates::wedding, today()), Ok(known));
    let typed = texts.with(wedding::WEDDING, "23 May 2026");
    assert!(wedding::read(&typed, known, dates::wedding, today()).is_err(), "typed anew it is past");
    let month = typed.with(wedding::WEDDING, "May 2027");
    let read = wedding::read(&month, known, dates::wedding, today());
    assert_eq!(read, Ok(Some(Wedding::Month { year: 2027, month: 5 })));
    for known in [Wedding::Month { year: 2027, month: 5 }, Wedding::Year(2027), Wedding::NotYet] {
        // Every way to write a wedding can be read: a space behind it makes it typed.
        let texts = wedding::start(Some(known), dates::wedding);
        let typed = texts.clone().with(wedding::WEDDING, format!("{} ", texts.get(wedding::WEDDING)));
        assert_eq!(wedding::read(&typed, None, dates::wedding, today()), Ok(Some(known)));
    }
}

#[test]
fn whether_they_agree_and_where_they_stand_reads_back() {
    for agrees in [true, false] {
        let record = couple(vec![verbs::record(Some(Recorded { agrees, asked: date("2026-03-02") }))]);
        let texts = recorded::start(Couple(&record), today(), format::day);
        unchanged(&record, vec![verbs::record(recorded::read(&texts, today()).unwrap())]);
    }
    let record = couple(vec![]);
    let texts = recorded::start(Couple(&record), today(), format::day);
    assert_eq!(recorded::read(&texts, today()), Ok(None), "nobody was asked");
    let texts = stage::start(Couple(&record), today(), format::day);
    assert_eq!(stage::read(&texts, Stage::Enquiry, today()), Ok((Stage::Enquiry, today())));
    let moved = texts.with(stage::STAGE, "ordered").with(stage::SINCE, "1 Nov 2026");
    assert_eq!(stage::read(&moved, Stage::Enquiry, today()), Ok((Stage::Ordered, date("2026-11-01"))));
}

#[test]
fn an_appointment_reads_back() {
    let when = When { day: date("2026-02-28"), time: NaiveTime::from_hms_opt(9, 5, 0) };
    let mut writes = verbs::book(ItemId(3), when, Some("their kitchen".into()));
    writes.extend(verbs::conclude(ItemId(3), Some(bandwright::book::field::Outcome::Missed)));
    let record = couple(writes);
    let known = Couple(&record).appointment(ItemId(3)).unwrap();
    let texts = appointment::start(Some(&known), format::day);
    assert_eq!(appointment::read(&texts, ItemId(3), today()), Ok(known.clone()));
    unchanged(&record, appointment::writes(known));
    let fresh = appointment::start(None, format::day).with(appointment::DAY, "22 May");
    let fresh = appointment::read(&fresh, ItemId(4), today()).unwrap();
    assert_eq!((fresh.when.day, fresh.when.time, fresh.outcome), (date("2027-05-22"), None, None));
}

/// A ring with a figure of four decimals in each of its parts: none is rounded by being shown.
fn whole_ring() -> Ring {
    Ring {
        item: ItemId(5),
        name: Some("engagement ring".into()),
        finger: Some(Finger { hand: Hand::Right, digit: Digit::Middle }),
        shoulder_width: Some(mm(2.0625)),
        top_width: Some(mm(1.9375)),
        back_width: Some(mm(1.8125)),
        height: Some(mm(1.7125)),
        inside: Some(mm(16.5125)),
        profile: Some(Profile::D),
        metal: Some(&ALLOYS[3]),
        inscription: Some("always · 750".into()),
        head: Head { to_web: Some(mm(1.1125)), to_tip: Some(mm(1.2125)), underside: Some(mm(2.3125)) },
        stones: true,
        place: Some(Whole(2)),
        holds: true,
        planned: true,
    }
}

#[test]
fn a_ring_reads_back_to_the_last_figure() {
    let mut rings = vec![whole_ring(), Ring { finger: Some(LEFT), ..Ring::unknown(ItemId(6)) }];
    rings.extend(Profile::ALL.map(|profile| Ring { profile: Some(profile), ..whole_ring() }));
    rings.extend(ALLOYS.iter().map(|metal| Ring { metal: Some(metal), ..whole_ring() }));
    for known in rings {
        assert_eq!(ring::read(&ring::start(&known), known.item).as_ref(), Ok(&known));
        let record = couple(verbs::note_ring(FIRST, known.clone()));
        unchanged(&record, verbs::note_ring(FIRST, ring::read(&ring::start(&known), known.item).unwrap()));
    }
}

#[test]
fn a_new_ring_lies_beyond_those_there_are_and_on_the_bands_finger() {
    let right = Finger { hand: Hand::Right, digit: Digit::Ring };
    let mut writes = verbs::note_ring(FIRST, whole_ring());
    writes.push(verbs::choose_finger(FIRST, right));
    let record = couple(writes);
    let new = ring::new(Couple(&record), FIRST, ItemId(8));
    assert_eq!((new.place, new.finger, new.planned), (Some(Whole(2)), Some(right), false));
    let other = ring::new(Couple(&record), Wearer::Second, ItemId(8));
    assert_eq!((other.place, other.finger), (Some(Whole(1)), None));
    let read = ring::read(&ring::start(&other), ItemId(8)).unwrap();
    assert_eq!(read.finger, Some(LEFT), "where most bands go, and the form shows it");
}

#[test]
fn a_head_that_reaches_over_needs_its_height() {
    let texts = ring::start(&whole_ring()).with(ring::HEAD_UNDERSIDE, "");
    let complaints = ring::read(&texts, ItemId(5)).unwrap_err();
    assert_eq!(complaints, [(ring::HEAD_UNDERSIDE, Complaint::HeadIncomplete)]);
    let none = texts.with(ring::HEAD_TO_WEB, "").with(ring::HEAD_TO_TIP, "");
    assert_eq!(ring::read(&none, ItemId(5)).unwrap().head, Head::default());
}

#[test]
fn a_band_reads_back_with_what_its_profile_asks() {
    let figures = Band {
        width: Some(mm(3.0625)),
        profile: Some(Profile::Court),
        finish: Some(Finish::Textured),
        metal: Some(&ALLOYS[0]),
        height: Some(mm(1.8125)),
        dome: Some(mm(0.4125)),
        relief: Some(mm(0.1125)),
        place: Some(Whole(1)),
    };
    for known in [figures, Band { profile: None, dome: None, relief: None, ..figures }, Band::default()] {
        assert_eq!(band::read(&band::start(&known), known.place), Ok(known));
        let record = couple(verbs::choose_band(FIRST, known));
        unchanged(&record, verbs::choose_band(FIRST, band::read(&band::start(&known), known.place).unwrap()));
    }
    let flat = band::start(&figures).with(band::PROFILE, "flat");
    let read = band::read(&flat, None).unwrap();
    assert_eq!((read.dome, read.relief), (None, None), "what a flat band has not is not kept");
    assert_eq!(band::arcs(&flat), (false, false));
}

#[test]
fn a_band_that_cannot_be_made_is_said_beside_the_figure_to_change() {
    let known = Band {
        width: Some(mm(4.0)),
        profile: Some(Profile::D),
        height: Some(mm(1.5)),
        dome: Some(mm(1.9)),
        ..Band::default()
    };
    let texts = band::start(&known);
    let complaints = band::read(&texts, None).unwrap_err();
    assert_eq!(complaints[0].0, band::DOME);
    assert!(matches!(complaints[0].1, Complaint::Section(_)) && words::complaint(&complaints[0].1).ends_with('.'));
    assert_eq!(band::section(&texts), None);
    let drawn = band::section(&texts.with(band::DOME, "0.5")).unwrap();
    assert_eq!((drawn.width(), drawn.dome()), (mm(4.0), mm(0.5)));
}

fn ordered_size() -> OrderSize {
    let size = Size::new(System::Uk, 50).unwrap();
    OrderSize {
        size,
        exact: size.circumference(),
        from: size.circumference(),
        to: size.circumference(),
        in_stack: false,
        overruled: false,
        own: OwnTerms::default(),
        measure_again: false,
        settled: today(),
    }
}

#[test]
fn what_fitted_starts_with_the_size_that_was_ordered() {
    let record = couple(vec![Write::set(Field::OrderSize(FIRST), Value::OrderSize(ordered_size()))]);
    let texts = fitted::start(Couple(&record), FIRST);
    let read = fitted::read(&texts, System::Uk, today()).unwrap();
    assert_eq!(read.size.circumference(), ordered_size().size.circumference());
    assert!(!read.resized);
    let resized = FittedAt { resized: true, ..read };
    let record = couple(vec![verbs::fit(FIRST, Some(resized.clone()))]);
    let texts = fitted::start(Couple(&record), FIRST);
    // Of whatever system is shown first: 54 alone could be several sizes.
    for first in System::ALL {
        assert_eq!(fitted::read(&texts, first, today()), Ok(resized.clone()));
    }
}

#[test]
fn an_invitation_says_what_can_be_read_and_leaves_out_the_rest() {
    let past = verbs::book(ItemId(1), When { day: date("2026-11-24"), time: None }, None);
    let time = NaiveTime::from_hms_opt(10, 0, 0);
    let next = When { day: date("2026-12-05"), time };
    let record = couple([past, verbs::book(ItemId(2), next, None)].concat());
    let texts = invitation::start(Some(Couple(&record)), Region::Scotland, today(), format::day);
    let read = invitation::read(&texts, today());
    assert_eq!((read.first.as_deref(), read.second.as_deref()), (Some("Ines"), Some("Callum")));
    assert_eq!((read.when, read.region), (Some(next), Some(Region::Scotland)));
    let read = invitation::read(&texts.with(invitation::DAY, "soon"), today());
    assert_eq!(read.when, None, "a time without a day is no appointment");
}

// ---- The order as it goes ----

fn under_way(done: Vec<Write>) -> Record {
    couple([verbs::move_to(Stage::Ordered, date("2026-10-01")), done].concat())
}

fn fields_of(record: &Record) -> Vec<plan::Field> {
    let practice = crate::arbitrary::practice_of_nothing();
    plan::fields(Couple(record), Practice(&practice))
}

#[test]
fn an_order_as_it_goes_reads_back_and_keeps_the_days_of_its_milestones() {
    let making = ExtraWork::Usual(Work::Making);
    let mut writes = vec![verbs::finish(making, Some(date("2026-10-20")))];
    writes.push(verbs::arrive(Milestone::EngravingText, Some(date("2026-09-30"))));
    let record = under_way(writes);
    let fields = fields_of(&record);
    let ordered = Couple(&record).reached(Stage::Ordered);
    let texts = plan::start(Couple(&record), &fields, format::day);
    let read = |texts: &Texts| plan::read(texts, &fields, ordered, today());
    unchanged(&record, read(&texts).unwrap().writes(Couple(&record), today()));
    let collected = texts.clone().with(plan::REACHED, "engraving-text collect");
    let writes = record.changed(read(&collected).unwrap().writes(Couple(&record), today()));
    assert_eq!(writes, [verbs::arrive(Milestone::Collect, Some(today()))]);
    assert_eq!(fields_of(&couple(vec![])), [], "before it is ordered nothing is finished");
}

#[test]
fn a_step_is_finished_after_the_one_ahead_of_it_and_not_after_today() {
    let record = under_way(vec![]);
    let fields = fields_of(&record);
    let (key, step) = fields.first().unwrap().clone();
    let texts = plan::start(Couple(&record), &fields, format::day);
    let complaint = |typed: &str| {
        let read = plan::read(&texts.clone().with(key, typed), &fields, Some(date("2026-10-01")), today());
        read.err().map(|all| words::complaint(&all[0].1))
    };
    assert_eq!(step.work, ExtraWork::Usual(Work::Making));
    assert_eq!(complaint("30 Sept 2026").unwrap(), "Enter a day from Thu 1 Oct 2026 on: it was ordered then.");
    assert_eq!(complaint("26 Nov 2026").unwrap(), "Enter a day no later than today, Wed 25 Nov 2026.");
    assert_eq!(complaint("1 Oct 2026"), None);
}

// ---- Measuring ----

#[test]
fn of_the_bands_finger_nobody_waits_any_more() {
    let typed = reading::start(LEFT, "narrow".into()).with(reading::SIZE, "M½");
    let taken = reading::read(&typed, &super::known()).unwrap();
    let right = Finger { hand: Hand::Right, ..LEFT };
    let fields = |moves, chosen| {
        let writes = verbs::measure(FIRST, ItemId(1), taken.clone(), moves, chosen);
        assert!(writes.iter().all(|it| it.value.as_ref().is_none_or(|value| it.field.takes(value))));
        writes.into_iter().map(|write| write.field).collect::<Vec<_>>()
    };
    let (reading, again) = (|| Field::Reading(FIRST, ItemId(1)), Field::MeasureAgain(FIRST));
    assert_eq!(fields(false, Some(right)), [reading()], "of another finger");
    assert_eq!(fields(false, Some(LEFT)), [reading(), again.clone()]);
    assert_eq!(fields(true, Some(right)), [reading(), Field::Finger(FIRST), again]);
}
