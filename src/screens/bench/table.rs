//! Every size of one scale beside what it is called on the others: to look up, and to print for the case.

use crate::parts::el::{el, live};
use crate::parts::lay::{block, column, para};
use leptos::prelude::*;

use super::Opened;
use crate::app::form::Form;
use crate::archive::code::Code;
use crate::parts::button::{Weight, button};
use crate::parts::choice::{Shape, choice, option, pick};
use crate::parts::page::page;
use crate::trade::sizing::{self, Size, Step, System};
use crate::words::{bench as say, sizing as say_sizing};

/// The scales of the columns, in their order.
const COLUMNS: [System; 6] = [System::Uk, System::Us, System::Iso, System::Japan, System::Italy, System::Diameter];

pub fn table(opened: Opened) -> AnyView {
    let (first, step) = opened.app.practice(|practice| (practice.first_system(), practice.step()));
    let form = opened.form(vec![
        ("first", first.code().to_owned()),
        ("step", step.code().to_owned()),
        ("paper", "a4".to_owned()),
    ]);
    let systems = System::ALL.map(|it| (it.code().to_owned(), say_sizing::system_name(it).to_owned()));
    let steps = Step::ALL.map(|it| option(it.code(), say_sizing::step_name(it)));
    let papers = vec![option("a4", "A4"), option("a6", "A6")];
    let content = column(vec![
        block(
            "column unprinted",
            vec![
                pick("first", say::TABLE_OF, systems.to_vec(), form.text("first")),
                choice("step", say::TABLE_STEP, Shape::Chips, steps.into(), form.text("step")),
                choice("paper", say::PAPER, Shape::Segments, papers, form.text("paper")),
            ],
        ),
        live(move || drawn(form)),
        para("small", say::TABLE_NOTE),
        para("small", say_sizing::charts_differ()),
    ]);
    let print = button(Weight::Primary, say::PRINT, || {
        if let Some(window) = web_sys::window() {
            let _ = window.print();
        }
    });
    page(opened.head(), content, Some(print))
}

fn drawn(form: Form) -> AnyView {
    let first = form.text("first").with(|code| System::from_code(code)).unwrap_or(System::Uk);
    let step = form.text("step").with(|code| Step::from_code(code)).unwrap_or(Step::Half);
    let class = if form.text("paper").with(|paper| paper == "a6") { "sizes paper-a6" } else { "sizes paper-a4" };
    let others: Vec<System> = COLUMNS.into_iter().filter(|system| *system != first).collect();
    let head = |text: &'static str| el("th").attr("scope", "col").text(text).view();
    let mut heads = vec![head(say::rule_name(first)), head(say::MM_ROUND)];
    heads.extend(others.iter().map(|system| head(say::rule_name(*system))));
    let rows = sizing::all(first, step).map(|size| row(size, &others)).collect();
    let whole = el("table")
        .class(class)
        .child(el("caption").class("unseen").text(say::TABLE).view())
        .child(el("thead").child(el("tr").children(heads).view()).view())
        .child(el("tbody").children(rows).view())
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

fn row(size: Size, others: &[System]) -> AnyView {
    let at = size.circumference();
    let name = el("th").attr("scope", "row").text(say_sizing::size_name(size)).view();
    let cells = others.iter().map(|system| {
        let found = sizing::convert(*system, at, Step::Quarter);
        el("td").text(say_sizing::in_table(&found)).view()
    });
    let round = el("td").text(say::hundredths(at.0)).view();
    el("tr").child(name).child(round).children(cells.collect()).view()
}
