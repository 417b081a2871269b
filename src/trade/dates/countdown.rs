//! The countdown: the chance of being in time, and the last day to order with the chance that the jeweller wants.

use super::closed::{CalendarError, ClosedDay, OnBankHolidays};
use super::forecast::{self, Finish, Leg, Way};
use super::holidays::is_projection;
use super::milestones::{self, Due};
use super::odds::{Chance, Lasts};
use super::season::Busy;
use super::spread::{CalendarDays, WorkingDays};
use super::wedding::Wedding;
use crate::trade::measure::Percent;
use chrono::{Datelike, NaiveDate, NaiveTime, TimeDelta};

/// What a countdown is worked out from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Inputs {
    /// The day of order that is asked about: today, or the day on which they may decide.
    pub today: NaiveDate,
    /// Whether it is too late for an order to count as today's: see [`is_past_cut_off`].
    pub past_cut_off: bool,
    pub wedding: Wedding,
    /// The steps in the order of the work.
    pub way: Way,
    /// The place of engraving among the steps.
    pub engraving: Option<usize>,
    /// In hand so long before the wedding.
    pub in_hand: CalendarDays,
    /// The chance of being in time that the order-by date is to have.
    pub confidence: Percent,
    pub resize: Resize,
}

/// A change of size after the try-on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Resize {
    pub chance: Percent,
    /// From in hand to the try-on.
    pub wait: CalendarDays,
    /// Its own work and its delivery.
    pub legs: Vec<Leg>,
}

/// The days that are planned back from the wedding.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// The wedding day that was counted: the earliest it can still be.
    pub wedding: NaiveDate,
    /// The day by which the ring has to be in hand; it may be a closed one.
    pub in_hand: NaiveDate,
    /// The last day to order, before the cut-off, and still have the ring in hand on time with the chance that was
    /// asked for. Always a working day, so that it is the order's day zero, when work starts.
    pub order_by: NaiveDate,
    pub milestones: Vec<Due>,
}

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Countdown {
    pub plan: Plan,
    pub slack: Slack,
    /// The chance of being in hand in time, if it is ordered now.
    pub chance: Chance,
    /// The chance of being in hand on the day before the wedding, if it is ordered now.
    pub before_wedding: Chance,
    /// The chance that it fits on the day before the wedding, a change of size included, if it is ordered now.
    pub fits: Chance,
    pub if_today: Ordered,
    /// Whether holidays that nobody has settled yet were counted.
    pub is_projection: bool,
    /// Every day on which the workshop is closed from today to the wedding, or to the longest finish if that is later.
    pub closed_days: Vec<ClosedDay>,
}

/// What happens if the order is placed now.
#[derive(Clone, Debug, PartialEq)]
pub struct Ordered {
    /// Day zero, when work starts: today, or the next working day if today is closed or past the cut-off.
    pub day_zero: NaiveDate,
    /// Finished at the earliest, if every step lasts as usual, at the latest.
    pub least: NaiveDate,
    pub usual: NaiveDate,
    pub most: NaiveDate,
    /// The days on which it may be finished, with their chances.
    pub finish: Finish,
}

/// What one step costs: so many working days of the order-by date, and what the chance would be without it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cost {
    pub days: WorkingDays,
    pub without: Chance,
}

/// The chance that is wanted unless it is set otherwise. Common practice, not published.
pub const CONFIDENCE: Percent = Percent(95);

/// The chance of one change of size, and the days until the try-on. Common practice, not published: to be set to
/// one's own.
pub const RESIZE_CHANCE: Percent = Percent(10);
pub const TRY_ON_AFTER: CalendarDays = CalendarDays(3);

/// How today's day zero stands to the order-by date, in working days.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slack {
    /// In time, with so many working days to spare; none means that it has to be ordered now.
    Left(WorkingDays),
    /// Too late by so many working days, one or more.
    Late(WorkingDays),
}

/// The working days left to order in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Left {
    pub days: WorkingDays,
    pub today_among: bool,
}

