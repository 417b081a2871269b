//! Which kind of value each field holds, said once more beside what is read from a file.

use bandwright::book::field::{AppointmentField, BandField, Field, PracticeField, RingField};
use bandwright::book::value::Value;

/// Whether this is the kind of value that the field holds. Anything may stand in a field of a newer version.
pub fn fits(value: &Value, field: &Field) -> bool {
    use PracticeField as P;
    match field {
        Field::Unknown(_) => true,
        Field::Name(_) | Field::Reach(_) | Field::Met | Field::Note(_) => matches!(value, Value::Text(_)),
        Field::Wedding => matches!(value, Value::Wedding(_)),
        Field::Appointment(_, AppointmentField::When) => matches!(value, Value::When(_)),
        Field::Appointment(_, AppointmentField::Place) => matches!(value, Value::Text(_)),
        Field::Appointment(_, AppointmentField::Outcome) => matches!(value, Value::Outcome(_)),
        Field::Recorded => matches!(value, Value::Recorded(_)),
        Field::Stage => matches!(value, Value::Stage(_)),
        Field::Reached(_) | Field::PutAway | Field::ReadBack | Field::WorkDone(_) | Field::MilestoneDone(_) => {
            matches!(value, Value::Day(_))
        }
        Field::Example | Field::FirstRing(_) | Field::NoRings(_) | Field::SameAs(_) => {
            matches!(value, Value::Yes(_))
        }
        Field::Finger(_) => matches!(value, Value::Finger(_)),
        Field::Reading(..) => matches!(value, Value::Reading(_)),
        Field::Ring(_, _, part) => fits_ring(value, *part),
        Field::Band(_, part) => fits_band(value, *part),
        Field::FreeLength(_) | Field::FreeLengthOf(..) => matches!(value, Value::Length(_)),
        Field::Wish(..) => matches!(value, Value::Yes(_)),
        Field::MeasureAgain(_) | Field::RingGone(_) | Field::RingBack(_) => matches!(value, Value::Day(_)),
        Field::Fitted(_) => matches!(value, Value::Fitted(_)),
        Field::OrderSize(_) => matches!(value, Value::OrderSize(_)),
        Field::Stack(_) => matches!(value, Value::Stack(_)),
        Field::Remedy(_) => matches!(value, Value::Remedy(_)),
        Field::Dates => matches!(value, Value::Dates(_)),
        Field::Said(list) => matches!(value, Value::Said(said) if said.id == *list),
        Field::Practice(P::Fair | P::PhoneName(_)) => matches!(value, Value::Text(_)),
        Field::Practice(P::Region) => matches!(value, Value::Region(_)),
        Field::Practice(P::FirstSystem) => matches!(value, Value::System(_)),
        Field::Practice(P::Step) => matches!(value, Value::Step(_)),
        Field::Practice(P::Gauge(_)) => matches!(value, Value::Gauge(_)),
        Field::Practice(P::TryOn(_)) => matches!(value, Value::TryOn(_)),
        Field::Practice(P::LeadTime(_)) => matches!(value, Value::Spread(_)),
        Field::Practice(P::Extra(_)) => matches!(value, Value::Extra(_)),
        Field::Practice(P::Closure(_)) => matches!(value, Value::Closure(_)),
        Field::Practice(P::Weekdays) => matches!(value, Value::Weekdays(_)),
        Field::Practice(P::BusyMonths) => matches!(value, Value::Months(_)),
        Field::Practice(P::WorksOnHolidays | P::Holiday(_) | P::CountsToday) => matches!(value, Value::Yes(_)),
        Field::Practice(P::CutOff) => matches!(value, Value::Time(_)),
        Field::Practice(P::DaysInHand | P::TryOnAfter) => matches!(value, Value::Days(_)),
        Field::Practice(P::PlaceDays(_)) => matches!(value, Value::PlaceDays(_)),
        Field::Practice(P::FreeLength | P::Gap | P::Constant(_)) => matches!(value, Value::Length(_)),
        Field::Practice(P::Clearance | P::Catch | P::Thinnest) => matches!(value, Value::Length(_)),
        Field::Practice(P::Roomy | P::Full | P::Confidence | P::BusyChance | P::BusyLonger | P::ResizeChance) => {
            matches!(value, Value::Percent(_))
        }
    }
}

fn fits_ring(value: &Value, part: RingField) -> bool {
    use RingField as R;
    match part {
        R::Name => matches!(value, Value::Text(_)),
        R::Finger => matches!(value, Value::Finger(_)),
        R::ShoulderWidth | R::TopWidth | R::BackWidth | R::Height | R::Inside => matches!(value, Value::Length(_)),
        R::HeadToWeb | R::HeadToTip | R::HeadUnderside => matches!(value, Value::Length(_)),
        R::Profile => matches!(value, Value::Profile(_)),
        R::Metal => matches!(value, Value::Metal(_)),
        R::Place => matches!(value, Value::Place(_)),
        R::Stones | R::Holds | R::Planned => matches!(value, Value::Yes(_)),
    }
}

fn fits_band(value: &Value, part: BandField) -> bool {
    use BandField as B;
    match part {
        B::Width | B::Height | B::Dome | B::Relief => matches!(value, Value::Length(_)),
        B::Profile => matches!(value, Value::Profile(_)),
        B::Finish => matches!(value, Value::Finish(_)),
        B::Metal => matches!(value, Value::Metal(_)),
        B::Place => matches!(value, Value::Place(_)),
    }
}
