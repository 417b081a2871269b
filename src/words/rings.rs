//! The words of the forms in which a ring or a band is written down, and of their parts.

use super::harmless::harmless;
use crate::book::band::BandField;
use crate::book::ring::{Ring, RingField};

pub const BACK_WIDTH: &str = "Width at the back";
pub const HEIGHT: &str = "Height";
pub const HEIGHT_HINT: &str = "From the finger to the top of the shank.";
pub const BAND_HEIGHT: &str = "Height of the band";
pub const BAND_HEIGHT_HINT: &str = "9 and 18 ct from 1.3 to 1.5 mm up, platinum from 1.2 to 1.4, common practice.";
pub const INSIDE: &str = "Across the inside";
pub const INSIDE_HINT: &str = "Only if it is not of the same size as the band.";
pub const DOME: &str = "Dome";
pub const DOME_HINT: &str = "How far the outside rises from its edges. Empty: an eighth of the width, at most two fifths of the height, common practice.";
pub const RELIEF: &str = "Edge relief";
pub const RELIEF_HINT: &str = "How far the edges stand off the finger inside. Empty: as usual for the width.";
pub const INSCRIPTION: &str = "Hallmark or inscription inside";
pub const INSCRIPTION_HINT: &str = "As you read it, like 750 or a date. Leave blank if there’s none.";
pub const HEAD: &str = "Its head";
pub const HEAD_HOW: &str = "Lay a straight edge against the shoulders, at three and nine. How far does the head reach over it, at the height of a \
     band?";
pub const TO_WEB: &str = "Over the side to the web";
pub const TO_TIP: &str = "Over the side to the tip";
pub const UNDERSIDE: &str = "Its underside above the finger";
pub const STONES: &str = "Stones down the shoulders";
pub const STONES_HINT: &str = "They rub on the metal of the ring beside it.";
pub const PLACE: &str = "Place among their own rings";
pub const NO_PLACE: &str = "Not noted";
pub const HOLDS: &str = "Holds the rings nearer the web";
pub const HOLDS_HINT: &str = "A tight one outside a looser one keeps it on.";
/// Some of a head is known, and some of it is not.
pub const HEAD_INCOMPLETE: &str = "Enter the height of the head’s underside, or leave its reach empty.";

/// "inside it says “750”".
pub fn inscription(ring: &Ring) -> Option<String> {
    ring.inscription.as_deref().map(|text| format!("inside it says “{}”", harmless(text)))
}

/// "1, nearest the web", "2".
pub fn place(place: u16) -> String {
    if place == 1 { "1, nearest the web".to_owned() } else { place.to_string() }
}

/// A part of a ring, in a sentence about it.
pub fn ring_part(part: RingField) -> &'static str {
    match part {
        RingField::Name => "what it is",
        RingField::Finger => "finger",
        RingField::ShoulderWidth => "width at three and nine o’clock",
        RingField::TopWidth => "width at the top",
        RingField::Profile => "profile",
        RingField::Metal => "metal",
        RingField::Inscription => "hallmark or inscription inside",
        RingField::BackWidth => "width at the back",
        RingField::Height => "height",
        RingField::Inside => "across the inside",
        RingField::HeadToWeb => "its head, over the side to the web",
        RingField::HeadToTip => "its head, over the side to the tip",
        RingField::HeadUnderside => "its head, underside above the finger",
        RingField::Stones => "stones down the shoulders",
        RingField::Place => "place on the finger",
        RingField::Holds => "holds the rings nearer the web",
        RingField::Planned => "still to come",
    }
}

/// A part of the band.
pub fn band_part(part: BandField) -> &'static str {
    match part {
        BandField::Width => "width",
        BandField::Profile => "profile",
        BandField::Finish => "surface",
        BandField::Metal => "metal",
        BandField::Height => "height",
        BandField::Dome => "dome",
        BandField::Relief => "edge relief",
        BandField::Place => "rings between it and the web",
    }
}
