//! The state of the running app, and the only code that writes it. A screen hands in what is to be written; it is
//! saved; only then is it shown.

mod examples;
mod exchange;
pub mod leaving;
mod pace;
mod phones;
mod quarantine;
pub mod rescue;
mod same;

use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::rc::Rc;
use std::sync::Arc;

use async_lock::Mutex;
use chrono::NaiveDate;
use leptos::prelude::*;
use send_wrapper::SendWrapper;
use wasm_bindgen_futures::spawn_local;

use super::clock;
use super::route;
use super::tabs::Tabs;
use crate::archive::import::log::ImportLog;
use crate::archive::installation::Installation;
use crate::book::change::{Draft, Write};
use crate::book::copies::LastCopy;
use crate::book::couple::Couple;
use crate::book::id::{InstallationId, RecordId, Stamp};
use crate::book::practice::Practice;
use crate::book::record::{Kind, Record};
use crate::storage::book::{self as stored, Addition, Quarantined};
use crate::storage::copies;
use crate::storage::database::Database;
use crate::storage::error::StorageError;
use crate::words;

/// The book as it is shown: what has been saved, and nothing else.
#[derive(Clone, Debug)]
pub struct Book {
    pub couples: BTreeMap<RecordId, Arc<Record>>,
    pub practice: Arc<Record>,
    pub quarantined: Vec<Quarantined>,
    /// Practices of other phones, for the names that they give themselves.
    practices: BTreeMap<RecordId, Arc<Record>>,
    installation: Installation,
}

/// Whether the book is there.
#[derive(Clone, Debug, PartialEq)]
pub enum Status {
    Opening,
    /// An older version in another tab holds it.
    HeldUp,
    /// What was brought in was not in its places yet when the app was closed.
    Arriving,
    Open,
    Failed(StorageError),
}

/// What is said at the bottom of the screen after something was done.
#[derive(Clone, Debug, PartialEq)]
pub struct Notice {
    pub text: String,
    pub kind: NoticeKind,
    /// A screen was left since: the next one it survives is its last.
    seen: bool,
}

#[derive(Clone, Debug, PartialEq)]
pub enum NoticeKind {
    /// It was saved, and can be taken back.
    Saved(RecordId, Stamp),
    /// It was taken back, and can be put back.
    Undone(RecordId, Stamp),
    /// Said, nothing more.
    Message,
    /// It did not work.
    Failed,
}

impl Notice {
    fn new(text: String, kind: NoticeKind) -> Self {
        Notice { text, kind, seen: false }
    }
}

/// The handle that every screen holds.
#[derive(Clone, Copy)]
pub struct App {
    pub status: RwSignal<Status>,
    pub notice: RwSignal<Option<Notice>>,
    pub today: RwSignal<NaiveDate>,
    /// A new version is there and waits to be let in.
    pub update_ready: RwSignal<bool>,
    /// The last copy of the whole book that left this phone.
    pub last_copy: RwSignal<Option<LastCopy>>,
    /// The last import, while it can be taken back; read by those who ask for it.
    pub last_import: RwSignal<Option<ImportLog>>,
    book: RwSignal<Book>,
    shared: StoredValue<SendWrapper<Rc<Shared>>>,
}

struct Shared {
    database: Database,
    tabs: Tabs,
    /// One write after the other, each drafted on what the one before it has left.
    turn: Mutex<()>,
    /// How often the book was asked for.
    opened: Cell<u32>,
    /// How many parcels of imports are there that cannot be unpacked.
    left: Cell<usize>,
    /// The changes that this page has made: whoever uses it has seen them.
    made: RefCell<Vec<Stamp>>,
    /// The screen with a form that is open, and the record as the form found it.
    found: RefCell<Option<(String, Arc<Record>)>>,
}

/// The app of the screen that asks.
pub fn app() -> App {
    expect_context()
}

impl App {
    /// Makes the state and begins to open the book.
    pub fn open() -> App {
        let nothing = Book {
            couples: BTreeMap::new(),
            practice: Arc::new(Record::new(RecordId(0), Kind::Practice)),
            quarantined: Vec::new(),
            practices: BTreeMap::new(),
            installation: nobody(),
        };
        let heard = RwSignal::new(None);
        let (status, update_ready) = (RwSignal::new(Status::Opening), RwSignal::new(false));
        let shared = Shared {
            database: Database::default().telling(rescue::hear(status, update_ready)),
            tabs: Tabs::open(move |id| heard.set(Some(id))),
            turn: Mutex::new(()),
            opened: Cell::new(0),
            left: Cell::new(0),
            made: RefCell::default(),
            found: RefCell::default(),
        };
        let app = App {
            status,
            notice: RwSignal::new(None),
            today: RwSignal::new(clock::now().0),
            update_ready,
            last_copy: RwSignal::new(None),
            last_import: RwSignal::new(None),
            book: RwSignal::new(nothing),
            shared: StoredValue::new(SendWrapper::new(Rc::new(shared))),
        };
        Effect::new(move || {
            if let Some(id) = heard.get() {
                app.reload(id);
            }
        });
        app.reopen();
        app
    }

