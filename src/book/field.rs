//! Every field that a record can hold: the grain at which changes are kept, undone and, later, merged.

use super::id::{InstallationId, ItemId, RecordId};
use super::value::ExtraWork;
use crate::trade::dates::holidays::HolidayName;
use crate::trade::dates::lead_times::Step as Work;
use crate::trade::dates::milestones::Milestone;
use crate::trade::dates::places::Place;
use crate::trade::wearer::{Finger, Wearer};

/// A field of a couple or of the practice. What each holds is said beside it.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Field {
    /// The name of one of the two: text.
    Name(Wearer),
    /// A way to reach them: text, a telephone number or an e-mail address.
    Reach(ItemId),
    /// Where the couple was met: text.
    Met,
    /// The wedding date, as far as it is known.
    Wedding,
    Appointment(ItemId, AppointmentField),
    /// Whether they agree to be recorded, and when they were asked.
    Recorded,
    /// Where the couple stands now.
    Stage,
    /// The day on which a stage was reached.
    Reached(Stage),
    /// The day on which the couple was put out of sight.
    PutAway,
    /// Part of the example book.
    Example,
    /// One entry of the notes: text.
    Note(ItemId),
    /// The finger the band is for.
    Finger(Wearer),
    /// Whether the wearer has never worn a ring.
    FirstRing(Wearer),
    /// One measurement.
    Reading(Wearer, ItemId),
    /// Whether the wearer owns no other ring for this finger: the answer "none".
    NoRings(Wearer),
    /// A ring they own, or one to come.
    Ring(Wearer, ItemId, RingField),
    /// The band wanted.
    Band(Wearer, BandField),
    /// Something about the finger that is to be thought of: yes.
    Wish(Wearer, Wish),
    /// The day on which the finger is to be measured again.
    MeasureAgain(Wearer),
    /// What the band was kept at or resized to once it had been worn.
    Fitted(Wearer),
    /// The order size that was settled on.
    OrderSize(Wearer),
    /// The free length of the finger, measured on the palm side: a length.
    FreeLength(Wearer),
    /// The same of another finger.
    FreeLengthOf(Wearer, Finger),
    /// What the stack came to when it was looked at.
    Stack(Wearer),
    /// What was chosen for a band that a head holds off.
    Remedy(Wearer),
    /// The day on which a ring was handed over for the bench.
    RingGone(Wearer),
    /// The day on which it was back.
    RingBack(Wearer),
    /// The way from order to wedding that was settled on.
    Dates,
    /// The day on which a step of the order was finished.
    WorkDone(ExtraWork),
    /// The day on which a milestone was said to be reached.
    MilestoneDone(Milestone),
    /// The day on which the couple and the jeweller confirmed the specification together.
    ReadBack,
    /// What the couple said before they came: a preparation list, under the list's own id.
    Said(ItemId),
    /// Whether another entry is of the same two people: yes or no.
    SameAs(RecordId),
    Practice(PracticeField),
    /// A field of a newer version, under the name that it has in the file.
    Unknown(String),
}

impl Field {
    /// Whether it is a part of an appointment or of a ring.
    pub fn is_of_item(&self) -> bool {
        matches!(self, Field::Appointment(..) | Field::Ring(..))
    }

    /// Whether it is the part of an appointment or of a ring that each of them has: what clears it takes it out.
    pub fn is_of_every_item(&self) -> bool {
        matches!(self, Field::Appointment(_, AppointmentField::When) | Field::Ring(_, _, RingField::Planned))
    }

    /// Whether both are parts of one appointment, or of one ring.
    pub fn is_of_same_item(&self, other: &Field) -> bool {
        match (self, other) {
            (Field::Appointment(one, _), Field::Appointment(two, _)) => one == two,
            (Field::Ring(who, one, _), Field::Ring(whose, two, _)) => who == whose && one == two,
            _ => false,
        }
    }

