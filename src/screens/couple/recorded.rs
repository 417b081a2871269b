//! Whether they agree to be recorded, and when they were asked.

use crate::parts::lay::{all, para};
use leptos::prelude::*;

use super::said::beside;
use super::{Whose, whose};
use crate::app::address::Part;
use crate::app::form::Form;
use crate::app::seen::Seen;
use crate::app::state::app;
use crate::book::asks::Ask;
use crate::book::change::Write;
use crate::book::field::Field as Kept;
use crate::book::id::RecordId;
use crate::book::value::{Recorded, Value};
use crate::parts::choice::{Shape, choice_with, option};
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::words::{format, screens as say};

pub fn recorded(id: RecordId) -> AnyView {
    let app = app();
    let Whose { head, leave } = whose(id, say::RECORDED, Part::Recorded);
    let known = app.couple(id, |couple| couple.recorded()).flatten();
    let answer = match known.map(|it| it.agrees) {
        None => "not-asked",
        Some(true) => "yes",
        Some(false) => "no",
    };
    let asked = known.map_or(app.today.get_untracked(), |it| it.asked);
    let start = vec![("may-record", answer.to_owned()), ("asked", format::day(asked))];
    let seen = Seen::couple(app, id);
    let form = Form::draft(format!("recorded.{id}"), start);
    let save = move || {
        let agrees = match form.text("may-record").get_untracked().as_str() {
            "yes" => Some(true),
            "no" => Some(false),
            _ => None,
        };
        let Some(asked) = fields::read_day(form, "asked", app.today.get_untracked()) else {
            return show_first_complaint();
        };
        let value = agrees.map(|agrees| Value::Recorded(Recorded { agrees, asked }));
        app.save(
            id,
            seen.changed(vec![Write { field: Kept::Recorded, value }]),
            say::saved(say::RECORDED),
            move || {
                form.done();
                let _ = leave.try_run(());
            },
        );
    };
    let content = all(vec![
        beside(id, None, &[Ask::Recorded]),
        choice_with(
            "may-record",
            say::MAY_RECORD.into(),
            Some(say::MAY_RECORD_HINT.into()),
            Shape::Segments,
            vec![option("not-asked", say::NOT_ASKED), option("yes", say::YES), option("no", say::NO)],
            form.text("may-record"),
        ),
        fields::day(form, "asked", say::ASKED_ON),
        para("small", say::RECORDED_WHY),
    ]);
    form_page(head, form, content, say::SAVE, save)
}