    /// Opens the book, again if it failed before.
    pub fn reopen(self) {
        let shared = self.shared();
        let turn = shared.opened.get() + 1;
        shared.opened.set(turn);
        spawn_local(async move {
            let fresh = (InstallationId(clock::random()), RecordId(clock::random()));
            match stored::load(&shared.database, fresh).await {
                // It was asked for again meanwhile: only the last answer is as the book is now.
                _ if shared.opened.get() != turn => (),
                Ok(loaded) if loaded.parcels() > shared.left.get() => self.status.set(Status::Arriving),
                Ok(loaded) => {
                    let practice = loaded.installation.practice;
                    let mut book = Book {
                        couples: BTreeMap::new(),
                        practice: Arc::new(Record::new(practice, Kind::Practice)),
                        quarantined: loaded.quarantined,
                        practices: BTreeMap::new(),
                        installation: loaded.installation,
                    };
                    loaded.records.into_iter().for_each(|record| drop(book.put(record)));
                    self.book.set(book);
                    self.last_copy.set(copies::last(&shared.database).await.unwrap_or_default());
                    self.status.set(Status::Open);
                }
                Err(error) => self.not_opened(error),
            }
        });
    }

    /// Reads the book.
    pub fn with<T>(self, read: impl FnOnce(&Book) -> T) -> T {
        self.book.with(read)
    }

