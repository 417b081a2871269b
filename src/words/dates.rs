//! Names and sentences for days: regions, holidays, weddings, the countdown's answers, and what goes wrong.

use super::format;
use crate::trade::dates::closed::{CalendarError, Closed};
use crate::trade::dates::countdown::{Countdown, DatesError, Ordered};
use crate::trade::dates::entry::{DateEntryError, TimeEntryError};
use crate::trade::dates::holidays::{Holiday, HolidayKind, HolidayName, Region, is_projection, settled_to};
use crate::trade::dates::lead_times::Step;
use crate::trade::dates::milestones::Milestone;
use crate::trade::dates::odds::{Chance, Lasts};
use crate::trade::dates::places::Place;
use crate::trade::dates::spread::{CalendarDays, Spread, SpreadError, WorkingDays};
use crate::trade::dates::wedding::Wedding;
use crate::trade::measure::Percent;
use chrono::{Datelike, NaiveDate, NaiveTime, Timelike, Weekday};

pub use crate::forms::Asked;

// The names that stand in the table of holidays.
include!(concat!(env!("OUT_DIR"), "/holiday_names.rs"));

/// What a region is called.
pub fn region(region: Region) -> &'static str {
    REGIONS[region as usize]
}

/// What a holiday is called.
pub fn holiday(name: HolidayName) -> &'static str {
    HOLIDAYS[name as usize]
}

/// A holiday with what has to be said of it: "Boxing Day · substitute day · projection".
pub fn holiday_in_full(region: Region, it: Holiday) -> String {
    let projection = is_projection(region, it.day.year()).then_some("projection");
    [Some(holiday(it.name)), holiday_kind(it.kind), projection].into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

/// A holiday to be switched: "Good Friday · by choice".
pub fn holiday_choice(it: Holiday) -> String {
    if it.by_choice { format!("{} · by choice", holiday(it.name)) } else { holiday(it.name).to_owned() }
}

/// Why a day is closed; a closure by the name it has in the book. Whose day it is, where it is not the workshop's.
pub fn closed(at: Place, why: Closed, closure: Option<&str>) -> String {
    let whose = place(at);
    match why {
        Closed::Closure(_) => closure.map_or(format!("{whose} closed"), |name| format!("{whose} closed: {name}")),
        Closed::Holiday(name) if at == Place::Workshop => holiday(name).to_owned(),
        Closed::Holiday(name) => format!("{whose} closed: {}", holiday(name)),
        Closed::Weekend => "Not a working day".to_owned(),
    }
}

pub fn weekday(weekday: Weekday) -> &'static str {
    match weekday {
        Weekday::Mon => "Monday",
        Weekday::Tue => "Tuesday",
        Weekday::Wed => "Wednesday",
        Weekday::Thu => "Thursday",
        Weekday::Fri => "Friday",
        Weekday::Sat => "Saturday",
        Weekday::Sun => "Sunday",
    }
}

/// What a step of the work is called.
pub fn step(step: Step) -> &'static str {
    match step {
        Step::Making => "Making",
        Step::Stones => "Setting stones",
        Step::Marking => "Marking at an assay office",
        Step::Engraving => "Engraving",
        Step::Delivery => "Delivery",
        Step::Resizing => "Room for one change of size",
    }
}

/// Whose days count for a step.
pub fn place(place: Place) -> &'static str {
    match place {
        Place::Workshop => "Workshop",
        Place::AssayOffice => "Assay office",
        Place::Courier => "Courier",
    }
}

/// What has to be done by a day.
pub fn milestone(milestone: Milestone) -> &'static str {
    match milestone {
        Milestone::Decide => "Decide what is made",
        Milestone::Order => "Order",
        Milestone::EngravingText => "Words to engrave fixed",
        Milestone::Collect => "In hand",
        Milestone::TryOn => "Try on",
        Milestone::LastResize => "Last day to begin a change of size",
    }
}

/// Why a milestone stands on its day.
pub fn milestone_why(milestone: Milestone) -> &'static str {
    match milestone {
        Milestone::Decide => "a working week before ordering: time for the deposit and the papers",
        Milestone::Order => "the last day with the chance that you plan for",
        Milestone::EngravingText => "when engraving begins if all that follows takes its longest",
        Milestone::Collect => "the days in hand before the wedding",
        Milestone::TryOn => "so that a wrong size shows in time",
        Milestone::LastResize => "as a change usually goes, back the day before the wedding",
    }
}

/// How long a step took in the jeweller's own orders: "12 to 20 working days, usually 15, in 11 of your own orders".
pub fn by_orders(lasts: &Lasts, orders: usize) -> String {
    let (least, most) = (format::count(lasts.least().0.into()), working_days(lasts.most()));
    let usual = format::count(lasts.usual().0.into());
    format!("{least} to {most}, usually {usual}, in {} of your own orders", format::count(orders as i64))
}

