//! Phones by their names, and what of this one's writing waits for a copy.

use std::collections::BTreeSet;

use chrono::NaiveDate;
use leptos::prelude::*;

use super::{App, Book};
use crate::app::clock;
use crate::book::copies;
use crate::book::id::{InstallationId, Moment};
use crate::book::practice::Practice;
use crate::words::phones as say;

impl App {
    /// What a phone is called: by the name that was given to it here, otherwise by the one that it goes by itself.
    pub fn phone_name(self, by: InstallationId) -> String {
        self.book.with(|book| {
            let ours = book.is_ours(by);
            // Under a new mark this phone goes by the name that it had under the one before.
            let mut ids = vec![by];
            if ours {
                ids = book.installation.former.clone();
                ids.push(book.installation.id);
            }
            let named = |by: &InstallationId| {
                let mut practices = std::iter::once(&book.practice).chain(book.practices.values());
                practices.find_map(|record| Practice(record).phone_name(*by))
            };
            let name = ids.iter().rev().find_map(named);
            say::phone(name, ours, &by.to_string())
        })
    }

    /// This phone, then every other that has written into the book.
    pub fn phones(self) -> Vec<InstallationId> {
        self.book.with(|book| {
            let mut others = BTreeSet::new();
            for record in book.couples.values().chain([&book.practice]) {
                others.extend(record.changes().iter().map(|change| change.by()).filter(|by| !book.is_ours(*by)));
            }
            std::iter::once(book.installation.id).chain(others).collect()
        })
    }

    /// Who did something, and when, on one line.
    pub fn who_and_when(self, by: InstallationId, at: Moment) -> String {
        let (day, time) = clock::civil(at);
        say::who_and_when(&self.phone_name(by), day, time, self.today.get())
    }

    /// The day since which changes wait for a copy of the whole book, if it is time for one.
    pub fn copy_due(self) -> Option<NaiveDate> {
        self.today.track();
        let waiting = self.waiting();
        copies::is_due(waiting, clock::moment()).then_some(waiting).flatten().map(|since| clock::civil(since).0)
    }

    /// The earliest change made on this phone that no copy of the whole book holds.
    pub fn waiting(self) -> Option<Moment> {
        self.last_copy.with(|last| {
            self.book.with(|book| {
                let mut ours = vec![book.installation.id];
                ours.extend(&book.installation.former);
                let records = book.couples.values().chain([&book.practice]).map(|record| record.as_ref());
                copies::waiting(records, &ours, last.as_ref())
            })
        })
    }
}

impl Book {
    fn is_ours(&self, by: InstallationId) -> bool {
        self.installation.id == by || self.installation.former.contains(&by)
    }
}
