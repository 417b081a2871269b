//! Closures that come again, holidays that are switched, and the calendars of other places.

use crate::shared::date;
use bandwright::trade::dates::closed::{Calendar, CalendarError, Closure, MON_TO_FRI, OnBankHolidays, Repeats};
use bandwright::trade::dates::holidays::{HolidayName, Region};
use bandwright::trade::dates::places::{Place, PlaceDays};

/// From a wall calendar: the first Monday in August is the 2nd in 2027, the 7th in 2028 and the 5th in 2030.
#[test]
fn closures_come_again() {
    let closure = |from, to, repeats| Closure::new(date(from), date(to)).unwrap().repeating(repeats);
    let check = |closure: Closure, year: i32, expected: Option<(&str, &str)>| {
        assert_eq!(closure.in_year(year), expected.map(|(from, to)| (date(from), date(to))), "{year}");
    };
    let once = closure("2027-08-02", "2027-08-13", Repeats::Once);
    check(once, 2027, Some(("2027-08-02", "2027-08-13")));
    check(once, 2028, None);
    let fortnight = closure("2027-08-02", "2027-08-13", Repeats::SameWeekday);
    check(fortnight, 2026, None);
    check(fortnight, 2028, Some(("2028-08-07", "2028-08-18")));
    check(fortnight, 2030, Some(("2030-08-05", "2030-08-16")));
    assert!(
        fortnight.has(date("2028-08-18")) && !fortnight.has(date("2028-08-19")) && !fortnight.has(date("2028-08-04"))
    );
    // Over the year's end, and from a leap day on.
    let christmas = closure("2026-12-24", "2027-01-06", Repeats::SameDates);
    check(christmas, 2030, Some(("2030-12-24", "2031-01-06")));
    assert!(
        christmas.has(date("2031-01-06")) && christmas.has(date("2027-01-01")) && !christmas.has(date("2026-01-01"))
    );
    let leap = closure("2028-02-29", "2028-03-01", Repeats::SameDates);
    check(leap, 2029, Some(("2029-02-28", "2029-03-01")));
    check(leap, 2032, Some(("2032-02-29", "2032-03-01")));
    // A leap day inside it changes neither its first day nor its last; a leap day at its end is the 28th otherwise.
    let spring = closure("2027-02-15", "2027-03-01", Repeats::SameDates);
    check(spring, 2028, Some(("2028-02-15", "2028-03-01")));
    check(spring, 2029, Some(("2029-02-15", "2029-03-01")));
    let winter = closure("2027-12-20", "2028-02-29", Repeats::SameDates);
    check(winter, 2028, Some(("2028-12-20", "2029-02-28")));
    check(winter, 2031, Some(("2031-12-20", "2032-02-29")));
    // The fifth Monday of a month is the last where there are four.
    let fifth = closure("2027-03-29", "2027-03-29", Repeats::SameWeekday);
    check(fifth, 2028, Some(("2028-03-27", "2028-03-27")));
    // A whole year that comes again leaves no working day, which is said.
    let years = closure("2027-01-01", "2027-12-31", Repeats::SameDates);
    let shut = |years| Calendar::new(Region::Scotland, OnBankHolidays::Closed, MON_TO_FRI, vec![years]).unwrap();
    let day = date("2027-06-01");
    assert_eq!(shut(years).on_or_after(day), Err(CalendarError::NoWorkingDay { near: day }));
    // From March to 28 February a leap day is the one day left: a Friday in 2036.
    let to_february = closure("2027-03-01", "2028-02-28", Repeats::SameDates);
    assert_eq!(shut(to_february).on_or_after(day), Ok(date("2028-02-29")));
    assert_eq!(shut(to_february).on_or_after(date("2028-03-01")), Ok(date("2036-02-29")));
    // That is nothing to plan by, once a year is over; a year off that does not come again is.
    assert!(!shut(years).works_in_the_year_after(years.to()));
    assert!(!shut(to_february).works_in_the_year_after(date("2028-02-29")));
    let once = closure("2027-01-01", "2027-12-31", Repeats::Once);
    let year_off = Calendar::new(Region::Scotland, OnBankHolidays::Closed, MON_TO_FRI, vec![once]).unwrap();
    assert!(year_off.works_in_the_year_after(once.to()));
}

#[test]
fn each_holiday_can_be_switched() {
    let netherlands = || Calendar::usual(Region::Netherlands);
    let good_friday = date("2027-03-26");
    let liberation = date("2027-05-05");
    assert!(netherlands().is_working(good_friday) && netherlands().is_working(liberation));
    let switched = netherlands().switching(vec![
        (HolidayName::GoodFriday, true),
        (HolidayName::LiberationOther, true),
        (HolidayName::KingsDay, false),
    ]);
    assert!(!switched.is_working(good_friday) && !switched.is_working(liberation));
    // King's Day 2027 is a Tuesday.
    assert!(switched.is_working(date("2027-04-27")) && !netherlands().is_working(date("2027-04-27")));
    // Every fifth year 5 May is off unless it is switched off: 2025 was a Monday.
    assert!(!netherlands().is_working(date("2025-05-05")));
    assert!(netherlands().switching(vec![(HolidayName::Liberation, false)]).is_working(date("2025-05-05")));
}

#[test]
fn an_assay_office_is_shut_between_christmas_and_new_year() {
    let calendar = |place: Place| place.usual_days().calendar(Region::EnglandAndWales, vec![], vec![]).unwrap();
    // Tuesday 29 December 2026.
    assert!(!calendar(Place::AssayOffice).is_working(date("2026-12-29")));
    assert!(calendar(Place::Courier).is_working(date("2026-12-29")));
    assert!(calendar(Place::AssayOffice).is_working(date("2026-12-23")));
    let without = PlaceDays { shut_at_christmas: false, ..Place::AssayOffice.usual_days() };
    let without = without.calendar(Region::EnglandAndWales, vec![], vec![]).unwrap();
    assert!(without.is_working(date("2026-12-29")));
}
