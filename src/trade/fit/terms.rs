//! The terms of the order size: what each is for, by how much, and what the jeweller puts in its place.

use super::constants::PerMm;
use super::reading::{Hands, ReadAt, Sits};
use crate::trade::measure::{Circumference, Length, Standing};

/// One part of the way from the reading to the order size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Shift {
    pub kind: ShiftKind,
    /// Up is above zero.
    pub amount: Length,
    /// What the rule gave, where the jeweller has put another amount in its place; otherwise the same.
    pub worked_out: Length,
    /// How sure the amount is, one standard deviation.
    pub sd: Length,
    pub standing: Standing,
}

/// What a shift is for, with the figures that its reason names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShiftKind {
    /// The gauge's calibration. Listed only where it is off.
    Gauge,
    /// The ring was read at the wrong place of the stick. Listed only then.
    Stick {
        read_at: ReadAt,
        width: Length,
        taper: PerMm,
    },
    /// The band is wider than the gauge (`apart` above zero) or narrower, rings worn beside each counting half.
    Width {
        apart: Length,
        per_mm: PerMm,
        beside: bool,
        at_most: Option<Length>,
    },
    /// The band's bore is domed otherwise than the gauge's. Reliefs at the edge, 0 for a flat bore.
    Bore {
        band_relief: Length,
        gauge_relief: Length,
        per_mm: PerMm,
        at_most: Option<Length>,
    },
    /// A wider band of this bore would come out smaller: this one takes the wider one's size. Listed only then.
    Level {
        as_wide_as: Length,
    },
    Hands(Hands),
    /// A ring already worn, in the place of how the hands were.
    Sits(Sits),
    /// The same term of several readings that differ in it, each by its share.
    Several {
        term: Term,
        readings: usize,
    },
    /// What bands come out off by here. Listed only where it was set.
    Offset,
    /// The joint needs more than the base. Listed only then.
    Joint {
        passes_at: Circumference,
        /// How wide the gauge was that passed; none for one as wide as the band.
        width: Option<Length>,
    },
}

/// The terms of the order size, each of which the jeweller may overrule.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Term {
    Gauge,
    Stick,
    Width,
    Bore,
    Hands,
    Sits,
    Offset,
    Joint,
}

impl Term {
    pub const ALL: [Term; 8] =
        [Term::Gauge, Term::Stick, Term::Width, Term::Bore, Term::Hands, Term::Sits, Term::Offset, Term::Joint];
}

impl ShiftKind {
    /// The term that it is; none for what keeps a narrow band from being larger than a wide one.
    pub fn term(&self) -> Option<Term> {
        Some(match self {
            ShiftKind::Gauge => Term::Gauge,
            ShiftKind::Stick { .. } => Term::Stick,
            ShiftKind::Width { .. } => Term::Width,
            ShiftKind::Bore { .. } => Term::Bore,
            ShiftKind::Level { .. } => return None,
            ShiftKind::Hands(_) => Term::Hands,
            ShiftKind::Sits(_) => Term::Sits,
            ShiftKind::Several { term, .. } => *term,
            ShiftKind::Offset => Term::Offset,
            ShiftKind::Joint { .. } => Term::Joint,
        })
    }
}

/// The amounts that the jeweller puts in the place of what the rules give.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Overrules([Option<Length>; Term::ALL.len()]);

impl Overrules {
    pub fn of(&self, term: Term) -> Option<Length> {
        self.0[term as usize]
    }

    pub fn set(&mut self, term: Term, amount: Option<Length>) {
        self.0[term as usize] = amount;
    }
}

impl Shift {
    pub(super) fn new(kind: ShiftKind, amount: Length, sd: Length, standing: Standing) -> Shift {
        Shift { kind, amount, worked_out: amount, sd, standing }
    }

    /// The same with the jeweller's own amount, where they have put one.
    pub(super) fn overruled(mut self, by: &Overrules) -> Shift {
        if let Some(own) = self.kind.term().and_then(|term| by.of(term)) {
            self.amount = own;
            self.standing = Standing::Yours;
        }
        self
    }
}
