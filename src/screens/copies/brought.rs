//! What an import has left to do, on top of the page it was brought in on: the couples to settle, each with the way to
//! its differences, and the way to take it all back.

use leptos::prelude::*;

use super::list::last_import;
use crate::app::address::{Address, Part, Setting};
use crate::app::state::{App, app};
use crate::book::id::RecordId;
use crate::book::practice::Practice;
use crate::parts::el::{maybe, or_nothing};
use crate::parts::layout::{all, para, section};
use crate::parts::line::{Line, line, lines};
use crate::words::harmless::harmless;
use crate::words::parts::Mark;
use crate::words::{book as say_book, copies as say, phones as say_phones, storage as say_storage};

/// So many names are shown.
const NAMES: usize = 50;

/// `differ` are the records that the import brought to differ; none as long as nothing was brought in here.
pub fn brought(app: App, differ: RwSignal<Option<Vec<RecordId>>>) -> AnyView {
    maybe(move || {
        let ids = differ.get()?;
        // It was taken back: then nothing of it is left to settle either.
        if app.last_import.with(Option::is_none) {
            return None;
        }
        let rows: Vec<Line> = ids.iter().filter_map(|id| to_settle(app, *id)).collect();
        let left = rows.len();
        let more = left.saturating_sub(NAMES);
        let what = if left == 0 {
            para("settled", say::NOTHING_TO_SETTLE)
        } else {
            let shown = lines(Signal::stored(rows.into_iter().take(NAMES).collect::<Vec<_>>()));
            let more = or_nothing((more > 0).then(|| para("small", say::and_more(more))));
            let settings = app.practice(|practice| ids.contains(&practice.0.id) && practice.0.is_in_conflict());
            section(say::to_settle(left - usize::from(settings), settings), vec![shown, more])
        };
        Some(all(vec![what, last_import(app)]))
    })
}

fn to_settle(app: App, id: RecordId) -> Option<Line> {
    let couple = app.couple(id, |couple| {
        let to = Address::Part(id, Part::Differences);
        (say_book::names(couple), couple.0.conflicts().len(), to)
    });
    let practice = || {
        let of = |practice: Practice<'_>| (practice.0.id == id).then(|| practice.0.conflicts().len());
        Some((say_phones::SETTINGS.to_owned(), app.practice(of)?, Address::Setting(Setting::Differences)))
    };
    let (names, count, to) = couple.or_else(practice).filter(|(_, count, _)| *count > 0)?;
    Some(line(harmless(&names), "", to.to_string()).small(say_phones::differences(count)).mark(Mark::Care))
}

/// The page on which an import is put in its places, which was cut short.
pub fn arriving() -> AnyView {
    app().unpack();
    para("", say_storage::ARRIVING)
}
