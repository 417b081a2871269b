//! The preparation list on the couple's own phone. Every page of it hangs off [`list`].

mod ask;
mod measuring;
mod privacy;
mod send;

use leptos::prelude::*;

use crate::app::address::Address;
use crate::app::device;
use crate::app::list::{self as ours, Kept};
use crate::app::route::route;
use crate::book::asks::{Question, Section};
use crate::book::preparation_list::{Invitation, PreparationList};
use crate::parts::button::{Weight, button, link_button};
use crate::parts::el::{el, live, maybe, or_nothing};
use crate::parts::layout::{block, column, para, section as section_of};
use crate::parts::line::{line, lines};
use crate::parts::page::{PageHeader, page};
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
    let invited = RwSignal::new(ours::take_up(&route().query()));
    let replaced: RwSignal<Option<PreparationList>> = RwSignal::new(None);
    let overview = move || match invited.get() {
        Some(invitation) => for_others(invitation, invited, replaced),
        None => rows_of_the_list(),
    };
    let action = move || {
        let said = ours::now();
        let next = next(&said);
        let to = Address::List(Some(next)).to_string();
        invited.with(Option::is_none).then(|| link_button(Weight::Primary, say::go_on(next, ours::is_begun(&said)), to))
    };
    let back = move || {
        replaced.get().map(|said| {
            let back = move || {
                ours::put_back(&said);
                replaced.set(None);
                invited.notify();
            };
            block("list-deleted", vec![para("", say::REPLACED), button(Weight::Quiet, say::PUT_BACK, back)])
        })
    };
    let content = column(vec![maybe(back), live(overview)]);
    page(PageHeader::new(say::TITLE), content, Some(maybe(action)))
}

/// A link for others was opened on a phone that has a list: which of the two is to be here?
fn for_others(
    invitation: Invitation,
    invited: RwSignal<Option<Invitation>>,
    replaced: RwSignal<Option<PreparationList>>,
) -> AnyView {
    let asked = say::for_others(&invitation, &ours::now());
    let begin = move || {
        replaced.set(Some(ours::begin_for(&invitation)));
        invited.set(None);
    };
    let keep = move || {
        ours::leave_link();
        invited.set(None);
    };
    let begin = button(Weight::Quiet, say::NEW_LIST, begin);
    column(vec![para("caution", asked), begin, button(Weight::Quiet, say::KEEP_LIST, keep)])
}

/// The first page with a question that is open.
fn next(said: &PreparationList) -> Section {
    let open = Section::ALL.into_iter().find(|section| answered(said, *section) < section.questions().len());
    open.unwrap_or(Section::Send)
}

fn rows_of_the_list() -> AnyView {
    let said = ours::now();
    let rows: Vec<_> = Section::ALL.into_iter().map(|section| row(&said, section)).collect();
    let apart = device::keeps_tabs_apart() && !device::is_installed();
    column(vec![
        or_nothing(say::greeting(&said.invitation).map(|text| para("list-greeting", text))),
        para("", say::INTRO),
        match ours::is_kept() {
            true => para("small", say::KEPT),
            false => not_kept(),
        },
        or_nothing((apart && ours::is_kept()).then(|| para("caution", say::MAY_BE_CLEARED))),
        el("p").class("list-progress").attr("role", "status").text(say::progress(&said)).view(),
        block("list-rows", vec![lines(Signal::stored(rows))]),
    ])
}

fn row(said: &PreparationList, section: Section) -> crate::parts::line::Line {
    let (done, of) = (answered(said, section), section.questions().len());
    let value = if section == Section::Send { String::new() } else { say::section_progress(done, of) };
    let row =
        line(say::title(section), value, Address::List(Some(section)).to_string()).small(say::small_of(section, said));
    match (done, of) {
        (_, 0) => row,
        (done, of) if done == of => row.mark(Mark::Done),
        _ => row.mark(Mark::Open),
    }
}

fn answered(said: &PreparationList, section: Section) -> usize {
    section.questions().iter().filter(|question| said.is_answered(**question)).count()
}

/// What is written is gone with the page: this browser keeps nothing, or the phone has stopped to.
fn not_kept() -> AnyView {
    let said = if ours::can_keep() { say::NOT_KEPT_ANY_MORE } else { say::NOT_KEPT };
    el("p").class("caution").attr("role", "status").text(said).view()
}

fn page_of(section: Section) -> AnyView {
    let kept = RwSignal::new(ours::is_kept());
    provide_context(Kept(kept));
    let inside = match section {
        Section::Bring => read(&guide::BRING),
        Section::Measure => column(vec![
            para("", guide::MEASURE_INTRO),
            el("ol").class("list-points").children(points(&guide::MEASURE_HOW)).view(),
            section_of(guide::MEASURE_MIND, vec![read(&guide::MEASURE)]),
        ]),
        Section::Privacy => privacy::privacy(),
        Section::Send => send::send(),
        _ => {
            let ask = |question: &Question| ask::question(*question);
            column(section.questions().iter().map(ask).collect())
        }
    };
    let said = maybe(move || (!kept.get()).then(not_kept));
    let content = column(vec![or_nothing(say::intro(section).map(|text| para("", text))), said, inside]);
    let head = PageHeader::new(say::title(section)).back(Address::List(None).to_string(), say::LIST);
    let next =
        section.next().map(|next| link_button(Weight::Primary, say::next(next), Address::List(Some(next)).to_string()));
    page(head, content, next)
}

/// Something to read, point by point.
fn read(said: &[&'static str]) -> AnyView {
    el("ul").class("list-points").children(points(said)).view()
}

fn points(said: &[&'static str]) -> Vec<AnyView> {
    said.iter().map(|point| el("li").text(*point).view()).collect()
}
