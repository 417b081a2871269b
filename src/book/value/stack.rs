//! What the stack came to, and what was chosen for a band that a head holds off.

use chrono::NaiveDate;

use crate::book::id::ItemId;
use crate::trade::measure::Length;

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

/// The ways to deal with a head that reaches over the band.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Way {
    /// Shaped, with a bay round the head.
    Shaped,
    /// Straight, and low enough to clear it.
    Lower,
    /// Straight, and the gap accepted.
    Gap,
}

impl Way {
    pub const ALL: [Way; 3] = [Way::Shaped, Way::Lower, Way::Gap];
}

/// The way that was chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Remedy {
    pub way: Way,
    /// How deep the bay is, how high the band is at most, or how wide the gap is.
    pub by: Length,
    /// What the bench gets for the shape: an impression of the rings as they are worn,
    pub impression: bool,
    /// a template of the curve,
    pub template: bool,
    /// the ring itself.
    pub ring: Option<Away>,
}

/// A ring that is at the bench for a while.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Away {
    /// Which of the rings they own; none where it was not said.
    pub ring: Option<ItemId>,
    pub from: Option<NaiveDate>,
    /// The day on which it is to be back.
    pub to: Option<NaiveDate>,
}

impl Remedy {
    /// Whether the bench would get anything to shape the band by.
    pub fn has_what_it_needs(&self) -> bool {
        self.way != Way::Shaped || self.impression || self.template || self.ring.is_some()
    }
}
