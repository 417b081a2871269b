//! A record as a form found it when it was opened, so that the form saves what was changed in it and nothing else:
//! another tab may have written the other fields meanwhile.

use std::sync::Arc;

use leptos::prelude::*;

use super::state::App;
use crate::book::change::Write;
use crate::book::id::RecordId;
use crate::book::record::Record;

/// A handle: copy it freely.
#[derive(Clone, Copy)]
pub struct Seen(StoredValue<Option<Arc<Record>>>);

impl Seen {
    pub fn couple(app: App, id: RecordId) -> Seen {
        Seen::of(app, untrack(|| app.with(|book| book.couples.get(&id).cloned())))
    }

    pub fn practice(app: App) -> Seen {
        Seen::of(app, Some(untrack(|| app.with(|book| book.practice.clone()))))
    }

    fn of(app: App, record: Option<Arc<Record>>) -> Seen {
        app.form_found(record.clone());
        Seen(StoredValue::new(record))
    }

    /// Those of these writes that say something else than the form began with.
    pub fn changed(self, writes: Vec<Write>) -> Vec<Write> {
        self.0.with_value(|seen| match seen {
            Some(record) => record.changed(writes),
            None => writes,
        })
    }
}
