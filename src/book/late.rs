//! What stands on the page of today besides: orders under way that run late, and bands of which nobody has asked what
//! fitted. The first load does without it: the whole forecast is in it.

use chrono::{Days, NaiveDate};

use super::couple::Couple;
use super::field::Stage;
use super::id::RecordId;
use super::practice::Practice;
use super::progress::{AtRisk, at_risk, open, plan};
use super::schedule::OwnOrders;
use super::today::keep;
use crate::trade::dates::milestones::Milestone;
use crate::trade::wearer::Wearer;

/// So many days a band is worn before it is asked what fitted: four weeks, common practice.
const WORN_DAYS: u64 = 28;

/// The orders under way: how many there are, how many of them run late, and of these the most pressing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LateOrders {
    pub orders: usize,
    pub late: usize,
    /// The one that should be in hand first comes first. Cut at [`super::today::SHOWN`].
    pub rows: Vec<(RecordId, AtRisk)>,
}

/// How the orders under way stand. One that should be in hand by now is on the page of today as that, and not here.
pub fn late<'a>(
    couples: impl Iterator<Item = Couple<'a>> + Clone,
    practice: Practice<'_>,
    today: NaiveDate,
) -> LateOrders {
    let own = OwnOrders::of(couples.clone(), practice);
    let mut found = LateOrders::default();
    for couple in couples.filter(|couple| couple.stage() == Stage::Ordered && couple.put_away().is_none()) {
        found.orders += 1;
        let Some(risk) = at_risk(couple, practice, &own, today) else { continue };
        let due = plan(couple, practice, &own, today).map(|plan| open(couple, &plan)).unwrap_or_default();
        if due.iter().any(|due| due.what == Milestone::Collect && due.by < today) {
            continue;
        }
        found.late += 1;
        keep(&mut found.rows, (couple.0.id, risk), |(_, risk)| risk.in_hand.unwrap_or(NaiveDate::MAX));
    }
    found
}

/// The fingers of which it can be asked by now what fitted, since when, and how many there are: the bands were collected
/// some weeks ago, and nobody has said. Cut at [`super::today::SHOWN`].
pub fn what_fitted<'a>(
    couples: impl Iterator<Item = Couple<'a>>,
    today: NaiveDate,
) -> (Vec<(RecordId, Wearer, NaiveDate)>, usize) {
    let (mut rows, mut count) = (Vec::new(), 0);
    for couple in couples.filter(|it| it.stage() == Stage::Collected && it.put_away().is_none()) {
        let Some(since) = couple.reached(Stage::Collected).and_then(|day| day.checked_add_days(Days::new(WORN_DAYS)))
        else {
            continue;
        };
        for wearer in Wearer::BOTH {
            if since <= today && couple.order_size(wearer).is_some() && couple.fitted(wearer).is_none() {
                count += 1;
                keep(&mut rows, (couple.0.id, wearer, since), |(_, _, since)| *since);
            }
        }
    }
    (rows, count)
}
