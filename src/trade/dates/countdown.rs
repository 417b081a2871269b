//! The working-day countdown: plan back from the wedding to the last day to order.
//!
//! It counts the longest times, so that what it promises holds; odds come with the finished orders of a workshop.

use super::closed::{Calendar, CalendarError, ClosedDay, OnBankHolidays};
use super::holidays::is_projection;
use super::spread::{CalendarDays, Spread, WorkingDays};
use super::wedding::Wedding;
use chrono::{Datelike, NaiveDate, NaiveTime, TimeDelta};

/// What a countdown is worked out from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Inputs {
    pub today: NaiveDate,
    /// Whether it is too late for an order to count as today's: see [`is_past_cut_off`].
    pub past_cut_off: bool,
    pub wedding: Wedding,
    pub calendar: Calendar,
    pub making: Spread,
    /// What comes on top of making, one after the other.
    pub extras: Vec<Spread>,
    /// In hand so long before the wedding.
    pub in_hand: CalendarDays,
}

/// The answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Countdown {
    /// The wedding day that was counted: the earliest it can still be.
    pub wedding: NaiveDate,
    /// The day by which the ring has to be in hand; it may be a closed one.
    pub in_hand: NaiveDate,
    /// The last day to order, before the cut-off, and still have the ring in hand on time. Always a working day.
    pub order_by: NaiveDate,
    /// The day work starts if the order comes on that last day: its day zero.
    pub work_starts: NaiveDate,
    pub slack: Slack,
    pub if_today: Ordered,
    /// Whether holidays that nobody has proclaimed yet were counted.
    pub is_projection: bool,
    /// Every closed day from today to the wedding, or to the longest finish if that is later.
    pub closed_days: Vec<ClosedDay>,
}

/// What happens if the order is placed now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ordered {
    /// Day zero, when work starts: today, or the next working day if today is closed or past the cut-off.
    pub day_zero: NaiveDate,
    /// Finished at the earliest, usually, at the latest: day zero and so many working days after it.
    pub least: NaiveDate,
    pub usual: NaiveDate,
    pub most: NaiveDate,
}

/// How today's day zero stands to the order-by date, in working days.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slack {
    /// In time, with so many working days to spare; none means that it has to be ordered now.
    Left(WorkingDays),
    /// Too late by so many working days, one or more.
    Late(WorkingDays),
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
    TooManyExtras {
        limit: usize,
    },
    Calendar(CalendarError),
}

/// The most extras that are added up.
pub const MOST_EXTRAS: usize = 30;

/// The longest that all steps together may take: ten years' work.
pub const LONGEST: WorkingDays = WorkingDays(2600);

/// The furthest wedding that is counted to.
pub const FURTHEST: CalendarDays = CalendarDays(7_670);

