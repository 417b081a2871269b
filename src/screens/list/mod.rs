//! The preparation list on the couple's own phone. Every page of it hangs off [`list`].

mod ask;
mod measuring;
mod privacy;
mod send;

use leptos::prelude::*;

use crate::app::address::Address;
use crate::app::list as ours;
use crate::app::route::route;
use crate::book::asks::{Question, Section};
use crate::book::said::Said;
use crate::parts::button::{Weight, link_button};
use crate::parts::el::{el, or_nothing};
use crate::parts::lay::{column, para};
use crate::parts::line::{line, lines};
use crate::parts::page::{Head, page};
use crate::words::list::{guide, pages as say};
use crate::words::parts::Mark;

/// The list, or a page of it.
pub fn list(section: Option<Section>) -> AnyView {
    match section {
        None => overview(),
        Some(section) => page_of(section),
    }
}

fn overview() -> AnyView {
    ours::take_up(&route().query());
    let said = ours::now();
    let rows: Vec<_> = Section::ALL.into_iter().map(|section| row(&said, section)).collect();
    let next = Section::ALL.into_iter().find(|section| answered(&said, *section) < section.questions().len());
    let next = next.unwrap_or(Section::Send);
    let content = column(vec![
        or_nothing(say::greeting(&said.invitation).map(|text| para("list-greeting", text))),
        para("", say::INTRO),
        para("small", if ours::is_kept() { say::KEPT } else { say::NOT_KEPT }),
        el("p").class("list-progress").attr("role", "status").text(say::progress(said.answered())).view(),
        lines(Signal::stored(rows)),
    ]);
    let action = link_button(Weight::Primary, say::go_on(next, said.answered()), Address::List(Some(next)).to_string());
    page(Head::new(say::TITLE), content, Some(action))
}

fn row(said: &Said, section: Section) -> crate::parts::line::Line {
    let (done, of) = (answered(said, section), section.questions().len());
    let value = if section == Section::Send { String::new() } else { say::section_progress(done, of) };
    let row = line(say::title(section), value, Address::List(Some(section)).to_string());
    match (done, of) {
        (_, 0) => row,
        (done, of) if done == of => row.mark(Mark::Done),
        _ => row.mark(Mark::Open),
    }
}

fn answered(said: &Said, section: Section) -> usize {
    section.questions().iter().filter(|question| said.is_answered(**question)).count()
}

fn page_of(section: Section) -> AnyView {
    let inside = match section {
        Section::Bring => read(None, &guide::BRING),
        Section::Measure => read(Some(guide::MEASURE_INTRO), &guide::MEASURE),
        Section::Privacy => privacy::privacy(),
        Section::Send => send::send(),
        _ => {
            let ask = |question: &Question| ask::question(*question);
            column(section.questions().iter().map(ask).collect())
        }
    };
    let content = column(vec![or_nothing(say::intro(section).map(|text| para("", text))), inside]);
    let head = Head::new(say::title(section)).back(Address::List(None).to_string(), say::LIST);
    let next =
        section.next().map(|next| link_button(Weight::Primary, say::next(next), Address::List(Some(next)).to_string()));
    page(head, content, next)
}

/// Something to read, point by point.
fn read(intro: Option<&'static str>, points: &[&'static str]) -> AnyView {
    let points = points.iter().map(|point| el("li").text(*point).view()).collect();
    column(vec![or_nothing(intro.map(|intro| para("", intro))), el("ul").class("list-points").children(points).view()])
}
