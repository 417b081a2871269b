//! The distribution of dates and what follows from it, worked by hand; how long it takes; and what nobody should ask.

use crate::shared::{date, spread};
use bandwright::trade::dates::closed::{Calendar, MON_TO_FRI, OnBankHolidays, Weekdays};
use bandwright::trade::dates::countdown::{Inputs, Resize, costs, countdown, if_decided, if_ordered_today};
use bandwright::trade::dates::forecast::{Leg, Way, chances, finish};
use bandwright::trade::dates::holidays::Region;
use bandwright::trade::dates::lead_times::{EXTRAS, MAKING};
use bandwright::trade::dates::milestones::Milestone;
use bandwright::trade::dates::odds::{Chance, ENOUGH_ORDERS, Lasts};
use bandwright::trade::dates::places::{Place, Places};
use bandwright::trade::dates::season::{Busy, MonthSet};
use bandwright::trade::dates::spread::{CalendarDays, WorkingDays};
use bandwright::trade::dates::wedding::Wedding;
use bandwright::trade::measure::Percent;
use bandwright::words;
use chrono::NaiveDate;
use std::time::Instant;

fn leg(place: Place, text: &str) -> Leg {
    Leg { place, lasts: Lasts::Spread(spread(text)) }
}

fn england() -> Places {
    Places::one(Calendar::usual(Region::EnglandAndWales))
}

#[test]
fn chances_are_never_made_better_than_they_are() {
    let way = |text| Way { places: england(), legs: vec![leg(Place::Workshop, text)], busy: Busy::NEVER };
    let said = |text, by| {
        let found = finish(&way(text), date("2027-03-01"), date("2027-03-01")).unwrap();
        words::dates::chance(found.chance_by(date(by)))
    };
    // One day in 1, 2, 3 days: weights 1, 2, 1.
    assert_eq!(said("1/2/3", "2027-03-01"), "under 1 %");
    assert_eq!(said("1/2/3", "2027-03-02"), "25 %");
    assert_eq!(said("1/2/3", "2027-03-03"), "75 %");
    assert_eq!(said("1/2/3", "2027-03-04"), "over 99 %");
    // The first of thirty days falling from the usual: 29 of 435 is 6.9; the last is 1 of 435.
    assert_eq!(said("0/0/28", "2027-03-01"), "6 %");
    assert_eq!(said("0/28/28", "2027-03-01"), "under 1 %");
    assert_eq!(said("0/0/28", "2027-04-08"), "99 %");
}

#[test]
fn a_spread_weighs_as_written() {
    let weights = |text| Lasts::Spread(spread(text)).odds().weights;
    assert_eq!(weights("3/3/3"), [1.0]);
    assert_eq!(weights("0/0/3"), [4.0, 3.0, 2.0, 1.0]);
    assert_eq!(weights("2/4/4"), [1.0, 2.0, 3.0]);
}

#[test]
fn own_orders_count_once_there_are_enough() {
    let days = |days: &[u16]| days.iter().map(|days| WorkingDays(*days)).collect::<Vec<_>>();
    assert_eq!(Lasts::of_orders(days(&[12; ENOUGH_ORDERS - 1])), None);
    let lasts = Lasts::of_orders(days(&[14, 12, 12, 13, 20, 12, 14, 13, 12, 14])).unwrap();
    assert_eq!((lasts.least(), lasts.usual(), lasts.most()), (WorkingDays(12), WorkingDays(13), WorkingDays(20)));
    let odds = lasts.odds();
    assert_eq!(odds.weights, [4.0, 2.0, 3.0, 0.0, 0.0, 0.0, 0.0, 0.0, 1.0]);
    assert_eq!(words::dates::by_orders(&lasts, 10), "12 to 20 working days, usually 13, in 10 of your own orders");
    assert_eq!(lasts.longer(Percent(50)).most(), WorkingDays(30));
}

fn inputs(legs: Vec<Leg>, today: &str, wedding: &str) -> Inputs {
    Inputs {
        today: date(today),
        past_cut_off: false,
        wedding: Wedding::Day(date(wedding)),
        way: Way { places: england(), legs, busy: Busy::NEVER },
        engraving: None,
        in_hand: CalendarDays(14),
        confidence: Percent(95),
        resize: Resize {
            chance: Percent(20),
            wait: CalendarDays(3),
            legs: vec![leg(Place::Workshop, "5/5/5"), leg(Place::Courier, "1/1/1")],
        },
    }
}

