//! What today asks for: who is next, what is late, which order-by dates are nearest.

use chrono::{Days, NaiveDate};

use super::couple::{Appointment, Couple};
use super::field::Stage;
use super::id::RecordId;
use super::practice::Practice;
use super::progress::{open, plan};
use super::remedy::{Move, next_move};
use super::schedule::OwnOrders;
use crate::trade::arrange::in_order;
use crate::trade::dates::countdown::Plan;
use crate::trade::dates::milestones::{Due, Milestone};
use crate::trade::wearer::Wearer;

/// Appointments this many days ahead are shown.
const DAYS_AHEAD: u64 = 14;

/// The page of today.
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
    /// Fingers that are to be measured again, the earliest first.
    pub measure_again: Vec<(RecordId, Wearer, NaiveDate)>,
    /// Rings that go to the bench or are due back from it within the next days, or should have been: the earliest first.
    pub rings: Vec<(RecordId, Wearer, NaiveDate, Move)>,
    /// How many of these should have been.
    pub late_rings: usize,
    /// Other milestones that have passed without being reached, the longest overdue first.
    pub overdue: Vec<(RecordId, Due)>,
}

impl Today {
    /// How much is late: orders, milestones, rings, and appointments that nobody has settled.
    pub fn late(&self) -> usize {
        self.late_orders.len() + self.overdue.len() + self.unsettled.len() + self.late_rings
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
                page.unsettled.push((id, appointment));
            } else if appointment.when.day <= until {
                page.appointments.push((id, appointment));
            }
        }
        for wearer in Wearer::BOTH {
            page.measure_again.extend(couple.measure_again(wearer).map(|day| (id, wearer, day)));
            let moves = next_move(couple, wearer).filter(|(_, day)| *day <= until);
            if let Some((what, day)) = moves {
                page.late_rings += usize::from(day < today);
                page.rings.push((id, wearer, day, what));
            }
        }
        if let Some(plan) = plan(couple, practice, &own, today) {
            due(&mut page, couple, &plan, today);
        }
    }
    Today {
        appointments: in_order(page.appointments, |(_, appointment)| appointment.when),
        unsettled: in_order(page.unsettled, |(_, appointment)| appointment.when),
        late_orders: in_order(page.late_orders, |(_, day)| *day),
        order_by: in_order(page.order_by, |(_, day)| *day),
        measure_again: in_order(page.measure_again, |(_, _, day)| *day),
        late_rings: page.late_rings,
        rings: in_order(page.rings, |(_, _, day, _)| *day),
        overdue: in_order(page.overdue, |(_, due)| due.by),
    }
}

/// What of a plan is due or overdue: the order while it is not placed, and each milestone whose turn it is.
fn due(page: &mut Today, couple: Couple<'_>, plan: &Plan, today: NaiveDate) {
    let id = couple.0.id;
    let is_ordered = matches!(couple.stage(), Stage::Ordered | Stage::Collected);
    if !is_ordered {
        let list = if plan.order_by < today { &mut page.late_orders } else { &mut page.order_by };
        list.push((id, plan.order_by));
    }
    let late = open(couple, plan).into_iter().filter(|due| match due.what {
        Milestone::Order => false,
        // When the order is late, the decision is as well, and that need not be said twice.
        Milestone::Decide => due.by < today && plan.order_by >= today,
        _ => due.by < today && is_ordered,
    });
    page.overdue.extend(late.map(|due| (id, due)));
}
