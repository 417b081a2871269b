//! Files out and in, taking an import back, erasing for good. Whatever may be long is done in pieces, with the page
//! awake in between.

use std::collections::BTreeMap;
use std::sync::Arc;

use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::App;
use crate::app::clock;
use crate::app::share::breathe;
use crate::archive::file::{FileError, Header, Holds, Writer, open};
use crate::archive::import::{Here, Plan, Preview};
use crate::book::copies::LastCopy;
use crate::book::couple::Couple;
use crate::book::id::{InstallationId, RecordId};
use crate::book::leaving::{Refusing, Stays};
use crate::book::record::{Kind, Record};
use crate::book::search::Lower;
use crate::storage::book::SetAside;
use crate::storage::error::StorageError;
use crate::storage::import::{self as stored, Imported};
use crate::storage::{copies as stored_copies, drafts, parcels};
use crate::words;
use crate::words::spreadsheet;

/// So many records are written, or let go, without a look at the clock.
const AT_ONCE: usize = 50;
/// So long the page is kept busy before it is given a turn, in milliseconds.
const BUSY_MS: f64 = 30.0;
/// What the other tabs are told when more has changed than one record.
pub(super) const EVERYTHING: RecordId = RecordId(0);

/// Which couples are to leave.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Which {
    Book,
    Couples(Vec<RecordId>),
    /// All couples as a table: to look at, not to read again.
    Table,
}

/// A file that is ready to leave.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Made {
    pub text: String,
    /// How many couples are in it.
    pub couples: usize,
    /// How many stay because they said no, and how many because they are invented.
    pub said_no: usize,
    pub examples: usize,
    /// For the whole book: every change made here with a lower number is in it.
    covers: Option<u64>,
}

/// What hears of a file that was made, or read.
pub type Told<T> = Box<dyn FnOnce(T)>;

impl App {
    /// Makes a file. `progress` hears how many hundredths are done, and answers whether anybody still waits for it.
    pub fn make_file(self, which: Which, progress: Box<dyn Fn(u8) -> bool>, done: Told<Made>) {
        let (header, records) = self.leaving(&which);
        let refusing = self.book.with_untracked(super::Book::refusing);
        // Whatever is written here later gets a higher number than all that is known now.
        let highest = records.iter().map(|record| record.highest()).max().unwrap_or_default();
        let covers = (which == Which::Book).then_some(highest + 1);
        spawn_local(async move {
            let mut made = Made { text: String::new(), couples: 0, said_no: 0, examples: 0, covers };
            let mut writer = Writer::new(&header, refusing.clone());
            let mut table = String::new();
            let mut pace = Pace::new();
            breathe().await;
            for (at, some) in records.chunks(AT_ONCE).enumerate() {
                if pace.is_due() {
                    if !progress((at * AT_ONCE * 100 / records.len()) as u8) {
                        return;
                    }
                    pace.rest().await;
                }
                if which == Which::Table {
                    add_to_table(&mut table, some, &refusing);
                }
                for record in some {
                    made.count(record, writer.add(record));
                }
            }
            made.text = if which == Which::Table { table } else { writer.finish() };
            done(made);
        });
    }

