//! The countdown: the last day to order, the chance of being in time, what each step costs, and the calendar up to the
//! wedding; without a wedding, when the rings are ready.

use chrono::{NaiveDate, NaiveTime};

use crate::book::change::Write;
use crate::book::couple::Couple;
use crate::book::field::Field;
use crate::book::practice::Practice;
use crate::book::progress::{self, Ahead};
use crate::book::schedule::{Asked, OwnOrders, Step};
use crate::book::value::{DatesSettled, ExtraWork, Value};
use crate::forms::dates::DatesTyped;
use crate::trade::dates::closed::{Calendar, Closed};
use crate::trade::dates::countdown::{
    self, CONFIDENCE, Cost, Countdown, DatesError, Inputs, Left, Ordered, is_past_cut_off,
};
use crate::trade::dates::forecast::Leg;
use crate::trade::dates::holidays::Region;
use crate::trade::dates::lead_times::{self, IN_HAND, Step as Work};
use crate::trade::dates::odds::{Chance, Lasts};
use crate::trade::dates::places::Place;
use crate::trade::dates::spread::CalendarDays;
use crate::trade::dates::wedding::Wedding;
use crate::trade::measure::{Percent, Standing};

use super::Tone;

/// What is known besides what was typed.
#[derive(Clone, Copy)]
pub struct Context<'a> {
    pub practice: Practice<'a>,
    /// How long the jeweller's own orders took.
    pub own: &'a OwnOrders,
    /// None where nobody in particular is asked about.
    pub couple: Option<Couple<'a>>,
    pub today: NaiveDate,
    pub now: NaiveTime,
}

/// The dates of what was typed, with what the answer says about them.
#[derive(Clone, Debug, PartialEq)]
pub struct DatesAnswer {
    pub typed: DatesTyped,
    pub today: NaiveDate,
    /// It is too late for an order to count as today's.
    pub past_cut_off: bool,
    /// None without a wedding that can be counted to, and while something has to be put right.
    pub countdown: Option<Countdown>,
    /// The working days that are left to order in.
    pub left: Option<Left>,
    /// When it is ready if it is ordered now; needs no wedding.
    pub if_today: Option<Ordered>,
    /// If they decide on another day.
    pub decided: Option<Decided>,
    /// The way from today to the wedding, if it is ordered today.
    pub ahead: Option<Ahead>,
    /// What the closures of each place are called.
    pub closures: Vec<(Place, Vec<String>)>,
    /// What wants to be read before anything is ordered, the most harmful first.
    pub cautions: Vec<Caution>,
    steps: Vec<CountedStep>,
    cut_off: Option<NaiveTime>,
    usual_confidence: Percent,
}

/// What becomes of a decision on another day.
#[derive(Clone, Debug, PartialEq)]
pub struct Decided {
    pub day: NaiveDate,
    pub ordered: Ordered,
    /// Of being in hand on the day that is planned for.
    pub chance: Chance,
}

/// A step of the work as it is counted.
#[derive(Clone, Debug, PartialEq)]
pub struct CountedStep {
    pub step: Step,
    pub lasts: Lasts,
    /// What it costs; none for making, which cannot be left out, and without a countdown.
    pub cost: Option<Cost>,
    /// None for what the jeweller's own orders took: they are counted instead.
    pub standing: Option<Standing>,
}

/// What wants to be read first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Caution {
    NoAnswer(DatesError),
    /// Of a wedding whose day is not known, this day was counted.
    CountedFrom {
        wedding: Wedding,
        counted: NaiveDate,
    },
    /// The workshop is closed on the day of the wedding.
    WeddingClosed(Closed),
    /// Holidays are counted that nobody has settled yet.
    Projection(Region),
}

/// A part of the answer, with what it rests on.
#[derive(Clone, Debug, PartialEq)]
pub enum Reason {
    InHand {
        day: NaiveDate,
        before: CalendarDays,
        standing: Standing,
        is_past: bool,
    },
    Step(CountedStep),
    OrderBy {
        day: NaiveDate,
        confidence: Percent,
        standing: Standing,
    },
    /// With this chance it is ready by the day, if it is ordered today.
    ReadyBy {
        share: Percent,
        day: NaiveDate,
    },
    WorkStarts {
        day: NaiveDate,
        why: Start,
    },
    /// If they decide on another day: how likely it is in time, and by when it is ready with 95 in a hundred.
    Decided {
        day: NaiveDate,
        chance: Chance,
        ready: NaiveDate,
    },
    /// So many days on which the workshop is closed, until the wedding.
    ClosedDays {
        count: usize,
        region: Region,
    },
}

/// Why work starts on its day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Start {
    PastCutOff,
    /// An order until this time counts as today's.
    BeforeCutOff(NaiveTime),
    /// The day of the order, or the next working day.
    OfTheOrder,
}

