//! The distribution of dates, pushed through the steps in order: each day's weight moves to the days on which the next
//! step may be finished, on that step's own calendar. Every way is counted, none is sampled.
//!
//! [`finish`] goes forward, from one day of order to all days of finishing; [`chances`] goes back, from one day by
//! which it has to be finished to the chance of every day of order. Both walk each day of a step once for each length
//! that the step may have: twice the days or twice the steps cost twice the time.
//!
//! Why both: one walk back gives the last day to order, the chance of waiting until Thursday and what an extra
//! costs, all at once; the walk forward gives the days of finishing. They are written apart, and a property in the
//! tests holds them together.

use super::closed::{Calendar, CalendarError, REACH};
use super::odds::{Chance, Lasts};
use super::places::{Place, Places};
use super::season::{self, Busy, MonthSet, Pace};
use super::spread::WorkingDays;
use crate::trade::measure::Percent;
use chrono::{Days, NaiveDate};

/// A step: where it is done, and how long it lasts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Leg {
    pub place: Place,
    pub lasts: Lasts,
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

/// A season: its share of a hundred, and how each step may go in it.
struct Season {
    share: Percent,
    steps: Vec<Vec<Pace>>,
}

/// Up to this floating point has every whole number: 2^53.
const EXACT: f64 = 9_007_199_254_740_992.0;

impl Way {
    /// The seasons that there may be.
    fn seasons(&self) -> Vec<Season> {
        let share = self.busy.chance.0.min(100);
        let steps = |busy| self.legs.iter().map(|leg| busy_or_not(&leg.lasts, busy)).collect();
        let seasons = [(Percent(100 - share), None), (Percent(share), Some(self.busy))].into_iter();
        let seasons = seasons.filter(|(share, _)| share.0 > 0);
        let mut seasons: Vec<Season> = seasons.map(|(share, busy)| Season { share, steps: steps(busy) }).collect();
        if seasons.iter().map(|season| season.total(|_| true)).product::<f64>() > EXACT {
            seasons.iter_mut().flat_map(|season| &mut season.steps).for_each(|paces| season::to_one(paces));
        }
        seasons
    }

    /// The places whose days count, with their calendars: the workshop, where it begins, and those of its steps.
    pub fn used(&self) -> impl Iterator<Item = (Place, &Calendar)> {
        let is_used = |place: &Place| *place == Place::Workshop || self.legs.iter().any(|leg| leg.place == *place);
        Place::ALL.into_iter().filter(is_used).map(|place| (place, self.places.of(place)))
    }

    /// The longest that a step may last in any season, as if every month were busy.
    pub fn longest_of(&self, lasts: &Lasts) -> WorkingDays {
        if self.busy.chance.0 > 0 { lasts.longer(self.busy.longer).most() } else { lasts.most() }
    }

    /// That of each step, with its calendar.
    fn longest(&self) -> impl DoubleEndedIterator<Item = (&Calendar, WorkingDays)> {
        self.legs.iter().map(|leg| (self.places.of(leg.place), self.longest_of(&leg.lasts)))
    }

    /// A day of order that is in time whatever happens; always a working day of where it begins.
    pub fn surely_by(&self, by: NaiveDate) -> Result<NaiveDate, CalendarError> {
        let order = self.longest().rev().try_fold(by, |day, (calendar, most)| calendar.back(day, most))?;
        self.places.workshop.back(order, WorkingDays(0))
    }

