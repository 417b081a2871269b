//! Words of an order under way and of what goes into somebody's calendar.

use super::answer::{Reason, reason};
use super::{book, dates, format, remedy};
use crate::archive::calendar::Event;
use crate::archive::code::Code;
use crate::book::agenda::{self, Entry, What};
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::book::practice::Practice;
use crate::book::progress::{AtRisk, Risk, UnderWay};
use crate::book::remedy::Move;
use crate::book::schedule::{OwnOrders, Step};
use crate::book::value::ExtraWork;
use crate::trade::dates::spread::WorkingDays;
use crate::trade::measure::Percent;
use chrono::NaiveDate;

pub const PLAN: &str = "Order and days to keep";
pub const PLAN_SMALL: &str = "what is finished, what is due, and a file for a calendar";
pub const WORK: &str = "The order as it goes";
pub const WORK_WHY: &str = "Write down the day on which each step was finished. The rest is forecast from there.";
pub const NOT_ORDERED: &str = "Once the couple stands at “ordered”, the steps are written down here.";
pub const REACHED: &str = "Reached";
pub const KEEP: &str = "Days to keep";
pub const NO_PLAN: &str = "There is nothing to plan back from yet: the wedding date is missing or past.";
pub const CALENDAR: &str = "Into a calendar";
pub const CALENDAR_WHY: &str = "One file with the appointments and the days to keep. Taken over again later, it \
                                replaces what it brought before.";
pub const CALENDAR_OF_ALL: &str = "One file with the appointments and the days to keep of everybody who is still to \
                                   marry. Taken over again later, it replaces what it brought before.";
pub const NO_DAYS: &str = "There is no day to put into a calendar yet.";
pub const WITH_NAMES: &str = "Names and places in it";
pub const WITH_NAMES_HINT: &str =
    "Calendars are often shared and sent to servers. Without, the titles say only what it is.";
pub const SHARE: &str = "Share the calendar file";
pub const DOWNLOAD: &str = "Download the calendar file";
pub const SHARED: &str = "Calendar file handed over";
pub const NOT_SHARED: &str = "The calendar file was not handed over";
pub const FILE_NAME: &str = "rings.ics";
pub const AT_WORK: &str = "at the bench";
/// Where a step has taken longer than its longest.
pub const NOT_BEFORE: &str = "Not before";
pub const NOBODY_KNOWS: &str = "nobody knows how long the step at the bench still takes";
pub const READY: &str = "The rest, as likely as not";
pub const READY_SURE: &str = "With 95 %";
pub const IN_TIME: &str = "In hand in time";
pub const BEFORE_WEDDING: &str = "Here before the wedding";
pub const RUNS_LATE: &str = "the order runs late";
pub const TO_COUNTED: &str = "Change steps, times or the wedding";

/// How an order stands, for the checklist: "95 % ready by Tue 9 Mar 2027".
pub fn stands(it: &UnderWay) -> String {
    let sure = it.finish.by(Percent(95));
    if it.is_overrun {
        format!("not before {}", format::day(it.finish.earliest()))
    } else if it.at_work.is_none() {
        format!("finished {}", format::day(sure))
    } else {
        format!("95 % ready by {}", format::day(sure))
    }
}

pub fn collected(day: NaiveDate) -> String {
    format!("collected {}", format::day(day))
}

/// The title of an entry: "Rings: try on", "Rings: appointment, Ines & Callum".
pub fn title(what: What, names: Option<&str>) -> String {
    let what = match what {
        What::Appointment(_) => "appointment".to_owned(),
        What::Milestone(milestone) => lower(dates::milestone(milestone)),
        What::Ring(_, moves) => remedy::entry(moves).to_owned(),
        What::Wedding => "wedding".to_owned(),
    };
    match names {
        Some(names) => format!("Rings: {what}, {names}"),
        None => format!("Rings: {what}"),
    }
}

/// What a milestone is about, in the body of an entry.
pub fn about(what: What) -> Option<String> {
    match what {
        What::Milestone(milestone) => Some(dates::milestone_why(milestone).to_owned()),
        What::Appointment(_) | What::Ring(..) | What::Wedding => None,
    }
}

/// The label of the day on which a step was finished.
pub fn finished(step: &str) -> String {
    format!("{step}, finished")
}

/// How long a step took: "22 working days, 2 more than its longest".
pub fn took(took: WorkingDays, usual: WorkingDays, most: WorkingDays) -> String {
    let said = dates::working_days(took);
    if took > most {
        let over = format::count(i64::from(took.0 - most.0));
        format!("{said}: late, {over} more than its longest")
    } else if took > usual {
        format!("{said}: longer than usual, within its longest")
    } else {
        format!("{said}: as usual or sooner")
    }
}

