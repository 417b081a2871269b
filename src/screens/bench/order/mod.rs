//! The order size: from one reading to the size to make, with its range and each reason.

mod answer;
mod couple;
mod fields;
mod reckon;

use crate::parts::el::maybe;
use crate::parts::lay::{all, para, section};
use leptos::prelude::*;

use super::sheet::{self, Laid, Sheet, laid};
use super::{Opened, Whose};
use crate::app::address::Address;
use crate::app::route::go_instead;
use crate::book::change::Write;
use crate::book::checklist::Topic;
use crate::book::field::Field;
use crate::book::value::Value;
use crate::parts::answer::answer;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::choice::{Shape, choice, option};
use crate::parts::page::page;
use crate::parts::picture::picture;
use crate::parts::reasons::reasons;
use crate::screens::show::showable;
use crate::words::{bench as say, book as say_book};
use reckon::Reckoned;

pub fn order(opened: Opened) -> AnyView {
    let app = opened.app;
    let taken = StoredValue::new(opened.read(couple::taken).flatten());
    let form = opened.form(couple::start(&opened));
    let found = Memo::new(move |_| taken.with_value(|taken| reckon::reckon(app, form, taken.as_ref())));
    let sheet = Sheet::new(form, Signal::derive(move || found.with(|found| found.complaints.clone())));
    let answered = found.with_untracked(|found| found.order.is_some());
    let there = Memo::new(move |_| found.with(|found| found.order.is_some()));
    let with = move |of: fn(&Reckoned) -> Vec<String>| Signal::derive(move || found.with(of));

    let head = move || {
        there.get().then(|| {
            let svg = Signal::derive(move || found.with(|found| answer::drawn(found).unwrap_or_default()));
            let said = Signal::derive(move || found.with(answer::said));
            let shown = move || found.with_untracked(answer::shown);
            showable(vec![picture(svg), answer("order-size", say::ORDER_SIZE, said)], shown)
        })
    };
    let worn = move || {
        let differ = Memo::new(move |_| found.with(Reckoned::worn_choice));
        maybe(move || {
            differ.get().map(|(alone, stack)| {
                let options = vec![
                    option("stack", say::size_worn_in_stack(&stack)),
                    option("alone", say::size_worn_alone(&alone)),
                ];
                choice("worn", say::WHICH_WORN, Shape::Segments, options, form.text("worn"))
            })
        })
    };
    let make = move || {
        let offered = Memo::new(move |_| found.with(Reckoned::offered));
        maybe(move || {
            let offered = offered.get();
            (!offered.is_empty()).then(|| {
                let options = offered.into_iter().map(|(code, name)| option(code, name)).collect();
                choice("make", say::MAKE, Shape::Chips, options, form.text("make"))
            })
        })
    };
    let answer = all(vec![maybe(head), sheet::cautions(with(answer::cautions)), worn()]);
    let why = all(vec![
        maybe(move || {
            there.get().then(|| {
                all(vec![
                    section(say::WHY, vec![reasons(Signal::derive(move || found.with(answer::reasons)))]),
                    make(),
                    section(say::CUSTOMARY, vec![reasons(Signal::stored(answer::customary()))]),
                ])
            })
        }),
        para("small", say::CONFIRM),
    ]);
    let content = laid(Laid {
        first: opened.missing(couple::lacking),
        answered,
        answer,
        inputs: fields::fields(&opened, sheet, found),
        summary: Signal::derive(move || found.with(answer::summary)),
        reasons: why,
    });
    let head = match opened.read(say::order_subtitle) {
        Some(subtitle) => opened.head().subtitle(subtitle),
        None => opened.head(),
    };
    let action = match opened.whose {
        Some(whose) => use_for(&opened, whose, found),
        None => {
            let label = Signal::derive(move || found.with(Reckoned::made).map(|made| say::see_why(&made.name)));
            sheet::step(answered, label)
        }
    };
    page(head, content, Some(action))
}

/// Writes the answer back; while there is none, leads to the first thing that is missing for it.
fn use_for(opened: &Opened, Whose { id, who }: Whose, found: Memo<Reckoned>) -> AnyView {
    let app = opened.app;
    let name = opened.read(say_book::name_of).unwrap_or_default();
    let made = Memo::new(move |_| found.with(Reckoned::made));
    let save = move || {
        let Some(size) = found.with_untracked(|found| found.settled(app.today.get_untracked())) else { return };
        let writes = vec![Write::set(Field::OrderSize(who), Value::OrderSize(size))];
        app.save(id, writes, say::size_saved(), move || go_instead(&Address::Couple(id).to_string()));
    };
    let first_missing = opened.read(couple::first_missing).flatten();
    let measure = first_missing.map(|topic: Topic| {
        let label = opened.read(|couple, _| say_book::do_next(couple, topic)).unwrap_or_default();
        (label, Address::of_topic(id, topic))
    });
    maybe(move || match (made.get(), &measure) {
        (Some(made), _) => Some(button(Weight::Primary, say::use_size(&made.name, &name), save)),
        (None, Some((label, href))) => Some(link_button(Weight::Primary, label.clone(), href.clone())),
        (None, None) => None,
    })
}
