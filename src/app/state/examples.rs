//! The example book.

use std::sync::Arc;

use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::App;
use crate::app::clock;
use crate::book::couple::Couple;
use crate::book::example;
use crate::book::id::{ItemId, RecordId};
use crate::book::record::{Kind, Record};
use crate::book::verbs;
use crate::storage::book::{self as stored, Addition};
use crate::words;

impl App {
    /// Loads the example book: in one go, or not at all.
    pub fn load_examples(self) {
        let shared = self.shared();
        spawn_local(async move {
            let couples = example::couples(self.today.get_untracked(), || ItemId(clock::random()));
            let additions = couples.into_iter().filter_map(|writes| {
                let id = RecordId(clock::random());
                let draft = Record::new(id, Kind::Couple).draft(writes, clock::moment())?;
                Some(Addition { record: id, kind: Kind::Couple, draft })
            });
            let turn = shared.turn.lock().await;
            // A second press while the first was being saved: once is enough.
            if untrack(|| self.untouched_examples()) > 0 {
                return;
            }
            let result = stored::add(&shared.database, additions.collect()).await;
            drop(turn);
            match result {
                Ok(records) => {
                    let count = records.len();
                    self.show(&shared, records);
                    self.say(words::book::examples_loaded(count));
                }
                Err(error) => self.fail(&error),
            }
        });
    }

    /// How many example couples there are that nobody has edited.
    pub fn untouched_examples(self) -> usize {
        let untouched =
            |record: &&Arc<Record>| Couple(record).is_example() && !verbs::is_edited_example(Couple(record));
        self.book.with(|book| book.couples.values().filter(untouched).count())
    }

    /// How many example couples there are that somebody has edited.
    pub fn edited_examples(self) -> usize {
        let edited = |record: &&Arc<Record>| verbs::is_edited_example(Couple(record));
        self.book.with(|book| book.couples.values().filter(edited).count())
    }

    /// Takes the example couples out that nobody has edited.
    pub fn remove_examples(self) {
        let shared = self.shared();
        spawn_local(async move {
            let ids = self.book.with_untracked(|book| {
                book.couples.values().filter(|record| Couple(record).is_example()).map(|record| record.id).collect()
            });
            match stored::forget_examples(&shared.database, ids).await {
                Ok(gone) => {
                    self.book.update(|book| gone.iter().for_each(|id| drop(book.couples.remove(id))));
                    gone.iter().for_each(|id| shared.tabs.tell(*id));
                    self.say(words::book::examples_removed(gone.len(), untrack(|| self.edited_examples())));
                }
                Err(error) => self.fail(&error),
            }
        });
    }
}
