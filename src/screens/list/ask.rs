//! One question of the list: every kind of answer is drawn, and looked at, by one function.

use std::cell::RefCell;

use leptos::prelude::*;

use super::measuring::measuring;
use crate::app::list as ours;
use crate::app::state::app;
use crate::archive::list::write_answer_key;
use crate::book::asks::{AnswerKey, Ask, Kind, Of, Question, RANGE, RINGS_MOST, ROWS, SOME};
use crate::forms::list::{self as form_of, NotUnderstood};
use crate::forms::understood::wedding;
use crate::parts::button::{Weight, button};
use crate::parts::choice::{Shape, choice_with, option};
use crate::parts::el::{el, maybe, nothing};
use crate::parts::field::{Field, Keyboard};
use crate::parts::layout::{block, para, section};
use crate::trade::dates::wedding::Wedding;
use crate::trade::wearer::Wearer;
use crate::words::dates::{self as say_dates, Asked};
use crate::words::list::{asked as say, guide, pages};
use crate::words::{format, screens};

/// A question with its fields: once for both, or once for each of the two.
pub fn question(question: Question) -> AnyView {
    let asks = || ROWS.iter().filter(move |row| row.question == question);
    let said = ours::now();
    let mut views: Vec<AnyView> = match question {
        Question::Budget => budget(),
        _ => asks().filter(|row| row.of == Of::Both).map(|row| field(AnswerKey::both(row.ask))).collect(),
    };
    if asks().any(|row| row.of != Of::Both) {
        for who in Wearer::BOTH {
            let inside = match question {
                Question::Rings => rings(who, said.rings(who)),
                _ => asks().map(|row| field(AnswerKey::of(row.ask, who))).collect(),
            };
            // Their names are typed here: until then they have none.
            let named = question != Question::Names;
            let heading = if named { pages::of(&said, who) } else { pages::nameless(who).to_owned() };
            views.push(section(heading, inside));
        }
    }
    if question == Question::Nickel {
        views.push(para("small", guide::NICKEL));
    }
    block("list-question", views)
}

/// What they would like to spend; the figures only where they want to give any.
fn budget() -> Vec<AnyView> {
    let answer = ours::text(AnswerKey::both(Ask::Budget));
    let in_figures = Memo::new(move |_| answer.with(|text| text == RANGE));
    let figures = move || {
        let figures = [Ask::BudgetLeast, Ask::BudgetMost].map(|ask| field(AnswerKey::both(ask)));
        in_figures.get().then(|| block("list-ring", figures.into()))
    };
    vec![field_of(AnswerKey::both(Ask::Budget), answer), maybe(figures)]
}

/// Whether one of the two owns rings, and if so which: those of which something was said, or one to begin with, and
/// more as they are asked for.
fn rings(who: Wearer, known: u8) -> Vec<AnyView> {
    let owns = AnswerKey::of(Ask::OwnsRings, who);
    let answer = ours::text(owns);
    let shown = RwSignal::new(known.max(1));
    let count = Memo::new(move |_| {
        let some = answer.with(|text| if text.is_empty() { known > 0 } else { text == SOME });
        if some { shown.get() } else { 0 }
    });
    let ring = move |number: u8| {
        let there = Memo::new(move |_| count.get() >= number);
        maybe(move || {
            there.get().then(|| {
                let mut views = vec![el("h3").text(pages::ring(number)).view()];
                for row in ROWS.iter().filter(|row| row.of == Of::Ring) {
                    views.push(field(AnswerKey::ring(row.ask, who, number)));
                    // How it is done stands under the field that asks for it.
                    if row.ask == Ask::RingWidth && number == 1 {
                        views.push(measuring());
                    }
                }
                block("list-ring", views)
            })
        })
    };
    let mut views = vec![field_of(owns, answer)];
    views.extend((1..=RINGS_MOST).map(ring));
    views.push(maybe(move || {
        let more = (1..RINGS_MOST).contains(&count.get());
        more.then(|| button(Weight::Quiet, pages::ADD_RING, move || shown.update(|shown| *shown += 1)))
    }));
    views
}

/// The field of one answer.
fn field(spot: AnswerKey) -> AnyView {
    field_of(spot, ours::text(spot))
}

/// The field of an answer whose text somebody else follows too.
pub fn field_of(spot: AnswerKey, text: RwSignal<String>) -> AnyView {
    let (key, ask) = (key_of(spot), spot.ask);
    // What was explained to the one need not be explained to the other.
    let help = say::help(ask).filter(|_| spot.who != Some(Wearer::Second) && spot.ring.is_none_or(|ring| ring == 1));
    if let Kind::Choice(offered) = ask.row().kind {
        let mut options: Vec<_> = offered.iter().map(|code| option(*code, say::answer(ask, code))).collect();
        // Whatever was chosen can be left open again.
        if !offered.contains(&"unsure") {
            options.push(option(String::new(), pages::LEAVE_OPEN));
        }
        return choice_with(key, say::label(ask).into(), help.map(Into::into), Shape::Chips, options, text);
    }
    let complaint = RwSignal::new(None);
    let in_words = RwSignal::new(false);
    let look = move || {
        complaint.set(text.with_untracked(|text| wrong(ask, text)));
        in_words.set(text.with_untracked(|text| form_of::is_no_width(ask, text)));
    };
    let field = Field::new(key, say::label(ask), text).error(complaint).on_leave(look);
    let field = match (ask.row().kind, help) {
        (Kind::Wedding, _) => field.hint(understood(text)),
        (Kind::Width, help) => {
            let help = help.unwrap_or_default();
            field.hint(Signal::derive(move || if in_words.get() { say::KEPT_AS_WRITTEN } else { help }.to_owned()))
        }
        (_, Some(help)) => field.hint(help),
        (_, None) => field,
    };
    match ask.row().kind {
        Kind::Width => field.unit("mm").keyboard(Keyboard::Decimal).line(),
        Kind::Note => field.lines(),
        Kind::Name => field.autocomplete(if spot.who == Some(Wearer::First) { "given-name" } else { "off" }).line(),
        Kind::Line | Kind::Wedding => field.line(),
        Kind::Choice(_) => nothing(),
    }
}

/// What is wrong with what was typed, if anything is. It is kept as it is all the same.
fn wrong(ask: Ask, text: &str) -> Option<String> {
    Some(match form_of::not_understood(ask, text, app().today.get_untracked())? {
        NotUnderstood::Wedding(error) => say_dates::date_entry(error, Asked::Wedding),
        NotUnderstood::Answer(why) => say::error(ask, why),
    })
}

/// What a date is understood as, under its field.
fn understood(text: RwSignal<String>) -> Signal<String> {
    let app = app();
    Signal::derive(move || {
        let today = app.today.get();
        match text.with(|text| wedding(text, today)) {
            Some(Wedding::Day(day)) => format!("{} · {}", format::day(day), screens::from_today(day, today)),
            Some(wedding) => say_dates::wedding(wedding),
            None => say::help(Ask::Wedding).unwrap_or_default().to_owned(),
        }
    })
}

thread_local! {
    static KEYS: RefCell<Vec<(AnswerKey, &'static str)>> = const { RefCell::new(Vec::new()) };
}

/// The name of the field of an answer, made once: there is only so much that is asked.
fn key_of(spot: AnswerKey) -> &'static str {
    KEYS.with_borrow_mut(|keys| {
        if let Some((_, key)) = keys.iter().find(|(known, _)| *known == spot) {
            return *key;
        }
        let key: &'static str = Box::leak(write_answer_key(spot).replace('.', "-").into_boxed_str());
        keys.push((spot, key));
        key
    })
}
