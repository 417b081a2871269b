//! How long a step lasts as weights, one a whole number of working days, and chances.
//!
//! Weights are whole numbers, kept as floating point: sums and products of them are exact up to 2^53. Where steps and
//! seasons come to more they are counted as shares of one, off by a few parts in 10^15.

use super::spread::{Spread, WorkingDays};
use crate::trade::arrange::in_order;
use crate::trade::measure::Percent;

/// How long a step lasts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Lasts {
    /// By a spread: least, usual, most.
    Spread(Spread),
    /// As the jeweller's own finished orders did, one figure an order, the shortest first; never none.
    Orders(Vec<WorkingDays>),
}

/// From so many finished orders on they say more than a guess at three figures: common practice, not published.
pub const ENOUGH_ORDERS: usize = 10;

/// The weights of a step's lengths, from its least on.
#[derive(Clone, Debug, PartialEq)]
pub struct Odds {
    pub least: WorkingDays,
    pub weights: Vec<f64>,
}

/// A chance: so many of so many.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chance {
    part: f64,
    of: f64,
}

impl Lasts {
    /// As these orders did; none if they are too few to say anything.
    pub fn of_orders(days: Vec<WorkingDays>) -> Option<Lasts> {
        (days.len() >= ENOUGH_ORDERS).then(|| Lasts::Orders(in_order(days, |days| *days)))
    }

    pub fn least(&self) -> WorkingDays {
        match self {
            Lasts::Spread(spread) => spread.least(),
            Lasts::Orders(days) => days.first().copied().unwrap_or_default(),
        }
    }

    /// What is usual; of finished orders the middle one, the longer of two.
    pub fn usual(&self) -> WorkingDays {
        match self {
            Lasts::Spread(spread) => spread.usual(),
            Lasts::Orders(days) => days.get(days.len() / 2).copied().unwrap_or_default(),
        }
    }

    pub fn most(&self) -> WorkingDays {
        match self {
            Lasts::Spread(spread) => spread.most(),
            Lasts::Orders(days) => days.last().copied().unwrap_or_default(),
        }
    }

    /// The same when everything takes longer by a share; days are rounded up.
    pub fn longer(&self, by: Percent) -> Lasts {
        let longer = |days: WorkingDays| {
            let days = (u32::from(days.0) * (100 + u32::from(by.0))).div_ceil(100);
            WorkingDays(u16::try_from(days).unwrap_or(u16::MAX).min(Spread::LONGEST.0))
        };
        match self {
            Lasts::Spread(spread) => {
                let (least, usual, most) = (longer(spread.least()), longer(spread.usual()), longer(spread.most()));
                Lasts::Spread(Spread::new(least, usual, most).unwrap_or(*spread))
            }
            Lasts::Orders(days) => Lasts::Orders(days.iter().map(|days| longer(*days)).collect()),
        }
    }

    /// The weight of each length.
    ///
    /// To a jeweller: the usual length is the likeliest, and each day further from it is a little less so.
    ///
    /// Formula: triangular on whole days: weights rise in equal steps from least to usual and fall to most, reaching
    /// nought one day outside: with r = usual - least + 1 and f = most - usual + 1, day i of the rise weighs i f and
    /// day j of the fall j r. Finished orders weigh one each. Units: none. Range: any spread. Source: the rule is the
    /// house's own; the tests hold it against numpy.
    ///
    /// ```
    /// use bandwright::trade::dates::{lead_times::MAKING, odds::Lasts};
    /// // 15 to 20 days, usually 17: thirds up to the usual, quarters down from it.
    /// assert_eq!(Lasts::Spread(MAKING.days).odds().weights, [4.0, 8.0, 12.0, 9.0, 6.0, 3.0]);
    /// ```
    pub fn odds(&self) -> Odds {
        let least = self.least();
        let mut weights = vec![0.0; usize::from(self.most().0.saturating_sub(least.0)) + 1];
        match self {
            Lasts::Spread(spread) => {
                let rise = f64::from(spread.usual().0 - least.0 + 1);
                let fall = f64::from(spread.most().0 - spread.usual().0 + 1);
                for (weight, n) in weights.iter_mut().zip(1u16..) {
                    let n = f64::from(n);
                    *weight = if n <= rise { n * fall } else { (rise + fall - n) * rise };
                }
            }
            Lasts::Orders(days) => {
                for days in days {
                    if let Some(weight) = weights.get_mut(usize::from(days.0.saturating_sub(least.0))) {
                        *weight += 1.0;
                    }
                }
            }
        }
        Odds { least, weights }
    }
}

impl Chance {
    pub const CERTAIN: Chance = Chance { part: 1.0, of: 1.0 };

    pub(super) fn new(part: f64, of: f64) -> Chance {
        Chance { part, of }
    }

    /// One of two, the first with a share of a hundred.
    pub(super) fn mixed(self, other: Chance, share: Percent) -> Chance {
        let share = f64::from(share.0.min(100));
        let part = self.part * other.of * share + other.part * self.of * (100.0 - share);
        Chance { part, of: self.of * other.of * 100.0 }
    }

    /// Whether it is at least so likely. Off by no more than the rounding of the weights.
    pub fn is_at_least(self, share: Percent) -> bool {
        self.part * 100.0 >= f64::from(share.0) * self.of * (1.0 - 1e-12)
    }

    /// In whole hundredths, rounded down: no chance is made better than it is.
    pub fn percent(self) -> Percent {
        Percent((0..=100).rev().find(|share| self.is_at_least(Percent(*share))).unwrap_or(0))
    }

    /// As a fraction of one.
    pub fn share(self) -> f64 {
        if self.of > 0.0 { self.part / self.of } else { 0.0 }
    }

    pub fn is_none(self) -> bool {
        self.part <= 0.0
    }
}
