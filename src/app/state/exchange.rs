//! What the state does beyond writing single records: phones by their names, files in and out, erasing for good.

use leptos::prelude::*;

use super::App;
use crate::app::clock;
use crate::book::id::{InstallationId, Moment};
use crate::book::practice::Practice;
use crate::words::phones as say;

impl App {
    /// What a phone is called: by the name that was given to it here, otherwise by the one that it goes by itself.
    pub fn phone_name(self, by: InstallationId) -> String {
        self.book.with(|book| {
            let ours = book.installation.id == by || book.installation.former.contains(&by);
            let by = if ours { book.installation.id } else { by };
            let mut practices = std::iter::once(&book.practice).chain(book.practices.values());
            let name = practices.find_map(|record| Practice(record).phone_name(by));
            say::phone(name, ours, &by.to_string())
        })
    }

    /// Who did something, and when, on one line.
    pub fn who_and_when(self, by: InstallationId, at: Moment) -> String {
        let (day, time) = clock::civil(at);
        say::who_and_when(&self.phone_name(by), day, time, self.today.get())
    }
}
