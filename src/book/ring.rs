//! A ring beside the band: what is known of it, and under which fields a record holds that.

use super::id::ItemId;
use super::table::parts;
use crate::trade::band::Profile;
use crate::trade::band::alloys::Alloy;
use crate::trade::limits::Whole;
use crate::trade::measure::Length;
use crate::trade::wearer::Finger;

/// A ring they own, or one to come.
#[derive(Clone, Debug, PartialEq)]
pub struct Ring {
    pub item: ItemId,
    /// What it is called: "engagement ring".
    pub name: Option<String>,
    pub finger: Option<Finger>,
    /// Width at three and nine o'clock.
    pub shoulder_width: Option<Length>,
    /// Width at the top.
    pub top_width: Option<Length>,
    /// Width at the back, on the palm side.
    pub back_width: Option<Length>,
    /// From the finger to the highest point of its outside.
    pub height: Option<Length>,
    /// Across the inside.
    pub inside: Option<Length>,
    pub profile: Option<Profile>,
    pub metal: Option<&'static Alloy>,
    /// The hallmark or the inscription inside.
    pub inscription: Option<String>,
    pub head: Head,
    /// Stones down the shoulders.
    pub stones: bool,
    /// Which it is on the finger: the first is nearest the web, those without a place come last. It is kept with each
    /// ring, because two phones may add one each; a ring that is taken out leaves the others as they are.
    pub place: Option<Whole>,
    /// A tight one, which holds those nearer the web.
    pub holds: bool,
    /// A ring to come, which is not worn yet.
    pub planned: bool,
}

/// The head of a ring, as far as it was measured.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Head {
    /// How far it reaches over the side that faces the web, at the height of a band.
    pub to_web: Option<Length>,
    /// The same over the side that faces the fingertip.
    pub to_tip: Option<Length>,
    /// The height of its underside above the finger.
    pub underside: Option<Length>,
}

impl Ring {
    /// A ring of which nothing is known.
    pub fn unknown(item: ItemId) -> Ring {
        Ring {
            item,
            name: None,
            finger: None,
            shoulder_width: None,
            top_width: None,
            back_width: None,
            height: None,
            inside: None,
            profile: None,
            metal: None,
            inscription: None,
            head: Head::default(),
            stones: false,
            place: None,
            holds: false,
            planned: false,
        }
    }
}

parts! {
    /// A part of a ring.
    RingField of Ring {
        Name = "name": String => name,
        Finger = "finger": Finger => finger,
        ShoulderWidth = "shoulder_width": Length => shoulder_width,
        TopWidth = "top_width": Length => top_width,
        BackWidth = "back_width": Length => back_width,
        Height = "height": Length => height,
        Inside = "inside": Length => inside,
        Profile = "profile": Profile => profile,
        Metal = "metal": &'static Alloy => metal,
        Inscription = "inscription": String => inscription,
        HeadToWeb = "head_to_web": Length => head.to_web,
        HeadToTip = "head_to_tip": Length => head.to_tip,
        HeadUnderside = "head_underside": Length => head.underside,
        Stones = "stones": bool => stones,
        Place = "place": Whole => place,
        Holds = "holds": bool => holds,
        Planned = "planned": bool => planned,
    }
}
