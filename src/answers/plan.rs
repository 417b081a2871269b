//! An order as it goes and the days to keep, of one couple, beside everybody's orders.

use chrono::{NaiveDate, NaiveTime};

use crate::book::couple::Couple;
use crate::book::practice::Practice;
use crate::book::progress::{self, Ahead, UnderWay};
use crate::book::schedule::OwnOrders;
use crate::trade::dates::countdown::is_past_cut_off;

pub use crate::book::progress::closure_names;

/// How an order that was placed stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Stands {
    pub under_way: Option<UnderWay>,
    /// It runs late, or less likely in time than was planned for.
    pub is_late: bool,
}

pub fn stands(couple: Couple<'_>, practice: Practice<'_>, own: &OwnOrders, today: NaiveDate) -> Stands {
    Stands {
        under_way: progress::under_way(couple, practice, own, today),
        is_late: progress::at_risk(couple, practice, own, today).is_some(),
    }
}

/// The days from today to the wedding; none where there is nothing to plan back from. After the cut-off of the day an
/// order counts as the next day's.
pub fn ahead(
    couple: Couple<'_>,
    practice: Practice<'_>,
    own: &OwnOrders,
    today: NaiveDate,
    now: NaiveTime,
) -> Option<Ahead> {
    let is_past = practice.cut_off().is_some_and(|cut_off| is_past_cut_off(now, cut_off));
    progress::ahead(couple, practice, own, today, is_past)
}
