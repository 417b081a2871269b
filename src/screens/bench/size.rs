//! The size converter: one size in every system at once, and never one of several readings in silence.

use crate::parts::el::{el, maybe};
use crate::parts::lay::{all, column, para, section};
use leptos::prelude::*;

use super::sheet::{Complaints, Sheet, judge};
use super::{Opened, Whose};
use crate::answers::Tone;
use crate::app::address::{Address, Calculator, with_query};
use crate::app::form::Form;
use crate::app::show::Shown;
use crate::app::state::App;
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::forms::SizeTyped;
use crate::parts::answer::answer;
use crate::parts::button::{Weight, link_button};
use crate::parts::details::details;
use crate::parts::page::page;
use crate::parts::picture::picture;
use crate::parts::reasons::reasons;
use crate::pictures::rules::{self, Row, Rules};
use crate::screens::fields;
use crate::screens::show::showable;
use crate::trade::arrange::in_order;
use crate::trade::measure::Circumference;
use crate::trade::sizing::{self, Conversion, Size, Stated, Step, System};
use crate::trade::wearer::Wearer;
use crate::words::answer::Headline;
use crate::words::answer::{Reason, reason};
use crate::words::complaint::complaint;
use crate::words::{bench as say, book as say_book, screens, showing, sizing as say_sizing, standing};

pub fn size(opened: Opened) -> AnyView {
    let app = opened.app;
    let (text, which) = opened.read(start).unwrap_or_default();
    let form = opened.form(vec![("q", text), ("as", which)]);
    let found = Memo::new(move |_| read(app, form));
    let typed = Signal::derive(move || found.with(|(typed, _)| typed.clone()));
    let sheet = Sheet::new(form, Signal::derive(move || found.with(|(_, complaints)| complaints.clone())));
    let at = Memo::new(move |_| typed.with(|typed| typed.meant().map(|it| it.circumference())));
    let converted = Signal::derive(move || at.get().map(|at| convert(app, at)).unwrap_or_default());

    let field = sheet.field("q", say::SIZE).hint(screens::READ_SIZE_HINT).enter("done");
    let several = Memo::new(move |_| typed.with(|typed| typed.readings.len() > 1 && typed.meant().is_none()));
    let there = Memo::new(move |_| at.get().is_some());
    let said = Signal::derive(move || typed.with(said));
    let content = column(vec![
        sheet.size("q", "as", field, typed),
        maybe(move || several.get().then(|| answer("size-answer", say::INSIDE, said))),
        maybe(move || {
            there.get().then(|| {
                let drawn = Signal::derive(move || at.get().map(drawn).unwrap_or_default());
                let shown = move || at.get_untracked().map(|at| shown_to_them(app, at));
                all(vec![
                    showable(vec![answer("size-answer", say::INSIDE, said), picture(drawn)], shown),
                    el("output")
                        .class("bench-table")
                        .attr("aria-live", "off")
                        .attr("aria-label", say::EVERY_SYSTEM)
                        .child(reasons(Signal::derive(move || converted.get().iter().map(row).collect())))
                        .view(),
                ])
            })
        }),
        maybe(move || {
            let found = converted.get();
            let said: Vec<String> = found.iter().flat_map(differ).collect();
            (!said.is_empty())
                .then(|| section(say::CHARTS_DIFFER, said.into_iter().map(|text| para("small", text)).collect()))
        }),
        details(say::ABOUT_SCALES, all(vec![about(), para("small", say_sizing::NOT_HERE)])),
        link_button(Weight::Quiet, say::TO_TABLE, Address::Calculator(Calculator::Table).to_string()),
    ]);
    let head = match opened.read(say::size_subtitle) {
        Some(subtitle) => opened.head().subtitle(subtitle),
        None => opened.head(),
    };
    let action = match opened.whose {
        Some(Whose { id, .. }) => back_to_couple(&opened, id),
        None => next(form, typed),
    };
    page(head, content, Some(action))
}

/// The size of one of the two: the settled one, or the one that was read last.
fn start(couple: Couple<'_>, who: Wearer) -> (String, String) {
    let settled = couple.order_size(who).map(|it| say_sizing::size_in_full(it.size));
    let read = || couple.readings(who).last().map(|(_, it)| (say::retyped(&it.size), fields::meant(&it.size)));
    match settled {
        Some(size) => (size, String::new()),
        None => read().unwrap_or_default(),
    }
}

fn read(app: App, form: Form) -> (SizeTyped, Complaints) {
    let first = app.practice(|practice| practice.first_system());
    let mut complaints = Complaints::new();
    let read = form.text("q").with(|text| form.text("as").with(|which| SizeTyped::read(text, which, first)));
    let read = read.map_err(|what| complaint(&what));
    let typed = judge(&mut complaints, "q", read).unwrap_or_default();
    (typed, complaints)
}

