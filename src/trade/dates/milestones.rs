//! What has to be done by when, planned back from the wedding.

use super::closed::{Calendar, CalendarError};
use super::forecast::{Leg, Way};
use super::odds::Lasts;
use super::spread::WorkingDays;
use chrono::NaiveDate;

/// What the couple or the jeweller has to do by a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Milestone {
    /// The couple decides what is made.
    Decide,
    Order,
    /// The words to engrave are fixed.
    EngravingText,
    /// In hand at the jeweller's or the couple's.
    Collect,
    TryOn,
    /// The last day on which a change of size can be begun, by its usual times. By its longest, ten working days and three
    /// of delivery, it would lie before the day in hand in every plan with a fortnight between: a date nobody could keep.
    LastResize,
}

/// A milestone and its day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Due {
    pub what: Milestone,
    pub by: NaiveDate,
}

/// From decision to order: time for a deposit and for the papers. Common practice, not published.
pub const DECIDE_BEFORE: WorkingDays = WorkingDays(5);

impl Milestone {
    pub const ALL: [Milestone; 6] = [
        Milestone::Decide,
        Milestone::Order,
        Milestone::EngravingText,
        Milestone::Collect,
        Milestone::TryOn,
        Milestone::LastResize,
    ];
}

/// What the milestones are planned from.
pub struct Plan<'a> {
    pub wedding: NaiveDate,
    pub in_hand: NaiveDate,
    pub order_by: NaiveDate,
    /// The day of the try-on when it is collected on its last day.
    pub try_on: NaiveDate,
    pub way: &'a Way,
    /// The place of engraving among the steps, if the band is engraved.
    pub engraving: Option<usize>,
    /// The steps of a change of size.
    pub resize: &'a [Leg],
}

/// Every milestone of a plan, in the order of [`Milestone`]. Engraving is one only where the band is engraved.
///
/// To a jeweller: what to ask the couple for, and when at the latest.
///
/// Formula: the engraving text is counted back from the day in hand through the longest times of the steps from
/// engraving on, those of a busy season where there may be one, and is fixed on the day of order at the earliest; the last resize from the day before the wedding
/// through the usual times of resizing and delivery, because its longest times leave no day between in hand and the
/// wedding that anybody could keep. The try-on is never later than that, where it is in hand by then.
/// Units: civil dates. Range: thirty years. Source: the rule is the house's own.
pub fn milestones(plan: &Plan<'_>) -> Result<Vec<Due>, CalendarError> {
    let places = &plan.way.places;
    let back = |by: NaiveDate, legs: &[Leg], pick: &dyn Fn(&Lasts) -> WorkingDays| {
        legs.iter().rev().try_fold(by, |day, leg| places.of(leg.place).back(day, pick(&leg.lasts)))
    };
    let workshop: &Calendar = &places.workshop;
    let last_resize = back(plan.wedding.pred_opt().unwrap_or(plan.wedding), plan.resize, &Lasts::usual)?;
    let mut all = vec![
        Due { what: Milestone::Decide, by: workshop.back(plan.order_by, DECIDE_BEFORE)? },
        Due { what: Milestone::Order, by: plan.order_by },
    ];
    if let Some(legs) = plan.engraving.and_then(|at| plan.way.legs.get(at..)) {
        let begun = back(plan.in_hand, legs, &|lasts| plan.way.longest_of(lasts))?;
        all.push(Due { what: Milestone::EngravingText, by: begun.max(plan.order_by) });
    }
    all.extend([
        Due { what: Milestone::Collect, by: plan.in_hand },
        Due { what: Milestone::TryOn, by: plan.try_on.min(last_resize).max(plan.in_hand) },
        Due { what: Milestone::LastResize, by: last_resize },
    ]);
    Ok(all)
}
