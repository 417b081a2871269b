//! Every size of one scale beside what it is called on the others: to look up, and to print for the case.

use crate::parts::el::{el, live};
use crate::parts::layout::{block, column, para};
use leptos::prelude::*;

use super::Opened;
use super::sheet::{papers, print};
use crate::answers::table::{Row, answer};
use crate::archive::code::Code;
use crate::forms::table::{self as form_of, FIRST, PAPER, STEP};
use crate::parts::choice::{Shape, choice, option, pick};
use crate::parts::page::page;
use crate::trade::paper::Paper;
use crate::trade::sizing::{Step, System};
use crate::words::{bench as say, sizing as say_sizing};

pub fn table(opened: Opened) -> AnyView {
    let (first, step) = opened.app.practice(|practice| (practice.first_system(), practice.step()));
    let form = opened.form(form_of::start(first, step).into_pairs());
    let systems = System::ALL.map(|it| (it.code().to_owned(), say_sizing::system_name(it).to_owned()));
    let steps = Step::ALL.map(|it| option(it.code(), say_sizing::step_name(it)));
    let typed = Memo::new(move |_| form_of::read(&form.texts()));
    let content = column(vec![
        block(
            "column unprinted",
            vec![
                pick(FIRST.name(), say::TABLE_OF, systems.to_vec(), form.text(FIRST)),
                choice(STEP.name(), say::TABLE_STEP, Shape::Chips, steps.into(), form.text(STEP)),
                papers(PAPER, form),
            ],
        ),
        live(move || typed.with(drawn)),
        para("small", say::TABLE_NOTE),
        para("small", say_sizing::charts_differ()),
    ]);
    page(opened.head(), content, Some(print()))
}

fn drawn(typed: &form_of::TableTyped) -> AnyView {
    let found = answer(typed);
    let class = match typed.paper {
        Paper::A4 => "sizes paper-a4",
        Paper::A6 => "sizes paper-a6",
    };
    let head = |text: &'static str| el("th").attr("scope", "col").text(text).view();
    let mut heads = vec![head(say::rule_name(found.first)), head(say::MM_ROUND)];
    heads.extend(found.others.iter().map(|system| head(say::rule_name(*system))));
    let whole = el("table")
        .class(class)
        .child(el("caption").class("unseen").text(say::TABLE).view())
        .child(el("thead").child(el("tr").children(heads).view()).view())
        .child(el("tbody").children(found.rows.iter().map(row).collect()).view())
        .view();
    // A wide table scrolls in its own box, which the keyboard can reach.
    el("div")
        .class("sizes-box")
        .attr("tabindex", "0")
        .attr("role", "region")
        .attr("aria-label", say::TABLE)
        .child(whole)
        .view()
}

fn row(of: &Row) -> AnyView {
    let name = el("th").attr("scope", "row").text(say_sizing::size_name(of.size)).view();
    let cells = of.others.iter().map(|found| el("td").text(say_sizing::in_table(found)).view());
    let round = el("td").text(say::hundredths(of.at.0)).view();
    el("tr").child(name).child(round).children(cells.collect()).view()
}
