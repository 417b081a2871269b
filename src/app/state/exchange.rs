//! Files in, taking an import back, erasing for good. Whatever may be long is done in pieces, with the page awake in
//! between.

use std::sync::Arc;

use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::App;
use super::pace::{Pace, let_go};
use crate::app::clock;
use crate::app::share::breathe;
use crate::archive::file::{FileError, open};
use crate::archive::find;
use crate::archive::import::{Here, Plan, Preview};
use crate::book::couple::Couple;
use crate::book::id::{InstallationId, RecordId};
use crate::book::mentions::mentions;
use crate::book::record::{Kind, Record};
use crate::book::search::Lower;
use crate::storage::book::Quarantined;
use crate::storage::error::StorageError;
use crate::storage::import::{self as stored, Imported};
use crate::storage::{drafts, parcels, typed};
use crate::words;

/// What the other tabs are told when more has changed than one record.
pub(super) const EVERYTHING: RecordId = RecordId(0);

/// What hears of a file that was made, or read.
pub type Told<T> = Box<dyn FnOnce(T)>;

impl App {
    /// Reads what a file would bring. Nothing is changed.
    pub fn preview(
        self,
        bytes: Vec<u8>,
        lower: Lower,
        progress: Box<dyn Fn(u8) -> bool>,
        done: Told<Result<Plan, FileError>>,
    ) {
        spawn_local(async move {
            breathe().await;
            if let Some(mut result) = self.read_file(bytes, progress).await {
                if let Ok(plan) = &mut result {
                    self.recognise(plan, lower).await;
                }
                done(result);
            }
        });
    }

    /// Takes in what a file brings, all of it or nothing. `done` hears whether it came in.
    pub fn bring_in(self, plan: Arc<Plan>, take_practice: bool, done: impl FnOnce(bool) + 'static) {
        let done: Told<bool> = Box::new(done);
        let shared = self.shared();
        spawn_local(async move {
            let turn = shared.turn.lock().await;
            let fresh = InstallationId(clock::random());
            let result = stored::import(&shared.database, &plan, take_practice, fresh, clock::moment()).await;
            let is_in = self.settle(result);
            if is_in {
                self.say(words::copies::brought_in());
            }
            done(is_in);
            if is_in {
                // It is on the disk, and shown. Nothing else is written here before all of it is in its place; if that
                // fails, it is done when the book is opened again.
                let _ = parcels::unpack(&shared.database).await;
                shared.tabs.tell(EVERYTHING);
            }
            drop(turn);
            if is_in && let Some(plan) = Arc::into_inner(plan) {
                let_go(plan.entries).await;
            }
        });
    }

    /// Puts what was brought in before the app was closed in its places, and opens the book.
    pub fn unpack(self) {
        let shared = self.shared();
        spawn_local(async move {
            let turn = shared.turn.lock().await;
            let result = parcels::unpack(&shared.database).await;
            drop(turn);
            match result {
                Ok(left) => {
                    shared.left.set(left);
                    self.reopen();
                }
                Err(error) => self.not_opened(error),
            }
        });
    }

    /// Takes the last import back.
    pub fn undo_import(self) {
        let shared = self.shared();
        spawn_local(async move {
            let turn = shared.turn.lock().await;
            let result = stored::undo_import(&shared.database).await;
            drop(turn);
            if self.settle(result) {
                shared.tabs.tell(EVERYTHING);
                self.say(words::copies::import_undone());
            }
        });
    }

    /// Erases a couple for good, with every word that was half typed about it.
    pub fn erase(self, id: RecordId, lower: Lower, then: impl FnOnce() + 'static) {
        let then: Box<dyn FnOnce()> = Box::new(then);
        let shared = self.shared();
        spawn_local(async move {
            let turn = shared.turn.lock().await;
            let ids = self.book.with_untracked(|book| book.joined(id));
            let erased: Vec<Arc<Record>> = ids.iter().filter_map(|id| self.record(*id)).collect();
            let result = stored::erase(&shared.database, ids.clone()).await;
            drop(turn);
            match result {
                Ok(marks) => {
                    ids.iter().for_each(|id| drafts::forget_about(&id.to_string()));
                    forget_half_typed(&erased, lower);
                    self.book.update(|book| book.forget_quarantined(&ids));
                    self.show(&shared, marks);
                    then();
                    // Another screen takes a notice away that was said on the one before.
                    breathe().await;
                    self.say(words::copies::erased());
                }
                Err(error) => self.fail(&error),
            }
        });
    }