/// What was finished and how late, and when the rest may be.
pub fn forecast(it: &UnderWay) -> Vec<Reason> {
    let step = |(step, day, days): &(Step, Option<NaiveDate>, Option<WorkingDays>)| {
        let why = took((*days)?, step.spread.usual(), step.spread.most());
        Some(reason(step_name(step), format::day((*day)?), why))
    };
    let mut all: Vec<Reason> = it.steps.iter().filter_map(step).collect();
    let at_work = it.at_work.as_ref();
    all.extend(at_work.map(|(step, days)| reason(step_name(step), AT_WORK, so_far(*days, step.spread.most()))));
    if it.is_overrun {
        all.push(reason(NOT_BEFORE, format::day(it.finish.earliest()), NOBODY_KNOWS));
        return all;
    }
    all.push(reason(READY, format::day(it.finish.by(Percent(50))), ""));
    all.push(reason(READY_SURE, format::day(it.finish.by(Percent(95))), ""));
    let chances = [(IN_TIME, it.chance), (BEFORE_WEDDING, it.before_wedding)].into_iter();
    all.extend(chances.filter_map(|(what, chance)| Some(reason(what, dates::chance(chance?), ""))));
    all
}

/// How long a step has been at the bench: "12 working days so far", "26 working days so far: late, 6 more than its
/// longest".
pub fn so_far(days: WorkingDays, most: WorkingDays) -> String {
    let said = dates::working_days(days);
    if days > most {
        format!("{said} so far: late, {} more than its longest", format::count(i64::from(days.0 - most.0)))
    } else {
        format!("{said} so far")
    }
}

/// What a step of an order is called: a usual one, or one of the jeweller's own.
pub fn step_name(step: &Step) -> String {
    match step.work {
        ExtraWork::Usual(work) => dates::step(work).to_owned(),
        ExtraWork::Own(_) => step.name.clone().unwrap_or_default(),
    }
}

/// Why a day on which something happened cannot be taken.
pub fn not_yet(today: NaiveDate) -> String {
    format!("Enter a day no later than today, {}.", format::day(today))
}

/// Why a step cannot have been finished on that day: the order, or the step ahead of it, was later.
pub fn too_early(ahead: Option<&str>, day: NaiveDate) -> String {
    let day = format::day(day);
    match ahead {
        Some(step) => format!("Enter a day from {day} on: {} was finished then.", lower(step)),
        None => format!("Enter a day from {day} on: it was ordered then."),
    }
}

fn lower(text: &str) -> String {
    let mut chars = text.chars();
    let first = chars.next().map(|first| first.to_ascii_lowercase());
    first.into_iter().chain(chars).collect()
}

/// Orders under way that run late, or less likely in time than was planned for.
pub const MAY_BE_LATE: &str = "Orders that may be late";

pub const NONE_LATE: &str = "No order under way runs late.";

/// "runs late: not before Thu 26 Nov 2026", "62 % in hand by Sun 27 Dec 2026".
pub fn at_risk(risk: AtRisk) -> String {
    match (risk.why, risk.in_hand) {
        (Risk::Overrun { not_before }, _) => format!("runs late: not before {}", format::day(not_before)),
        (Risk::Unlikely(chance), Some(by)) => format!("{} in hand by {}", dates::chance(chance), format::day(by)),
        (Risk::Unlikely(chance), None) => dates::chance(chance),
    }
}

/// What belongs in a calendar of a couple, in words; without the names and places of anybody unless they are wanted.
pub fn events(
    couple: Couple<'_>,
    practice: Practice<'_>,
    own: &OwnOrders,
    today: NaiveDate,
    with_names: bool,
) -> Vec<Event> {
    let names = with_names.then(|| book::names(couple));
    let sequence = agenda::sequence(couple, practice);
    let event = |it: Entry| Event {
        uid: uid(couple.0.id, it.what),
        sequence,
        day: it.day,
        time: it.time,
        title: title(it.what, names.as_deref()),
        place: it.place.filter(|_| with_names),
        about: about(it.what),
        called_off: it.called_off,
        alarm: !it.done,
    };
    agenda::agenda(couple, practice, own, today).into_iter().map(event).collect()
}

/// The same for ever: the couple's id and the entry's own.
fn uid(id: RecordId, what: What) -> String {
    match what {
        What::Appointment(item) => format!("{id}-{item}@bandwright"),
        What::Milestone(milestone) => format!("{id}-{}@bandwright", Code::code(milestone)),
        What::Ring(who, Move::Goes) => format!("{id}-ring-goes-{}@bandwright", who.code()),
        What::Ring(who, Move::Returns) => format!("{id}-ring-returns-{}@bandwright", who.code()),
        What::Wedding => format!("{id}-wedding@bandwright"),
    }
}
