//! Choices from a few.

/// What the wearer says of a finger that changes, or wishes for it. A wish, never a diagnosis.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Wish {
    WarmWork,
    Sport,
    /// A shank that can be adjusted.
    Adjustable,
}

impl Wish {
    pub const ALL: [Wish; 3] = [Wish::WarmWork, Wish::Sport, Wish::Adjustable];
}

/// Where a couple stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Stage {
    Enquiry,
    Booked,
    Ordered,
    Collected,
    Lost,
}

impl Stage {
    pub const ALL: [Stage; 5] = [Stage::Enquiry, Stage::Booked, Stage::Ordered, Stage::Collected, Stage::Lost];
}

/// What became of an appointment.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Outcome {
    Happened,
    Missed,
    CalledOff,
}

impl Outcome {
    pub const ALL: [Outcome; 3] = [Outcome::Happened, Outcome::Missed, Outcome::CalledOff];
}

/// The constants of the fit that can be set. Each is kept in millimetres: a rate is millimetres of circumference per
/// millimetre, or a factor times one millimetre.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Constant {
    Width,
    WidthSpread,
    Bore,
    BoreSpread,
    Cold,
    Warm,
    HandsSpread,
    NormalSpread,
    Offset,
    OffsetSpread,
}

impl Constant {
    pub const ALL: [Constant; 10] = [
        Constant::Width,
        Constant::WidthSpread,
        Constant::Bore,
        Constant::BoreSpread,
        Constant::Cold,
        Constant::Warm,
        Constant::HandsSpread,
        Constant::NormalSpread,
        Constant::Offset,
        Constant::OffsetSpread,
    ];
}
