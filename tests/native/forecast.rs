//! The distribution of dates: numpy's convolution where all steps share a calendar, enumeration where they do not, and
//! what always holds. The rows and how they are made are in `reference/` and `reference/generate/forecast.py`.

use crate::shared::{date, rows, spread};
use bandwright::trade::dates::closed::{Calendar, OnBankHolidays, Weekdays};
use bandwright::trade::dates::forecast::{Chances, Leg, Way, chances, chances_without_each, finish};
use bandwright::trade::dates::holidays::Region;
use bandwright::trade::dates::odds::Lasts;
use bandwright::trade::dates::places::{Place, Places};
use bandwright::trade::dates::season::{Busy, MonthSet};
use bandwright::trade::dates::spread::{Spread, WorkingDays};
use bandwright::trade::measure::Percent;
use chrono::{Days, NaiveDate, Weekday};
use proptest::prelude::*;

fn week(mask: &str) -> Weekdays {
    let days = mask.bytes().enumerate().filter(|(_, bit)| *bit == b'1');
    days.map(|(at, _)| Weekday::try_from(at as u8).unwrap()).collect()
}

fn region(code: &str) -> Region {
    Region::ALL.into_iter().find(|region| region.code() == code).unwrap()
}

fn busy(chance: &str, longer: &str) -> Busy {
    let share = |text: &str| Percent(text.parse().unwrap());
    Busy { chance: share(chance), longer: share(longer), months: MonthSet::ALL }
}

/// Holds a row's distribution against ours.
fn check(way: &Way, row: &[String]) {
    let from = date(&row[2]);
    let found = finish(way, from, from).unwrap();
    let chance: f64 = row[7].parse().unwrap();
    assert!((found.chance_by(date(&row[6])).share() - chance).abs() < 1e-11, "{row:?}");
    for (share, day) in [50, 80, 95].into_iter().zip(&row[8..11]) {
        assert_eq!(found.by(Percent(share)), date(day), "{share} % of {row:?}");
    }
    let sum: f64 = found.days().map(|(_, share)| share).sum();
    assert!((sum - 1.0).abs() < 1e-12);
}

#[test]
fn steps_on_one_calendar_are_numpys_convolution() {
    let rows = rows("forecast-one-calendar.csv");
    assert_eq!(rows.len(), 400);
    for row in rows {
        let calendar = Calendar::new(region(&row[0]), OnBankHolidays::Closed, week(&row[1]), vec![]).unwrap();
        let leg = |text| Leg { place: Place::Workshop, lasts: Lasts::Spread(spread(text)) };
        let legs = row[3].split(' ').map(leg).collect();
        check(&Way { places: Places::one(calendar), legs, busy: busy(&row[4], &row[5]) }, &row);
    }
}

#[test]
fn steps_on_many_calendars_are_all_ways_counted_one_by_one() {
    let rows = rows("forecast-many-calendars.csv");
    assert_eq!(rows.len(), 120);
    for row in rows {
        check_all(&row, MonthSet::ALL);
    }
}

#[test]
fn a_season_of_some_months_is_every_day_worked_one_by_one() {
    let rows = rows("forecast-busy-months.csv");
    assert_eq!(rows.len(), 100);
    for mut row in rows {
        let months = row.remove(6);
        check_all(&row, MonthSet::of(months.split(' ').map(|month| month.parse().unwrap())).unwrap());
    }
}

/// Holds the distribution of a row with places of its own, and its day of order, against ours.
fn check_all(row: &[String], months: MonthSet) {
    let calendar = |on, mask| Calendar::new(region(&row[0]), on, week(mask), vec![]).unwrap();
    let places = Places {
        workshop: calendar(OnBankHolidays::Closed, "1111100"),
        assay_office: calendar(OnBankHolidays::Closed, "0111110"),
        courier: calendar(OnBankHolidays::Works, "1111110"),
    };
    let place = |letter| match letter {
        'w' => Place::Workshop,
        'a' => Place::AssayOffice,
        _ => Place::Courier,
    };
    let legs = row[1].chars().zip(row[3].split(' '));
    let legs = legs.map(|(at, text)| Leg { place: place(at), lasts: Lasts::Spread(spread(text)) }).collect();
    let way = Way { places, legs, busy: Busy { months, ..busy(&row[4], &row[5]) } };
    check(&way, row);
    let by = date(&row[6]);
    let wanted = Percent(row[11].parse().unwrap());
    let order = chances(&way, by).unwrap().last(&way.places.workshop, wanted).unwrap();
    assert_eq!(order, date(&row[12]), "{row:?}");
}

prop_compose! {
    fn any_way()(
        spreads in proptest::collection::vec(([0u16..12, 0u16..12, 0u16..12], 0usize..3), 1..5),
        weeks in [1u8..128, 1u8..128, 1u8..128],
        chance in 0u16..=100,
        longer in 0u16..200,
        months in proptest::collection::vec(1u32..=12, 0..8),
        all_year in any::<bool>(),
        works in any::<bool>(),
    ) -> Way {
        let calendar = |bits: u8| {
            let days = (0..7u8).filter(|bit| bits & (1 << bit) != 0).map(|bit| Weekday::try_from(bit).unwrap());
            let on = if works { OnBankHolidays::Works } else { OnBankHolidays::Closed };
            Calendar::new(Region::Scotland, on, days.collect(), vec![]).unwrap()
        };
        let [workshop, assay_office, courier] = weeks.map(calendar);
        let legs = spreads.into_iter().map(|(mut days, place)| {
            days.sort();
            let [least, usual, most] = days.map(WorkingDays);
            Leg { place: Place::ALL[place], lasts: Lasts::Spread(Spread::new(least, usual, most).unwrap()) }
        });
        let months = if all_year { MonthSet::ALL } else { MonthSet::of(months).unwrap() };
        Way {
            legs: legs.collect(),
            places: Places { workshop, assay_office, courier },
            busy: Busy { chance: Percent(chance), longer: Percent(longer), months },
        }
    }
}

