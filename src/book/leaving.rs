//! What may leave the phone. One rule, asked by everything that makes a file.

use super::couple::Couple;
use super::field::Field;
use super::value::Value;

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
/// A couple that was not asked yet may leave: the jeweller's own notes are theirs to move. A no keeps them in, also
/// one that stands beside a yes, or an answer of a newer version that cannot be read here.
/// An example that was edited is still an example: it never leaves.
pub fn may_leave(couple: Couple<'_>) -> Result<(), Stays> {
    let is_no = |value: &Value| !matches!(value, Value::Recorded(recorded) if recorded.agrees);
    if couple.0.holds(&Field::Example, |value| *value != Value::Yes(false)) {
        Err(Stays::Example)
    } else if couple.0.holds(&Field::Recorded, is_no) {
        Err(Stays::SaidNo)
    } else {
        Ok(())
    }
}
