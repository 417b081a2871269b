//! Readings of a finger: which count together, which contradict, and what the bands that were worn say.

use super::Told;
use crate::shared::{date, mm};
use bandwright::book::change::Write;
use bandwright::book::checklist::Topic;
use bandwright::book::couple::{Band, Couple, Ring};
use bandwright::book::field::{Field, PracticeField, Stage, Wish};
use bandwright::book::fitting::{
    bands_worn, contradicted, counted, gauge_off, joint, put_right, together, worn_beside,
};
use bandwright::book::id::{ItemId, RecordId};
use bandwright::book::late::what_fitted;
use bandwright::book::practice::Practice;
use bandwright::book::record::{Kind, Record};
use bandwright::book::today::today;
use bandwright::book::value::{FittedAt, OrderSize, OwnGauge, ReadingTaken, Value};
use bandwright::book::verbs;
use bandwright::trade::band::{Bore, Profile};
use bandwright::trade::fit::constants::STICK_TAPER;
use bandwright::trade::fit::{CalibrationPoint, Gauge, GaugeKind, Hands, Place, ReadAt, Sits};
use bandwright::trade::limits::Whole;
use bandwright::trade::measure::{Circumference, Length};
use bandwright::trade::sizing::{Size, SizeAsRead, Stated, System};
use bandwright::trade::wearer::{Digit, Finger, Hand, Wearer::First};
use bandwright::words::{book as say_book, finger as words};

const LEFT: Finger = Finger { hand: Hand::Left, digit: Digit::Ring };
const RIGHT: Finger = Finger { hand: Hand::Right, digit: Digit::Ring };

fn round(mm: f64) -> SizeAsRead {
    SizeAsRead { stated: Stated::Circumference(Circumference::from_mm(mm)), typed: String::new() }
}

/// A reading of the base of the left ring finger on a flat gauge of 3 mm, 3 October.
fn taken(mm_round: f64) -> ReadingTaken {
    let gauge = Gauge {
        kind: GaugeKind::RingSet,
        width: mm(3.0),
        bore: Bore::Flat,
        relief: None,
        step: mm(0.625),
        own_error: Length::ZERO,
    };
    ReadingTaken {
        size: round(mm_round),
        finger: LEFT,
        place: Place::Base,
        gauge: OwnGauge { name: "rings".into(), gauge, calibration: Vec::new() },
        read_at: ReadAt::LowerEdge,
        hands: Hands::Normal,
        beside: Vec::new(),
        sits: None,
        taken: date("2026-10-03"),
        at: None,
        left_out: false,
    }
}

/// A couple with these readings, and the finger of the last of them.
fn read(readings: &[ReadingTaken]) -> Told {
    let mut told = Told::new();
    for (item, reading) in (1..).zip(readings) {
        told.say(vec![
            Write::set(Field::Finger(First), Value::Finger(reading.finger)),
            Write::set(Field::Reading(First, ItemId(item)), Value::Reading(reading.clone())),
        ]);
    }
    told
}

/// A size settled as UK N, on 3 October.
fn settled(at: Circumference) -> OrderSize {
    OrderSize {
        size: Size::new(System::Uk, 52).unwrap(),
        exact: at,
        from: at,
        to: at,
        in_stack: false,
        overruled: false,
        own: Default::default(),
        measure_again: false,
        settled: date("2026-10-03"),
    }
}

fn practice() -> Record {
    Record::new(RecordId(0), Kind::Practice)
}

fn sizes(couple: Couple<'_>, place: Place) -> Vec<f64> {
    counted(couple, First, place).iter().map(|(_, taken)| taken.size.circumference().mm()).collect()
}

#[test]
fn left_and_right_base_and_joint_are_kept_apart() {
    let told = read(&[
        taken(53.0),
        ReadingTaken { finger: RIGHT, ..taken(55.0) },
        ReadingTaken { place: Place::Joint, ..taken(56.0) },
        ReadingTaken { left_out: true, ..taken(60.0) },
        ReadingTaken { place: Place::Joint, ..taken(57.0) },
        taken(53.5),
    ]);
    let couple = Couple(&told.record);
    assert_eq!(sizes(couple, Place::Base), [53.5, 53.0], "the newest first, and none that was left out");
    assert_eq!(sizes(couple, Place::Joint), [57.0, 56.0]);
    let found = joint(couple, First).unwrap();
    assert_eq!((found.passes_at, found.width, found.readings), (Circumference::from_mm(56.5), mm(3.0), 2));
    let found = together(couple, Practice(&practice()), First, Place::Base).unwrap();
    assert_eq!((found.plain, found.parts.len()), (Circumference::from_mm(53.25), 2));
    assert_eq!(couple.readings(First).len(), 6, "nothing is dropped");
}

