//! The order size: from one reading to the size to make, with its range and each reason.

mod fields;

use crate::parts::el::{maybe, nothing};
use crate::parts::layout::{all, para, section};
use leptos::prelude::*;

use super::sheet::{self, Laid, Sheet, laid};
use super::unsettled::Unsettled;
use super::{Opened, Opener};
use crate::answers::order::{OrderAnswer, answer as compute, lacking};
use crate::app::address::Address;
use crate::app::route::go_instead;
use crate::app::show::Shown;
use crate::book::change::Write;
use crate::book::checklist::Topic;
use crate::book::field::{BandField, Field};
use crate::book::value::Value;
use crate::forms::order;
use crate::parts::answer::answer;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::choice::{Shape, choice, option};
use crate::parts::page::page;
use crate::parts::picture::picture;
use crate::parts::reasons::reasons;
use crate::pictures::order_size::order_size;
use crate::screens::shell::show::showable;
use crate::words::{
    bench as say, book as say_book, complaint as say_complaint, finger as say_finger, sizing as say_sizing,
};

pub fn order(opened: Opened) -> AnyView {
    let today = opened.app.today.get_untracked();
    let known = opened.known(|couple, practice| order::Known::of(couple, practice, today));
    let known = StoredValue::new(known);
    let wishes = StoredValue::new(opened.read(|couple, who| couple.wishes(who)).unwrap_or_default());
    let form = opened.form(opened.known(order::start).into_pairs());
    let held = Unsettled::by(&opened, |field, who| {
        let of_band = |part| *field == Field::Band(who, part);
        *field == Field::OrderSize(who)
            || [BandField::Width, BandField::Profile, BandField::Relief].map(of_band).contains(&true)
    });
    let read = Memo::new(move |_| known.with_value(|known| order::read(&form.texts(), known)));
    let found = Memo::new(move |_| {
        let typed = read.with(|(typed, _)| typed.clone());
        known.with_value(|it| wishes.with_value(|wishes| compute(typed, it.rules, &it.gauges, wishes)))
    });
    let sheet =
        Sheet::new(form, Signal::derive(move || read.with(|(_, complaints)| say_complaint::complaints(complaints))));
    let answered = found.with_untracked(|found| found.sized.is_some());
    let there = Memo::new(move |_| found.with(|found| found.sized.is_some()));
    let with = move |of: fn(&OrderAnswer) -> Vec<String>| Signal::derive(move || found.with(of));

    let head = move || {
        there.get().then(|| {
            let svg = Signal::derive(move || found.with(drawn));
            let said = Signal::derive(move || found.with(say::order_headline));
            let shown = move || found.with_untracked(shown);
            showable(vec![picture(svg), answer("order-size", say::ORDER_SIZE, said)], shown)
        })
    };
    let worn = move || {
        let differ = Memo::new(move |_| found.with(|found| found.sized.as_ref().and_then(say::order_worn)));
        maybe(move || {
            differ.get().map(|(stack, alone)| {
                let options = vec![option(order::WORN_STACK, stack), option(order::WORN_ALONE, alone)];
                choice(order::WORN.name(), say::WHICH_WORN, Shape::Segments, options, form.text(order::WORN))
            })
        })
    };
    let make = move || {
        let offered = Memo::new(move |_| found.with(offered));
        maybe(move || {
            let offered = offered.get();
            (!offered.is_empty()).then(|| {
                let options = offered.into_iter().map(|(code, name)| option(code, name)).collect();
                choice(order::MAKE.name(), say::MAKE, Shape::Chips, options, form.text(order::MAKE))
            })
        })
    };
    let answer = all(vec![maybe(head), sheet::cautions(with(say::order_cautions)), again(&opened, found), worn()]);
    let why = all(vec![
        maybe(move || {
            there.get().then(|| {
                all(vec![
                    section(say::WHY, vec![reasons(Signal::derive(move || found.with(say::order_reasons)))]),
                    para("small", Signal::derive(move || found.with(say::order_wider))),
                    make(),
                    section(say::CUSTOMARY, vec![reasons(Signal::stored(say::customary_reasons()))]),
                ])
            })
        }),
        para("small", say::CONFIRM),
    ]);
    let content = laid(Laid {
        first: all(vec![held.caution(), opened.missing(lacking)]),
        answered,
        answer,
        inputs: fields::fields(&opened, sheet, found),
        summary: Signal::derive(move || found.with(say::order_summary)),
        reasons: why,
    });
    let head = match opened.read(say::order_subtitle) {
        Some(subtitle) => opened.head().subtitle(subtitle),
        None => opened.head(),
    };
    let action = match opened.opener {
        Some(opener) => use_for(&opened, opener, held, found),
        None => {
            let label = Signal::derive(move || {
                found.with(OrderAnswer::made).map(|made| say::see_why(&say::size_made(made.size)))
            });
            sheet::step(answered, label)
        }
    };
    page(head, content, Some(action))
}

