//! The page of today, against dates that numpy has counted.

use super::practice;
use crate::arbitrary::{OURS, say};
use crate::shared::{UK, date, rows};
use bandwright::book::change::Write;
use bandwright::book::couple::Couple;
use bandwright::book::field::{Field, Outcome, PracticeField, Stage};
use bandwright::book::id::{ItemId, RecordId};
use bandwright::book::practice::Practice;
use bandwright::book::record::{Kind, Record};
use bandwright::book::today::{SHOWN, Today, today};
use bandwright::book::value::{Value, When};
use bandwright::book::verbs;
use bandwright::trade::dates::lead_times::Step as Work;
use bandwright::trade::dates::spread::{CalendarDays, Spread, WorkingDays};
use bandwright::trade::dates::wedding::Wedding;
use chrono::{NaiveDate, NaiveTime};

fn couple(id: u128, writes: Vec<Vec<Write>>) -> Record {
    let mut record = Record::new(RecordId(id), Kind::Couple);
    for (writes, n) in writes.into_iter().zip(1..) {
        say(&mut record, OURS, n, writes);
    }
    record
}

fn page(couples: &[Record], practice: &Record, on: &str) -> Today {
    today(couples.iter().map(Couple), Practice(practice), date(on))
}

fn ids<T>(list: &[(RecordId, T)]) -> Vec<u128> {
    list.iter().map(|(id, _)| id.0).collect()
}

fn wedding(on: &str) -> Vec<Write> {
    vec![Write::set(Field::Wedding, Value::Wedding(Wedding::Day(date(on))))]
}

fn visit(item: u128, on: &str, hour: Option<u32>) -> Vec<Write> {
    let time = hour.and_then(|hour| NaiveTime::from_hms_opt(hour, 0, 0));
    verbs::book(ItemId(item), When { day: date(on), time }, None)
}

/// Each row of numpy's: a wedding on `from`, nothing to be in hand before it, `days` of work, order by `back`.
#[test]
fn order_by_as_numpy_counts_back() {
    let mut checked = 0;
    for region in UK {
        for row in rows(&format!("working-days-{}.csv", region.code())) {
            let [week, from, _, _, days, _, back] = row.try_into().unwrap();
            let days: u16 = days.parse().unwrap();
            if week != "mon-fri" || days > Spread::LONGEST.0 {
                continue;
            }
            let (wedding_day, back): (NaiveDate, NaiveDate) = (date(&from), date(&back));
            let days = WorkingDays(days);
            let practice = practice(vec![
                (PracticeField::Region, Value::Region(region)),
                (PracticeField::DaysInHand, Value::Days(CalendarDays(0))),
                (PracticeField::LeadTime(Work::Making), Value::Spread(Spread::new(days, days, days).unwrap())),
            ]);
            let couples = [couple(1, vec![wedding(&from)])];
            let found = page(&couples, &practice, &back.to_string());
            assert_eq!(found.order_by, [(RecordId(1), back)], "{region:?}, {days:?} before {wedding_day}");
            if back < wedding_day {
                let late = page(&couples, &practice, &back.succ_opt().unwrap().to_string());
                assert_eq!(late.late_orders, [(RecordId(1), back)], "the day after, {region:?}");
                assert!(late.order_by.is_empty());
            }
            checked += 1;
        }
    }
    assert!(checked > 100, "{checked} rows");
}

#[test]
fn nearest_first_and_only_what_can_still_be_ordered() {
    let usual = practice(vec![]);
    let stage = |stage| verbs::move_to(stage, date("2027-01-04"));
    let away = vec![Write::set(Field::PutAway, Value::Day(date("2027-01-04")))];
    let mut blank = couple(9, vec![wedding("2027-05-22")]);
    let stamp = blank.changes()[0].stamp;
    crate::arbitrary::undo(&mut blank, OURS, 2, stamp);
    let couples = [
        couple(1, vec![wedding("2027-09-04")]),
        couple(2, vec![wedding("2027-05-22"), stage(Stage::Booked)]),
        couple(3, vec![wedding("2027-02-06")]),
        couple(4, vec![wedding("2027-01-30")]),
        couple(5, vec![wedding("2027-05-22"), stage(Stage::Ordered)]),
        couple(6, vec![wedding("2027-05-22"), stage(Stage::Collected)]),
        couple(7, vec![wedding("2027-05-22"), stage(Stage::Lost)]),
        couple(8, vec![wedding("2027-05-22"), away]),
        blank,
        couple(10, vec![vec![Write::set(Field::Wedding, Value::Wedding(Wedding::NotYet))]]),
        couple(11, vec![wedding("2027-01-02")]),
    ];
    let found = page(&couples, &usual, "2027-01-11");
    assert_eq!(ids(&found.order_by), [2, 1]);
    assert_eq!(ids(&found.late_orders), [4, 3]);
    // The worked example of the countdown: 22 May 2027, twenty working days, a fortnight in hand.
    assert_eq!(found.order_by[0].1, date("2027-04-08"));
}

