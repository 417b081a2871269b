//! The words of the working-day countdown.

use crate::trade::dates::countdown::{Cost, Left, Slack};
use crate::trade::dates::holidays::Region;
use crate::trade::dates::odds::Chance;
use crate::trade::dates::spread::{CalendarDays, Spread, WorkingDays};
use crate::trade::dates::wedding::Wedding;
use crate::trade::measure::Percent;
use crate::words::{dates, format};
use chrono::{NaiveDate, NaiveTime};
pub const ORDER_BY: &str = "Order by";
pub const CONFIDENCE: &str = "Chance of being in time to plan for";
pub const DECIDED: &str = "If they decide later";
pub const DECIDED_HINT: &str = "Optional: a day, or “Thursday”, to see what waiting costs.";
pub const DAYS_TO_KEEP: &str = "Days to keep";
pub const IF_ORDERED_TODAY: &str = "If ordered today";
pub const REGION: &str = "Bank holidays of";
pub const MAKING_DAYS: &str = "Making, in working days";
pub const LEAST: &str = "Least";
pub const USUAL: &str = "Usual";
pub const MOST: &str = "Most";
pub const ON_TOP: &str = "On top of making";
pub const OWN_EXTRA: &str = "Extra work";
pub const IN_HAND: &str = "In hand before the wedding";
pub const DAYS_BEFORE: &str = "days";
pub const IN_HAND_BY: &str = "In hand by";
pub const WORK_STARTS: &str = "Work starts";
pub const DAY_ZERO_HOW: &str = "the day of the order, or the next working day; counted from the day after";
pub const PAST_CUT_OFF: &str = "Past today’s cut-off: an order now counts from the next working day.";
pub const CLOSED_DAYS: &str = "Closed days";
pub const TO_CLOSURES: &str = "Closures";
pub const TO_TIMES: &str = "Your times";
/// What is typed for a wedding whose date is not known.
const NOT_YET: &str = "not yet";

/// A wedding as it would be typed.
pub fn wedding_typed(wedding: Wedding) -> String {
    match wedding {
        Wedding::Year(year) => year.to_string(),
        Wedding::NotYet => NOT_YET.to_owned(),
        Wedding::Day(_) | Wedding::Month { .. } => dates::wedding(wedding),
    }
}

/// The working days that are left to order in, with today among them or not.
pub fn slack(slack: Slack, left: Option<Left>) -> String {
    match (slack, left) {
        (Slack::Left(WorkingDays(0)), _) => "the last day: no working day to spare".to_owned(),
        (_, Some(Left { days, today_among: true })) => {
            format!("{} left to order in, today among them", dates::working_days(days))
        }
        (_, Some(Left { days, today_among: false })) => {
            format!("{} left to order in after today", dates::working_days(days))
        }
        (Slack::Left(days), None) => format!("{} left", dates::working_days(days)),
        (Slack::Late(days), None) => format!("{} too late", dates::working_days(days)),
    }
}

/// "87 % here before the wedding, ordered now."
pub fn before_wedding(chance: Chance) -> String {
    format!("{} here before the wedding, if ordered now.", dates::chance(chance))
}

/// Behind a day that should have been, and is past.
pub fn past(why: &str) -> String {
    format!("already past: {why}")
}

/// The chance that all is well on the day before, a change of size included.
pub fn fits(chance: Chance) -> String {
    format!("{} that it fits before the wedding, a change of size included.", dates::chance(chance))
}

pub fn order_by_how(confidence: Percent) -> String {
    format!("the last day with {} % in time; work starts the same day", format::count(confidence.0.into()))
}

/// Why work starts on its day, before the cut-off.
pub fn before_cut_off(cut_off: NaiveTime) -> String {
    format!("an order until {} counts as today’s", dates::time(cut_off))
}

/// "95 % ready by".
pub fn ready_with(share: Percent) -> String {
    format!("{} % ready by", format::count(share.0.into()))
}

/// "If decided Thu 3 Dec".
pub fn if_decided(day: NaiveDate) -> String {
    format!("If decided {}", format::day_short(day))
}

pub fn decided_why(ready: &str) -> String {
    format!("in hand in time; 95 % ready by {ready}")
}

pub fn decided_past(today: NaiveDate) -> String {
    format!("Enter a day from today on, {}.", format::day(today))
}

/// What a step costs: "costs 5 working days; without it 99 % in time".
pub fn cost(cost: Cost) -> String {
    let without = dates::chance(cost.without);
    format!("costs {}; without it {without} in time", dates::working_days(cost.days))
}

/// "17 days".
pub fn usual_days(days: WorkingDays) -> String {
    format::counted(days.0.into(), "day", "days")
}

pub fn ready_at_latest() -> &'static str {
    "at the latest, if ordered today"
}

pub fn before_the_wedding(days: CalendarDays) -> String {
    format!("{} before the wedding, for a try-on", dates::calendar_days(days))
}

/// "15 to 20 days’ making".
pub fn making_short(making: Spread) -> String {
    format!("making {} to {}", making.least().0, making.most().0)
}

pub fn extras_short(count: usize) -> String {
    format::counted(count as i64, "extra", "extras")
}

pub fn closed_how(region: Region) -> String {
    format!("until the wedding: days not worked, closures, bank holidays of {}", dates::region(region))
}

/// How many closures of the workshop are counted.
pub fn closures_known(count: usize) -> String {
    match count {
        0 => "No workshop closures are written down.".to_owned(),
        count => format!("{} counted.", format::counted(count as i64, "workshop closure is", "workshop closures are")),
    }
}

pub fn see_order_by(day: NaiveDate) -> String {
    format!("Order by {}: see why", format::day_short(day))
}

/// The button that writes the dates back.
pub fn use_order_by(day: &str) -> String {
    format!("Use order by {day}")
}

pub fn dates_saved() -> String {
    "Dates saved".to_owned()
}
