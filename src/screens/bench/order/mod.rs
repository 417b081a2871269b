//! The order size: from one reading to the size to make, with its range and each reason.

mod answer;
mod couple;
mod fields;
mod reckon;

use crate::parts::el::{maybe, nothing};
use crate::parts::lay::{all, para, section};
use chrono::Days;
use leptos::prelude::*;

use super::held::Held;
use super::sheet::{self, Laid, Sheet, laid};
use super::{Opened, Whose};
use crate::app::address::Address;
use crate::app::form::{Form, Start};
use crate::app::route::go_instead;
use crate::app::state::App;
use crate::archive::code::Code;
use crate::book::change::Write;
use crate::book::checklist::Topic;
use crate::book::couple::Band;
use crate::book::field::{Field, Wish};
use crate::book::fitting;
use crate::book::value::{ReadingTaken, Value};
use crate::parts::answer::answer;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::choice::{Shape, choice, option};
use crate::parts::page::page;
use crate::parts::picture::picture;
use crate::parts::reasons::reasons;
use crate::screens::show::showable;
use crate::words::{bench as say, book as say_book, finger as say_finger, sizing::trimmed};
use reckon::Reckoned;

/// What the order size of any band rests on: the calculator as it starts for a couple.
pub struct Basis {
    start: Vec<Start>,
    known: (Vec<ReadingTaken>, Vec<Wish>),
}

pub fn basis(opened: &Opened) -> Basis {
    Basis { start: couple::start(opened), known: known(opened) }
}

/// The order size of another band, by its name; none where something is missing for it.
pub fn size_of(app: App, basis: &Basis, width: &str, band: &Band) -> Option<String> {
    let profile = band.profile?.code().to_owned();
    let no_beads = fitting::no_beads(band).map(reckon::no_beads_code).unwrap_or_default().to_owned();
    let relief = band.relief.map(trimmed).unwrap_or_default();
    let asked = [("width", width.to_owned()), ("profile", profile), ("relief", relief), ("no-beads", no_beads)];
    let form = Form::still(sheet::started_with(&basis.start, &asked));
    let (taken, wishes) = &basis.known;
    reckon::reckon(app, form, taken, wishes).made().map(|made| made.name)
}

/// The readings of the couple that count, and what is to be thought of about the finger.
fn known(opened: &Opened) -> (Vec<ReadingTaken>, Vec<Wish>) {
    opened.read(|couple, who| (couple::taken(couple, who), couple.wishes(who))).unwrap_or_default()
}

pub fn order(opened: Opened) -> AnyView {
    let app = opened.app;
    let known = StoredValue::new(known(&opened));
    let form = opened.form(couple::start(&opened));
    let held = Held::by(&opened, |field, who| *field == Field::OrderSize(who));
    let found = Memo::new(move |_| known.with_value(|(taken, wishes)| reckon::reckon(app, form, taken, wishes)));
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
    let answer = all(vec![maybe(head), sheet::cautions(with(answer::cautions)), again(&opened, found), worn()]);
    let why = all(vec![
        maybe(move || {
            there.get().then(|| {
                all(vec![
                    section(say::WHY, vec![reasons(Signal::derive(move || found.with(answer::reasons)))]),
                    para("small", Signal::derive(move || found.with(answer::wider))),
                    make(),
                    section(say::CUSTOMARY, vec![reasons(Signal::stored(answer::customary()))]),
                ])
            })
        }),
        para("small", say::CONFIRM),
    ]);
    let content = laid(Laid {
        first: all(vec![held.caution(), opened.missing(couple::lacking)]),
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
        Some(whose) => use_for(&opened, whose, held, found),
        None => {
            let label = Signal::derive(move || found.with(Reckoned::made).map(|made| say::see_why(&made.name)));
            sheet::step(answered, label)
        }
    };
    page(head, content, Some(action))
}

/// One tap puts another day on Today, where the calculation asks for it; none without a couple.
fn again(opened: &Opened, found: Memo<Reckoned>) -> AnyView {
    let (app, Some(Whose { id, who })) = (opened.app, opened.whose) else { return nothing() };
    let asked = Memo::new(move |_| found.with(Reckoned::asks_again));
    let press = move || {
        let Some(day) = app.today.get_untracked().checked_add_days(Days::new(7)) else { return };
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
fn use_for(opened: &Opened, Whose { id, who }: Whose, held: Held, found: Memo<Reckoned>) -> AnyView {
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
        (Some(_), _) if held.is_so() => None,
        (Some(made), _) => Some(button(Weight::Primary, say::use_size(&made.name, &name), save)),
        (None, Some((label, href))) => Some(link_button(Weight::Primary, label.clone(), href.clone())),
        (None, None) => None,
    })
}
