//! What the jeweller sets for their own work: one table, a row a setting.
//!
//! A row says what the setting is called in the program, of what it is one where there is one of each (an item, a piece
//! of work), the code under which it stands in files for ever, the type of what it holds, and the name under which it is
//! read as that type: `settings::region()`. [`Practice`](super::practice::Practice) reads through these, so that a setting
//! read as another type does not compile.

use std::marker::PhantomData;

use chrono::NaiveTime;

use super::id::{InstallationId, ItemId};
use super::value::{Constant, Extra, FieldValue, NamedClosure, OwnGauge, TryOnBand, ValueKind};
use crate::trade::dates::closed::Weekdays;
use crate::trade::dates::holidays::{HolidayName, Region};
use crate::trade::dates::lead_times::Step as Work;
use crate::trade::dates::places::{Place, PlaceDays};
use crate::trade::dates::season::MonthSet;
use crate::trade::dates::spread::{CalendarDays, Spread};
use crate::trade::measure::{Length, Percent};
use crate::trade::sizing::{Step, System};

/// A setting with the type of what it holds.
#[derive(Clone, Copy, Debug)]
pub struct Setting<T> {
    pub field: PracticeField,
    held: PhantomData<fn() -> T>,
}

impl<T: FieldValue> Setting<T> {
    fn new(field: PracticeField) -> Setting<T> {
        Setting { field, held: PhantomData }
    }
}

/// What a setting is one of, where there is one of each.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SettingKey {
    ItemId(ItemId),
    InstallationId(InstallationId),
    Work(Work),
    HolidayName(HolidayName),
    Place(Place),
    Constant(Constant),
}

macro_rules! settings {
    ($($(#[$doc:meta])* $name:ident$(($key:ident: $of:ident))? = $code:literal: $held:ty => $typed:ident,)+) => {
        /// What the jeweller sets for their own work.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum PracticeField {
            $($(#[$doc])* $name$(($of))?,)+
        }

        impl PracticeField {
            pub const CODES: [&str; [$($code),+].len()] = [$($code),+];

            /// What it is called in files, for ever; its key comes after that.
            pub fn code(self) -> &'static str {
                match self {
                    $(PracticeField::$name { .. } => $code,)+
                }
            }

            pub fn key(self) -> Option<SettingKey> {
                match self {
                    $(PracticeField::$name$(($key))? => [$(SettingKey::$of($key))?].first().copied(),)+
                }
            }

            /// The setting of a code and a key; none if there is none, also where the key is of another sort.
            pub fn from_code(code: &str, key: Option<SettingKey>) -> Option<PracticeField> {
                match (code, key.as_slice()) {
                    $(($code, [$(SettingKey::$of($key))?]) => Some(PracticeField::$name$((*$key))?),)+
                    _ => None,
                }
            }

            pub fn kind(self) -> ValueKind {
                match self {
                    $(PracticeField::$name { .. } => <$held as FieldValue>::KIND,)+
                }
            }
        }

        $($(#[$doc])* pub fn $typed($($key: $of)?) -> Setting<$held> {
            Setting::new(PracticeField::$name$(($key))?)
        })+
    };
}

settings! {
    /// The fair of today: text. New couples get it as the place where they were met.
    Fair = "fair": String => fair,
    Region = "region": Region => region,
    /// The size system shown first.
    FirstSystem = "first_system": System => first_system,
    /// The step in which the bench makes sizes.
    Step = "step": Step => step,
    Gauge(item: ItemId) = "gauge": OwnGauge => gauge,
    /// One band of the tray of try-on bands.
    TryOn(item: ItemId) = "try_on": TryOnBand => try_on,
    /// How long a usual piece of work takes at this jeweller's.
    LeadTime(work: Work) = "lead_time": Spread => lead_time,
    /// A piece of work of the jeweller's own that comes on top, with its name and how long it takes.
    Extra(item: ItemId) = "extra": Extra => extra,
    /// Days on which the workshop is closed.
    Closure(item: ItemId) = "closure": NamedClosure => closure,
    /// The days of the week on which the workshop works.
    Weekdays = "weekdays": Weekdays => weekdays,
    /// Whether the workshop works on bank holidays.
    WorksOnHolidays = "works_on_holidays": bool => works_on_holidays,
    /// The time of day after which an order counts as the next day's.
    CutOff = "cut_off": NaiveTime => cut_off,
    /// Days before the wedding by which the bands are to be in hand: a count.
    DaysInHand = "days_in_hand": CalendarDays => days_in_hand,
    /// Whether a public holiday is kept: yes or no, whatever is usual.
    Holiday(name: HolidayName) = "holiday": bool => holiday,
    /// How the assay office or the courier works.
    PlaceDays(place: Place) = "place_days": PlaceDays => place_days,
    /// Whether today counts among the working days that are left.
    CountsToday = "counts_today": bool => counts_today,
    /// The chance of being in time that an order-by date is to have: a share.
    Confidence = "confidence": Percent => confidence,
    /// The chance of a busy season: a share.
    BusyChance = "busy_chance": Percent => busy_chance,
    /// By how much everything takes longer then: a share.
    BusyLonger = "busy_longer": Percent => busy_longer,
    /// The months that may be busy; all the year where nothing is set.
    BusyMonths = "busy_months": MonthSet => busy_months,
    /// The chance of a change of size: a share.
    ResizeChance = "resize_chance": Percent => resize_chance,
    /// Days from in hand to the try-on: a count.
    TryOnAfter = "try_on_after": CalendarDays => try_on_after,
    /// The free length where it has not been measured: a length.
    FreeLength = "free_length": Length => free_length,
    /// The gap between neighbours: a length.
    Gap = "gap": Length => gap,
    /// Up to this share a stack is roomy.
    Roomy = "roomy": Percent => roomy,
    /// Up to this share a stack is full, above it crowded.
    Full = "full": Percent => full,
    /// Free under a head: a length.
    Clearance = "clearance": Length => clearance,
    /// How far the heights of neighbours may differ: a length.
    Catch = "catch": Length => catch,
    /// The least height of a band that is made thinner to clear a head: a length.
    Thinnest = "thinnest": Length => thinnest,
    /// One of the constants of the fit.
    Constant(constant: Constant) = "constant": Length => constant,
    /// What a phone is called, by its installation: text.
    PhoneName(phone: InstallationId) = "phone_name": String => phone_name,
}
