//! Ring sizes: the systems the world uses, in one table, and every conversion between them.
//!
//! INVARIANT: every conversion goes by way of the inside circumference. A [`Size`] always lies on its system's steps
//! and between the accepted circumferences, so that none can be built that has no name. No words: names are in `words`.

mod charts;
mod convert;
mod reading;
mod size;
mod systems;

pub use charts::{Published, chart_differs_at_most, published};
pub use convert::{Conversion, Lean, Nearest, Off, all, convert, even_scale, nearest, rounded_up, within};
pub use reading::{SizeAsRead, Stated};
pub use size::{Size, Step};
pub use systems::System;