/// A reading of another finger, taken to compare: the band stays where it was, and every line says so.
#[test]
fn a_reading_to_compare_is_told_from_those_that_count() {
    let compared = ReadingTaken { finger: RIGHT, beside: vec![mm(2.6)], ..taken(55.0) };
    let mut told = read(&[taken(53.0), ReadingTaken { place: Place::Joint, ..taken(56.0) }]);
    told.say(vec![Write::set(Field::Reading(First, ItemId(9)), Value::Reading(compared))]);
    let couple = Couple(&told.record);
    let topic = Topic::Finger(First);
    assert_eq!(couple.finger(First), Some(LEFT));
    assert_eq!(say_book::says(couple, topic).unwrap(), "53 mm, joint 56 mm");
    assert_eq!(
        say_book::in_full(couple, topic).unwrap(),
        "53 mm, rings 3 mm flat inside, normal hands, Sat 3 Oct 2026 · left ring finger, base; \
         56 mm, rings 3 mm flat inside, normal hands, Sat 3 Oct 2026 · left ring finger, joint; \
         55 mm, rings 3 mm flat inside, beside 2.6 mm, normal hands, Sat 3 Oct 2026 · right ring finger, base, \
         not the band’s finger: does not count"
    );
}

#[test]
fn a_joint_counts_in_the_bands_width_and_names_the_width_it_was_tried_in() {
    let wide = |round| {
        let mut wide = ReadingTaken { place: Place::Joint, ..taken(round) };
        wide.gauge.gauge.width = mm(8.0);
        wide
    };
    let band = Band { width: Some(mm(8.0)), profile: Some(Profile::Flat), ..Band::default() };
    let found =
        |told: &Told| joint(Couple(&told.record), First).map(|it| (it.passes_at.mm(), it.width.mm(), it.readings));
    let mut told = read(&[ReadingTaken { place: Place::Joint, ..taken(56.25) }]);
    told.say(verbs::choose_band(First, band));
    assert_eq!(found(&told), Some((56.25, 3.0, 1)), "there is no other");
    told.say(vec![Write::set(Field::Reading(First, ItemId(9)), Value::Reading(wide(57.5)))]);
    assert_eq!(found(&told), Some((57.5, 8.0, 1)), "that of a narrow gauge is no joint of a wide band");
    let said = words::joint(&joint(Couple(&told.record), First).unwrap(), System::Uk);
    assert_eq!(said, "Joint: passes at 57.50 mm, near UK Q, as read in 8 mm.");
}

/// A flat ring of 6 mm that was read at its middle reads half of 6 x 0.219 low, at the joint as at the base.
#[test]
fn a_joint_read_at_the_wrong_place_on_the_stick_is_put_right() {
    let on_stick = |place, read_at, bore| {
        let mut taken = ReadingTaken { place, read_at, ..taken(56.0) };
        let gauge = &mut taken.gauge.gauge;
        (gauge.kind, gauge.width, gauge.bore) = (GaugeKind::Stick { taper: STICK_TAPER.value }, mm(6.0), bore);
        taken
    };
    let passes = |read_at, bore| {
        let taken = on_stick(Place::Joint, read_at, bore);
        let shown = put_right(&taken, Practice(&practice())).map_or(56.0, |right| right.mm());
        let told = read(&[taken]);
        let found = joint(Couple(&told.record), First).unwrap().passes_at.mm();
        assert_eq!(found, shown);
        found
    };
    assert_eq!(passes(ReadAt::LowerEdge, Bore::Flat), 56.0);
    assert_eq!(passes(ReadAt::Centre, Bore::Flat), 56.657);
    assert_eq!(passes(ReadAt::Centre, Bore::Domed), 56.0);
    assert_eq!(passes(ReadAt::LowerEdge, Bore::Domed), 55.343);
}

