//! Among the lists of Today: the orders that may be late, and whom to ask what fitted.

use chrono::NaiveDate;
use leptos::prelude::*;

use crate::app::address::{Address, Part};
use crate::app::state::{Book, app};
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::book::late as reckoning;
use crate::book::practice::Practice;
use crate::book::progress::AtRisk;
use crate::parts::el::{live, or_nothing};
use crate::parts::layout::{all, para};
use crate::parts::line::line;
use crate::screens::shell::group::group;
use crate::trade::wearer::Wearer;
use crate::words::parts::Mark;
use crate::words::{agenda as say_agenda, book as say_book, finger as say_finger, format, screens as say};

pub fn orders() -> AnyView {
    let app = app();
    live(move || {
        let today = app.today.get();
        app.with(|book| all(vec![may_be_late(book, today), what_fitted(book, today)]))
    })
}

fn may_be_late(book: &Book, today: NaiveDate) -> AnyView {
    let found = reckoning::late(couples(book), Practice(&book.practice), today);
    if found.late == 0 {
        return or_nothing((found.orders > 0).then(|| para("settled", say_agenda::NONE_LATE)));
    }
    let row = |(id, risk): &(RecordId, AtRisk)| {
        let names = book.couples.get(id).map(|record| say_book::names(Couple(record))).unwrap_or_default();
        let when = risk.in_hand.map(|day| say::from_today(day, today)).unwrap_or_default();
        let to = Address::Part(*id, Part::Plan).to_string();
        line(names, when, to).small(say_agenda::at_risk(*risk)).mark(Mark::Care)
    };
    or_nothing(group(say_agenda::MAY_BE_LATE, found.rows.iter().map(row).collect(), found.late))
}

fn what_fitted(book: &Book, today: NaiveDate) -> AnyView {
    let (rows, count) = reckoning::what_fitted(couples(book), today);
    let row = |(id, wearer, since): &(RecordId, Wearer, NaiveDate)| {
        let name = book.couples.get(id).map(|record| say_book::name_of(Couple(record), *wearer)).unwrap_or_default();
        let to = Address::Part(*id, Part::Fitted(*wearer)).to_string();
        line(name, say::from_today(*since, today), to).small(format::day(*since)).mark(Mark::Open)
    };
    or_nothing(group(say_finger::FITTED, rows.iter().map(row).collect(), count))
}

fn couples(book: &Book) -> impl Iterator<Item = Couple<'_>> + Clone {
    book.couples.values().map(|record| Couple(record))
}
