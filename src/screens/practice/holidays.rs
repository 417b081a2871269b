//! Which public holidays of the region the workshop keeps: each can be switched.

use crate::parts::lay::{all, para};
use chrono::Datelike;
use leptos::prelude::*;

use super::{draft, head, keep, now, own};
use crate::app::address::Setting;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::field::PracticeField;
use crate::book::value::Value;
use crate::parts::choice::{option, several_rows};
use crate::screens::form_page::form_page;
use crate::trade::dates::holidays::{Holiday, HolidayName, in_year};
use crate::words::{dates as say_dates, planning as plan, screens as say_frame};

const HERE: Setting = Setting::Holidays;
/// Holidays of so many years are listed, so that one of every fifth year is among them.
const YEARS: i32 = 5;

pub fn holidays() -> AnyView {
    let app = app();
    let year = app.today.get_untracked().year();
    let region = now(app, |practice| practice.region());
    let mut listed: Vec<Holiday> = Vec::new();
    for holiday in (year..year.saturating_add(YEARS)).flat_map(|year| in_year(region, year)) {
        if !listed.iter().any(|it| it.name == holiday.name) {
            listed.push(holiday);
        }
    }
    let switched = now(app, |practice| practice.switched());
    let keeps = |holiday: &Holiday| {
        let switch = switched.iter().find(|(name, _)| *name == holiday.name);
        switch.map_or(!holiday.by_choice, |(_, on)| *on)
    };
    let kept: Vec<&str> = listed.iter().filter(|holiday| keeps(holiday)).map(|it| Code::code(it.name)).collect();
    let form = draft(HERE, vec![("kept", kept.join(" "))]);
    let options = listed.iter().map(|it| option(Code::code(it.name), say_dates::holiday_choice(*it))).collect();
    let content = all(vec![
        para("small", plan::holidays_why(say_dates::region(region))),
        several_rows("kept", plan::HOLIDAYS_KEPT, options, form.text("kept"), form.complaint("kept")),
        para("small", say_dates::projection(region)),
    ]);
    let listed = StoredValue::new(listed);
    let save = move || {
        let kept = form.text("kept").get_untracked();
        let is_kept = |name: HolidayName| kept.split(' ').any(|code| code == Code::code(name));
        let write = |it: &Holiday| {
            let on = is_kept(it.name);
            own(PracticeField::Holiday(it.name), Value::Yes(on), on != it.by_choice)
        };
        let listed = listed.get_value();
        keep(app, HERE, form, listed.iter().map(write).collect(), say_frame::saved(plan::HOLIDAYS_KEPT));
    };
    form_page(head(HERE, plan::HOLIDAYS_KEPT), form, content, say_frame::SAVE, save)
}
