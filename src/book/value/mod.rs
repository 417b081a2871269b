//! What a field can hold.

use chrono::{NaiveDate, NaiveTime};

use super::field::{Outcome, Stage};
use super::id::ItemId;
use super::remedy::Remedy;
use super::said::Said;
use crate::trade::band::alloys::Alloy;
use crate::trade::band::{Bore, Finish, Profile};
use crate::trade::dates::closed::{Closure, Repeats, Weekdays};
use crate::trade::dates::holidays::Region;
use crate::trade::dates::lead_times::Step as Work;
use crate::trade::dates::places::{Place, PlaceDays};
use crate::trade::dates::season::MonthSet;
use crate::trade::dates::spread::{CalendarDays, Spread};
use crate::trade::dates::wedding::Wedding;
use crate::trade::fit::{self, CalibrationPoint, Gauge, Hands, ReadAt, Sits, Term};
use crate::trade::limits::Whole;
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
    Said(Box<Said>),
    /// A place in an order, or a number of things before it.
    Place(Whole),
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
    /// Of a ring already worn: how it sits. Such a ring stands for the gauge.
    pub sits: Option<Sits>,
    pub taken: NaiveDate,
    pub at: Option<NaiveTime>,
    /// The jeweller left it out of the reckoning. It stays where it is.
    pub left_out: bool,
}

/// A gauge with the name its owner gave it.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnGauge {
    pub name: String,
    pub gauge: Gauge,
    /// What it was found to be at some of its sizes.
    pub calibration: Vec<CalibrationPoint>,
}

/// A band of the tray, tried on as a whole.
#[derive(Clone, Debug, PartialEq)]
pub struct TryOnBand {
    /// What stands on it: a number, mostly.
    pub number: String,
    pub width: Length,
    pub bore: Bore,
    /// How thick it is.
    pub height: Option<Length>,
    pub size: SizeAsRead,
}

/// What a band was kept at or resized to once it had been worn.
#[derive(Clone, Debug, PartialEq)]
pub struct FittedAt {
    pub size: SizeAsRead,
    pub resized: bool,
    pub noted: NaiveDate,
}

/// An amount of the jeweller's own, and what the rule gave.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OwnAmount {
    pub worked_out: Length,
    pub used: Length,
}

/// The terms of an order size that the jeweller overruled.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct OwnTerms([Option<OwnAmount>; Term::ALL.len()]);

impl OwnTerms {
    pub fn of(&self, term: Term) -> Option<OwnAmount> {
        self.0[term as usize]
    }

    pub fn set(&mut self, term: Term, amount: OwnAmount) {
        self.0[term as usize] = Some(amount);
    }
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
    pub own: OwnTerms,
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
    /// How far a head held the band off at the top; nothing where it lay flush.
    pub off: Length,
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
