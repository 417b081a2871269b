//! What the bands that have been worn say about the constants: shown beside the customary ones, used only if the
//! jeweller says so.

use leptos::prelude::*;

use crate::answers::learned::{LearnedAnswer, Row, of_couples};
use crate::app::state::App;
use crate::book::couple::Couple;
use crate::book::practice::Practice;
use crate::parts::el::{maybe, or_nothing};
use crate::parts::layout::{para, section};
use crate::parts::reasons::reasons;
use crate::screens::shell::form_page::RecordForm;
use crate::words::answer::{Reason, reason};
use crate::words::{format, gauges as say, practice as say_practice};

pub fn learned(app: App, page: RecordForm) -> AnyView {
    maybe(move || {
        let found = app.with(|book| {
            let couples = book.couples.values().map(|record| Couple(record));
            of_couples(couples, Practice(&book.practice))
        });
        Some(section(say::LEARNED, inside(page, found)))
    })
}

fn inside(page: RecordForm, found: LearnedAnswer) -> Vec<AnyView> {
    if found.bands == 0 {
        return vec![para("small", say::NOTHING_LEARNED)];
    }
    let used = found.writes.map(|writes| page.button(say::USE_LEARNED, writes, say::LEARNED_USED.to_owned()));
    vec![
        para("", say::learned_from(found.bands)),
        reasons(Signal::stored(found.rows.map(row).to_vec())),
        para("", found.score.map_or_else(|| say::NO_SCORE.to_owned(), say::score)),
        or_nothing(used),
    ]
}

fn row(it: Row) -> Reason {
    reason(say_practice::constant(it.constant), format::mm(it.value, 2), say::learned_why(it.sd, it.customary))
}
