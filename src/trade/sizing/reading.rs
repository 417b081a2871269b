//! A size as it was read: kept on the scale and in the words in which it came.

use super::size::Size;
use super::systems::System;
use crate::trade::measure::{Circumference, Diameter};

/// What was stated: a size on a scale, or a length in millimetres and what it was measured along.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Stated {
    Size(Size),
    Diameter(Diameter),
    Circumference(Circumference),
}

impl Stated {
    /// How far it is round the inside.
    pub fn circumference(self) -> Circumference {
        match self {
            Stated::Size(size) => size.circumference(),
            Stated::Diameter(diameter) => diameter.circumference(),
            Stated::Circumference(circumference) => circumference,
        }
    }

    /// How far it is across the inside.
    pub fn diameter(self) -> Diameter {
        match self {
            Stated::Diameter(diameter) => diameter,
            Stated::Size(_) | Stated::Circumference(_) => self.circumference().diameter(),
        }
    }

    /// The system in which it was stated.
    pub fn system(self) -> System {
        match self {
            Stated::Size(size) => size.system(),
            Stated::Diameter(_) => System::Diameter,
            Stated::Circumference(_) => System::Circumference,
        }
    }
}

/// A step of a scale as it would be read: a size, but plain millimetres as the length they are.
impl From<Size> for Stated {
    fn from(size: Size) -> Stated {
        match size.system() {
            System::Diameter => Stated::Diameter(size.diameter()),
            System::Circumference => Stated::Circumference(size.circumference()),
            System::Uk | System::Us | System::Iso | System::Japan | System::Italy => Stated::Size(size),
        }
    }
}

/// A size with the text in which it was given.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SizeAsRead {
    pub stated: Stated,
    pub typed: String,
}

impl SizeAsRead {
    /// How far it is round the inside.
    pub fn circumference(&self) -> Circumference {
        self.stated.circumference()
    }
}