/// Why there is no countdown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DatesError {
    /// The wedding date is not known yet.
    NoWeddingDate,
    WeddingPast {
        wedding: Wedding,
    },
    /// The wedding is further off than can be counted.
    WeddingTooFar {
        wedding: NaiveDate,
    },
    /// The longest times add up to more than can be counted.
    TakesTooLong,
    TooManySteps {
        limit: usize,
    },
    Calendar(CalendarError),
}

/// The most steps that are added up. House rule: the five usual ones, and more extras than an order has.
pub const MOST_STEPS: usize = 32;

/// The longest that all steps together may take: ten years' work. House rule: it bounds the walk over days.
pub const LONGEST: WorkingDays = WorkingDays(2600);

/// The furthest wedding that is counted to: twenty-one years. House rule: it bounds the walk over days.
pub const FURTHEST: CalendarDays = CalendarDays(7_670);

impl Countdown {
    /// How many working days are left to order in, the last one included; with today among them or not. None when it
    /// is too late.
    pub fn left(&self, today: NaiveDate, counts_today: bool) -> Option<Left> {
        let Slack::Left(days) = self.slack else { return None };
        let is_today = self.if_today.day_zero == today;
        let today_among = is_today && counts_today;
        // Up to the last day there are as many as after the first; that one is added where it is still to come.
        let days = if is_today && !counts_today { days } else { days + WorkingDays(1) };
        Some(Left { days, today_among })
    }

    /// Whether an order of now is in time with the chance that was asked for.
    pub fn in_time(&self) -> bool {
        matches!(self.slack, Slack::Left(_))
    }
}

/// Whether an order at this time counts as the next working day's; at the cut-off itself it still counts as today's.
pub fn is_past_cut_off(now: NaiveTime, cut_off: NaiveTime) -> bool {
    now > cut_off
}

/// Plans back from the wedding to the last day to order.
///
/// To a jeweller: order on this day at the latest, and with the chance that you want the ring is in hand on time, with
/// days to spare for a try-on.
///
/// Formula: the target is the wedding (the earliest day it can still be) less the days in hand; order-by is the last
/// working day on which [`forecast::chances`] of the target is at least the confidence. "n working days" are counted
/// from day zero: an order of Monday that takes one working day is finished on Tuesday, as numpy's
/// `busday_offset(day, n, roll='forward')` counts. Working days left are those from today's day zero up to
/// order-by, the first included and the last not (`busday_count`): 0 is the last chance.
/// Units: civil dates, working days. Range: weddings up to 21 years off. Source: the rule is the house's own, the
/// counting is numpy's, the holidays are the table's.
///
/// ```
/// use bandwright::trade::dates::{closed::Calendar, countdown::*, forecast::*, holidays::Region, lead_times};
/// use bandwright::trade::dates::{odds::Lasts, places::*, season::Busy, wedding::Wedding};
/// use bandwright::trade::measure::Percent;
/// let date = |y, m, d| chrono::NaiveDate::from_ymd_opt(y, m, d).unwrap();
/// let making = Leg { place: Place::Workshop, lasts: Lasts::Spread(lead_times::MAKING.days) };
/// let places = Places::one(Calendar::usual(Region::EnglandAndWales));
/// let mut inputs = Inputs {
///     today: date(2027, 3, 1),
///     past_cut_off: false,
///     wedding: Wedding::Day(date(2027, 5, 22)),
///     way: Way { places, legs: vec![making], busy: Busy::NEVER },
///     engraving: None,
///     in_hand: lead_times::IN_HAND,
///     confidence: Percent(100),
///     resize: Resize { chance: Percent(0), wait: TRY_ON_AFTER, legs: vec![] },
/// };
/// let answer = countdown(&inputs).unwrap();
/// // In hand by Saturday 8 May; 20 working days back from Friday 7 May, round the early May bank holiday.
/// assert_eq!((answer.plan.in_hand, answer.plan.order_by), (date(2027, 5, 8), date(2027, 4, 8)));
/// // The twentieth day has 3 of 42 chances: 39 of 42 is less than 95 %, but more than 90 %.
/// inputs.confidence = Percent(90);
/// assert_eq!(plan(&inputs).unwrap().order_by, date(2027, 4, 9));
/// ```
pub fn countdown(inputs: &Inputs) -> Result<Countdown, DatesError> {
    let plan = plan(inputs)?;
    let if_today = if_ordered_today(inputs)?;
    let fits = fits(inputs, if_today.day_zero, plan.wedding)?;
    let workshop = &inputs.way.places.workshop;
    let slack = if if_today.day_zero <= plan.order_by {
        Slack::Left(workshop.count(if_today.day_zero, plan.order_by)?)
    } else {
        Slack::Late(workshop.count(plan.order_by, if_today.day_zero)?)
    };
    let last = plan.wedding.max(if_today.most);
    Ok(Countdown {
        slack,
        chance: if_today.finish.chance_by(plan.in_hand),
        before_wedding: if_today.finish.chance_by(back_by(plan.wedding, CalendarDays(1))?),
        fits,
        is_projection: inputs.way.used().any(|(_, calendar)| {
            calendar.on_bank_holidays() == OnBankHolidays::Closed && is_projection(calendar.region(), last.year())
        }),
        closed_days: workshop.closed_days(inputs.today, last),
        plan,
        if_today,
    })
}

