//! The size converter: one size in every system at once, and never one of several readings in silence.

use crate::parts::el::{el, maybe};
use crate::parts::layout::{all, column, para, section};
use leptos::prelude::*;

use super::sheet::Sheet;
use super::{Opened, Opener, asking};
use crate::answers::size::{SizeAnswer, answer as compute};
use crate::app::address::{Address, Calculator};
use crate::app::form::Form;
use crate::app::show::Shown;
use crate::book::id::RecordId;
use crate::forms::{SizeTyped, order, size as form_of};
use crate::parts::answer::answer;
use crate::parts::button::{Weight, link_button};
use crate::parts::details::details;
use crate::parts::page::page;
use crate::parts::picture::picture;
use crate::parts::reasons::reasons;
use crate::pictures::size_rules::size_rules;
use crate::screens::shell::show::showable;
use crate::words::{
    bench as say, book as say_book, complaint as say_complaint, screens as say_frame, sizing as say_sizing,
};

pub fn size(opened: Opened) -> AnyView {
    let app = opened.app;
    let form = opened.form(opened.known(|couple, _| form_of::start(couple)).into_pairs());
    let read = Memo::new(move |_| form_of::read(&form.texts(), app.practice(|practice| practice.first_system())));
    let found =
        Memo::new(move |_| read.with(|(typed, _)| compute(typed, app.practice(|practice| practice.first_system()))));
    let typed = Signal::derive(move || read.with(|(typed, _)| typed.clone()));
    let sheet =
        Sheet::new(form, Signal::derive(move || read.with(|(_, complaints)| say_complaint::complaints(complaints))));

    let field = sheet.field(form_of::SIZE.name(), say::SIZE).hint(say_frame::READ_SIZE_HINT).enter("done");
    let open = Memo::new(move |_| found.with(SizeAnswer::is_open));
    let there = Memo::new(move |_| found.with(|found| found.converted.is_some()));
    let said = Signal::derive(move || found.with(say::size_headline));
    let content = column(vec![
        sheet.size(form_of::SIZE.name(), form_of::SIZE_AS.name(), field, typed),
        maybe(move || open.get().then(|| answer("size-answer", say::INSIDE, said))),
        maybe(move || {
            there.get().then(|| {
                let drawn = Signal::derive(move || found.with(drawn));
                let shown = move || found.with_untracked(shown);
                all(vec![
                    showable(vec![answer("size-answer", say::INSIDE, said), picture(drawn)], shown),
                    el("output")
                        .class("bench-table")
                        .attr("aria-live", "off")
                        .attr("aria-label", say::EVERY_SYSTEM)
                        .child(reasons(Signal::derive(move || found.with(say::size_reasons))))
                        .view(),
                ])
            })
        }),
        maybe(move || {
            let said = found.with(say::size_published);
            (!said.is_empty())
                .then(|| section(say::CHARTS_DIFFER, said.into_iter().map(|text| para("small", text)).collect()))
        }),
        details(
            say::ABOUT_SCALES,
            all(vec![reasons(Signal::stored(say::about_scales())), para("small", say_sizing::NOT_HERE)]),
        ),
        link_button(Weight::Quiet, say::TO_TABLE, Address::Calculator(Calculator::Table).to_string()),
    ]);
    let head = match opened.read(say::size_subtitle) {
        Some(subtitle) => opened.head().subtitle(subtitle),
        None => opened.head(),
    };
    let action = match opened.opener {
        Some(Opener { id, .. }) => back_to_couple(&opened, id),
        None => next(form, typed, there),
    };
    page(head, content, Some(action))
}

fn drawn(found: &SizeAnswer) -> String {
    found.converted.as_ref().map(|converted| size_rules(converted).svg).unwrap_or_default()
}

fn shown(found: &SizeAnswer) -> Option<Shown> {
    say::size_shown(found).map(|view| Shown { picture: drawn(found), ..view })
}

fn next(form: Form, typed: Signal<SizeTyped>, there: Memo<bool>) -> AnyView {
    let href = Signal::derive(move || {
        let asked = order::of_size(form.text(form_of::SIZE).get(), typed.with(SizeTyped::code));
        asking(Calculator::Order, asked)
    });
    maybe(move || there.get().then(|| link_button(Weight::Primary, say::ORDER_FROM_THIS, href)))
}

fn back_to_couple(opened: &Opened, id: RecordId) -> AnyView {
    let names = opened.read(|couple, _| say_book::names(couple)).unwrap_or_default();
    link_button(Weight::Primary, say::back_to(&names), Address::Couple(id).to_string())
}