/// Of three rings worn and one to come, the neighbours of the band are the worn ones on either side of its place.
#[test]
fn the_neighbours_of_a_band_are_the_rings_next_to_it() {
    let ring = |place, width, planned| Ring {
        place: Some(Whole(place)),
        shoulder_width: Some(mm(width)),
        planned,
        ..Ring::unknown(ItemId(place.into()))
    };
    let mut told = read(&[taken(53.0)]);
    for ring in [ring(1, 2.0, false), ring(2, 2.5, true), ring(3, 3.0, false), ring(4, 3.5, false)] {
        told.say(verbs::note_ring(First, ring));
    }
    told.say(verbs::note_ring(First, Ring { item: ItemId(9), finger: Some(RIGHT), ..ring(1, 9.0, false) }));
    let mut at = |place: Option<u16>| {
        told.say(verbs::choose_band(First, Band { place: place.map(Whole), ..Band::default() }));
        let widths = worn_beside(Couple(&told.record), First);
        widths.into_iter().map(Length::mm).collect::<Vec<_>>()
    };
    assert_eq!(at(None), [2.0]);
    assert_eq!(at(Some(0)), [2.0]);
    assert_eq!(at(Some(1)), [2.0, 3.0], "the ring to come between them is passed over");
    assert_eq!(at(Some(2)), [2.0, 3.0]);
    assert_eq!(at(Some(3)), [3.0, 3.5]);
    assert_eq!(at(Some(4)), [3.5]);
    assert_eq!(at(Some(7)), [3.5]);
}

#[test]
fn a_gauge_is_put_right_by_its_calibration() {
    let mut off = taken(53.0);
    let at = Circumference::from_mm;
    off.gauge.calibration = vec![CalibrationPoint { says: at(50.0), is: at(50.4) }];
    assert_eq!(gauge_off(&off.gauge, at(53.0)), mm(0.4));
    assert_eq!(gauge_off(&taken(53.0).gauge, at(53.0)), Length::ZERO);
    let told = read(&[off]);
    let found = together(Couple(&told.record), Practice(&practice()), First, Place::Base).unwrap();
    assert_eq!(found.plain, at(53.4));
}

#[test]
fn a_reading_that_contradicts_another_is_asked_about() {
    let told = read(&[taken(53.0), ReadingTaken { place: Place::Joint, ..taken(70.0) }]);
    let asked = |fresh: ReadingTaken| {
        let found = contradicted(Couple(&told.record), Practice(&practice()), First, &fresh);
        found.map(|(other, more)| words::contradicts(other, more))
    };
    assert_eq!(asked(taken(55.5)), None, "two UK letters are 2.5 mm");
    let sentence = "Check the size: put right it is 2.6 mm larger than the reading 53 mm of Sat 3 Oct 2026, more than two \
                    sizes; press again to keep it.";
    assert_eq!(asked(taken(55.6)).as_deref(), Some(sentence));
    assert!(asked(taken(50.0)).unwrap().contains("3 mm smaller"));
    assert_eq!(asked(ReadingTaken { finger: RIGHT, ..taken(60.0) }), None, "another finger");
    assert_eq!(asked(ReadingTaken { hands: Hands::Warm, ..taken(55.9) }), None, "warm hands read 0.5 large");
    assert_eq!(asked(ReadingTaken { sits: Some(Sits::Spins), ..taken(56.0) }), None, "a ring that spins is large");
}

/// Three flat bands of 6 mm read as 53.0 that were all resized to 54.25: each took 1.25 where the rule gives 0.75.
#[test]
fn bands_that_were_worn() {
    let mut told = read(&[taken(53.0)]);
    let band = Band { width: Some(mm(6.0)), profile: Some(Profile::Flat), ..Band::default() };
    let worn = |told: &Told| bands_worn([Couple(&told.record)].into_iter(), Practice(&practice()));
    told.say(verbs::choose_band(First, band));
    assert_eq!(worn(&told), [], "nobody has said what fitted");
    let fitted = FittedAt { size: round(54.25), resized: true, noted: date("2027-06-01") };
    told.say(vec![Write::set(Field::Fitted(First), Value::Fitted(fitted.clone()))]);
    assert_eq!(worn(&told).iter().map(|band| (band.apart, band.took)).collect::<Vec<_>>(), [(mm(3.0), mm(1.25))]);
    assert_eq!(words::fitted(&fitted), "resized to 54.25 mm round");
    told.say(vec![Write::set(Field::Example, Value::Yes(true))]);
    assert_eq!(worn(&told), [], "an invented couple teaches nothing");
}