/// The circumference in every system, the first one first: the nearest size that there is, in quarters where a scale
/// has them. What step the bench makes is asked for an order, not here.
fn convert(app: App, at: Circumference) -> Vec<Conversion> {
    let first = app.practice(|practice| practice.first_system());
    in_order(System::ALL, |system| *system != first)
        .into_iter()
        .map(|system| sizing::convert(system, at, Step::Quarter))
        .collect()
}

fn said(typed: &SizeTyped) -> Headline {
    match typed.meant() {
        Some(size) => {
            let at = size.circumference();
            Headline { figure: say::hundredths(at.0), lines: say::inside(size.stated, at), tone: Tone::Act }
        }
        None => Headline {
            figure: "?".to_owned(),
            lines: vec![say::several_readings(typed.readings.len())],
            tone: Tone::Care,
        },
    }
}

/// The same for the couple.
fn shown_to_them(app: App, at: Circumference) -> Shown {
    let on_scale =
        |of: &Conversion| showing::on_scale(say_sizing::system_name(of.stated.system()), &say_sizing::on_scale(of));
    Shown {
        title: showing::SIZE_TITLE.to_owned(),
        picture: drawn(at),
        figure: showing::along(at.0),
        lines: convert(app, at).iter().map(on_scale).collect(),
    }
}

fn row(of: &Conversion) -> Reason {
    let system = of.stated.system();
    let standing = standing::standing(match of.stated {
        Stated::Size(size) => size.standing(),
        Stated::Diameter(_) | Stated::Circumference(_) => system.standing(),
    });
    let why = if system.is_millimetres() {
        standing.to_owned()
    } else {
        format!("{} · {standing}", say_sizing::nearest_off(of))
    };
    reason(say_sizing::system_name(system), say_sizing::on_scale(of), why)
}

/// What published charts make of the size that is named.
fn differ(of: &Conversion) -> Vec<String> {
    let Stated::Size(size) = of.stated else { return Vec::new() };
    if of.is_beyond() {
        return Vec::new();
    }
    sizing::published(size).into_iter().map(|found| say_sizing::published(size, found)).collect()
}

fn about() -> AnyView {
    let row = |system: System| {
        let why = format!("{} {}", say::used_in(system), say_sizing::system_source(system));
        reason(say_sizing::system_name(system), standing::standing(system.standing()), why)
    };
    reasons(Signal::stored(System::ALL.map(row).to_vec()))
}

/// The rules of every scale, one under the other, with the size across them all.
fn drawn(at: Circumference) -> String {
    let step = Step::Quarter;
    let row = |system: System| {
        let named = |size: Size| rules::Tick {
            at: size.circumference(),
            label: if size.is_on(Step::Whole) { say_sizing::size_name(size) } else { String::new() },
        };
        let ticks = sizing::all(system, system.step(step)).map(named).collect();
        let found = sizing::convert(system, at, step);
        let nearest = match found.stated {
            // Where the scale has no size nothing of it is pointed at.
            Stated::Size(_) if found.is_beyond() => rules::Tick { at, label: say_sizing::on_scale(&found) },
            Stated::Size(size) => rules::Tick { at: size.circumference(), label: say_sizing::on_scale(&found) },
            Stated::Diameter(_) | Stated::Circumference(_) => rules::Tick { at, label: String::new() },
        };
        Row { label: say::rule_name(system).to_owned(), ticks, nearest, off: say_sizing::nearest_off(&found) }
    };
    let rows = [System::Uk, System::Us, System::Iso, System::Japan, System::Italy].map(row).to_vec();
    rules::rules(&Rules { at, rows }).svg
}

fn next(form: Form, typed: Signal<SizeTyped>) -> AnyView {
    let there = Memo::new(move |_| typed.with(|typed| typed.meant().is_some()));
    let href = Signal::derive(move || {
        let query = vec![("size".to_owned(), form.text("q").get()), ("as".to_owned(), typed.with(SizeTyped::code))];
        with_query(Address::Calculator(Calculator::Order), &query)
    });
    maybe(move || there.get().then(|| link_button(Weight::Primary, say::ORDER_FROM_THIS, href)))
}

fn back_to_couple(opened: &Opened, id: RecordId) -> AnyView {
    let names = opened.read(|couple, _| say_book::names(couple)).unwrap_or_default();
    link_button(Weight::Primary, say::back_to(&names), Address::Couple(id).to_string())
}
