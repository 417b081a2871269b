//! Addresses, typed: which screen, and for a calculator what it was asked. They live behind the `#`, so that any
//! plain host serves them under any path, and no server ever sees them. No words that people typed about people are
//! in them: a couple is its random id. The one exception is the link that invites a couple to their list, which holds
//! their first names and the appointment; the list takes them out of the address as soon as it has kept them.

mod read;

use std::fmt;

use js_sys::encode_uri_component;

pub use read::{is_former, read};

use crate::archive::code::Code;
use crate::book::asks::Section;
use crate::book::checklist::Topic;
use crate::book::id::{InstallationId, ItemId, RecordId};
use crate::trade::dates::lead_times::Step as Work;
use crate::trade::dates::places::Place;
use crate::trade::wearer::Wearer;

/// A screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Address {
    Today,
    Couples,
    NewCouple,
    /// A couple's preparation list, taken into the book.
    TakeIn,
    /// A link to the preparation list, for somebody who is not in the book.
    Invite,
    Couple(RecordId),
    Part(RecordId, Part),
    Bench,
    Calculator(Calculator),
    Practice,
    Setting(Setting),
    /// The preparation list on the couple's own phone, and a page of it. It stands alone: nothing leads from it into
    /// the book.
    List(Option<Section>),
    /// Something that is not an address of this app.
    Nowhere,
}

/// What of a couple is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    People,
    Wedding,
    Appointments,
    /// One appointment; none for a new one.
    Appointment(Option<ItemId>),
    Recorded,
    Stage,
    Notes,
    Finger(Wearer),
    /// What fitted once the band had been worn.
    Fitted(Wearer),
    Rings(Wearer),
    /// One ring; none for a new one.
    Ring(Wearer, Option<ItemId>),
    Band(Wearer),
    /// What is chosen for a band beside a head.
    Remedy(Wearer),
    ReadBack,
    /// The order as it goes, and the days to keep.
    Plan,
    /// The text for the bench.
    Specification,
    /// A file of this couple alone.
    Copy,
    /// What two phones say differently.
    Differences,
    /// Whether another entry is of the same couple.
    Same,
    History,
    /// Taking everything out for good.
    Erase,
    /// What they said in their preparation lists.
    PreparationList,
    /// A link to the preparation list.
    Invite,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Calculator {
    Size,
    Table,
    Order,
    Stack,
    Compare,
    Dates,
    /// A ring on the glass of this screen.
    ScreenGauge,
    /// A gauge to print.
    PaperGauge,
}

/// What of the practice is set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Setting {
    Fair,
    Sizes,
    Gauges,
    /// One gauge; none for a new one.
    Gauge(Option<ItemId>),
    /// The tray of try-on bands.
    Tray,
    TryOn(Option<ItemId>),
    Times,
    /// How long one usual piece of work takes.
    Time(Work),
    Extra(Option<ItemId>),
    Closures,
    /// How the assay office or the courier works.
    Place(Place),
    /// Which public holidays are kept.
    Holidays,
    /// What is planned for: the chance of being in time, a busy season, a change of size.
    Chances,
    Closure(Option<ItemId>),
    Stack,
    Fit,
    Phone,
    /// What a phone is called.
    PhoneName(InstallationId),
    /// How to put the app on the home screen.
    Install,
    /// Files out.
    Copies,
    /// What two phones with this practice have set differently.
    Differences,
    /// Files in.
    BringIn,
    Example,
}

/// The names and values behind the `?`.
pub type Query = Vec<(String, String)>;

impl Calculator {
    pub const ALL: [Calculator; 8] = [
        Calculator::Size,
        Calculator::Table,
        Calculator::Order,
        Calculator::Stack,
        Calculator::Compare,
        Calculator::Dates,
        Calculator::ScreenGauge,
        Calculator::PaperGauge,
    ];

    pub fn code(self) -> &'static str {
        match self {
            Calculator::Size => "size",
            Calculator::Table => "table",
            Calculator::Order => "order",
            Calculator::Stack => "stack",
            Calculator::Compare => "compare",
            Calculator::Dates => "dates",
            Calculator::ScreenGauge => "screen-gauge",
            Calculator::PaperGauge => "paper-gauge",
        }
    }
}

impl Address {
    /// Where a line of the checklist leads.
    pub fn of_topic(couple: RecordId, topic: Topic) -> String {
        let calculator = |which: Calculator, who: Option<Wearer>| {
            let mut query = vec![("couple".to_owned(), couple.to_string())];
            if let Some(who) = who {
                query.push(("who".to_owned(), who.code().to_owned()));
            }
            with_query(Address::Calculator(which), &query)
        };
        let part = |part| Address::Part(couple, part).to_string();
        match topic {
            Topic::Wedding => part(Part::Wedding),
            Topic::Finger(who) => part(Part::Finger(who)),
            Topic::Rings(who) => part(Part::Rings(who)),
            Topic::Band(who) => part(Part::Band(who)),
            Topic::OrderSize(who) => calculator(Calculator::Order, Some(who)),
            Topic::Stack(who) => calculator(Calculator::Stack, Some(who)),
            Topic::Dates => calculator(Calculator::Dates, None),
            Topic::Notes => part(Part::Notes),
            Topic::ReadBack => part(Part::ReadBack),
            Topic::Fitted(who) => part(Part::Fitted(who)),
        }
    }

