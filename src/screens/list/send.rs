//! Handing the list over: as a file or as a message, and never by itself.

use leptos::prelude::*;

use super::ask::field_of;
use crate::app::address::Address;
use crate::app::list as ours;
use crate::app::share;
use crate::archive::{find, list};
use crate::book::asks::{AnswerKey, Ask};
use crate::book::preparation_list::PreparationList;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::details::details;
use crate::parts::el::{el, live, or_nothing};
use crate::parts::layout::{column, para, section};
use crate::screens::shell::in_words::in_words;
use crate::words::list::{asked, handing as say, pages as say_pages};

/// The question about being recorded, if it is still open; and under it, following the answer, the ways to hand over.
pub fn send() -> AnyView {
    let spot = AnswerKey::both(Ask::Recorded);
    let answer = ours::text(spot);
    let open = untrack(|| answer.with(String::is_empty));
    let whole = move || {
        // The answer counts at once, whether it has been kept yet or not.
        let mut said = ours::now();
        said.set(spot, answer.get(), said.saved);
        said
    };
    if !ours::is_begun(&untrack(whole)) {
        let begin = link_button(Weight::Quiet, say_pages::LIST, Address::List(None).to_string());
        return column(vec![para("", say::NOTHING_YET), begin]);
    }
    let ask = open.then(|| section(say::STILL_OPEN, vec![field_of(spot, answer)]));
    column(vec![para("", say::INTRO), or_nothing(ask), live(move || ways(whole()))])
}

fn ways(whole: PreparationList) -> AnyView {
    let said_no = whole.agrees() == Some(false);
    // What could not be taken in is not sent, and said to be so.
    let (said, wrong) = whole.as_agreed().checked();
    let wrong = wrong.into_iter().map(|(spot, why)| para("caution", asked::left_out(spot.ask, why)));
    let wrong: Vec<AnyView> = wrong.collect();
    let stays = (!wrong.is_empty()).then(|| section(say::STAYS, wrong));
    let shown = in_words(say::groups(&said));
    let message = say::message(&said, &find::write_line(&said));
    let file = list::write(&said);
    let outcome = RwSignal::new("");
    let tell = move |good: &'static str| move |left: bool| outcome.set(if left { good } else { say::NOT_LEFT });
    let to_copy = message.clone();
    let by_sheet = share::can_share_files();
    let send_file = move || {
        if by_sheet {
            share::share_file(say::FILE_NAME.to_owned(), share::JSON, file.clone(), tell(say::FILE_LEFT));
        } else {
            tell(say::FILE_LEFT)(share::download(say::FILE_NAME, share::JSON, &file));
        }
    };
    let send_text = share::can_share().then(|| {
        button(Weight::Quiet, say::SEND_TEXT, move || {
            share::share_text(say::MESSAGE_TITLE.to_owned(), message.clone(), tell(say::TEXT_LEFT));
        })
    });
    let copy = button(Weight::Quiet, say::COPY_TEXT, move || share::copy(to_copy.clone(), tell(say::COPIED)));
    let file_label = if by_sheet { say::SEND_FILE } else { say::SAVE_FILE };
    column(vec![
        or_nothing(said_no.then(|| para("caution", say::SAID_NO))),
        or_nothing(stays),
        column(vec![button(Weight::Primary, file_label, send_file), or_nothing(send_text), copy]),
        el("p")
            .class("list-outcome")
            .attr("role", "status")
            .words(Signal::derive(move || outcome.get().to_owned()).into())
            .view(),
        details(say::WHAT_LEAVES, shown),
    ])
}
