//! Readings, gauges and sizes: what was measured, and what was settled from it.

use chrono::{NaiveDate, NaiveTime};

use crate::trade::band::Bore;
use crate::trade::fit::{self, CalibrationPoint, Gauge, Hands, ReadAt, Sits, Term};
use crate::trade::measure::{Circumference, Length};
use crate::trade::sizing::{Size, SizeAsRead};
use crate::trade::wearer::Finger;

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