    /// The screen one step up.
    pub fn up(self) -> Address {
        match self {
            Address::Part(id, Part::Appointment(_)) => Address::Part(id, Part::Appointments),
            Address::Part(id, Part::Fitted(who)) => Address::Part(id, Part::Finger(who)),
            Address::Part(id, Part::Ring(who, _)) => Address::Part(id, Part::Rings(who)),
            Address::Part(id, Part::Invite) => Address::Part(id, Part::PreparationList),
            Address::Part(id, _) => Address::Couple(id),
            Address::Couple(_) | Address::NewCouple | Address::TakeIn | Address::Invite => Address::Couples,
            Address::Calculator(_) => Address::Bench,
            Address::Setting(Setting::Gauge(_)) => Address::Setting(Setting::Gauges),
            Address::Setting(Setting::TryOn(_)) => Address::Setting(Setting::Tray),
            Address::Setting(Setting::Time(_) | Setting::Extra(_)) => Address::Setting(Setting::Times),
            Address::Setting(Setting::Closure(_) | Setting::Place(_) | Setting::Holidays) => {
                Address::Setting(Setting::Closures)
            }
            Address::Setting(Setting::PhoneName(_) | Setting::Install) => Address::Setting(Setting::Phone),
            Address::Setting(Setting::BringIn) => Address::Setting(Setting::Copies),
            Address::Setting(_) => Address::Practice,
            Address::List(_) => Address::List(None),
            Address::Today | Address::Couples | Address::Bench | Address::Practice | Address::Nowhere => Address::Today,
        }
    }
}

/// An address with what a calculator is asked.
pub fn with_query(address: Address, query: &[(String, String)]) -> String {
    let mut text = address.to_string();
    for (i, (name, value)) in query.iter().enumerate() {
        text.push(if i == 0 { '?' } else { '&' });
        text.push_str(&String::from(encode_uri_component(name)));
        text.push('=');
        text.push_str(&String::from(encode_uri_component(value)));
    }
    text
}

fn item(item: Option<ItemId>) -> String {
    item.map_or_else(|| "new".to_owned(), |item| item.to_string())
}

impl fmt::Display for Address {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Address::Today | Address::Nowhere => f.write_str("#/today"),
            Address::Couples => f.write_str("#/couples"),
            Address::NewCouple => f.write_str("#/couples/new"),
            Address::TakeIn => f.write_str("#/couples/list"),
            Address::Invite => f.write_str("#/couples/invite"),
            Address::List(None) => f.write_str("#/list"),
            Address::List(Some(section)) => write!(f, "#/list/{}", section.code()),
            Address::Couple(id) => write!(f, "#/couple/{id}"),
            Address::Part(id, part) => write!(f, "#/couple/{id}/{part}"),
            Address::Bench => f.write_str("#/tools"),
            Address::Calculator(which) => write!(f, "#/tools/{}", which.code()),
            Address::Practice => f.write_str("#/setup"),
            Address::Setting(setting) => write!(f, "#/setup/{setting}"),
        }
    }
}

/// The parts of a couple that are no more than a word.
pub(super) const PARTS: [(&str, Part); 16] = [
    ("people", Part::People),
    ("wedding", Part::Wedding),
    ("appointments", Part::Appointments),
    ("recorded", Part::Recorded),
    ("stage", Part::Stage),
    ("notes", Part::Notes),
    ("read-back", Part::ReadBack),
    ("plan", Part::Plan),
    ("specification", Part::Specification),
    ("copy", Part::Copy),
    ("differences", Part::Differences),
    ("same", Part::Same),
    ("history", Part::History),
    ("erase", Part::Erase),
    ("said", Part::PreparationList),
    ("invite", Part::Invite),
];

/// The settings that are no more than a word.
pub(super) const SETTINGS: [(&str, Setting); 16] = [
    ("fair", Setting::Fair),
    ("sizes", Setting::Sizes),
    ("gauges", Setting::Gauges),
    ("tray", Setting::Tray),
    ("times", Setting::Times),
    ("closures", Setting::Closures),
    ("closures/holidays", Setting::Holidays),
    ("chances", Setting::Chances),
    ("stack", Setting::Stack),
    ("fit", Setting::Fit),
    ("phone", Setting::Phone),
    ("install", Setting::Install),
    ("copies", Setting::Copies),
    ("copies/bring-in", Setting::BringIn),
    ("differences", Setting::Differences),
    ("example", Setting::Example),
];

/// The word for one of a table, none if it says more than a word.
fn word<T: PartialEq>(table: &[(&'static str, T)], wanted: &T) -> &'static str {
    table.iter().find(|(_, one)| one == wanted).map_or("", |(word, _)| word)
}

impl fmt::Display for Part {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (what, who) = match self {
            Part::Appointment(which) => return write!(f, "appointments/{}", item(*which)),
            Part::Ring(who, which) => return write!(f, "rings/{}/{}", who.code(), item(*which)),
            Part::Finger(who) => ("finger", who),
            Part::Fitted(who) => ("fitted", who),
            Part::Rings(who) => ("rings", who),
            Part::Band(who) => ("band", who),
            Part::Remedy(who) => ("remedy", who),
            word => return f.write_str(self::word(&PARTS, word)),
        };
        write!(f, "{what}/{}", who.code())
    }
}

impl fmt::Display for Setting {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (list, which) = match self {
            Setting::PhoneName(by) => return write!(f, "phone/{by}"),
            Setting::Time(work) => ("times", work.code().to_owned()),
            Setting::Place(place) => ("closures", place.code().to_owned()),
            Setting::Gauge(which) => ("gauges", item(*which)),
            Setting::TryOn(which) => ("tray", item(*which)),
            Setting::Extra(which) => ("times", item(*which)),
            Setting::Closure(which) => ("closures", item(*which)),
            word => return f.write_str(self::word(&SETTINGS, word)),
        };
        write!(f, "{list}/{which}")
    }
}
