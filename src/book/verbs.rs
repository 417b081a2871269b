//! What a jeweller does, as the writes that it comes to. Each verb is one change, taken back as one.

use chrono::NaiveDate;

use super::band::{Band, BandField};
use super::change::Write;
use super::couple::Couple;
use super::field::{AppointmentField, Field};
use super::id::ItemId;
use super::ring::{Ring, RingField};
use super::value::{Outcome, Stage, Value, When};
use crate::trade::wearer::Wearer;

/// A field to hold text, or nothing where the text is none.
pub fn text(field: Field, text: Option<String>) -> Write {
    Write { field, value: text.map(Value::Text) }
}

/// Meets a couple: their first names, where they were met, and the stage they start at.
pub fn meet(first: String, second: Option<String>, met: Option<String>, today: NaiveDate) -> Vec<Write> {
    vec![
        Write::set(Field::Name(Wearer::First), Value::Text(first)),
        text(Field::Name(Wearer::Second), second),
        text(Field::Met, met),
        Write::set(Field::Stage, Value::Stage(Stage::Enquiry)),
        Write::set(Field::Reached(Stage::Enquiry), Value::Day(today)),
    ]
}

/// Books an appointment, or changes one.
pub fn book(item: ItemId, when: When, place: Option<String>) -> Vec<Write> {
    vec![
        Write::set(Field::Appointment(item, AppointmentField::When), Value::When(when)),
        text(Field::Appointment(item, AppointmentField::Place), place),
    ]
}

/// Notes what became of an appointment.
pub fn conclude(item: ItemId, outcome: Option<Outcome>) -> Vec<Write> {
    vec![Write { field: Field::Appointment(item, AppointmentField::Outcome), value: outcome.map(Value::Outcome) }]
}

/// Takes an appointment out.
pub fn cancel(item: ItemId) -> Vec<Write> {
    AppointmentField::ALL.map(|part| Write::clear(Field::Appointment(item, part))).to_vec()
}

/// Moves a couple to a stage on a day.
pub fn move_to(stage: Stage, day: NaiveDate) -> Vec<Write> {
    vec![Write::set(Field::Stage, Value::Stage(stage)), Write::set(Field::Reached(stage), Value::Day(day))]
}

/// Writes down a ring.
pub fn note_ring(wearer: Wearer, ring: Ring) -> Vec<Write> {
    let value = |part| match part {
        // Every ring has this part: that it stands says that the ring is there.
        RingField::Planned => Some(Value::Yes(ring.planned)),
        _ => ring.value(part),
    };
    RingField::ALL.map(|part| Write { field: Field::Ring(wearer, ring.item, part), value: value(part) }).to_vec()
}

/// Takes a ring out.
pub fn drop_ring(wearer: Wearer, item: ItemId) -> Vec<Write> {
    RingField::ALL.map(|part| Write::clear(Field::Ring(wearer, item, part))).to_vec()
}

/// Chooses the band, as far as it is known.
pub fn choose_band(wearer: Wearer, band: Band) -> Vec<Write> {
    let write = |part| Write { field: Field::Band(wearer, part), value: band.value(part) };
    BandField::ALL.map(write).to_vec()
}

/// Whether a couple that was loaded as an example has been touched since.
pub fn is_edited_example(couple: Couple<'_>) -> bool {
    couple.is_example() && couple.0.changes().len() > 1
}
