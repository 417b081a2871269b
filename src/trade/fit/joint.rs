//! A joint that is larger than the base: what it needs, how loose the ring then sits, what helps.
//!
//! What passes the knuckle counts as it was read, with no shift for width or bore: no rule says how a wider band
//! passes. Where it was tried in a width too far from the band's, it is to be tried again (house rule).

use super::constants::{LOOSE_ACCEPT, LOOSE_BEADS, LOOSE_BENCH};
use crate::trade::measure::{Circumference, Length};

/// What the joint means for the order size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JointFinding {
    /// The ring that the base wants passes, with so much to spare.
    Passes { spare: Length },
    /// By the jeweller's word it is made so much smaller than the joint needs.
    Overruled { short: Length },
    /// The ring is made for the joint, rounded up. `needs_more` than the base, or nothing where only the step below
    /// would not pass; `looseness` is what the ring then has too much at the base.
    Decides { needs_more: Length, looseness: Length, help: JointHelp },
}

/// What is done about a ring that is loose at the base.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum JointHelp {
    Accept,
    BeadsOrSpring,
    AskBench,
    /// Beads would be the answer, but this ring takes none.
    AskBenchInsteadOfBeads(NoBeads),
    HingedShank,
}

/// Why a ring takes no beads.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum NoBeads {
    /// Stones all round.
    FullEternity,
    HardMetal,
}

/// What helps: to 1.25 mm of looseness nothing, to 2.5 beads or a spring, to 5 the bench is asked, above that a shank
/// that opens. Millimetres of circumference. Source: common practice.
pub(super) fn help(looseness: Length, no_beads: Option<NoBeads>) -> JointHelp {
    if looseness <= LOOSE_ACCEPT.value {
        JointHelp::Accept
    } else if looseness <= LOOSE_BEADS.value {
        no_beads.map_or(JointHelp::BeadsOrSpring, JointHelp::AskBenchInsteadOfBeads)
    } else if looseness <= LOOSE_BENCH.value {
        JointHelp::AskBench
    } else {
        JointHelp::HingedShank
    }
}

/// The finding for a base that wants `wanted` and a ring of `size` on the grid; `size_for_base` is what the grid would
/// give without the joint.
pub(super) fn finding(
    joint: Circumference,
    wanted: Circumference,
    size_for_base: Circumference,
    size: Circumference,
    no_beads: Option<NoBeads>,
) -> JointFinding {
    if joint <= wanted && size == size_for_base {
        return JointFinding::Passes { spare: size.0 - joint.0 };
    }
    if size < joint {
        return JointFinding::Overruled { short: joint.0 - size.0 };
    }
    let looseness = size.0 - wanted.0;
    let needs_more = (joint.0 - wanted.0).max(Length::ZERO);
    JointFinding::Decides { needs_more, looseness, help: help(looseness, no_beads) }
}
