//! The words that stand for choices in files, in addresses and in forms.

use chrono::Weekday;

use crate::book::record::Kind;
use crate::book::value::{Constant, Outcome, Stage, Way, Wish};
use crate::trade::band::{Bore, Finish, Profile};
use crate::trade::dates::closed::Repeats;
use crate::trade::dates::holidays::{HolidayName, Region};
use crate::trade::dates::lead_times::Step as Work;
use crate::trade::dates::milestones::Milestone;
use crate::trade::dates::places::Place;
use crate::trade::fit::{Hands, Place as Measured, ReadAt, Sits, Term};
use crate::trade::sizing::{Step, System};
use crate::trade::wearer::{Digit, Hand, Wearer};

/// A choice that has a word in files.
pub trait Code: Sized + Copy {
    fn code(self) -> &'static str;
    fn from_code(code: &str) -> Option<Self>;
}

macro_rules! codes {
    ($type:ident { $($variant:ident = $code:literal),+ $(,)? }) => {
        impl Code for $type {
            fn code(self) -> &'static str {
                match self { $($type::$variant => $code),+ }
            }
            fn from_code(code: &str) -> Option<Self> {
                match code { $($code => Some($type::$variant),)+ _ => None }
            }
        }
    };
}

codes!(Kind { Couple = "couple", Practice = "practice" });
codes!(Wearer { First = "first", Second = "second" });
codes!(Hand { Left = "left", Right = "right" });
codes!(Digit { Thumb = "thumb", Index = "index", Middle = "middle", Ring = "ring", Little = "little" });
codes!(Bore { Flat = "flat", Domed = "domed" });
codes!(Profile { Flat = "flat", Court = "court", D = "d", FlatCourt = "flat-court" });
codes!(Finish { Plain = "plain", Set = "set", SetAllRound = "set-all-round", Textured = "textured" });
codes!(Stage {
    Enquiry = "enquiry",
    Booked = "booked",
    Ordered = "ordered",
    Collected = "collected",
    Lost = "lost",
});
codes!(Outcome { Happened = "happened", Missed = "missed", CalledOff = "called-off" });
codes!(Hands { Cold = "cold", Normal = "normal", Warm = "warm" });
codes!(Sits { Tight = "tight", Right = "right", Spins = "spins", SticksInSummer = "sticks-in-summer" });
codes!(Term {
    Gauge = "gauge",
    Stick = "stick",
    Width = "width",
    Bore = "bore",
    Hands = "hands",
    Sits = "sits",
    Offset = "offset",
    Joint = "joint",
});
codes!(Wish { WarmWork = "warm-work", Sport = "sport", Adjustable = "adjustable" });
codes!(Way { Shaped = "shaped", Lower = "lower", Gap = "gap" });
codes!(Measured { Base = "base", Joint = "joint" });
codes!(ReadAt { LowerEdge = "lower-edge", Centre = "centre" });
codes!(Step { Quarter = "quarter", Half = "half", Whole = "whole" });
codes!(Work {
    Making = "making",
    Stones = "stones",
    Marking = "marking",
    Engraving = "engraving",
    Delivery = "delivery",
    Resizing = "resizing",
});
codes!(Place { Workshop = "workshop", AssayOffice = "assay-office", Courier = "courier" });
codes!(Repeats { Once = "once", SameDates = "same-dates", SameWeekday = "same-weekday" });
codes!(Milestone {
    Decide = "decide",
    Order = "order",
    EngravingText = "engraving-text",
    Collect = "collect",
    TryOn = "try-on",
    LastResize = "last-resize",
});
codes!(Weekday {
    Mon = "mon",
    Tue = "tue",
    Wed = "wed",
    Thu = "thu",
    Fri = "fri",
    Sat = "sat",
    Sun = "sun",
});
codes!(Constant {
    Width = "width",
    WidthSpread = "width-spread",
    Bore = "bore",
    BoreSpread = "bore-spread",
    Cold = "cold",
    Warm = "warm",
    HandsSpread = "hands-spread",
    NormalSpread = "normal-spread",
    Offset = "offset",
    OffsetSpread = "offset-spread",
});

/// Those whose words stand in a table.
macro_rules! codes_of_table {
    ($type:ident) => {
        impl Code for $type {
            fn code(self) -> &'static str {
                $type::code(self)
            }
            fn from_code(code: &str) -> Option<Self> {
                $type::ALL.into_iter().find(|it| it.code() == code)
            }
        }
    };
}

codes_of_table!(Region);
codes_of_table!(HolidayName);

impl Code for System {
    fn code(self) -> &'static str {
        System::code(self)
    }
    fn from_code(code: &str) -> Option<Self> {
        System::from_code(code)
    }
}
