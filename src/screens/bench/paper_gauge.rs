//! A gauge to print, and what its readings are once the print was measured.

use crate::parts::el::{el, live, maybe, or_nothing};
use crate::parts::layout::{all, block, column, para};
use leptos::prelude::*;

use super::sheet::{Sheet, papers, print};
use super::{Opened, asking};
use crate::answers::paper_gauge::{EXAMPLE, PaperAnswer, answer as compute, sheet as sizes_of};
use crate::app::address::Calculator;
use crate::forms::order;
use crate::forms::paper_gauge::{self as form_of, BY, BY_CIRCLE, BY_STRIP, FIRST, LINE, PAPER, READ, READ_AS};
use crate::forms::{Complaints, SizeTyped};
use crate::parts::answer::answer;
use crate::parts::button::{Weight, link_button};
use crate::parts::choice::{Shape, choice, option, pick};
use crate::parts::details::details;
use crate::parts::page::page;
use crate::pictures::paper;
use crate::trade::paper::{Paper, Verdict};
use crate::trade::sizing::System;
use crate::words::answer::Headline;
use crate::words::{bench as say, complaint as say_complaint, screens, sizing as say_sizing};

type Read = Memo<(form_of::PaperTyped, Complaints)>;

pub fn paper_gauge(opened: Opened) -> AnyView {
    let app = opened.app;
    let first = app.practice(|practice| practice.first_system());
    let form = opened.form(form_of::start(first).into_pairs());
    let read = Memo::new(move |_| form_of::read(&form.texts()));
    let found = Memo::new(move |_| read.with(|(typed, _)| compute(typed, app.practice(|practice| practice.step()))));
    let sheet =
        Sheet::new(form, Signal::derive(move || read.with(|(_, complaints)| say_complaint::complaints(complaints))));
    let systems = System::ALL.map(|it| (it.code().to_owned(), say_sizing::system_name(it).to_owned()));
    let printed = Memo::new(move |_| read.with(|(typed, _)| sizes_of(typed)));
    let content = column(vec![
        block(
            "column unprinted",
            vec![
                para("caution", say::PAPER_NOTE),
                pick(FIRST.name(), say::TABLE_OF, systems.to_vec(), form.text(FIRST)),
                papers(PAPER, form),
                details(say::PUT_RIGHT, put_right(sheet, read, found)),
            ],
        ),
        live(move || printed.with(|sizes| drawn(&paper::Sheet::of(sizes)))),
    ]);
    page(opened.head(), content, Some(print()))
}

/// The print is measured, and then what was read on it is put right.
fn put_right(sheet: Sheet, read: Read, found: Memo<PaperAnswer>) -> AnyView {
    let form = sheet.form;
    let ways = vec![option(BY_STRIP, say::BY_STRIP), option(BY_CIRCLE, say::BY_CIRCLE)];
    let verdict = move || {
        found.with(|found| found.verdict).map(|verdict| {
            let class = if matches!(verdict, Verdict::PrintAgain { .. }) { "caution" } else { "" };
            para(class, say::verdict(verdict))
        })
    };
    let typed = Signal::derive(move || -> SizeTyped { read.with(|(typed, _)| typed.read.clone()) });
    let field = sheet.field(READ.name(), say::PAPER_READ).hint(screens::READ_SIZE_HINT).enter("done");
    let right = move || found.with(|found| found.right);
    let there = Memo::new(move |_| right().is_some());
    let said = Signal::derive(move || right().map_or_else(Headline::none, |right| say::paper_headline(&right)));
    let to_order = Signal::derive(move || {
        let asked = right().map(|right| order::of_gauge(right.at.0, right.gauge_width(), right.u));
        asking(Calculator::Order, asked.unwrap_or_default())
    });
    all(vec![
        para("small", say::one_percent_is(EXAMPLE)),
        sheet.mm(LINE.name(), say::PRINTED_LINE).hint(say::PRINTED_LINE_HINT).line(),
        maybe(verdict),
        choice(BY.name(), say::READ_ON_IT, Shape::Segments, ways, form.text(BY)),
        sheet.size(READ.name(), READ_AS.name(), field, typed),
        maybe(move || {
            there.get().then(|| {
                all(vec![
                    answer("paper-size", say::PUT_RIGHT, said),
                    link_button(Weight::Quiet, say::ORDER_FROM_THIS, to_order),
                ])
            })
        }),
        sheet.afresh(say::AFRESH),
    ])
}

fn drawn(sheet: &paper::Sheet) -> AnyView {
    let class = match sheet.paper {
        Paper::A4 => "sheet paper-a4",
        Paper::A6 => "sheet paper-a6",
    };
    let end = paper::circles_end(sheet).filter(|_| sheet.paper == Paper::A6);
    let end = end.map(|size| block("unprinted", vec![para("small", say::circles_end(&size.label, size.at))]));
    all(vec![or_nothing(end), el("figure").class(class).html(paper::sheet(sheet).svg.into()).view()])
}
