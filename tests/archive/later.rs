//! Frozen samples of what came with 1.1, every field and every part of a value, beside those of 1.0.

use std::collections::BTreeSet;

use super::{check_same_again, kinds};
use bandwright::archive::row::read;
use bandwright::book::couple::Couple;
use bandwright::book::id::ItemId;
use bandwright::book::practice::Practice;
use bandwright::trade::dates::closed::Repeats;
use bandwright::trade::dates::lead_times::Step as Work;
use bandwright::trade::dates::places::Place;
use bandwright::trade::fit::{Sits, Term};
use bandwright::trade::measure::Percent;
use bandwright::trade::wearer::Wearer;

const COUPLE: &str = include_str!("../reference/record-1.1.json");
const PRACTICE: &str = include_str!("../reference/practice-1.1.json");

/// The fields of a couple that 1.0 does not know, by the first part of their names.
pub const OF_A_COUPLE: [&str; 7] =
    ["wish", "measure_again", "fitted", "work_done", "milestone_done", "said", "same_as"];

/// The parts of rings and bands that 1.0 does not know.
const OF_A_RING: [&str; 9] =
    ["back_width", "height", "inside", "head_to_web", "head_to_tip", "head_underside", "stones", "place", "holds"];
const OF_A_BAND: [&str; 4] = ["height", "dome", "relief", "place"];

/// The fields of a practice that 1.0 does not know, by the second part of their names.
pub const OF_A_PRACTICE: [&str; 13] = [
    "phone_name",
    "try_on",
    "catch",
    "clearance",
    "thinnest",
    "holiday",
    "place_days",
    "counts_today",
    "confidence",
    "busy_chance",
    "busy_longer",
    "resize_chance",
    "try_on_after",
];

fn check_all(held: &BTreeSet<String>, wanted: &[&str]) {
    let missing: Vec<_> = wanted.iter().filter(|kind| !held.contains(**kind)).collect();
    assert!(missing.is_empty(), "no sample of {missing:?}");
}

#[test]
fn the_couple_of_1_1_still_reads_and_rewrites() {
    check_same_again(COUPLE.trim_end());
    let record = read(COUPLE).unwrap();
    check_all(&kinds(&record, 0), &OF_A_COUPLE);
    check_all(&kinds(&record, 3), &OF_A_RING);
    check_all(&kinds(&record, 2), &OF_A_BAND);
    let couple = Couple(&record);
    let (_, reading) = couple.readings(Wearer::First).remove(0);
    assert_eq!((reading.sits, reading.left_out), (Some(Sits::Spins), true));
    assert_eq!(reading.at, "16:40:00".parse().ok());
    let [first, second] = reading.gauge.calibration.as_slice() else { panic!("{:?}", reading.gauge) };
    assert_eq!((first.says.0.mm(), first.is.0.mm(), second.is.0.mm()), (52.5, 52.7, 60.1));
    let own = couple.order_size(Wearer::First).unwrap().own;
    let used = |term| own.of(term).map(|amount| amount.used.mm());
    assert_eq!((used(Term::Width), used(Term::Hands), used(Term::Bore)), (Some(0.4), Some(0.0), None));
    assert_eq!(couple.dates().unwrap().confidence, Some(Percent(90)));
    let list = ItemId::parse("9c3f51d28e074ab6b1f06d2ea8740110").unwrap();
    assert_eq!(couple.said().first().map(|said| said.id), Some(list));
}

#[test]
fn the_practice_of_1_1_still_reads_and_rewrites() {
    check_same_again(PRACTICE.trim_end());
    let record = read(PRACTICE).unwrap();
    check_all(&kinds(&record, 1), &OF_A_PRACTICE);
    let practice = Practice(&record);
    let closures: Vec<_> = practice.closures().into_iter().map(|(_, it)| (it.place, it.days.repeats())).collect();
    assert_eq!(closures, [(Place::Courier, Repeats::SameDates), (Place::Workshop, Repeats::SameWeekday)]);
    assert_eq!((practice.confidence(), practice.tray().len()), (Percent(90), 1));
    // Nothing about lead times was set: what is usual stands.
    assert_eq!(practice.lead_time(Work::Making).usual().0, 17);
}
