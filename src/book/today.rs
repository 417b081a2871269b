//! What today asks for: who is next, what is late, which order-by dates are nearest.

use chrono::{Days, NaiveDate};

use super::couple::{Appointment, Couple};
use super::field::Stage;
use super::id::RecordId;
use super::practice::Practice;
use super::progress::{open, plan, plan_for};
use super::remedy::{Move, next_move};
use super::schedule::OwnOrders;
use crate::trade::dates::countdown::Plan;
use crate::trade::dates::milestones::{Due, Milestone};
use crate::trade::dates::wedding::Wedding;
use crate::trade::wearer::Wearer;

/// Appointments this many days ahead are shown.
const DAYS_AHEAD: u64 = 14;

/// So many rows of each list are kept, the nearest; how many there were is counted beside them. A book of 20,000
/// couples has thousands, and nobody reads them.
pub const SHOWN: usize = 40;

/// The page of today. Each list is cut at [`SHOWN`].
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Today {
    /// Appointments of today and the next days without an outcome, the nearest first.
    pub appointments: Vec<(RecordId, Appointment)>,
    /// Couples whose order-by date has passed without an order, the longest overdue first.
    pub late_orders: Vec<(RecordId, NaiveDate)>,
    /// Appointments of earlier days of which nobody has said what became of them, the oldest first.
    pub unsettled: Vec<(RecordId, Appointment)>,
    /// Order-by dates to come, the nearest first.
    pub order_by: Vec<(RecordId, NaiveDate)>,
    /// Weddings known only by their month or year whose order-by has passed if they are on its first day: the last day
    /// to order if they are on its last, the nearest first.
    pub ask_the_day: Vec<(RecordId, NaiveDate)>,
    /// Fingers that are to be measured again, the earliest first.
    pub measure_again: Vec<(RecordId, Wearer, NaiveDate)>,
    /// Rings that go to the bench or are due back from it within the next days, or should have been: the earliest first.
    pub rings: Vec<(RecordId, Wearer, NaiveDate, Move)>,
    /// Other milestones that have passed without being reached, the longest overdue first.
    pub overdue: Vec<(RecordId, Due)>,
    /// How many there are of what is cut.
    pub counts: Counts,
}

/// How many there are, shown or not.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Counts {
    pub appointments: usize,
    /// Orders, milestones, and appointments that nobody has settled.
    pub late: usize,
    pub late_rings: usize,
    pub measure_again: usize,
    pub rings: usize,
}

impl Today {
    /// How much is late: orders, milestones, rings, and appointments that nobody has settled.
    pub fn late(&self) -> usize {
        self.counts.late + self.counts.late_rings
    }
}

/// The page of today for these couples. Those put away, taken back or lost are not on it.
pub fn today<'a>(couples: impl Iterator<Item = Couple<'a>> + Clone, practice: Practice<'_>, today: NaiveDate) -> Today {
    let own = OwnOrders::of(couples.clone(), practice);
    let mut page = Today::default();
    let until = today.checked_add_days(Days::new(DAYS_AHEAD)).unwrap_or(NaiveDate::MAX);
    let shown =
        |couple: &Couple<'_>| !couple.is_blank() && couple.put_away().is_none() && couple.stage() != Stage::Lost;
    for couple in couples.filter(shown) {
        let id = couple.0.id;
        for appointment in couple.appointments().into_iter().filter(|a| a.outcome.is_none()) {
            if appointment.when.day < today {
                page.counts.late += 1;
                keep(&mut page.unsettled, (id, appointment), |(_, appointment)| appointment.when);
            } else if appointment.when.day <= until {
                page.counts.appointments += 1;
                keep(&mut page.appointments, (id, appointment), |(_, appointment)| appointment.when);
            }
        }
        for wearer in Wearer::BOTH {
            if let Some(day) = couple.measure_again(wearer) {
                page.counts.measure_again += 1;
                keep(&mut page.measure_again, (id, wearer, day), |(_, _, day)| *day);
            }
            let moves = next_move(couple, wearer).filter(|(_, day)| *day <= until);
            if let Some((what, day)) = moves {
                page.counts.late_rings += usize::from(day < today);
                page.counts.rings += 1;
                keep(&mut page.rings, (id, wearer, day, what), |(_, _, day, _)| *day);
            }
        }
        let plan = plan(couple, practice, &own, today);
        let is_late = |plan: &Plan| plan.order_by < today && !is_ordered(couple);
        let last = plan.as_ref().filter(|plan| is_late(plan)).and_then(|_| at_last(couple, practice, &own, today));
        if let Some(plan) = plan {
            due(&mut page, couple, &plan, last, today);
        }
    }
    page
}

/// Puts a row into its place, after those of the same key, and lets go of what is cut.
pub(super) fn keep<T, K: Ord>(rows: &mut Vec<T>, row: T, key: impl Fn(&T) -> K) {
    let place = rows.partition_point(|other| key(other) <= key(&row));
    if place < SHOWN {
        rows.truncate(SHOWN - 1);
        rows.insert(place, row);
    }
}

/// The last day to order for a wedding that is known only by its month or year, if it is on the last day of that; none
/// where the day is known, or where it is too late for that one too.
fn at_last(couple: Couple<'_>, practice: Practice<'_>, own: &OwnOrders, today: NaiveDate) -> Option<NaiveDate> {
    let wedding = couple.wedding().filter(|wedding| !matches!(wedding, Wedding::Day(_)))?;
    let at_last = Wedding::Day(wedding.latest()?);
    let order_by = plan_for(couple, practice, own, at_last, today)?.order_by;
    (order_by >= today).then_some(order_by)
}

fn is_ordered(couple: Couple<'_>) -> bool {
    matches!(couple.stage(), Stage::Ordered | Stage::Collected)
}

/// What of a plan is due or overdue: the order while it is not placed, and each milestone whose turn it is.
fn due(page: &mut Today, couple: Couple<'_>, plan: &Plan, last: Option<NaiveDate>, today: NaiveDate) {
    let id = couple.0.id;
    let is_ordered = is_ordered(couple);
    if !is_ordered {
        let is_late = plan.order_by < today && last.is_none();
        page.counts.late += usize::from(is_late);
        let list = match last {
            Some(_) => &mut page.ask_the_day,
            None if is_late => &mut page.late_orders,
            None => &mut page.order_by,
        };
        keep(list, (id, last.unwrap_or(plan.order_by)), |(_, day)| *day);
    }
    let late = open(couple, plan).into_iter().filter(|due| match due.what {
        Milestone::Order => false,
        // When the order is late, the decision is as well, and that need not be said twice.
        Milestone::Decide => due.by < today && plan.order_by >= today,
        _ => due.by < today && is_ordered,
    });
    for due in late {
        page.counts.late += 1;
        keep(&mut page.overdue, (id, due), |(_, due)| due.by);
    }
}
