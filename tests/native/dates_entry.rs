//! What people type as a day, a wedding, a time, a number of days, and the one sentence each mistake gets.

use bandwright::trade::dates::entry::{DateEntryError, read_day, read_day_from, read_time, read_wedding};
use bandwright::trade::dates::wedding::Wedding;
use bandwright::words::{dates as words, dates::Asked, format};
use chrono::{Days, NaiveDate, NaiveTime, Timelike};
use proptest::prelude::*;

fn date(text: &str) -> NaiveDate {
    text.parse().unwrap_or_else(|_| panic!("not a date: {text}"))
}

/// A Wednesday.
fn today() -> NaiveDate {
    date("2026-11-25")
}

#[test]
fn days_are_read_as_people_write_them() {
    let check = |typed: &str, expected: &str| assert_eq!(read_day(typed, today()), Ok(date(expected)), "{typed}");
    for typed in [
        "22 May 2027",
        "22 may 27",
        "22/5/27",
        "22/05/2027",
        "22.5.2027",
        "22.05.27",
        "22-5-2027",
        "22 5 2027",
        "2027-05-22",
        "2027/5/22",
        "Sat 22 May",
        "Sat 22 May 2027",
        "Saturday, 22nd of May, 2027",
        "  the 22nd May 2027. ",
        "22may2027",
        "May 22 2027",
        "May 22nd, 2027",
        "22/5",
        "22.5.",
    ] {
        check(typed, "2027-05-22");
    }
    // The day comes first.
    check("3/4/2027", "2027-04-03");
    // Without a year: the next one, today included.
    check("25 Nov", "2026-11-25");
    check("24 Nov", "2027-11-24");
    check("1 Sept", "2027-09-01");
    check("29 Feb", "2028-02-29");
    assert_eq!(read_day("29 Feb", date("2096-03-01")), Ok(date("2104-02-29")));
    // The past is all right here.
    check("1 January 1900", "1900-01-01");
    check("24/11/2026", "2026-11-24");
    check("24/11/26", "2026-11-24");
}

/// A weekday is the next such day after today; where two days may be meant, both are named.
#[test]
fn days_are_named_by_how_near_they_are() {
    let check = |typed: &str, expected: &str| assert_eq!(read_day(typed, today()), Ok(date(expected)), "{typed}");
    for (typed, expected) in [
        ("today", "2026-11-25"),
        ("Tomorrow", "2026-11-26"),
        ("yesterday", "2026-11-24"),
        ("Thursday", "2026-11-26"),
        ("thu", "2026-11-26"),
        ("on Thurs.", "2026-11-26"),
        ("this Thursday", "2026-11-26"),
        ("Tuesday", "2026-12-01"),
        ("next Tue", "2026-12-01"),
        // It is one: the next is that of next week.
        ("next Wednesday", "2026-12-02"),
    ] {
        check(typed, expected);
    }
    let either = |first, second| Err(DateEntryError::EitherDay { first: date(first), second: date(second) });
    assert_eq!(read_day("next Thursday", today()), either("2026-11-26", "2026-12-03"));
    assert_eq!(read_day("Wednesday", today()), either("2026-11-25", "2026-12-02"));
    assert_eq!(
        words::date_entry(read_day("next Thursday", today()).unwrap_err(), Asked::Day),
        "Enter Thu 26 Nov 2026 or Thu 3 Dec 2026: it can be read as either."
    );
    assert_eq!(read_wedding("Saturday", today()), Ok(Wedding::Day(date("2026-11-28"))));
    for typed in ["next", "next week", "Thursday Friday", "next May", "tomorrow 3"] {
        assert_eq!(read_day(typed, today()), Err(DateEntryError::NotADate), "{typed}");
    }
    // The last day of a closure is counted from its first; tomorrow is tomorrow.
    let from = date("2027-08-02");
    assert_eq!(read_day_from("13 August", from, today()), Ok(date("2027-08-13")));
    assert_eq!(read_day_from("tomorrow", from, today()), Ok(date("2026-11-26")));
}

