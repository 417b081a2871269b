//! The order as it goes, the days to keep, and a file of them for a calendar.

use crate::parts::el::or_nothing;
use crate::parts::layout::{all, block, para, section};
use leptos::prelude::*;

use super::{CouplePage, couple_page, open};
use crate::answers::plan as answers;
use crate::app::address::{Address, Part};
use crate::app::clock;
use crate::app::form::Form;
use crate::app::state::{App, app};
use crate::archive::code::Code;
use crate::book::checklist::Topic;
use crate::book::couple::Couple;
use crate::book::field::Stage;
use crate::book::id::RecordId;
use crate::book::practice::Practice;
use crate::book::progress::Ahead;
use crate::book::schedule::OwnOrders;
use crate::forms::couple::plan as form_of;
use crate::parts::button::{Weight, link_button};
use crate::parts::choice::option;
use crate::parts::details::details;
use crate::parts::picture::picture;
use crate::parts::reasons::reasons;
use crate::pictures::ahead as drawn;
use crate::screens::shell::calendar_file::{Of, into_calendar};
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::screens::shell::show::showable;
use crate::trade::dates::milestones::Milestone;
use crate::words::answer::Reason;
use crate::words::{agenda as say, ahead as say_ahead, dates as say_dates, format, screens as say_frame};

pub fn plan(id: RecordId) -> AnyView {
    let app = app();
    let CouplePage { head, leave } = couple_page(id, say::PLAN, Part::Plan);
    let steps = with(app, id, |couple, practice, _, _| form_of::fields(couple, practice)).unwrap_or_default();
    let page = open(id, format!("plan.{id}"), leave, |couple| form_of::start(couple, &steps, format::day));
    let form = page.form;
    let kept = StoredValue::new(steps.clone());
    let save = move || {
        let today = app.today.get_untracked();
        let ordered = app.couple(id, |couple| couple.reached(Stage::Ordered)).flatten();
        let read = page.read(|texts| kept.with_value(|steps| form_of::read(texts, steps, ordered, today)));
        let Some(typed) = read else { return };
        let writes = app.couple(id, |couple| typed.writes(couple, today)).unwrap_or_default();
        page.save(writes, say_frame::saved(say::PLAN));
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

fn work(app: App, id: RecordId, form: Form, steps: Vec<form_of::Field>) -> AnyView {
    if steps.is_empty() {
        return para("small", say::NOT_ORDERED);
    }
    let field = |(key, step)| fields::day(form, key, &say::finished(&say::step_name(&step)));
    let entered = steps.into_iter().map(field).collect();
    let under_way = with(app, id, answers::stands).and_then(|it| it.under_way);
    let said = under_way.map(|it| reasons(Signal::stored(say::forecast(&it))));
    let counted = link_button(Weight::Quiet, say::TO_COUNTED, Address::of_topic(id, Topic::Dates));
    all(vec![para("small", say::WORK_WHY), block("ledger", entered), or_nothing(said), counted])
}

/// What the checklist says of the dates of an order, and what about them wants another look. None before it is placed.
/// It is worked out anew when this couple changes, not when any other does.
pub(super) fn order_line(app: App, id: RecordId) -> Option<(String, &'static str)> {
    app.today.track();
    let stage = app.couple(id, |couple| couple.stage())?;
    match stage {
        Stage::Ordered => {
            let stands = with(app, id, answers::stands)?;
            let said = stands.under_way.map(|it| say::stands(&it)).unwrap_or_default();
            Some((said, if stands.is_late { say::RUNS_LATE } else { "" }))
        }
        Stage::Collected => {
            let day = app.couple(id, |couple| couple.reached(stage)).flatten();
            Some((day.map(say::collected).unwrap_or_default(), ""))
        }
        Stage::Enquiry | Stage::Booked | Stage::Lost => None,
    }
}

/// The calendar from today to the wedding, the list that says the same, and what of it is reached.
fn days_to_keep(app: App, id: RecordId, form: Form) -> AnyView {
    let found = Memo::new(move |_| {
        // A page that stays open over midnight counts from the new day.
        app.today.track();
        let now = clock::now().1;
        with(app, id, |couple, practice, own, today| answers::ahead(couple, practice, own, today, now)).flatten()
    });
    let Some(milestones) = found.with_untracked(|found| Some(found.as_ref()?.plan.milestones.clone())) else {
        return para("small", say::NO_PLAN);
    };
    let names = app.practice(answers::closure_names);
    let of = move |read: fn(&Ahead) -> Vec<Reason>| found.with(|it| it.as_ref().map(read).unwrap_or_default());
    let drawn =
        Signal::derive(move || found.with(|it| it.as_ref().map(|it| drawn::calendar(it).svg).unwrap_or_default()));
    let closed = move || found.with(|it| it.as_ref().map(|it| say_ahead::closed(it, &names)).unwrap_or_default());
    let options = milestones.iter().filter(|due| due.what != Milestone::Order);
    let options = options.map(|due| option(Code::code(due.what), say_dates::milestone(due.what))).collect();
    all(vec![
        showable(vec![picture(drawn)], move || found.with_untracked(|it| it.as_ref().map(drawn::shown))),
        reasons(Signal::derive(move || of(say_ahead::days))),
        details(say_ahead::CLOSED, reasons(Signal::derive(closed))),
        fields::several_rows(form, form_of::REACHED, say::REACHED, options),
    ])
}
