//! The busy season: with its chance, work in its months takes longer, all steps of an order together.
//!
//! In a usual season a step takes one of the lengths of [`Lasts`]; in one that is busy all year round, one of the
//! lengths of [`Lasts::longer`]. Where only some months are busy a step may begin in one and end outside it, so both
//! lengths are kept in pairs, and every day that is worked does its part of the step: one of the busy length in a busy
//! month, one of the usual length in any other. So nothing jumps at the end of a month, and an order that is placed
//! later is never ready sooner.

use super::odds::Lasts;
use crate::trade::measure::Percent;
use chrono::{Datelike, NaiveDate};

/// A busy season: the chance that there is one, by how much work takes longer in it, and in which months.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Busy {
    pub chance: Percent,
    pub longer: Percent,
    pub months: MonthSet,
}

/// Some months of the year.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct MonthSet(u16);

/// One way in which a step may go.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Pace {
    /// Working days where nothing is busy.
    pub usual: u32,
    /// Working days where everything is.
    pub busy: u32,
    pub weight: f64,
}

impl Busy {
    pub const NEVER: Busy = Busy { chance: Percent(0), longer: Percent(0), months: MonthSet::ALL };
}

impl MonthSet {
    pub const ALL: MonthSet = MonthSet(0xFFF);
    pub const NONE: MonthSet = MonthSet(0);

    /// These months, 1 to 12; none if a number is no month.
    pub fn of(months: impl IntoIterator<Item = u32>) -> Option<MonthSet> {
        months.into_iter().try_fold(MonthSet::NONE, |set, month| {
            let is_month = (1..=12).contains(&month);
            is_month.then(|| MonthSet(set.0 | 1 << (month - 1)))
        })
    }

    /// Whether a month, 1 to 12, is among them.
    pub fn has(self, month: u32) -> bool {
        (1..=12).contains(&month) && self.0 >> (month - 1) & 1 == 1
    }

    pub fn has_day(self, day: NaiveDate) -> bool {
        self.has(day.month())
    }

    /// The months in the order of the year, 1 to 12.
    pub fn months(self) -> impl Iterator<Item = u32> {
        (1..=12).filter(move |month| self.has(*month))
    }

    pub fn is_empty(self) -> bool {
        self == MonthSet::NONE
    }
}

/// How a step may go in a usual season.
pub(super) fn usual(lasts: &Lasts) -> Vec<Pace> {
    let odds = lasts.odds();
    let lengths = (u32::from(odds.least.0)..).zip(odds.weights);
    lengths.map(|(days, weight)| Pace { usual: days, busy: days, weight }).collect()
}

/// How a step may go in a busy season.
///
/// To a jeweller: a step that would have been among the quickest is among the quickest in a busy month too.
///
/// Formula: usual and busy lengths are paired by rank: laid side by side, each from its shortest to its longest with
/// its share of the whole, and cut wherever one of them changes. Weights stay whole numbers: each side's are multiplied
/// with the other side's total. With every month busy the busy lengths alone are left, as [`Lasts::longer`] has them.
/// Units: working days. Range: any spread. Source: the rule is the house's own; enumeration in whole fractions is in
/// the tests.
pub(super) fn busy(lasts: &Lasts, season: Busy) -> Vec<Pace> {
    let longer = usual(&lasts.longer(season.longer));
    let usual = usual(lasts);
    if season.months == MonthSet::ALL {
        return longer;
    }
    if season.months.is_empty() {
        return usual;
    }
    let (of_usual, of_longer) = (total(&usual), total(&longer));
    let mut longer = longer.into_iter().map(|pace| (pace.busy, pace.weight * of_usual));
    let mut other = longer.next();
    let mut pairs = Vec::new();
    for Pace { usual, weight, .. } in usual {
        let mut left = weight * of_longer;
        while left > 0.0
            && let Some((busy, right)) = &mut other
        {
            let weight = left.min(*right);
            if weight > 0.0 {
                pairs.push(Pace { usual, busy: *busy, weight });
            }
            (left, *right) = (left - weight, *right - weight);
            if *right <= 0.0 {
                other = longer.next();
            }
        }
    }
    pairs
}

pub(super) fn total(paces: &[Pace]) -> f64 {
    paces.iter().map(|pace| pace.weight).sum()
}

/// Brings the weights to shares of one, for steps so many that whole numbers would grow beyond what can be written.
pub(super) fn to_one(paces: &mut [Pace]) {
    let whole = total(paces);
    paces.iter_mut().for_each(|pace| pace.weight /= whole);
}
