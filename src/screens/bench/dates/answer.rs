//! The countdown as it is shown: drawn, said, and reasoned.

use super::reckon::Reckoned;
use crate::app::show::Shown;
use crate::book::value::ChosenExtra;
use crate::parts::answer::{Said, Tone};
use crate::parts::reasons::{Reason, reason};
use crate::pictures::calendar_strip::{CalendarStrip, calendar_strip};
use crate::trade::dates::countdown::DatesError;
use crate::trade::dates::lead_times::{self, Step as Work};
use crate::trade::dates::spread::Spread;
use crate::trade::measure::Standing;
use crate::words::{bench as say, dates as say_dates, format, showing, standing};

/// The calendar from today to the wedding.
pub fn drawn(found: &Reckoned) -> Option<String> {
    let (answer, calendar) = (found.countdown()?, found.calendar.as_ref()?);
    // From today on the answer lists them; before today the calendar is asked.
    let closed = |day| {
        if day < found.today {
            !calendar.is_working(day)
        } else {
            answer.closed_days.binary_search_by_key(&day, |closed| closed.day).is_ok()
        }
    };
    let picture = calendar_strip(&CalendarStrip {
        today: found.today,
        wedding: answer.wedding,
        order_by: Some(answer.order_by),
        start: Some(answer.if_today.day_zero),
        finish: Some(answer.if_today.usual),
        in_hand: Some(answer.in_hand),
        closed: &closed,
    });
    Some(picture.svg)
}

pub fn said(found: &Reckoned) -> Said {
    if let Some(answer) = found.countdown() {
        let tone = if answer.in_time() { Tone::Rouge } else { Tone::Care };
        let lines = vec![say::slack(answer.slack), say_dates::in_time(answer)];
        return Said { figure: format::day(answer.order_by), lines, tone };
    }
    match &found.if_today {
        Some(ordered) => Said {
            figure: format::day(ordered.most),
            lines: vec![say::ready_at_latest().to_owned(), say_dates::finish(ordered)],
            tone: Tone::Rouge,
        },
        None => Said { figure: String::new(), lines: Vec::new(), tone: Tone::Care },
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
    all.extend(found.wedding.and_then(|wedding| say_dates::counted_from(wedding, answer.wedding)));
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
        all.push(reason(say::IN_HAND_BY, format::day(answer.in_hand), why));
    }
    if let Some(making) = found.making {
        all.push(step(say_dates::step(Work::Making), making, lead_times::MAKING.days));
    }
    all.extend(found.extras.iter().map(extra));
    if let Some(answer) = found.countdown() {
        let mut sum = reason(say::ORDER_BY, format::day(answer.order_by), say::ORDER_BY_HOW);
        sum.sum = true;
        all.push(sum);
    }
    if let Some(ordered) = &found.if_today {
        let finish = reason(say::IF_ORDERED_TODAY, format::day(ordered.usual), say_dates::finish(ordered));
        all.push(finish);
        let why = if found.past_cut_off { say::PAST_CUT_OFF } else { say::DAY_ZERO_HOW };
        all.push(reason(say::WORK_STARTS, format::day(ordered.day_zero), why));
    }
    let closed = found.countdown().map(|answer| say::closed_count(answer, found.today));
    all.extend(closed.map(|count| reason(say::CLOSED_DAYS, count, say::closed_how(found.region))));
    all
}

fn extra(of: &ChosenExtra) -> Reason {
    match (of.work, &of.name) {
        (crate::book::value::ExtraWork::Usual(work), _) => {
            step(say_dates::step(work), of.spread, lead_times::usual(work).days)
        }
        (crate::book::value::ExtraWork::Own(_), name) => {
            let name = name.clone().unwrap_or_else(|| say::OWN_EXTRA.to_owned());
            reason(name, say::longest(of.spread), own(of.spread, Standing::Yours))
        }
    }
}

fn step(name: &str, days: Spread, usual: Spread) -> Reason {
    let standing = if days == usual { Standing::CommonPractice } else { Standing::Yours };
    reason(name, say::longest(days), own(days, standing))
}

fn own(days: Spread, of: Standing) -> String {
    format!("{} · {}", say_dates::spread(days), standing::standing(of))
}

/// The inputs in one line.
pub fn summary(found: &Reckoned) -> String {
    let mut parts = vec![found.wedding.map(say_dates::wedding).unwrap_or_default()];
    parts.push(say_dates::region(found.region).to_owned());
    parts.extend(found.making.map(say::making_short));
    if !found.extras.is_empty() {
        parts.push(say::extras_short(found.extras.len()));
    }
    parts.retain(|part| !part.is_empty());
    parts.join(" · ")
}
