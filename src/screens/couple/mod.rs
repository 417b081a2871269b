//! A couple: the pocket checklist that fills itself, and what is known about the two.

mod appointments;
mod band;
mod finger;
mod notes;
mod people;
mod plan;
pub mod preparation_list;
mod read_back;
mod recorded;
mod remedy;
mod rings;
mod settled;
mod stage;
mod wedding;

use crate::parts::el::{live, maybe, nothing};
use crate::parts::layout::{column, para, row, section};
use leptos::prelude::*;

use crate::answers::checklist::{self, Row};
use crate::app::address::{Address, Part};
use crate::app::state::{App, app};
use crate::book::checklist::{Care, State, Topic};
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::book::verbs;
use crate::forms::couple::people as people_form;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::line::{Line, line, lines};
use crate::parts::page::{PageHeader, page};
use crate::screens::shell::couple_page::{CouplePage, couple_page, gone, not_here, open, page_of_wearer};
use crate::screens::shell::lower::lower;
use crate::trade::entry::Contact;
use crate::trade::measure::Length;
use crate::trade::stack::House;
use crate::trade::wearer::Wearer;
use crate::words::list::taking as say_list;
use crate::words::parts::Mark;
use crate::words::{
    agenda as say_agenda, book as say_book, copies as say_copies, phones as say_phones, remedy as say_remedy,
    same as say_same, screens as say,
};

pub fn couple(id: RecordId) -> AnyView {
    let app = app();
    let there = Memo::new(move |_| app.couple(id, |couple| !couple.is_blank()).unwrap_or(false));
    live(move || if there.get() { known(app, id) } else { gone(app, id) })
}

/// One part of a couple that is here.
pub fn part(id: RecordId, part: Part) -> AnyView {
    match part {
        Part::People => people::people(id),
        Part::Wedding => wedding::wedding(id),
        Part::Appointments => appointments::appointments(id),
        Part::Appointment(which) => appointments::appointment(id, which),
        Part::Recorded => recorded::recorded(id),
        Part::Stage => stage::stage(id),
        Part::Notes => notes::notes(id),
        Part::Finger(wearer) => finger::finger(id, wearer),
        Part::Fitted(wearer) => finger::fitted(id, wearer),
        Part::Rings(wearer) => rings::rings(id, wearer),
        Part::Ring(wearer, which) => rings::ring(id, wearer, which),
        Part::Band(wearer) => band::band(id, wearer),
        Part::Remedy(wearer) => remedy::remedy(id, wearer),
        Part::ReadBack => read_back::read_back(id),
        Part::Plan => plan::plan(id),
        Part::PreparationList => preparation_list::said(id),
        // In rooms of their own.
        Part::Specification
        | Part::Copy
        | Part::Differences
        | Part::Same
        | Part::History
        | Part::Erase
        | Part::Invite => not_here(),
    }
}

fn known(app: App, id: RecordId) -> AnyView {
    let read = move |of: fn(Couple<'_>) -> String| Signal::derive(move || app.couple(id, of).unwrap_or_default());
    let head = PageHeader::new(read(say_book::names))
        .subtitle(read(say_book::standing))
        .back(Address::Couples.to_string(), say::COUPLES);
    let next = Memo::new(move |_| app.couple(id, checklist::next).flatten());
    let order = Memo::new(move |_| plan::order_line(app, id));
    let checklist = Signal::derive(move || {
        let house = app.practice(|practice| practice.house());
        app.couple(id, |couple| checklist_lines(couple, order.get(), house)).unwrap_or_default()
    });
    let about = Signal::derive(move || app.couple(id, about_lines).unwrap_or_default());
    let stays = move || {
        let why = Memo::new(move |_| app.stays(id));
        why.get().map(|why| para("caution", say_book::stays(why)))
    };
    let differ = move || {
        let count = app.couple(id, |couple| couple.0.conflicts().len()).unwrap_or_default();
        (count > 0).then(|| {
            let row = line(say_phones::differences(count), "", Address::Part(id, Part::Differences).to_string());
            lines(Signal::stored(vec![row.mark(Mark::Care)]))
        })
    };
    let same = move || {
        let twice = Memo::new(move |_| !app.like(id, lower).is_empty());
        let joined = Memo::new(move |_| app.is_joined(id));
        let row = |words| lines(Signal::stored(vec![line(words, "", Address::Part(id, Part::Same).to_string())]));
        match (twice.get(), joined.get()) {
            (true, _) => Some(row(say_same::TWICE)),
            (false, true) => Some(row(say_same::JOINED)),
            (false, false) => None,
        }
    };
    let content = column(vec![
        maybe(differ),
        maybe(same),
        maybe(move || {
            app.couple(id, |couple| couple.put_away().is_some())
                .unwrap_or(false)
                .then(|| para("caution", say::IS_PUT_AWAY))
        }),
        maybe(stays),
        maybe(move || app.couple(id, reach_links)),
        section(say::CHECKLIST, vec![lines(checklist), maybe(move || settled::settled(app, id))]),
        section(say::ABOUT, vec![lines(about)]),
        section(say_copies::HAND_OVER, vec![lines(Signal::stored(hand_over_lines(id)))]),
        row(vec![
            maybe(move || {
                app.undoable(id).map(|stamp| button(Weight::Quiet, say::UNDO_LAST, move || app.undo(id, stamp)))
            }),
            live(move || put_away_button(app, id)),
        ]),
    ]);
    let action = move || match next.get() {
        Some(row) => {
            let label = app.couple(id, |couple| next_said(couple, row)).unwrap_or_default();
            link_button(Weight::Primary, label, leads_to(id, row))
        }
        None => para("settled", say::ALL_DONE),
    };
    page(head, content, Some(live(action)))
}

/// Where a line of the checklist leads: to what wants another look.
fn leads_to(id: RecordId, row: Row) -> String {
    match row.remedy_of {
        Some(who) => Address::Part(id, Part::Remedy(who)).to_string(),
        None => Address::of_topic(id, row.topic),
    }
}

fn next_said(couple: Couple<'_>, row: Row) -> String {
    match row.remedy_of {
        Some(who) => say_remedy::whose(&say_book::name_of(couple, who)),
        None => say_book::do_next(couple, row.topic),
    }
}

fn mark_of(row: Row) -> Mark {
    match row.state {
        State::Done => Mark::Done,
        State::Care(_) => Mark::Care,
        State::Open if row.is_next => Mark::Next,
        State::Open => Mark::Open,
    }
}

fn checklist_lines(couple: Couple<'_>, order: Option<(String, &'static str)>, house: House) -> Vec<Line> {
    let of_order = |row: Row, (said, late): (String, &'static str)| {
        let differ = row.state == State::Care(Care::Differs);
        let small = if differ { say_book::care(Care::Differs) } else { late };
        let mark = if small.is_empty() { Mark::Done } else { Mark::Care };
        let href = Address::Part(couple.0.id, Part::Plan).to_string();
        line(say_book::topic(couple, row.topic), said, href).mark(mark).small(small)
    };
    let line_of = |row: Row| {
        // Once it is ordered there is nothing to order by: how the order stands is what matters.
        if let Some(order) = order.clone().filter(|_| row.topic == Topic::Dates) {
            return of_order(row, order);
        }
        let next = if row.state == State::Open && row.is_next { say::NEXT } else { "" };
        let value = say_book::says(couple, row.topic, house).unwrap_or_else(|| next.to_owned());
        let small = match row.state {
            State::Care(care) => say_book::care(care),
            State::Open | State::Done => "",
        };
        let href = leads_to(couple.0.id, row);
        line(say_book::topic(couple, row.topic), value, href).mark(mark_of(row)).small(small)
    };
    checklist::rows(couple).into_iter().map(line_of).collect()
}

