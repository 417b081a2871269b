//! What a phone is called: this one, or another whose words are in the book.

use leptos::prelude::*;

use crate::app::address::Setting;
use crate::app::form::Form;
use crate::app::route::go_instead;
use crate::app::state::app;
use crate::book::field::{Field, PracticeField};
use crate::book::id::InstallationId;
use crate::book::verbs;
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::screens::practice::head;
use crate::words::{phones as say, screens};

pub fn phone_name(by: InstallationId) -> AnyView {
    let app = app();
    let here = Setting::PhoneName(by);
    let known = untrack(|| app.practice(|practice| practice.phone_name(by).map(str::to_owned)));
    let form = Form::draft(format!("practice/{here}"), vec![("phone-name", known.unwrap_or_default())]);
    let save = move || {
        let Some(name) = fields::read_optional_name(form, "phone-name") else { return show_first_complaint() };
        let write = verbs::text(Field::Practice(PracticeField::PhoneName(by)), name);
        app.set_practice(vec![write], screens::saved(say::PHONE_NAME), move || {
            form.done();
            go_instead(&crate::app::address::Address::Setting(Setting::Phone).to_string());
        });
    };
    let field = fields::text(form, "phone-name", say::PHONE_NAME).hint(say::PHONE_NAME_HINT).enter("done").line();
    let head = head(here, say::PHONE_NAME).subtitle(app.phone_name(by));
    form_page(head, form, field, screens::SAVE, save)
}
