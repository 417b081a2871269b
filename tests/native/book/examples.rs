//! The example book.

use super::{Told, met};
use crate::arbitrary::{OURS, say};
use crate::shared::date;
use bandwright::book::change::Write;
use bandwright::book::couple::Couple;
use bandwright::book::example::couples;
use bandwright::book::field::{Field, Stage};
use bandwright::book::id::ItemId;
use bandwright::book::leaving::{Stays, may_leave};
use bandwright::book::verbs::is_edited_example;
use bandwright::trade::wearer::Wearer;
use chrono::NaiveDate;
use std::collections::BTreeSet;

fn on(today: NaiveDate) -> Vec<Vec<Write>> {
    let mut n = 0;
    couples(today, || {
        n += 1;
        ItemId(n)
    })
}

#[test]
fn each_is_well_formed_on_any_day() {
    for today in [date("2026-10-03"), date("2028-02-29"), date("2026-12-31"), NaiveDate::MIN, NaiveDate::MAX] {
        let all = on(today);
        assert_eq!(all.len(), 4);
        let mut items = BTreeSet::new();
        for writes in all {
            for Write { field, value } in &writes {
                assert!(value.as_ref().is_none_or(|value| field.takes(value)), "{field:?} holds {value:?}");
                if let Field::Reach(item) | Field::Note(item) | Field::Reading(_, item) = field {
                    assert!(items.insert(*item), "{field:?} has an item of its own");
                }
            }
            let mut told = Told::new();
            told.say(writes);
            let couple = told.couple();
            assert!(couple.is_example() && couple.name(Wearer::First).is_some() && couple.met().is_some());
            assert!(couple.reached(couple.stage()).is_some());
            assert!(!is_edited_example(couple));
        }
    }
}

#[test]
fn they_stand_at_different_points_of_the_way() {
    let today = date("2026-10-03");
    let stages: Vec<Stage> = on(today)
        .into_iter()
        .map(|writes| {
            let mut told = Told::new();
            told.say(writes);
            told.couple().stage()
        })
        .collect();
    assert_eq!(stages, [Stage::Booked, Stage::Booked, Stage::Enquiry, Stage::Enquiry]);
}

#[test]
fn edited_it_stays_and_never_leaves() {
    let mut told = Told::new();
    told.say(on(date("2026-10-03")).remove(2));
    assert_eq!(may_leave(told.couple()), Err(Stays::Example));
    let edit = told.say(met("studio"));
    assert!(is_edited_example(told.couple()));
    assert_eq!(may_leave(told.couple()), Err(Stays::Example));
    // Taken back, it has still been in somebody's hands.
    told.undo(edit);
    assert!(is_edited_example(told.couple()));
    // No couple of the user's own is an edited example.
    let mut own = Told::new();
    own.say(met("fair"));
    say(&mut own.record, OURS, 9, met("studio"));
    assert!(!is_edited_example(Couple(&own.record)));
}
