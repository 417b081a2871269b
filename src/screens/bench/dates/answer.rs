//! The countdown as it is shown: drawn, said, and reasoned.

use super::reckon::Reckoned;
use crate::answers::Tone;
use crate::app::show::Shown;
use crate::book::progress::Ahead;
use crate::book::schedule::Step;
use crate::book::value::ExtraWork;
use crate::screens::calendar;
use crate::trade::dates::countdown::{CONFIDENCE, Cost, DatesError};
use crate::trade::dates::lead_times::{self, Step as Work};
use crate::trade::dates::odds::Lasts;
use crate::trade::dates::wedding::Wedding;
use crate::trade::measure::{Percent, Standing};
use crate::words::answer::{Headline, Reason, reason};
use crate::words::{bench as say, dates as say_dates, format, showing, standing};

/// The way ahead, if it is ordered today.
pub fn ahead(found: &Reckoned) -> Option<Ahead> {
    let (answer, calendar) = (found.countdown()?, found.calendar.as_ref()?);
    let ready = (answer.if_today.day_zero, answer.if_today.finish.clone());
    let until = answer.plan.wedding;
    Some(Ahead {
        today: found.today,
        plan: answer.plan.clone(),
        ready: Some(ready),
        is_ordered: false,
        calendar: calendar.clone(),
        closed_days: answer.closed_days.clone(),
        elsewhere: found.elsewhere.clone(),
        appointments: found.appointments.iter().copied().filter(|day| *day <= until).collect(),
        reached: Vec::new(),
    })
}

/// The calendar from today to the wedding.
pub fn drawn(found: &Reckoned) -> Option<String> {
    ahead(found).map(|ahead| calendar::drawn(&ahead))
}

/// The list that says the same.
pub fn days(found: &Reckoned) -> Vec<Reason> {
    ahead(found).map(|ahead| calendar::days(&ahead)).unwrap_or_default()
}

pub fn closed(found: &Reckoned) -> Vec<Reason> {
    ahead(found).map(|ahead| calendar::closed(&ahead, &found.closures)).unwrap_or_default()
}

pub fn said(found: &Reckoned) -> Headline {
    if let Some(answer) = found.countdown() {
        let tone = if answer.in_time() { Tone::Act } else { Tone::Care };
        let left = say::slack(answer.slack, answer.left(found.today, found.counts_today));
        // A day in hand that is past already says nothing: the chance of being here at all does.
        let in_time = (answer.plan.in_hand >= found.today).then(|| say_dates::in_time(answer));
        let here = Some(say::before_wedding(answer.before_wedding));
        let lines = [Some(left), here, in_time, Some(say::fits(answer.fits))].into_iter().flatten().collect();
        return Headline { figure: format::day(answer.plan.order_by), lines, tone };
    }
    match &found.if_today {
        Some(ordered) => Headline {
            figure: format::day(ordered.most),
            lines: vec![say::ready_at_latest().to_owned(), say_dates::finish(ordered)],
            tone: Tone::Act,
        },
        None => Headline { figure: String::new(), lines: Vec::new(), tone: Tone::Care },
    }
}

/// The same for the couple.
pub fn shown(found: &Reckoned) -> Option<Shown> {
    let said = said(found);
    let title = if found.countdown().is_some() { showing::DATES_TITLE } else { showing::READY_TITLE };
    let there = !said.figure.is_empty();
    there.then(|| Shown {
        title: title.to_owned(),
        picture: drawn(found).unwrap_or_default(),
        figure: said.figure,
        lines: said.lines,
    })
}

pub fn cautions(found: &Reckoned) -> Vec<String> {
    let mut all = Vec::new();
    match &found.answer {
        // Nothing was typed yet: the field itself asks for it.
        Some(Err(DatesError::NoWeddingDate)) if found.wedding.is_none() => {}
        Some(Err(error)) => all.push(say_dates::dates_error(*error)),
        Some(Ok(_)) | None => {}
    }
    let Some(answer) = found.countdown() else { return all };
    let plan = &answer.plan;
    all.extend(found.wedding.and_then(|wedding| say_dates::counted_from(wedding, plan.wedding)));
    if let Some(Wedding::Day(day)) = found.wedding {
        all.extend(found.calendar.as_ref().and_then(|calendar| say_dates::wedding_closed(calendar, day)));
    }
    if answer.is_projection {
        all.push(say_dates::projection(found.region));
    }
    all
}