    /// Reads the practice.
    pub fn practice<T>(self, read: impl FnOnce(Practice<'_>) -> T) -> T {
        read(Practice(&self.book.with(|book| Arc::clone(&book.practice))))
    }

    /// Reads a couple, if it is there.
    pub fn couple<T>(self, id: RecordId, read: impl FnOnce(Couple<'_>) -> T) -> Option<T> {
        self.shown(id).map(|record| read(Couple(&record)))
    }

    /// Saves writes to a couple, a new one if the id is new, then says `said` and does `then`. If saving fails, that
    /// is said, and `then` is not done: what was typed stays where it is.
    pub fn save(self, id: RecordId, writes: Vec<Write>, said: String, then: impl FnOnce() + 'static) {
        self.write(id, Kind::Couple, writes, said, Box::new(then));
    }

    /// Saves writes to the practice.
    pub fn set_practice(self, writes: Vec<Write>, said: String, then: impl FnOnce() + 'static) {
        let id = self.book.with_untracked(|book| book.practice.id);
        self.write(id, Kind::Practice, writes, said, Box::new(then));
    }

    /// Takes a change back, or puts back what was taken back.
    pub fn undo(self, id: RecordId, stamp: Stamp) {
        let shared = self.shared();
        spawn_local(async move {
            let turn = shared.turn.lock().await;
            let drafted = self.record(id).map(|record| (record.kind, record.undo(stamp, clock::moment())));
            let Some((kind, drafts)) = drafted.filter(|(_, drafts)| !drafts.is_empty()) else {
                return self.say(words::book::nothing_to_undo());
            };
            let put_back = self.is_undo(id, stamp);
            let result = self.add(&shared, id, kind, drafts).await;
            drop(turn);
            if let Some(stamp) = result {
                let text = if put_back { words::book::put_back() } else { words::book::undone() };
                let kind = if put_back { NoticeKind::Saved(id, stamp) } else { NoticeKind::Undone(id, stamp) };
                self.notice.set(Some(Notice::new(text, kind)));
            }
        });
    }

    /// The latest change to a couple on this phone that can be taken back.
    pub fn undoable(self, id: RecordId) -> Option<Stamp> {
        self.book.with(|book| Some(book.couples.get(&id)?.undoable(book.installation.id)?.stamp))
    }

    /// Says something at the bottom of the screen.
    pub fn say(self, text: String) {
        self.notice.set(Some(Notice::new(text, NoticeKind::Message)));
    }

    /// Another screen was opened: a notice goes along once, as saving often leads somewhere, and then leaves.
    pub fn turn_page(self) {
        self.notice.update(|notice| match notice {
            Some(Notice { kind: NoticeKind::Failed, .. }) | None => {}
            Some(notice) if !notice.seen && notice.kind != NoticeKind::Message => notice.seen = true,
            Some(_) => *notice = None,
        });
    }

    fn fail(self, error: &StorageError) {
        let text = words::storage::not_saved(error);
        self.notice.set(Some(Notice::new(text, NoticeKind::Failed)));
    }

    fn write(self, id: RecordId, kind: Kind, writes: Vec<Write>, said: String, then: Box<dyn FnOnce()>) {
        let shared = self.shared();
        let began = route::path();
        spawn_local(async move {
            let turn = shared.turn.lock().await;
            let record = self.record(id).unwrap_or_else(|| Arc::new(Record::new(id, kind)));
            let Some(mut draft) = record.draft(writes, clock::moment()) else {
                drop(turn);
                return route::conclude(&began, then);
            };
            shared.leave_unseen(&began, &record, &mut draft);
            let result = self.add(&shared, id, kind, vec![draft]).await;
            drop(turn);
            if let Some(stamp) = result {
                self.notice.set(Some(Notice::new(said, NoticeKind::Saved(id, stamp))));
                route::conclude(&began, then);
            }
        });
    }

    /// Saves drafts and shows the record as it is then; says so if that fails. The stamp is that of the last one.
    async fn add(self, shared: &Shared, id: RecordId, kind: Kind, drafts: Vec<Draft>) -> Option<Stamp> {
        let additions = drafts.into_iter().map(|draft| Addition { record: id, kind, draft }).collect();
        match stored::add(&shared.database, additions).await {
            Ok(records) => {
                let stamp = records.last().and_then(|record| record.changes().last()).map(|change| change.stamp);
                shared.made.borrow_mut().extend(stamp);
                self.show(shared, records);
                stamp
            }
            Err(error) => {
                self.fail(&error);
                None
            }
        }
    }

    fn show(self, shared: &Shared, records: Vec<Record>) {
        records.iter().for_each(|record| shared.tabs.tell(record.id));
        self.book.update(|book| records.into_iter().for_each(|record| drop(book.put(record))));
    }

    fn reload(self, id: RecordId) {
        if id == exchange::EVERYTHING {
            return self.reopen();
        }
        let shared = self.shared();
        spawn_local(async move {
            // An import that is being unpacked is done first.
            let _turn = shared.turn.lock().await;
            match stored::reload(&shared.database, id).await {
                Ok(Some(record)) => self.book.update(|book| drop(book.put(record))),
                Ok(None) => self.book.update(|book| drop(book.couples.remove(&id))),
                // The next write to this record will meet the same error and say so.
                Err(_) => {}
            }
        });
    }

    /// A form begins with what this record holds now.
    pub fn form_found(self, record: Option<Arc<Record>>) {
        *self.shared().found.borrow_mut() = record.map(|record| (route::path(), record));
    }

    /// A couple's record. One function for all readers: read inside it, each would bring a copy of it into the app.
    fn shown(self, id: RecordId) -> Option<Arc<Record>> {
        self.book.with(|book| book.couples.get(&id).cloned())
    }

    fn record(self, id: RecordId) -> Option<Arc<Record>> {
        self.book.with_untracked(|book| {
            if book.practice.id == id { Some(book.practice.clone()) } else { book.couples.get(&id).cloned() }
        })
    }

    fn is_undo(self, id: RecordId, stamp: Stamp) -> bool {
        let changes = |record: Arc<Record>| record.changes().iter().any(|c| c.stamp == stamp && c.undoes.is_some());
        self.record(id).is_some_and(changes)
    }

    fn shared(self) -> Rc<Shared> {
        self.shared.with_value(|shared| Rc::clone(shared))
    }
}

impl Shared {
    /// Takes out of a draft what the form of this screen did not show when it was filled in: that came from another tab
    /// or a file meanwhile. It is not replaced by the way, but stands beside, and somebody chooses.
    fn leave_unseen(&self, screen: &str, record: &Record, draft: &mut Draft) {
        if let Some((at, found)) = &*self.found.borrow()
            && at == screen
            && found.id == record.id
        {
            let made = self.made.borrow();
            record.leave_unseen(draft, &|stamp| made.contains(&stamp) || found.holds_change(stamp));
        }
    }
}

/// What stands for the installation until the book is open.
fn nobody() -> Installation {
    Installation { id: InstallationId(0), practice: RecordId(0), next: 1, former: Vec::new(), unknown: None }
}

impl Book {
    /// Puts a record in its place, and gives back the state of it that was there.
    fn put(&mut self, record: Record) -> Option<Arc<Record>> {
        match record.kind {
            Kind::Couple => self.couples.insert(record.id, Arc::new(record)),
            Kind::Practice if record.id == self.practice.id => {
                Some(std::mem::replace(&mut self.practice, Arc::new(record)))
            }
            Kind::Practice => self.practices.insert(record.id, Arc::new(record)),
        }
    }
}