#[test]
fn weddings_are_read_as_exactly_as_they_are_known() {
    let check = |typed: &str, expected: Wedding| assert_eq!(read_wedding(typed, today()), Ok(expected), "{typed}");
    let may = Wedding::Month { year: 2027, month: 5 };
    for typed in
        ["May 2027", "may, 2027", "in May 2027", "5/2027", "05.2027", "2027-05", "May", "some time in May 2027"]
    {
        check(typed, may);
    }
    check("November", Wedding::Month { year: 2026, month: 11 });
    check("October", Wedding::Month { year: 2027, month: 10 });
    for typed in ["2027", "in 2027", "some time in 2027", "Sometime 2027"] {
        check(typed, Wedding::Year(2027));
    }
    check("2026", Wedding::Year(2026));
    for typed in ["not yet", "Not yet known", "don't know", "Don’t  know yet", "unknown", "not known."] {
        check(typed, Wedding::NotYet);
    }
    check("Sat 22 May 2027", Wedding::Day(date("2027-05-22")));
    check("25 November 2026", Wedding::Day(today()));
    check("25 November 2046", Wedding::Day(date("2046-11-25")));
}

#[test]
fn each_mistake_in_a_date_gets_its_own_sentence() {
    let day = |typed: &str, sentence: &str| {
        assert_eq!(words::date_entry(read_day(typed, today()).unwrap_err(), Asked::Day), sentence, "{typed}");
    };
    let wedding = |typed: &str, sentence: &str| {
        assert_eq!(words::date_entry(read_wedding(typed, today()).unwrap_err(), Asked::Wedding), sentence, "{typed}");
    };
    let (long, flood) = ("9".repeat(61), "5".repeat(10_000));
    let like = "Enter a date like 22 May 2027 or 22/5/2027.";
    for typed in
        ["", "   ", "soon", "💍", "22 May 💍", "0", "-1", "-5/2027", "16,5", "54", "1e5", "1/2/3", "22 May 202"]
    {
        day(typed, like);
    }
    for typed in ["22 22 22 22", "Sat Sun 22 May", "Saturday Sunday", "May June", "220527", "½", "th May", "not yet"] {
        day(typed, like);
    }
    day(&long, "Enter the date alone, like 22 May 2027.");
    day(&flood, "Enter the date alone, like 22 May 2027.");
    day("31 June 2027", "Enter a day that exists: there is no 31 June 2027.");
    day("29/2/2027", "Enter a day that exists: there is no 29 February 2027.");
    day("30 Feb", "Enter a day that exists: there is no 30 February.");
    day("0 May 2027", "Enter a day that exists: there is no 0 May 2027.");
    day("5/22/2027", "Enter the day first, then the month, like 22/5/2027: there is no month 22.");
    day("Sun 22 May 2027", "Check the day: 22 May 2027 is a Saturday, not a Sunday.");
    day("May 27", "Enter 27 May or May 2027: it can be read as either.");
    day("May 2027", "Enter the day as well, like 22 May 2027.");
    day("2027", "Enter the day as well, like 22 May 2027.");
    day("26 November 2046", "Enter a date no later than Sun 25 Nov 2046.");
    day("1/1/9999", "Enter a date no later than Sun 25 Nov 2046.");
    day("31 December 1899", "Enter a date no earlier than Mon 1 Jan 1900.");

    let like = "Enter a date like 22 May 2027, a month, a year, or “not yet”.";
    for typed in ["", "maybe", "💍", "-1", "16,5", "Sat May 2027", "12345"] {
        wedding(typed, like);
    }
    wedding(&flood, "Enter the date alone, like 22 May 2027.");
    wedding("31 June 2027", "Enter a day that exists: there is no 31 June 2027.");
    wedding("13/2027", "Enter the day first, then the month, like 22/5/2027: there is no month 13.");
    wedding("24 Nov 2026", "Enter a wedding date from today on: Tue 24 Nov 2026 is past.");
    wedding("October 2026", "Enter a wedding date from today on: October 2026 is past.");
    wedding("2025", "Enter a wedding date from today on: some time in 2025 is past.");
    wedding("2047", "Enter a date no later than Sun 25 Nov 2046.");
    wedding("December 2046", "Enter a date no later than Sun 25 Nov 2046.");
}

