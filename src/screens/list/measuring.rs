//! How to measure a ring, folded away until somebody wants to know.

use leptos::prelude::*;

use crate::parts::details::details;
use crate::parts::el::el;
use crate::parts::layout::{all, para};
use crate::parts::picture::picture;
use crate::pictures::measuring::{clock, ruler, strip};
use crate::words::list::guide as say;

pub fn measuring() -> AnyView {
    let table = say::card_table().into_iter().map(|row| el("li").text(row).view()).collect();
    let inside = vec![
        para("", say::CLOCK),
        picture(clock().svg),
        para("", say::RULER),
        picture(ruler().svg),
        para("", say::CARD),
        picture(strip().svg),
        el("ul").class("list-table").children(table).view(),
        para("", say::CARD_OTHER),
        para("small", say::card_note()),
        para("small", say::MEASURE_OFF),
    ];
    details(say::HOW_TO_MEASURE, all(inside))
}
