//! Files out: what is to leave, written in pieces, and that it has left.
//!
//! A file is made before the button is pressed, and anew when the book changes: a browser lets a press share only
//! for a moment, and a large book takes longer to write.

use std::collections::BTreeMap;
use std::sync::Arc;

use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::App;
use super::exchange::Told;
use super::pace::{AT_ONCE, Pace};
use crate::app::clock;
use crate::app::share::breathe;
use crate::archive::file::{Header, Holds, Writer};
use crate::book::copies::LastCopy;
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::book::leaving::{Refusing, Stays};
use crate::book::record::{Kind, Record};
use crate::storage::copies as stored_copies;
use crate::words::spreadsheet;

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
}