    /// Notes that a file has left the phone; only one of the whole book counts as a copy.
    pub fn has_left(self, made: &Made) {
        let Some(next) = made.covers else { return };
        let unknown = self.last_copy.with_untracked(|last| last.as_ref().and_then(|last| last.unknown.clone()));
        let last = LastCopy { at: clock::moment(), next, unknown };
        let shared = self.shared();
        spawn_local(async move {
            match stored_copies::note(&shared.database, &last).await {
                Ok(()) => self.last_copy.set(Some(last)),
                Err(error) => self.fail(&error),
            }
        });
    }

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
    pub fn erase(self, id: RecordId, then: impl FnOnce() + 'static) {
        let then: Box<dyn FnOnce()> = Box::new(then);
        let shared = self.shared();
        spawn_local(async move {
            let turn = shared.turn.lock().await;
            let ids = self.book.with_untracked(|book| book.joined(id));
            let result = stored::erase(&shared.database, ids.clone()).await;
            drop(turn);
            match result {
                Ok(marks) => {
                    ids.iter().for_each(|id| drafts::forget_about(&id.to_string()));
                    self.book.update(|book| book.forget_aside(&ids));
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

    /// Why a couple stays on this phone, if it does.
    pub fn stays(self, id: RecordId) -> Option<Stays> {
        self.book.with(|book| book.refusing().may_leave(Couple(book.couples.get(&id)?)).err())
    }

    /// What is to leave, in the order of the ids, and what stands above it.
    fn leaving(self, which: &Which) -> (Header, Vec<Arc<Record>>) {
        self.book.with_untracked(|book| {
            let mut header = Header {
                written: clock::moment(),
                by: book.installation.id,
                practice: None,
                holds: Holds::Couples,
                unknown: None,
            };
            let records = match which {
                Which::Couples(ids) => {
                    let chosen = book.couples.iter().filter(|(id, _)| ids.contains(id));
                    chosen.map(|(_, record)| Arc::clone(record)).collect()
                }
                Which::Book | Which::Table => {
                    header.holds = Holds::Book;
                    let is_set = !book.practice.changes().is_empty();
                    header.practice = is_set.then_some(book.practice.id);
                    let mut all: BTreeMap<RecordId, &Arc<Record>> = BTreeMap::new();
                    // One in which nothing was ever set says nothing.
                    let own = is_set.then_some(&book.practice);
                    let practices = own.into_iter().chain(book.practices.values());
                    all.extend(book.couples.values().chain(practices).map(|record| (record.id, record)));
                    all.into_values().map(Arc::clone).collect()
                }
            };
            (header, records)
        })
    }

    /// None if nobody waits for it any more.
    async fn read_file(self, bytes: Vec<u8>, progress: Box<dyn Fn(u8) -> bool>) -> Option<Result<Plan, FileError>> {
        let mut file = match open(bytes) {
            Ok(file) => file,
            Err(error) => return Some(Err(error)),
        };
        let mut preview = self.book.with_untracked(|book| {
            let own = (!book.practice.changes().is_empty()).then_some(book.practice.as_ref());
            let lost = book.set_aside.iter().filter_map(SetAside::for_good_of).collect();
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
                    book.forget_aside(&erased);
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

/// When the page is to be given a turn. Each turn costs milliseconds, so they are not taken oftener than needed.
struct Pace(f64);

impl Pace {
    fn new() -> Self {
        Pace(js_sys::Date::now())
    }

    fn is_due(&self) -> bool {
        // A clock that was set back counts as time gone by.
        !(0.0..BUSY_MS).contains(&(js_sys::Date::now() - self.0))
    }

    async fn rest(&mut self) {
        breathe().await;
        *self = Pace::new();
    }
}

/// Frees what may be large, some at a time.
async fn let_go<T>(mut things: Vec<T>) {
    let mut pace = Pace::new();
    while !things.is_empty() {
        things.truncate(things.len().saturating_sub(AT_ONCE));
        if pace.is_due() {
            pace.rest().await;
        }
    }
}

impl Made {
    fn count(&mut self, record: &Record, added: Result<(), Stays>) {
        match added {
            Ok(()) => self.couples += usize::from(is_couple(record)),
            Err(Stays::SaidNo | Stays::JoinedSaidNo) => self.said_no += 1,
            Err(Stays::Example) => self.examples += 1,
        }
    }
}

/// Adds some couples to a table, whose heads stand above the first of them.
fn add_to_table(table: &mut String, some: &[Arc<Record>], refusing: &Refusing) {
    let couples = some.iter().filter(|record| record.kind == Kind::Couple).map(|record| Couple(record));
    let rows = spreadsheet::table(couples, refusing);
    let heads = if table.is_empty() { 0 } else { rows.find('\n').map_or(0, |end| end + 1) };
    table.push_str(&rows[heads..]);
}

fn is_couple(record: &Record) -> bool {
    record.kind == Kind::Couple && record.erased().is_none() && record.fields().next().is_some()
}

impl super::Book {
    /// Who stays because of a no.
    pub fn refusing(&self) -> Refusing {
        Refusing::of(self.couples.values().map(|record| record.as_ref()))
    }

    /// What stands on this phone under an id.
    fn here(&self, id: RecordId) -> Here<'_> {
        let practice = (self.practice.id == id && !self.practice.changes().is_empty()).then_some(&self.practice);
        let record = self.couples.get(&id).or_else(|| self.practices.get(&id)).or(practice);
        match record {
            Some(record) => Here::Record(record),
            None if self.set_aside.iter().any(|row| row.key == id.to_string()) => Here::Unreadable,
            None => Here::Nothing,
        }
    }
}
