//! Every field that a record can hold: the grain at which changes are kept, undone and, later, merged.

use super::id::{ItemId, RecordId};
use super::table::parts;
use super::value::{ExtraWork, Value, ValueKind, When};
use crate::trade::dates::milestones::Milestone;
use crate::trade::wearer::{Finger, Wearer};

pub use super::band::BandField;
pub use super::ring::RingField;
pub use super::settings::PracticeField;
pub use super::value::{Constant, Outcome, Stage, Wish};

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
    PreparationList(ItemId),
    /// Whether another entry is of the same two people: yes or no.
    SameAs(RecordId),
    Practice(PracticeField),
    /// A field of a newer version, under the name that it has in the file.
    Unknown(String),
}

parts! {
    /// A part of an appointment.
    AppointmentField {
        When = "when": When,
        Place = "place": String,
        /// What became of it.
        Outcome = "outcome": Outcome,
    }
}

impl Field {
    /// The kind of value that it holds; none for a field of a newer version, which may hold anything.
    pub fn kind(&self) -> Option<ValueKind> {
        use ValueKind as K;
        Some(match self {
            Field::Name(_) | Field::Reach(_) | Field::Met | Field::Note(_) => K::Text,
            Field::Wedding => K::Wedding,
            Field::Appointment(_, part) => part.kind(),
            Field::Recorded => K::Recorded,
            Field::Stage => K::Stage,
            Field::Reached(_) | Field::PutAway | Field::ReadBack | Field::WorkDone(_) | Field::MilestoneDone(_) => {
                K::Day
            }
            Field::MeasureAgain(_) | Field::RingGone(_) | Field::RingBack(_) => K::Day,
            Field::Example | Field::FirstRing(_) | Field::NoRings(_) | Field::Wish(..) | Field::SameAs(_) => K::Yes,
            Field::Finger(_) => K::Finger,
            Field::Reading(..) => K::Reading,
            Field::Ring(_, _, part) => part.kind(),
            Field::Band(_, part) => part.kind(),
            Field::Fitted(_) => K::Fitted,
            Field::OrderSize(_) => K::OrderSize,
            Field::FreeLength(_) | Field::FreeLengthOf(..) => K::Length,
            Field::Stack(_) => K::Stack,
            Field::Remedy(_) => K::Remedy,
            Field::Dates => K::Dates,
            Field::PreparationList(_) => K::PreparationList,
            Field::Practice(setting) => setting.kind(),
            Field::Unknown(_) => return None,
        })
    }

    /// Whether it can hold this value. What is of a newer version goes with anything.
    pub fn takes(&self, value: &Value) -> bool {
        self.kind().zip(value.kind()).is_none_or(|(wanted, is)| wanted == is)
    }

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

    /// Whether it holds words about a ring, which change no figure: what it is called.
    pub fn is_words_of_ring(&self) -> bool {
        matches!(self, Field::Ring(_, _, part) if part.kind() == ValueKind::Text)
    }

    /// Whether it says what was settled on in view of other fields. Writing it again, unchanged, says something: that
    /// it still holds.
    pub fn is_settled(&self) -> bool {
        matches!(self, Field::OrderSize(_) | Field::Stack(_) | Field::Remedy(_) | Field::Dates | Field::ReadBack)
    }
}