/// The chances with which it is said by when it is ready.
const SHARES: [Percent; 3] = [Percent(50), Percent(80), Percent(95)];

/// The answer to what was typed.
pub fn answer(typed: DatesTyped, context: &Context<'_>) -> DatesAnswer {
    let Context { practice, own, couple, today, now } = *context;
    let cut_off = practice.cut_off();
    let past_cut_off = cut_off.is_some_and(|cut_off| is_past_cut_off(now, cut_off));
    let asked = typed.asked();
    // The wedding may be missing: when it is ready does not depend on it.
    let wedding = typed.wedding.unwrap_or(Wedding::NotYet);
    let inputs = asked.as_ref().map(|asked| asked.inputs(practice, own, wedding, today).map_err(DatesError::Calendar));
    let inputs = inputs.map(|inputs| inputs.map(|inputs| Inputs { past_cut_off, ..inputs }));
    let found = inputs.as_ref().map(|inputs| inputs.as_ref().map_err(|error| *error).and_then(countdown::countdown));
    let (countdown, error) = match found {
        Some(Ok(countdown)) => (Some(countdown), None),
        Some(Err(error)) => (None, Some(error)),
        None => (None, None),
    };
    let inputs = inputs.and_then(Result::ok);
    let calendar = practice.calendar(typed.region, Place::Workshop).ok();
    let counted = inputs.as_ref().zip(countdown.as_ref());
    let decided = typed.decided.zip(counted).and_then(|(day, (inputs, answer))| {
        let (ordered, chance) = countdown::if_decided(inputs, &answer.plan, day).ok()?;
        Some(Decided { day, ordered, chance })
    });
    let ahead = counted.zip(calendar.as_ref()).map(|((inputs, answer), calendar)| {
        let appointments = couple.map(|couple| progress::appointments(couple, today)).unwrap_or_default();
        way_ahead(inputs, answer, calendar, appointments)
    });
    DatesAnswer {
        past_cut_off,
        left: countdown.as_ref().and_then(|answer| answer.left(today, practice.counts_today())),
        if_today: match &countdown {
            Some(answer) => Some(answer.if_today.clone()),
            None => inputs.as_ref().and_then(|inputs| countdown::if_ordered_today(inputs).ok()),
        },
        steps: steps(asked.as_ref(), inputs.as_ref(), countdown.as_ref()),
        cautions: cautions(&typed, countdown.as_ref(), error, calendar.as_ref()),
        closures: progress::closure_names(practice),
        usual_confidence: practice.confidence(),
        countdown,
        decided,
        ahead,
        cut_off,
        today,
        typed,
    }
}

/// The steps in the order of the work, as they are counted.
fn steps(asked: Option<&Asked>, inputs: Option<&Inputs>, answer: Option<&Countdown>) -> Vec<CountedStep> {
    let (Some(asked), Some(inputs)) = (asked, inputs) else { return Vec::new() };
    let costs = answer.and_then(|answer| countdown::costs(inputs, answer).ok()).unwrap_or_default();
    let one = |(at, (step, leg)): (usize, (Step, &Leg))| {
        let standing = match &leg.lasts {
            Lasts::Spread(spread) => {
                let is_usual = matches!(step.work, ExtraWork::Usual(work) if lead_times::usual(work).days == *spread);
                Some(if is_usual { Standing::CommonPractice } else { Standing::Yours })
            }
            Lasts::Orders(_) => None,
        };
        // Making is the first of them, and nothing that could be left out.
        let cost = costs.get(at).copied().filter(|_| at > 0);
        CountedStep { lasts: leg.lasts.clone(), cost, standing, step }
    };
    asked.steps().into_iter().zip(&inputs.way.legs).enumerate().map(one).collect()
}

fn cautions(
    typed: &DatesTyped,
    answer: Option<&Countdown>,
    error: Option<DatesError>,
    calendar: Option<&Calendar>,
) -> Vec<Caution> {
    // Where no wedding was typed yet the field itself asks for it.
    let error = error.filter(|error| *error != DatesError::NoWeddingDate || typed.wedding.is_some());
    let mut all: Vec<Caution> = error.into_iter().map(Caution::NoAnswer).collect();
    let Some((answer, wedding)) = answer.zip(typed.wedding) else { return all };
    match wedding {
        Wedding::Day(day) => {
            let closed = calendar.and_then(|calendar| calendar.why_closed(day));
            // A weekday that is never worked goes without saying.
            all.extend(closed.filter(|why| *why != Closed::Weekend).map(Caution::WeddingClosed));
        }
        Wedding::Month { .. } | Wedding::Year(_) => {
            all.push(Caution::CountedFrom { wedding, counted: answer.plan.wedding });
        }
        Wedding::NotYet => {}
    }
    all.extend(answer.is_projection.then_some(Caution::Projection(typed.region)));
    all
}

