//! The fair of today: set once, and every new couple was met there.

use leptos::prelude::*;

use super::{draft, head, keep, now};
use crate::app::address::Setting;
use crate::app::state::app;
use crate::book::field::{Field, PracticeField};
use crate::book::verbs;
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::words::practice as say;
use crate::words::screens as say_frame;

const HERE: Setting = Setting::Fair;

pub fn fair() -> AnyView {
    let app = app();
    let fair = now(app, |practice| practice.fair().map(str::to_owned));
    let form = draft(HERE, vec![("fair", fair.unwrap_or_default())]);
    let save = move || {
        let Some(fair) = fields::read_line(form, "fair") else { return show_first_complaint() };
        let said = if fair.is_some() { say_frame::saved(say::FAIR) } else { say_frame::removed(say::FAIR) };
        keep(app, HERE, form, vec![verbs::text(Field::Practice(PracticeField::Fair), fair)], said);
    };
    let field = fields::text(form, "fair", say::FAIR).hint(say::FAIR_HINT).enter("done").line();
    form_page(head(HERE, say::FAIR), form, field, say_frame::SAVE, save)
}
