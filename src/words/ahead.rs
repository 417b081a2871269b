//! Words of the calendar from today to the wedding, and of the list that says the same.

use super::answer::{CoupleView, Reason, reason};
use super::{bench, dates, format, practice, screens, showing};
use crate::answers::ahead::{ClosedSpan, Kept, LikelyReady, closed_spans, days_to_keep, likely_ready};
use crate::book::progress::Ahead;
use crate::trade::dates::closed::Closed;
use crate::trade::dates::milestones::Milestone;
use crate::trade::dates::places::Place;
use chrono::NaiveDate;

pub const CLOSED: &str = "Closed days, one by one";
pub const WORKED: &str = "Worked";
pub const REACHED: &str = "reached";
pub const APPOINTMENT: &str = "Appointment";
pub const WEDDING: &str = "Wedding";
pub const LIKELY: &str = "Likely ready";
pub const ROOM_TO_RESIZE: &str = "Room for a change of size";

/// Every day that the picture marks, in their order, each with what it is for.
pub fn days(ahead: &Ahead) -> Vec<Reason> {
    days_to_keep(ahead).into_iter().map(|(day, kept)| day_kept(day, kept, ahead.today)).collect()
}

fn day_kept(day: NaiveDate, kept: Kept, today: NaiveDate) -> Reason {
    let on_the_day = |name: &str, why: String| reason(name, format::day(day), why);
    match kept {
        Kept::Milestone { what, is_reached, closed } => {
            let why = if is_reached { REACHED } else { dates::milestone_why(what) };
            let closed = closed.map(|before| format!("{why}; {}", closed_then(what, before)));
            on_the_day(dates::milestone(what), closed.unwrap_or_else(|| why.to_owned()))
        }
        Kept::Appointment => on_the_day(APPOINTMENT, screens::from_today(day, today)),
        Kept::Wedding => on_the_day(WEDDING, screens::from_today(day, today)),
        Kept::WorkStarts { is_ordered } => on_the_day(work_starts(is_ordered), start_why(is_ordered).to_owned()),
        Kept::Likely(LikelyReady { first, last, half, sure }) => {
            reason(LIKELY, span(first, last), likely_why(half, sure))
        }
        Kept::RoomToResize { until } => reason(ROOM_TO_RESIZE, span(day, until), ""),
    }
}

/// The closed days one by one, those that follow one another for the same reason together; the weekdays that are
/// never worked in one line. `names` are those of the closures of each place.
pub fn closed(ahead: &Ahead, names: &[(Place, Vec<String>)]) -> Vec<Reason> {
    let of = |place| names.iter().find(|(it, _)| *it == place).map_or(&[][..], |(_, names)| names);
    let row = |ClosedSpan { place, why, first, last }| {
        reason(dates::closed(place, why, closure_of(why, of(place))), span(first, last), "")
    };
    let worked = reason(WORKED, practice::weekdays(ahead.calendar.weekdays()), "");
    std::iter::once(worked).chain(closed_spans(ahead).into_iter().map(row)).collect()
}

/// What the couple is shown, without its picture.
pub fn shown(ahead: &Ahead) -> CoupleView {
    let (today, plan) = (ahead.today, &ahead.plan);
    let wedding = wedding_line(plan.wedding, today);
    let (title, figure, lines) = match likely_ready(ahead) {
        Some((_, likely)) if ahead.is_ordered => (READY_TITLE, likely.sure, vec![ready_line(likely.half), wedding]),
        Some((_, likely)) => {
            let ready = would_be_ready(likely.first, likely.last);
            (showing::DATES_TITLE, plan.order_by, vec![ready, wedding])
        }
        None => (UNTIL_TITLE, plan.wedding, vec![screens::from_today(plan.wedding, today)]),
    };
    CoupleView { title: title.to_owned(), picture: String::new(), figure: format::day(figure), lines }
}

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
