//! Where the couple stands, and since when.

use leptos::prelude::*;

use super::{CouplePage, couple_page, open};
use crate::app::address::Part;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::couple::Couple;
use crate::book::field::Stage;
use crate::book::id::RecordId;
use crate::book::verbs;
use crate::forms::couple::stage as form_of;
use crate::parts::choice::{Shape, option};
use crate::parts::layout::all;
use crate::parts::line::{Line, lines};
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::words::{book as say_book, format, screens as say};

pub fn stage(id: RecordId) -> AnyView {
    let app = app();
    let CouplePage { head, leave } = couple_page(id, say::STAGE, Part::Stage);
    let now = app.couple(id, |couple| couple.stage()).unwrap_or(Stage::Enquiry);
    let today = app.today.get_untracked();
    let page = open(id, format!("stage.{id}"), leave, |couple| form_of::start(couple, today, format::day));
    let save = move || {
        let read = page.read(|texts| form_of::read(texts, now, app.today.get_untracked()));
        let Some((stage, since)) = read else { return };
        let writes = if page.form.is_touched() { verbs::move_to(stage, since) } else { Vec::new() };
        page.save(writes, say::moved_to(stage));
    };
    let reached = Signal::derive(move || {
        let row = |couple: Couple<'_>, stage| {
            let day = couple.reached(stage)?;
            let row = Line { name: say_book::stage(stage).to_owned(), value: format::day(day), ..Line::default() };
            Some(row)
        };
        app.couple(id, |couple| Stage::ALL.into_iter().filter_map(|stage| row(couple, stage)).collect::<Vec<_>>())
            .unwrap_or_default()
    });
    let stages = Stage::ALL.map(|stage| option(stage.code(), say_book::stage(stage))).into();
    let content = all(vec![
        fields::choice(page.form, form_of::STAGE, say::STAGE, Shape::Chips, stages),
        fields::day(page.form, form_of::SINCE, say::STAGE_DAY),
        lines(reached),
    ]);
    form_page(head, page.form, content, say::SAVE, save)
}
