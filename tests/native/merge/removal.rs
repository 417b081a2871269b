//! An appointment or a ring that one phone took out while the other wrote into it.

use super::said;
use std::sync::Arc;
use std::time::Instant;

use bandwright::archive::merge::merge;
use bandwright::book::change::{Change, Draft, Set, Write};
use bandwright::book::checklist::{self, Care, State, Topic};
use bandwright::book::couple::{Couple, Ring};
use bandwright::book::field::{AppointmentField, Field, Outcome, RingField};
use bandwright::book::id::{InstallationId, ItemId, Moment, RecordId, Stamp};
use bandwright::book::merge::conflict::Conflict;
use bandwright::book::merge::removal::confirm_removal;
use bandwright::book::record::{Kind, Record};
use bandwright::book::value::{Value, When};
use bandwright::book::verbs;
use bandwright::trade::measure::Length;
use bandwright::trade::stack::House;
use bandwright::trade::wearer::Wearer;
use bandwright::words::specification::{Called, specification};

use crate::arbitrary::new_couple;

const STUDIO: InstallationId = InstallationId(1);
const VAN: InstallationId = InstallationId(2);
const ITEM: ItemId = ItemId(7);

fn when() -> Write {
    let when = When { day: "2027-01-09".parse().unwrap(), time: None };
    Write::set(Field::Appointment(ITEM, AppointmentField::When), Value::When(when))
}

fn place(of: &str) -> Write {
    Write::set(Field::Appointment(ITEM, AppointmentField::Place), Value::Text(of.into()))
}

fn happened() -> Write {
    Write::set(Field::Appointment(ITEM, AppointmentField::Outcome), Value::Outcome(Outcome::Happened))
}

fn ring(part: RingField, value: Value) -> Write {
    Write::set(Field::Ring(Wearer::First, ITEM, part), value)
}

/// A ring as it is written down, with nothing known of it but its name.
fn signet() -> Vec<Write> {
    verbs::note_ring(Wearer::First, Ring { name: Some("signet".into()), ..Ring::unknown(ITEM) })
}

fn height(mm: f64) -> Write {
    ring(RingField::Height, Value::Length(Length::from_mm(mm)))
}

/// The only conflict, and the record after each of the two answers.
fn both_ways(record: &Record) -> [Record; 2] {
    let conflicts = record.conflicts();
    let [conflict @ Conflict::Removed { .. }] = conflicts.as_slice() else { panic!("{conflicts:?}") };
    [record.undo_removal(conflict), confirm_removal(conflict)].map(|writes| said(record, STUDIO, 30, writes))
}

#[test]
fn an_appointment() {
    for (start, theirs) in [(vec![when()], "Barn"), (vec![when(), place("Hall")], "Barn")] {
        let start = said(&new_couple(), STUDIO, 1, start);
        for n in [2, 20] {
            let gone = said(&start, STUDIO, 3, verbs::cancel(ITEM));
            let edited = said(&start, VAN, n, vec![place(theirs)]);
            let both = merge(&gone, &edited);
            let [back, out] = both_ways(&both);
            let appointments = Couple(&back).appointments();
            assert_eq!(appointments.len(), 1);
            assert_eq!(appointments[0].place.as_deref(), Some(theirs));
            assert!(Couple(&out).appointments().is_empty() && !out.fields().any(|(field, _)| field.is_of_item()));
            for settled in [back, out] {
                assert!(!settled.is_in_conflict());
                assert_eq!(merge(&settled, &edited), settled);
            }
        }
    }
}

#[test]
fn a_ring() {
    let start = said(&new_couple(), STUDIO, 1, signet());
    let gone = said(&start, STUDIO, 3, verbs::drop_ring(Wearer::First, ITEM));
    let edited = said(&start, VAN, 2, vec![height(1.8)]);
    let [back, out] = both_ways(&merge(&gone, &edited));
    let rings = Couple(&back).rings(Wearer::First);
    assert_eq!(
        (rings.len(), rings[0].name.clone(), rings[0].height),
        (1, Some("signet".into()), Some(Length::from_mm(1.8)))
    );
    assert!(Couple(&out).rings(Wearer::First).is_empty());
}

/// Also where no single field differs, because only empty ones were filled.
#[test]
fn what_is_left_of_a_ring_does_not_pass_for_settled() {
    let start = said(&new_couple(), STUDIO, 1, signet());
    let gone = said(&start, STUDIO, 3, verbs::drop_ring(Wearer::First, ITEM));
    let width = ring(RingField::ShoulderWidth, Value::Length(Length::from_mm(2.0)));
    let both = merge(&gone, &said(&start, VAN, 2, vec![width, height(1.8)]));
    assert!(!both.differs(|_| true));
    let state = |record: &Record, who| checklist::state(Couple(record), Topic::Rings(who));
    assert_eq!(state(&both, Wearer::First), State::Care(Care::Differs));
    assert_eq!(state(&both, Wearer::Second), State::Open);
    let text =
        |record: &Record| specification(Couple(record), Called::Names, "2026-11-25".parse().unwrap(), House::default());
    let marked = |text: &str| text.lines().any(|line| line.contains("2 mm") && line.contains("NOT SETTLED"));
    assert!(marked(&text(&both)), "{}", text(&both));
    let [back, out] = both_ways(&both);
    assert_eq!((state(&back, Wearer::First), state(&out, Wearer::First)), (State::Done, State::Open));
    assert!(!marked(&text(&back)), "{}", text(&back));
}

