//! How much of the finger the rings take, now and later.
//!
//! The room is counted at the palm, where the free length is measured. A rigid band that a head holds off at the
//! top leans: it stands off half as far at the shoulders and touches at the palm, so that a gap takes no room
//! there. What a curve or a gap adds at the top is said beside it, with a verdict of its own.

use super::limits::{Quantity, StackError, check};
use crate::trade::measure::{Length, Percent, Standing};

/// Whether a ring is worn now or only planned.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum When {
    Now,
    Later,
}

/// Whether a ring of a stack is there already.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum RingState {
    /// On the finger already.
    Worn,
    /// The band that is being made.
    Wanted,
    /// To come later.
    Planned,
}

impl RingState {
    /// When it is worn.
    pub fn when(self) -> When {
        if self == RingState::Planned { When::Later } else { When::Now }
    }
}

/// One ring of the stack. What it is called is known to whoever asks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct RingOnFinger {
    pub width: Length,
    pub when: When,
}

/// The free length between web and joint crease where nobody measured it: 24 mm, from memory 20 to 28.
pub const FREE_FROM_MEMORY: Length = Length::tenthousandths(240_000);

/// What a practice takes for granted. All of it common practice or house rule, the free length from memory.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct House {
    /// Between two rings.
    pub gap: Length,
    /// Taken where a finger's own was not measured.
    pub free_length: Length,
    /// Up to here there is room.
    pub roomy: Percent,
    /// Up to here the finger is full, above it crowded.
    pub full: Percent,
    /// Free under a head, and round it in the bay of a shaped band.
    pub clearance: Length,
    /// Neighbours whose heights differ by more catch on each other.
    pub catch: Length,
    /// No band is made thinner than this to clear a head.
    pub thinnest: Length,
}

impl Default for House {
    fn default() -> Self {
        House {
            gap: Length::tenthousandths(2_000),
            free_length: FREE_FROM_MEMORY,
            roomy: Percent(35),
            full: Percent(50),
            clearance: Length::tenthousandths(2_000),
            catch: Length::tenthousandths(4_000),
            thinnest: Length::tenthousandths(13_000),
        }
    }
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StackInputs {
    /// From the web outwards.
    pub rings: Vec<RingOnFinger>,
    /// The free length of this finger, on the palm side from web to joint crease.
    pub measured: Option<Length>,
    pub house: House,
}

/// Tenths of a per cent.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Permille(pub u32);

/// How a stack sits in the free length. Exact lengths are compared: 35.4 % is more than 35 %.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Verdict {
    Roomy,
    Full,
    Crowded,
    /// The rings are longer than the finger is free.
    DoesNotFit,
}

/// Where a ring lies, measured from the web.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Position {
    /// Which of the rings that were handed in.
    pub ring: usize,
    pub from: Length,
    pub to: Length,
}

/// What a set of rings takes of the finger.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stretch {
    /// From the web outwards.
    pub positions: Vec<Position>,
    pub total: Length,
    /// Below zero where they do not fit.
    pub left: Length,
    /// Of the free length, rounded for display; the verdict goes by the lengths themselves.
    pub share: Permille,
    pub verdict: Verdict,
    /// The widest further ring that leaves it roomy, or full at the most; none if no ring is as narrow as that.
    pub widest_roomy: Option<Length>,
    pub widest_full: Option<Length>,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stack {
    pub free_length: Length,
    /// Measured or set by the jeweller: yours. Otherwise from memory.
    pub free_standing: Standing,
    /// How long the rings may be and it is still roomy, or full.
    pub roomy_to: Length,
    pub full_to: Length,
    pub now: Stretch,
    /// With the first ring that is planned, with the first two, and so on: the last is with all of them.
    pub steps: Vec<Stretch>,
    /// With every ring that is planned.
    pub later: Stretch,
}

/// How much room a finger has for its rings, now and once the planned ones are there.
///
/// total = all widths + a gap between each two; roomy up to 35 % of the free length, full up to 50 %, above crowded.
/// Millimetres; ranges in [`super::Quantity::range`]. Source: house rule; the 24 mm from memory.
///
/// ```
/// use bandwright::trade::{measure::Length, stack::*};
/// let ring = |mm, when| RingOnFinger { width: Length::from_mm(mm), when };
/// let rings = vec![ring(2.6, When::Now), ring(3.0, When::Now), ring(2.5, When::Later)];
/// let stack = stack(&StackInputs { rings, measured: None, house: House::default() }).unwrap();
/// assert_eq!(stack.later.total, Length::from_mm(8.5));
/// assert_eq!(stack.later.left, Length::from_mm(15.5));
/// ```
pub fn stack(inputs: &StackInputs) -> Result<Stack, StackError> {
    check(inputs)?;
    let house = &inputs.house;
    let free_length = inputs.measured.unwrap_or(house.free_length);
    let roomy_to = free_length * house.roomy.share();
    let full_to = free_length * house.full.share();
    // With this many of the planned rings.
    let stretch = |planned: usize| {
        let positions = positions(inputs, planned);
        let total = positions.last().map_or(Length::ZERO, |last| last.to);
        let next_from = if positions.is_empty() { Length::ZERO } else { total + house.gap };
        let widest = |to: Length| Some(to - next_from).filter(|width| *width >= Quantity::RingWidth.range().least);
        Stretch {
            total,
            left: free_length - total,
            share: share(total, free_length),
            verdict: verdict(total, roomy_to, full_to, free_length),
            widest_roomy: widest(roomy_to),
            widest_full: widest(full_to),
            positions,
        }
    };
    let free_standing = if free_length == FREE_FROM_MEMORY && inputs.measured.is_none() {
        Standing::FromMemory
    } else {
        Standing::Yours
    };
    let planned = inputs.rings.iter().filter(|ring| ring.when == When::Later).count();
    let (now, later) = (stretch(0), stretch(planned));
    let steps = (1..=planned).map(stretch).collect();
    Ok(Stack { free_length, free_standing, roomy_to, full_to, now, steps, later })
}

fn positions(inputs: &StackInputs, planned: usize) -> Vec<Position> {
    let mut from = Length::ZERO;
    let mut left = planned;
    let worn = inputs.rings.iter().enumerate().filter(|(_, ring)| match ring.when {
        When::Now => true,
        When::Later if left > 0 => {
            left -= 1;
            true
        }
        When::Later => false,
    });
    worn.map(|(ring, on_finger)| {
        let to = from + on_finger.width;
        let position = Position { ring, from, to };
        from = to + inputs.house.gap;
        position
    })
    .collect()
}

fn share(total: Length, free: Length) -> Permille {
    Permille((1000.0 * total.mm() / free.mm()).round() as u32)
}

fn verdict(total: Length, roomy_to: Length, full_to: Length, free: Length) -> Verdict {
    if total > free {
        Verdict::DoesNotFit
    } else if total > full_to {
        Verdict::Crowded
    } else if total > roomy_to {
        Verdict::Full
    } else {
        Verdict::Roomy
    }
}
