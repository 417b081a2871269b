//! What fitted in the end: the size that a band was kept at or resized to, once it had been worn.

use crate::parts::el::{maybe, or_nothing};
use crate::parts::lay::{all, para};
use leptos::prelude::*;

use super::super::{Whose, whose_of};
use crate::app::address::Part;
use crate::app::form::Form;
use crate::app::seen::Seen;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::change::Write;
use crate::book::field::Field as Kept;
use crate::book::id::RecordId;
use crate::book::value::{FittedAt, Value};
use crate::parts::button::{Weight, button};
use crate::parts::choice::{Shape, choice, option};
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::trade::sizing::SizeAsRead;
use crate::trade::wearer::Wearer;
use crate::words::{bench as say_bench, finger as say, screens as say_frame, sizing as say_sizing};

const KEPT: &str = "kept";
const RESIZED: &str = "resized";

pub fn fitted(id: RecordId, wearer: Wearer) -> AnyView {
    let app = app();
    let Whose { head, leave } = whose_of(id, wearer, say::FITTED, Part::Fitted(wearer));
    let known = app.couple(id, |couple| couple.fitted(wearer).cloned()).flatten();
    let ordered = app.couple(id, |couple| couple.order_size(wearer)).flatten();
    let ordered = ordered.map(|size| say_sizing::size_in_full(size.size)).unwrap_or_default();
    let seen = Seen::couple(app, id);
    let form = Form::draft(
        format!("fitted.{id}.{}", wearer.code()),
        vec![
            ("fitted-how", if known.as_ref().is_some_and(|it| it.resized) { RESIZED } else { KEPT }.to_owned()),
            ("fitted-size", known.as_ref().map_or(ordered, |it| say_bench::retyped(&it.size))),
            ("fitted-as", known.as_ref().map(|it| fields::meant(&it.size)).unwrap_or_default()),
        ],
    );
    let keep = move |value: Option<Value>| {
        app.save(
            id,
            seen.changed(vec![Write { field: Kept::Fitted(wearer), value }]),
            say_frame::saved(say::FITTED),
            move || {
                form.done();
                let _ = leave.try_run(());
            },
        );
    };
    let save = move || {
        let Some(stated) = fields::read_size(form, "fitted-size", "fitted-as") else { return show_first_complaint() };
        let typed = form.text("fitted-size").get_untracked().trim().to_owned();
        let resized = form.text("fitted-how").with_untracked(|how| how == RESIZED);
        let size = SizeAsRead { stated, typed };
        keep(Some(Value::Fitted(FittedAt { size, resized, noted: app.today.get_untracked() })));
    };
    let content = all(vec![
        para("", say::FITTED_WHY),
        choice(
            "fitted-how",
            say::FITTED_HOW,
            Shape::Segments,
            vec![option(KEPT, say::KEPT), option(RESIZED, say::RESIZED)],
            form.text("fitted-how"),
        ),
        fields::text(form, "fitted-size", say::FITTED_SIZE).hint(say_frame::READ_SIZE_HINT).line(),
        maybe(move || fields::which_size(form, "fitted-size", "fitted-as", say_frame::READ_AS)),
        or_nothing(known.map(|_| button(Weight::Quiet, say_frame::REMOVE, move || keep(None)))),
    ]);
    form_page(head, form, content, say_frame::SAVE, save)
}
