//! The distribution of dates, pushed through the steps in order: each day's weight moves to the days on which the next
//! step may be finished, on that step's own calendar. Every way is counted, none is sampled.
//!
//! [`finish`] goes forward, from one day of order to all days of finishing; [`chances`] goes back, from one day by
//! which it has to be finished to the chance of every day of order. Both walk each day of a step once for each length
//! that the step may have: twice the days or twice the steps cost twice the time.

use super::closed::{Calendar, CalendarError, REACH};
use super::odds::{Chance, Lasts, Odds};
use super::places::{Place, Places};
use super::spread::WorkingDays;
use crate::trade::measure::Percent;
use chrono::{Days, NaiveDate};

/// A step: where it is done, and how long it lasts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Leg {
    pub place: Place,
    pub lasts: Lasts,
}

/// A busy season: with its chance every step lasts longer, all of them together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Busy {
    pub chance: Percent,
    pub longer: Percent,
}

/// What lies ahead: the steps in their order, the calendars they run on, and whether it may be a busy season.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Way {
    pub places: Places,
    pub legs: Vec<Leg>,
    pub busy: Busy,
}

/// When it may be finished: the weight of each day.
#[derive(Clone, Debug, PartialEq)]
pub struct Finish {
    first: NaiveDate,
    weights: Vec<f64>,
}

/// The chance of being finished by a certain day, for every day of order.
#[derive(Clone, Debug, PartialEq)]
pub struct Chances {
    first: NaiveDate,
    by: NaiveDate,
    weights: Vec<f64>,
    total: f64,
}

impl Busy {
    pub const NEVER: Busy = Busy { chance: Percent(0), longer: Percent(0) };
}

impl Way {
    /// The steps as they last in a season, with the season's share of a hundred; a season without a chance is left out.
    fn seasons(&self) -> Vec<(Percent, Vec<Odds>)> {
        let share = Percent(self.busy.chance.0.min(100));
        let season = |longer| self.legs.iter().map(|leg| leg.lasts.longer(longer).odds()).collect();
        let seasons = [(Percent(100 - share.0), Percent(0)), (share, self.busy.longer)].into_iter();
        seasons.filter(|(share, _)| share.0 > 0).map(|(share, longer)| (share, season(longer))).collect()
    }

    /// The longest that each step may last in any season.
    fn longest(&self) -> impl DoubleEndedIterator<Item = (&Calendar, WorkingDays)> {
        self.legs.iter().map(|leg| {
            let most =
                if self.busy.chance.0 > 0 { leg.lasts.longer(self.busy.longer).most() } else { leg.lasts.most() };
            (self.places.of(leg.place), most)
        })
    }

    /// The last day of order that is in time whatever happens; always a working day of where it begins.
    pub fn surely_by(&self, by: NaiveDate) -> Result<NaiveDate, CalendarError> {
        let order = self.longest().rev().try_fold(by, |day, (calendar, most)| calendar.back(day, most))?;
        self.places.workshop.back(order, WorkingDays(0))
    }

    /// When it is finished at the latest.
    pub fn surely_from(&self, from: NaiveDate) -> Result<NaiveDate, CalendarError> {
        self.longest().try_fold(from, |day, (calendar, most)| calendar.forward(day, most))
    }

    /// When it is finished if each step lasts as long as the figure that is picked.
    pub fn with(&self, from: NaiveDate, pick: fn(&Lasts) -> WorkingDays) -> Result<NaiveDate, CalendarError> {
        self.legs.iter().try_fold(from, |day, leg| self.places.of(leg.place).forward(day, pick(&leg.lasts)))
    }
}

