//! Frozen samples of what came after 1.0, every field and every part of a value.

use std::collections::BTreeSet;

use super::{check_rewritten, check_same_again, kinds};
use crate::arbitrary;
use bandwright::archive::row::{read, write};
use bandwright::book::change::Write;
use bandwright::book::couple::Couple;
use bandwright::book::field::Field;
use bandwright::book::id::ItemId;
use bandwright::book::practice::Practice;
use bandwright::book::remedy::Way;
use bandwright::book::value::Value;
use bandwright::trade::dates::closed::Repeats;
use bandwright::trade::dates::lead_times::Step as Work;
use bandwright::trade::dates::places::Place;
use bandwright::trade::fit::{Sits, Term};
use bandwright::trade::measure::Percent;
use bandwright::trade::wearer::{Digit, Finger, Hand, Wearer};

const COUPLE: &str = include_str!("../../reference/record-1.1.json");
/// What was chosen beside a head, and free lengths of other fingers.
const REMEDY: &str = include_str!("../../reference/record-1.1-remedy.json");
/// What stands inside a ring, which came with 1.2.
const RING_1_2: &str = include_str!("../../reference/record-1.2.json");
const PRACTICE: &str = include_str!("../../reference/practice-1.1.json");

/// The fields of a couple that 1.0 does not know, by the first part of their names.
pub const OF_A_COUPLE: [&str; 7] =
    ["wish", "measure_again", "fitted", "work_done", "milestone_done", "said", "same_as"];
pub const OF_A_REMEDY: [&str; 3] = ["remedy", "ring_gone", "ring_back"];
const RING: &str = "9c3f51d28e074ab6b1f06d2ea8740102";

/// The parts of rings and bands that 1.0 does not know.
const OF_A_RING: [&str; 9] =
    ["back_width", "height", "inside", "head_to_web", "head_to_tip", "head_underside", "stones", "place", "holds"];
const OF_A_BAND: [&str; 4] = ["height", "dome", "relief", "place"];

/// The fields of a practice that 1.0 does not know, by the second part of their names.
pub const OF_A_PRACTICE: [&str; 14] = [
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
    "busy_months",
    "resize_chance",
    "try_on_after",
];

fn check_all(held: &BTreeSet<String>, wanted: &[&str]) {
    let missing: Vec<_> = wanted.iter().filter(|kind| !held.contains(**kind)).collect();
    assert!(missing.is_empty(), "no sample of {missing:?}");
}

#[test]
fn the_couple_of_1_1_still_reads_and_rewrites() {
    check_rewritten(COUPLE);
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
fn what_was_chosen_beside_a_head_still_reads_and_rewrites() {
    check_rewritten(REMEDY);
    let record = read(REMEDY).unwrap();
    check_all(&kinds(&record, 0), &OF_A_REMEDY);
    let couple = Couple(&record);
    let day = |text: &str| text.parse().ok();
    let chosen = couple.remedy(Wearer::First).unwrap();
    assert_eq!((chosen.way, chosen.by.mm(), chosen.impression, chosen.template), (Way::Shaped, 0.57, true, false));
    let away = chosen.ring.unwrap();
    assert_eq!((away.ring, away.from, away.to), (ItemId::parse(RING), day("2027-01-04"), day("2027-01-22")));
    assert_eq!(
        (couple.ring_gone(Wearer::First), couple.ring_back(Wearer::First)),
        (day("2027-01-05"), day("2027-01-21"))
    );
    assert_eq!(couple.remedy(Wearer::Second).map(|it| (it.way, it.ring)), Some((Way::Lower, None)));
    assert_eq!(couple.stack(Wearer::First).unwrap().off.mm(), 0.37);
    let on = |hand, digit| couple.free_length_of(Wearer::First, Finger { hand, digit }).map(|free| free.mm());
    assert_eq!((on(Hand::Right, Digit::Middle), on(Hand::Left, Digit::Middle)), (Some(26.5), None));
    assert_eq!(on(Hand::Left, Digit::Ring), Some(22.0), "the finger of the band");
}

#[test]
fn the_practice_of_1_1_still_reads_and_rewrites() {
    check_rewritten(PRACTICE);
    let record = read(PRACTICE).unwrap();
    check_all(&kinds(&record, 1), &OF_A_PRACTICE);
    let practice = Practice(&record);
    let closures: Vec<_> = practice.closures().into_iter().map(|(_, it)| (it.place, it.days.repeats())).collect();
    assert_eq!(closures, [(Place::Courier, Repeats::SameDates), (Place::Workshop, Repeats::SameWeekday)]);
    assert_eq!((practice.confidence(), practice.tray().len()), (Percent(90), 1));
    assert_eq!(practice.busy().months.months().collect::<Vec<_>>(), [5, 6, 7, 12]);
    // Nothing about lead times was set: what is usual stands.
    assert_eq!(practice.lead_time(Work::Making).usual().0, 17);
}

#[test]
fn the_ring_of_1_2_still_reads_and_rewrites() {
    check_same_again(RING_1_2.trim_end());
    let record = read(RING_1_2).unwrap();
    let ring = Couple(&record).ring(Wearer::First, ItemId::parse(RING).unwrap());
    let told = (ring.name.as_deref(), ring.inscription.as_deref());
    assert_eq!(told, (Some("gran's ring"), Some("18 CT · “ever thine” 1937")));
}

/// The release before knew nothing of that part. Its rule for a newer minor is this version's too: a ring's part of
/// which it knows nothing is carried through unharmed, also when a change is added, and is what it was once a version
/// that knows it reads it again.
#[test]
fn the_release_before_carries_the_new_part_of_a_ring_through() {
    let newer = RING_1_2.trim_end().replace(".inscription", ".not_known_yet").replace("\"1.2\"", "\"1.3\"");
    check_same_again(&newer);
    let mut record = read(&newer).unwrap();
    let ring = Couple(&record).ring(Wearer::First, ItemId::parse(RING).unwrap());
    assert_eq!((ring.name.as_deref(), ring.inscription), (Some("gran's ring"), None));
    let by = record.changes()[0].stamp.by;
    let met = Write::set(Field::Met, Value::Text("studio".into()));
    arbitrary::say(&mut record, by, 9, vec![met]).unwrap();
    let back = write(&record).replace(".not_known_yet", ".inscription").replace("\"1.3\"", "\"1.2\"");
    let record = read(&back).unwrap();
    let ring = Couple(&record).ring(Wearer::First, ItemId::parse(RING).unwrap());
    assert_eq!(ring.inscription.as_deref(), Some("18 CT · “ever thine” 1937"));
    assert_eq!(Couple(&record).met(), Some("studio"));
}

#[test]
fn a_part_of_a_newer_version_under_an_older_number_is_no_row_of_ours() {
    assert!(read(&RING_1_2.replace(".inscription", ".not_known_yet")).is_err());
}
