//! The wedding date, as far as it is known.

use crate::parts::lay::all;
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
use crate::book::value::Value;
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::words::{dates, screens as say};

pub fn wedding(id: RecordId) -> AnyView {
    let app = app();
    let Whose { head, leave } = whose(id, say::WEDDING, Part::Wedding);
    let known = app.couple(id, |couple| couple.wedding().map(dates::wedding)).flatten().unwrap_or_default();
    let seen = Seen::couple(app, id);
    let form = Form::draft(format!("wedding.{id}"), vec![("wedding", known)]);
    let save = move || {
        // What was there and is in the past by now may stay; it is not read again.
        let writes = if form.is_touched() {
            let Some(wedding) = fields::read_wedding(form, "wedding", app.today.get_untracked()) else {
                return show_first_complaint();
            };
            vec![Write { field: Kept::Wedding, value: wedding.map(Value::Wedding) }]
        } else {
            Vec::new()
        };
        app.save(id, seen.changed(writes), say::saved(say::WEDDING), move || {
            form.done();
            let _ = leave.try_run(());
        });
    };
    let content = all(vec![beside(id, None, &[Ask::Wedding, Ask::NeededBy]), fields::wedding(form, "wedding")]);
    form_page(head, form, content, say::SAVE, save)
}