#[test]
fn emptying_a_part_is_no_taking_out() {
    let start = said(&new_couple(), STUDIO, 1, vec![when(), place("Hall")]);
    let no_place = || Write::clear(Field::Appointment(ITEM, AppointmentField::Place));
    let other_day = When { day: "2027-01-10".parse().unwrap(), time: None };
    let moved = Write::set(Field::Appointment(ITEM, AppointmentField::When), Value::When(other_day));
    for n in [2, 20] {
        // The place emptied here, the day moved there: nobody took it out.
        let emptied = said(&start, STUDIO, 3, vec![no_place()]);
        let both = merge(&emptied, &said(&start, VAN, n, vec![moved.clone()]));
        assert_eq!(both.conflicts(), []);
        // Taken out here; there the place emptied and the outcome noted in one go.
        let gone = said(&start, STUDIO, 3, verbs::cancel(ITEM));
        let both = merge(&gone, &said(&start, VAN, n, vec![no_place(), happened()]));
        let [back, out] = both_ways(&both);
        assert_eq!(Couple(&back).appointments()[0].outcome, Some(Outcome::Happened));
        assert!(Couple(&out).is_blank());
    }
}

/// Many rings, each taken out and each edited by one who did not know, every so many by other phones; every tenth was
/// edited by one who did know.
fn many_gone(many: u64, each_phone: u64) -> Record {
    let field = |item, part| Field::Ring(Wearer::First, ItemId(u128::from(item)), part);
    let set = |field, value, replaces| Set { field, value, replaces, restores: None, unknown: None };
    let change = |stamp, after: &[Stamp], set| {
        let draft = Draft { at: Moment(0), undoes: None, after: after.to_vec(), sets: set };
        Arc::new(Change::stamped(draft, stamp))
    };
    let start = Stamp { n: 1, by: STUDIO };
    let planned = |item| set(field(item, RingField::Planned), Some(Value::Yes(false)), Vec::new());
    let mut changes = vec![change(start, &[], (0..many).map(planned).collect())];
    for item in 0..many {
        let by = |which: u64| InstallationId(u128::from(10 + which + 2 * (item / each_phone)));
        let gone = Stamp { n: 2 + item, by: by(0) };
        changes.push(change(gone, &[], vec![set(field(item, RingField::Planned), None, vec![start])]));
        let height = set(field(item, RingField::Height), Some(Value::Length(Length::from_mm(1.8))), Vec::new());
        let seen = if item % 10 == 0 { vec![gone] } else { vec![start] };
        // One who knew of one knew of what its author had done before.
        let by = if item % 10 == 0 { InstallationId(2) } else { by(1) };
        changes.push(change(Stamp { n: 2 + many + item, by }, &seen, vec![height]));
    }
    Record::of(RecordId(7), Kind::Couple, changes)
}

/// Against what it costs to work out what stands in the record at all.
#[test]
fn thousands_taken_out_and_edited_cost_a_few_looks_at_the_record() {
    // Each by a phone of its own, as only a damaged file has them, or all by two.
    for (count, each_phone) in [(8_000, 8_000), (8_000, 1)] {
        let record = many_gone(count, each_phone);
        let [mut one_look, mut all] = [f64::INFINITY; 2];
        // In turn, so that what else the machine does slows both.
        for _ in 0..5 {
            let before = Instant::now();
            let again = Record::of(record.id, record.kind, record.changes().to_vec());
            one_look = one_look.min(before.elapsed().as_secs_f64());
            let before = Instant::now();
            assert_eq!(again.conflicts().len() as u64, count - count / 10);
            all = all.min(before.elapsed().as_secs_f64());
        }
        println!("{count} rings taken out but edited: {:.1} looks at the record", all / one_look);
        assert!(all < 40.0 * one_look, "{}", all / one_look);
    }
}

#[test]
fn what_was_seen_is_no_question() {
    let start = said(&new_couple(), STUDIO, 1, vec![when(), place("Hall")]);
    // One part cleared, the rest left as it is, while the other phone edits that rest.
    let part = said(&start, STUDIO, 2, vec![Write::clear(Field::Appointment(ITEM, AppointmentField::Place))]);
    assert!(!merge(&part, &said(&start, VAN, 2, vec![happened()])).is_in_conflict());
    // Taken out, and put there again by one who knew.
    let gone = said(&start, STUDIO, 2, verbs::cancel(ITEM));
    assert!(!said(&gone, VAN, 3, vec![place("Barn")]).is_in_conflict());
    // Taken out on both.
    assert!(!merge(&gone, &said(&start, VAN, 2, verbs::cancel(ITEM))).is_in_conflict());
}
