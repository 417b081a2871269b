//! What a jeweller does, as the writes that it comes to. Each verb is one change, taken back as one.

use chrono::NaiveDate;

use super::change::Write;
use super::couple::{Couple, Ring};
use super::field::{AppointmentField, BandField, Field, Outcome, RingField, Stage};
use super::id::ItemId;
use super::value::{Value, When};
use crate::trade::measure::Length;
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
    let field = |part| Field::Ring(wearer, ring.item, part);
    let length = |part, of: Option<Length>| Write { field: field(part), value: of.map(Value::Length) };
    let yes = |part, is: bool| Write { field: field(part), value: is.then_some(Value::Yes(true)) };
    vec![
        text(field(RingField::Name), ring.name),
        Write { field: field(RingField::Finger), value: ring.finger.map(Value::Finger) },
        length(RingField::ShoulderWidth, ring.shoulder_width),
        length(RingField::TopWidth, ring.top_width),
        length(RingField::BackWidth, ring.back_width),
        length(RingField::Height, ring.height),
        length(RingField::Inside, ring.inside),
        length(RingField::HeadToWeb, ring.head.to_web),
        length(RingField::HeadToTip, ring.head.to_tip),
        length(RingField::HeadUnderside, ring.head.underside),
        yes(RingField::Stones, ring.stones),
        yes(RingField::Holds, ring.holds),
        Write { field: field(RingField::Place), value: ring.place.map(Value::Place) },
        Write { field: field(RingField::Profile), value: ring.profile.map(Value::Profile) },
        Write { field: field(RingField::Metal), value: ring.metal.map(Value::Metal) },
        Write::set(field(RingField::Planned), Value::Yes(ring.planned)),
    ]
}

/// Takes a ring out.
pub fn drop_ring(wearer: Wearer, item: ItemId) -> Vec<Write> {
    RingField::ALL.map(|part| Write::clear(Field::Ring(wearer, item, part))).to_vec()
}

/// Chooses the band, as far as it is known.
pub fn choose_band(wearer: Wearer, band: super::couple::Band) -> Vec<Write> {
    let field = |part| Field::Band(wearer, part);
    let length = |part, of: Option<Length>| Write { field: field(part), value: of.map(Value::Length) };
    vec![
        length(BandField::Width, band.width),
        Write { field: field(BandField::Profile), value: band.profile.map(Value::Profile) },
        Write { field: field(BandField::Finish), value: band.finish.map(Value::Finish) },
        Write { field: field(BandField::Metal), value: band.metal.map(Value::Metal) },
        length(BandField::Height, band.height),
        length(BandField::Dome, band.dome),
        length(BandField::Relief, band.relief),
        Write { field: field(BandField::Place), value: band.place.map(Value::Place) },
    ]
}

/// Whether a couple that was loaded as an example has been touched since.
pub fn is_edited_example(couple: Couple<'_>) -> bool {
    couple.is_example() && couple.0.changes().len() > 1
}
