//! The calendar from today to the wedding: which days it marks, what each is for, and which are closed. The countdown
//! has one for what is typed, and a couple's plan for what is recorded.

use chrono::NaiveDate;

use crate::book::progress::Ahead;
use crate::trade::arrange::in_order;
use crate::trade::dates::closed::{self, Closed, ClosedDay};
use crate::trade::dates::milestones::{Due, Milestone};
use crate::trade::dates::places::Place;
use crate::trade::dates::spread::WorkingDays;
use crate::trade::measure::Percent;

/// So many appointments are drawn and listed.
const APPOINTMENTS: usize = 6;

/// What a day is kept for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kept {
    Milestone {
        what: Milestone,
        is_reached: bool,
        /// The workshop is closed that day, where that matters; the working day before it, if it is not past.
        closed: Option<Option<NaiveDate>>,
    },
    Appointment,
    Wedding,
    /// The day of the order, or the one that it would be today.
    WorkStarts {
        is_ordered: bool,
    },
    Likely(LikelyReady),
    /// From the day on until this one.
    RoomToResize {
        until: NaiveDate,
    },
}

/// When the rings are likely to be ready.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LikelyReady {
    pub first: NaiveDate,
    pub last: NaiveDate,
    /// The days by which they are with one chance in two, and with 95 in a hundred.
    pub half: NaiveDate,
    pub sure: NaiveDate,
}

/// Closed days that follow one another for the same reason.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ClosedSpan {
    pub place: Place,
    pub why: Closed,
    pub first: NaiveDate,
    pub last: NaiveDate,
}

/// When work starts, or started, and when the rings are likely to be ready; none where nobody knows.
pub fn likely_ready(ahead: &Ahead) -> Option<(NaiveDate, LikelyReady)> {
    let (start, finish) = ahead.ready.as_ref()?;
    let by = |share| finish.by(Percent(share));
    let likely = LikelyReady { first: finish.earliest(), last: finish.last(), half: by(50), sure: by(95) };
    Some((*start, likely))
}

/// The appointments that are drawn and listed.
pub fn appointments(ahead: &Ahead) -> impl Iterator<Item = NaiveDate> {
    ahead.appointments.iter().copied().take(APPOINTMENTS)
}

/// Whether the workshop is closed: from today on the answer lists the days, before today the calendar is asked.
pub fn is_closed(ahead: &Ahead, day: NaiveDate) -> bool {
    if day < ahead.today {
        !ahead.calendar.is_working(day)
    } else {
        ahead.closed_days.binary_search_by_key(&day, |closed| closed.day).is_ok()
    }
}

/// Every day that the picture marks, in their order, with what it is for.
pub fn days_to_keep(ahead: &Ahead) -> Vec<(NaiveDate, Kept)> {
    let plan = &ahead.plan;
    let milestone = |due: &Due| {
        let is_reached = ahead.reached.contains(&due.what);
        let closed = if is_reached { None } else { closed_on(ahead, due) };
        (due.by, Kept::Milestone { what: due.what, is_reached, closed })
    };
    let mut all: Vec<(NaiveDate, Kept)> = plan.milestones.iter().map(milestone).collect();
    all.extend(appointments(ahead).map(|day| (day, Kept::Appointment)));
    all.push((plan.wedding, Kept::Wedding));
    if let Some((start, likely)) = likely_ready(ahead) {
        all.push((start, Kept::WorkStarts { is_ordered: ahead.is_ordered }));
        all.push((likely.half, Kept::Likely(likely)));
    }
    if let Some(due) = plan.milestones.iter().find(|due| due.what == Milestone::LastResize) {
        let until = plan.wedding.pred_opt().unwrap_or(plan.wedding);
        all.push((due.by, Kept::RoomToResize { until }));
    }
    in_order(all, |(day, _)| *day)
}

/// That a ring is to be in hand, or tried on, on a day on which the workshop is closed, and by when instead.
fn closed_on(ahead: &Ahead, due: &Due) -> Option<Option<NaiveDate>> {
    if !matches!(due.what, Milestone::Collect | Milestone::TryOn) {
        return None;
    }
    ahead.calendar.why_closed(due.by)?;
    Some(ahead.calendar.back(due.by, WorkingDays(0)).ok().filter(|day| *day >= ahead.today))
}

/// The closed days of the workshop and of the other places that steps use, those that follow one another for the same
/// reason together; without the weekdays that are never worked.
pub fn closed_spans(ahead: &Ahead) -> Vec<ClosedSpan> {
    let of = |place: Place, days: &[ClosedDay]| {
        let spans = closed::closed_spans(days, ahead.plan.wedding).into_iter();
        spans.map(|(why, first, last)| ClosedSpan { place, why, first, last }).collect::<Vec<_>>()
    };
    let workshop = of(Place::Workshop, &ahead.closed_days);
    workshop.into_iter().chain(ahead.elsewhere.iter().flat_map(|(place, days)| of(*place, days))).collect()
}
