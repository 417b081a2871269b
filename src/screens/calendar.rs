//! The calendar from today to the wedding, and the list that says the same: for the countdown and for a couple's plan.

use chrono::NaiveDate;

use crate::app::show::Shown;
use crate::book::progress::Ahead;
use crate::pictures::calendar_strip::{CalendarStrip, calendar_strip};
use crate::trade::arrange::in_order;
use crate::trade::dates::closed::{ClosedDay, closed_spans};
use crate::trade::dates::milestones::{Due, Milestone};
use crate::trade::dates::places::Place;
use crate::trade::dates::spread::WorkingDays;
use crate::trade::measure::Percent;
use crate::words::answer::{Reason, reason};
use crate::words::calendar::DayMark;
use crate::words::{ahead as say, dates as say_dates, format, practice, screens, showing};

/// So many appointments are drawn and listed.
const APPOINTMENTS: usize = 6;

/// The picture.
pub fn drawn(ahead: &Ahead) -> String {
    // From today on the answer lists them; before today the calendar is asked.
    let closed = |day| {
        if day < ahead.today {
            !ahead.calendar.is_working(day)
        } else {
            ahead.closed_days.binary_search_by_key(&day, |closed| closed.day).is_ok()
        }
    };
    let plan = &ahead.plan;
    let mut marks = vec![(DayMark::Today, ahead.today)];
    if !ahead.is_ordered {
        marks.push((DayMark::OrderBy, plan.order_by));
    }
    if let Some((start, finish)) = &ahead.ready {
        marks.push((DayMark::Start, *start));
        marks.push((DayMark::Finish, finish.by(Percent(50))));
    }
    marks.push((DayMark::InHand, plan.in_hand));
    marks.push((DayMark::Wedding, plan.wedding));
    marks.extend(plan.milestones.iter().filter_map(|due| Some((DayMark::of(due.what)?, due.by))));
    marks.extend(ahead.appointments.iter().take(APPOINTMENTS).map(|day| (DayMark::Appointment, *day)));
    let finish: Vec<_> = ahead.ready.iter().flat_map(|(_, finish)| finish.days()).collect();
    calendar_strip(&CalendarStrip { marks, finish: &finish, closed: &closed }).svg
}

/// What the couple is shown of it.
pub fn shown(ahead: &Ahead) -> Shown {
    let Ahead { today, plan, .. } = ahead;
    let wedding = say::wedding_line(plan.wedding, *today);
    let (title, figure, lines) = match &ahead.ready {
        Some((_, finish)) if ahead.is_ordered => {
            (say::READY_TITLE, finish.by(Percent(95)), vec![say::ready_line(finish.by(Percent(50))), wedding])
        }
        Some((_, finish)) => {
            let ready = say::would_be_ready(finish.earliest(), finish.last());
            (showing::DATES_TITLE, plan.order_by, vec![ready, wedding])
        }
        None => (say::UNTIL_TITLE, plan.wedding, vec![screens::from_today(plan.wedding, *today)]),
    };
    Shown { title: title.to_owned(), picture: drawn(ahead), figure: format::day(figure), lines }
}

/// Every day that the picture marks, in their order, each with what it is for.
pub fn days(ahead: &Ahead) -> Vec<Reason> {
    let plan = &ahead.plan;
    let mut all: Vec<(NaiveDate, Reason)> = Vec::new();
    let mut put = |day: NaiveDate, name: &str, why: String| all.push((day, reason(name, format::day(day), why)));
    for due in &plan.milestones {
        let reached = ahead.reached.contains(&due.what);
        let why = if reached { say::REACHED } else { say_dates::milestone_why(due.what) };
        let shut = closed_on(ahead, due).filter(|_| !reached).map(|shut| format!("{why}; {shut}"));
        put(due.by, say_dates::milestone(due.what), shut.unwrap_or_else(|| why.to_owned()));
    }
    for day in ahead.appointments.iter().take(APPOINTMENTS) {
        put(*day, say::APPOINTMENT, screens::from_today(*day, ahead.today));
    }
    put(plan.wedding, say::WEDDING, screens::from_today(plan.wedding, ahead.today));
    if let Some((start, finish)) = &ahead.ready {
        put(*start, say::work_starts(ahead.is_ordered), say::start_why(ahead.is_ordered).to_owned());
        let (half, sure) = (finish.by(Percent(50)), finish.by(Percent(95)));
        all.push((half, reason(say::LIKELY, say::span(finish.earliest(), finish.last()), say::likely_why(half, sure))));
    }
    let resize = plan.milestones.iter().find(|due| due.what == Milestone::LastResize);
    if let Some(due) = resize {
        let until = plan.wedding.pred_opt().unwrap_or(plan.wedding);
        all.push((due.by, reason(say::ROOM_TO_RESIZE, say::span(due.by, until), "")));
    }
    in_order(all, |(day, _)| *day).into_iter().map(|(_, row)| row).collect()
}

/// That a ring is to be in hand, or tried on, on a day on which the workshop is closed, and by when instead.
fn closed_on(ahead: &Ahead, due: &Due) -> Option<String> {
    let before = || ahead.calendar.back(due.by, WorkingDays(0)).ok().filter(|day| *day >= ahead.today);
    matches!(due.what, Milestone::Collect | Milestone::TryOn)
        .then(|| ahead.calendar.why_closed(due.by))?
        .map(|_| say::closed_then(due.what, before()))
}

/// The closed days one by one, those that follow one another for the same reason together; the weekdays that are
/// never worked in one line. `names` are those of the closures of each place.
pub fn closed(ahead: &Ahead, names: &[(Place, Vec<String>)]) -> Vec<Reason> {
    let of = |place| names.iter().find(|(it, _)| *it == place).map_or(&[][..], |(_, names)| names);
    let rows = |place, days: &[ClosedDay]| {
        let spans = closed_spans(days, ahead.plan.wedding).into_iter();
        let row = |(why, first, last)| {
            let name = say_dates::closed(place, why, say::closure_of(why, of(place)));
            reason(name, say::span(first, last), "")
        };
        spans.map(row).collect::<Vec<_>>()
    };
    let mut all = vec![reason(say::WORKED, practice::weekdays(ahead.calendar.weekdays()), "")];
    all.extend(rows(Place::Workshop, &ahead.closed_days));
    all.extend(ahead.elsewhere.iter().flat_map(|(place, days)| rows(*place, days)));
    all
}