/// The days on which it may be finished when it is begun on a day; `not_before` is the earliest day on which the step
/// that is under way can still be finished, because it was not until now.
///
/// To a jeweller: how likely each day is, with every closed day of every place counted.
///
/// Formula: the weight of a day moves to the day that is k working days later on the step's calendar, times the weight
/// of k; then the next step. Seasons are added up by their shares. What would have been finished before `not_before`
/// is left out; if that is all, it is finished on that day. Units: weights, civil dates. Range: thirty years. Source:
/// the rule is the house's own; numpy's `convolve` and Python's enumeration are in the tests.
pub fn finish(way: &Way, from: NaiveDate, not_before: NaiveDate) -> Result<Finish, CalendarError> {
    // From its own beginning to its own end nothing falls outside.
    let last = way.surely_from(from)?.max(way.surely_from(not_before)?);
    let spans = Spans::new(way, from, last);
    let seasons = way.seasons();
    let late = usize::try_from((not_before - from).num_days()).unwrap_or(0);
    let mut under_way: Vec<Vec<f64>> = Vec::new();
    for (_, odds) in &seasons {
        let mut now = vec![0.0; spans.days];
        now[0] = 1.0;
        if let Some((leg, odds)) = way.legs.iter().zip(odds).next() {
            now = spans.of(leg.place).push(&now, odds);
            now.iter_mut().take(late).for_each(|weight| *weight = 0.0);
        }
        under_way.push(now);
    }
    if under_way.iter().flatten().all(|weight| *weight == 0.0) {
        for (now, (_, odds)) in under_way.iter_mut().zip(&seasons) {
            now[late.min(spans.days - 1)] = odds.first().map_or(1.0, Odds::total);
        }
    }
    let mut all = Finish { first: from, weights: vec![0.0; spans.days] };
    for ((mut now, (_, odds)), factor) in under_way.into_iter().zip(&seasons).zip(factors(&seasons)) {
        for (leg, odds) in way.legs.iter().zip(odds).skip(1) {
            now = spans.of(leg.place).push(&now, odds);
        }
        for (sum, weight) in all.weights.iter_mut().zip(&now) {
            *sum += weight * factor;
        }
    }
    Ok(all)
}

/// The chance of being finished by a day, for every day of order on which that is not plain.
///
/// To a jeweller: what waiting another week costs.
///
/// Formula: backwards through the steps: the chance of a day is the weighted mean of the chances of the days on which
/// the step begun then may be finished. It is what [`finish`] comes to, for all days in one walk. Units, range and
/// source are those of [`finish`].
pub fn chances(way: &Way, by: NaiveDate) -> Result<Chances, CalendarError> {
    let first = way.surely_by(by)?;
    let spans = Spans::new(way, first, by);
    let seasons = way.seasons();
    let mut all = Chances { first, by, weights: vec![0.0; spans.days], total: 0.0 };
    for ((_, odds), factor) in seasons.iter().zip(factors(&seasons)) {
        let mut now = vec![1.0; spans.days];
        for (leg, odds) in way.legs.iter().zip(odds).rev() {
            now = spans.of(leg.place).pull(&now, odds);
        }
        all.total += factor * odds.iter().map(Odds::total).product::<f64>();
        for (sum, weight) in all.weights.iter_mut().zip(&now) {
            *sum += weight * factor;
        }
    }
    Ok(all)
}

impl Finish {
    /// The first day by which it is finished with at least this chance.
    pub fn by(&self, chance: Percent) -> NaiveDate {
        let total: f64 = self.weights.iter().sum();
        let mut sum = 0.0;
        let reached = self.weights.iter().position(|weight| {
            sum += weight;
            Chance::new(sum, total).is_at_least(chance)
        });
        self.day(reached.unwrap_or(self.weights.len().saturating_sub(1)))
    }

    /// The chance of being finished on a day or before it.
    pub fn chance_by(&self, day: NaiveDate) -> Chance {
        let until = usize::try_from((day - self.first).num_days() + 1).unwrap_or(0);
        Chance::new(self.weights.iter().take(until).sum(), self.weights.iter().sum())
    }

    /// The days on which it may be finished, each with its share of the whole.
    pub fn days(&self) -> impl Iterator<Item = (NaiveDate, f64)> {
        let total: f64 = self.weights.iter().sum();
        let shares = self.weights.iter().enumerate().filter(|(_, weight)| **weight > 0.0);
        shares.map(move |(at, weight)| (self.day(at), weight / total))
    }

    /// The chance that all goes well afterwards, where each day of finishing has a chance of its own.
    pub fn then(&self, well: impl Fn(NaiveDate) -> f64) -> Chance {
        let part = self.weights.iter().enumerate().filter(|(_, weight)| **weight > 0.0);
        Chance::new(part.map(|(at, weight)| weight * well(self.day(at))).sum(), self.weights.iter().sum())
    }