#[test]
fn a_date_in_the_past_is_an_error_of_its_own() {
    let past = Wedding::Day(date("2021-05-01"));
    assert_eq!(read_wedding("1 May 2021", today()), Err(DateEntryError::Past { wedding: past }));
    assert_eq!(read_day("1 May 2021", today()), Ok(date("2021-05-01")));
}

#[test]
fn times_are_read_as_people_write_them() {
    let check = |typed: &str, expected: &str| {
        assert_eq!(read_time(typed).map(words::time), Ok(expected.to_owned()), "{typed}");
    };
    for typed in ["14:30", "14.30", "1430", "14 30", "2.30pm", "2:30 pm", "2.30 p.m.", "2:30PM", "02:30pm"] {
        check(typed, "14:30");
    }
    check("14", "14:00");
    check("9", "09:00");
    check("9am", "09:00");
    check("10:05", "10:05");
    check("02:30", "02:30");
    check("12am", "00:00");
    check("12.15 pm", "12:15");
    check("noon", "12:00");
    check("0:00", "00:00");
    check("23:59", "23:59");

    let wrong = |typed: &str, sentence: &str| {
        assert_eq!(words::time_entry(read_time(typed).unwrap_err()), sentence, "{typed}");
    };
    for typed in
        ["", "  ", "soon", "💍", "-1", "14,30", "1/2", "14:3", "14:300", "143", "14:30:00", "pm", "noon pm", "😀😀"]
    {
        wrong(typed, "Enter a time like 14:30 or 2.30pm.");
    }
    wrong(&"1".repeat(10_000), "Enter the time alone, like 14:30.");
    for typed in ["24:00", "14:60", "14:30pm", "0am", "99"] {
        wrong(typed, "Enter a time between 00:00 and 23:59.");
    }
    wrong("3", "Enter 03:00 or 15:00: it can be read as either.");
    wrong("2.30", "Enter 02:30 or 14:30: it can be read as either.");
}

fn any_today() -> impl Strategy<Value = NaiveDate> {
    (0u64..60_000).prop_map(|days| date("2000-01-01") + Days::new(days))
}

proptest! {
    #[test]
    fn what_is_printed_can_be_read(today in any_today(), ahead in 0u64..365, far in 0u64..7_300) {
        let soon = today + Days::new(ahead);
        // 29 February without a year is the next one, and a day short of a year ahead is still the next one.
        prop_assert_eq!(read_day(&format::day_short(soon), today), Ok(soon));
        for wedding in [
            Wedding::Day(today + Days::new(far)),
            Wedding::Month { year: chrono::Datelike::year(&soon), month: chrono::Datelike::month(&soon) },
            Wedding::Year(chrono::Datelike::year(&soon)),
            Wedding::NotYet,
        ] {
            prop_assert_eq!(read_wedding(&words::wedding(wedding), today), Ok(wedding));
        }
    }

    #[test]
    fn a_time_that_is_printed_can_be_read(minutes in 0u32..1440) {
        let time = NaiveTime::from_num_seconds_from_midnight_opt(minutes * 60, 0).unwrap();
        prop_assert_eq!(read_time(&words::time(time)).map(|t| (t.hour(), t.minute())), Ok((minutes / 60, minutes % 60)));
    }

    #[test]
    fn nothing_typed_panics(typed in any::<String>(), today in any_today()) {
        let _ = (read_day(&typed, today), read_wedding(&typed, today), read_time(&typed));
    }

    #[test]
    fn nothing_like_a_date_panics(typed in "[0-9 ./,:adehmnprsty½💍-]{0,24}", near_end in any::<bool>()) {
        let today = if near_end { NaiveDate::MAX } else { NaiveDate::MIN };
        for today in [today, date("2026-11-25")] {
            let _ = (read_day(&typed, today), read_wedding(&typed, today), read_time(&typed));
        }
    }
}
