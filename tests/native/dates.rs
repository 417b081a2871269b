//! Working days and the countdown: numpy's working days, countdowns worked by hand, and properties.
//! The rows and how they are made are in `reference/` and `reference/generate/dates.py`.

use crate::shared::{UK, date, is_at_length, rows};
use bandwright::trade::dates::closed::{
    Calendar, CalendarError, Closed, Closure, MON_TO_FRI, OnBankHolidays, Weekdays,
};
use bandwright::trade::dates::countdown::{
    DatesError, Inputs, MOST_STEPS, Resize, Slack, countdown, day_zero, if_ordered_today, is_past_cut_off,
};
use bandwright::trade::dates::forecast::{Leg, Way};
use bandwright::trade::dates::holidays::Region;
use bandwright::trade::dates::lead_times::{EXTRAS, IN_HAND, MAKING};
use bandwright::trade::dates::odds::Lasts;
use bandwright::trade::dates::places::{Place, Places};
use bandwright::trade::dates::season::Busy;
use bandwright::trade::dates::spread::{CalendarDays, Spread, SpreadError, WorkingDays};
use bandwright::trade::dates::wedding::Wedding;
use bandwright::trade::measure::Percent;
use bandwright::words;
use chrono::{Days, NaiveDate, NaiveTime, Weekday};

// ---- Working days ----

fn tue_to_sat() -> Weekdays {
    Weekdays::from_array([Weekday::Tue, Weekday::Wed, Weekday::Thu, Weekday::Fri, Weekday::Sat])
}

#[test]
fn working_days_are_numpys() {
    for region in UK {
        let rows = rows(&format!("working-days-{}.csv", region.code()));
        assert_eq!(rows.len(), 2000);
        for row in rows {
            let week = if row[0] == "tue-sat" { tue_to_sat() } else { MON_TO_FRI };
            let calendar = Calendar::new(region, OnBankHolidays::Closed, week, vec![]).unwrap();
            let (from, to) = (date(&row[1]), date(&row[2]));
            let [count, days]: [u16; 2] = [3, 4].map(|i| row[i].parse().unwrap());
            assert_eq!(calendar.count(from, to), Ok(WorkingDays(count)), "{region:?} {row:?}");
            assert_eq!(calendar.forward(from, WorkingDays(days)), Ok(date(&row[5])), "{region:?} {row:?}");
            assert_eq!(calendar.back(from, WorkingDays(days)), Ok(date(&row[6])), "{region:?} {row:?}");
        }
    }
}

/// Knuth's MMIX generator, the upper half of each number, as generate/dates.py draws.
fn dice(seed: u64) -> impl FnMut() -> u64 {
    let mut state = seed;
    move || {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        state >> 32
    }
}

/// 100,000 random triples over every region and week, summed by the hundred; at length all of them, otherwise every
/// fifth hundred.
#[test]
fn a_hundred_thousand_counts_are_numpys() {
    let rows = rows("working-days-sums.csv");
    assert_eq!(rows.len(), 1000);
    let (first, epoch) = (date("2013-01-01"), date("1970-01-01"));
    let span = (date("2038-12-31") - first).num_days() as u64 + 1;
    let number = |day: NaiveDate| (day - epoch).num_days();
    for row in rows.into_iter().step_by(if is_at_length() { 1 } else { 5 }) {
        let region = Region::ALL.into_iter().find(|it| it.code() == row[0]).unwrap();
        let mut dice = dice(row[1].parse().unwrap());
        let mask = dice() % 127 + 1;
        let week = (0..7u8).filter(|bit| mask >> bit & 1 == 1).map(|bit| Weekday::try_from(bit).unwrap());
        let calendar = Calendar::new(region, OnBankHolidays::Closed, week.collect(), vec![]).unwrap();
        let mut sums = [0, 0, 0];
        for _ in 0..100 {
            let from = first + Days::new(dice() % span);
            let to = from + Days::new(dice() % 500);
            let days = WorkingDays((dice() % 40) as u16);
            sums[0] += i64::from(calendar.count(from, to).unwrap().0);
            sums[1] += number(calendar.forward(from, days).unwrap());
            sums[2] += number(calendar.back(from, days).unwrap());
        }
        assert_eq!(sums.map(|sum| sum.to_string()), row[3..], "{row:?}");
    }
}