/// Of thousands the nearest are shown, and all are counted.
#[test]
fn of_a_long_list_the_nearest_are_shown() {
    let usual = practice(vec![]);
    // Today and the fourteen days after it, seven on each; and as many before it, further and further away.
    let day_after = |days: i64| (date("2027-01-11") + chrono::TimeDelta::days(days)).to_string();
    let couples: Vec<Record> = (0..105)
        .map(|i| {
            let days = i64::from((i * 37) % 105);
            let id = u32::try_from(i).unwrap() * 2;
            let to_come = visit(u128::from(id), &day_after(days / 7), Some(9));
            couple(u128::from(id) + 1, vec![to_come, visit(u128::from(id) + 1, &day_after(-1 - days), Some(9))])
        })
        .collect();
    let found = page(&couples, &usual, "2027-01-11");
    assert_eq!((found.appointments.len(), found.counts.appointments), (SHOWN, 105));
    let last = found.appointments.last().unwrap();
    assert_eq!(last.1.when.day.to_string(), day_after(SHOWN as i64 / 7), "5 days of 7 and 5 of the sixth");
    assert!(found.appointments.is_sorted_by_key(|(_, it)| it.when));
    // Of what is late the longest overdue comes first.
    assert_eq!((found.unsettled.len(), found.counts.late, found.late()), (SHOWN, 105, 105));
    assert_eq!(found.unsettled[0].1.when.day.to_string(), day_after(-105));
}

#[test]
fn appointments_to_come_and_unsettled() {
    let usual = practice(vec![]);
    let done = |item, outcome| verbs::conclude(ItemId(item), Some(outcome));
    let couples = [
        couple(1, vec![visit(1, "2027-01-11", Some(18)), visit(2, "2027-01-08", None)]),
        couple(2, vec![visit(3, "2027-01-11", Some(9))]),
        couple(3, vec![visit(4, "2027-01-25", None), visit(5, "2027-01-26", None)]),
        couple(4, vec![visit(6, "2027-01-05", Some(9)), visit(7, "2027-01-06", Some(9)), done(7, Outcome::Missed)]),
        couple(5, vec![visit(8, "2027-01-12", None), done(8, Outcome::CalledOff)]),
        couple(6, vec![visit(9, "2027-01-12", None), verbs::cancel(ItemId(9))]),
        couple(7, vec![visit(10, "2027-01-12", None), verbs::move_to(Stage::Lost, date("2027-01-09"))]),
        couple(8, vec![visit(11, "2027-01-05", None), verbs::move_to(Stage::Lost, date("2027-01-09"))]),
        couple(
            9,
            vec![visit(12, "2027-01-12", None), vec![Write::set(Field::PutAway, Value::Day(date("2027-01-09")))]],
        ),
        couple(10, vec![visit(13, "2027-01-12", Some(9)), verbs::move_to(Stage::Ordered, date("2027-01-09"))]),
    ];
    let found = page(&couples, &usual, "2027-01-11");
    assert_eq!(ids(&found.appointments), [2, 1, 10, 3]);
    assert_eq!(ids(&found.unsettled), [4, 1]);
}

#[test]
fn any_day_will_do() {
    let usual = practice(vec![]);
    let couples = [couple(1, vec![wedding("2027-05-22"), visit(1, "2027-01-11", None)])];
    for on in [NaiveDate::MIN, NaiveDate::MAX] {
        let found = today(couples.iter().map(Couple), Practice(&usual), on);
        assert!(found.order_by.is_empty() && found.late_orders.is_empty());
    }
}
