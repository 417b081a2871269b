//! What a phone is called: this one, or another whose words are in the book.

use leptos::prelude::*;

use crate::app::address::Setting;
use crate::app::state::app;
use crate::book::id::InstallationId;
use crate::forms::setup::names as form_of;
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::screens::shell::setting_page::{head, open};
use crate::words::{phones as say, screens};

pub fn phone_name(by: InstallationId) -> AnyView {
    let here = Setting::PhoneName(by);
    let page = open(here, |practice| form_of::start_phone(practice, by));
    let save = move || {
        let Some(write) = page.read(|texts| form_of::read_phone(texts, by)) else { return };
        page.save(vec![write], screens::saved(say::PHONE_NAME));
    };
    let field = fields::text(page.form, form_of::PHONE_NAME, say::PHONE_NAME).hint(say::PHONE_NAME_HINT);
    let head = head(here, say::PHONE_NAME).subtitle(app().phone_name(by));
    form_page(head, page.form, field.enter("done").line(), screens::SAVE, save)
}