impl Countdown {
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
/// To a jeweller: order on this day at the latest, and even if every step takes its longest, the ring is in hand on
/// time, with days to spare for a try-on.
///
/// Formula: the target is the wedding (the earliest day it can still be) less the days in hand; order-by is the
/// last working day on or before the target, less the sum of the longest times. "n working days" are counted from
/// day zero: an order of Monday that takes one working day is finished on Tuesday, as numpy's
/// `busday_offset(day, n, roll='forward')` counts. Working days left are those from today's day zero up to
/// order-by, the first included and the last not (`busday_count`): 0 is the last chance.
/// Units: civil dates, working days. Range: weddings up to 21 years off. Source: the rule is the house's own, the
/// counting is numpy's, the holidays are the table's.
///
/// ```
/// use bandwright::trade::dates::{closed::Calendar, countdown::*, holidays::Region, lead_times, wedding::Wedding};
/// let date = |y, m, d| chrono::NaiveDate::from_ymd_opt(y, m, d).unwrap();
/// let answer = countdown(&Inputs {
///     today: date(2027, 3, 1),
///     past_cut_off: false,
///     wedding: Wedding::Day(date(2027, 5, 22)),
///     calendar: Calendar::usual(Region::EnglandAndWales),
///     making: lead_times::MAKING.days,
///     extras: vec![],
///     in_hand: lead_times::IN_HAND,
/// })
/// .unwrap();
/// // In hand by Saturday 8 May; 20 working days back from Friday 7 May, round the early May bank holiday.
/// assert_eq!((answer.in_hand, answer.order_by), (date(2027, 5, 8), date(2027, 4, 8)));
/// ```
pub fn countdown(inputs: &Inputs) -> Result<Countdown, DatesError> {
    let wedding = counted_wedding(inputs)?;
    let if_today = if_ordered_today(inputs)?;
    let calendar = &inputs.calendar;

    let in_hand = back_by(wedding, inputs.in_hand)?;
    let order_by = calendar.back(in_hand, total(inputs, Spread::most)?)?;
    let slack = if if_today.day_zero <= order_by {
        Slack::Left(calendar.count(if_today.day_zero, order_by)?)
    } else {
        Slack::Late(calendar.count(order_by, if_today.day_zero)?)
    };
    let last = wedding.max(if_today.most);
    Ok(Countdown {
        wedding,
        in_hand,
        order_by,
        work_starts: calendar.on_or_after(order_by)?,
        slack,
        if_today,
        is_projection: calendar.on_bank_holidays() == OnBankHolidays::Closed
            && is_projection(calendar.region(), last.year()),
        closed_days: calendar.closed_days(inputs.today, last),
    })
}

/// When the ring is finished if it is ordered now; needs no wedding date.
pub fn if_ordered_today(inputs: &Inputs) -> Result<Ordered, DatesError> {
    let calendar = &inputs.calendar;
    let day_zero = day_zero(calendar, inputs.today, inputs.past_cut_off)?;
    let finish = |pick| -> Result<NaiveDate, DatesError> { Ok(calendar.forward(day_zero, total(inputs, pick)?)?) };
    Ok(Ordered { day_zero, least: finish(Spread::least)?, usual: finish(Spread::usual)?, most: finish(Spread::most)? })
}

/// Day zero of an order: its day, or the next working day if that is closed or past the cut-off.
pub fn day_zero(calendar: &Calendar, ordered: NaiveDate, past_cut_off: bool) -> Result<NaiveDate, CalendarError> {
    if past_cut_off { calendar.after(ordered) } else { calendar.on_or_after(ordered) }
}

/// The wedding day that counts, if there is one that can be counted to.
fn counted_wedding(inputs: &Inputs) -> Result<NaiveDate, DatesError> {
    let Inputs { wedding, today, .. } = inputs;
    if wedding.is_past(*today) {
        return Err(DatesError::WeddingPast { wedding: *wedding });
    }
    let day = wedding.earliest_from(*today).ok_or(DatesError::NoWeddingDate)?;
    if (day - *today).num_days() > FURTHEST.0.into() {
        return Err(DatesError::WeddingTooFar { wedding: day });
    }
    Ok(day)
}

/// The sum of one figure over making and the extras.
fn total(inputs: &Inputs, pick: fn(Spread) -> WorkingDays) -> Result<WorkingDays, DatesError> {
    if inputs.extras.len() > MOST_EXTRAS {
        return Err(DatesError::TooManyExtras { limit: MOST_EXTRAS });
    }
    let sum = std::iter::once(&inputs.making).chain(&inputs.extras).map(|spread| pick(*spread)).sum();
    if sum > LONGEST { Err(DatesError::TakesTooLong) } else { Ok(sum) }
}

fn back_by(day: NaiveDate, days: CalendarDays) -> Result<NaiveDate, DatesError> {
    day.checked_sub_signed(TimeDelta::days(days.0.into()))
        .ok_or(DatesError::Calendar(CalendarError::TooFar { from: day }))
}

impl From<CalendarError> for DatesError {
    fn from(error: CalendarError) -> Self {
        DatesError::Calendar(error)
    }
}