/// That the workshop is closed on the day of the wedding, for this reason.
pub fn wedding_closed(why: Closed) -> String {
    match why {
        Closed::Holiday(name) => {
            format!("The wedding is on {}: nobody delivers or mends anything that day.", holiday(name))
        }
        Closed::Closure(_) | Closed::Weekend => "The workshop is closed on the day of the wedding.".to_owned(),
    }
}

/// A chance, never made better than it is and never certain, because no plan is: "95 %", "under 1 %", "over 99 %".
pub fn chance(chance: Chance) -> String {
    match chance.percent() {
        Percent(0) => "under 1 %".to_owned(),
        Percent(100) => "over 99 %".to_owned(),
        Percent(share) => format!("{} %", format::count(share.into())),
    }
}

/// Behind a number of days.
pub const DAYS: &str = "days";
/// The three numbers of a spread.
pub const LEAST: &str = "At least";
pub const USUAL: &str = "Usually";
pub const MOST: &str = "At most";

/// How a holiday came to stand on its day, where it is not simply its own.
pub fn holiday_kind(kind: HolidayKind) -> Option<&'static str> {
    match kind {
        HolidayKind::Itself => None,
        HolidayKind::OnWeekend => Some("on a weekend, given again"),
        HolidayKind::Substitute => Some("substitute day"),
        HolidayKind::Moved => Some("moved this year"),
        HolidayKind::Extra => Some("this year only"),
    }
}

/// "15 to 20 working days, usually 17".
pub fn spread(spread: Spread) -> String {
    let (least, usual, most) = (spread.least(), spread.usual(), spread.most());
    if least == most {
        return working_days(most);
    }
    format!("{} to {}, usually {}", format::count(least.0.into()), working_days(most), format::count(usual.0.into()))
}

/// "1 working day", "81 working days".
pub fn working_days(days: WorkingDays) -> String {
    format::counted(days.0.into(), "working day", "working days")
}

/// "14 days".
pub fn calendar_days(days: CalendarDays) -> String {
    format::counted(days.0.into(), "day", "days")
}

/// The wedding as exactly as it is known: "Sat 22 May 2027", "May 2027", "some time in 2027", "not yet known".
pub fn wedding(wedding: Wedding) -> String {
    match wedding {
        Wedding::Day(day) => format::day(day),
        Wedding::Month { year, month } => format::month(year, month),
        Wedding::Year(year) => format!("some time in {year}"),
        Wedding::NotYet => "not yet known".to_owned(),
    }
}

/// A time of day: "14:30".
pub fn time(time: NaiveTime) -> String {
    format!("{:02}:{:02}", time.hour(), time.minute())
}

/// How likely it is in time if ordered now.
pub fn in_time(answer: &Countdown) -> String {
    let due = format::day(answer.plan.in_hand);
    format!("Ordered now: {} in hand by {due}.", chance(answer.chance))
}

/// When it is finished if ordered now.
pub fn finish(ordered: &Ordered) -> String {
    let (least, usual, most) = (format::day(ordered.least), format::day(ordered.usual), format::day(ordered.most));
    if ordered.least == ordered.most {
        format!("Ordered now, it is finished on {most}.")
    } else {
        format!("Ordered now, it is finished between {least} and {most}, usually by {usual}.")
    }
}

/// Which day was counted for a wedding whose day is not known.
pub fn counted_from(wedding: Wedding, counted: NaiveDate) -> Option<String> {
    match wedding {
        Wedding::Day(_) | Wedding::NotYet => None,
        Wedding::Month { .. } | Wedding::Year(_) => {
            let day = format::day(counted);
            Some(if wedding.earliest() == Some(counted) {
                format!("Counted from {day}, the earliest day it can be.")
            } else if wedding.latest() == Some(counted) {
                format!("It may be any day now: ask for the day. Counted from {day}, the last day it can be.")
            } else {
                format!(
                    "It may be any day now: ask for the day. Counted from {day}, the first that can still be in time."
                )
            })
        }
    }
}

/// That holidays were worked out which nobody has settled yet.
pub fn projection(region: Region) -> String {
    match settled_to(region) {
        (true, last) => format!("Bank holidays after {last} are a projection: they are not proclaimed yet."),
        (false, last) => format!("Public holidays after {last} are a projection: the law may change until then."),
    }
}

/// How working days are counted, to be shown beside the answer.
pub const HOW_COUNTED: &str = "Every length of every step is counted with its chance, on the days of whoever does it. \
                               Working days are counted from the day after the order; one on a closed day, or \
                               past the cut-off, counts as ordered on the next working day.";

