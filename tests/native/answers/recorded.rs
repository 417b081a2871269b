//! A tool that is opened from a couple reads from its texts what is recorded: the page of a couple and the tool cannot
//! say different things.

use super::{WHO, day, read_practice, taken};
use crate::arbitrary;
use bandwright::book::change::Write;
use bandwright::book::couple::{Band, Couple, Head, Ring};
use bandwright::book::field::Field;
use bandwright::book::fit_basis::FitBasis;
use bandwright::book::id::ItemId;
use bandwright::book::value::{ReadingTaken, Value};
use bandwright::book::verbs;
use bandwright::forms::{order, stack};
use bandwright::trade::band::{Finish, Profile, alloys::ALLOYS};
use bandwright::trade::fit::{Hands, Place};
use bandwright::trade::limits::Whole;
use bandwright::trade::measure::Length;
use bandwright::trade::stack::House;
use proptest::collection::vec;
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::select;

fn between(least: i64, most: i64) -> impl Strategy<Value = Option<Length>> {
    of((least..=most).prop_map(Length::tenthousandths))
}

fn band() -> impl Strategy<Value = Band> {
    let figures = (between(10_000, 120_000), between(12_000, 30_000), between(0, 8_000), between(0, 3_000));
    let choices = (of(select(Profile::ALL.to_vec())), of(select(Finish::ALL.to_vec())), of(select(&ALLOYS[..])));
    (figures, choices, of(0u16..5)).prop_map(|((width, height, dome, relief), (profile, finish, metal), place)| Band {
        width,
        profile,
        finish,
        metal: metal.map(|alloy| ALLOYS.iter().find(|it| it.code == alloy.code).unwrap()),
        height,
        dome,
        relief,
        place: place.map(Whole),
    })
}

fn ring() -> impl Strategy<Value = Ring> {
    let widths = (between(10_000, 90_000), between(10_000, 90_000), between(10_000, 90_000));
    let head = (between(1_000, 20_000), between(1_000, 20_000), between(5_000, 40_000));
    let more = (between(10_000, 30_000), between(140_000, 200_000), any::<(bool, bool)>());
    (widths, head, more, of(select(Profile::ALL.to_vec())), of("[a-z]{1,8}")).prop_map(
        |((shoulder_width, top_width, back_width), head, (height, inside, (stones, planned)), profile, name)| Ring {
            name,
            shoulder_width,
            top_width,
            back_width,
            height,
            inside,
            profile,
            head: Head { to_web: head.0, to_tip: head.1, underside: head.2 },
            stones,
            planned,
            ..Ring::unknown(ItemId(0))
        },
    )
}

fn reading() -> impl Strategy<Value = ReadingTaken> {
    let sizes = ["M", "R½", "US 6¼", "53.1 mm round", "17.19 mm across", "O+"];
    let how = (select(Hands::ALL.to_vec()), select(Place::ALL.to_vec()), vec(10_000i64..40_000, 0..3));
    (select(sizes.to_vec()), how).prop_map(|(size, (hands, place, beside))| ReadingTaken {
        hands,
        place,
        beside: beside.into_iter().map(Length::tenthousandths).collect(),
        ..taken(size)
    })
}

proptest! {
    #[test]
    fn of_a_stack(band in band(), rings in vec(ring(), 0..6), free in between(150_000, 300_000)) {
        let mut told = super::Told::new();
        for (at, ring) in rings.into_iter().enumerate() {
            let place = Some(Whole(at as u16 + 1));
            told.say(verbs::note_ring(WHO, Ring { item: ItemId(at as u128), place, ..ring }));
        }
        told.say(verbs::choose_band(WHO, band));
        told.say(vec![Write { field: Field::FreeLength(WHO), value: free.map(Value::Length) }]);
        let recorded = stack::StackTyped::recorded(Some((told.couple(), WHO)), &House::default());
        let (typed, complaints) = stack::read(&stack::start(&recorded, |ring| ring.name.clone().unwrap_or("a ring".into())));
        prop_assert_eq!(typed.is_whole, complaints.is_empty());
        prop_assert_eq!(typed.is_whole, recorded.is_whole, "{:?}", complaints);
        let rules = House::default().into();
        let found = [&typed, &recorded].map(|typed| bandwright::answers::stack::answer(typed, &rules));
        let [typed, recorded] = found.map(|found| (found.stack, found.at_top, found.pairs, found.place, found.curve));
        prop_assert_eq!(typed, recorded);
    }

    #[test]
    fn of_an_order_size(band in band(), readings in vec(reading(), 0..4)) {
        let mut record = arbitrary::new_couple();
        let mut n = 0;
        let mut say = |writes| {
            n += 1;
            arbitrary::say(&mut record, arbitrary::OURS, n, writes);
        };
        say(verbs::choose_band(WHO, band));
        for (item, reading) in (1..).zip(readings) {
            say(vec![Write::set(Field::Reading(WHO, ItemId(item)), Value::Reading(reading))]);
        }
        let couple = Couple(&record);
        read_practice(|practice| {
            let known = order::Known::of(Some((couple, WHO)), practice, day("2026-11-25"));
            let (typed, _) = order::read(&order::start(Some((couple, WHO)), practice), &known);
            let recorded = FitBasis::of(couple, WHO);
            let recorded = recorded.inputs(&known.rules);
            let typed = typed.basis.and_then(|basis| basis.inputs(&known.rules));
            // The tool counts a court while no profile is chosen.
            if couple.band(WHO).profile.is_some() {
                assert_eq!(typed, recorded);
            }
        });
    }
}