#[test]
fn a_closed_day_says_why() {
    let closure = |from, to| Closure::new(date(from), date(to)).unwrap();
    let closures = vec![closure("2027-08-02", "2027-08-13"), closure("2027-12-27", "2027-12-31")];
    let calendar = Calendar::new(Region::EnglandAndWales, OnBankHolidays::Closed, tue_to_sat(), closures).unwrap();
    let check = |day: &str, expected: &str| {
        let why =
            calendar.why_closed(date(day)).map(|why| words::dates::closed(Place::Workshop, why, Some("summer break")));
        assert_eq!(why.as_deref().unwrap_or("works"), expected, "{day}");
    };
    check("2027-08-02", "Workshop closed: summer break");
    check("2027-08-13", "Workshop closed: summer break");
    check("2027-08-14", "works"); // a Saturday
    check("2027-08-16", "Not a working day"); // a Monday
    check("2027-03-26", "Good Friday");
    check("2027-12-25", "Christmas Day"); // a Saturday that is worked otherwise; its substitute is Monday
    check("2027-12-28", "Workshop closed: summer break"); // Boxing Day's substitute, inside a closure
    assert_eq!(calendar.why_closed(date("2027-12-28")), Some(Closed::Closure(1)));
    assert_eq!(words::dates::closed(Place::Workshop, Closed::Closure(1), None), "Workshop closed");

    let open = Calendar::new(Region::Scotland, OnBankHolidays::Works, MON_TO_FRI, vec![]).unwrap();
    assert!(open.is_working(date("2026-06-15")) && open.is_working(date("2026-12-25")));
    assert!(!Calendar::usual(Region::Scotland).is_working(date("2026-06-15")));
    assert!(Calendar::usual(Region::NorthernIreland).is_working(date("2026-06-15")));
}

#[test]
fn a_calendar_without_working_days_is_an_error_and_no_endless_loop() {
    let region = Region::EnglandAndWales;
    let none = Calendar::new(region, OnBankHolidays::Closed, Weekdays::EMPTY, vec![]);
    assert_eq!(none.unwrap_err(), CalendarError::NoWeekdays);
    let day = date("2027-01-01");
    let backwards = Closure::new(day, date("2026-12-31")).unwrap_err();
    assert_eq!(backwards, CalendarError::Backwards { from: day, to: date("2026-12-31") });
    assert!(Closure::new(date("2027-01-01"), date("2027-12-31")).is_ok());
    assert!(Closure::new(date("2028-01-01"), date("2028-12-31")).is_ok());
    assert!(matches!(Closure::new(day, date("2028-01-02")), Err(CalendarError::ClosureTooLong { .. })));
    let many = vec![Closure::new(day, day).unwrap(); Calendar::MOST_CLOSURES + 1];
    let many = Calendar::new(region, OnBankHolidays::Closed, MON_TO_FRI, many);
    assert_eq!(many.unwrap_err(), CalendarError::TooManyClosures { limit: Calendar::MOST_CLOSURES });

    // Sixty years, closed from end to end.
    let whole_year = |year| Closure::new(date(&format!("{year}-01-01")), date(&format!("{year}-12-31"))).unwrap();
    let shut = (2000..2060).map(whole_year).collect();
    let shut = Calendar::new(region, OnBankHolidays::Closed, MON_TO_FRI, shut).unwrap();
    assert_eq!(shut.on_or_after(day), Err(CalendarError::NoWorkingDay { near: day }));
    assert_eq!(shut.forward(day, WorkingDays(1)), Err(CalendarError::NoWorkingDay { near: day }));
    assert_eq!(shut.count(day, date("2029-01-01")), Ok(WorkingDays(0)));

    let usual = Calendar::usual(region);
    assert_eq!(usual.forward(day, WorkingDays(u16::MAX)), Err(CalendarError::TooFar { from: day }));
    assert_eq!(usual.back(day, WorkingDays(u16::MAX)), Err(CalendarError::TooFar { from: day }));
    assert_eq!(usual.count(day, date("2099-01-01")), Err(CalendarError::TooFar { from: day }));
    assert!(usual.after(NaiveDate::MAX).is_err());
    assert!(usual.back(NaiveDate::MIN, WorkingDays(9)).is_err());
    assert!(usual.closed_days(NaiveDate::MIN, NaiveDate::MAX).len() < 11_000);
}