/// The days alone, without the chances of an order of now.
pub fn plan(inputs: &Inputs) -> Result<Plan, DatesError> {
    if inputs.wedding.is_past(inputs.today) {
        return Err(DatesError::WeddingPast { wedding: inputs.wedding });
    }
    let earliest = inputs.wedding.earliest_from(inputs.today).ok_or(DatesError::NoWeddingDate)?;
    if (earliest - inputs.today).num_days() > FURTHEST.0.into() {
        return Err(DatesError::WeddingTooFar { wedding: earliest });
    }
    check(&inputs.way)?;
    let wedding = counted_wedding(inputs, earliest)?;
    let in_hand = back_by(wedding, inputs.in_hand)?;
    let chances = forecast::chances(&inputs.way, in_hand)?;
    let order_by = chances.last(&inputs.way.places.workshop, inputs.confidence)?;
    let milestones = milestones::milestones(&milestones::Plan {
        wedding,
        in_hand,
        order_by,
        try_on: on_by(in_hand, inputs.resize.wait)?,
        way: &inputs.way,
        engraving: inputs.engraving,
        resize: &inputs.resize.legs,
    })?;
    Ok(Plan { wedding, in_hand, order_by, milestones })
}

/// When the ring is finished if it is ordered now; needs no wedding date.
pub fn if_ordered_today(inputs: &Inputs) -> Result<Ordered, DatesError> {
    let way = &inputs.way;
    check(way)?;
    let day_zero = day_zero(&way.places.workshop, inputs.today, inputs.past_cut_off)?;
    let finish = forecast::finish(way, day_zero, day_zero)?;
    Ok(Ordered {
        day_zero,
        least: way.with(day_zero, Lasts::least)?,
        usual: way.with(day_zero, Lasts::usual)?,
        most: finish.last(),
        finish,
    })
}

/// What an order of another day comes to, and its chance of being in hand by the day that was planned for. A wedding
/// that is known by its month or year stays on the day that was counted, whenever they decide.
pub fn if_decided(inputs: &Inputs, plan: &Plan, day: NaiveDate) -> Result<(Ordered, Chance), DatesError> {
    let past_cut_off = inputs.past_cut_off && day == inputs.today;
    let ordered = if_ordered_today(&Inputs { today: day, past_cut_off, ..inputs.clone() })?;
    let chance = ordered.finish.chance_by(plan.in_hand);
    Ok((ordered, chance))
}

/// What each of the steps costs, in their order.
pub fn costs(inputs: &Inputs, answer: &Countdown) -> Result<Vec<Cost>, DatesError> {
    let workshop = &inputs.way.places.workshop;
    let mut all = Vec::new();
    for chances in forecast::chances_without_each(&inputs.way, answer.plan.in_hand)? {
        let order_by = chances.last(workshop, inputs.confidence)?;
        let days = workshop.count(answer.plan.order_by, order_by)?;
        all.push(Cost { days, without: chances.from(answer.if_today.day_zero) });
    }
    Ok(all)
}

