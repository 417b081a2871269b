//! What a field can hold.

mod choices;
mod days;
mod list;
mod sizes;
mod stack;

use chrono::{NaiveDate, NaiveTime};

pub use choices::{Constant, Outcome, Stage, Wish};
pub use days::{ChosenExtra, DatesSettled, Extra, ExtraWork, NamedClosure, Recorded, When};
pub use list::{AnswerError, Invitation, PreparationList, check, is_offered};
pub use sizes::{FittedAt, OrderSize, OwnAmount, OwnGauge, OwnTerms, ReadingTaken, TryOnBand};
pub use stack::{Away, Remedy, StackSeen, Way};

use crate::trade::band::alloys::Alloy;
use crate::trade::band::{Finish, Profile};
use crate::trade::dates::closed::Weekdays;
use crate::trade::dates::holidays::Region;
use crate::trade::dates::places::PlaceDays;
use crate::trade::dates::season::MonthSet;
use crate::trade::dates::spread::{CalendarDays, Spread};
use crate::trade::dates::wedding::Wedding;
use crate::trade::limits::Whole;
use crate::trade::measure::{Length, Percent};
use crate::trade::sizing::{Step, System};
use crate::trade::wearer::Finger;

/// Something that a field can hold, by its type alone.
pub trait FieldValue: Sized {
    const KIND: ValueKind;

    /// The value, if it is of this type.
    fn of(value: &Value) -> Option<&Self>;

    fn into_value(self) -> Value;
}

/// The kinds of value, a row a kind: its name, and the type of what it holds. No two rows have one type, so that a type
/// says which kind it is.
macro_rules! kinds {
    ($($(#[$doc:meta])* $kind:ident($type:ty),)+) => {
        /// The value of a field. Compound values are things that are measured or settled in one go and are only true
        /// as a whole.
        #[derive(Clone, Debug, PartialEq)]
        pub enum Value {
            $($(#[$doc])* $kind($type),)+
            /// A value of a newer version, as it stands in the file.
            Unknown(String),
        }

        /// A kind of value.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum ValueKind {
            $($kind,)+
        }

        impl Value {
            /// Its kind; none for one of a newer version, which may stand anywhere.
            pub fn kind(&self) -> Option<ValueKind> {
                match self {
                    $(Value::$kind(_) => Some(ValueKind::$kind),)+
                    Value::Unknown(_) => None,
                }
            }
        }

        $(impl FieldValue for $type {
            const KIND: ValueKind = ValueKind::$kind;

            fn of(value: &Value) -> Option<&Self> {
                match value {
                    Value::$kind(held) => Some(held),
                    _ => None,
                }
            }

            fn into_value(self) -> Value {
                Value::$kind(self)
            }
        })+
    };
}

kinds! {
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
    Remedy(Remedy),
    Dates(DatesSettled),
    Region(Region),
    System(System),
    Step(Step),
    Gauge(OwnGauge),
    TryOn(TryOnBand),
    Fitted(FittedAt),
    Spread(Spread),
    Extra(Extra),
    Closure(NamedClosure),
    PlaceDays(PlaceDays),
    Weekdays(Weekdays),
    Months(MonthSet),
    Time(NaiveTime),
    Days(CalendarDays),
    Percent(Percent),
    PreparationList(Box<PreparationList>),
    /// A place in an order, or a number of things before it.
    Place(Whole),
}
