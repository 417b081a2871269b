//! Up to four bands side by side: each with its picture, its order size, its stack, and what to think of; one becomes
//! the band.

use crate::parts::el::{el, live, maybe, or_nothing};
use crate::parts::layout::{all, block, heading, pair, para};
use leptos::prelude::*;

use super::sheet::{Laid, Sheet, laid, step};
use super::unsettled::Unsettled;
use super::{Opened, Opener};
use crate::answers::compare::{Alternative, Shared, alternatives, widest};
use crate::app::address::Address;
use crate::app::route::go_instead;
use crate::app::seen::Seen;
use crate::app::show::Shown;
use crate::app::state::App;
use crate::archive::code::Code;
use crate::book::field::Field;
use crate::book::verbs;
use crate::forms::compare::{self as form_of, BANDS, BandKeys};
use crate::parts::button::{Weight, button};
use crate::parts::choice::pick;
use crate::parts::page::page;
use crate::parts::picture::picture;
use crate::pictures::section as drawing;
use crate::screens::shell::fields;
use crate::screens::shell::show::show_button;
use crate::trade::band::Finish;
use crate::trade::measure::Length;
use crate::words::bench::{self as say, Called};
use crate::words::{band as say_band, complaint as say_complaint, rings as say_rings, screens, showing};

pub fn compare(opened: Opened) -> AnyView {
    let app = opened.app;
    let shared = opened.known(Shared::of);
    let form = opened.form(form_of::start(&shared.chosen).into_pairs());
    let shared = StoredValue::new(shared);
    let read = Memo::new(move |_| shared.with_value(|shared| form_of::read(&form.texts(), &shared.chosen)));
    let found = Memo::new(move |_| read.with(|(bands, _)| shared.with_value(|shared| alternatives(bands, shared))));
    let complaints = Signal::derive(move || read.with(|(_, complaints)| say_complaint::complaints(complaints)));
    let sheet = Sheet::new(form, complaints);
    let answered = found.with_untracked(|all| all.len() > 1);
    let opener = opened.opener;
    let head = match opened.read(say::stack_subtitle) {
        Some(subtitle) => opened.head().subtitle(subtitle),
        None => opened.head(),
    };
    let held = Unsettled::by(&opened, |field, who| matches!(field, Field::Band(opener, _) if *opener == who));
    let seen = opener.map(|Opener { id, .. }| Seen::couple(app, id));
    let cards = move || {
        let all = found.get();
        let widest = widest(&all);
        let show = (all.len() > 1).then(|| show_button(move || found.with_untracked(|all| shown_to_them(all))));
        let cards = all.into_iter().map(|it| card(app, it, widest, opener.zip(seen), held)).collect();
        crate::parts::layout::all(vec![block("alternatives", cards), or_nothing(show)])
    };
    let content = laid(Laid {
        first: held.caution(),
        answered,
        answer: live(cards),
        inputs: inputs(sheet),
        summary: Signal::derive(move || found.with(|all| say::alternatives(all.len()))),
        reasons: para("small", say::COMPARE_WHY),
    });
    // Nothing jumps while somebody types: from the second band on there is a step to where they stand side by side.
    let label = Signal::derive(move || found.with(|all| (all.len() > 1).then(|| say::see_bands(all.len()))));
    page(head, content, Some(step(answered, label)))
}

/// All of them side by side, without anybody's own words.
fn shown_to_them(all: &[Alternative]) -> Option<Shown> {
    let widest = widest(all);
    let picture = |it: &Alternative| {
        let section = it.section?;
        Some(drawing::beside(&section, widest, Some(&say::alternative(it.number))).svg)
    };
    let lines = all.iter().map(say::alternative_shown);
    Some(Shown {
        title: showing::COMPARE_TITLE.to_owned(),
        picture: all.iter().filter_map(picture).collect(),
        figure: String::new(),
        lines: lines.collect(),
    })
}

fn inputs(sheet: Sheet) -> AnyView {
    let mut rows: Vec<AnyView> = (0..BANDS.len()).map(|at| row(sheet, at)).collect();
    rows.push(maybe(move || another(sheet)));
    rows.push(sheet.afresh(say::AFRESH));
    all(rows)
}

/// The last alternative once more, as the next one, while there is place for it.
fn another(sheet: Sheet) -> Option<AnyView> {
    let form = sheet.form;
    let filled = |keys: &BandKeys| form.text(keys.width).with(|text| !text.is_empty());
    let last = BANDS.iter().rposition(filled)?;
    let (from, to) = (BANDS.get(last)?, BANDS.get(last + 1)?);
    Some(button(Weight::Quiet, say::ANOTHER, move || {
        for (from, to) in from.all().into_iter().zip(to.all()) {
            form.text(to).set(form.text(from).get_untracked());
        }
    }))
}

/// An alternative; it is there once the one before it has a width, and then it stays.
fn row(sheet: Sheet, at: usize) -> AnyView {
    let keys = &BANDS[at];
    let form = sheet.form;
    let filled = move |keys: &BandKeys| form.text(keys.width).with(|text| !text.is_empty());
    let shown =
        Memo::new(move |before: Option<&bool>| at == 0 || before == Some(&true) || BANDS[at - 1..].iter().any(filled));
    let inside = move || {
        shown.get().then(|| {
            let finishes = Finish::ALL.map(|finish| (finish.code().to_owned(), say_band::finish(finish).to_owned()));
            let none = [(fields::NONE.to_owned(), screens::NOT_SETTLED.to_owned())];
            let finishes = none.into_iter().chain(finishes).collect();
            el("fieldset")
                .class("bench-ring")
                .child(el("legend").text(say::alternative(at + 1)).view())
                .child(pair(vec![
                    sheet.mm(keys.width.name(), screens::BAND_WIDTH).line(),
                    sheet.mm(keys.thickness.name(), say_rings::HEIGHT).line(),
                ]))
                .child(fields::profile(form, keys.profile.name()))
                .child(fields::metal(form, keys.metal.name()))
                .child(pick(keys.finish.name(), screens::FINISH, finishes, form.text(keys.finish)))
                .view()
        })
    };
    maybe(inside)
}

fn card(app: App, it: Alternative, widest: Length, opener: Option<(Opener, Seen)>, held: Unsettled) -> AnyView {
    let mut inside = vec![heading(say::alternative(it.number))];
    inside.extend(it.section.map(|section| picture(drawing::beside(&section, widest, None).svg)));
    inside.extend(say::alternative_lines(&it).into_iter().map(|line| para("", line)));
    inside.extend(it.size.and_then(Result::err).map(|lacks| para("", say::no_order_size(lacks))));
    inside.extend(say::alternative_cautions(&it, Called::Own).into_iter().map(|line| para("caution", line)));
    if let Some((Opener { id, who }, seen)) = opener {
        let band = it.band;
        let choose = move || {
            let to = Address::Couple(id).to_string();
            let saved = screens::saved(screens::BAND);
            app.save(id, seen.changed(verbs::choose_band(who, band)), saved, move || go_instead(&to));
        };
        inside.push(maybe(move || (!held.is_so()).then(|| button(Weight::Quiet, say::MAKE_THIS, choose))));
    }
    el("section").class("alternative").children(inside).view()
}