/// Why a typed date cannot be taken.
pub fn date_entry(error: DateEntryError, asked: Asked) -> String {
    match error {
        DateEntryError::Empty | DateEntryError::NotADate => match asked {
            Asked::Day => "Enter a date like 22 May 2027 or 22/5/2027.".to_owned(),
            Asked::Wedding => "Enter a date like 22 May 2027, a month, a year, or “not yet”.".to_owned(),
        },
        DateEntryError::TooLong => "Enter the date alone, like 22 May 2027.".to_owned(),
        DateEntryError::NoSuchMonth { month } => {
            format!("Enter the day first, then the month, like 22/5/2027: there is no month {month}.")
        }
        DateEntryError::NoSuchDay { day, month, year } => {
            let year = year.map(|year| format!(" {year}")).unwrap_or_default();
            format!("Enter a day that exists: there is no {day} {}{year}.", month_name(month))
        }
        DateEntryError::OtherWeekday { day, typed } => format!(
            "Check the day: {} {} {} is a {}, not a {}.",
            day.day(),
            month_name(day.month()),
            day.year(),
            weekday(day.weekday()),
            weekday(typed)
        ),
        DateEntryError::DayOrYear { month, number } => {
            let month = month_name(month);
            format!("Enter {number} {month} or {month} 20{number:02}: it can be read as either.")
        }
        DateEntryError::EitherDay { first, second } => {
            format!("Enter {} or {}: it can be read as either.", format::day(first), format::day(second))
        }
        DateEntryError::DayMissing => "Enter the day as well, like 22 May 2027.".to_owned(),
        DateEntryError::Past { wedding: past } => {
            format!("Enter a wedding date from today on: {} is past.", wedding(past))
        }
        DateEntryError::TooFar { latest } => format!("Enter a date no later than {}.", format::day(latest)),
        DateEntryError::TooLongAgo { earliest } => format!("Enter a date no earlier than {}.", format::day(earliest)),
    }
}

/// Why a typed time cannot be taken.
pub fn time_entry(error: TimeEntryError) -> String {
    match error {
        TimeEntryError::Empty | TimeEntryError::NotATime => "Enter a time like 14:30 or 2.30pm.".to_owned(),
        TimeEntryError::TooLong => "Enter the time alone, like 14:30.".to_owned(),
        TimeEntryError::NoSuchTime => "Enter a time between 00:00 and 23:59.".to_owned(),
        TimeEntryError::AmOrPm { time: early } => {
            let late = early.overflowing_add_signed(chrono::TimeDelta::hours(12)).0;
            format!("Enter {} or {}: it can be read as either.", time(early), time(late))
        }
    }
}

/// Why three numbers are no spread.
pub fn spread_error(error: SpreadError) -> String {
    match error {
        SpreadError::LeastAboveUsual { least, usual } => format!(
            "Enter a usual time no shorter than the least: {} is less than {}.",
            format::count(usual.0.into()),
            working_days(least)
        ),
        SpreadError::UsualAboveMost { usual, most } => format!(
            "Enter a longest time no shorter than the usual: {} is less than {}.",
            format::count(most.0.into()),
            working_days(usual)
        ),
        SpreadError::TooLong { limit, .. } => {
            format!("The longest time must be between 0 and {}.", working_days(limit))
        }
    }
}

/// What is wrong with a calendar.
pub fn calendar_error(error: CalendarError) -> String {
    match error {
        CalendarError::NoWeekdays => "Choose at least one day of the week that is worked.".to_owned(),
        CalendarError::Backwards { from, .. } => {
            format!("Enter a last day that is not before {}, the first.", format::day(from))
        }
        CalendarError::ClosureTooLong { limit } => {
            format!("Enter a closure of at most {}.", calendar_days(limit))
        }
        CalendarError::TooManyClosures { limit } => {
            format!("Keep at most {limit} closures: remove some that are past.")
        }
        CalendarError::NoWorkingDay { near } => {
            format!("Shorten the closures: there is no working day within thirty years of {}.", format::day(near))
        }
        CalendarError::TooFar { .. } => {
            "Shorten the closures or the times: the answer is more than thirty years off.".to_owned()
        }
    }
}

/// Why there is no countdown.
pub fn dates_error(error: DatesError) -> String {
    match error {
        DatesError::NoWeddingDate => "Enter the wedding date, a month or a year to see when to order.".to_owned(),
        DatesError::WeddingPast { wedding } => date_entry(DateEntryError::Past { wedding }, Asked::Wedding),
        DatesError::WeddingTooFar { .. } => "Enter a wedding date within the next twenty-one years.".to_owned(),
        DatesError::TakesTooLong => "Shorten the times: together they come to more than ten years.".to_owned(),
        DatesError::TooManySteps { limit } => format!("Count at most {limit} steps: leave out some extras."),
        DatesError::Calendar(error) => calendar_error(error),
    }
}

/// "Sep".
pub fn month_short(month: u32) -> String {
    month_name(month).chars().take(3).collect()
}

/// "May".
pub fn month_name(month: u32) -> String {
    let name = format::month(2000, month);
    name.strip_suffix(" 2000").unwrap_or(&name).to_owned()
}
