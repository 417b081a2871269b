//! The rings that one of the two owns or will own, and one of them.

use leptos::prelude::*;

use super::preparation_list::has_rings;
use super::{CouplePage, not_here, open, page_of_wearer};
use crate::app::address::{Address, Part};
use crate::app::clock;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::asks::Ask;
use crate::book::couple::Ring;
use crate::book::id::{ItemId, RecordId};
use crate::book::verbs;
use crate::forms::couple::ring as form_of;
use crate::forms::stack::{LATER, NOW};
use crate::forms::write::NONE;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::choice::{Shape, choice_with, option};
use crate::parts::el::{maybe, or_nothing};
use crate::parts::layout::{all, column, heading, pair, para, section};
use crate::parts::line::{line, lines};
use crate::parts::page::page;
use crate::screens::shell::beside::beside;
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::trade::stack::RINGS_MOST;
use crate::trade::wearer::Wearer;
use crate::words::list::taking as say_list;
use crate::words::{book as say_book, lengths, rings as say_rings, screens as say};

pub fn rings(id: RecordId, wearer: Wearer) -> AnyView {
    let app = app();
    let CouplePage { head, .. } = page_of_wearer(id, wearer, say::RINGS, Part::Rings(wearer));
    let rows = Signal::derive(move || {
        let row = |it: Ring| {
            let width = it.shoulder_width.map(|width| format!("{} mm", lengths::plain(width))).unwrap_or_default();
            let small = app.couple(id, |couple| say_book::ring_small(couple, wearer, &it)).unwrap_or_default();
            let href = Address::Part(id, Part::Ring(wearer, Some(it.item))).to_string();
            line(say_book::ring_name(&it), width, href).small(small)
        };
        app.couple(id, |couple| couple.rings(wearer).into_iter().map(row).collect::<Vec<_>>()).unwrap_or_default()
    });
    let none = move || {
        let asked = app.couple(id, |couple| couple.has_no_rings(wearer)).unwrap_or(false);
        let said = move || {
            let writes = vec![verbs::no_rings(wearer, !asked)];
            app.save(id, writes, say::saved(say::RINGS), || ());
        };
        let label = if asked { say::NO_RINGS_BACK } else { say::NO_RINGS };
        rows.with(Vec::is_empty).then(|| {
            all(vec![
                para("", if asked { say::NO_RINGS_SAID } else { say::NONE_YET }),
                button(Weight::Quiet, label.to_owned(), said),
            ])
        })
    };
    let new = Address::Part(id, Part::Ring(wearer, None)).to_string();
    let theirs = beside(id, Some(wearer), &[Ask::OwnsRings, Ask::RingName, Ask::ToCome]);
    let ours = move || {
        let said = app.couple(id, |couple| has_rings(couple, wearer)).unwrap_or(false);
        (said && rows.with(|rows| !rows.is_empty())).then(|| heading(say_list::MEASURED_BY_US))
    };
    page(
        head,
        column(vec![theirs, maybe(ours), lines(rows), maybe(none)]),
        Some(link_button(Weight::Primary, say::NEW_RING, new)),
    )
}

pub fn ring(id: RecordId, wearer: Wearer, which: Option<ItemId>) -> AnyView {
    let app = app();
    let CouplePage { head, leave } = page_of_wearer(id, wearer, say::RING, Part::Ring(wearer, which));
    let owned = app.couple(id, |couple| couple.rings(wearer)).unwrap_or_default();
    let known = which.and_then(|item| owned.into_iter().find(|ring| ring.item == item));
    if which.is_some() && known.is_none() {
        return not_here();
    }
    let item = which.unwrap_or_else(|| ItemId(clock::random()));
    let known = known.or_else(|| app.couple(id, |couple| form_of::new(couple, wearer, item)));
    let name = which.map_or_else(|| "new".to_owned(), |item| item.to_string());
    let name = format!("ring.{id}.{}.{name}", wearer.code());
    let page = open(id, name, leave, |_| known.as_ref().map(form_of::start).unwrap_or_default());
    let form = page.form;
    let save = move || {
        let Some(ring) = page.read(|texts| form_of::read(texts, item)) else { return };
        page.save(verbs::note_ring(wearer, ring), say::saved(say::RING));
    };
    let planned = form.text(form_of::WHEN);
    let planned_hint = move || if planned.with(|it| it == LATER) { say::PLANNED_HINT } else { "" }.to_owned();
    let when = vec![option(NOW, say::WORN_NOW), option(LATER, say::PLANNED)];
    let places = (1..=RINGS_MOST as u16).map(|place| (place.to_string(), say_rings::place(place)));
    let places = std::iter::once((NONE.to_owned(), say_rings::NO_PLACE.to_owned())).chain(places).collect();
    let content = all(vec![
        beside(id, Some(wearer), &[Ask::RingName]),
        fields::text(form, form_of::NAME, say::RING_NAME).hint(say::RING_NAME_HINT).line(),
        choice_with(
            form_of::WHEN.name(),
            say::WHEN_WORN.into(),
            Some(Signal::derive(planned_hint).into()),
            Shape::Segments,
            when,
            planned,
        ),
        fields::mm(form, form_of::SHOULDER_WIDTH, say::SHOULDER_WIDTH).hint(say::SHOULDER_WIDTH_HINT).line(),
        pair(vec![
            fields::mm(form, form_of::TOP_WIDTH, say::TOP_WIDTH).line(),
            fields::mm(form, form_of::BACK_WIDTH, say_rings::BACK_WIDTH).line(),
        ]),
        fields::mm(form, form_of::HEIGHT, say_rings::HEIGHT).hint(say_rings::HEIGHT_HINT).line(),
        fields::profile(form, form_of::PROFILE),
        fields::metal(form, form_of::METAL),
        fields::text(form, form_of::INSCRIPTION, say_rings::INSCRIPTION).hint(say_rings::INSCRIPTION_HINT).line(),
        fields::pick(form, form_of::PLACE, say_rings::PLACE, places),
        fields::yes(form, form_of::HOLDS, say_rings::HOLDS, say_rings::HOLDS_HINT),
        section(
            say_rings::HEAD,
            vec![
                para("small", say_rings::HEAD_HOW),
                pair(vec![
                    fields::mm(form, form_of::HEAD_TO_WEB, say_rings::TO_WEB).line(),
                    fields::mm(form, form_of::HEAD_TO_TIP, say_rings::TO_TIP).line(),
                ]),
                fields::mm(form, form_of::HEAD_UNDERSIDE, say_rings::UNDERSIDE).line(),
                fields::yes(form, form_of::STONES, say_rings::STONES, say_rings::STONES_HINT),
            ],
        ),
        fields::mm(form, form_of::INSIDE, say_rings::INSIDE).hint(say_rings::INSIDE_HINT).line(),
        fields::hand_and_finger(form),
        or_nothing(which.map(|item| page.remove(verbs::drop_ring(wearer, item), say::RING))),
    ]);
    form_page(head, form, content, say::SAVE, save)
}
