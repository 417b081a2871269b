//! Orders as they go: what was finished, what ran late, what the jeweller's own orders teach, and what is overdue.

use super::practice;
use crate::arbitrary::{OURS, say};
use crate::shared::date;
use bandwright::book::change::Write;
use bandwright::book::couple::Couple;
use bandwright::book::field::{Field, PracticeField, Stage};
use bandwright::book::id::{ItemId, RecordId};
use bandwright::book::late::late;
use bandwright::book::practice::Practice;
use bandwright::book::progress::{AtRisk, Risk, UnderWay, ahead, at_risk, elsewhere, is_reached, plan, under_way};
use bandwright::book::record::{Kind, Record};
use bandwright::book::schedule::{Asked, OwnOrders, not_before, took};
use bandwright::book::today::today;
use bandwright::book::value::{ChosenExtra, DatesSettled, ExtraWork, Value};
use bandwright::book::verbs;
use bandwright::trade::dates::holidays::Region;
use bandwright::trade::dates::lead_times::{MAKING, Step as Work, usual};
use bandwright::trade::dates::milestones::Milestone;
use bandwright::trade::dates::odds::Lasts;
use bandwright::trade::dates::places::Place;
use bandwright::trade::dates::spread::{CalendarDays, WorkingDays};
use bandwright::trade::dates::wedding::Wedding;
use bandwright::trade::measure::Percent;
use bandwright::words;

fn record(id: u128, writes: Vec<Write>) -> Record {
    let mut record = Record::new(RecordId(id), Kind::Couple);
    say(&mut record, OURS, 1, writes);
    record
}

/// A wedding on 22 May 2027, with engraving and delivery.
fn settled() -> Vec<Write> {
    let extra = |work| ChosenExtra { work: ExtraWork::Usual(work), name: None, spread: usual(work).days };
    let dates = DatesSettled {
        region: Region::EnglandAndWales,
        in_hand: CalendarDays(14),
        making: MAKING.days,
        // Written the other way round: the work has its own order.
        extras: vec![extra(Work::Delivery), extra(Work::Engraving)],
        confidence: None,
        order_by: date("2027-04-01"),
        settled: date("2027-01-04"),
    };
    vec![
        Write::set(Field::Wedding, Value::Wedding(Wedding::Day(date("2027-05-22")))),
        Write::set(Field::Dates, Value::Dates(dates)),
    ]
}

fn ordered(on: &str, done: &[(Work, &str)]) -> Vec<Write> {
    let done = done.iter().map(|(work, on)| Write::set(Field::WorkDone(ExtraWork::Usual(*work)), Value::Day(date(on))));
    settled().into_iter().chain(verbs::move_to(Stage::Ordered, date(on))).chain(done).collect()
}

fn found(couple: &Record, on: &str) -> UnderWay {
    let practice = practice(vec![]);
    under_way(Couple(couple), Practice(&practice), &OwnOrders::default(), date(on)).unwrap()
}

#[test]
fn an_order_narrows_as_it_goes() {
    // Ordered on Monday 1 March 2027: making 15 to 20 days, engraving 1 to 5, delivery 1 to 3.
    let just = record(1, ordered("2027-03-01", &[]));
    let first = found(&just, "2027-03-01");
    let works: Vec<ExtraWork> = first.steps.iter().map(|(step, ..)| step.work).collect();
    assert_eq!(works, [Work::Making, Work::Engraving, Work::Delivery].map(ExtraWork::Usual));
    let days = |it: &UnderWay| it.finish.days().count();
    // Seventeen working days at least, 28 at most, with Good Friday and Easter Monday between.
    assert_eq!(it_ends(&first), ("2027-03-24".into(), "2027-04-12".into()));
    // Made on the last day it could be: the rest is two to eight days.
    let late = record(2, ordered("2027-03-01", &[(Work::Making, "2027-03-31")]));
    let late = found(&late, "2027-03-31");
    assert_eq!(it_ends(&late), ("2027-04-02".into(), "2027-04-12".into()));
    assert!(days(&late) < days(&first));
    let all = [(Work::Making, "2027-03-24"), (Work::Engraving, "2027-03-25"), (Work::Delivery, "2027-03-30")];
    let all = found(&record(3, ordered("2027-03-01", &all)), "2027-04-20");
    assert_eq!(it_ends(&all), ("2027-03-30".into(), "2027-03-30".into()));
    assert!(all.chance.unwrap().is_at_least(Percent(100)));
    assert_eq!((first.at_work.unwrap().1, all.at_work), (WorkingDays(0), None));
    // Engraving begins on the day on which making is finished.
    let (step, so_far) = late.at_work.unwrap();
    assert_eq!(
        (step.work, words::agenda::so_far(so_far, step.spread.most())),
        (ExtraWork::Usual(Work::Engraving), "0 working days so far".to_owned())
    );
}