prop_compose! {
    /// Leap days and year ends are as likely as any other day.
    fn any_day()(near in any::<bool>(), year in 2024i32..2040, off in 0u64..366, edge in 0usize..4) -> NaiveDate {
        let edges = [(2, 28), (2, 29), (12, 31), (1, 1)];
        let (month, day) = edges[edge];
        let edge = NaiveDate::from_ymd_opt(year, month, day);
        let any = NaiveDate::from_ymd_opt(year, 1, 1).unwrap() + Days::new(off);
        edge.filter(|_| near).unwrap_or(any)
    }
}

proptest! {
    /// Forwards and backwards are written apart and have to agree.
    #[test]
    fn forwards_and_backwards_agree(way in any_way(), from in any_day(), ahead in 0u64..200) {
        let by = from + Days::new(ahead);
        let forwards = finish(&way, from, from).unwrap().chance_by(by).share();
        let backwards = chances(&way, by).unwrap().from(from).share();
        prop_assert!((forwards - backwards).abs() < 1e-9, "{forwards} {backwards}");
    }

    #[test]
    fn waiting_never_helps(way in any_way(), by in any_day()) {
        let chances = chances(&way, by).unwrap();
        let mut before = 1.0 + 1e-12;
        let mut day = way.surely_by(by).unwrap();
        prop_assert!(chances.from(day).is_at_least(Percent(100)));
        while day <= by {
            let now = chances.from(day).share();
            prop_assert!(now <= before + 1e-12, "{day}");
            before = now;
            day = day + Days::new(1);
        }
        prop_assert!(chances.from(by + Days::new(1)).is_none());
    }

    /// A step left out is a way without it, whichever way it is counted.
    #[test]
    fn each_step_left_out(way in any_way(), by in any_day()) {
        for (at, found) in chances_without_each(&way, by).unwrap().into_iter().enumerate() {
            let mut without = way.clone();
            without.legs.remove(at);
            let alone = chances(&without, by).unwrap();
            for back in 0..60 {
                let day = by - Days::new(back);
                prop_assert!((found.from(day).share() - alone.from(day).share()).abs() < 1e-9, "{at} {day}");
            }
            let last = |chances: &Chances| chances.last(&way.places.workshop, Percent(83)).unwrap();
            prop_assert_eq!(last(&found), last(&alone));
        }
    }

    /// A season of no month is none, one of all months is one without months, and each more takes as long or longer.
    #[test]
    fn more_busy_months_never_hurry(way in any_way(), from in any_day(), more in 1u32..=12) {
        let when = |months| {
            let way = Way { busy: Busy { months, ..way.busy }, ..way.clone() };
            let found = finish(&way, from, from).unwrap();
            [1, 25, 50, 75, 95, 100].map(|share| found.by(Percent(share)))
        };
        let never = Way { busy: Busy::NEVER, ..way.clone() };
        prop_assert_eq!(when(MonthSet::NONE), [1, 25, 50, 75, 95, 100].map(|share| finish(&never, from, from).unwrap().by(Percent(share))));
        let some = way.busy.months;
        let wider = MonthSet::of(some.months().chain([more])).unwrap();
        let days = [MonthSet::NONE, some, wider, MonthSet::ALL].map(when);
        for pair in days.windows(2) {
            prop_assert!(pair[0].iter().zip(&pair[1]).all(|(less, more)| less <= more), "{days:?}");
        }
    }

    #[test]
    fn more_confidence_never_means_ordering_later(way in any_way(), by in any_day()) {
        let chances = chances(&way, by).unwrap();
        let last = |share| chances.last(&way.places.workshop, Percent(share)).unwrap();
        let days: Vec<NaiveDate> = [50, 80, 90, 95, 99, 100].map(last).to_vec();
        prop_assert!(days.windows(2).all(|pair| pair[0] >= pair[1]), "{days:?}");
        prop_assert!(way.places.workshop.is_working(days[0]));
        let found = finish(&way, by, by).unwrap();
        prop_assert!(found.by(Percent(50)) <= found.by(Percent(80)) && found.by(Percent(80)) <= found.by(Percent(95)));
    }

    /// What is known to be still under way can only be finished from now on, and what is known narrows the rest.
    #[test]
    fn nothing_is_finished_before_today(way in any_way(), from in any_day(), late in 0u64..90) {
        let today = from + Days::new(late);
        let found = finish(&way, from, today).unwrap();
        prop_assert!(found.days().all(|(day, share)| day >= today && share > 0.0));
        let sum: f64 = found.days().map(|(_, share)| share).sum();
        prop_assert!((sum - 1.0).abs() < 1e-9);
    }
}
