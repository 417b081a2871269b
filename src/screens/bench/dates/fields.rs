//! The inputs of the countdown.

use crate::parts::el::{el, maybe};
use crate::parts::lay::{all, block, para, row};
use leptos::prelude::*;

use super::super::Opened;
use super::super::sheet::Sheet;
use super::reckon::{Reckoned, all_extras, is_ticked};
use crate::app::address::{Address, Setting};
use crate::app::form::Start;
use crate::archive::code::Code;
use crate::book::couple::Couple;
use crate::book::schedule::Asked;
use crate::book::value::{ChosenExtra, ExtraWork};
use crate::parts::button::{Weight, link_button};
use crate::parts::choice::{pick, tick};
use crate::parts::field::Keyboard;
use crate::screens::fields::understood_day;
use crate::trade::dates::entry::{read_day, read_wedding};
use crate::trade::dates::holidays::Region;
use crate::trade::dates::lead_times::Step as Work;
use crate::trade::dates::wedding::Wedding;
use crate::words::{bench as say, dates as say_dates, format, screens};

/// What the calculator starts with: what was settled for the couple, or the practice's own times.
pub fn start(opened: &Opened) -> Vec<Start> {
    let asked = opened.app.practice(|practice| {
        opened.read(|couple, _| Asked::of(couple, practice)).unwrap_or_else(|| Asked {
            region: practice.region(),
            making: practice.lead_time(Work::Making),
            extras: Vec::new(),
            in_hand: practice.in_hand(),
            confidence: practice.confidence(),
        })
    });
    let wedding = opened.read(|couple, _| typed(couple)).unwrap_or_default();
    let Asked { region, making, extras, in_hand, confidence } = asked;
    let extras: Vec<String> = extras.iter().map(code).collect();
    vec![
        ("wedding", wedding),
        ("region", region.code().to_owned()),
        ("least", making.least().0.to_string()),
        ("usual", making.usual().0.to_string()),
        ("most", making.most().0.to_string()),
        ("extras", extras.join(",")),
        ("in-hand", in_hand.0.to_string()),
        ("confidence", confidence.0.to_string()),
        ("decided", String::new()),
    ]
}

/// The wedding as it would be typed.
fn typed(couple: Couple<'_>) -> String {
    match couple.wedding() {
        None => String::new(),
        Some(Wedding::Year(year)) => year.to_string(),
        Some(Wedding::NotYet) => say::NOT_YET.to_owned(),
        Some(wedding @ (Wedding::Day(_) | Wedding::Month { .. })) => say_dates::wedding(wedding),
    }
}

fn code(extra: &ChosenExtra) -> String {
    match extra.work {
        ExtraWork::Usual(work) => work.code().to_owned(),
        ExtraWork::Own(item) => item.to_string(),
    }
}

pub fn fields(opened: &Opened, sheet: Sheet, found: Memo<Reckoned>) -> AnyView {
    let app = opened.app;
    let form = sheet.form;
    let wedding = form.text("wedding");
    let understood = Signal::derive(move || {
        let today = app.today.get();
        match wedding.with(|text| read_wedding(text, today)) {
            Ok(Wedding::Day(day)) => format!("{} · {}", format::day(day), screens::from_today(day, today)),
            Ok(wedding) => say_dates::wedding(wedding),
            Err(_) => screens::WEDDING_HINT.to_owned(),
        }
    });
    let typed = form.text("decided");
    let decided = Signal::derive(move || {
        let today = app.today.get();
        understood_day(typed.with(|text| read_day(text, today)), say::DECIDED_HINT, today)
    });
    let regions = Region::ALL.map(|region| (region.code().to_owned(), say_dates::region(region).to_owned()));
    let days = |key, label: &str| sheet.field(key, label).keyboard(Keyboard::Digits).line();
    let closures = move || {
        let count = app.practice(|practice| practice.closures().len());
        say::closures_known(count)
    };
    let afresh = if opened.whose.is_some() { say::BACK_TO_THEIRS } else { say::AFRESH };
    let to = |setting| Address::Setting(setting).to_string();
    all(vec![
        sheet.field("wedding", screens::WEDDING).hint(understood).line(),
        pick("region", say::REGION, regions.into_iter().collect(), form.text("region")),
        el("fieldset")
            .class("bench-group")
            .child(el("legend").text(say::MAKING_DAYS).view())
            .child(block(
                "bench-three",
                vec![days("least", say::LEAST), days("usual", say::USUAL), days("most", say::MOST)],
            ))
            .view(),
        el("fieldset")
            .class("bench-group")
            .child(el("legend").text(say::ON_TOP).view())
            .child(extras(opened, sheet))
            .view(),
        sheet.field("in-hand", say::IN_HAND).unit(say::DAYS_BEFORE).keyboard(Keyboard::Digits).line(),
        sheet.field("confidence", say::CONFIDENCE).unit("%".to_owned()).keyboard(Keyboard::Digits).line(),
        sheet.field("decided", say::DECIDED).hint(decided).line(),
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
    let known = opened.app.practice(all_extras);
    let text = sheet.form.text("extras");
    let one = |(code, extra): (String, ChosenExtra)| {
        let name = match (extra.work, extra.name) {
            (ExtraWork::Usual(work), _) => say_dates::step(work).to_owned(),
            (ExtraWork::Own(_), name) => name.unwrap_or_else(|| say::OWN_EXTRA.to_owned()),
        };
        let key = format!("extra-{code}");
        let mine = code.clone();
        let ticked = Signal::derive(move || text.with(|text| is_ticked(text, &mine)));
        let set = Callback::new(move |yes: bool| {
            text.update(|text| {
                let mut all: Vec<&str> = text.split(',').filter(|it| !it.is_empty() && *it != code).collect();
                if yes {
                    all.push(&code);
                }
                *text = all.join(",");
            });
        });
        tick(key, name, Some(say_dates::spread(extra.spread).into()), ticked, set)
    };
    all(known.into_iter().map(one).collect())
}
