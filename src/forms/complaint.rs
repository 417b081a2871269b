//! What is wrong with what was typed into a field, typed itself: `words::complaint` turns it into its sentence.

use chrono::NaiveDate;

use super::texts::Key;
use crate::book::schedule::Step;
use crate::trade::band::section::SectionError;
use crate::trade::dates::closed::CalendarError;
use crate::trade::dates::entry::{DateEntryError, TimeEntryError};
use crate::trade::dates::spread::SpreadError;
use crate::trade::entry::{ContactError, NumberError, SizeEntryError, TextError, WidthsError};
use crate::trade::stack::StackError;

/// What is wrong with which field, in the order of the form.
pub type Complaints = Vec<(Key, Complaint)>;

#[derive(Clone, Debug, PartialEq)]
pub enum Complaint {
    Number(NumberError, Noun),
    Text(TextError, Noun),
    Contact(ContactError),
    Widths(WidthsError),
    Size(SizeEntryError),
    /// A size can be read in several ways, and nobody has said which is meant.
    WhichSize,
    Date(DateEntryError, Asked),
    Time(TimeEntryError),
    Spread(SpreadError),
    Calendar(CalendarError),
    /// With this closure nobody would work in the year after this day, its last.
    NeverWorks(NaiveDate),
    Section(SectionError),
    Stack(StackError),
    /// Of the two sizes at a point of a calibration one is missing.
    BothOrNeither,
    /// A reading is of another finger than the band, and nobody has said whether the band goes there.
    WhetherItMoves,
    /// How far a head reaches is there, and how high its underside lies is not.
    HeadIncomplete,
    /// A ring is to be back before it goes away.
    BackBeforeAway,
    /// A ring came back before it was handed over,
    BackBeforeGone,
    /// or without having been.
    BackNotGone,
    /// A ring was handed over, and nothing says that it came back.
    StillAway,
    /// What has happened cannot lie after today.
    NotYet(NaiveDate),
    /// A step of an order cannot have been finished before this day: the order was placed then, or the step ahead of it
    /// was finished.
    TooEarly {
        from: NaiveDate,
        ahead: Option<Step>,
    },
    /// What is still to come cannot lie before today.
    DayPast {
        day: NaiveDate,
        today: NaiveDate,
    },
}

/// What a complaint calls the thing that was to be entered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Noun {
    /// As the table of accepted ranges calls it.
    OfLimit,
    RingName,
    /// How deep the curve of a shaped band is.
    CurveDepth,
    MostThickness,
    GapAtTop,
}

/// Which kind of date a field asks for: its sentences show what may be typed there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Asked {
    Day,
    Wedding,
}
