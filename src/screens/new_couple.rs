//! A new couple, in under half a minute: one name is enough.

use crate::parts::el::or_nothing;
use crate::parts::lay::all;
use leptos::prelude::*;

use super::copies::tab_warning;
use super::fields;
use super::form_page::{form_page, show_first_complaint};
use crate::app::address::Address;
use crate::app::clock;
use crate::app::form::Form;
use crate::app::route::go_instead;
use crate::app::state::{App, app};
use crate::book::change::Write;
use crate::book::field::Field as Kept;
use crate::book::id::{ItemId, RecordId};
use crate::book::value::{Recorded, Value};
use crate::book::verbs;
use crate::parts::choice::{Shape, choice_with, option};
use crate::parts::page::Head;
use crate::words::screens as say;

pub fn new_couple() -> AnyView {
    let app = app();
    let fair = app.practice(|practice| practice.fair().map(str::to_owned)).unwrap_or_default();
    let start = vec![
        ("first-name", String::new()),
        ("second-name", String::new()),
        ("reach", String::new()),
        ("wedding", String::new()),
        ("met", fair),
        ("may-record", String::from("not-asked")),
    ];
    let form = Form::draft("new-couple".to_owned(), start);
    // Given once, so that a second press saves nothing twice.
    let id = RecordId(clock::random());
    let save = move || {
        let Some(writes) = read(app, form) else { return show_first_complaint() };
        app.save(id, writes, say::saved(say::NEW_COUPLE), move || {
            form.done();
            go_instead(&Address::Couple(id).to_string());
        });
    };
    let first = app.with(|book| book.couples.is_empty());
    let answers = vec![option("not-asked", say::NOT_ASKED), option("yes", say::YES), option("no", say::NO)];
    let record = choice_with(
        "may-record",
        say::MAY_RECORD.into(),
        Some(say::MAY_RECORD_HINT.into()),
        Shape::Segments,
        answers,
        form.text("may-record"),
    );
    let content = all(vec![
        or_nothing(first.then(tab_warning).flatten()),
        fields::name(form, "first-name", say::FIRST_NAME).line(),
        fields::name(form, "second-name", say::SECOND_NAME).hint(say::SECOND_NAME_HINT).line(),
        fields::reach(form, "reach", say::REACH).hint(say::REACH_HINT).line(),
        fields::wedding(form, "wedding"),
        fields::text(form, "met", say::MET).enter("done").line(),
        record,
    ]);
    let head = Head::new(say::NEW_COUPLE).back(Address::Couples.to_string(), say::COUPLES);
    form_page(head, form, content, say::SAVE, save)
}

/// What was typed, as what it comes to; none if something has to be put right first.
fn read(app: App, form: Form) -> Option<Vec<Write>> {
    let today = app.today.get_untracked();
    // All of them are looked at, so that all complaints show at once.
    let first = fields::read_name(form, "first-name");
    let second = fields::read_optional_name(form, "second-name");
    let reach = fields::read_reach(form, "reach");
    let wedding = fields::read_wedding(form, "wedding", today);
    let met = fields::read_line(form, "met");
    let mut writes = verbs::meet(first?, second?, met?, today);
    if let Some(reach) = reach? {
        writes.push(Write::set(Kept::Reach(ItemId(clock::random())), Value::Text(reach)));
    }
    if let Some(wedding) = wedding? {
        writes.push(Write::set(Kept::Wedding, Value::Wedding(wedding)));
    }
    let agrees = match form.text("may-record").get_untracked().as_str() {
        "yes" => Some(true),
        "no" => Some(false),
        _ => None,
    };
    if let Some(agrees) = agrees {
        writes.push(Write::set(Kept::Recorded, Value::Recorded(Recorded { agrees, asked: today })));
    }
    Some(writes)
}
