//! Every ring worn together on a finger, now and later: their room, their match, whether they lie flush, their wear.
//!
//! INVARIANT: rings are handed in from the web outwards, and answers name them by their place in that list. What
//! nobody measured is never made up: an answer says that it is not known, or that it is the most it can be.

mod flush;
mod later;
mod limits;
mod shoulder;
mod stretch;
mod wear;

pub use flush::{Apart, Cause, Clears, Head, Lying, Remedies, flush, remedies};
pub use later::{Tighter, tighter_later};
pub use limits::{Quantity, RINGS_MOST, Range, StackError, thresholds};
pub use shoulder::{FromTop, ProfileMatch, ShoulderMatch, Taper, profile_match, shoulder_match};
pub use stretch::{
    FREE_FROM_MEMORY, House, Permille, Position, RingOnFinger, RingState, Stack, StackInputs, Stretch, Verdict, When,
    stack,
};
pub use wear::{Loses, Surface, Wear, Why, wear};
