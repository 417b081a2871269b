//! Inviting a couple to their preparation list, and taking it in. Both hang off [`taking`].

mod invite;
mod preview;
mod target;

use leptos::prelude::*;

use crate::app::address::Address;
use crate::app::form::Form;
use crate::app::share;
use crate::archive::find;
use crate::archive::list::ListError;
use crate::book::id::RecordId;
use crate::book::said::Said;
use crate::parts::el::{el, live, nothing};
use crate::parts::field::Field;
use crate::parts::lay::{column, para};
use crate::parts::page::{Head, page};
use crate::screens::form_page::restored;
use crate::words::list::taking as say;
use crate::words::screens;

/// What is to be done.
#[derive(Clone, Copy)]
pub enum Taking {
    In,
    /// Invite a couple of the book, or somebody who is not in it yet.
    Invite(Option<RecordId>),
}

pub fn taking(what: Taking) -> AnyView {
    match what {
        Taking::In => take_in(),
        Taking::Invite(whom) => invite::invite(whom),
    }
}

type Read = Result<Said, ListError>;

/// A file that was opened: what stood in the field then, and what was in the file. None for one that was not handed over.
type Opened = (String, Option<Read>);

fn take_in() -> AnyView {
    let form = Form::draft("take-in".to_owned(), vec![("message", String::new())]);
    let typed = form.text("message");
    let opened: RwSignal<Option<Opened>> = RwSignal::new(None);
    // The file counts until something is typed after it.
    let file =
        Memo::new(move |_| opened.get().filter(|(before, _)| typed.with(|text| text == before)).map(|(_, it)| it));
    let message = Memo::new(move |_| typed.with(|text| (!text.trim().is_empty()).then(|| find::read(text.as_bytes()))));
    let wrong_message = Signal::derive(move || match (file.get(), message.get()) {
        (None, Some(Err(why))) => Some(say::error(why)),
        _ => None,
    });
    let wrong_file = Signal::derive(move || match file.get() {
        Some(None) => say::NOT_OPENED.to_owned(),
        Some(Some(Err(why))) => say::error(why),
        _ => String::new(),
    });
    let shown = move || match (file.get(), message.get()) {
        (Some(Some(Ok(said))), _) | (None, Some(Ok(said))) => preview::preview(said, form),
        _ => nothing(),
    };
    let open = move |event| {
        let Some(picked) = share::picked(&event) else { return };
        let done = move |bytes: Option<Vec<u8>>| {
            let before = typed.get_untracked();
            opened.set(Some((before, bytes.map(|bytes| find::read(&bytes)))));
        };
        share::read(picked, |_| (), done);
    };
    let picker = el("input").attr("type", "file").attr("id", "list-file").attr("name", "list-file").on("change", open);
    let label =
        el("label").class("button quiet list-file").child(picker.view()).child(el("span").text(say::OPEN_FILE).view());
    let content = column(vec![
        restored(form),
        para("", say::TAKE_IN_INTRO),
        label.view(),
        el("p").class("field-error").attr("role", "alert").words(wrong_file.into()).view(),
        Field::new("message", say::PASTE, typed).error(wrong_message).lines(),
        el("div").attr("aria-live", "polite").child(live(shown)).view(),
    ]);
    page(Head::new(say::TAKE_IN).back(Address::Couples.to_string(), screens::COUPLES), content, None)
}
