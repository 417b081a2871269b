//! Which public holidays of the region the workshop keeps: each can be switched.

use leptos::prelude::*;

use super::{head, now, open};
use crate::app::address::Setting;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::forms::setup::holidays as form_of;
use crate::parts::choice::option;
use crate::parts::layout::{all, para};
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::words::{dates as say_dates, planning as plan, screens as say_frame};

const HERE: Setting = Setting::Holidays;

pub fn holidays() -> AnyView {
    let app = app();
    let region = now(app, |practice| practice.region());
    let listed = form_of::listed(region, app.today.get_untracked());
    let page = open(HERE, |practice| form_of::start(practice, &listed));
    let options = listed.iter().map(|it| option(Code::code(it.name), say_dates::holiday_choice(*it))).collect();
    let content = all(vec![
        para("small", plan::holidays_why(say_dates::region(region))),
        fields::several_rows(page.form, form_of::KEPT, plan::HOLIDAYS_KEPT, options),
        para("small", say_dates::projection(region)),
    ]);
    let listed = StoredValue::new(listed);
    let save = move || {
        let writes = untrack(|| listed.with_value(|listed| form_of::read(&page.form.texts(), listed)));
        page.save(writes, say_frame::saved(plan::HOLIDAYS_KEPT));
    };
    form_page(head(HERE, plan::HOLIDAYS_KEPT), page.form, content, say_frame::SAVE, save)
}
