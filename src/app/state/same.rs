//! One couple under two ids: who may be the same, joining two entries, and taking that apart again.

use std::rc::Rc;

use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::{App, Book, Shared};
use crate::app::clock;
use crate::book::change::{Draft, Write};
use crate::book::couple::Couple;
use crate::book::field::Field;
use crate::book::id::RecordId;
use crate::book::record::Kind;
use crate::book::same;
use crate::book::search::Lower;
use crate::book::value::Value;
use crate::storage::book::{self as stored, Addition};
use crate::words::same as say;

impl App {
    /// Other entries that may be of the same couple, and of which nobody has said whether they are.
    pub fn like(self, id: RecordId, lower: Lower) -> Vec<RecordId> {
        self.book.with(|book| {
            let Some(record) = book.couples.get(&id) else { return Vec::new() };
            same::like(Couple(record), book.couples.values().map(|record| record.as_ref()), lower)
        })
    }

    /// Whether the entry was joined with another one.
    pub fn is_joined(self, id: RecordId) -> bool {
        self.couple(id, |couple| !same::joined(couple.0).is_empty()).unwrap_or(false)
    }

    /// Joins two entries: one gets what the other holds, the other is put away. Both or neither. Done again, it brings
    /// what was written into the other one since.
    pub fn join(self, one: RecordId, other: RecordId, lower: Lower) {
        let (kept, away) = (one.min(other), one.max(other));
        self.write_both(say::joined(), move |app| {
            let (kept, away) = (app.record(kept)?, app.record(away)?);
            let at = clock::moment();
            let mut writes = vec![Write::set(Field::SameAs(kept.id), Value::Yes(true))];
            if Couple(&away).put_away().is_none() {
                writes.push(Write::set(Field::PutAway, Value::Day(app.today.get_untracked())));
            }
            let taken = same::take_over(&kept, &away, lower, at);
            Some(vec![(kept.id, taken.into_iter().collect()), (away.id, away.draft(writes, at).into_iter().collect())])
        });
    }

    /// Takes two joined entries apart: what was taken over is taken back, and the other one is brought back.
    pub fn take_apart(self, one: RecordId, other: RecordId) {
        let (kept, away) = (one.min(other), one.max(other));
        self.write_both(say::taken_apart(), move |app| {
            let (kept, away) = (app.record(kept)?, app.record(away)?);
            let at = clock::moment();
            let (_, mut writes) = same::two_couples(kept.id, away.id);
            writes.push(Write::clear(Field::PutAway));
            let back = same::take_apart(&kept, away.id, at);
            Some(vec![(kept.id, back), (away.id, away.draft(writes, at).into_iter().collect())])
        });
    }

    /// How many other entries here were joined with this one, and go with it when it is erased.
    pub fn goes_with(self, id: RecordId) -> usize {
        self.book.with(|book| {
            let is_here = |id: &RecordId| book.couples.get(id).is_some_and(|record| record.erased().is_none());
            book.joined(id).iter().filter(|other| **other != id && is_here(other)).count()
        })
    }

    /// Saves drafts to two couples in one go, as far as there is anything to save.
    fn write_both(self, said: String, drafts: impl FnOnce(App) -> Option<Vec<(RecordId, Vec<Draft>)>> + 'static) {
        let shared: Rc<Shared> = self.shared();
        spawn_local(async move {
            let turn = shared.turn.lock().await;
            let additions = drafts(self)
                .unwrap_or_default()
                .into_iter()
                .flat_map(|(record, drafts)| drafts.into_iter().map(move |draft| (record, draft)))
                .map(|(record, draft)| Addition { record, kind: Kind::Couple, draft });
            let result = stored::add(&shared.database, additions.collect()).await;
            drop(turn);
            match result {
                Ok(records) => {
                    self.show(&shared, records);
                    self.say(said);
                }
                Err(error) => self.fail(&error),
            }
        });
    }
}

impl Book {
    /// This entry and every one that was joined with it, or with one of those, and so on: all hold the same people.
    pub(super) fn joined(&self, id: RecordId) -> Vec<RecordId> {
        let mut ids = vec![id];
        let mut at = 0;
        while let Some(id) = ids.get(at) {
            let joined = self.couples.get(id).map(|record| same::joined(record)).unwrap_or_default();
            for other in joined {
                if !ids.contains(&other) {
                    ids.push(other);
                }
            }
            at += 1;
        }
        ids
    }
}