fn it_ends(it: &UnderWay) -> (String, String) {
    let days: Vec<String> = it.finish.days().map(|(day, _)| day.to_string()).collect();
    (days[0].clone(), days[days.len() - 1].clone())
}

#[test]
fn what_is_not_finished_yet_is_finished_today_at_the_earliest() {
    let couple = record(1, ordered("2027-03-01", &[]));
    // Past the longest making: it may be ready any day now, and what follows still takes its time.
    let found = found(&couple, "2027-06-01");
    assert_eq!(it_ends(&found).0, "2027-06-03");
    assert!(found.is_overrun);
    assert_eq!((found.chance, found.before_wedding), (None, None), "nobody knows");
    assert_eq!(words::agenda::stands(&found), "not before Thu 3 Jun 2027");
    let way = |on| ahead(Couple(&couple), Practice(&practice(vec![])), &OwnOrders::default(), date(on), false);
    // Nobody is shown a day that nobody knows. On its last day, 29 March and Good Friday off, it is still a forecast.
    assert!(way("2027-05-01").unwrap().ready.is_none() && way("2027-03-31").unwrap().ready.is_some());
    assert!(way("2027-04-01").unwrap().ready.is_none());
    let (step, so_far) = found.at_work.unwrap();
    assert_eq!(step.work, ExtraWork::Usual(Work::Making));
    // numpy.busday_count of 1 March to 1 June, with Good Friday, Easter Monday, 3 and 31 May closed: 62.
    assert_eq!(
        words::agenda::so_far(so_far, step.spread.most()),
        "62 working days so far: late, 42 more than its longest"
    );
}

#[test]
fn what_ran_late_is_said() {
    let practice = practice(vec![]);
    let couple = record(1, ordered("2027-03-01", &[(Work::Making, "2027-04-06"), (Work::Engraving, "2027-04-08")]));
    let said: Vec<String> = took(Couple(&couple), Practice(&practice))
        .into_iter()
        .map(|(step, days)| words::agenda::took(days, step.spread.usual(), step.spread.most()))
        .collect();
    // numpy.busday_count of 1 March to 6 April, with Good Friday and Easter Monday closed: 24.
    assert_eq!(said, ["24 working days: late, 4 more than its longest", "2 working days: as usual or sooner"]);
    assert_eq!(
        words::agenda::took(WorkingDays(19), WorkingDays(17), WorkingDays(20)),
        "19 working days: longer than usual, within its longest"
    );
}

#[test]
fn days_out_of_order_teach_nothing() {
    let practice = practice(vec![]);
    let couple = record(1, ordered("2027-03-01", &[(Work::Making, "2027-02-01"), (Work::Delivery, "2027-04-08")]));
    // Made before it was ordered; and delivered without engraving being finished.
    assert_eq!(took(Couple(&couple), Practice(&practice)), []);
}

