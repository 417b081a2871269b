//! The read-back: everything that the bench will be told, on one page, confirmed together.

use crate::parts::el::maybe;
use crate::parts::layout::{column, para};
use leptos::prelude::*;

use super::{CouplePage, couple_page, leads_to, mark_of};
use crate::answers::checklist::{self, Row};
use crate::app::address::{Address, Part};
use crate::app::state::app;
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::book::merge::conflict::Conflict;
use crate::book::verbs;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::line::{Line, line, lines};
use crate::parts::page::page;
use crate::trade::stack::House;
use crate::words::{book as say_book, phones as say_phones, screens as say};

pub fn read_back(id: RecordId) -> AnyView {
    let app = app();
    let CouplePage { head, .. } = couple_page(id, say::READ_BACK, Part::ReadBack);
    let house = move || app.practice(|practice| practice.house());
    let rows = Signal::derive(move || app.couple(id, |couple| rows(couple, house())).unwrap_or_default());
    let confirmed = Memo::new(move |_| {
        app.couple(id, |couple| (couple.read_back(), couple.changed_since_read_back())).unwrap_or_default()
    });
    // What only a newer version can read is nobody's to settle here.
    let is_held = |couple: Couple<'_>| couple.0.conflicts().iter().any(Conflict::is_readable);
    let differs = Memo::new(move |_| app.couple(id, is_held).unwrap_or_default());
    let differ = move || {
        differs.get().then(|| {
            let to = Address::Part(id, Part::Differences).to_string();
            column(vec![para("caution", say::READ_BACK_HELD), link_button(Weight::Quiet, say_phones::DIFFERENCES, to)])
        })
    };
    let said = move || {
        let (day, stale) = confirmed.get();
        day.map(|day| {
            let class = if stale { "caution" } else { "settled" };
            para(class, say::confirmed(day, stale))
        })
    };
    let confirm = move || {
        let today = app.today.get_untracked();
        app.save(id, vec![verbs::read_back(today)], say::saved(say::READ_BACK), || ());
    };
    let action = move || {
        let (day, stale) = confirmed.get();
        let asked = (day.is_none() || stale) && !differs.get();
        asked.then(|| button(Weight::Primary, say::READ_BACK_CONFIRM, confirm))
    };
    let content = column(vec![para("", say::READ_BACK_HOW), maybe(differ), maybe(said), lines(rows)]);
    page(head, content, Some(maybe(action)))
}

fn rows(couple: Couple<'_>, house: House) -> Vec<Line> {
    let line_of = |row: Row| {
        let small = say_book::in_full(couple, row.topic, house).unwrap_or_else(|| say::READ_BACK_OPEN.to_owned());
        let href = leads_to(couple.0.id, row);
        line(say_book::topic(couple, row.topic), String::new(), href).small(small).mark(mark_of(row))
    };
    checklist::read_back(couple).into_iter().map(line_of).collect()
}
