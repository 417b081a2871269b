//! What always holds of working days and the countdown, whatever goes in.

use crate::shared::date;
use bandwright::trade::dates::closed::{Calendar, Closure, MON_TO_FRI, OnBankHolidays};
use bandwright::trade::dates::countdown::{Countdown, Inputs, Resize, Slack, countdown, if_ordered_today};
use bandwright::trade::dates::forecast::{Leg, Way};
use bandwright::trade::dates::holidays::Region;
use bandwright::trade::dates::lead_times::MAKING;
use bandwright::trade::dates::odds::Lasts;
use bandwright::trade::dates::places::{Place, Places};
use bandwright::trade::dates::season::Busy;
use bandwright::trade::dates::spread::{CalendarDays, Spread, WorkingDays};
use bandwright::trade::dates::wedding::Wedding;
use bandwright::trade::measure::Percent;
use bandwright::words;
use chrono::{Days, NaiveDate, Weekday};
use proptest::prelude::*;

fn any_day() -> impl Strategy<Value = NaiveDate> {
    // 1995 to 2175.
    (0u64..65_700).prop_map(|days| date("1995-01-01") + Days::new(days))
}

prop_compose! {
    fn any_calendar()(
        region in proptest::sample::select(Region::ALL.to_vec()),
        works in any::<bool>(),
        week in 1u8..128,
        closures in proptest::collection::vec((any_day(), 0u64..40), 0..6),
    ) -> Calendar {
        let days = (0..7u8).filter(|bit| week & (1 << bit) != 0).map(|bit| Weekday::try_from(bit).unwrap());
        let on_bank_holidays = if works { OnBankHolidays::Works } else { OnBankHolidays::Closed };
        let closures = closures.into_iter().map(|(from, days)| Closure::new(from, from + Days::new(days)).unwrap());
        Calendar::new(region, on_bank_holidays, days.collect(), closures.collect()).unwrap()
    }
}

prop_compose! {
    fn any_spread()(mut days in [0u16..30, 0u16..30, 0u16..30]) -> Spread {
        days.sort();
        let [least, usual, most] = days.map(WorkingDays);
        Spread::new(least, usual, most).unwrap()
    }
}

prop_compose! {
    fn any_inputs()(
        today in any_day(),
        past_cut_off in any::<bool>(),
        ahead in 0u64..700,
        mut calendar in any_calendar(),
        closures in proptest::collection::vec((0u64..700, 0u64..20), 0..4),
        making in any_spread(),
        extras in proptest::collection::vec(any_spread(), 0..4),
        in_hand in 0u16..60,
    ) -> Inputs {
        let near = closures.into_iter().map(|(after, days)| {
            let from = today + Days::new(after);
            Closure::new(from, from + Days::new(days)).unwrap()
        });
        calendar = Calendar::new(
            calendar.region(), calendar.on_bank_holidays(), calendar.weekdays(), near.collect(),
        ).unwrap();
        let wedding = Wedding::Day(today + Days::new(ahead));
        Inputs {
            today,
            past_cut_off,
            wedding,
            way: way(calendar, std::iter::once(making).chain(extras)),
            engraving: None,
            in_hand: CalendarDays(in_hand),
            confidence: Percent(100),
            resize: Resize { chance: Percent(0), wait: CalendarDays(0), legs: vec![] },
        }
    }
}

fn way(calendar: Calendar, spreads: impl IntoIterator<Item = Spread>) -> Way {
    let leg = |spread| Leg { place: Place::Workshop, lasts: Lasts::Spread(spread) };
    Way { places: Places::one(calendar), legs: spreads.into_iter().map(leg).collect(), busy: Busy::NEVER }
}

fn finish_if_ordered(inputs: &Inputs, day: NaiveDate) -> NaiveDate {
    let then = Inputs { today: day, past_cut_off: false, ..inputs.clone() };
    if_ordered_today(&then).unwrap().most
}

proptest! {
    #[test]
    fn order_by_is_the_last_day(inputs in any_inputs()) {
        let answer: Countdown = countdown(&inputs).unwrap();
        prop_assert!(inputs.way.places.workshop.is_working(answer.plan.order_by));
        prop_assert!(finish_if_ordered(&inputs, answer.plan.order_by) <= answer.plan.in_hand);
        prop_assert!(finish_if_ordered(&inputs, answer.plan.order_by + Days::new(1)) > answer.plan.in_hand);
        prop_assert_eq!(answer.plan.in_hand + Days::new(inputs.in_hand.0.into()), answer.plan.wedding);
    }

    #[test]
    fn in_time_means_that_the_longest_finish_is(inputs in any_inputs()) {
        let answer = countdown(&inputs).unwrap();
        prop_assert_eq!(answer.in_time(), answer.if_today.most <= answer.plan.in_hand);
        let moved = match answer.slack {
            Slack::Left(days) => inputs.way.places.workshop.forward(answer.if_today.day_zero, days).unwrap() == answer.plan.order_by,
            Slack::Late(days) => {
                days >= WorkingDays(1)
                    && inputs.way.places.workshop.back(answer.if_today.day_zero, days).unwrap() == answer.plan.order_by
            }
        };
        prop_assert!(moved);
        prop_assert!(answer.if_today.least <= answer.if_today.usual && answer.if_today.usual <= answer.if_today.most);
    }

    #[test]
    fn closed_days_are_those_that_are_not_working(inputs in any_inputs()) {
        let answer = countdown(&inputs).unwrap();
        let last = answer.plan.wedding.max(answer.if_today.most);
        let closed: Vec<NaiveDate> = answer.closed_days.iter().map(|c| c.day).collect();
        let expected: Vec<NaiveDate> = inputs.today.iter_days().take_while(|d| *d <= last)
            .filter(|d| !inputs.way.places.workshop.is_working(*d)).collect();
        prop_assert_eq!(closed, expected);
    }

    #[test]
    fn adding_then_counting_agrees(calendar in any_calendar(), from in any_day(), days in 0u16..300) {
        let to = calendar.forward(from, WorkingDays(days)).unwrap();
        prop_assert!(calendar.is_working(to));
        prop_assert_eq!(calendar.count(from, to).unwrap(), WorkingDays(days));
        prop_assert_eq!(calendar.back(to, WorkingDays(days)).unwrap(), calendar.on_or_after(from).unwrap());
    }

    #[test]
    fn nothing_panics_at_the_edges(
        near_end in any::<bool>(), off in 0u64..900, ahead in any::<i32>(), month in any::<u32>(), in_hand in any::<u16>(),
    ) {
        let today = if near_end { NaiveDate::MAX - Days::new(off) } else { NaiveDate::MIN + Days::new(off) };
        for wedding in [Wedding::Day(NaiveDate::MAX), Wedding::Year(ahead), Wedding::Month { year: ahead, month }] {
            let inputs = Inputs {
                today,
                past_cut_off: near_end,
                wedding,
                way: way(
                    Calendar::new(Region::Scotland, OnBankHolidays::Closed, MON_TO_FRI, vec![]).unwrap(),
                    [MAKING.days],
                ),
                engraving: None,
                in_hand: CalendarDays(in_hand),
                confidence: Percent(95),
                resize: Resize { chance: Percent(10), wait: CalendarDays(in_hand), legs: vec![] },
            };
            if let Err(error) = countdown(&inputs) {
                prop_assert!(!words::dates::dates_error(error).is_empty());
            }
            prop_assert!(!words::dates::wedding(wedding).is_empty());
        }
    }
}
