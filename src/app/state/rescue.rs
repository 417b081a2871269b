//! What is done when the book does not open: what can be read is gathered, so that it can leave the phone; and what the
//! database says without being asked.

use std::collections::BTreeMap;

use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::exchange::Told;
use super::{App, Notice, NoticeKind, Status};
use crate::app::{clock, show};
use crate::archive::file::{Header, Holds, Writer};
use crate::book::couple::Couple;
use crate::book::id::{InstallationId, Moment, RecordId};
use crate::book::leaving::{Refusing, Stays};
use crate::book::practice::Practice;
use crate::book::record::{Kind, Record};
use crate::storage::database::News;
use crate::storage::drafts::Draft;
use crate::storage::error::StorageError;
use crate::storage::rescue::{self, Found};
use crate::storage::typed;
use crate::words::{book as say_book, storage as say_storage};

/// What can still leave a phone whose book does not open.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Rescued {
    /// The book as far as it can be read, as a file; none where nothing in it may leave.
    pub file: Option<String>,
    pub couples: usize,
    pub said_no: usize,
    pub examples: usize,
    /// The rows that cannot be read, as they stand, and how many these are.
    pub unreadable: String,
    pub unreadable_rows: usize,
    pub typed: Vec<Typed>,
    /// The practice of this phone, if it can be told which it is; otherwise those that it may be.
    pub practices: Vec<Settings>,
}

/// A practice that may be this phone's: what it is known by.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Settings {
    pub practice: RecordId,
    /// The names that it gives to phones.
    pub phones: Vec<String>,
    pub fair: Option<String>,
    pub last_set: Moment,
}

/// What was typed into one form and not saved.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Typed {
    /// The names of the couple that it is about, if it is about one that can be read.
    pub names: Option<String>,
    pub words: Draft,
    /// They said no to being recorded: it is shown, and stays out of files.
    pub stays: bool,
}

impl App {
    /// Gathers what can still leave. `done` hears it in any case: half-typed words are kept elsewhere than the book.
    pub fn rescue(self, done: Told<Rescued>) {
        let shared = self.shared();
        spawn_local(async move { done(rescued(rescue::look(&shared.database).await.unwrap_or_default())) });
    }

    /// Begins a new register for a book whose own cannot be read, and opens it.
    pub fn renew_register(self, practice: Option<RecordId>) {
        let shared = self.shared();
        spawn_local(async move {
            let practice = practice.unwrap_or_else(|| RecordId(clock::random()));
            match rescue::renew(&shared.database, InstallationId(clock::random()), practice).await {
                Ok(()) => self.reopen(),
                Err(error) => self.not_opened(error),
            }
        });
    }

    /// What is shown already stays under the fingers; where nothing is yet, that the book did not open.
    pub(super) fn not_opened(self, error: StorageError) {
        if self.status.get_untracked() == Status::Open {
            let text = say_storage::not_opened(&error);
            self.notice.set(Some(Notice::new(text, NoticeKind::Failed)));
        } else {
            self.status.set(Status::Failed(error));
        }
    }
}

/// Who hears the news of the database.
pub(super) fn hear(status: RwSignal<Status>, update_ready: RwSignal<bool>) -> impl Fn(News) + 'static {
    move |news| match news {
        News::HeldUp if status.get_untracked() == Status::Open => {}
        News::HeldUp => status.set(Status::HeldUp),
        // To load the page again is all that is left to do: what is typed in it is kept.
        News::Newer => update_ready.set(true),
    }
}

fn rescued(found: Found) -> Rescued {
    let practices = practices_of(&found);
    let practice = practices.first().filter(|_| practices.len() == 1).map(|only| only.practice);
    let by = found.installation.as_ref().map_or_else(|| InstallationId(clock::random()), |it| it.id);
    let header = Header { written: clock::moment(), by, practice, holds: Holds::Book, unknown: None };
    let mut rescued = Rescued {
        file: None,
        couples: 0,
        said_no: 0,
        examples: 0,
        unreadable: found.unreadable,
        unreadable_rows: found.unreadable_rows,
        typed: Vec::new(),
        practices,
    };
    let refusing = Refusing::of(found.records.iter());
    let mut writer = Writer::new(&header, refusing.clone());
    let mut leave = 0;
    for record in &found.records {
        let is_couple = record.kind == Kind::Couple && !record.changes().is_empty();
        match writer.add(record) {
            Ok(()) => {
                leave += 1;
                rescued.couples += usize::from(is_couple);
            }
            Err(Stays::SaidNo | Stays::JoinedSaidNo) => rescued.said_no += 1,
            Err(Stays::Example) => rescued.examples += 1,
        }
    }
    rescued.file = (leave > 0).then(|| writer.finish());
    let mut couples: BTreeMap<String, &Record> = BTreeMap::new();
    couples.extend(found.records.iter().filter(|it| it.kind == Kind::Couple).map(|it| (it.id.to_string(), it)));
    // What is shown to the couple is kept beside the words of forms, and nobody has typed it.
    for (form, words) in typed::all().into_iter().filter(|(form, _)| form != show::KEPT) {
        // A form about a couple has its id in its name.
        let about = couples.iter().find(|(id, _)| form.contains(id.as_str())).map(|(_, record)| Couple(record));
        let stays =
            about.is_some_and(|couple| matches!(refusing.may_leave(couple), Err(Stays::SaidNo | Stays::JoinedSaidNo)));
        rescued.typed.push(Typed { names: about.map(say_book::names), words, stays });
    }
    rescued
}

/// The practice that the register names; without a register every one in which anything is set.
fn practices_of(found: &Found) -> Vec<Settings> {
    let named = found.installation.as_ref().map(|it| it.practice);
    let may_be = |record: &&Record| {
        record.kind == Kind::Practice
            && !record.changes().is_empty()
            && named.is_none_or(|practice| practice == record.id)
    };
    let settings = |record: &Record| Settings {
        practice: record.id,
        phones: Practice(record).phone_names().into_iter().map(str::to_owned).collect(),
        fair: Practice(record).fair().map(str::to_owned),
        last_set: record.changes().iter().map(|change| change.at).max().unwrap_or(clock::moment()),
    };
    found.records.iter().filter(may_be).map(settings).collect()
}
