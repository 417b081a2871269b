//! Every ring worn together on a finger, now and later, against the length the finger has free.
//!
//! INVARIANT: widths along the finger only. Heads, heights and wear are no part of it.

mod limits;
mod shoulder;
mod stretch;

pub use limits::{Quantity, RINGS_MOST, Range, StackError, thresholds};
pub use shoulder::{ShoulderMatch, shoulder_match};
pub use stretch::{
    FREE_FROM_MEMORY, House, Permille, Position, RingOnFinger, Stack, StackInputs, Stretch, Verdict, When, stack,
};
