//! The fair of today: set once, and every new couple was met there.

use leptos::prelude::*;

use super::{head, open};
use crate::app::address::Setting;
use crate::forms::setup::names as form_of;
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::words::practice as say;
use crate::words::screens as say_frame;

const HERE: Setting = Setting::Fair;

pub fn fair() -> AnyView {
    let page = open(HERE, form_of::start_fair);
    let save = move || {
        let Some(write) = page.read(form_of::read_fair) else { return };
        let said = if write.value.is_some() { say_frame::saved(say::FAIR) } else { say_frame::removed(say::FAIR) };
        page.save(vec![write], said);
    };
    let field = fields::text(page.form, form_of::FAIR, say::FAIR).hint(say::FAIR_HINT).enter("done").line();
    form_page(head(HERE, say::FAIR), page.form, field, say_frame::SAVE, save)
}
