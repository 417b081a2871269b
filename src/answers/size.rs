//! One size on every scale: what it is called in each system, how far the nearest size there is off, and what published
//! charts make of it.

use super::Tone;
use crate::forms::SizeTyped;
use crate::trade::arrange::in_order;
use crate::trade::measure::{Circumference, Standing};
use crate::trade::sizing::{self, Conversion, Published, Size, Stated, Step, System};

/// What was typed, and what it is called elsewhere.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SizeAnswer {
    /// None while nothing can be read, or nobody has said which of several readings is meant.
    pub converted: Option<Converted>,
    /// In so many ways it can be read; nought while nothing can be.
    pub readings: usize,
}

/// One size in every system.
#[derive(Clone, Debug, PartialEq)]
pub struct Converted {
    pub stated: Stated,
    pub at: Circumference,
    /// The first system of the practice first.
    pub systems: Vec<InSystem>,
}

/// What the size is called in one system.
#[derive(Clone, Debug, PartialEq)]
pub struct InSystem {
    /// The nearest size that there is, in quarters where the scale has them: what step the workshop makes is asked for
    /// an order, not here.
    pub found: Conversion,
    pub standing: Standing,
    /// What published charts make of that size.
    pub published: Vec<(Size, Published)>,
}

/// The answer to what was typed.
pub fn answer(typed: &SizeTyped, first: System) -> SizeAnswer {
    let converted = typed.meant().map(|meant| convert(meant.stated, first));
    SizeAnswer { converted, readings: typed.readings.len() }
}

/// A size in every system, the first one first.
pub fn convert(stated: Stated, first: System) -> Converted {
    let at = stated.circumference();
    let systems = in_order(System::ALL, |system| *system != first).into_iter();
    Converted { stated, at, systems: systems.map(|system| in_system(system, at)).collect() }
}

fn in_system(system: System, at: Circumference) -> InSystem {
    let found = sizing::convert(system, at, Step::Quarter);
    let size = match found.stated {
        Stated::Size(size) => Some(size),
        Stated::Diameter(_) | Stated::Circumference(_) => None,
    };
    let on_scale = size.filter(|_| !found.is_beyond());
    InSystem {
        standing: size.map_or(system.standing(), Size::standing),
        published: on_scale
            .map(|size| sizing::published(size).into_iter().map(|it| (size, it)).collect())
            .unwrap_or_default(),
        found,
    }
}

impl SizeAnswer {
    /// Whether it can be read in several ways, and nobody has said which is meant.
    pub fn is_open(&self) -> bool {
        self.converted.is_none() && self.readings > 1
    }

    pub fn tone(&self) -> Tone {
        if self.converted.is_some() { Tone::Act } else { Tone::Care }
    }
}