    /// Whether it says what was settled on in view of other fields. Writing it again, unchanged, says something: that
    /// it still holds.
    pub fn is_settled(&self) -> bool {
        matches!(self, Field::OrderSize(_) | Field::Stack(_) | Field::Remedy(_) | Field::Dates | Field::ReadBack)
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum AppointmentField {
    /// Day and time.
    When,
    /// Text.
    Place,
    /// What became of it.
    Outcome,
}

impl AppointmentField {
    pub const ALL: [AppointmentField; 3] = [AppointmentField::When, AppointmentField::Place, AppointmentField::Outcome];
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum RingField {
    /// What it is called: text, "engagement ring".
    Name,
    Finger,
    /// Width at three and nine o'clock.
    ShoulderWidth,
    /// Width at the top.
    TopWidth,
    /// Width at the back, on the palm side.
    BackWidth,
    /// From the finger to the highest point of its outside.
    Height,
    /// Across the inside: a length.
    Inside,
    Profile,
    /// An alloy.
    Metal,
    /// How far its head reaches over the side that faces the web, at the height of a band: a length.
    HeadToWeb,
    /// The same over the side that faces the fingertip.
    HeadToTip,
    /// The height of the head's underside above the finger.
    HeadUnderside,
    /// Yes for stones down the shoulders.
    Stones,
    /// Which it is on the finger: the first is nearest the web.
    Place,
    /// Yes for a tight one that holds those nearer the web.
    Holds,
    /// Yes for a ring to come, which is not worn yet.
    Planned,
}

impl RingField {
    pub const ALL: [RingField; 16] = [
        RingField::Name,
        RingField::Finger,
        RingField::ShoulderWidth,
        RingField::TopWidth,
        RingField::BackWidth,
        RingField::Height,
        RingField::Inside,
        RingField::Profile,
        RingField::Metal,
        RingField::HeadToWeb,
        RingField::HeadToTip,
        RingField::HeadUnderside,
        RingField::Stones,
        RingField::Place,
        RingField::Holds,
        RingField::Planned,
    ];
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum BandField {
    Width,
    Profile,
    Finish,
    /// An alloy.
    Metal,
    /// From the finger to the highest point of its outside.
    Height,
    /// How far a domed outside rises from its edges.
    Dome,
    /// How far the edges of a domed bore stand back.
    Relief,
    /// How many rings lie between it and the web.
    Place,
}

impl BandField {
    pub const ALL: [BandField; 8] = [
        BandField::Width,
        BandField::Profile,
        BandField::Finish,
        BandField::Metal,
        BandField::Height,
        BandField::Dome,
        BandField::Relief,
        BandField::Place,
    ];
}

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

/// What the jeweller sets for their own work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PracticeField {
    /// The fair of today: text. New couples get it as the place where they were met.
    Fair,
    Region,
    /// The size system shown first.
    FirstSystem,
    /// The step in which the bench makes sizes.
    Step,
    Gauge(ItemId),
    /// One band of the tray of try-on bands.
    TryOn(ItemId),
    /// How long a usual piece of work takes at this jeweller's.
    LeadTime(Work),
    /// A piece of work of the jeweller's own that comes on top, with its name and how long it takes.
    Extra(ItemId),
    /// Days on which the workshop is closed.
    Closure(ItemId),
    /// The days of the week on which the workshop works.
    Weekdays,
    /// Whether the workshop works on bank holidays.
    WorksOnHolidays,
    /// The time of day after which an order counts as the next day's.
    CutOff,
    /// Days before the wedding by which the bands are to be in hand: a count.
    DaysInHand,
    /// Whether a public holiday is kept: yes or no, whatever is usual.
    Holiday(HolidayName),
    /// How the assay office or the courier works.
    PlaceDays(Place),
    /// Whether today counts among the working days that are left.
    CountsToday,
    /// The chance of being in time that an order-by date is to have: a share.
    Confidence,
    /// The chance of a busy season: a share.
    BusyChance,
    /// By how much everything takes longer then: a share.
    BusyLonger,
    /// The months that may be busy; all the year where nothing is set.
    BusyMonths,
    /// The chance of a change of size: a share.
    ResizeChance,
    /// Days from in hand to the try-on: a count.
    TryOnAfter,
    /// The free length where it has not been measured: a length.
    FreeLength,
    /// The gap between neighbours: a length.
    Gap,
    /// Up to this share a stack is roomy.
    Roomy,
    /// Up to this share a stack is full, above it crowded.
    Full,
    /// Free under a head: a length.
    Clearance,
    /// How far the heights of neighbours may differ: a length.
    Catch,
    /// The least height of a band that is made thinner to clear a head: a length.
    Thinnest,
    /// One of the constants of the fit.
    Constant(Constant),
    /// What a phone is called, by its installation: text.
    PhoneName(InstallationId),
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