    /// None if nobody waits for it any more.
    async fn read_file(self, bytes: Vec<u8>, progress: Box<dyn Fn(u8) -> bool>) -> Option<Result<Plan, FileError>> {
        let mut file = match open(bytes) {
            Ok(file) => file,
            Err(error) => return Some(Err(error)),
        };
        let mut preview = self.book.with_untracked(|book| {
            let own = (!book.practice.changes().is_empty()).then_some(book.practice.as_ref());
            let lost = book.quarantined.iter().filter_map(Quarantined::for_good_of).collect();
            Preview::new(&book.installation, own, file.header(), clock::moment()).with_lost(lost)
        });
        let mut pace = Pace::new();
        while let Some(row) = file.next_row() {
            let row = match row {
                Ok(row) => row,
                Err(error) => return Some(Err(error)),
            };
            let id = row.id();
            self.book.with_untracked(|book| preview.take(row, id.map_or(Here::Nothing, |id| book.here(id))));
            if pace.is_due() {
                let (read, all) = file.progress();
                if !progress((read as f64 / all as f64 * 100.0) as u8) {
                    return None;
                }
                pace.rest().await;
            }
        }
        Some(Ok(preview.finish()))
    }

    /// Looks for couples that would be new and are here already under another id.
    async fn recognise(self, plan: &mut Plan, lower: Lower) {
        let sought = plan.sought(lower);
        if sought.is_empty() {
            return;
        }
        let couples: Vec<Arc<Record>> = self.book.with_untracked(|book| book.couples.values().cloned().collect());
        let mut pace = Pace::new();
        for here in couples {
            let like = sought.like(Couple(&here), lower).into_iter();
            plan.perhaps.extend(like.map(|theirs| (theirs, here.id)));
            if pace.is_due() {
                pace.rest().await;
            }
        }
    }

    /// Reads what the last import added. Of a large one it is long, and Today does not ask for it.
    pub fn read_last_import(self) {
        let shared = self.shared();
        spawn_local(async move {
            let log = stored::last_import(&shared.database).await.unwrap_or_default();
            // What is known already is not shown anew.
            if self.last_import.try_with_untracked(|known| *known != log) == Some(true) {
                self.last_import.set(log);
            }
        });
    }

    /// Shows the book as it is after an import, or after it was taken back. False if that failed, which is said.
    fn settle(self, result: Result<Imported, StorageError>) -> bool {
        match result {
            Ok(Imported { installation, records, gone, log }) => {
                let mut before = Vec::new();
                self.book.update(|book| {
                    if book.practice.id != installation.practice {
                        let own = book.practices.remove(&installation.practice);
                        let own = own.unwrap_or_else(|| Arc::new(Record::new(installation.practice, Kind::Practice)));
                        let before = std::mem::replace(&mut book.practice, own);
                        book.practices.insert(before.id, before);
                    }
                    book.installation = installation;
                    let erased = records.iter().filter(|record| record.erased().is_some());
                    let erased: Vec<RecordId> = erased.map(|record| record.id).collect();
                    erased.iter().for_each(|id| drafts::forget_about(&id.to_string()));
                    book.forget_quarantined(&erased);
                    for id in gone {
                        before.extend(book.couples.remove(&id));
                        before.extend(book.practices.remove(&id));
                    }
                    before.extend(records.into_iter().filter_map(|record| book.put(record)));
                });
                self.last_import.set(log);
                spawn_local(let_go(before));
                true
            }
            Err(error) => {
                self.fail(&error);
                false
            }
        }
    }
}

impl super::Book {
    /// What stands on this phone under an id.
    fn here(&self, id: RecordId) -> Here<'_> {
        let practice = (self.practice.id == id && !self.practice.changes().is_empty()).then_some(&self.practice);
        let record = self.couples.get(&id).or_else(|| self.practices.get(&id)).or(practice);
        match record {
            Some(record) => Here::Record(record),
            None if self.quarantined.iter().any(|row| row.key == id.to_string()) => Here::Unreadable,
            None => Here::Nothing,
        }
    }
}

/// The forms that are no couple's: an entry begun anew, a list that was pasted, an invitation. What is half typed about
/// another couple stays, whoever is named in it.
const OF_NOBODY: [&str; 3] = ["new-couple", "take-in", "invite."];

/// Forgets half-typed words in the forms that are no couple's, if they name one of these.
fn forget_half_typed(erased: &[Arc<Record>], lower: Lower) {
    let of_nobody = |form: &str| form.split('~').next().is_some_and(|form| OF_NOBODY.contains(&form));
    for (form, words) in typed::all().into_iter().filter(|(form, _)| of_nobody(form)) {
        let mut words: Vec<String> = words.into_values().collect();
        // In a message the names of a list are spelled by number where their letters are not plain.
        let lists = words.iter().filter_map(|text| find::read(text.as_bytes()).ok());
        let answers: Vec<String> = lists.flat_map(|said| said.answers.into_values()).collect();
        words.extend(answers);
        if erased.iter().any(|record| mentions(record, &words.join("\n"), lower)) {
            typed::forget_kept(&form);
        }
    }
}
