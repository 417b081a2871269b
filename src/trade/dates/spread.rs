//! Numbers of days as types, and the spread of working days that a step takes.

use std::iter::Sum;
use std::ops::Add;

/// A number of working days: days on which the calendar in question works.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct WorkingDays(pub u16);

/// A number of days of the calendar, closed ones among them.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct CalendarDays(pub u16);

/// How long a step takes: at least, usually, at most.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Spread {
    least: WorkingDays,
    usual: WorkingDays,
    most: WorkingDays,
}

/// Why three numbers are no spread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SpreadError {
    LeastAboveUsual { least: WorkingDays, usual: WorkingDays },
    UsualAboveMost { usual: WorkingDays, most: WorkingDays },
    TooLong { most: WorkingDays, limit: WorkingDays },
}

impl Spread {
    /// The longest that one step may take: a year's work.
    pub const LONGEST: WorkingDays = WorkingDays(260);

    /// A spread, with its three numbers in order.
    pub const fn new(least: WorkingDays, usual: WorkingDays, most: WorkingDays) -> Result<Spread, SpreadError> {
        if least.0 > usual.0 {
            Err(SpreadError::LeastAboveUsual { least, usual })
        } else if usual.0 > most.0 {
            Err(SpreadError::UsualAboveMost { usual, most })
        } else if most.0 > Spread::LONGEST.0 {
            Err(SpreadError::TooLong { most, limit: Spread::LONGEST })
        } else {
            Ok(Spread { least, usual, most })
        }
    }

    pub const fn least(self) -> WorkingDays {
        self.least
    }

    pub const fn usual(self) -> WorkingDays {
        self.usual
    }

    pub const fn most(self) -> WorkingDays {
        self.most
    }
}

impl Add for WorkingDays {
    type Output = WorkingDays;
    fn add(self, other: WorkingDays) -> WorkingDays {
        WorkingDays(self.0.saturating_add(other.0))
    }
}

impl Sum for WorkingDays {
    fn sum<I: Iterator<Item = WorkingDays>>(days: I) -> WorkingDays {
        days.fold(WorkingDays(0), Add::add)
    }
}
