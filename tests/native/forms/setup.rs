//! The forms of the settings: what is set reads back as it was, what is usual is not written, and what is wrong is said.

use crate::arbitrary::{OURS, practice_of_nothing, say};
use crate::shared::{date, mm, spread};
use bandwright::book::change::Write;
use bandwright::book::field::{Constant, Field};
use bandwright::book::id::{InstallationId, ItemId};
use bandwright::book::practice::{Practice, customary};
use bandwright::book::record::Record;
use bandwright::book::settings;
use bandwright::book::value::{Extra, NamedClosure, OwnGauge, TryOnBand};
use bandwright::forms::setup::*;
use bandwright::forms::{Complaint, Complaints, Texts};
use bandwright::trade::band::Bore;
use bandwright::trade::dates::closed::{Calendar, Closure, OnBankHolidays, Repeats, Weekdays};
use bandwright::trade::dates::holidays::{HolidayName, Region};
use bandwright::trade::dates::lead_times::Step as Work;
use bandwright::trade::dates::places::{Place, PlaceDays};
use bandwright::trade::dates::season::MonthSet;
use bandwright::trade::dates::spread::CalendarDays;
use bandwright::trade::fit::gauges::USUAL_SETS;
use bandwright::trade::fit::{CalibrationPoint, Gauge, GaugeKind, PerMm};
use bandwright::trade::measure::{Circumference, Length, Percent};
use bandwright::trade::sizing::{SizeAsRead, Stated, Step, System};
use bandwright::words::{complaint as words, format};
use chrono::{NaiveDate, NaiveTime, Weekday};

fn today() -> NaiveDate {
    date("2026-11-25")
}

fn set(writes: Vec<Write>) -> Record {
    let mut record = practice_of_nothing();
    say(&mut record, OURS, 1, writes);
    record
}

