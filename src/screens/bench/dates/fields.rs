//! The inputs of the countdown.

use crate::parts::el::{el, maybe};
use crate::parts::layout::{all, block, para, row};
use leptos::prelude::*;

use super::super::Opened;
use super::super::sheet::Sheet;
use crate::answers::dates::DatesAnswer;
use crate::app::address::{Address, Setting};
use crate::book::value::ChosenExtra;
use crate::forms::dates::{self as form_of, DatesTyped};
use crate::forms::{Complaints, Key};
use crate::parts::button::{Weight, link_button};
use crate::parts::choice::{pick, tick};
use crate::parts::field::Keyboard;
use crate::trade::dates::holidays::Region;
use crate::words::{bench as say, dates as say_dates, screens};

pub fn fields(
    opened: &Opened,
    sheet: Sheet,
    read: Memo<(DatesTyped, Complaints)>,
    found: Memo<DatesAnswer>,
) -> AnyView {
    let app = opened.app;
    let form = sheet.form;
    let wedding =
        Signal::derive(move || read.with(|(typed, _)| say::wedding_understood(typed.wedding, app.today.get())));
    let decided = Signal::derive(move || {
        read.with(|(typed, complaints)| say::decided_understood(typed.decided, complaints, app.today.get()))
    });
    let regions = Region::ALL.map(|region| (region.code().to_owned(), say_dates::region(region).to_owned()));
    let days = |key: Key, label: &str| sheet.field(key.name(), label).keyboard(Keyboard::Digits);
    let closures = move || {
        let count = app.practice(|practice| practice.closures().len());
        say::closures_known(count)
    };
    let afresh = if opened.opener.is_some() { say::BACK_TO_THEIRS } else { say::AFRESH };
    let to = |setting| Address::Setting(setting).to_string();
    all(vec![
        sheet.field(form_of::WEDDING.name(), screens::WEDDING).hint(wedding).line(),
        pick(form_of::REGION.name(), say::REGION, regions.into_iter().collect(), form.text(form_of::REGION)),
        el("fieldset")
            .class("bench-group")
            .child(el("legend").text(say::MAKING_DAYS).view())
            .child(block(
                "bench-three",
                vec![
                    days(form_of::LEAST, say::LEAST).line(),
                    days(form_of::USUAL, say::USUAL).line(),
                    days(form_of::MOST, say::MOST).line(),
                ],
            ))
            .view(),
        el("fieldset")
            .class("bench-group")
            .child(el("legend").text(say::ON_TOP).view())
            .child(extras(opened, sheet))
            .view(),
        days(form_of::IN_HAND, say::IN_HAND).unit(say::DAYS_BEFORE).line(),
        days(form_of::CONFIDENCE, say::CONFIDENCE).unit("%".to_owned()).line(),
        sheet.field(form_of::DECIDED.name(), say::DECIDED).hint(decided).line(),
        block(
            "column near",
            vec![
                para("small", Signal::derive(closures)),
                row(vec![
                    link_button(Weight::Quiet, say::TO_CLOSURES, to(Setting::Closures)),
                    link_button(Weight::Quiet, say::TO_TIMES, to(Setting::Times)),
                ]),
            ],
        ),
        maybe(move || found.with(|found| found.past_cut_off).then(|| para("small", say::PAST_CUT_OFF))),
        sheet.afresh(afresh),
    ])
}

fn extras(opened: &Opened, sheet: Sheet) -> AnyView {
    let known = opened.app.practice(form_of::all_extras);
    let text = sheet.form.text(form_of::EXTRAS);
    let one = |(code, extra): (String, ChosenExtra)| {
        let key = format!("extra-{code}");
        let mine = code.clone();
        let ticked = Signal::derive(move || text.with(|text| form_of::has_extra(text, &mine)));
        let set = Callback::new(move |yes: bool| {
            text.update(|text| *text = form_of::with_extra(text, &code, yes));
        });
        tick(key, say::extra_name(&extra), Some(say_dates::spread(extra.spread).into()), ticked, set)
    };
    all(known.into_iter().map(one).collect())
}
