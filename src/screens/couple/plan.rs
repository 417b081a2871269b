//! The order as it goes, the days to keep, and a file of them for a calendar.

use crate::parts::el::or_nothing;
use crate::parts::lay::{all, block, para, section};
use leptos::prelude::*;

use super::{Whose, whose};
use crate::app::address::{Address, Part};
use crate::app::clock;
use crate::app::form::Form;
use crate::app::seen::Seen;
use crate::app::state::{App, app};
use crate::archive::code::Code;
use crate::book::change::Write;
use crate::book::checklist::Topic;
use crate::book::couple::Couple;
use crate::book::field::{Field, Stage};
use crate::book::id::RecordId;
use crate::book::practice::Practice;
use crate::book::progress::{self, Ahead, UnderWay};
use crate::book::schedule::{Asked, OwnOrders, Step, not_before};
use crate::book::value::{ExtraWork, Value};
use crate::parts::button::{Weight, link_button};
use crate::parts::choice::{option, several_rows};
use crate::parts::details::details;
use crate::parts::picture::picture;
use crate::parts::reasons::reasons;
use crate::screens::calendar as drawn;
use crate::screens::calendar_file::{Of, into_calendar};
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::screens::show::showable;
use crate::trade::dates::countdown::{MOST_STEPS, is_past_cut_off};
use crate::trade::dates::lead_times::Step as Work;
use crate::trade::dates::milestones::Milestone;
use crate::trade::measure::Percent;
use crate::words::answer::{Reason, reason};
use crate::words::{agenda as say, ahead as say_ahead, dates as say_dates, format, screens as say_frame};

/// The fields of the steps that are the jeweller's own: as many as an order can have beside making.
#[rustfmt::skip]
const OWN: [&str; MOST_STEPS - 1] = [
    "done-own-1", "done-own-2", "done-own-3", "done-own-4", "done-own-5", "done-own-6", "done-own-7", "done-own-8",
    "done-own-9", "done-own-10", "done-own-11", "done-own-12", "done-own-13", "done-own-14", "done-own-15", "done-own-16",
    "done-own-17", "done-own-18", "done-own-19", "done-own-20", "done-own-21", "done-own-22", "done-own-23", "done-own-24",
    "done-own-25", "done-own-26", "done-own-27", "done-own-28", "done-own-29", "done-own-30", "done-own-31",
];