/// What is read, or chosen, after the size was settled says nothing of the band that was made.
#[test]
fn a_band_that_was_worn_is_judged_by_what_it_was_made_from() {
    let mut told = read(&[taken(53.0)]);
    let band = |width| Band { width: Some(mm(width)), profile: Some(Profile::Flat), ..Band::default() };
    let worn = |told: &Told| bands_worn([Couple(&told.record)].into_iter(), Practice(&practice()));
    told.say(verbs::choose_band(First, band(6.0)));
    let at = Circumference::from_mm(53.75);
    told.say(vec![Write::set(Field::OrderSize(First), Value::OrderSize(settled(at)))]);
    told.say(verbs::choose_band(First, band(2.5)));
    let since = [taken(58.0), ReadingTaken { finger: RIGHT, ..taken(60.0) }];
    told.say(vec![Write::set(Field::Reading(First, ItemId(8)), Value::Reading(since[0].clone()))]);
    told.say(vec![
        Write::set(Field::Finger(First), Value::Finger(RIGHT)),
        Write::set(Field::Reading(First, ItemId(9)), Value::Reading(since[1].clone())),
    ]);
    let fitted = FittedAt { size: round(54.25), resized: true, noted: date("2027-06-01") };
    told.say(vec![Write::set(Field::Fitted(First), Value::Fitted(fitted))]);
    assert_eq!(worn(&told).iter().map(|band| (band.apart, band.took)).collect::<Vec<_>>(), [(mm(3.0), mm(1.25))]);
}

#[test]
fn a_finger_to_be_measured_again_is_on_today_and_wishes_are_kept() {
    let mut told = read(&[taken(53.0)]);
    let practice = practice();
    let page = |told: &Told| today([Couple(&told.record)].into_iter(), Practice(&practice), date("2026-10-10"));
    assert!(page(&told).measure_again.is_empty());
    told.say(vec![
        Write::set(Field::MeasureAgain(First), Value::Day(date("2026-10-17"))),
        Write::set(Field::Wish(First, Wish::Sport), Value::Yes(true)),
    ]);
    assert_eq!(page(&told).measure_again, [(told.record.id, First, date("2026-10-17"))]);
    assert_eq!(Couple(&told.record).wishes(First), [Wish::Sport]);
    told.say(vec![Write::set(Field::PutAway, Value::Day(date("2026-10-10")))]);
    assert!(page(&told).measure_again.is_empty());
}

#[test]
fn the_tray_is_in_the_order_of_its_sizes() {
    let mut record = practice();
    let band = |number: &str, at| bandwright::book::value::TryOnBand {
        number: number.into(),
        width: mm(4.0),
        bore: Bore::Flat,
        height: None,
        size: round(at),
    };
    let writes = [(1, band("7", 54.0)), (2, band("3", 51.0))]
        .map(|(item, band)| Write::set(Field::Practice(PracticeField::TryOn(ItemId(item))), Value::TryOn(band)));
    crate::arbitrary::say(&mut record, super::OURS, 1, writes.into());
    let numbers: Vec<&str> = Practice(&record).tray().iter().map(|(_, band)| band.number.as_str()).collect();
    assert_eq!(numbers, ["3", "7"]);
}

/// Four weeks after the bands were collected Today asks what fitted, until somebody says.
#[test]
fn what_fitted_is_asked_on_today_some_weeks_after() {
    let mut told = read(&[taken(53.0)]);
    let asked = |told: &Told, on| what_fitted([Couple(&told.record)].into_iter(), date(on)).0;
    let at = Circumference::from_mm(53.75);
    told.say(vec![
        Write::set(Field::OrderSize(First), Value::OrderSize(settled(at))),
        Write::set(Field::Stage, Value::Stage(Stage::Collected)),
        Write::set(Field::Reached(Stage::Collected), Value::Day(date("2027-05-01"))),
    ]);
    assert_eq!(asked(&told, "2027-05-28"), []);
    assert_eq!(asked(&told, "2027-05-29"), [(told.record.id, First, date("2027-05-29"))], "the other had no size");
    let fitted = FittedAt { size: round(53.75), resized: false, noted: date("2027-06-01") };
    told.say(vec![Write::set(Field::Fitted(First), Value::Fitted(fitted))]);
    assert_eq!(asked(&told, "2027-06-02"), []);
}
