//! What the rings take at the top of the finger, where the bay of a shaped band and the gap beside a straight one add to
//! their widths. At the palm, where the free length is measured, they add nothing.

use super::reckon::{Pair, Ring};
use crate::trade::measure::Length;
use crate::trade::stack::RingState;
use crate::trade::stack::{Stack, StackInputs, stack};

/// None where nothing adds to the widths.
pub fn at_top(inputs: &StackInputs, rings: &[Ring], pairs: &[Pair], bay: Option<Length>) -> Option<Stack> {
    let bay = bay.unwrap_or_default();
    let gap = |at: usize, later: bool| {
        let of = |pair: &&Pair| pair.apart.rings.1 == at && (later || !pair.later);
        pairs.iter().rfind(of).map_or(Length::ZERO, |pair| pair.left)
    };
    let widened = |later: bool| {
        let mut inputs = inputs.clone();
        for (at, (ring, on)) in rings.iter().zip(&mut inputs.rings).enumerate() {
            let bay = if ring.state == RingState::Wanted { bay } else { Length::ZERO };
            on.width = on.width + bay + gap(at, later);
        }
        stack(&inputs).ok()
    };
    let any = bay > Length::ZERO || pairs.iter().any(|pair| pair.left > Length::ZERO);
    let (now, later) = (widened(false).filter(|_| any)?, widened(true)?);
    Some(Stack { now: now.now, ..later })
}