#[test]
fn a_spread_has_its_numbers_in_order() {
    let spread = |a, b, c| Spread::new(WorkingDays(a), WorkingDays(b), WorkingDays(c));
    assert!(spread(0, 0, 0).is_ok() && spread(1, 1, 260).is_ok());
    let check = |result: Result<Spread, SpreadError>, sentence: &str| {
        assert_eq!(words::dates::spread_error(result.unwrap_err()), sentence);
    };
    check(spread(10, 7, 20), "Enter a usual time no shorter than the least: 7 is less than 10 working days.");
    check(spread(1, 7, 6), "Enter a longest time no shorter than the usual: 6 is less than 7 working days.");
    check(spread(1, 7, 261), "The longest time must be between 0 and 260 working days.");
    assert_eq!(words::dates::spread(MAKING.days), "15 to 20 working days, usually 17");
    assert_eq!(words::dates::spread(spread(1, 1, 1).unwrap()), "1 working day");
}

// ---- The countdown ----

fn inputs(today: &str, wedding: Wedding) -> Inputs {
    Inputs {
        today: date(today),
        past_cut_off: false,
        wedding,
        way: way(Calendar::usual(Region::EnglandAndWales), &[MAKING.days]),
        engraving: None,
        in_hand: IN_HAND,
        confidence: Percent(100),
        resize: Resize { chance: Percent(0), wait: CalendarDays(0), legs: vec![] },
    }
}

/// Steps that are all done in one place.
fn way(calendar: Calendar, spreads: &[Spread]) -> Way {
    let leg = |spread: &Spread| Leg { place: Place::Workshop, lasts: Lasts::Spread(*spread) };
    Way { places: Places::one(calendar), legs: spreads.iter().map(leg).collect(), busy: Busy::NEVER }
}

fn usual() -> Calendar {
    Calendar::usual(Region::EnglandAndWales)
}

fn on(day: &str) -> Wedding {
    Wedding::Day(date(day))
}

/// Worked by hand on a wall calendar: 2027, England and Wales, Easter on 28 March, bank holidays on 3 and 31 May.
#[test]
fn countdowns_worked_by_hand() {
    let check = |today: &str, late: bool, wedding: &str, sentences: [&str; 2]| {
        let answer = countdown(&Inputs { past_cut_off: late, ..inputs(today, on(wedding)) }).unwrap();
        assert_eq!(answer.plan.order_by, date("2027-04-08"), "{today} {wedding}");
        let said = [words::bench::slack(answer.slack, None), words::dates::in_time(&answer)];
        assert_eq!(said, sentences, "{today} {wedding}");
    };
    // In hand by Saturday 8 May: from Friday 7 May twenty days back, less Monday 3 May, is Thursday 8 April.
    check(
        "2027-03-01",
        false,
        "2027-05-22",
        ["26 working days left", "Ordered now: over 99 % in hand by Sat 8 May 2027."],
    );
    check(
        "2027-04-08",
        false,
        "2027-05-22",
        ["the last day: no working day to spare", "Ordered now: over 99 % in hand by Sat 8 May 2027."],
    );
    check(
        "2027-04-08",
        true,
        "2027-05-22",
        [
            "1 working day too late",
            // The twentieth day, 3 of 42 chances, would be Monday 10 May.
            "Ordered now: 92 % in hand by Sat 8 May 2027.",
        ],
    );
    // Easter Sunday counts as Tuesday.
    check(
        "2027-03-28",
        false,
        "2027-05-22",
        ["7 working days left", "Ordered now: over 99 % in hand by Sat 8 May 2027."],
    );
    check(
        "2027-04-20",
        false,
        "2027-05-22",
        [
            "8 working days too late",
            // Twelve working days are left, and it takes fifteen.
            "Ordered now: under 1 % in hand by Sat 8 May 2027.",
        ],
    );
}