/// What a form saves where nobody has typed: nothing, neither where everything is set nor where nothing is.
#[track_caller]
fn unchanged(set: &Record, form: impl Fn(Practice<'_>) -> Result<Vec<Write>, Complaints>) {
    for record in [set, &practice_of_nothing()] {
        let writes = form(Practice(record)).unwrap();
        assert!(!writes.is_empty());
        assert_eq!(record.changed(writes), []);
    }
}

#[track_caller]
fn said<T: std::fmt::Debug>(read: Result<T, Complaints>) -> Vec<String> {
    words::complaints(&read.unwrap_err()).into_iter().map(|(key, said)| format!("{key}: {said}")).collect()
}

#[test]
fn names_read_back() {
    let phone = InstallationId(5);
    let record = set(vec![
        settings::fair().write(Some("spring fair".into())),
        settings::phone_name(phone).write(Some("A".into())),
    ]);
    unchanged(&record, |it| names::read_fair(&names::start_fair(it)).map(|it| vec![it]));
    unchanged(&record, |it| names::read_phone(&names::start_phone(it, phone), phone).map(|it| vec![it]));
    let blank = names::start_fair(Practice(&record)).with(names::FAIR, " ");
    assert_eq!(names::read_fair(&blank), Ok(settings::fair().write(None)));
}

#[test]
fn sizes_read_back() {
    let record = set(vec![settings::first_system().write(Some(System::Us)), settings::step().write(Some(Step::Whole))]);
    unchanged(&record, |it| Ok(sizes::read(&sizes::start(it))));
    let usual = sizes::start(Practice(&record)).with(sizes::FIRST_SYSTEM, "uk").with(sizes::STEP, "half");
    assert!(sizes::read(&usual).iter().all(|write| write.value.is_none()), "what is usual is not written");
}

fn point(says: f64, is: f64) -> CalibrationPoint {
    CalibrationPoint { says: Circumference(mm(says)), is: Circumference(mm(is)) }
}

#[test]
fn a_gauge_reads_back_with_its_calibration() {
    let stick = Gauge {
        kind: GaugeKind::Stick { taper: PerMm(mm(0.0625)) },
        width: mm(4.1875),
        bore: Bore::Domed,
        relief: Some(mm(0.0725)),
        step: mm(1.2767),
        own_error: mm(0.1563),
    };
    let calibration = vec![point(50.125, 50.0625), point(53.125, 53.0), point(60.0, 59.9375)];
    let known = OwnGauge { name: "the old stick".into(), gauge: stick, calibration };
    let set = OwnGauge { name: "set".into(), gauge: USUAL_SETS[0], calibration: Vec::new() };
    for known in [known, set] {
        for first in System::ALL {
            assert_eq!(gauge::read(&gauge::start(Some(&known)), first), Ok(known.clone()), "{first:?} first");
        }
    }
    let new = gauge::start(None).with(gauge::NAME, "new").with(gauge::WIDTH, "3");
    assert_eq!(gauge::read(&new, System::Uk).unwrap().gauge.kind, GaugeKind::RingSet);
    let flat = gauge::start(None).with(gauge::NAME, "x").with(gauge::WIDTH, "3").with(gauge::RELIEF, "wrong");
    assert!(gauge::read(&flat, System::Uk).is_ok(), "a flat gauge is not asked for its relief");
}

/// Of a point of the calibration both sizes are there, or neither; what is wrong with the one is said first.
#[test]
fn a_point_of_a_calibration_has_two_sizes() {
    let texts = gauge::start(None).with(gauge::NAME, "new").with(gauge::WIDTH, "3");
    let keys = calibration::POINTS[1];
    let half = texts.clone().with(keys.says.size, "M");
    let complaints = gauge::read(&half, System::Uk).unwrap_err();
    assert_eq!(complaints, [(keys.is.size, Complaint::BothOrNeither)]);
    let wrong = gauge::read(&texts.clone().with(keys.is.size, "??"), System::Uk).unwrap_err();
    assert_eq!(wrong.iter().map(|it| it.0).collect::<Vec<_>>(), [keys.is.size]);
    let both = half.with(keys.is.size, "N");
    assert_eq!(calibration::points_so_far(&both, System::Uk).len(), 1);
    assert_eq!(gauge::read(&both, System::Uk).unwrap().calibration.len(), 1);
    // 54 without a system is no clear size: it is asked which, and meanwhile it counts for nothing.
    let open = texts.with(keys.says.size, "7").with(keys.is.size, "N");
    assert_eq!(calibration::points_so_far(&open, System::Uk), []);
    assert_eq!(gauge::read(&open, System::Uk).unwrap_err(), [(keys.says.size, Complaint::WhichSize)]);
}

#[test]
fn a_band_of_the_tray_reads_back() {
    let size = |typed: &str, stated| SizeAsRead { stated, typed: typed.into() };
    let sizes = [
        size("17.25 mm", Stated::Diameter(bandwright::trade::measure::Diameter(mm(17.25)))),
        size("54", Stated::Circumference(Circumference(mm(54.0)))),
    ];
    for size in sizes {
        let known = TryOnBand {
            number: "12".into(),
            width: mm(2.0625),
            bore: Bore::Domed,
            height: Some(mm(1.7125)),
            size: size.clone(),
        };
        let texts = try_on::start(Some(&known));
        let read = try_on::read(&texts, System::Uk);
        assert_eq!(
            read.as_ref().map(|it| (it.size.circumference(), it.width)),
            Ok((size.circumference(), known.width))
        );
        assert_eq!(read.map(|it| TryOnBand { size: size.clone(), ..it }), Ok(known));
    }
}

#[test]
fn lead_times_read_back() {
    let record = set(vec![settings::lead_time(Work::Making).write(Some(spread("3/17/40")))]);
    unchanged(&record, |it| {
        lead_time::read_usual(&lead_time::start_usual(it, Work::Making), Work::Making).map(|write| vec![write])
    });
    let known = Extra { name: "stone from abroad".into(), spread: spread("0/1/260") };
    assert_eq!(lead_time::read_own(&lead_time::start_own(Some(&known))), Ok(known));
    let [least, usual, _] = lead_time::DAYS;
    let texts = lead_time::start_usual(Practice(&record), Work::Making).with(least, "18");
    let complaints = lead_time::read_usual(&texts, Work::Making).unwrap_err();
    assert_eq!(complaints[0].0, usual, "beside the one to change");
}

#[test]
fn the_days_of_the_workshop_read_back() {
    let weekdays: Weekdays = [Weekday::Tue, Weekday::Sat].into_iter().collect();
    let record = set(vec![
        settings::region().write(Some(Region::Scotland)),
        settings::weekdays().write(Some(weekdays)),
        settings::works_on_holidays().write(Some(true)),
        settings::cut_off().write(NaiveTime::from_hms_opt(14, 5, 0)),
        settings::days_in_hand().write(Some(CalendarDays(9))),
    ]);
    unchanged(&record, |it| workshop::read(&workshop::start(it)));
    let texts = workshop::start(Practice(&record)).with(workshop::WEEKDAYS, "").with(workshop::CUT_OFF, "25:00");
    let complaints = workshop::read(&texts).unwrap_err();
    assert_eq!(complaints.iter().map(|it| it.0).collect::<Vec<_>>(), [workshop::WEEKDAYS, workshop::CUT_OFF]);
}

#[test]
fn how_the_others_work_reads_back() {
    let days = PlaceDays { weekdays: Weekdays::ALL, on_bank_holidays: OnBankHolidays::Works, shut_at_christmas: true };
    for of in [Place::AssayOffice, Place::Courier] {
        let record = set(vec![settings::place_days(of).write(Some(days))]);
        unchanged(&record, |it| place::read(&place::start(it, of), of).map(|write| vec![write]));
    }
}

#[test]
fn a_holiday_that_is_switched_reads_back() {
    let record = set(vec![settings::holiday(HolidayName::GoodFriday).write(Some(false))]);
    let listed = holidays::listed(Region::EnglandAndWales, today());
    unchanged(&record, |it| Ok(holidays::read(&holidays::start(it, &listed), &listed)));
    let texts = holidays::start(Practice(&practice_of_nothing()), &listed);
    let kept = texts.get(holidays::KEPT).replace("good-friday", "");
    let writes = practice_of_nothing().changed(holidays::read(&texts.with(holidays::KEPT, kept), &listed));
    assert_eq!(writes, [settings::holiday(HolidayName::GoodFriday).write(Some(false))]);
}

#[test]
fn a_closure_reads_back_and_leaves_somebody_working() {
    let days = Closure::new(date("2027-08-02"), date("2027-08-13")).unwrap().repeating(Repeats::SameDates);
    let known = NamedClosure { name: "summer fortnight".into(), place: Place::Courier, days };
    let record = set(vec![settings::closure(ItemId(1)).write(Some(known.clone()))]);
    let read = |texts: &Texts| closure::read(texts, Practice(&record), ItemId(1), today());
    let texts = closure::start(Some(&known), format::day);
    assert_eq!(read(&texts), Ok(known));
    let last = texts.clone().with(closure::TO, "13 aug");
    assert_eq!(read(&last).unwrap().days.to(), date("2027-08-13"), "the next such day after the first");
    let wrong = texts.clone().with(closure::TO, "1 Aug 2027");
    assert_eq!(said(read(&wrong)), ["closure-to: Enter a last day that is not before Mon 2 Aug 2027, the first."]);
    let all_year = texts.with(closure::FROM, "1 Jan 2027").with(closure::TO, "31 Dec 2027");
    assert_eq!(
        said(read(&all_year)),
        ["closure-to: Shorten the closure: there would be no working day in the year after Fri 31 Dec 2027."],
    );
}

#[test]
fn so_many_closures_and_no_more() {
    let day = |n: u64| date("2027-01-01") + chrono::Days::new(n * 2);
    let one = |n: u64| NamedClosure {
        name: format!("day {n}"),
        place: Place::Workshop,
        days: Closure::new(day(n), day(n)).unwrap(),
    };
    let most = (1..).find(|n| {
        let days = (0..*n).map(|n| one(n).days).collect();
        Calendar::new(Region::EnglandAndWales, OnBankHolidays::Closed, Weekdays::ALL, days).is_err()
    });
    let most = most.unwrap() - 1;
    let record = set((0..most).map(|n| settings::closure(ItemId(n.into())).write(Some(one(n)))).collect());
    let texts = closure::start(Some(&one(most)), format::day);
    let complaints = closure::read(&texts, Practice(&record), ItemId(u128::MAX), today()).unwrap_err();
    assert_eq!(complaints[0].0, closure::NAME);
    assert!(closure::read(&texts, Practice(&record), ItemId(0), today()).is_ok(), "in the place of another");
}

#[test]
fn chances_read_back() {
    let record = set(vec![
        settings::confidence().write(Some(Percent(85))),
        settings::counts_today().write(Some(false)),
        settings::resize_chance().write(Some(Percent(7))),
        settings::try_on_after().write(Some(CalendarDays(4))),
        settings::busy_chance().write(Some(Percent(20))),
        settings::busy_longer().write(Some(Percent(50))),
        settings::busy_months().write(MonthSet::of([5, 6, 12])),
    ]);
    unchanged(&record, |it| chances::read(&chances::start(it)));
    let all = (1..=12).map(|month| month.to_string()).collect::<Vec<_>>().join(" ");
    for months in ["", &all] {
        let texts = chances::start(Practice(&record)).with(chances::MONTHS, months);
        let months = chances::read(&texts).unwrap().pop().unwrap();
        assert_eq!(months, settings::busy_months().write(None), "none and all are all the year");
    }
}

#[test]
fn the_figures_of_a_stack_read_back() {
    let record = set(vec![
        settings::free_length().write(Some(mm(21.3125))),
        settings::gap().write(Some(mm(0.1125))),
        settings::roomy().write(Some(Percent(61))),
        settings::full().write(Some(Percent(92))),
        settings::clearance().write(Some(mm(0.2125))),
        settings::catch().write(Some(mm(0.3125))),
        settings::thinnest().write(Some(mm(1.2125))),
    ]);
    unchanged(&record, |it| stack::read(&stack::start(it)));
    let texts = stack::start(Practice(&record)).with(stack::ROOMY, "95");
    assert_eq!(
        said(stack::read(&texts)),
        ["full: Enter a share for full that is above roomy and at most 100 %: now roomy is 95 % and full is 92 %."],
    );
}

#[test]
fn the_constants_of_the_fit_read_back() {
    // A tenth of a hundredth off what is customary.
    let own = |of: Constant| (of, customary(of).value + mm(if of == Constant::Warm { -0.0101 } else { 0.0101 }));
    let record = set(Constant::ALL.map(own).map(|(of, value)| settings::constant(of).write(Some(value))).into());
    unchanged(&record, |it| fit::read(&fit::start(it)));
    let warm = fit::start(Practice(&record)).with(fit::key(Constant::Warm), "0.6");
    let writes = record.changed(fit::read(&warm).unwrap());
    assert_eq!(writes, [settings::constant(Constant::Warm).write(Some(-mm(0.6)))], "warm hands are larger");
    let usual = fit::start(Practice(&record)).with(fit::key(Constant::Cold), "0.5");
    assert_eq!(record.changed(fit::read(&usual).unwrap()), [settings::constant(Constant::Cold).write(None)]);
    let offset = set(vec![settings::constant(Constant::Offset).write(Some(Length::tenthousandths(-3_125)))]);
    unchanged(&offset, |it| fit::read(&fit::start(it)));
}

/// Each setting takes what it is written with: a wrong pair stops the program when it is saved.
#[test]
fn a_setting_takes_what_it_is_written_with() {
    let forms = [
        sizes::read(&sizes::start(Practice(&practice_of_nothing())).with(sizes::STEP, "quarter")),
        chances::read(&chances::start(Practice(&practice_of_nothing())).with(chances::BUSY, "1")).unwrap(),
    ];
    for write in forms.into_iter().flatten() {
        assert!(matches!(write.field, Field::Practice(_)));
        assert!(write.value.as_ref().is_none_or(|value| write.field.takes(value)), "{write:?}");
    }
}
