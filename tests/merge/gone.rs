//! An appointment or a ring that one phone took out while the other wrote into it.

use bandwright::archive::merge::merge;
use bandwright::book::change::Write;
use bandwright::book::couple::Couple;
use bandwright::book::field::{AppointmentField, Field, RingField};
use bandwright::book::id::{InstallationId, ItemId};
use bandwright::book::merge::conflict::Conflict;
use bandwright::book::merge::gone::leave_out;
use bandwright::book::record::Record;
use bandwright::book::value::{Value, When};
use bandwright::book::verbs;
use bandwright::trade::measure::Length;
use bandwright::trade::wearer::Wearer;

use crate::arbitrary::{new_couple, say};

const STUDIO: InstallationId = InstallationId(1);
const VAN: InstallationId = InstallationId(2);
const ITEM: ItemId = ItemId(7);

fn said(record: &Record, by: InstallationId, n: u64, writes: Vec<Write>) -> Record {
    let mut record = record.clone();
    assert!(say(&mut record, by, n, writes).is_some());
    record
}

fn when() -> Write {
    let when = When { day: "2027-01-09".parse().unwrap(), time: None };
    Write::set(Field::Appointment(ITEM, AppointmentField::When), Value::When(when))
}

fn place(of: &str) -> Write {
    Write::set(Field::Appointment(ITEM, AppointmentField::Place), Value::Text(of.into()))
}

fn ring(part: RingField, value: Value) -> Write {
    Write::set(Field::Ring(Wearer::First, ITEM, part), value)
}

/// The only conflict, and the record after each of the two answers.
fn both_ways(record: &Record) -> [Record; 2] {
    let conflicts = record.conflicts();
    let [conflict @ Conflict::Gone { .. }] = conflicts.as_slice() else { panic!("{conflicts:?}") };
    [record.bring_back(conflict), leave_out(conflict)].map(|writes| said(record, STUDIO, 30, writes))
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
    let name = || ring(RingField::Name, Value::Text("signet".into()));
    let start = said(&new_couple(), STUDIO, 1, vec![name()]);
    let gone = said(&start, STUDIO, 3, verbs::drop_ring(Wearer::First, ITEM));
    let edited = said(&start, VAN, 2, vec![ring(RingField::Height, Value::Length(Length::from_mm(1.8)))]);
    let [back, out] = both_ways(&merge(&gone, &edited));
    let rings = Couple(&back).rings(Wearer::First);
    assert_eq!(
        (rings.len(), rings[0].name.clone(), rings[0].height),
        (1, Some("signet".into()), Some(Length::from_mm(1.8)))
    );
    assert!(Couple(&out).rings(Wearer::First).is_empty());
}

#[test]
fn what_was_seen_is_no_question() {
    let start = said(&new_couple(), STUDIO, 1, vec![when(), place("Hall")]);
    // One part cleared, the rest left as it is, while the other phone edits that rest.
    let part = said(&start, STUDIO, 2, vec![Write::clear(Field::Appointment(ITEM, AppointmentField::Place))]);
    let outcome = Field::Appointment(ITEM, AppointmentField::Outcome);
    let happened = Write::set(outcome, Value::Outcome(bandwright::book::field::Outcome::Happened));
    assert!(!merge(&part, &said(&start, VAN, 2, vec![happened.clone()])).is_in_conflict());
    // Taken out, and put there again by one who knew.
    let gone = said(&start, STUDIO, 2, verbs::cancel(ITEM));
    assert!(!said(&gone, VAN, 3, vec![place("Barn")]).is_in_conflict());
    // Taken out on both.
    assert!(!merge(&gone, &said(&start, VAN, 2, verbs::cancel(ITEM))).is_in_conflict());
}