#[test]
fn a_step_is_not_finished_before_those_ahead_of_it() {
    let extra = |work, name: &str| ChosenExtra { work, name: Some(name.into()), spread: usual(Work::Stones).days };
    let own = |item| ExtraWork::Own(ItemId(item));
    let asked = Asked {
        region: Region::EnglandAndWales,
        making: MAKING.days,
        extras: vec![extra(own(1), "plating"), extra(own(2), "inlay"), extra(ExtraWork::Usual(Work::Engraving), "")],
        in_hand: CalendarDays(14),
        confidence: Percent(95),
    };
    let steps = asked.steps();
    let days = [Some("2027-03-22"), Some("2027-03-30"), None, Some("2027-03-25")].map(|it| it.map(date));
    let typed: Vec<_> = steps.iter().zip(days).collect();
    let from = |at: usize| not_before(Some(date("2027-03-01")), &typed, &steps[at]);
    assert_eq!(from(0), Some((date("2027-03-01"), None)), "the order");
    // Of the jeweller's own neither comes first.
    assert_eq!([from(1), from(2)], [Some((date("2027-03-22"), Some(0))); 2]);
    assert_eq!(from(3), Some((date("2027-03-30"), Some(1))), "plating");
    assert_eq!(
        words::agenda::too_early(Some("Making"), date("2027-03-22")),
        "Enter a day from Mon 22 Mar 2027 on: making was finished then."
    );
    assert_eq!(not_before(None, &[], &steps[0]), None);
}

#[test]
fn ten_own_orders_speak_for_themselves() {
    let usual_practice = practice(vec![]);
    let all: Vec<Record> = (0..10).map(|n| record(n, ordered("2027-03-01", &[(Work::Making, "2027-03-15")]))).collect();
    let own = |count: usize| OwnOrders::of(all[..count].iter().map(Couple), Practice(&usual_practice));
    assert_eq!(own(9).lasts(Work::Making), None);
    assert_eq!(own(10).lasts(Work::Making), Some(Lasts::Orders(vec![WorkingDays(10); 10])));
    assert_eq!(own(10).lasts(Work::Engraving), None);
    // They count for whoever has the usual times, and not where other times were agreed.
    let asked = Asked::of(Couple(&all[0]), Practice(&usual_practice));
    let making = |own: &OwnOrders, practice: &Record| {
        let wedding = Wedding::Day(date("2027-05-22"));
        let inputs = asked.inputs(Practice(practice), own, wedding, date("2027-01-04")).unwrap();
        inputs.way.legs[0].lasts.clone()
    };
    assert!(matches!(making(&own(10), &usual_practice), Lasts::Orders(_)));
    let other = practice(vec![(PracticeField::LeadTime(Work::Making), Value::Spread(usual(Work::Marking).days))]);
    assert_eq!(making(&own(10), &other), Lasts::Spread(MAKING.days));
    let examples: Vec<Record> = (0..10)
        .map(|n| {
            let mut writes = ordered("2027-03-01", &[(Work::Making, "2027-03-15")]);
            writes.push(Write::set(Field::Example, Value::Yes(true)));
            record(n, writes)
        })
        .collect();
    let none = OwnOrders::of(examples.iter().map(Couple), Practice(&usual_practice));
    assert_eq!(none, OwnOrders::default());
}

#[test]
fn milestones_show_when_they_are_overdue() {
    let usual_practice = practice(vec![]);
    let overdue = |writes: Vec<Write>, on: &str| -> Vec<Milestone> {
        let couple = record(1, writes);
        let page = today([Couple(&couple)].into_iter(), Practice(&usual_practice), date(on));
        page.overdue.into_iter().map(|(_, due)| due.what).collect()
    };
    let settled_plan = {
        let couple = record(1, settled());
        plan(Couple(&couple), Practice(&usual_practice), &OwnOrders::default(), date("2027-01-04")).unwrap()
    };
    let by = |what| settled_plan.milestones.iter().find(|due| due.what == what).unwrap().by;
    assert_eq!(overdue(settled(), "2027-01-04"), []);
    let after_decide = by(Milestone::Decide).succ_opt().unwrap().to_string();
    assert_eq!(overdue(settled(), &after_decide), [Milestone::Decide]);
    // When the order is late it is said once, as the order.
    let after_order = by(Milestone::Order).succ_opt().unwrap().to_string();
    assert_eq!(overdue(settled(), &after_order), []);
    let after_all = by(Milestone::LastResize).succ_opt().unwrap().to_string();
    use Milestone::{Collect, EngravingText, LastResize, TryOn};
    assert_eq!(overdue(ordered("2027-03-01", &[]), &after_all), [EngravingText, Collect, TryOn, LastResize]);
    let mut collected = ordered("2027-03-01", &[]);
    collected.extend(verbs::move_to(Stage::Collected, date("2027-05-07")));
    assert_eq!(overdue(collected.clone(), &after_all), [TryOn, LastResize]);
    collected.push(Write::set(Field::MilestoneDone(TryOn), Value::Day(date("2027-05-08"))));
    assert_eq!(overdue(collected.clone(), &after_all), []);
    assert!(is_reached(Couple(&record(1, collected)), LastResize));
    // After the wedding nothing is asked any more.
    assert_eq!(overdue(ordered("2027-03-01", &[]), "2027-05-23"), []);
}