/// One tap puts another day on Today, where the calculation asks for it; none without a couple.
fn again(opened: &Opened, found: Memo<OrderAnswer>) -> AnyView {
    let (app, Some(Opener { id, who })) = (opened.app, opened.opener) else { return nothing() };
    let asked = Memo::new(move |_| found.with(|found| found.asks_again));
    let press = move || {
        let today = app.today.get_untracked();
        let Some(day) = found.with_untracked(|found| found.measure_again_on(today)) else { return };
        app.save(id, vec![Write::set(Field::MeasureAgain(who), Value::Day(day))], say_finger::is_on_today(day), || ());
    };
    maybe(move || {
        let on = app.couple(id, |couple| couple.measure_again(who)).flatten();
        asked.get().then(|| match on {
            Some(day) => para("small", say_finger::is_on_today(day)),
            None => button(Weight::Quiet, say_finger::AGAIN_IN_A_WEEK, press),
        })
    })
}

/// Writes the answer back; while there is none, leads to the first thing that is missing for it.
fn use_for(opened: &Opened, Opener { id, who }: Opener, held: Unsettled, found: Memo<OrderAnswer>) -> AnyView {
    let app = opened.app;
    let name = opened.read(say_book::name_of).unwrap_or_default();
    let made = Memo::new(move |_| found.with(OrderAnswer::made));
    let band = StoredValue::new(opened.read(|couple, who| couple.band(who)).unwrap_or_default());
    let save = move || {
        let today = app.today.get_untracked();
        let writes = found.with_untracked(|found| band.with_value(|band| found.writes(who, band, today)));
        if writes.is_empty() {
            return;
        }
        let saved = say::size_saved(writes.len() > 1);
        app.save(id, writes, saved, move || go_instead(&Address::Couple(id).to_string()));
    };
    let first_missing = opened.read(lacking).and_then(|all| all.into_iter().next());
    let measure = first_missing.map(|topic: Topic| {
        let label = opened.read(|couple, _| say_book::do_next(couple, topic)).unwrap_or_default();
        (label, Address::of_topic(id, topic))
    });
    maybe(move || match (made.get(), &measure) {
        (Some(_), _) if held.is_so() => None,
        (Some(made), _) => Some(button(Weight::Primary, say::use_size(&say::size_made(made.size), &name), save)),
        (None, Some((label, href))) => Some(link_button(Weight::Primary, label.clone(), href.clone())),
        (None, None) => None,
    })
}

fn drawn(found: &OrderAnswer) -> String {
    order_size(found).map(|picture| picture.svg).unwrap_or_default()
}

fn shown(found: &OrderAnswer) -> Option<Shown> {
    say::order_shown(found).map(|view| Shown { picture: drawn(found), ..view })
}

/// The sizes that may be made, each with its word; the worked-out one has none.
fn offered(found: &OrderAnswer) -> Vec<(String, String)> {
    let Some(sized) = &found.sized else { return Vec::new() };
    let word = |size| if sized.worked_out == Some(size) { String::new() } else { order::size_code(size) };
    sized.choices.iter().map(|size| (word(*size), say_sizing::size_name(*size))).collect()
}
