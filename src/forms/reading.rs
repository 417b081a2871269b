//! One reading of a finger: with which gauge, how the hands were, where, and what it said.

use super::texts::{Key, Texts};
use crate::archive::code::Code;
use crate::trade::band::Bore;
use crate::trade::fit::{Hands, Place, Sits};
use crate::trade::wearer::Finger;

pub const HAND: Key = Key::new("hand");
pub const DIGIT: Key = Key::new("digit");
/// Whether the band goes to this finger, where it was for another one.
pub const MOVES: Key = Key::new("moves");
pub const SIZE: Key = Key::new("size");
pub const SIZE_AS: Key = Key::new("as");
pub const GAUGE: Key = Key::new("gauge");
pub const WORN_WIDTH: Key = Key::new("worn-width");
pub const WORN_BORE: Key = Key::new("worn-bore");
pub const SITS: Key = Key::new("sits");
/// Empty: where the ring touches the stick.
pub const READ_AT: Key = Key::new("read-at");
pub const HANDS: Key = Key::new("hands");
pub const PLACE: Key = Key::new("place");
pub const BESIDE: Key = Key::new("beside");
pub const TAKEN_AT: Key = Key::new("taken-at");
/// What the screen gauge said, and how sure it is: nobody types them.
pub const GLASS: Key = Key::new("glass");
pub const GLASS_OFF: Key = Key::new("glass-off");

/// What was chosen for one reading and holds for the next of the same finger: the gauge in the jeweller's hand, with
/// all that describes it, and how the finger's hands are. A form that fell back to the first gauge and normal hands would
/// misread the next reading in silence.
const HELD_ON: [Key; 5] = [GAUGE, WORN_WIDTH, WORN_BORE, READ_AT, HANDS];

/// A reading of this finger that nobody has typed yet. `gauge` is the word of the gauge that is taken until another is
/// chosen.
pub fn start(finger: Finger, gauge: String) -> Texts {
    Texts::default()
        .with(HAND, finger.hand.code())
        .with(DIGIT, finger.digit.code())
        .with_blank([MOVES, SIZE, SIZE_AS])
        .with(GAUGE, gauge)
        .with_blank([WORN_WIDTH])
        .with(WORN_BORE, Bore::Flat.code())
        .with(SITS, Sits::Right.code())
        .with_blank([READ_AT])
        .with(HANDS, Hands::Normal.code())
        .with(PLACE, Place::Base.code())
        .with_blank([BESIDE, TAKEN_AT, GLASS, GLASS_OFF])
}

/// What the form starts with after a reading was added: of the band's finger, with the gauge and hands of the one before.
pub fn start_after(added: &Texts, finger: Finger) -> Texts {
    let start = start(finger, String::new());
    HELD_ON.into_iter().fold(start, |start, key| start.with(key, added.get(key)))
}