/// Ordered on Thursday 1 October 2026 for Sunday 10 January 2027, with engraving and delivery.
fn for_january(done: &[(Work, &str)]) -> Record {
    let mut writes = ordered("2026-10-01", done);
    writes.push(Write::set(Field::Wedding, Value::Wedding(Wedding::Day(date("2027-01-10")))));
    record(1, writes)
}

#[test]
fn an_order_that_runs_late_stands_on_today_once() {
    let usual_practice = practice(vec![]);
    let page = |couple: &Record, on: &str| today([Couple(couple)].into_iter(), Practice(&usual_practice), date(on));
    let nothing_done = for_january(&[]);
    // 20 working days from 1 October end on Thursday 29 October: until then it is in time.
    let running = |couple: &Record, on: &str| late([Couple(couple)].into_iter(), Practice(&usual_practice), date(on));
    assert_eq!(running(&nothing_done, "2026-10-29").late, 0);
    let found = running(&nothing_done, "2026-11-25");
    let risk = AtRisk {
        in_hand: Some(date("2026-12-27")),
        // Made today, engraved tomorrow, delivered on Friday.
        why: Risk::Overrun { not_before: date("2026-11-27") },
    };
    assert_eq!((found.orders, found.late, found.rows), (1, 1, vec![(RecordId(1), risk)]));
    assert_eq!(words::agenda::at_risk(risk), "runs late: not before Fri 27 Nov 2026");
    // A fortnight before the wedding nothing is in hand: that is said as the milestone, and once.
    let after = page(&nothing_done, "2026-12-28");
    assert_eq!(running(&nothing_done, "2026-12-28").late, 0);
    assert!(after.overdue.iter().any(|(_, due)| due.what == Milestone::Collect));

    // Made late: engraving takes 1 to 5 days and delivery 1 to 3, by Wednesday 23 December before the closed days.
    let made = |on| for_january(&[(Work::Making, on)]);
    let risk = |couple: &Record, on: &str| {
        at_risk(Couple(couple), Practice(&usual_practice), &OwnOrders::default(), date(on)).map(|it| it.why)
    };
    assert_eq!(risk(&made("2026-12-10"), "2026-12-10"), None);
    let Some(Risk::Unlikely(chance)) = risk(&made("2026-12-18"), "2026-12-18") else { panic!("it may be late") };
    assert!(!chance.is_at_least(Percent(95)) && !chance.is_none());
    // Counted by hand: 1 to 5 days weigh 2, 4, 3, 2, 1 and 1 to 3 weigh 3, 2, 1. From Friday 18 December there are
    // four working days until Christmas Eve, and none after it before Sunday 27: 12 * 6 in all, 2 * 6 + 4 * 5 + 3 * 3.
    assert_eq!(chance.percent(), Percent(41 * 100 / 72));
    let all =
        for_january(&[(Work::Making, "2026-12-18"), (Work::Engraving, "2026-12-21"), (Work::Delivery, "2026-12-30")]);
    assert_eq!(risk(&all, "2026-12-31"), None, "nothing is left that could be late");
    // Without a wedding an overrun order is late all the same; after the wedding nothing is asked.
    let mut writes = ordered("2026-10-01", &[]);
    writes.push(Write::clear(Field::Wedding));
    assert!(matches!(risk(&record(1, writes), "2026-11-25"), Some(Risk::Overrun { .. })));
    assert_eq!(risk(&nothing_done, "2027-01-11"), None);
}

