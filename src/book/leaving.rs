//! What may leave the phone. One rule, asked by everything that makes a file.

use super::couple::Couple;

/// Why a couple stays on this phone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stays {
    /// They said that they do not want to be recorded.
    SaidNo,
    /// An invented couple.
    Example,
}

/// Whether a couple may be part of a file that leaves the phone, and why not.
///
/// A couple that was not asked yet may leave: the jeweller's own notes are theirs to move. A no keeps them in.
/// An example that was edited is still an example: it never leaves.
pub fn may_leave(couple: Couple<'_>) -> Result<(), Stays> {
    if couple.is_example() {
        Err(Stays::Example)
    } else if couple.recorded().is_some_and(|recorded| !recorded.agrees) {
        Err(Stays::SaidNo)
    } else {
        Ok(())
    }
}
