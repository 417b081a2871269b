//! The link that invites a couple to their list.

use leptos::prelude::*;

use crate::app::address::{Address, Part};
use crate::app::form::Form;
use crate::app::list::address_for;
use crate::app::route::link;
use crate::app::share;
use crate::app::state::app;
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::forms::couple::invitation::{self as form_of, DAY, FIRST_NAME, SECOND_NAME, TIME};
use crate::parts::button::{Weight, button};
use crate::parts::el::{el, or_nothing};
use crate::parts::layout::{all, column, pair, para};
use crate::parts::page::{PageHeader, page};
use crate::screens::shell::couple_page::not_here;
use crate::screens::shell::fields;
use crate::screens::shell::form_page::restored;
use crate::trade::dates::holidays::Region;
use crate::words::list::{pages, taking as say};
use crate::words::{book as say_book, dates, format, screens};

pub fn invite(whom: Option<RecordId>) -> AnyView {
    let app = app();
    if whom.is_some_and(|id| app.couple(id, |it| it.is_blank()).unwrap_or(true)) {
        return not_here();
    }
    let region = app.practice(|practice| practice.region());
    let begin = move |couple: Option<Couple<'_>>| form_of::start(couple, region, app.today.get(), format::day);
    let start = whom.and_then(|id| app.couple(id, |couple| begin(Some(couple))));
    let name = format!("invite.{}", whom.map(|id| id.to_string()).unwrap_or_default());
    let form = Form::draft(name, start.unwrap_or_else(|| begin(None)));
    let to = Memo::new(move |_| link(&address_for(&form_of::read(&form.texts(), app.today.get()))));
    let shown = el("textarea")
        .attr("id", "link")
        .attr("name", "link")
        .attr("rows", "4")
        .attr("readonly", "")
        .live_value(move || to.get());
    let outcome = move |good: &'static str| {
        move |left: bool| {
            if left {
                // The next couple gets a form of its own.
                form.done();
            }
            app.say(if left { good } else { say::LINK_STAYED }.to_owned());
        }
    };
    let sheet = share::can_share().then(|| {
        button(Weight::Primary, say::SHARE_LINK, move || {
            let text = format!("{} {}", say::MESSAGE, to.get_untracked());
            share::share_text(pages::TITLE.to_owned(), text, outcome(say::LINK_SHARED));
        })
    });
    let weight = if sheet.is_some() { Weight::Quiet } else { Weight::Primary };
    let copy = button(weight, say::COPY_LINK, move || share::copy(to.get_untracked(), outcome(say::LINK_COPIED)));
    let regions = Region::ALL.map(|region| (region.code().to_owned(), dates::region(region).to_owned()));
    let today = app.today;
    let name = |key, label: &str| {
        let field = fields::text(form, key, label);
        field.on_leave(move || form.look_at(key, |form, key| form.optional_name(key))).line()
    };
    let content = column(vec![
        restored(form),
        para("", say::INVITE_INTRO),
        name(FIRST_NAME, say::FIRST),
        name(SECOND_NAME, say::SECOND),
        pair(vec![
            fields::text(form, DAY, screens::APPOINTMENT)
                .hint(screens::DAY_HINT)
                .on_leave(move || {
                    let today = today.get_untracked();
                    form.look_at(DAY, |form, key| form.optional_day(key, today, today));
                })
                .line(),
            fields::text(form, TIME, screens::TIME)
                .hint(screens::TIME_HINT)
                .on_leave(move || form.look_at(TIME, |form, key| form.optional_time(key)))
                .line(),
        ]),
        fields::pick(form, form_of::REGION, say::REGION, regions.to_vec()),
        el("div")
            .class("field")
            .child(el("label").class("field-label").attr("for", "link").text(say::LINK).view())
            .child(el("div").class("field-box").child(shown.view()).view())
            .view(),
    ]);
    let (up, name) = match whom {
        Some(id) => (Address::Part(id, Part::PreparationList), say::SAID.to_owned()),
        None => (Address::Couples, screens::COUPLES.to_owned()),
    };
    let names = whom.and_then(|id| app.couple(id, say_book::names));
    let head = PageHeader::new(say::INVITE).back(up.to_string(), name);
    let head = match names {
        Some(names) => head.subtitle(names),
        None => head,
    };
    page(head, content, Some(all(vec![or_nothing(sheet), copy])))
}