/// In hand on Friday 7 May or Monday 10 May, each even; tried on on the 10th or 13th; a change takes six working days,
/// to the 18th or 21st, which is the day before the wedding: it fits either way. One day later it fails in half of 20 %.
#[test]
fn the_resize_branch_worked_by_hand() {
    let steps = || vec![leg(Place::Workshop, "1/1/1"), leg(Place::Workshop, "0/0/0")];
    let half = |today| {
        let mut inputs = inputs(steps(), today, "2027-05-22");
        // Two orders, one a working day longer than the other.
        inputs.way.legs[0].lasts = Lasts::Orders(vec![WorkingDays(1), WorkingDays(2)]);
        countdown(&inputs).unwrap()
    };
    let answer = half("2027-05-06");
    assert_eq!((answer.chance.share(), answer.fits.share()), (0.5, 1.0));
    let answer = half("2027-05-07");
    // Tuesday the 11th, tried on the 14th, changed by the 24th: too late. Monday the 10th is in time.
    assert_eq!((answer.chance.share(), answer.fits.share()), (0.0, 0.9));
}

/// Ten working days from Monday 4 January 2027 are over on the 18th, and in a busy season fifteen on the 25th; tried on
/// that day, a change takes four days, or six: to the 22nd, or 2 February. Nothing is made in one season and changed in
/// the other, which would be over on the 26th and the 29th.
#[test]
fn one_season_for_the_order_and_its_change_of_size() {
    let fits = |busy: u16, change: u16, wedding: &str| {
        let mut inputs = inputs(vec![leg(Place::Workshop, "10/10/10")], "2027-01-04", wedding);
        inputs.way.busy = Busy { chance: Percent(busy), longer: Percent(50), months: MonthSet::ALL };
        inputs.resize =
            Resize { chance: Percent(change), wait: CalendarDays(0), legs: vec![leg(Place::Workshop, "4/4/4")] };
        let share = countdown(&inputs).unwrap().fits.share();
        (share * 1e6).round() / 1e6
    };
    assert_eq!([0, 40, 100].map(|busy| fits(busy, 100, "2027-01-26")), [1.0, 0.6, 0.0]);
    // It is tried on in time in both seasons, and changed in time in one.
    assert_eq!(fits(40, 50, "2027-01-26"), 0.8);
    // A day less, and a busy season has not even the try-on.
    assert_eq!(fits(40, 50, "2027-01-25"), 0.6);
    // Twenty-one days are enough for both.
    assert_eq!([fits(40, 100, "2027-02-03"), fits(40, 100, "2027-02-02")], [1.0, 0.6]);
}

/// Planned on 26 November for 1 January, in hand by 18 December: 15 working days from the 26th are over on the 17th.
#[test]
fn who_decides_later_decides_for_the_same_wedding() {
    let making = || vec![Leg { place: Place::Workshop, lasts: Lasts::Spread(MAKING.days) }];
    let chances = |wedding: Wedding| {
        let inputs = Inputs { wedding, ..inputs(making(), "2026-11-26", "2027-01-01") };
        let plan = countdown(&inputs).unwrap().plan;
        assert_eq!((plan.wedding, plan.in_hand), (date("2027-01-01"), date("2026-12-18")));
        let chance = |day| {
            let (ordered, chance) = if_decided(&inputs, &plan, date(day)).unwrap();
            (ordered.day_zero, chance.percent())
        };
        ["2026-11-27", "2026-12-31", "2027-01-04"].map(chance)
    };
    // From Friday the 27th fifteen are over on the 18th: 4 of 42. Once 2027 has begun it is too late as it was before.
    let expected = [("2026-11-27", 9), ("2026-12-31", 0), ("2027-01-04", 0)];
    let expected = expected.map(|(day, share)| (date(day), Percent(share)));
    assert_eq!(chances(Wedding::Day(date("2027-01-01"))), expected);
    assert_eq!(chances(Wedding::Month { year: 2027, month: 1 }), expected);
    assert_eq!(chances(Wedding::Year(2027)), expected);
    // The cut-off of today is none of another day.
    let late = Inputs { past_cut_off: true, ..inputs(making(), "2026-11-26", "2027-01-01") };
    let plan = countdown(&late).unwrap().plan;
    let day_zero = |day| if_decided(&late, &plan, date(day)).unwrap().0.day_zero;
    assert_eq!((day_zero("2026-11-26"), day_zero("2026-11-30")), (date("2026-11-27"), date("2026-11-30")));
}

