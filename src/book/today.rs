//! What today asks for: who is next, what is late, which order-by dates are nearest.

use chrono::{Days, NaiveDate};

use super::couple::{Appointment, Couple};
use super::field::Stage;
use super::id::RecordId;
use super::practice::Practice;
use crate::trade::arrange::in_order;
use crate::trade::dates::countdown::{self, Countdown};
use crate::trade::dates::lead_times::Step as Work;
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
}

/// The page of today for these couples. Those put away, taken back or lost are not on it.
pub fn today<'a>(couples: impl Iterator<Item = Couple<'a>>, practice: Practice<'_>, today: NaiveDate) -> Today {
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
        }
        if let Some(order_by) = order_by(couple, practice, today) {
            if order_by < today {
                page.late_orders.push((id, order_by));
            } else {
                page.order_by.push((id, order_by));
            }
        }
    }
    Today {
        appointments: in_order(page.appointments, |(_, appointment)| appointment.when),
        unsettled: in_order(page.unsettled, |(_, appointment)| appointment.when),
        late_orders: in_order(page.late_orders, |(_, day)| *day),
        order_by: in_order(page.order_by, |(_, day)| *day),
        measure_again: in_order(page.measure_again, |(_, _, day)| *day),
    }
}

/// The last day to order for a couple that has not ordered yet: by what was settled with them, otherwise by the
/// practice's usual times; always on the workshop's calendar as it is now. None without a wedding date.
pub fn order_by(couple: Couple<'_>, practice: Practice<'_>, today: NaiveDate) -> Option<NaiveDate> {
    match couple.stage() {
        Stage::Enquiry | Stage::Booked => plan(couple, practice, today).map(|countdown| countdown.order_by),
        Stage::Ordered | Stage::Collected | Stage::Lost => None,
    }
}

/// The countdown for a couple as Today counts it.
pub fn plan(couple: Couple<'_>, practice: Practice<'_>, today: NaiveDate) -> Option<Countdown> {
    let settled = couple.dates();
    let region = settled.map_or(practice.region(), |dates| dates.region);
    countdown::countdown(&countdown::Inputs {
        today,
        past_cut_off: false,
        wedding: couple.wedding()?,
        calendar: practice.calendar(region).ok()?,
        making: settled.map_or(practice.lead_time(Work::Making), |dates| dates.making),
        extras: settled.map_or(Vec::new(), |dates| dates.extras.iter().map(|extra| extra.spread).collect()),
        in_hand: settled.map_or(practice.in_hand(), |dates| dates.in_hand),
    })
    .ok()
}
