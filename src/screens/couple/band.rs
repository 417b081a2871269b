//! The band wanted for one of the two: width, profile, surface and metal, each as far as it is settled.

use leptos::prelude::*;

use super::{CouplePage, open, page_of_wearer};
use crate::app::address::{Address, Calculator, Part, with_query};
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::asks::Ask;
use crate::book::id::RecordId;
use crate::book::verbs;
use crate::forms::couple::band as form_of;
use crate::forms::write::NONE;
use crate::parts::button::{Weight, link_button};
use crate::parts::choice::{Shape, option};
use crate::parts::el::maybe;
use crate::parts::layout::{all, para};
use crate::parts::picture::picture;
use crate::pictures::section as drawing;
use crate::screens::shell::beside::beside;
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::trade::band::Finish;
use crate::trade::wearer::Wearer;
use crate::words::{band as say_band, bench as say_bench, rings as say_rings, screens as say};

pub fn band(id: RecordId, wearer: Wearer) -> AnyView {
    let app = app();
    let CouplePage { head, leave } = page_of_wearer(id, wearer, say::BAND, Part::Band(wearer));
    let known = app.couple(id, |couple| couple.band(wearer)).unwrap_or_default();
    let page = open(id, format!("band.{id}.{}", wearer.code()), leave, |_| form_of::start(&known));
    let form = page.form;
    let save = move || {
        let Some(band) = page.read(|texts| form_of::read(texts, known.place)) else { return };
        page.save(verbs::choose_band(wearer, band), say::saved(say::BAND));
    };
    let finishes = std::iter::once(option(NONE, say::NOT_SETTLED))
        .chain(Finish::ALL.map(|finish| option(finish.code(), say_band::finish(finish))))
        .collect();
    let shoulders = app.couple(id, |couple| {
        let rings = couple.rings(wearer).into_iter();
        rings
            .filter(|ring| !ring.planned)
            .find_map(|ring| Some((crate::words::book::ring_name(&ring), ring.shoulder_width?)))
    });
    let hint = shoulders.flatten().map(|(name, width)| say::match_shoulders(&name, width));
    let width = fields::mm(form, form_of::WIDTH, say::BAND_WIDTH);
    let width = match hint {
        Some(hint) => width.hint(hint),
        None => width,
    };
    let asked = [("couple".to_owned(), id.to_string()), ("who".to_owned(), wearer.code().to_owned())];
    let to_compare = with_query(Address::Calculator(Calculator::Compare), &asked);
    let arcs = Memo::new(move |_| form_of::arcs(&form.texts()));
    let arcs = move || {
        let (has_dome, has_relief) = arcs.get();
        let dome = || fields::mm(form, form_of::DOME, say_rings::DOME).hint(say_rings::DOME_HINT).line();
        let relief = || fields::mm(form, form_of::RELIEF, say_rings::RELIEF).hint(say_rings::RELIEF_HINT).line();
        let fields = [has_dome.then(dome), has_relief.then(relief)];
        Some(all(fields.into_iter().flatten().collect()))
    };
    let drawn =
        Memo::new(move |_| form_of::section(&form.texts()).map(|section| drawing::section(say::BAND, &section).svg));
    let content = all(vec![
        beside(
            id,
            Some(wearer),
            &[Ask::Colour, Ask::Metal, Ask::Nickel, Ask::Likes, Ask::Work, Ask::Sport, Ask::Engraving],
        ),
        width.line(),
        fields::mm(form, form_of::HEIGHT, say_rings::BAND_HEIGHT).hint(say_rings::BAND_HEIGHT_HINT).line(),
        fields::profile(form, form_of::PROFILE),
        maybe(arcs),
        maybe(move || drawn.get().map(picture)),
        fields::choice(form, form_of::FINISH, say::FINISH, Shape::Chips, finishes),
        fields::metal(form, form_of::METAL),
        para("small", say::NICKEL),
        link_button(Weight::Quiet, say_bench::COMPARE, to_compare),
    ]);
    form_page(head, form, content, say::SAVE, save)
}
