//! What a circumference is called: as a size to make, and as what was read.

use crate::book::fitting;
use crate::trade::measure::Circumference;
use crate::trade::sizing::{self, Nearest, Stated, Step, System};

/// The sizes of the first system in the steps that the workshop makes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Scale {
    pub system: System,
    pub step: Step,
}

impl Scale {
    pub fn nearest(self, at: Circumference) -> Nearest {
        sizing::nearest(self.system, at, self.step)
    }

    /// What a circumference to be made is called: its size, or beyond the scale the millimetres.
    pub fn name(self, at: Circumference) -> Stated {
        if self.is_beyond(at) { Stated::Circumference(at) } else { Stated::Size(self.nearest(at).size) }
    }

    pub fn is_beyond(self, at: Circumference) -> bool {
        self.nearest(at).off.0.abs() > fitting::grid(self.system, self.step).step.half()
    }

    /// What was read is no size to make: it is called by the nearest quarter, whatever step the workshop makes. So it
    /// is named on the finger's page too.
    pub fn name_read(self, at: Circumference) -> Stated {
        Scale { step: Step::Quarter, ..self }.name(at)
    }
}
