//! A couple's specification for the bench: shown, copied, shared. A couple that said no to being recorded has none.

use crate::parts::el::{el, live, maybe, or_nothing};
use crate::parts::layout::{all, column, para};
use leptos::prelude::*;

use crate::app::address::{Address, Part};
use crate::app::share;
use crate::app::state::{App, app};
use crate::book::id::RecordId;
use crate::book::leaving::Stays;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::choice::{Shape, choice, option};
use crate::parts::page::page;
use crate::screens::shell::couple_page::{CouplePage, couple_page};
use crate::words::specification::{self as text, Called};
use crate::words::{book as say_book, copies as say, same as say_same};

pub fn specification(id: RecordId) -> AnyView {
    let app = app();
    let CouplePage { head, .. } = couple_page(id, say::SPECIFICATION, Part::Specification);
    let called = RwSignal::new("names".to_owned());
    let stays = Memo::new(move |_| app.stays(id));
    let content = move || match stays.get() {
        Some(Stays::SaidNo) => all(vec![
            para("caution", say::SPECIFICATION_STAYS),
            link_button(Weight::Quiet, say::TO_RECORDED, Address::Part(id, Part::Recorded).to_string()),
        ]),
        Some(why @ Stays::JoinedSaidNo) => all(vec![
            para("caution", say_book::stays(why)),
            link_button(Weight::Quiet, say_same::JOINED, Address::Part(id, Part::Same).to_string()),
        ]),
        stays => {
            let paper =
                el("pre").class("paper").attr("id", PAPER).words(Signal::derive(move || read(app, id, called)).into());
            let called = choice(
                "called",
                say::CALLED,
                Shape::Segments,
                vec![option("names", say::NAMES), option("initials", say::INITIALS)],
                called,
            );
            let why = or_nothing(stays.map(|_| para("caution", say::EXAMPLE_STAYS)));
            all(vec![why, called, paper.view()])
        }
    };
    let action = move || {
        stays.get().is_none().then(|| {
            let copy = move || share::copy(read(app, id, called), move |copied| after_copy(app, copied));
            let send = move || {
                let title = app.couple(id, |couple| text::title(couple, which(called))).unwrap_or_default();
                share::share_text(title, read(app, id, called), move |left| {
                    app.say(if left { say::SHARED } else { say::NOT_SHARED }.to_owned());
                });
            };
            let share = share::can_share().then(|| button(Weight::Primary, say::SHARE, send));
            let weight = if share.is_some() { Weight::Quiet } else { Weight::Primary };
            all([Some(button(weight, say::COPY_TEXT, copy)), share].into_iter().flatten().collect())
        })
    };
    page(head, column(vec![live(content)]), Some(maybe(action)))
}

const PAPER: &str = "specification-text";

fn which(called: RwSignal<String>) -> Called {
    if called.get() == "initials" { Called::Initials } else { Called::Names }
}

fn read(app: App, id: RecordId, called: RwSignal<String>) -> String {
    let today = app.today.get();
    let called = which(called);
    let house = app.practice(|practice| practice.house());
    app.couple(id, |couple| text::specification(couple, called, today, house)).unwrap_or_default()
}

fn after_copy(app: App, copied: bool) {
    if !copied {
        share::select(PAPER);
    }
    app.say(if copied { say::COPIED } else { say::NOT_COPIED }.to_owned());
}
