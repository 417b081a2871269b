//! Who wears a ring, and where.

/// One of the two people of a couple. The order says nothing about them: it is the order in which they were entered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Wearer {
    First,
    Second,
}

impl Wearer {
    pub const BOTH: [Wearer; 2] = [Wearer::First, Wearer::Second];

    pub fn other(self) -> Wearer {
        match self {
            Wearer::First => Wearer::Second,
            Wearer::Second => Wearer::First,
        }
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Hand {
    Left,
    Right,
}

impl Hand {
    pub const ALL: [Hand; 2] = [Hand::Left, Hand::Right];
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Digit {
    Thumb,
    Index,
    Middle,
    Ring,
    Little,
}

impl Digit {
    pub const ALL: [Digit; 5] = [Digit::Thumb, Digit::Index, Digit::Middle, Digit::Ring, Digit::Little];
}

/// The finger a ring is worn on, or a reading was taken from. Left and right are never averaged together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Finger {
    pub hand: Hand,
    pub digit: Digit,
}

impl Finger {
    /// Where most bands go.
    pub const LEFT_RING: Finger = Finger { hand: Hand::Left, digit: Digit::Ring };
}