fn about_lines(couple: Couple<'_>) -> Vec<Line> {
    let to = |part| Address::Part(couple.0.id, part).to_string();
    let next = couple.appointments().into_iter().find(|it| it.outcome.is_none());
    let appointment = next.map_or_else(|| say::NONE_YET.to_owned(), |it| say_book::when(it.when));
    let recorded =
        couple.recorded().map_or_else(|| say::NOT_ASKED_YET.to_owned(), |it| say::recorded(it.agrees, it.asked));
    let mut all = vec![
        line(say::PEOPLE, String::new(), to(Part::People)),
        line(say::APPOINTMENTS, appointment, to(Part::Appointments)),
        line(say::RECORDED, recorded, to(Part::Recorded)),
        line(say_list::SAID, say_list::lists(&couple.said()), to(Part::PreparationList)),
        line(say::STAGE, say_book::stage(couple.stage()), to(Part::Stage)),
        line(say_agenda::PLAN, "", to(Part::Plan)).small(say_agenda::PLAN_SMALL),
    ];
    for who in Wearer::BOTH {
        let chosen = couple.remedy(who);
        if chosen.is_some() || couple.stack(who).is_some_and(|seen| seen.off > Length::ZERO) {
            let said = chosen.map_or_else(|| say::NOT_SETTLED.to_owned(), |it| say_remedy::way(it.way).to_owned());
            all.push(line(say_remedy::whose(&say_book::name_of(couple, who)), said, to(Part::Remedy(who))));
        }
    }
    all
}

fn hand_over_lines(id: RecordId) -> Vec<Line> {
    let to = |part| Address::Part(id, part).to_string();
    vec![
        line(say_copies::SPECIFICATION, "", to(Part::Specification)).small(say_copies::SPECIFICATION_SMALL),
        line(say_copies::COPY_ONE, "", to(Part::Copy)).small(say_copies::COPY_ONE_SMALL),
        line(say_phones::HISTORY, "", to(Part::History)).small(say_phones::HISTORY_SMALL),
        line(say_copies::ERASE, "", to(Part::Erase)).small(say_copies::ERASE_SMALL),
    ]
}

/// Tap to call or write.
fn reach_links(couple: Couple<'_>) -> AnyView {
    let links: Vec<AnyView> = couple
        .reach()
        .into_iter()
        .filter_map(|(_, text)| {
            let contact = people_form::contact(text)?;
            let (verb, href) = match &contact {
                Contact::Phone(_) => (say::CALL, format!("tel:{}", contact.dials()?)),
                Contact::Email(address) => {
                    (say::WRITE, format!("mailto:{}", String::from(js_sys::encode_uri_component(address))))
                }
            };
            Some(link_button(Weight::Quiet, format!("{verb} {text}"), href))
        })
        .collect();
    if links.is_empty() { nothing() } else { row(links) }
}

fn put_away_button(app: App, id: RecordId) -> AnyView {
    let names = app.couple(id, say_book::names).unwrap_or_default();
    if app.couple(id, |couple| couple.put_away().is_some()).unwrap_or(false) {
        button(Weight::Quiet, say::BRING_BACK, move || {
            app.save(id, vec![verbs::put_away(None)], say::was_brought_back(&names), || ());
        })
    } else {
        button(Weight::Quiet, say::PUT_AWAY, move || {
            let away = verbs::put_away(Some(app.today.get_untracked()));
            app.save(id, vec![away], say::was_put_away(&names), || ());
        })
    }
}