#[test]
fn what_an_extra_costs() {
    let legs = vec![leg(Place::Workshop, "10/10/10"), leg(Place::Workshop, "5/5/5")];
    let inputs = inputs(legs, "2027-04-26", "2027-05-22");
    let answer = countdown(&inputs).unwrap();
    // From Friday 7 May fifteen days back, less 3 May, is Thursday 15 April; ten days back is Thursday 22 April.
    assert_eq!(answer.plan.order_by, date("2027-04-15"));
    let found = costs(&inputs, &answer).unwrap()[1];
    assert_eq!((found.days, words::dates::chance(found.without)), (WorkingDays(5), "under 1 %".to_owned()));
    let earlier = Inputs { today: date("2027-04-22"), ..inputs };
    let answer = countdown(&earlier).unwrap();
    assert_eq!(words::dates::chance(answer.chance), "under 1 %");
    assert_eq!(words::dates::chance(costs(&earlier, &answer).unwrap()[1].without), "over 99 %");
}

/// Order by Thursday 15 April 2027.
#[test]
fn working_days_left_with_today_or_without() {
    let left = |today, past_cut_off, counts| {
        let inputs = Inputs { past_cut_off, ..inputs(vec![leg(Place::Workshop, "15/15/15")], today, "2027-05-22") };
        countdown(&inputs).unwrap().left(date(today), counts).map(|left| (left.days.0, left.today_among))
    };
    // Monday 12 April: Monday to Thursday, or Tuesday to Thursday.
    assert_eq!(left("2027-04-12", false, true), Some((4, true)));
    assert_eq!(left("2027-04-12", false, false), Some((3, false)));
    // Past the cut-off, or a Sunday: the days after it, whatever is set.
    assert_eq!(left("2027-04-12", true, true), Some((3, false)));
    assert_eq!(left("2027-04-11", false, false), Some((4, false)));
    assert_eq!(left("2027-04-15", false, true), Some((1, true)));
    assert_eq!(left("2027-04-16", false, true), None);
}

#[test]
fn milestones_worked_by_hand() {
    let legs = vec![leg(Place::Workshop, "10/10/10"), leg(Place::Workshop, "2/2/2"), leg(Place::Courier, "1/1/1")];
    let inputs = Inputs { engraving: Some(1), ..inputs(legs, "2027-03-01", "2027-05-22") };
    let plan = countdown(&inputs).unwrap().plan;
    let said: Vec<String> =
        plan.milestones.iter().map(|due| format!("{} {}", words::dates::milestone(due.what), due.by)).collect();
    assert_eq!(
        said,
        [
            // Thirteen working days back from Friday 7 May, less 3 May.
            "Decide what is made 2027-04-12",
            "Order 2027-04-19",
            // Three back from Friday 7 May, less the Monday.
            "Words to engrave fixed 2027-05-04",
            "In hand 2027-05-08",
            "Try on 2027-05-11",
            // Six back from Friday 21 May.
            "Last day to begin a change of size 2027-05-13",
        ]
    );
    // Half as long again in a busy season: three days of engraving and two of delivery, back from Friday 7 May, less
    // the Monday.
    let mut busy = inputs.clone();
    busy.way.busy = Busy { chance: Percent(4), longer: Percent(50), months: MonthSet::ALL };
    let milestones = countdown(&busy).unwrap().plan.milestones;
    let text = milestones.iter().find(|due| due.what == Milestone::EngravingText).unwrap();
    assert_eq!((text.by, milestones[1].by), (date("2027-04-29"), plan.order_by));
}

/// The bound is 5 ms in the page; a figure for whoever reads the report, and how it grows.
#[test]
fn how_long_a_forecast_takes() {
    let mut steps = vec![Leg { place: Place::Workshop, lasts: Lasts::Spread(MAKING.days) }];
    steps.extend(EXTRAS.iter().map(|row| Leg { place: Place::of(row.step), lasts: Lasts::Spread(row.days) }));
    for (legs, wedding) in [(2, "2027-09-01"), (6, "2027-09-01"), (6, "2029-03-01"), (6, "2033-03-01")] {
        let mut inputs = inputs(steps[..legs].to_vec(), "2027-03-01", wedding);
        inputs.way.busy =
            Busy { chance: Percent(20), longer: Percent(50), months: MonthSet::of([5, 6, 7, 12]).unwrap() };
        let begun = Instant::now();
        for _ in 0..20 {
            assert!(countdown(&inputs).unwrap().in_time());
        }
        let each = begun.elapsed() / 20;
        println!("figure: {legs} steps to {wedding}: {each:?}");
    }
}