#[test]
fn a_wedding_without_a_day_is_asked_for_before_it_is_late() {
    let usual_practice = practice(vec![]);
    let page = |wedding: Wedding, on: &str| {
        let couple = record(1, vec![Write::set(Field::Wedding, Value::Wedding(wedding))]);
        today([Couple(&couple)].into_iter(), Practice(&usual_practice), date(on))
    };
    let may = Wedding::Month { year: 2027, month: 5 };
    let (first, last) = (Wedding::Day(date("2027-05-01")), Wedding::Day(date("2027-05-31")));
    let order_by = |wedding| page(wedding, "2027-01-04").order_by[0].1;
    assert_eq!(page(may, "2027-01-04").order_by, [(RecordId(1), order_by(first))]);
    let between = order_by(first).succ_opt().unwrap().to_string();
    let found = page(may, &between);
    assert_eq!((found.late(), &found.late_orders, &found.order_by), (0, &vec![], &vec![]));
    assert_eq!(found.ask_the_day, [(RecordId(1), order_by(last))]);
    assert!(words::screens::ask_the_day(order_by(last)).starts_with("ask for the day: order by "));
    // Too late for the last day too.
    let after = order_by(last).succ_opt().unwrap().to_string();
    let found = page(may, &after);
    assert_eq!((found.late(), found.late_orders.len(), found.ask_the_day.len()), (1, 1, 0));
    // A day that is known is late as ever.
    assert_eq!(page(first, &between).late_orders, [(RecordId(1), order_by(first))]);
}

#[test]
fn what_is_written_down_reaches_milestones() {
    let reached = |done: &[(Work, &str)], what| is_reached(Couple(&record(1, ordered("2027-03-01", done))), what);
    let (made, engraved, delivered) =
        ((Work::Making, "2027-03-24"), (Work::Engraving, "2027-03-25"), (Work::Delivery, "2027-03-30"));
    use Milestone::{Collect, EngravingText};
    assert!(!reached(&[made], EngravingText) && reached(&[made, engraved], EngravingText));
    // Delivered, and nobody wrote down the engraving: the words were fixed.
    assert!(reached(&[made, delivered], EngravingText));
    assert!(!reached(&[made, engraved], Collect) && !reached(&[made, delivered], Collect));
    assert!(reached(&[made, engraved, delivered], Collect));
    // Before the order nothing of it is reached.
    let none = record(1, settled());
    assert!(!is_reached(Couple(&none), EngravingText));
}

#[test]
fn closed_days_of_others_are_told_where_they_count() {
    let extra = |work| ChosenExtra { work: ExtraWork::Usual(work), name: None, spread: usual(work).days };
    let asked = |extras| Asked {
        region: Region::EnglandAndWales,
        making: MAKING.days,
        extras,
        in_hand: CalendarDays(14),
        confidence: Percent(95),
    };
    let usual_practice = practice(vec![]);
    let (from, to) = (date("2026-11-25"), date("2027-01-10"));
    let of = |extras| {
        let wedding = Wedding::Day(to);
        let inputs = asked(extras).inputs(Practice(&usual_practice), &OwnOrders::default(), wedding, from).unwrap();
        elsewhere(&inputs.way, from, to)
    };
    assert_eq!(of(vec![extra(Work::Engraving)]), []);
    let found = of(vec![extra(Work::Marking)]);
    let (place, days) = &found[0];
    // The assay office's Christmas: 24 December to 1 January, whatever the workshop does.
    assert_eq!((*place, days.len()), (Place::AssayOffice, 9));
    let said = words::dates::closed(*place, days[0].why, None);
    assert_eq!((days[0].day, said.as_str()), (date("2026-12-24"), "Assay office closed"));
}
