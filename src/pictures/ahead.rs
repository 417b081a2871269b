//! The calendar from today to the wedding, as the countdown and a couple's plan have it.

use super::Picture;
use super::calendar_strip::{CalendarStrip, calendar_strip};
use crate::answers::ahead::{appointments, is_closed, likely_ready};
use crate::book::progress::Ahead;
use crate::words::answer::CoupleView;
use crate::words::{ahead as say, calendar::DayMark};

/// Draws it.
pub fn calendar(ahead: &Ahead) -> Picture {
    let plan = &ahead.plan;
    let mut marks = vec![(DayMark::Today, ahead.today)];
    if !ahead.is_ordered {
        marks.push((DayMark::OrderBy, plan.order_by));
    }
    if let Some((start, likely)) = likely_ready(ahead) {
        marks.push((DayMark::Start, start));
        marks.push((DayMark::Finish, likely.half));
    }
    marks.push((DayMark::InHand, plan.in_hand));
    marks.push((DayMark::Wedding, plan.wedding));
    marks.extend(plan.milestones.iter().filter_map(|due| Some((DayMark::of(due.what)?, due.by))));
    marks.extend(appointments(ahead).map(|day| (DayMark::Appointment, day)));
    let finish: Vec<_> = ahead.ready.iter().flat_map(|(_, finish)| finish.days()).collect();
    calendar_strip(&CalendarStrip { marks, finish: &finish, closed: &|day| is_closed(ahead, day) })
}

/// What the couple is shown of it.
pub fn shown(ahead: &Ahead) -> CoupleView {
    CoupleView { picture: calendar(ahead).svg, ..say::shown(ahead) }
}