/// What the couple ask: not whether there is time for a try-on, but whether the rings are there on the day.
#[test]
fn here_before_the_wedding_is_another_chance_than_in_hand() {
    let shares = |today: &str| {
        let answer = countdown(&inputs(today, on("2027-05-22"))).unwrap();
        (answer.chance.percent(), answer.before_wedding.percent())
    };
    // Fifteen to twenty working days from Tuesday 20 April, round 3 May: 12 to 19 May.
    assert_eq!(shares("2027-04-20"), (Percent(0), Percent(100)));
    // From Friday 30 April fifteen end on 24 May.
    assert_eq!(shares("2027-04-30"), (Percent(0), Percent(0)));
    // From Monday 26 April fifteen to eighteen end by Friday 21 May: 33 of 42.
    assert_eq!(shares("2027-04-26"), (Percent(0), Percent(33 * 100 / 42)));
}

#[test]
fn extras_count_with_their_longest_times() {
    let plain = countdown(&inputs("2027-01-04", on("2027-05-22"))).unwrap();
    let steps: Vec<Spread> = [MAKING].iter().chain(&EXTRAS).map(|row| row.days).collect();
    let with = countdown(&Inputs { way: way(usual(), &steps), ..inputs("2027-01-04", on("2027-05-22")) }).unwrap();
    // 7 + 8 + 5 + 3 + 10 days more; between 17 February and 8 April lie Good Friday and Easter Monday.
    assert_eq!((plain.plan.order_by, with.plan.order_by), (date("2027-04-08"), date("2027-02-18")));
}

#[test]
fn a_wedding_known_by_month_or_year_counts_from_its_earliest_day() {
    let check = |today: &str, wedding: Wedding, counted: &str, sentence: Option<&str>| {
        let answer = countdown(&inputs(today, wedding)).unwrap();
        assert_eq!(answer.plan.wedding, date(counted));
        assert_eq!(words::dates::counted_from(wedding, answer.plan.wedding).as_deref(), sentence);
    };
    let may = Wedding::Month { year: 2027, month: 5 };
    check("2027-01-04", may, "2027-05-01", Some("Counted from Sat 1 May 2027, the earliest day it can be."));
    // Once it has begun it may be any day. Ordered then it is ready on 2 June at the latest, and a fortnight in hand.
    let last = "It may be any day now: ask for the day. Counted from Mon 31 May 2027, the last day it can be.";
    check("2027-05-01", may, "2027-05-31", Some(last));
    check("2027-05-10", may, "2027-05-31", Some(last));
    // Twenty working days from 4 January are over on 1 February.
    check(
        "2027-01-04",
        Wedding::Year(2027),
        "2027-02-15",
        Some(
            "It may be any day now: ask for the day. Counted from Mon 15 Feb 2027, the first that can still be in time.",
        ),
    );
    let begun = countdown(&inputs("2027-01-04", Wedding::Year(2027))).unwrap();
    assert_eq!((begun.plan.order_by, begun.slack), (date("2027-01-04"), Slack::Left(WorkingDays(0))));
    check(
        "2026-11-25",
        Wedding::Year(2027),
        "2027-01-01",
        Some("Counted from Fri 1 Jan 2027, the earliest day it can be."),
    );
    check("2027-01-04", on("2027-05-22"), "2027-05-22", None);
    assert_eq!(Wedding::Month { year: 2028, month: 2 }.latest(), Some(date("2028-02-29")));
    assert_eq!(Wedding::Month { year: 2028, month: 13 }.latest(), None);
}

