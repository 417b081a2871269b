//! The working-day countdown: from the wedding back to the last day to order.

mod answer;
mod fields;
mod reckon;

use crate::parts::el::{maybe, or_nothing};
use crate::parts::lay::{all, para, section};
use leptos::prelude::*;

use super::held::Held;
use super::sheet::{self, Laid, Sheet, laid};
use super::{Opened, Whose};
use crate::app::address::{Address, Part};
use crate::app::route::go_instead;
use crate::book::asks::Ask;
use crate::book::change::Write;
use crate::book::checklist::Topic;
use crate::book::field::Field;
use crate::book::value::Value;
use crate::parts::answer::answer;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::details::details;
use crate::parts::page::page;
use crate::parts::picture::picture;
use crate::parts::reasons::reasons;
use crate::screens::couple::said::beside;
use crate::screens::show::showable;
use crate::words::{ahead as say_ahead, bench as say, book as say_book, dates as say_dates, format};
use reckon::Reckoned;

pub fn dates(opened: Opened) -> AnyView {
    let app = opened.app;
    let form = opened.form(fields::start(&opened));
    let held = Held::by(&opened, |field, _| matches!(field, Field::Wedding | Field::Dates));
    let whose = opened.whose.map(|whose| whose.id);
    let own = reckon::own_orders(app);
    let found = Memo::new(move |_| reckon::reckon(app, form, whose, own));
    let sheet = Sheet::new(form, Signal::derive(move || found.with(|found| found.complaints.clone())));
    let answered = found.with_untracked(|found| found.countdown().is_some());
    let there = Memo::new(move |_| found.with(|found| found.countdown().is_some()));
    let only_finish = Memo::new(move |_| found.with(|found| found.countdown().is_none() && found.if_today.is_some()));

    let strip =
        move || there.get().then(|| picture(Signal::derive(move || found.with(answer::drawn).unwrap_or_default())));
    let known = Memo::new(move |_| there.get() || only_finish.get());
    let said = move || {
        let name = Signal::derive(move || if there.get() { say::ORDER_BY } else { say::IF_ORDERED_TODAY }.to_owned());
        known.get().then(|| {
            let answer = answer("order-by", name, Signal::derive(move || found.with(answer::said)));
            showable(vec![maybe(strip), answer], move || found.with_untracked(answer::shown))
        })
    };
    let head = all(vec![maybe(said), sheet::cautions(Signal::derive(move || found.with(answer::cautions)))]);
    let why = move || {
        (there.get() || only_finish.get()).then(|| {
            let days = Signal::derive(move || found.with(answer::days));
            let closed = Signal::derive(move || found.with(answer::closed));
            let keep = move || vec![reasons(days), details(say_ahead::CLOSED, reasons(closed))];
            all(vec![
                maybe(move || there.get().then(|| section(say::DAYS_TO_KEEP, keep()))),
                section(say::WHY, vec![reasons(Signal::derive(move || found.with(answer::reasons)))]),
                para("small", say_dates::HOW_COUNTED),
            ])
        })
    };
    // What they said of the day, and of when they need the bands, stands over what is worked out.
    let said_by_them = whose.map(|id| beside(id, None, &[Ask::Wedding, Ask::NeededBy]));
    let content = laid(Laid {
        first: all(vec![
            held.caution(),
            opened.missing(|couple, _| couple.wedding().is_none().then_some(Topic::Wedding).into_iter().collect()),
        ]),
        answered,
        answer: head,
        inputs: fields::fields(&opened, sheet, found),
        summary: Signal::derive(move || found.with(answer::summary)),
        reasons: maybe(why),
    });
    let page_head = match opened.read(|couple, _| say_book::names(couple)) {
        Some(names) => opened.head().subtitle(names),
        None => opened.head(),
    };
    let action = match opened.whose {
        Some(whose) => keep_for(&opened, whose, held, found),
        None => {
            let label = move || found.with(|found| found.countdown().map(|it| say::see_order_by(it.plan.order_by)));
            sheet::step(answered, Signal::derive(label))
        }
    };
    page(page_head, all(vec![or_nothing(said_by_them), content]), Some(action))
}

/// Writes the settled dates back, and the wedding if another one was typed here.
fn keep_for(opened: &Opened, Whose { id, .. }: Whose, held: Held, found: Memo<Reckoned>) -> AnyView {
    let app = opened.app;
    let wedding = opened.read(|couple, _| couple.wedding()).flatten();
    let order_by = Memo::new(move |_| found.with(|found| found.countdown().map(|it| it.plan.order_by)));
    let save = move || {
        let usual = untrack(|| app.practice(|practice| practice.confidence()));
        let settled = found.with_untracked(|found| found.settled(app.today.get_untracked(), usual));
        let Some(settled) = settled else { return };
        let typed = found.with_untracked(|found| found.wedding);
        let mut writes = Vec::new();
        if typed != wedding {
            writes.extend(typed.map(|typed| Write::set(Field::Wedding, Value::Wedding(typed))));
        }
        writes.push(Write::set(Field::Dates, Value::Dates(settled)));
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
