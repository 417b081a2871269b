//! What a field can hold.

use chrono::{NaiveDate, NaiveTime};

use super::field::{AppointmentField, BandField, Field, Outcome, PracticeField, RingField, Stage};
use super::id::ItemId;
use super::said::Said;
use crate::trade::band::alloys::Alloy;
use crate::trade::band::{Finish, Profile};
use crate::trade::dates::closed::{Closure, Repeats, Weekdays};
use crate::trade::dates::holidays::Region;
use crate::trade::dates::lead_times::Step as Work;
use crate::trade::dates::places::{Place, PlaceDays};
use crate::trade::dates::spread::{CalendarDays, Spread};
use crate::trade::dates::wedding::Wedding;
use crate::trade::fit::{self, Gauge, Hands, ReadAt};
use crate::trade::measure::{Circumference, Length, Percent};
use crate::trade::sizing::{Size, SizeAsRead, Step, System};
use crate::trade::wearer::Finger;

/// The value of a field. Compound values are things that are measured or settled in one go and are only true as a
/// whole.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    Text(String),
    Yes(bool),
    Day(NaiveDate),
    When(When),
    Wedding(Wedding),
    Recorded(Recorded),
    Stage(Stage),
    Outcome(Outcome),
    Finger(Finger),
    Reading(ReadingTaken),
    Length(Length),
    Profile(Profile),
    Finish(Finish),
    Metal(&'static Alloy),
    OrderSize(OrderSize),
    Stack(StackSeen),
    Dates(DatesSettled),
    Region(Region),
    System(System),
    Step(Step),
    Gauge(OwnGauge),
    Spread(Spread),
    Extra(Extra),
    Closure(NamedClosure),
    PlaceDays(PlaceDays),
    Weekdays(Weekdays),
    Time(NaiveTime),
    Days(CalendarDays),
    Percent(Percent),
    Said(Box<Said>),
    /// A value of a newer version, as it stands in the file.
    Unknown(String),
}

/// When an appointment is: a day, and a time if one was agreed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct When {
    pub day: NaiveDate,
    pub time: Option<NaiveTime>,
}

/// Whether they agree to be recorded, and the day they were asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Recorded {
    pub agrees: bool,
    pub asked: NaiveDate,
}

/// One measurement as it was taken: with the gauge as it was then, not as it may be set later.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadingTaken {
    pub size: SizeAsRead,
    pub finger: Finger,
    pub place: fit::Place,
    pub gauge: OwnGauge,
    /// Where a ring was read on a stick.
    pub read_at: ReadAt,
    pub hands: Hands,
    /// Widths of the rings worn beside the gauge.
    pub beside: Vec<Length>,
    pub taken: NaiveDate,
}

/// A gauge with the name its owner gave it.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnGauge {
    pub name: String,
    pub gauge: Gauge,
}

/// The size that was settled on, and what the calculation said.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OrderSize {
    pub size: Size,
    /// What was worked out before rounding to a size that the bench makes.
    pub exact: Circumference,
    /// The range it may lie in.
    pub from: Circumference,
    pub to: Circumference,
    /// Worked out for wearing beside the other rings, or alone.
    pub in_stack: bool,
    /// The jeweller chose another size than the nearest.
    pub overruled: bool,
    /// The reading was to be taken again.
    pub measure_again: bool,
    pub settled: NaiveDate,
}

/// What the stack came to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StackSeen {
    pub now: Length,
    pub later: Length,
    pub free: Length,
    /// The free length was measured, not taken from memory.
    pub measured: bool,
    pub seen: NaiveDate,
}

/// The way from order to wedding that was settled on.
#[derive(Clone, Debug, PartialEq)]
pub struct DatesSettled {
    pub region: Region,
    pub in_hand: CalendarDays,
    pub making: Spread,
    pub extras: Vec<ChosenExtra>,
    /// The chance of being in time that was wanted; none for the practice's own.
    pub confidence: Option<Percent>,
    pub order_by: NaiveDate,
    pub settled: NaiveDate,
}

/// A piece of work of the jeweller's own that comes on top of making.
#[derive(Clone, Debug, PartialEq)]
pub struct Extra {
    pub name: String,
    pub spread: Spread,
}

/// Which piece of work comes on top: one of the usual ones, or one that the jeweller has added.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ExtraWork {
    Usual(Work),
    Own(ItemId),
}

/// A piece of work that comes on top, with the days that were counted for it.
#[derive(Clone, Debug, PartialEq)]
pub struct ChosenExtra {
    pub work: ExtraWork,
    /// The name of one that the jeweller has added.
    pub name: Option<String>,
    pub spread: Spread,
}