pub fn reasons(found: &Reckoned) -> Vec<Reason> {
    let mut all = Vec::new();
    if let Some((answer, in_hand)) = found.countdown().zip(found.in_hand) {
        let own = if in_hand == lead_times::IN_HAND { Standing::CommonPractice } else { Standing::Yours };
        let why = format!("{} · {}", say::before_the_wedding(in_hand), standing::standing(own));
        let why = if answer.plan.in_hand < found.today { say::past(&why) } else { why };
        all.push(reason(say::IN_HAND_BY, format::day(answer.plan.in_hand), why));
    }
    let costs = found.costs.iter().copied().chain(std::iter::repeat(None));
    all.extend(found.steps.iter().zip(costs).map(|((it, lasts), cost)| step(it, lasts, cost)));
    if let Some((answer, confidence)) = found.countdown().zip(found.confidence) {
        let own = if confidence == CONFIDENCE { Standing::CommonPractice } else { Standing::Yours };
        let why = format!("{} · {}", say::order_by_how(confidence), standing::standing(own));
        let mut sum = reason(say::ORDER_BY, format::day(answer.plan.order_by), why);
        sum.sum = true;
        all.push(sum);
    }
    if let Some(ordered) = &found.if_today {
        for share in [50, 80, 95].map(Percent) {
            let day = format::day(ordered.finish.by(share));
            all.push(reason(say::ready_with(share), day, say::IF_ORDERED_TODAY.to_owned()));
        }
        let why = match found.cut_off {
            Some(_) if found.past_cut_off => say::PAST_CUT_OFF.to_owned(),
            // On a closed day the time of day says nothing.
            Some(cut_off) if ordered.day_zero == found.today => say::before_cut_off(cut_off),
            Some(_) | None => say::DAY_ZERO_HOW.to_owned(),
        };
        all.push(reason(say::WORK_STARTS, format::day(ordered.day_zero), why));
    }
    if let Some((day, ordered, chance)) = &found.decided {
        let ready = format::day(ordered.finish.by(Percent(95)));
        all.push(reason(say::if_decided(*day), say_dates::chance(*chance), say::decided_why(&ready)));
    }
    let closed = found.countdown().map(|answer| say::closed_count(answer, found.today));
    all.extend(closed.map(|count| reason(say::CLOSED_DAYS, count, say::closed_how(found.region))));
    all
}

fn step(it: &Step, lasts: &Lasts, cost: Option<Cost>) -> Reason {
    let usual = match it.work {
        ExtraWork::Usual(work) => Some(lead_times::usual(work).days),
        ExtraWork::Own(_) => None,
    };
    let founded = match lasts {
        Lasts::Spread(spread) => {
            let own = if usual == Some(*spread) { Standing::CommonPractice } else { Standing::Yours };
            format!("{} · {}", say_dates::spread(*spread), standing::standing(own))
        }
        Lasts::Orders(days) => say_dates::by_orders(lasts, days.len()),
    };
    let why = match cost {
        Some(cost) => format!("{founded} · {}", say::cost(cost)),
        None => founded,
    };
    reason(name(it), say::usual_days(lasts.usual()), why)
}

fn name(it: &Step) -> String {
    match it.work {
        ExtraWork::Usual(work) => say_dates::step(work).to_owned(),
        ExtraWork::Own(_) => it.name.clone().unwrap_or_else(|| say::OWN_EXTRA.to_owned()),
    }
}

/// The inputs in one line.
pub fn summary(found: &Reckoned) -> String {
    let mut parts = vec![found.wedding.map(say_dates::wedding).unwrap_or_default()];
    parts.push(say_dates::region(found.region).to_owned());
    parts.extend(found.making.map(say::making_short));
    let extras = found.extras.iter().filter(|extra| extra.work != ExtraWork::Usual(Work::Resizing)).count();
    if extras > 0 {
        parts.push(say::extras_short(extras));
    }
    parts.retain(|part| !part.is_empty());
    parts.join(" · ")
}