    fn day(&self, at: usize) -> NaiveDate {
        self.first.checked_add_days(Days::new(at as u64)).unwrap_or(self.first)
    }
}

impl Chances {
    /// The chance of being finished in time when it is begun on a day.
    pub fn from(&self, day: NaiveDate) -> Chance {
        match usize::try_from((day - self.first).num_days()) {
            Err(_) => Chance::CERTAIN,
            Ok(at) => Chance::new(self.weights.get(at).copied().unwrap_or(0.0), self.total),
        }
    }

    /// The last day on which it can be begun with at least this chance; one of the workshop's working days.
    pub fn last(&self, workshop: &Calendar, chance: Percent) -> Result<NaiveDate, CalendarError> {
        let mut last = self.first;
        while let Ok(next) = workshop.after(last) {
            if next > self.by || !self.from(next).is_at_least(chance) {
                break;
            }
            last = next;
        }
        Ok(last)
    }
}

/// What the weights of each season are multiplied with, so that they add up to the shares of the seasons.
fn factors(seasons: &[(Percent, Vec<Odds>)]) -> Vec<f64> {
    let total = |odds: &[Odds]| odds.iter().map(Odds::total).product::<f64>();
    let others = |at: usize| {
        let others = seasons.iter().enumerate().filter(move |(other, _)| *other != at);
        others.map(|(_, (_, odds))| total(odds)).product::<f64>()
    };
    seasons.iter().enumerate().map(|(at, (share, _))| f64::from(share.0) * others(at)).collect()
}

/// The working days of the three places between two days, counted once.
struct Spans {
    days: usize,
    spans: [Option<Span>; 3],
}

/// The working days of a place as numbers of days from the first on.
struct Span {
    open: Vec<usize>,
    /// For each day the place in `open` of the first working day from it on.
    next: Vec<usize>,
}

impl Spans {
    fn new(way: &Way, first: NaiveDate, last: NaiveDate) -> Spans {
        let days = (last - first).num_days().clamp(0, REACH.0.into()) as usize + 1;
        let spans = Place::ALL.map(|place| {
            let used = way.legs.iter().any(|leg| leg.place == place);
            used.then(|| Span::new(way.places.of(place), first, days))
        });
        Spans { days, spans }
    }

    fn of(&self, place: Place) -> &Span {
        const NONE: &Span = &Span { open: Vec::new(), next: Vec::new() };
        self.spans[place as usize].as_ref().unwrap_or(NONE)
    }
}

impl Span {
    fn new(calendar: &Calendar, first: NaiveDate, days: usize) -> Span {
        let mut span = Span { open: Vec::new(), next: Vec::with_capacity(days) };
        let last = first.checked_add_days(Days::new(days as u64 - 1)).unwrap_or(first);
        let mut closed = calendar.closed_days(first, last).into_iter().map(|closed| closed.day).peekable();
        for (at, day) in first.iter_days().take(days).enumerate() {
            span.next.push(span.open.len());
            if closed.next_if_eq(&day).is_none() {
                span.open.push(at);
            }
        }
        span
    }

    /// The day that is so many working days later, counted from the next working day.
    fn later(&self, day: usize, by: usize) -> Option<usize> {
        self.open.get(self.next.get(day)? + by).copied()
    }

    fn push(&self, now: &[f64], odds: &Odds) -> Vec<f64> {
        let mut then = vec![0.0; now.len()];
        for (day, weight) in now.iter().enumerate().filter(|(_, weight)| **weight > 0.0) {
            for (by, odds_weight) in (usize::from(odds.least.0)..).zip(&odds.weights) {
                if let Some(later) = self.later(day, by) {
                    then[later] += weight * odds_weight;
                }
            }
        }
        then
    }

    /// What lies outside is too late.
    fn pull(&self, then: &[f64], odds: &Odds) -> Vec<f64> {
        let from = |day| {
            let lengths = (usize::from(odds.least.0)..).zip(&odds.weights);
            lengths.map(|(by, weight)| self.later(day, by).map_or(0.0, |later| weight * then[later])).sum()
        };
        (0..then.len()).map(from).collect()
    }
}
