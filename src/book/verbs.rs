//! What a jeweller does, as the writes that it comes to. Each verb is one change, taken back as one.

use chrono::NaiveDate;

use super::band::{Band, BandField};
use super::change::Write;
use super::couple::Couple;
use super::field::{AppointmentField, Field};
use super::id::ItemId;
use super::ring::{Ring, RingField};
use super::settings::{PracticeField, Setting};
use super::value::{ExtraWork, FieldValue, FittedAt, Outcome, ReadingTaken, Recorded, Stage, Value, When, Wish};
use crate::trade::dates::milestones::Milestone;
use crate::trade::dates::wedding::Wedding;
use crate::trade::wearer::{Finger, Wearer};

impl<T: FieldValue + PartialEq> Setting<T> {
    /// It is to hold a value, or nothing.
    pub fn write(self, value: Option<T>) -> Write {
        hold(Field::Practice(self.field), value)
    }

    /// It is to hold a value, and nothing where that is the usual one.
    pub fn unless_usual(self, value: T, usual: T) -> Write {
        self.write((value != usual).then_some(value))
    }
}

/// Takes back whatever was set: what is usual holds again.
pub fn back_to_usual(settings: &[PracticeField]) -> Vec<Write> {
    settings.iter().map(|field| Write::clear(Field::Practice(*field))).collect()
}

/// What one of the two is called.
pub fn name(who: Wearer, name: Option<String>) -> Write {
    hold(Field::Name(who), name)
}

/// A way to reach them.
pub fn reach(item: ItemId, text: Option<String>) -> Write {
    hold(Field::Reach(item), text)
}

/// Where they were met.
pub fn met(text: Option<String>) -> Write {
    hold(Field::Met, text)
}

/// Their wedding, as far as it is known.
pub fn marry(wedding: Option<Wedding>) -> Write {
    hold(Field::Wedding, wedding)
}

/// Whether they agree to be recorded.
pub fn record(agreed: Option<Recorded>) -> Write {
    hold(Field::Recorded, agreed)
}

/// Writes a note down, or takes it out.
pub fn note(item: ItemId, text: Option<String>) -> Write {
    hold(Field::Note(item), text)
}

/// The couple is out of sight from a day on, or back in sight.
pub fn put_away(day: Option<NaiveDate>) -> Write {
    hold(Field::PutAway, day)
}

/// Everything was read back on a day.
pub fn read_back(day: NaiveDate) -> Write {
    hold(Field::ReadBack, Some(day))
}

/// The finger the band is for.
pub fn choose_finger(who: Wearer, finger: Finger) -> Write {
    hold(Field::Finger(who), Some(finger))
}

/// Whether somebody has never worn a ring.
pub fn first_ring(who: Wearer, is: bool) -> Write {
    hold(Field::FirstRing(who), Some(is))
}

/// Whether somebody owns no other ring.
pub fn no_rings(who: Wearer, none: bool) -> Write {
    hold(Field::NoRings(who), Some(none))
}

/// Whether something about a finger is to be thought of.
pub fn wish(who: Wearer, wish: Wish, is: bool) -> Write {
    hold(Field::Wish(who, wish), is.then_some(true))
}

/// The day on which a finger is to be measured again.
pub fn measure_again(who: Wearer, day: Option<NaiveDate>) -> Write {
    hold(Field::MeasureAgain(who), day)
}

/// A measurement, as it is from now on; none takes it out.
pub fn reading(who: Wearer, item: ItemId, taken: Option<ReadingTaken>) -> Write {
    hold(Field::Reading(who, item), taken)
}

/// Measures a finger. `moves`: the band is for this finger from now on; until now it was for `chosen`. Of the band's
/// finger nobody waits any more for a measurement.
pub fn measure(who: Wearer, item: ItemId, taken: ReadingTaken, moves: bool, chosen: Option<Finger>) -> Vec<Write> {
    let finger = taken.finger;
    let moved = moves.then(|| choose_finger(who, finger));
    let measured = (moves || chosen == Some(finger)).then(|| measure_again(who, None));
    [reading(who, item, Some(taken))].into_iter().chain(moved).chain(measured).collect()
}

/// What the band was kept at or resized to.
pub fn fit(who: Wearer, fitted: Option<FittedAt>) -> Write {
    hold(Field::Fitted(who), fitted)
}

/// The day on which a step of the order was finished.
pub fn finish(work: ExtraWork, day: Option<NaiveDate>) -> Write {
    hold(Field::WorkDone(work), day)
}

/// The day on which a milestone was reached.
pub fn arrive(milestone: Milestone, day: Option<NaiveDate>) -> Write {
    hold(Field::MilestoneDone(milestone), day)
}

/// A field to hold a value, or nothing. Which fields hold which values is said above, once each.
fn hold<T: FieldValue>(field: Field, value: Option<T>) -> Write {
    Write { field, value: value.map(FieldValue::into_value) }
}

/// Meets a couple: their first names, where they were met, and the stage they start at.
pub fn meet(first: String, second: Option<String>, met: Option<String>, today: NaiveDate) -> Vec<Write> {
    vec![
        name(Wearer::First, Some(first)),
        name(Wearer::Second, second),
        self::met(met),
        hold(Field::Stage, Some(Stage::Enquiry)),
        hold(Field::Reached(Stage::Enquiry), Some(today)),
    ]
}

/// Books an appointment, or changes one.
pub fn book(item: ItemId, when: When, place: Option<String>) -> Vec<Write> {
    vec![
        hold(Field::Appointment(item, AppointmentField::When), Some(when)),
        hold(Field::Appointment(item, AppointmentField::Place), place),
    ]
}

/// Notes what became of an appointment.
pub fn conclude(item: ItemId, outcome: Option<Outcome>) -> Vec<Write> {
    vec![hold(Field::Appointment(item, AppointmentField::Outcome), outcome)]
}

/// Takes an appointment out.
pub fn cancel(item: ItemId) -> Vec<Write> {
    AppointmentField::ALL.map(|part| Write::clear(Field::Appointment(item, part))).to_vec()
}

/// Moves a couple to a stage on a day.
pub fn move_to(stage: Stage, day: NaiveDate) -> Vec<Write> {
    vec![hold(Field::Stage, Some(stage)), hold(Field::Reached(stage), Some(day))]
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
