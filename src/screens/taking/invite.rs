//! The link that invites a couple to their list.

use chrono::NaiveDate;
use leptos::prelude::*;

use crate::app::address::{Address, Part};
use crate::app::form::Form;
use crate::app::list::address_for;
use crate::app::route::link;
use crate::app::share;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::book::said::Invitation;
use crate::book::value::When;
use crate::parts::button::{Weight, button};
use crate::parts::choice::pick;
use crate::parts::el::{el, or_nothing};
use crate::parts::lay::{all, column, pair, para};
use crate::parts::page::{Head, page};
use crate::screens::couple::not_here;
use crate::screens::fields;
use crate::screens::form_page::restored;
use crate::trade::dates::entry::{read_day, read_time};
use crate::trade::dates::holidays::Region;
use crate::trade::entry::read_text;
use crate::trade::limits::Limit;
use crate::trade::wearer::Wearer;
use crate::words::list::{pages, taking as say};
use crate::words::{book as say_book, dates, format, screens};

pub fn invite(whom: Option<RecordId>) -> AnyView {
    let app = app();
    let known = whom.map(|id| {
        app.couple(id, |couple| of_book(couple, app.today.get()))
            .filter(|_| app.couple(id, |it| !it.is_blank()).unwrap_or(false))
    });
    if known == Some(None) {
        return not_here();
    }
    let known = known.flatten().unwrap_or_default();
    let region = app.practice(|practice| practice.region());
    let text = |of: Option<String>| of.unwrap_or_default();
    let start = vec![
        ("first-name", text(known.first)),
        ("second-name", text(known.second)),
        ("day", text(known.when.map(|when| format::day(when.day)))),
        ("time", text(known.when.and_then(|when| when.time).map(dates::time))),
        ("region", region.code().to_owned()),
    ];
    let form = Form::draft(format!("invite.{}", whom.map(|id| id.to_string()).unwrap_or_default()), start);
    let to = Memo::new(move |_| link(&address_for(&read(form, app.today.get()))));
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
    let content = column(vec![
        restored(form),
        para("", say::INVITE_INTRO),
        fields::name(form, "first-name", say::FIRST)
            .on_leave(move || {
                let _ = fields::read_optional_name(form, "first-name");
            })
            .line(),
        fields::name(form, "second-name", say::SECOND)
            .on_leave(move || {
                let _ = fields::read_optional_name(form, "second-name");
            })
            .line(),
        pair(vec![
            fields::text(form, "day", screens::APPOINTMENT)
                .hint(screens::DAY_HINT)
                .on_leave(move || {
                    let _ = fields::read_optional_day(form, "day", today.get_untracked());
                })
                .line(),
            fields::text(form, "time", screens::TIME)
                .hint(screens::TIME_HINT)
                .on_leave(move || {
                    let _ = fields::read_optional_time(form, "time");
                })
                .line(),
        ]),
        pick("region", say::REGION, regions.to_vec(), form.text("region")),
        el("div")
            .class("field")
            .child(el("label").class("field-label").attr("for", "link").text(say::LINK).view())
            .child(el("div").class("field-box").child(shown.view()).view())
            .view(),
    ]);
    let (up, name) = match whom {
        Some(id) => (Address::Part(id, Part::Said), say::SAID.to_owned()),
        None => (Address::Couples, screens::COUPLES.to_owned()),
    };
    let names = whom.and_then(|id| app.couple(id, say_book::names));
    let head = Head::new(say::INVITE).back(up.to_string(), name);
    let head = match names {
        Some(names) => head.subtitle(names),
        None => head,
    };
    page(head, content, Some(all(vec![or_nothing(sheet), copy])))
}

/// What the book knows: their names, and the next appointment.
fn of_book(couple: Couple<'_>, today: NaiveDate) -> Invitation {
    let name = |who| couple.name(who).map(str::to_owned);
    Invitation {
        first: name(Wearer::First),
        second: name(Wearer::Second),
        when: couple
            .appointments()
            .into_iter()
            .find(|it| it.outcome.is_none() && it.when.day >= today)
            .map(|it| it.when),
        region: None,
    }
}

/// What is typed, as far as it can be read: the rest stays out of the link.
fn read(form: Form, today: NaiveDate) -> Invitation {
    let text = |key: &str| form.text(key).get();
    let name = |key| read_text(&text(key), Limit::NameText).ok().flatten();
    let time = read_time(&text("time")).ok();
    Invitation {
        first: name("first-name"),
        second: name("second-name"),
        when: read_day(&text("day"), today).ok().map(|day| When { day, time }),
        region: Code::from_code(&text("region")),
    }
}
