//! Days, spreads and closures as they come about.

use super::{WORKS, day, words};
use bandwright::book::id::ItemId;
use bandwright::book::value::{ChosenExtra, DatesSettled, ExtraWork};
use bandwright::trade::dates::closed::{Repeats, Weekdays};
use bandwright::trade::dates::holidays::Region;
use bandwright::trade::dates::season::MonthSet;
use bandwright::trade::dates::spread::{CalendarDays, Spread, WorkingDays};
use bandwright::trade::dates::wedding::Wedding;
use bandwright::trade::measure::Percent;
use chrono::Weekday;
use proptest::collection::vec;
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::select;

pub fn months() -> impl Strategy<Value = MonthSet> {
    vec(1u32..=12, 1..12).prop_map(|months| MonthSet::of(months).unwrap())
}

pub fn week() -> impl Strategy<Value = Weekdays> {
    (0u8..128).prop_map(|week| {
        let days = (0..7u8).filter(|bit| week & (1 << bit) != 0);
        days.map(|bit| Weekday::try_from(bit).unwrap()).collect()
    })
}

pub fn repeats() -> impl Strategy<Value = Repeats> {
    select(vec![Repeats::Once, Repeats::SameDates, Repeats::SameWeekday])
}

pub fn wedding() -> impl Strategy<Value = Wedding> {
    prop_oneof![
        day().prop_map(Wedding::Day),
        (1i32..12_000, 1u32..13).prop_map(|(year, month)| Wedding::Month { year, month }),
        (0i32..12_000).prop_map(Wedding::Year),
        Just(Wedding::NotYet),
    ]
}

pub fn spread() -> impl Strategy<Value = Spread> {
    [0u16..=260, 0u16..=260, 0u16..=260].prop_map(|mut days| {
        days.sort();
        let [least, usual, most] = days.map(WorkingDays);
        Spread::new(least, usual, most).unwrap()
    })
}

pub fn dates() -> impl Strategy<Value = DatesSettled> {
    let work = prop_oneof![
        select(WORKS.to_vec()).prop_map(ExtraWork::Usual),
        any::<u128>().prop_map(|id| ExtraWork::Own(ItemId(id))),
    ];
    let extra = (work, of(words()), spread()).prop_map(|(work, name, spread)| ChosenExtra { work, name, spread });
    (select(Region::ALL.to_vec()), any::<u16>(), spread(), vec(extra, 0..3), of(0u16..101), day(), day()).prop_map(
        |(region, in_hand, making, extras, confidence, order_by, settled)| DatesSettled {
            confidence: confidence.map(Percent),
            region,
            in_hand: CalendarDays(in_hand),
            making,
            extras,
            order_by,
            settled,
        },
    )
}
