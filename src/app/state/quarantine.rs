//! Rows that cannot be read: out as they stand, and out of the way.

use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::exchange::EVERYTHING;
use super::{App, Book};
use crate::app::{clock, share};
use crate::book::id::RecordId;
use crate::storage::book as stored_book;
use crate::storage::copies as stored_copies;
use crate::words;

impl App {
    /// Puts what could not be read among the downloads, as it stands.
    pub fn download_quarantined(self) {
        let shared = self.shared();
        let keys: Vec<String> =
            self.book.with_untracked(|book| book.quarantined.iter().map(|row| row.key.clone()).collect());
        spawn_local(async move {
            match stored_copies::quarantined(&shared.database, &keys).await {
                Ok(text) if share::download("bandwright-set-aside.txt", share::TEXT, &text) => {
                    self.say(words::copies::DOWNLOADED.to_owned());
                }
                Ok(_) => self.say(words::copies::FILE_NOT_SHARED.to_owned()),
                Err(error) => self.fail(&error),
            }
        });
    }

    /// Puts what could not be read aside for good, so that a file with the same couples can bring them in.
    pub fn quarantine(self) {
        let shared = self.shared();
        spawn_local(async move {
            let keys: Vec<String> = self.book.with_untracked(|book| {
                book.quarantined.iter().filter(|row| row.is_damaged()).map(|row| row.key.clone()).collect()
            });
            match stored_book::quarantine(&shared.database, &keys, clock::moment()).await {
                Ok(()) => {
                    shared.tabs.tell(EVERYTHING);
                    self.reopen();
                    self.say(words::copies::was_quarantined(keys.len()));
                }
                Err(error) => self.fail(&error),
            }
        });
    }
}

impl Book {
    /// What was put aside of these records went with them.
    pub(super) fn forget_quarantined(&mut self, erased: &[RecordId]) {
        self.quarantined.retain(|row| row.for_good_of().is_none_or(|id| !erased.contains(&id)));
    }
}