fn way_ahead(inputs: &Inputs, answer: &Countdown, calendar: &Calendar, appointments: Vec<NaiveDate>) -> Ahead {
    let until = answer.plan.wedding;
    Ahead {
        today: inputs.today,
        plan: answer.plan.clone(),
        ready: Some((answer.if_today.day_zero, answer.if_today.finish.clone())),
        is_ordered: false,
        calendar: calendar.clone(),
        closed_days: answer.closed_days.clone(),
        elsewhere: progress::elsewhere(&inputs.way, inputs.today, until),
        appointments: appointments.into_iter().filter(|day| *day <= until).collect(),
        reached: Vec::new(),
    }
}

impl DatesAnswer {
    /// The last day to order.
    pub fn order_by(&self) -> Option<NaiveDate> {
        self.countdown.as_ref().map(|answer| answer.plan.order_by)
    }

    /// Whether there is an answer of either kind: by when to order, or when it is ready.
    pub fn is_there(&self) -> bool {
        self.countdown.is_some() || self.if_today.is_some()
    }

    pub fn tone(&self) -> Tone {
        let in_time = self.countdown.as_ref().map_or(self.if_today.is_some(), Countdown::in_time);
        if in_time { Tone::Act } else { Tone::Care }
    }

    /// Whether the day in hand is past: then its chance says nothing, and that of being here at all does.
    pub fn is_in_hand_past(&self) -> bool {
        self.countdown.as_ref().is_some_and(|answer| answer.plan.in_hand < self.today)
    }

    /// How many extras are counted. A change of size is none: it comes after the try-on.
    pub fn extras(&self) -> usize {
        self.typed.extras.iter().filter(|extra| extra.work != ExtraWork::Usual(Work::Resizing)).count()
    }

    /// From the wedding back to the order, each part with what it rests on, and what an order of today comes to.
    pub fn reasons(&self) -> Vec<Reason> {
        let standing = |is_usual| if is_usual { Standing::CommonPractice } else { Standing::Yours };
        let counted = self.countdown.as_ref();
        let in_hand = counted.zip(self.typed.in_hand).map(|(answer, before)| Reason::InHand {
            day: answer.plan.in_hand,
            before,
            standing: standing(before == IN_HAND),
            is_past: self.is_in_hand_past(),
        });
        let order_by = counted.zip(self.typed.confidence).map(|(answer, confidence)| Reason::OrderBy {
            day: answer.plan.order_by,
            confidence,
            standing: standing(confidence == CONFIDENCE),
        });
        let mut all: Vec<Reason> = in_hand.into_iter().collect();
        all.extend(self.steps.iter().cloned().map(Reason::Step));
        all.extend(order_by);
        if let Some(ordered) = &self.if_today {
            all.extend(SHARES.map(|share| Reason::ReadyBy { share, day: ordered.finish.by(share) }));
            all.push(Reason::WorkStarts { day: ordered.day_zero, why: self.why_it_starts(ordered) });
        }
        all.extend(self.decided.as_ref().map(|decided| Reason::Decided {
            day: decided.day,
            chance: decided.chance,
            ready: decided.ordered.finish.by(Percent(95)),
        }));
        all.extend(counted.map(|answer| Reason::ClosedDays {
            count: self.closed_until_the_wedding(answer),
            region: self.typed.region,
        }));
        all
    }

    fn why_it_starts(&self, ordered: &Ordered) -> Start {
        match self.cut_off {
            Some(_) if self.past_cut_off => Start::PastCutOff,
            // On a closed day the time of day says nothing.
            Some(cut_off) if ordered.day_zero == self.today => Start::BeforeCutOff(cut_off),
            Some(_) | None => Start::OfTheOrder,
        }
    }

    fn closed_until_the_wedding(&self, answer: &Countdown) -> usize {
        let days = answer.closed_days.iter().map(|closed| closed.day);
        days.filter(|day| (self.today..=answer.plan.wedding).contains(day)).count()
    }

    /// What is written down when the answer is used: the dates, and the wedding where another one was typed than the
    /// one that is `known`. None without a countdown.
    pub fn writes(&self, known: Option<Wedding>) -> Vec<Write> {
        let Some(settled) = self.settled() else { return Vec::new() };
        let wedding = self.typed.wedding.filter(|typed| Some(*typed) != known);
        let wedding = wedding.map(|typed| Write::set(Field::Wedding, Value::Wedding(typed)));
        wedding.into_iter().chain([Write::set(Field::Dates, Value::Dates(settled))]).collect()
    }

    /// The chance that is wanted is written down only where it is not the usual one.
    fn settled(&self) -> Option<DatesSettled> {
        Some(DatesSettled {
            region: self.typed.region,
            in_hand: self.typed.in_hand?,
            making: self.typed.making?,
            extras: self.typed.extras.clone(),
            confidence: self.typed.confidence.filter(|it| *it != self.usual_confidence),
            order_by: self.order_by()?,
            settled: self.today,
        })
    }
}
