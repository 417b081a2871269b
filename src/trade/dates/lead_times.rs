//! How long things usually take, until the jeweller enters their own figures: rows, each with its standing.

use super::spread::{CalendarDays, Spread, WorkingDays};
use crate::trade::measure::Standing;

/// A step that takes days.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Step {
    /// Making the band, from order to finished.
    Making,
    /// Setting stones in it.
    Stones,
    /// Testing and marking at an assay office, both ways included.
    Marking,
    /// Engraving inside.
    Engraving,
    /// Carrying it to the jeweller or the couple.
    Delivery,
    /// Room for one change of size after the try-on.
    Resizing,
}

/// One row: a step, how long it takes, and how well that is founded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LeadTime {
    pub step: Step,
    pub days: Spread,
    pub standing: Standing,
}

/// In hand so long before the wedding: a wrong size shows only when the ring is tried on. Common practice.
pub const IN_HAND: CalendarDays = CalendarDays(14);

const fn row(step: Step, least: u16, usual: u16, most: u16, standing: Standing) -> LeadTime {
    match Spread::new(WorkingDays(least), WorkingDays(usual), WorkingDays(most)) {
        Ok(days) => LeadTime { step, days, standing },
        Err(_) => panic!("a row's three numbers are not in order"),
    }
}

/// Making: three to four weeks of work, customary in the trade; the usual figure is the middle, rounded down.
pub const MAKING: LeadTime = row(Step::Making, 15, 17, 20, Standing::CommonPractice);

/// What may come on top of making, in the order of the work. No published source: every row is common practice, to be set to one's own.
#[rustfmt::skip]
pub const EXTRAS: [LeadTime; 5] = [
    row(Step::Stones,    2, 4, 7,  Standing::CommonPractice),
    row(Step::Engraving, 1, 2, 5,  Standing::CommonPractice),
    row(Step::Marking,   3, 5, 8,  Standing::CommonPractice),
    row(Step::Delivery,  1, 1, 3,  Standing::CommonPractice),
    row(Step::Resizing,  5, 7, 10, Standing::CommonPractice),
];

/// The row of a step.
pub const fn usual(step: Step) -> LeadTime {
    match step {
        Step::Making => MAKING,
        Step::Stones => EXTRAS[0],
        Step::Engraving => EXTRAS[1],
        Step::Marking => EXTRAS[2],
        Step::Delivery => EXTRAS[3],
        Step::Resizing => EXTRAS[4],
    }
}