pub fn plan(id: RecordId) -> AnyView {
    let app = app();
    let Whose { head, leave } = whose(id, say::PLAN, Part::Plan);
    let steps = steps(app, id);
    let reached = app.couple(id, |couple| {
        let said = Milestone::ALL.into_iter().filter(|it| couple.milestone_done(*it).is_some());
        said.map(Code::code).collect::<Vec<_>>().join(" ")
    });
    let mut start: Vec<(&'static str, String)> = steps
        .iter()
        .map(|(key, step)| {
            let done = app.couple(id, |couple| couple.work_done(step.work)).flatten();
            (*key, done.map(format::day).unwrap_or_default())
        })
        .collect();
    start.push(("reached", reached.unwrap_or_default()));
    let form = Form::draft(format!("plan.{id}"), start);
    let seen = Seen::couple(app, id);
    let kept = StoredValue::new(steps.clone());
    let save = move || {
        let Some(writes) = kept.with_value(|steps| read(app, id, form, steps)) else {
            return show_first_complaint();
        };
        app.save(id, seen.changed(writes), say_frame::saved(say::PLAN), move || {
            form.done();
            let _ = leave.try_run(());
        });
    };
    let is_under_way = !steps.is_empty();
    let mut sections = vec![
        section(say::KEEP, vec![days_to_keep(app, id, form)]),
        section(say::WORK, vec![work(app, id, form, steps)]),
        section(say::CALENDAR, vec![into_calendar(Of::Couple(id), say::CALENDAR_WHY)]),
    ];
    if is_under_way {
        sections.swap(0, 1);
    }
    let content = all(sections);
    form_page(head, form, content, say_frame::SAVE, save)
}

/// What is worked out for a couple, by the practice and by the orders of everybody.
fn with<T>(
    app: App,
    id: RecordId,
    read: impl FnOnce(Couple<'_>, Practice<'_>, &OwnOrders, chrono::NaiveDate) -> T,
) -> Option<T> {
    let today = app.today.get_untracked();
    untrack(|| {
        app.with(|book| {
            let practice = Practice(&book.practice);
            let own = OwnOrders::of(book.couples.values().map(|record| Couple(record)), practice);
            book.couples.get(&id).map(|record| read(Couple(record), practice, &own, today))
        })
    })
}

/// The steps of an order that was placed, each with the name of its field; none before.
fn steps(app: App, id: RecordId) -> Vec<(&'static str, Step)> {
    let steps = with(app, id, |couple, practice, _, _| {
        let is_placed = matches!(couple.stage(), Stage::Ordered | Stage::Collected);
        if is_placed { Asked::of(couple, practice).steps() } else { Vec::new() }
    });
    let mut own = OWN.into_iter();
    let mut key = |step: &Step| match step.work {
        ExtraWork::Usual(Work::Making) => Some("done-making"),
        ExtraWork::Usual(Work::Stones) => Some("done-stones"),
        ExtraWork::Usual(Work::Engraving) => Some("done-engraving"),
        ExtraWork::Usual(Work::Marking) => Some("done-marking"),
        ExtraWork::Usual(Work::Delivery) => Some("done-delivery"),
        ExtraWork::Usual(Work::Resizing) => None,
        ExtraWork::Own(_) => own.next(),
    };
    steps.unwrap_or_default().into_iter().filter_map(|step| Some((key(&step)?, step))).collect()
}

fn name(step: &Step) -> String {
    match step.work {
        ExtraWork::Usual(work) => say_dates::step(work).to_owned(),
        ExtraWork::Own(_) => step.name.clone().unwrap_or_default(),
    }
}

fn work(app: App, id: RecordId, form: Form, steps: Vec<(&'static str, Step)>) -> AnyView {
    if steps.is_empty() {
        return para("small", say::NOT_ORDERED);
    }
    let field = |(key, step): (&'static str, Step)| fields::day(form, key, &say::finished(&name(&step)));
    let entered = steps.into_iter().map(field).collect();
    let under_way = with(app, id, progress::under_way);
    let said = under_way.flatten().map(|it| reasons(Signal::stored(forecast(&it))));
    let counted = link_button(Weight::Quiet, say::TO_COUNTED, Address::of_topic(id, Topic::Dates));
    all(vec![para("small", say::WORK_WHY), block("ledger", entered), or_nothing(said), counted])
}

/// What the checklist says of the dates of an order, and what about them wants another look. None before it is placed.
/// It is worked out anew when this couple changes, not when any other does.
pub(super) fn order_line(app: App, id: RecordId) -> Option<(String, &'static str)> {
    app.today.track();
    let stage = app.couple(id, |couple| couple.stage())?;
    match stage {
        Stage::Ordered => with(app, id, |couple, practice, own, today| {
            let late = progress::at_risk(couple, practice, own, today).is_some();
            let said = progress::under_way(couple, practice, own, today).map(|it| say::stands(&it)).unwrap_or_default();
            (said, if late { say::RUNS_LATE } else { "" })
        }),
        Stage::Collected => {
            let day = app.couple(id, |couple| couple.reached(stage)).flatten();
            Some((day.map(say::collected).unwrap_or_default(), ""))
        }
        Stage::Enquiry | Stage::Booked | Stage::Lost => None,
    }
}

/// What was finished and how late, and when the rest may be.
fn forecast(it: &UnderWay) -> Vec<Reason> {
    let step = |(step, day, took): &(Step, Option<chrono::NaiveDate>, Option<_>)| {
        let (day, took) = ((*day)?, (*took)?);
        let why = say::took(took, step.spread.usual(), step.spread.most());
        Some(reason(name(step), format::day(day), why))
    };
    let mut all: Vec<Reason> = it.steps.iter().filter_map(step).collect();
    all.extend(
        it.at_work
            .as_ref()
            .map(|(step, days)| reason(name(step), say::AT_WORK, say::so_far(*days, step.spread.most()))),
    );
    if it.is_overrun {
        all.push(reason(say::NOT_BEFORE, format::day(it.finish.earliest()), say::NOBODY_KNOWS));
        return all;
    }
    all.push(reason(say::READY, format::day(it.finish.by(Percent(50))), ""));
    all.push(reason(say::READY_SURE, format::day(it.finish.by(Percent(95))), ""));
    let chances = [(say::IN_TIME, it.chance), (say::BEFORE_WEDDING, it.before_wedding)].into_iter();
    all.extend(chances.filter_map(|(what, chance)| Some(reason(what, say_dates::chance(chance?), ""))));
    all
}

/// The calendar from today to the wedding, the list that says the same, and what of it is reached.
fn days_to_keep(app: App, id: RecordId, form: Form) -> AnyView {
    let found = Memo::new(move |_| {
        // A page that stays open over midnight counts from the new day.
        app.today.track();
        with(app, id, |couple, practice, own, today| {
            let cut_off = practice.cut_off();
            let past = cut_off.is_some_and(|cut_off| is_past_cut_off(clock::now().1, cut_off));
            progress::ahead(couple, practice, own, today, past)
        })
        .flatten()
    });
    let Some(milestones) = found.with_untracked(|found| Some(found.as_ref()?.plan.milestones.clone())) else {
        return para("small", say::NO_PLAN);
    };
    let names = app.practice(progress::closure_names);
    let of = move |read: fn(&Ahead) -> Vec<Reason>| found.with(|it| it.as_ref().map(read).unwrap_or_default());
    let drawn = Signal::derive(move || found.with(|it| it.as_ref().map(drawn::drawn).unwrap_or_default()));
    let closed = move || found.with(|it| it.as_ref().map(|it| drawn::closed(it, &names)).unwrap_or_default());
    let options = milestones.iter().filter(|due| due.what != Milestone::Order);
    let options = options.map(|due| option(Code::code(due.what), say_dates::milestone(due.what))).collect();
    all(vec![
        showable(vec![picture(drawn)], move || found.with_untracked(|it| it.as_ref().map(drawn::shown))),
        reasons(Signal::derive(move || of(drawn::days))),
        details(say_ahead::CLOSED, reasons(Signal::derive(closed))),
        several_rows("reached", say::REACHED, options, form.text("reached"), form.complaint("reached")),
    ])
}

fn read(app: App, id: RecordId, form: Form, steps: &[(&'static str, Step)]) -> Option<Vec<Write>> {
    let today = app.today.get_untracked();
    let mut whole = true;
    let mut typed: Vec<(&Step, Option<chrono::NaiveDate>)> = Vec::new();
    for (key, step) in steps {
        let day = fields::read_optional_day(form, key, today).and_then(|day| {
            let is_to_come = day.is_some_and(|day| day > today);
            form.judge(key, if is_to_come { Err(say::not_yet(today)) } else { Ok(day) })
        });
        whole &= day.is_some();
        typed.push((step, day.flatten()));
    }
    let ordered = app.couple(id, |couple| couple.reached(Stage::Ordered)).flatten();
    for ((key, step), (_, day)) in steps.iter().zip(&typed) {
        let Some((from, after)) =
            not_before(ordered, &typed, step).filter(|(from, _)| day.is_some_and(|it| it < *from))
        else {
            continue;
        };
        let after = after.and_then(|at| typed.get(at)).map(|(step, _)| name(step));
        whole &= form.judge::<()>(key, Err(say::too_early(after.as_deref(), from))).is_some();
    }
    let write =
        |(step, day): &(&Step, Option<_>)| Write { field: Field::WorkDone(step.work), value: day.map(Value::Day) };
    let mut writes: Vec<Write> = typed.iter().map(write).collect();
    let reached = form.text("reached").get_untracked();
    for milestone in Milestone::ALL {
        let said = reached.split(' ').any(|code| code == Code::code(milestone));
        let known = app.couple(id, |couple| couple.milestone_done(milestone)).flatten();
        let value = said.then(|| Value::Day(known.unwrap_or(today)));
        writes.push(Write { field: Field::MilestoneDone(milestone), value });
    }
    whole.then_some(writes)
}
