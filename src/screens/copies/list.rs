//! Copies: when the last one left, files out and in, and the last import taken back.

use std::collections::BTreeSet;

use crate::parts::el::{live, maybe, or_nothing};
use crate::parts::layout::{all, block, column, para, section};
use leptos::prelude::*;

use super::out::Out;
use crate::app::address::{Address, Setting};
use crate::app::clock;
use crate::app::state::leaving::Which;
use crate::app::state::{App, app};
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::parts::button::{Weight, button};
use crate::parts::choice::{Shape, choice, option, tick};
use crate::parts::line::{line, lines};
use crate::parts::page::page;
use crate::screens::shell::calendar_file::{Of, into_calendar};
use crate::screens::shell::setting_page::head;
use crate::words::harmless::harmless;
use crate::words::{agenda as say_agenda, book as say_book, copies as say, screens};

/// So many couples are offered at first, and so many more at each asking.
const ROWS: usize = 40;

pub fn copies() -> AnyView {
    let app = app();
    let what = RwSignal::new("book".to_owned());
    let chosen = RwSignal::new(BTreeSet::<RecordId>::new());
    let which = Signal::derive(move || {
        match what.get().as_str() {
            "book" => return Some(Which::Book),
            "table" => return Some(Which::Table),
            _ => {}
        }
        chosen.with(|chosen| (!chosen.is_empty()).then(|| Which::Couples(chosen.iter().copied().collect())))
    });
    let out = Out::of(app, which);
    let state = move || {
        let day = |moment| clock::civil(moment).0;
        let last = app.last_copy.with(|last| last.as_ref().map(|last| day(last.at)));
        say::last_copy(last, app.waiting().map(day))
    };
    let options =
        vec![option("book", say::WHOLE_BOOK), option("some", say::SOME_COUPLES), option("table", say::SPREADSHEET)];
    let how = move || if what.with(|what| what == "table") { say::SPREADSHEET_HOW } else { say::COPIES_HOW }.to_owned();
    let some = move || what.with(|what| what == "some").then(|| untrack(|| couples(app, chosen)));
    let bring_in = line(say::BRING_IN, "", Address::Setting(Setting::BringIn).to_string()).small(say::BRING_IN_SMALL);
    let content = column(vec![
        para("", Signal::derive(state)),
        last_import(app),
        lines(Signal::stored(vec![bring_in])),
        choice("what", say::WHAT_LEAVES, Shape::Chips, options, what),
        maybe(some),
        out.said(),
        para("small", Signal::derive(how)),
        para("small", say::NOT_ENCRYPTED),
        section(say_agenda::CALENDAR, vec![into_calendar(Of::Everybody, say_agenda::CALENDAR_OF_ALL)]),
    ]);
    page(head(Setting::Copies, say::COPIES), content, Some(out.buttons()))
}

/// What was brought in last, with one tap that takes it back; nothing where that cannot be any more.
pub fn last_import(app: App) -> AnyView {
    // Anew when the book was, as after an import in another tab.
    Effect::new(move || {
        app.status.track();
        app.read_last_import();
    });
    maybe(move || {
        let said = app.last_import.with(|log| {
            let log = log.as_ref()?;
            let day = clock::civil(log.at).0;
            let couples = app.with(|book| log.records.iter().filter(|it| book.couples.contains_key(&it.id)).count());
            Some(say::last_import(day, &app.phone_name(log.by), couples))
        })?;
        let undo = button(Weight::Quiet, say::UNDO_IMPORT, move || app.undo_import());
        Some(block("column near last-import", vec![para("", said), para("small", say::KEEP_IMPORT_HOW), undo]))
    })
}

/// A box for each couple that may leave.
fn couples(app: App, chosen: RwSignal<BTreeSet<RecordId>>) -> AnyView {
    let rows = RwSignal::new(ROWS);
    let mut named: BTreeSet<(String, RecordId)> = BTreeSet::new();
    app.with(|book| {
        let refusing = book.refusing();
        let leave = book.couples.values().map(|record| Couple(record));
        let leave = leave.filter(|couple| !couple.is_blank() && refusing.may_leave(*couple).is_ok());
        named.extend(leave.map(|couple| (harmless(&say_book::names(couple)), couple.0.id)));
    });
    let named: Vec<(String, RecordId)> = named.into_iter().collect();
    let count = named.len();
    let boxes = move || {
        let one = |(name, id): &(String, RecordId)| {
            let id = *id;
            let ticked = Signal::derive(move || chosen.with(|chosen| chosen.contains(&id)));
            let set = Callback::new(move |yes: bool| {
                chosen.update(|chosen| {
                    let _ = if yes { chosen.insert(id) } else { chosen.remove(&id) };
                });
            });
            tick(format!("couple-{id}"), name.clone(), None, ticked, set)
        };
        all(named.iter().take(rows.get()).map(one).collect())
    };
    let more = move || {
        let left = count.saturating_sub(rows.get());
        (left > 0).then(|| {
            button(Weight::Quiet, screens::show_more(left.min(ROWS)), move || rows.update(|rows| *rows += ROWS))
        })
    };
    let none = or_nothing((count == 0).then(|| para("", screens::NOBODY_YET)));
    section(say::CHOOSE_COUPLES, vec![none, live(boxes), maybe(more)])
}