/// Ten days from Monday 19 April 2027, half as long again in May: ten working days to the 30th (3 May is a holiday),
/// so nothing of it is in May; from the 26th five of April, then half of it in busy days: five times three halves is
/// eight, from Tuesday 4 to Friday 14 May.
#[test]
fn a_busy_month_worked_by_hand() {
    let mut way = Way { places: england(), legs: vec![leg(Place::Workshop, "10/10/10")], busy: Busy::NEVER };
    way.busy = Busy { chance: Percent(100), longer: Percent(50), months: MonthSet::of([5]).unwrap() };
    let ready = |from| finish(&way, date(from), date(from)).unwrap().by(Percent(50));
    assert_eq!(ready("2027-04-19"), date("2027-05-04"));
    assert_eq!(ready("2027-04-26"), date("2027-05-14"));
    // Fifteen of May from the 4th, Whitsun's Monday off.
    assert_eq!(ready("2027-05-04"), date("2027-05-25"));
    assert_eq!(MonthSet::of([5, 13]), None);
    let said = |months: &[u32]| words::planning::months(MonthSet::of(months.iter().copied()).unwrap());
    assert_eq!(said(&[5, 6, 7, 12]), "May to July, December");
    assert_eq!(said(&[1, 11, 12]), "November to January");
    assert_eq!(said(&[3, 4, 9]), "March, April, September");
    assert_eq!(said(&(1..=12).collect::<Vec<_>>()), "all the year");
}

#[test]
fn very_many_steps_are_no_numbers_beyond_writing() {
    let legs = vec![leg(Place::Workshop, "0/40/81"); 32];
    let mut way = Way { places: england(), legs, busy: Busy::NEVER };
    for months in [MonthSet::ALL, MonthSet::of([2, 6]).unwrap()] {
        way.busy = Busy { chance: Percent(30), longer: Percent(60), months };
        let found = finish(&way, date("2027-03-01"), date("2027-03-01")).unwrap();
        let sum: f64 = found.days().map(|(_, share)| share).sum();
        assert!((sum - 1.0).abs() < 1e-9, "{sum}");
        assert!(found.by(Percent(5)) < found.by(Percent(95)) && found.by(Percent(95)) < found.last());
        let by = found.by(Percent(80));
        let back = chances(&way, by).unwrap().from(date("2027-03-01")).share();
        assert!((back - found.chance_by(by).share()).abs() < 1e-9);
    }
}

#[test]
fn calendars_that_never_work_and_shares_above_all_are_no_endless_loop() {
    let mut way = Way { places: england(), legs: vec![leg(Place::Workshop, "1/2/3")], busy: Busy::NEVER };
    way.busy = Busy { chance: Percent(u16::MAX), longer: Percent(u16::MAX), months: MonthSet::ALL };
    let day = date("2027-03-01");
    assert!(finish(&way, day, day).is_ok() && chances(&way, day).is_ok());
    assert_eq!(Calendar::new(Region::Ireland, OnBankHolidays::Closed, Weekdays::EMPTY, vec![]).ok(), None);
    assert!(Calendar::new(Region::Ireland, OnBankHolidays::Closed, MON_TO_FRI, vec![]).is_ok());
    assert!(Chance::CERTAIN.is_at_least(Percent(100)) && !Chance::CERTAIN.is_at_least(Percent(101)));
    for (from, today) in [(NaiveDate::MAX, NaiveDate::MAX), (NaiveDate::MIN, NaiveDate::MIN), (day, NaiveDate::MIN)] {
        let _ = finish(&way, from, today);
        let _ = chances(&way, from);
    }
    let mut inputs = inputs(way.legs.clone(), "2027-03-01", "2027-05-22");
    inputs.in_hand = CalendarDays(u16::MAX);
    // 179 years in hand: an error, said in a sentence, and still an answer to "if ordered now".
    assert!(!words::dates::dates_error(countdown(&inputs).unwrap_err()).is_empty());
    assert!(if_ordered_today(&inputs).is_ok());
}
