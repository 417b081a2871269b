//! What rings are called: those that nobody named by their order from the web, where there are several.

use super::reckon::Ring;
use crate::trade::stack::RingState;
use crate::words::bench as say;

/// Numbers the rings without a name, and gives every ring the plain name it has in front of the couple.
pub fn number(rings: &mut [Ring]) {
    for state in [RingState::Worn, RingState::Planned] {
        let many = rings.iter().filter(|ring| ring.state == state).count() > 1;
        for (at, ring) in rings.iter_mut().filter(|ring| ring.state == state).enumerate() {
            ring.plain = if many { say::ring_by_its_order(state, at) } else { say::ring_by_its_state(state) };
            if say::is_unnamed(&ring.name) {
                ring.name = ring.plain.clone();
            }
        }
    }
    for ring in rings.iter_mut().filter(|ring| ring.state == RingState::Wanted) {
        ring.plain = ring.name.clone();
    }
}
