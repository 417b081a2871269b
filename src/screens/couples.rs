//! The book: every couple, found by any word.

use std::collections::BTreeSet;

use crate::parts::el::maybe;
use crate::parts::layout::{column, row as row_of};
use crate::screens::shell::lower::lower;
use leptos::prelude::*;

use crate::app::address::Address;
use crate::app::state::app;
use crate::book::couple::Couple;
use crate::book::search;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::choice::check;
use crate::parts::empty::empty;
use crate::parts::field::Field;
use crate::parts::line::{Line, line, lines};
use crate::parts::page::{PageHeader, page};
use crate::parts::picture::sketch;
use crate::pictures::ornament;
use crate::words::list::taking as say_list;
use crate::words::{book as say_book, dates, screens as say};

/// So many rows are drawn at first, and so many more at each asking.
const ROWS: usize = 60;

pub fn couples() -> AnyView {
    let app = app();
    let find = RwSignal::new(String::new());
    let with_put_away = RwSignal::new(false);
    let rows = RwSignal::new(ROWS);
    // The names in their order, each with whether it was put away; drawn rows are taken from it.
    let found = Memo::new(move |_| {
        let words = find.get();
        let put_away = with_put_away.get();
        app.with(|book| {
            let couples = book.couples.values().map(|record| Couple(record)).filter(|couple| {
                !couple.is_blank()
                    && (put_away || couple.put_away().is_none())
                    && search::matches(*couple, &words, lower)
            });
            let mut found = BTreeSet::new();
            found.extend(couples.map(|couple| (lower(&say_book::names(couple)), couple.0.id)));
            found.into_iter().map(|(_, id)| id).collect::<Vec<_>>()
        })
    });
    let shown = Signal::derive(move || {
        let ids = found.get();
        app.with(|book| {
            ids.iter()
                .take(rows.get())
                .filter_map(|id| book.couples.get(id))
                .map(|record| row(Couple(record)))
                .collect::<Vec<_>>()
        })
    });
    let any_put_away =
        Memo::new(move |_| app.with(|book| book.couples.values().any(|record| Couple(record).put_away().is_some())));
    let more = move || {
        let left = found.with(Vec::len).saturating_sub(rows.get());
        (left > 0)
            .then(|| button(Weight::Quiet, say::show_more(left.min(ROWS)), move || rows.update(|rows| *rows += ROWS)))
    };
    let none = move || {
        found.with(Vec::is_empty).then(|| {
            let text = if find.with(|words| words.trim().is_empty()) { say::NOBODY_YET } else { say::NOBODY_FOUND };
            empty(sketch(ornament::two_bands().svg), text.to_owned(), None)
        })
    };
    let content = column(vec![
        Field::new("find", say::FIND, find).enter("search").line(),
        row_of(vec![
            link_button(Weight::Plain, say_list::TAKE_IN, Address::TakeIn.to_string()),
            link_button(Weight::Plain, say_list::INVITE, Address::Invite.to_string()),
        ]),
        maybe(none),
        lines(shown),
        maybe(more),
        maybe(move || any_put_away.get().then(|| check("put-away", say::SHOW_PUT_AWAY, None, with_put_away))),
    ]);
    let new = link_button(Weight::Primary, say::NEW_COUPLE, Address::NewCouple.to_string());
    page(PageHeader::new(say::COUPLES), content, Some(new))
}

fn row(couple: Couple<'_>) -> Line {
    let wedding = couple.wedding().map(dates::wedding).unwrap_or_default();
    let mut small = say_book::standing(couple);
    for (is_so, mark) in [(couple.put_away().is_some(), say::PUT_AWAY_MARK), (couple.is_example(), say::EXAMPLE_MARK)] {
        if is_so {
            small = format!("{mark} · {small}");
        }
    }
    line(say_book::names(couple), wedding, Address::Couple(couple.0.id).to_string()).small(small)
}
