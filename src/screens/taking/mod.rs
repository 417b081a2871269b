//! Inviting a couple to their preparation list, and taking it in. Both hang off [`taking`].

mod invite;
mod preview;
mod target;

use leptos::prelude::*;

use crate::app::address::{Address, Setting};
use crate::app::form::Form;
use crate::app::share::{self, Unread};
use crate::app::state::{App, app};
use crate::archive::find;
use crate::archive::list::{LIMIT, ListError};
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::book::preparation_list::PreparationList;
use crate::forms::couple::taking as form_of;
use crate::parts::button::{Weight, button};
use crate::parts::el::{el, live, maybe, nothing, or_nothing};
use crate::parts::field::Field;
use crate::parts::layout::{column, para};
use crate::parts::page::{PageHeader, page};
use crate::screens::shell::form_page::restored;
use crate::screens::shell::handed;
use crate::screens::shell::tab_warning::tab_warning;
use crate::words::list::taking as say;
use crate::words::{copies as say_copies, screens};

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

type Read = Result<PreparationList, ListError>;

/// A file that was opened: what stood in the field then, and what was in the file. None for one that was not handed over.
type Opened = (String, Option<Read>);

fn take_in() -> AnyView {
    let form = Form::draft("take-in".to_owned(), form_of::start());
    let typed = form.text(form_of::MESSAGE);
    let given = handed::take().map(|bytes| (typed.get_untracked(), Some(find::read(&bytes))));
    let opened: RwSignal<Option<Opened>> = RwSignal::new(given);
    // The file counts until something is typed after it.
    let file =
        Memo::new(move |_| opened.get().filter(|(before, _)| typed.with(|text| text == before)).map(|(_, it)| it));
    let message = Memo::new(move |_| form_of::read(&form.texts()));
    let wrong_message = Signal::derive(move || match (file.get(), message.get()) {
        (None, Some(Err(why))) => Some(say::error(why)),
        _ => None,
    });
    let wrong_file = Signal::derive(move || match file.get() {
        Some(None) => say::NOT_OPENED.to_owned(),
        Some(Some(Err(why))) => say::error(why),
        _ => String::new(),
    });
    let read = Memo::new(move |_| match (file.get(), message.get()) {
        (Some(Some(Ok(said))), _) | (None, Some(Ok(said))) => Some(said),
        _ => None,
    });
    let is_read = Memo::new(move |_| read.with(Option::is_some));
    let take = StoredValue::new(None::<Callback<()>>);
    let shown = move || {
        let Some(said) = read.get() else { return nothing() };
        let (content, save) = untrack(|| preview::preview(said, form));
        take.set_value(Some(save));
        content
    };
    // A file of the book was opened: the other screen reads it.
    let of_book = Memo::new(move |_| match (file.get(), message.get()) {
        (Some(Some(Err(why))), _) | (None, Some(Err(why))) => why == ListError::OtherKind,
        _ => false,
    });
    let book = StoredValue::new(Vec::new());
    let bytes = move || if file.get_untracked().is_some() { book.get_value() } else { typed.get_untracked().into() };
    let elsewhere = move || {
        let to = Address::Setting(Setting::BringIn).to_string();
        of_book.get().then(|| handed::link(say_copies::BRING_IN, to, bytes))
    };
    let another = move || {
        form.done();
        form.reset();
        opened.set(None);
    };
    let open = move |event| {
        let Some(picked) = share::picked(&event) else { return };
        let done = move |bytes: Result<Vec<u8>, Unread>| {
            let before = typed.get_untracked();
            let read = match &bytes {
                Ok(bytes) => Some(find::read(bytes)),
                Err(Unread::TooLarge) => Some(Err(ListError::TooLarge)),
                Err(Unread::NotGiven) => None,
            };
            book.set_value(bytes.unwrap_or_default());
            opened.set(Some((before, read)));
        };
        share::read(picked, LIMIT, |_| (), done);
    };
    let picker = el("input").attr("type", "file").attr("id", "list-file").attr("name", "list-file").on("change", open);
    let label =
        el("label").class("button quiet list-file").child(picker.view()).child(el("span").text(say::OPEN_FILE).view());
    // Once a list is read, what it was read from makes way for it.
    let from = el("div")
        .class("column")
        .live_attr("hidden", move || is_read.get().then(String::new))
        .children(vec![
            or_nothing(first(app()).then(tab_warning).flatten()),
            para("", say::TAKE_IN_INTRO),
            label.view(),
            el("p").class("field-error").attr("role", "alert").words(wrong_file.into()).view(),
            Field::new(form_of::MESSAGE.name(), say::PASTE, typed).error(wrong_message).lines(),
            maybe(elsewhere),
        ])
        .view();
    let again = maybe(move || is_read.get().then(|| button(Weight::Plain, say::ANOTHER, another)));
    let content =
        column(vec![restored(form), from, el("div").attr("aria-live", "polite").child(live(shown)).view(), again]);
    let action = maybe(move || {
        let save = move || take.get_value().into_iter().for_each(|save| save.run(()));
        is_read.get().then(|| button(Weight::Primary, say::TAKE_IT_IN, save))
    });
    page(PageHeader::new(say::TAKE_IN).back(Address::Couples.to_string(), screens::COUPLES), content, Some(action))
}

/// Whether this would be the first entry in the book.
fn first(app: App) -> bool {
    untrack(|| app.with(|book| book.couples.values().all(|record| Couple(record).is_blank())))
}
