//! The working-day countdown: from the wedding back to the last day to order.

mod fields;

use crate::parts::el::{maybe, or_nothing};
use crate::parts::layout::{all, para, section};
use leptos::prelude::*;

use super::sheet::{self, Laid, Sheet, laid};
use super::unsettled::Unsettled;
use super::{Opened, Opener};
use crate::answers::dates::{Context, DatesAnswer, answer as compute};
use crate::app::address::{Address, Part};
use crate::app::clock;
use crate::app::route::go_instead;
use crate::app::show::Shown;
use crate::app::state::App;
use crate::book::asks::Ask;
use crate::book::checklist::Topic;
use crate::book::couple::Couple;
use crate::book::field::Field;
use crate::book::practice::Practice;
use crate::book::schedule::OwnOrders;
use crate::forms::dates as form_of;
use crate::parts::answer::answer;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::details::details;
use crate::parts::page::page;
use crate::parts::picture::picture;
use crate::parts::reasons::reasons;
use crate::pictures::ahead::calendar;
use crate::screens::shell::beside::beside;
use crate::screens::shell::show::showable;
use crate::words::{
    ahead as say_ahead, bench as say, book as say_book, complaint as say_complaint, dates as say_dates, format,
};

pub fn dates(opened: Opened) -> AnyView {
    let app = opened.app;
    let start = opened.known(|couple, practice| {
        form_of::start(couple.map(|(couple, _)| couple), practice, say::wedding_typed).into_pairs()
    });
    let form = opened.form(start);
    let held = Unsettled::by(&opened, |field, _| matches!(field, Field::Wedding | Field::Dates));
    let opener = opened.opener.map(|opener| opener.id);
    let own = own_orders(app);
    let read = Memo::new(move |_| {
        let today = app.today.get();
        form_of::read(&form.texts(), &app.practice(|practice| form_of::Known::of(practice, today)))
    });
    let found = Memo::new(move |_| {
        let typed = read.with(|(typed, _)| typed.clone());
        let (today, now) = (app.today.get(), clock::now().1);
        let record = opener.and_then(|id| app.with(|book| book.couples.get(&id).cloned()));
        let couple = record.as_deref().map(Couple);
        app.practice(|practice| own.with(|own| compute(typed, &Context { practice, own, couple, today, now })))
    });
    let sheet =
        Sheet::new(form, Signal::derive(move || read.with(|(_, complaints)| say_complaint::complaints(complaints))));
    let answered = found.with_untracked(|found| found.countdown.is_some());
    let there = Memo::new(move |_| found.with(|found| found.countdown.is_some()));
    let known = Memo::new(move |_| found.with(DatesAnswer::is_there));

    let strip = move || there.get().then(|| picture(Signal::derive(move || found.with(drawn))));
    let said = move || {
        let name = Signal::derive(move || found.with(say::dates_name).to_owned());
        known.get().then(|| {
            let answer = answer("order-by", name, Signal::derive(move || found.with(say::dates_headline)));
            showable(vec![maybe(strip), answer], move || found.with_untracked(shown))
        })
    };
    let head = all(vec![maybe(said), sheet::cautions(Signal::derive(move || found.with(say::dates_cautions)))]);
    let why = move || {
        known.get().then(|| {
            let days =
                Signal::derive(move || found.with(|it| it.ahead.as_ref().map(say_ahead::days).unwrap_or_default()));
            let closed = Signal::derive(move || {
                let closed = |it: &DatesAnswer| it.ahead.as_ref().map(|ahead| say_ahead::closed(ahead, &it.closures));
                found.with(closed).unwrap_or_default()
            });
            let keep = move || vec![reasons(days), details(say_ahead::CLOSED, reasons(closed))];
            all(vec![
                maybe(move || there.get().then(|| section(say::DAYS_TO_KEEP, keep()))),
                section(say::WHY, vec![reasons(Signal::derive(move || found.with(say::dates_reasons)))]),
                para("small", say_dates::HOW_COUNTED),
            ])
        })
    };
    // What they said of the day, and of when they need the bands, stands over what is worked out.
    let said_by_them = opener.map(|id| beside(id, None, &[Ask::Wedding, Ask::NeededBy]));
    let content = laid(Laid {
        first: all(vec![
            held.caution(),
            opened.missing(|couple, _| couple.wedding().is_none().then_some(Topic::Wedding).into_iter().collect()),
        ]),
        answered,
        answer: head,
        inputs: fields::fields(&opened, sheet, read, found),
        summary: Signal::derive(move || found.with(say::dates_summary)),
        reasons: maybe(why),
    });
    let page_head = match opened.read(|couple, _| say_book::names(couple)) {
        Some(names) => opened.head().subtitle(names),
        None => opened.head(),
    };
    let action = match opened.opener {
        Some(opener) => keep_for(&opened, opener, held, found),
        None => {
            let label = move || found.with(|found| found.order_by().map(say::see_order_by));
            sheet::step(answered, Signal::derive(label))
        }
    };
    page(page_head, all(vec![or_nothing(said_by_them), content]), Some(action))
}

/// How long the jeweller's own orders took; read from the whole book, and so not at every key.
fn own_orders(app: App) -> Memo<OwnOrders> {
    Memo::new(move |_| {
        app.with(|book| OwnOrders::of(book.couples.values().map(|record| Couple(record)), Practice(&book.practice)))
    })
}

/// Writes the settled dates back, and the wedding if another one was typed here.
fn keep_for(opened: &Opened, Opener { id, .. }: Opener, held: Unsettled, found: Memo<DatesAnswer>) -> AnyView {
    let app = opened.app;
    let wedding = opened.read(|couple, _| couple.wedding()).flatten();
    let order_by = Memo::new(move |_| found.with(DatesAnswer::order_by));
    let save = move || {
        let writes = found.with_untracked(|found| found.writes(wedding));
        if writes.is_empty() {
            return;
        }
        app.save(id, writes, say::dates_saved(), move || go_instead(&Address::Couple(id).to_string()));
    };
    let ask = Address::Part(id, Part::Wedding).to_string();
    let label = opened.read(|couple, _| say_book::do_next(couple, Topic::Wedding)).unwrap_or_default();
    maybe(move || match order_by.get() {
        Some(_) if held.is_so() => None,
        Some(day) => Some(button(Weight::Primary, say::use_order_by(&format::day_short(day)), save)),
        None => Some(link_button(Weight::Primary, label.clone(), ask.clone())),
    })
}

/// The calendar from today to the wedding.
fn drawn(found: &DatesAnswer) -> String {
    found.ahead.as_ref().map(|ahead| calendar(ahead).svg).unwrap_or_default()
}

fn shown(found: &DatesAnswer) -> Option<Shown> {
    say::dates_shown(found).map(|view| Shown { picture: drawn(found), ..view })
}
