//! Where the couple stands, and since when.

use crate::parts::lay::all;
use leptos::prelude::*;

use super::{Whose, whose};
use crate::app::address::Part;
use crate::app::form::Form;
use crate::app::seen::Seen;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::couple::Couple;
use crate::book::field::Stage;
use crate::book::id::RecordId;
use crate::book::verbs;
use crate::parts::choice::{Shape, choice, option};
use crate::parts::line::{Line, lines};
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::words::{book as say_book, format, screens as say};

pub fn stage(id: RecordId) -> AnyView {
    let app = app();
    let Whose { head, leave } = whose(id, say::STAGE, Part::Stage);
    let now = app.couple(id, |couple| couple.stage()).unwrap_or(Stage::Enquiry);
    let start = vec![("stage", now.code().to_owned()), ("since", format::day(app.today.get_untracked()))];
    let seen = Seen::couple(app, id);
    let form = Form::draft(format!("stage.{id}"), start);
    let save = move || {
        let Some(day) = fields::read_day(form, "since", app.today.get_untracked()) else {
            return show_first_complaint();
        };
        let stage = Stage::from_code(&form.text("stage").get_untracked()).unwrap_or(now);
        let writes = if form.is_touched() { verbs::move_to(stage, day) } else { Vec::new() };
        app.save(id, seen.changed(writes), say::moved_to(stage), move || {
            form.done();
            let _ = leave.try_run(());
        });
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
    let content = all(vec![
        choice(
            "stage",
            say::STAGE,
            Shape::Chips,
            Stage::ALL.map(|stage| option(stage.code(), say_book::stage(stage))).into_iter().collect(),
            form.text("stage"),
        ),
        fields::day(form, "since", say::STAGE_DAY),
        lines(reached),
    ]);
    form_page(head, form, content, say::SAVE, save)
}
