//! Words of the calendar from today to the wedding, and of the list that says the same.

use super::{bench, format, screens};
use crate::trade::dates::closed::Closed;
use crate::trade::dates::milestones::Milestone;
use chrono::NaiveDate;

pub const CLOSED: &str = "Closed days, one by one";
pub const WORKED: &str = "Worked";
pub const REACHED: &str = "reached";
pub const APPOINTMENT: &str = "Appointment";
pub const WEDDING: &str = "Wedding";
pub const LIKELY: &str = "Likely ready";
pub const ROOM_TO_RESIZE: &str = "Room for a change of size";

/// The day of the order, or the one that it would be.
pub fn work_starts(is_ordered: bool) -> &'static str {
    if is_ordered { "Ordered" } else { bench::WORK_STARTS }
}

pub fn start_why(is_ordered: bool) -> &'static str {
    if is_ordered { "work has begun" } else { "if ordered today" }
}

/// "as likely as not by Fri 5 Mar 2027, with 95 % by Tue 9 Mar 2027".
pub fn likely_why(half: NaiveDate, sure: NaiveDate) -> String {
    format!("as likely as not by {}, with 95 % by {}", format::day(half), format::day(sure))
}

/// "Mon 2 Aug to Fri 13 Aug 2027", or a day alone.
pub fn span(first: NaiveDate, last: NaiveDate) -> String {
    match first == last {
        true => format::day(first),
        false if format::day(first).get(11..) == format::day(last).get(11..) => {
            format!("{} to {}", format::day_short(first), format::day(last))
        }
        false => format!("{} to {}", format::day(first), format::day(last)),
    }
}

/// What a closure is called; one that comes with the place has no name.
pub fn closure_of(why: Closed, names: &[String]) -> Option<&str> {
    match why {
        Closed::Closure(at) => names.get(at).map(String::as_str),
        Closed::Holiday(_) | Closed::Weekend => None,
    }
}

/// That the workshop is closed on the day of a milestone, and by when instead, where there is such a day.
pub fn closed_then(what: Milestone, before: Option<NaiveDate>) -> String {
    match before {
        None => "closed that day".to_owned(),
        Some(day) if what == Milestone::TryOn => format!("closed that day: try on by {}", format::day_short(day)),
        Some(day) => format!("closed that day: collect by {}", format::day_short(day)),
    }
}

// What the couple is shown
pub const UNTIL_TITLE: &str = "Until the wedding";
pub const READY_TITLE: &str = "When your rings are ready";

/// "By then with 95 %; as likely as not by Fri 5 Mar 2027."
pub fn ready_line(half: NaiveDate) -> String {
    format!("By then with 95 %; as likely as not by {}.", format::day(half))
}

/// "Ordered now, they would be ready between Mon 4 Jan and Fri 22 Jan 2027."
pub fn would_be_ready(first: NaiveDate, last: NaiveDate) -> String {
    format!("Ordered now, they would be ready between {} and {}.", format::day(first), format::day(last))
}

/// "The wedding: Sat 22 May 2027, in 178 days."
pub fn wedding_line(wedding: NaiveDate, today: NaiveDate) -> String {
    format!("The wedding: {}, {}.", format::day(wedding), screens::from_today(wedding, today))
}
