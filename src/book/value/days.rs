//! Days: appointments, whether they agree to be recorded, and what the way to the wedding is counted with.

use chrono::{NaiveDate, NaiveTime};

use crate::book::id::ItemId;
use crate::trade::dates::closed::{Closure, Repeats};
use crate::trade::dates::holidays::Region;
use crate::trade::dates::lead_times::Step as Work;
use crate::trade::dates::places::Place;
use crate::trade::dates::spread::{CalendarDays, Spread};
use crate::trade::measure::Percent;

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
