//! Files out: the whole book, some couples, one. The file is made as soon as it is known what is to leave, so that it
//! is there when a button is pressed: a browser lets a press share only for a moment.

use std::sync::Arc;

use crate::parts::el::{el, live, maybe, nothing};
use crate::parts::layout::{all, column, para};
use leptos::prelude::*;

use crate::app::address::Part;
use crate::app::share;
use crate::app::state::leaving::{Made, Which};
use crate::app::state::{App, app};
use crate::book::id::RecordId;
use crate::parts::button::{Weight, button};
use crate::parts::page::page;
use crate::screens::shell::couple_page::{CouplePage, couple_page};
use crate::words::{copies as say, format};

/// A file of one couple.
pub fn one(id: RecordId) -> AnyView {
    let CouplePage { head, .. } = couple_page(id, say::COPY_ONE, Part::Copy);
    let out = Out::of(app(), Signal::stored(Some(Which::Couples(vec![id]))));
    let content = column(vec![para("", say::COPIES_HOW), para("small", say::NOT_ENCRYPTED), out.said()]);
    page(head, content, Some(out.buttons()))
}

/// A file on its way out. Copy it freely.
#[derive(Clone, Copy)]
pub struct Out {
    app: App,
    which: Signal<Option<Which>>,
    made: RwSignal<Option<Arc<Made>>>,
    percent: RwSignal<u8>,
    /// Which making is the last that was begun: the others are given up.
    turn: StoredValue<u32>,
}

impl Out {
    /// Makes a file of whatever is chosen, anew whenever that changes or the book does.
    pub fn of(app: App, which: Signal<Option<Which>>) -> Out {
        let out = Out { app, which, made: RwSignal::new(None), percent: RwSignal::new(0), turn: StoredValue::new(0) };
        Effect::new(move || {
            app.with(|_| ());
            let which = which.get();
            untrack(|| out.make(which));
        });
        out
    }

    fn make(self, which: Option<Which>) {
        self.turn.update_value(|turn| *turn += 1);
        self.made.set(None);
        self.percent.set(0);
        let mine = self.turn.get_value();
        let is_wanted = move || self.turn.try_get_value() == Some(mine);
        let progress = move |percent| is_wanted() && self.percent.try_set(percent).is_none();
        let done = move |made: Made| {
            if is_wanted() {
                let _ = self.made.try_set(Some(Arc::new(made)));
            }
        };
        if let Some(which) = which {
            self.app.make_file(which, Box::new(progress), Box::new(done));
        }
    }

    /// How far it is, what is in it, and who stays.
    pub fn said(self) -> AnyView {
        let said = move || match (self.made.get(), self.which.get()) {
            (Some(made), _) => {
                let stay = say::stay(made.said_no, made.examples);
                let stay = if stay.is_empty() { nothing() } else { para("small", stay) };
                all(vec![para("", say::ready(made.couples, made.text.len())), stay])
            }
            (None, Some(_)) => para("", say::making(self.percent.get())),
            (None, None) => para("", say::NOBODY_CHOSEN),
        };
        el("div").class("column near").attr("role", "status").child(live(said)).view()
    }

    /// Share it, or download it.
    pub fn buttons(self) -> AnyView {
        // A book without couples may have settings in it, or marks of what was erased.
        let is_said = move || {
            let is_book = self.which.with(|which| *which == Some(Which::Book));
            let is_set = || self.app.practice(|practice| !practice.0.changes().is_empty());
            is_book && (is_set() || self.app.with(|book| book.couples.values().any(|record| record.erased().is_some())))
        };
        let is_any = move |made: &Arc<Made>| made.couples > 0 || is_said();
        let there = Memo::new(move |_| self.made.with(|made| made.as_ref().is_some_and(is_any)));
        maybe(move || {
            there.get().then(|| {
                let share = share::can_share_files()
                    .then(|| button(Weight::Primary, say::SHARE_FILE, move || self.send(Self::share)));
                let weight = if share.is_some() { Weight::Quiet } else { Weight::Primary };
                let download = button(weight, say::DOWNLOAD, move || self.send(Self::download));
                all([Some(download), share].into_iter().flatten().collect())
            })
        })
    }

    fn send(self, by: fn(Self, Arc<Made>, String)) {
        let Some(made) = self.made.get_untracked() else { return };
        let name = self.which.with_untracked(|which| which.as_ref().map(|which| name(self.app, which)));
        by(self, made, name.unwrap_or_default());
    }

    fn share(self, made: Arc<Made>, name: String) {
        let text = made.text.clone();
        share::share_file(name, self.mime(), text, move |left| {
            if left {
                self.app.has_left(&made);
            }
            self.app.say(if left { say::FILE_SHARED } else { say::FILE_NOT_SHARED }.to_owned());
        });
    }

    fn mime(self) -> &'static str {
        let is_table = self.which.with_untracked(|which| *which == Some(Which::Table));
        if is_table { share::CSV } else { share::JSON }
    }

    fn download(self, made: Arc<Made>, name: String) {
        if share::download(&name, self.mime(), &made.text) {
            self.app.has_left(&made);
            self.app.say(say::DOWNLOADED.to_owned());
        } else {
            self.app.say(say::FILE_NOT_SHARED.to_owned());
        }
    }
}

/// What the file is called: no names of people, which would stand in every list of files on the way.
fn name(app: App, which: &Which) -> String {
    let day = format::day_sortable(app.today.get_untracked());
    match which {
        Which::Book => format!("bandwright-book-{day}.json"),
        Which::Table => format!("bandwright-table-{day}.csv"),
        Which::Couples(ids) => match ids.as_slice() {
            [only] => format!("bandwright-{}-{day}.json", only.to_string().get(..6).unwrap_or_default()),
            _ => format!("bandwright-couples-{day}.json"),
        },
    }
}
