//! What a band is: its profile, its bore, its section, its finish and its metal.

pub mod alloys;
pub mod section;

/// The inside of a band.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Bore {
    Flat,
    Domed,
}

/// The cross-section of a band by its trade name.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Profile {
    /// Flat inside and out.
    Flat,
    /// Domed inside and out.
    Court,
    /// Flat inside, domed outside.
    D,
    /// Domed inside, flat outside.
    FlatCourt,
}

impl Profile {
    pub const ALL: [Profile; 4] = [Profile::Court, Profile::D, Profile::Flat, Profile::FlatCourt];

    /// The bore that the profile has.
    pub fn bore(self) -> Bore {
        match self {
            Profile::Flat | Profile::D => Bore::Flat,
            Profile::Court | Profile::FlatCourt => Bore::Domed,
        }
    }

    /// Whether the outside is domed.
    pub fn is_domed_outside(self) -> bool {
        matches!(self, Profile::Court | Profile::D)
    }
}

/// What is done to the outside of a band.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Finish {
    Plain,
    /// Set with stones on a part of it.
    Set,
    /// Set with stones all round: cannot be resized.
    SetAllRound,
    Textured,
}

impl Finish {
    pub const ALL: [Finish; 4] = [Finish::Plain, Finish::Set, Finish::SetAllRound, Finish::Textured];
}
