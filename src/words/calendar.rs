//! The words in the calendar pictures, and a text that says the same as they show.

use super::format;
use crate::trade::dates::milestones::Milestone;
use chrono::{Datelike, NaiveDate};

/// A day that a calendar marks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum DayMark {
    Today,
    OrderBy,
    Start,
    Finish,
    InHand,
    TryOn,
    LastResize,
    Appointment,
    Wedding,
}

impl DayMark {
    /// The mark of a milestone that is not marked otherwise.
    pub fn of(milestone: Milestone) -> Option<DayMark> {
        match milestone {
            Milestone::TryOn => Some(DayMark::TryOn),
            Milestone::LastResize => Some(DayMark::LastResize),
            Milestone::Decide | Milestone::Order | Milestone::EngravingText | Milestone::Collect => None,
        }
    }
}

/// The name of a marked day, as the key of the calendar has it.
pub fn day_mark(mark: DayMark) -> &'static str {
    match mark {
        DayMark::Today => "today",
        DayMark::OrderBy => "order by",
        DayMark::Start => "work starts",
        DayMark::Finish => "as likely ready as not",
        DayMark::InHand => "in hand by",
        DayMark::TryOn => "try on",
        DayMark::LastResize => "last day to resize",
        DayMark::Appointment => "appointment",
        DayMark::Wedding => "wedding",
    }
}

/// "closed days", the key to the hatching.
pub fn closed_days() -> &'static str {
    "closed days"
}

/// The key to the shading of likely days.
pub fn likely_days() -> &'static str {
    "likely finish: the darker, the likelier"
}

/// The key to the stroke under the days that a change of size may take.
pub fn room_for_resize() -> &'static str {
    "room for a resize"
}

/// "11 months not drawn".
pub fn months_left_out(months: i64) -> String {
    format!("{} not drawn", format::counted(months, "month", "months"))
}

/// "May", or "Jan 28" where the year has to be said: the head of a row of the calendar.
pub fn month_head(day: NaiveDate, with_year: bool) -> String {
    let text = format::day_short(day);
    let month: String = text.rsplit(' ').next().unwrap_or_default().chars().take(3).collect();
    if with_year { format!("{month} {:02}", day.year().rem_euclid(100)) } else { month }
}

/// The first letters of the days of a week, Monday first.
pub fn weekday_letters() -> [&'static str; 7] {
    ["M", "T", "W", "T", "F", "S", "S"]
}

/// The calendar from today to the wedding, in words.
pub fn calendar(days: &[(DayMark, NaiveDate)], closed: usize, likely: Option<(NaiveDate, NaiveDate)>) -> String {
    let named: Vec<String> =
        days.iter().map(|(mark, day)| format!("{} {}", day_mark(*mark), format::day(*day))).collect();
    let likely = match likely {
        Some((first, last)) => format!(" Finished between {} and {}.", format::day(first), format::day(last)),
        None => String::new(),
    };
    format!(
        "Calendar: {}.{likely} {} in between.",
        named.join(", "),
        format::counted(closed as i64, "closed day", "closed days")
    )
}