    /// A day by which it is finished whatever happens; [`Finish::last`] is the earliest such day.
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
/// of k; then the next step. Seasons are added up by their shares: one throw for the whole order; what a busy month does
/// to a step is in [`super::season`]. What would have been finished before `not_before`
/// is left out; if that is all, it is finished on that day. Units: weights, civil dates. Range: thirty years. Source:
/// the rule is the house's own; numpy's `convolve` and Python's enumeration are in the tests.
pub fn finish(way: &Way, from: NaiveDate, not_before: NaiveDate) -> Result<Finish, CalendarError> {
    // From its own beginning to its own end nothing falls outside.
    let last = way.surely_from(from)?.max(way.surely_from(not_before)?);
    let spans = Spans::new(way, from, last);
    let seasons = way.seasons();
    let late = usize::try_from((not_before - from).num_days()).unwrap_or(0);
    let mut under_way: Vec<Vec<f64>> = Vec::new();
    for season in &seasons {
        let mut now = vec![0.0; spans.days];
        now[0] = 1.0;
        if let Some((leg, paces)) = way.legs.iter().zip(&season.steps).next() {
            now = spans.of(leg.place).push(&now, paces);
            now.iter_mut().take(late).for_each(|weight| *weight = 0.0);
        }
        under_way.push(now);
    }
    if under_way.iter().flatten().all(|weight| *weight == 0.0) {
        for (now, season) in under_way.iter_mut().zip(&seasons) {
            now[late.min(spans.days - 1)] = season.steps.first().map_or(1.0, |paces| season::total(paces));
        }
    }
    let mut all = Finish { first: from, weights: vec![0.0; spans.days] };
    let factors = factors(&seasons, |_| true);
    for ((mut now, season), factor) in under_way.into_iter().zip(&seasons).zip(factors) {
        for (leg, paces) in way.legs.iter().zip(&season.steps).skip(1) {
            now = spans.of(leg.place).push(&now, paces);
        }
        add(&mut all.weights, &now, factor);
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
    let mut all = Chances::none(first, by, spans.days);
    for (season, factor) in seasons.iter().zip(factors(&seasons, |_| true)) {
        let steps = way.legs.iter().zip(&season.steps).rev();
        let now = steps.fold(vec![1.0; spans.days], |now, (leg, paces)| spans.of(leg.place).pull(&now, paces));
        all.add(&now, factor, season.total(|_| true));
    }
    Ok(all)
}

/// The same for the way with one of its steps left out, for each of them in their order.
pub fn chances_without_each(way: &Way, by: NaiveDate) -> Result<Vec<Chances>, CalendarError> {
    let first = way.surely_by(by)?;
    let spans = Spans::new(way, first, by);
    let seasons = way.seasons();
    let count = way.legs.len();
    let mut all = vec![Chances::none(first, by, spans.days); count];
    for (nth, season) in seasons.iter().enumerate() {
        let pull = |now: &[f64], at: usize| spans.of(way.legs[at].place).pull(now, &season.steps[at]);
        // What comes after the step that is left out is the same for all of them.
        let mut after = vec![1.0; spans.days];
        for left_out in (0..count).rev() {
            let others = |at| at != left_out;
            let now = (0..left_out).rev().fold(after.clone(), |now, at| pull(&now, at));
            all[left_out].add(&now, factors(&seasons, others)[nth], season.total(others));
            after = pull(&after, left_out);
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

    /// The first day on which it may be finished.
    pub fn earliest(&self) -> NaiveDate {
        self.day(self.weights.iter().position(|weight| *weight > 0.0).unwrap_or(0))
    }

    /// The last day on which it may be finished.
    pub fn last(&self) -> NaiveDate {
        self.day(self.weights.iter().rposition(|weight| *weight > 0.0).unwrap_or(0))
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
    fn none(first: NaiveDate, by: NaiveDate, days: usize) -> Chances {
        Chances { first, by, weights: vec![0.0; days], total: 0.0 }
    }

    fn add(&mut self, weights: &[f64], factor: f64, total: f64) {
        add(&mut self.weights, weights, factor);
        self.total += factor * total;
    }

    /// The chance of being finished in time when it is begun on a day.
    pub fn from(&self, day: NaiveDate) -> Chance {
        match usize::try_from((day - self.first).num_days()) {
            Err(_) => Chance::CERTAIN,
            Ok(at) => Chance::new(self.weights.get(at).copied().unwrap_or(0.0), self.total),
        }
    }

    /// The last day on which it can be begun with at least this chance; one of the workshop's working days.
    pub fn last(&self, workshop: &Calendar, chance: Percent) -> Result<NaiveDate, CalendarError> {
        let days = workshop.working_from(self.first).take_while(|day| *day <= self.by);
        let days = days.take_while(|day| *day == self.first || self.from(*day).is_at_least(chance));
        days.last().ok_or(CalendarError::NoWorkingDay { near: self.first })
    }
}

impl Season {
    /// What the weights of some of its steps come to.
    fn total(&self, of: impl Fn(usize) -> bool) -> f64 {
        self.steps.iter().enumerate().filter(|(at, _)| of(*at)).map(|(_, paces)| season::total(paces)).product()
    }
}

fn busy_or_not(lasts: &Lasts, busy: Option<Busy>) -> Vec<Pace> {
    busy.map_or_else(|| season::usual(lasts), |busy| season::busy(lasts, busy))
}

fn add(all: &mut [f64], weights: &[f64], factor: f64) {
    for (sum, weight) in all.iter_mut().zip(weights) {
        *sum += weight * factor;
    }
}

/// What the weights of each season are multiplied with, so that they add up to the shares of the seasons.
fn factors(seasons: &[Season], of: impl Fn(usize) -> bool) -> Vec<f64> {
    let others = |at: usize| {
        let others = seasons.iter().enumerate().filter(|(other, _)| *other != at);
        others.map(|(_, season)| season.total(&of)).product::<f64>()
    };
    seasons.iter().enumerate().map(|(at, season)| f64::from(season.share.0) * others(at)).collect()
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
    /// How many of the working days before each place in `open` are in a busy month.
    busy: Vec<u32>,
}

impl Spans {
    fn new(way: &Way, first: NaiveDate, last: NaiveDate) -> Spans {
        let days = (last - first).num_days().clamp(0, REACH.0.into()) as usize + 1;
        let spans = Place::ALL.map(|place| {
            let used = way.legs.iter().any(|leg| leg.place == place);
            used.then(|| Span::new(way.places.of(place), way.busy.months, first, days))
        });
        Spans { days, spans }
    }

    fn of(&self, place: Place) -> &Span {
        const NONE: &Span = &Span { open: Vec::new(), next: Vec::new(), busy: Vec::new() };
        self.spans[place as usize].as_ref().unwrap_or(NONE)
    }
}

impl Span {
    fn new(calendar: &Calendar, months: MonthSet, first: NaiveDate, days: usize) -> Span {
        let mut span = Span { open: Vec::new(), next: Vec::with_capacity(days), busy: vec![0] };
        let last = first.checked_add_days(Days::new(days as u64 - 1)).unwrap_or(first);
        let mut closed = calendar.closed_days(first, last).into_iter().map(|closed| closed.day).peekable();
        let mut busy = 0;
        for (at, day) in first.iter_days().take(days).enumerate() {
            span.next.push(span.open.len());
            if closed.next_if_eq(&day).is_none() {
                span.open.push(at);
                busy += u32::from(months.has_day(day));
                span.busy.push(busy);
            }
        }
        span
    }

    /// Where a step that is begun on one working day is finished, both as places in `open`; looked for from `at` on.
    fn reach(&self, begun: usize, at: usize, pace: &Pace) -> usize {
        if pace.usual == pace.busy {
            return begun + pace.usual as usize;
        }
        (at..self.open.len()).find(|at| self.is_done(begun, *at, pace)).unwrap_or(self.open.len())
    }

    /// Whether the days that were worked before a working day make up the step: in a busy month each is worth one of
    /// the busy length, in another one of the usual length.
    fn is_done(&self, begun: usize, at: usize, pace: &Pace) -> bool {
        let worked = (at - begun) as u32;
        let busy = self.busy[at] - self.busy[begun];
        if pace.usual == 0 {
            // Nothing to wait for but what the busy months make of it.
            return worked >= pace.busy || self.busy[at + 1] == self.busy[at];
        }
        (worked - busy) * pace.busy + busy * pace.usual >= pace.usual * pace.busy
    }

    fn push(&self, now: &[f64], paces: &[Pace]) -> Vec<f64> {
        let mut then = vec![0.0; now.len()];
        for (weight, begun) in now.iter().zip(&self.next).filter(|(weight, _)| **weight > 0.0) {
            let mut at = *begun;
            for pace in paces {
                at = self.reach(*begun, at, pace);
                let Some(later) = self.open.get(at) else { break };
                then[*later] += weight * pace.weight;
            }
        }
        then
    }

    /// What lies outside is too late.
    fn pull(&self, then: &[f64], paces: &[Pace]) -> Vec<f64> {
        let from = |begun: &usize| {
            let mut at = *begun;
            let mut sum = 0.0;
            for pace in paces {
                at = self.reach(*begun, at, pace);
                let Some(later) = self.open.get(at) else { break };
                sum += pace.weight * then[*later];
            }
            sum
        };
        self.next.iter().map(from).collect()
    }
}
