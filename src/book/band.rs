//! The band wanted: what is settled of it, and under which fields a record holds that.

use super::table::parts;
use crate::trade::band::alloys::Alloy;
use crate::trade::band::{Finish, Profile};
use crate::trade::limits::Whole;
use crate::trade::measure::Length;

/// The band wanted, as far as it is settled.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Band {
    pub width: Option<Length>,
    pub profile: Option<Profile>,
    pub finish: Option<Finish>,
    pub metal: Option<&'static Alloy>,
    /// From the finger to the highest point of its outside.
    pub height: Option<Length>,
    /// How far a domed outside rises from its edges.
    pub dome: Option<Length>,
    /// How far the edges of a domed bore stand back.
    pub relief: Option<Length>,
    /// How many rings lie between it and the web.
    pub place: Option<Whole>,
}

impl Band {
    /// Whether the bench would know what to make.
    pub fn is_whole(&self) -> bool {
        self.width.is_some() && self.profile.is_some() && self.finish.is_some() && self.metal.is_some()
    }

    pub fn is_empty(&self) -> bool {
        self.width.is_none() && self.profile.is_none() && self.finish.is_none() && self.metal.is_none()
    }
}

parts! {
    /// A part of the band.
    BandField of Band {
        Width = "width": Length => width,
        Profile = "profile": Profile => profile,
        Finish = "finish": Finish => finish,
        Metal = "metal": &'static Alloy => metal,
        Height = "height": Length => height,
        Dome = "dome": Length => dome,
        Relief = "relief": Length => relief,
        Place = "place": Whole => place,
    }
}