/// Day zero of an order: its day, or the next working day if that is closed or past the cut-off.
pub fn day_zero(
    calendar: &super::closed::Calendar,
    ordered: NaiveDate,
    past_cut_off: bool,
) -> Result<NaiveDate, CalendarError> {
    if past_cut_off { calendar.after(ordered) } else { calendar.on_or_after(ordered) }
}

fn check(way: &Way) -> Result<(), DatesError> {
    let longest = |leg: &Leg| leg.lasts.longer(way.busy.longer).most();
    if way.legs.len() > MOST_STEPS {
        Err(DatesError::TooManySteps { limit: MOST_STEPS })
    } else if way.legs.iter().map(longest).sum::<WorkingDays>() > LONGEST {
        Err(DatesError::TakesTooLong)
    } else {
        Ok(())
    }
}

/// The wedding day that counts. A month or a year that has begun can be today at the earliest, which nobody could plan
/// for: then the earliest day that can still be in time counts, as far as the month or the year goes.
fn counted_wedding(inputs: &Inputs, earliest: NaiveDate) -> Result<NaiveDate, DatesError> {
    match inputs.wedding {
        Wedding::Month { .. } | Wedding::Year(_) if earliest == inputs.today => {
            let from = day_zero(&inputs.way.places.workshop, inputs.today, inputs.past_cut_off)?;
            let finish = forecast::finish(&inputs.way, from, from)?;
            let ready = on_by(finish.by(inputs.confidence), inputs.in_hand)?;
            Ok(inputs.wedding.latest().map_or(ready, |latest| ready.min(latest)).max(earliest))
        }
        _ => Ok(earliest),
    }
}

/// The chance that it is tried on and, where that is needed, changed before the wedding. A season that is busy is so
/// for the order and for its change of size: one throw for both.
fn fits(inputs: &Inputs, day_zero: NaiveDate, wedding: NaiveDate) -> Result<Chance, DatesError> {
    let busy = inputs.way.busy;
    let in_season = |chance| {
        let way = Way { busy: Busy { chance: Percent(chance), ..busy }, ..inputs.way.clone() };
        fits_on(&way, &inputs.resize, day_zero, wedding)
    };
    match busy.chance.0 {
        0 => in_season(0),
        1..100 => Ok(in_season(100)?.mixed(in_season(0)?, busy.chance)),
        100.. => in_season(100),
    }
}

fn fits_on(way: &Way, resize: &Resize, day_zero: NaiveDate, wedding: NaiveDate) -> Result<Chance, DatesError> {
    let Resize { chance, wait, legs } = resize;
    let by = back_by(wedding, CalendarDays(1))?;
    let finish = forecast::finish(way, day_zero, day_zero)?;
    let changed = forecast::chances(&Way { legs: legs.clone(), ..way.clone() }, by)?;
    let tried = |day: NaiveDate| on_by(day, *wait).unwrap_or(NaiveDate::MAX);
    let well = finish.then(|day| if tried(day) <= by { 1.0 } else { 0.0 });
    let with_change = finish.then(|day| if tried(day) <= by { changed.from(tried(day)).share() } else { 0.0 });
    Ok(with_change.mixed(well, *chance))
}

fn back_by(day: NaiveDate, days: CalendarDays) -> Result<NaiveDate, DatesError> {
    day.checked_sub_signed(TimeDelta::days(days.0.into()))
        .ok_or(DatesError::Calendar(CalendarError::TooFar { from: day }))
}

fn on_by(day: NaiveDate, days: CalendarDays) -> Result<NaiveDate, DatesError> {
    day.checked_add_signed(TimeDelta::days(days.0.into()))
        .ok_or(DatesError::Calendar(CalendarError::TooFar { from: day }))
}

impl From<CalendarError> for DatesError {
    fn from(error: CalendarError) -> Self {
        DatesError::Calendar(error)
    }
}