/// Days on which a place is closed, with a name: "summer fortnight".
#[derive(Clone, Debug, PartialEq)]
pub struct NamedClosure {
    pub name: String,
    pub place: Place,
    pub days: Closure,
}

impl NamedClosure {
    /// Whether it is past and does not come again.
    pub fn is_over(&self, today: NaiveDate) -> bool {
        self.days.repeats() == Repeats::Once && self.days.to() < today
    }
}

impl Value {
    /// Whether this is the kind of value that the field holds. Anything may stand in a field of a newer version.
    pub fn fits(&self, field: &Field) -> bool {
        use PracticeField as P;
        match field {
            Field::Unknown(_) => true,
            Field::Name(_) | Field::Reach(_) | Field::Met | Field::Note(_) => matches!(self, Value::Text(_)),
            Field::Wedding => matches!(self, Value::Wedding(_)),
            Field::Appointment(_, AppointmentField::When) => matches!(self, Value::When(_)),
            Field::Appointment(_, AppointmentField::Place) => matches!(self, Value::Text(_)),
            Field::Appointment(_, AppointmentField::Outcome) => matches!(self, Value::Outcome(_)),
            Field::Recorded => matches!(self, Value::Recorded(_)),
            Field::Stage => matches!(self, Value::Stage(_)),
            Field::Reached(_) | Field::PutAway | Field::ReadBack | Field::WorkDone(_) | Field::MilestoneDone(_) => {
                matches!(self, Value::Day(_))
            }
            Field::Example | Field::FirstRing(_) | Field::NoRings(_) => matches!(self, Value::Yes(_)),
            Field::Finger(_) | Field::Ring(_, _, RingField::Finger) => matches!(self, Value::Finger(_)),
            Field::Reading(..) => matches!(self, Value::Reading(_)),
            Field::Ring(_, _, RingField::Name) => matches!(self, Value::Text(_)),
            Field::Ring(_, _, RingField::ShoulderWidth | RingField::TopWidth) => matches!(self, Value::Length(_)),
            Field::Ring(_, _, RingField::Profile) | Field::Band(_, BandField::Profile) => {
                matches!(self, Value::Profile(_))
            }
            Field::Ring(_, _, RingField::Metal) | Field::Band(_, BandField::Metal) => matches!(self, Value::Metal(_)),
            Field::Ring(_, _, RingField::Planned) => matches!(self, Value::Yes(_)),
            Field::Band(_, BandField::Width) | Field::FreeLength(_) => matches!(self, Value::Length(_)),
            Field::Band(_, BandField::Finish) => matches!(self, Value::Finish(_)),
            Field::OrderSize(_) => matches!(self, Value::OrderSize(_)),
            Field::Stack(_) => matches!(self, Value::Stack(_)),
            Field::Dates => matches!(self, Value::Dates(_)),
            Field::Said(list) => matches!(self, Value::Said(said) if said.id == *list),
            Field::Practice(P::Fair | P::PhoneName(_)) => matches!(self, Value::Text(_)),
            Field::Practice(P::Region) => matches!(self, Value::Region(_)),
            Field::Practice(P::FirstSystem) => matches!(self, Value::System(_)),
            Field::Practice(P::Step) => matches!(self, Value::Step(_)),
            Field::Practice(P::Gauge(_)) => matches!(self, Value::Gauge(_)),
            Field::Practice(P::LeadTime(_)) => matches!(self, Value::Spread(_)),
            Field::Practice(P::Extra(_)) => matches!(self, Value::Extra(_)),
            Field::Practice(P::Closure(_)) => matches!(self, Value::Closure(_)),
            Field::Practice(P::Weekdays) => matches!(self, Value::Weekdays(_)),
            Field::Practice(P::WorksOnHolidays | P::Holiday(_) | P::CountsToday) => matches!(self, Value::Yes(_)),
            Field::Practice(P::CutOff) => matches!(self, Value::Time(_)),
            Field::Practice(P::DaysInHand | P::TryOnAfter) => matches!(self, Value::Days(_)),
            Field::Practice(P::PlaceDays(_)) => matches!(self, Value::PlaceDays(_)),
            Field::Practice(P::FreeLength | P::Gap | P::Constant(_)) => matches!(self, Value::Length(_)),
            Field::Practice(P::Roomy | P::Full | P::Confidence | P::BusyChance | P::BusyLonger | P::ResizeChance) => {
                matches!(self, Value::Percent(_))
            }
        }
    }
}
