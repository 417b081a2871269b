//! The answer of the countdown in words.

use crate::answers::dates::{Caution, CountedStep, DatesAnswer, Reason as Part, Start};
use crate::book::schedule::Step;
use crate::book::value::{ChosenExtra, ExtraWork};
use crate::forms::{Complaint, Complaints, dates as form};
use crate::trade::dates::entry::DateEntryError;
use crate::trade::dates::odds::Lasts;
use crate::trade::dates::wedding::Wedding;
use crate::words::answer::{CoupleView, Headline, Reason, reason};
use crate::words::{bench as say, dates, format, screens, showing, standing};
use chrono::NaiveDate;

/// What the answer is the answer to: by when to order, or when it is ready.
pub fn dates_name(found: &DatesAnswer) -> &'static str {
    if found.countdown.is_some() { say::ORDER_BY } else { say::IF_ORDERED_TODAY }
}

pub fn dates_headline(found: &DatesAnswer) -> Headline {
    let tone = found.tone();
    if let Some(answer) = &found.countdown {
        let left = say::slack(answer.slack, found.left);
        let here = say::before_wedding(answer.before_wedding);
        let in_time = (!found.is_in_hand_past()).then(|| dates::in_time(answer));
        let lines = [Some(left), Some(here), in_time, Some(say::fits(answer.fits))].into_iter().flatten().collect();
        return Headline { figure: format::day(answer.plan.order_by), lines, tone };
    }
    let Some(ordered) = &found.if_today else { return Headline::none() };
    Headline {
        figure: format::day(ordered.most),
        lines: vec![say::ready_at_latest().to_owned(), dates::finish(ordered)],
        tone,
    }
}

/// The same for the couple, without its picture.
pub fn dates_shown(found: &DatesAnswer) -> Option<CoupleView> {
    let title = if found.countdown.is_some() { showing::DATES_TITLE } else { showing::READY_TITLE };
    found.is_there().then(|| {
        let Headline { figure, lines, .. } = dates_headline(found);
        CoupleView { title: title.to_owned(), picture: String::new(), figure, lines }
    })
}

pub fn dates_cautions(found: &DatesAnswer) -> Vec<String> {
    let one = |caution: &Caution| match *caution {
        Caution::NoAnswer(error) => Some(dates::dates_error(error)),
        Caution::CountedFrom { wedding, counted } => dates::counted_from(wedding, counted),
        Caution::WeddingClosed(why) => Some(dates::wedding_closed(why)),
        Caution::Projection(region) => Some(dates::projection(region)),
    };
    found.cautions.iter().filter_map(one).collect()
}

/// From the wedding back to the order, each part with what it rests on.
pub fn dates_reasons(found: &DatesAnswer) -> Vec<Reason> {
    found.reasons().into_iter().map(part).collect()
}

fn part(part: Part) -> Reason {
    match part {
        Part::InHand { day, before, standing: own, is_past } => {
            let why = format!("{} · {}", say::before_the_wedding(before), standing::standing(own));
            reason(say::IN_HAND_BY, format::day(day), if is_past { say::past(&why) } else { why })
        }
        Part::Step(of) => step(&of),
        Part::OrderBy { day, confidence, standing: own } => {
            let why = format!("{} · {}", say::order_by_how(confidence), standing::standing(own));
            Reason { sum: true, ..reason(say::ORDER_BY, format::day(day), why) }
        }
        Part::ReadyBy { share, day } => reason(say::ready_with(share), format::day(day), say::IF_ORDERED_TODAY),
        Part::WorkStarts { day, why } => {
            let why = match why {
                Start::PastCutOff => say::PAST_CUT_OFF.to_owned(),
                Start::BeforeCutOff(cut_off) => say::before_cut_off(cut_off),
                Start::OfTheOrder => say::DAY_ZERO_HOW.to_owned(),
            };
            reason(say::WORK_STARTS, format::day(day), why)
        }
        Part::Decided { day, chance, ready } => {
            reason(say::if_decided(day), dates::chance(chance), say::decided_why(&format::day(ready)))
        }
        Part::ClosedDays { count, region } => {
            reason(say::CLOSED_DAYS, format::count(count as i64), say::closed_how(region))
        }
    }
}

fn step(of: &CountedStep) -> Reason {
    let lasts = &of.lasts;
    let length = match lasts {
        Lasts::Spread(spread) => dates::spread(*spread),
        Lasts::Orders(days) => dates::by_orders(lasts, days.len()),
    };
    let own = of.standing.map(|own| standing::standing(own).to_owned());
    let parts = [Some(length), own, of.cost.map(say::cost)];
    let why = parts.into_iter().flatten().collect::<Vec<_>>().join(" · ");
    reason(step_name(&of.step), say::usual_days(lasts.usual()), why)
}

fn step_name(step: &Step) -> String {
    work_name(step.work, step.name.as_deref())
}

/// What an extra is called.
pub fn extra_name(extra: &ChosenExtra) -> String {
    work_name(extra.work, extra.name.as_deref())
}

fn work_name(work: ExtraWork, own: Option<&str>) -> String {
    match work {
        ExtraWork::Usual(work) => dates::step(work),
        ExtraWork::Own(_) => own.unwrap_or(say::OWN_EXTRA),
    }
    .to_owned()
}

/// The inputs in one line.
pub fn dates_summary(found: &DatesAnswer) -> String {
    let typed = &found.typed;
    let extras = found.extras();
    let parts = [
        typed.wedding.map(dates::wedding),
        Some(dates::region(typed.region).to_owned()),
        typed.making.map(say::making_short),
        (extras > 0).then(|| say::extras_short(extras)),
    ];
    parts.into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

/// Under the wedding: what was understood, or what may be typed.
pub fn wedding_understood(wedding: Option<Wedding>, today: NaiveDate) -> String {
    match wedding {
        Some(Wedding::Day(day)) => understood(day, today),
        Some(wedding) => dates::wedding(wedding),
        None => screens::WEDDING_HINT.to_owned(),
    }
}

/// Under the day on which they may decide: what was understood, or which two days may be meant.
pub fn decided_understood(decided: Option<NaiveDate>, complaints: &Complaints, today: NaiveDate) -> String {
    let wrong = complaints.iter().find(|(key, _)| *key == form::DECIDED).map(|(_, what)| what);
    match (decided, wrong) {
        (Some(day), _) => understood(day, today),
        (None, Some(Complaint::DayPast { day, .. })) => understood(*day, today),
        (None, Some(Complaint::Date(either @ DateEntryError::EitherDay { .. }, asked))) => {
            dates::date_entry(*either, *asked)
        }
        (None, _) => say::DECIDED_HINT.to_owned(),
    }
}

fn understood(day: NaiveDate, today: NaiveDate) -> String {
    format!("{} · {}", format::day(day), screens::from_today(day, today))
}