#[test]
fn no_countdown_says_why() {
    let check = |inputs: Inputs, sentence: &str| {
        assert_eq!(words::dates::dates_error(countdown(&inputs).unwrap_err()), sentence);
    };
    let today = "2027-01-04";
    check(inputs(today, Wedding::NotYet), "Enter the wedding date, a month or a year to see when to order.");
    check(inputs(today, on("2027-01-03")), "Enter a wedding date from today on: Sun 3 Jan 2027 is past.");
    check(
        inputs(today, Wedding::Month { year: 2026, month: 12 }),
        "Enter a wedding date from today on: December 2026 is past.",
    );
    check(inputs(today, Wedding::Year(2026)), "Enter a wedding date from today on: some time in 2026 is past.");
    check(inputs(today, on("2049-01-01")), "Enter a wedding date within the next twenty-one years.");
    let longest = Spread::new(WorkingDays(0), WorkingDays(0), Spread::LONGEST).unwrap();
    let long = Inputs { way: way(usual(), &[longest; 11]), ..inputs(today, on("2027-05-22")) };
    check(long, "Shorten the times: together they come to more than ten years.");
    let many = Inputs { way: way(usual(), &[longest; MOST_STEPS + 1]), ..inputs(today, on("2027-05-22")) };
    check(many, "Count at most 32 steps: leave out some extras.");
    // Without a wedding date there is still an answer to "if ordered now".
    let ordered = if_ordered_today(&inputs("2027-03-27", Wedding::NotYet)).unwrap();
    assert_eq!(
        words::dates::finish(&ordered),
        "Ordered now, it is finished between Tue 20 Apr 2027 and Tue 27 Apr 2027, usually by Thu 22 Apr 2027."
    );
    assert_eq!(ordered.day_zero, date("2027-03-30"));
    assert!(matches!(countdown(&inputs("2027-01-04", on("2027-01-03"))), Err(DatesError::WeddingPast { .. })));
}

#[test]
fn calendar_errors_say_what_would_be_right() {
    let check = |error: CalendarError, sentence: &str| assert_eq!(words::dates::calendar_error(error), sentence);
    let (from, to) = (date("2027-08-02"), date("2027-08-01"));
    check(CalendarError::NoWeekdays, "Choose at least one day of the week that is worked.");
    check(CalendarError::Backwards { from, to }, "Enter a last day that is not before Mon 2 Aug 2027, the first.");
    check(CalendarError::ClosureTooLong { limit: CalendarDays(366) }, "Enter a closure of at most 366 days.");
    check(CalendarError::TooManyClosures { limit: 200 }, "Keep at most 200 closures: remove some that are past.");
    check(
        CalendarError::NoWorkingDay { near: from },
        "Shorten the closures: there is no working day within thirty years of Mon 2 Aug 2027.",
    );
    check(
        CalendarError::TooFar { from },
        "Shorten the closures or the times: the answer is more than thirty years off.",
    );
}

#[test]
fn projections_are_marked_only_where_they_count() {
    let check = |today: &str, wedding: &str, on_bank_holidays, expected: bool| {
        let calendar = Calendar::new(Region::Scotland, on_bank_holidays, MON_TO_FRI, vec![]).unwrap();
        let way = way(calendar, &[MAKING.days]);
        let answer = countdown(&Inputs { way, ..inputs(today, on(wedding)) }).unwrap();
        assert_eq!(answer.is_projection, expected, "{today} {wedding}");
    };
    check("2028-01-04", "2028-12-31", OnBankHolidays::Closed, false);
    check("2028-01-04", "2029-01-01", OnBankHolidays::Closed, true);
    check("2028-12-18", "2028-12-31", OnBankHolidays::Closed, true); // finished in January
    check("2028-01-04", "2029-01-01", OnBankHolidays::Works, false);
    assert_eq!(
        words::dates::projection(Region::Scotland),
        "Bank holidays after 2028 are a projection: they are not proclaimed yet."
    );
}

#[test]
fn the_cut_off_itself_still_counts_as_today() {
    let at = |h, m| NaiveTime::from_hms_opt(h, m, 0).unwrap();
    assert!(!is_past_cut_off(at(14, 30), at(14, 30)) && is_past_cut_off(at(14, 31), at(14, 30)));
    let calendar = Calendar::usual(Region::EnglandAndWales);
    let check = |day: &str, late, expected: &str| {
        assert_eq!(day_zero(&calendar, date(day), late), Ok(date(expected)), "{day}");
    };
    check("2027-03-25", false, "2027-03-25");
    check("2027-03-25", true, "2027-03-30"); // Easter between
    check("2027-03-26", false, "2027-03-30");
    check("2027-03-26", true, "2027-03-30");
    check("2026-12-31", true, "2027-01-04"); // New Year's Day and a weekend between
    check("2028-02-28", true, "2028-02-29");
}
