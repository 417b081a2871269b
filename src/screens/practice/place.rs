//! How the assay office or the courier works.

use crate::parts::el::or_nothing;
use crate::parts::lay::{all, para};
use chrono::Weekday;
use leptos::prelude::*;

use super::closures::{CLOSED, OPEN, read_week, week};
use super::{back_to_usual, draft, head, keep, not_here, now, own};
use crate::app::address::Setting;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::field::PracticeField;
use crate::book::value::Value;
use crate::parts::choice::{Shape, choice, option, several};
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::trade::dates::closed::OnBankHolidays;
use crate::trade::dates::places::{Place, PlaceDays};
use crate::words::{dates as say_dates, planning as plan, practice as say, screens as say_frame};

pub fn place(which: Place) -> AnyView {
    let app = app();
    let here = Setting::Place(which);
    // The workshop has a form of its own.
    if which == Place::Workshop {
        return not_here(here);
    }
    let field = PracticeField::PlaceDays(which);
    let known = now(app, |practice| practice.place_days(which));
    let days: Vec<&str> = known.weekdays.iter(Weekday::Mon).map(Code::code).collect();
    let word = |shut| if shut { CLOSED } else { OPEN }.to_owned();
    let start = vec![
        ("place-weekdays", days.join(" ")),
        ("place-holidays", word(known.on_bank_holidays == OnBankHolidays::Closed)),
        ("place-christmas", word(known.shut_at_christmas)),
    ];
    let form = draft(here, start);
    let name = say_dates::place(which);
    let save = move || {
        let text = |key| form.text(key).get_untracked();
        let Some(weekdays) = read_week(form, "place-weekdays") else { return show_first_complaint() };
        let works = text("place-holidays") == OPEN;
        let days = PlaceDays {
            weekdays,
            on_bank_holidays: if works { OnBankHolidays::Works } else { OnBankHolidays::Closed },
            shut_at_christmas: text("place-christmas") == CLOSED,
        };
        let write = own(field, Value::PlaceDays(days), days == which.usual_days());
        keep(app, here, form, vec![write], say_frame::saved(name));
    };
    let shut = || vec![option(CLOSED, say::HOLIDAYS_CLOSED), option(OPEN, say::HOLIDAYS_WORKED)];
    let content = all(vec![
        para("small", plan::PLACE_WHY),
        several("place-weekdays", say::WEEKDAYS, week(), form.text("place-weekdays"), form.complaint("place-weekdays")),
        choice("place-holidays", plan::PLACE_HOLIDAYS, Shape::Segments, shut(), form.text("place-holidays")),
        choice("place-christmas", plan::PLACE_CHRISTMAS, Shape::Segments, shut(), form.text("place-christmas")),
        or_nothing(back_to_usual(app, here, form, name, vec![field])),
    ]);
    form_page(head(here, name), form, content, say_frame::SAVE, save)
}
