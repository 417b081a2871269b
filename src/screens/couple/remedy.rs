//! What is chosen for a band that a head holds off: shaped, lower, or the gap accepted; what the bench gets to shape it
//! by; and when a ring is away for it.

use crate::parts::el::{maybe, or_nothing};
use crate::parts::layout::{all, para, section};
use leptos::prelude::*;

use super::{CouplePage, open, page_of_wearer};
use crate::answers::stack::{StackAnswer, StackRules, of_couple};
use crate::app::address::{Address, Part};
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::checklist::Topic;
use crate::book::id::RecordId;
use crate::book::remedy::Way;
use crate::forms::remedy as form_of;
use crate::parts::button::{Weight, link_button};
use crate::parts::choice::{Shape, option};
use crate::parts::reasons::reasons;
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::trade::wearer::Wearer;
use crate::words::bench::held_off_reasons;
use crate::words::stack::capital;
use crate::words::{book as say_book, format, remedy as say, screens as say_frame};

pub fn remedy(id: RecordId, wearer: Wearer) -> AnyView {
    let app = app();
    let CouplePage { head, leave } = page_of_wearer(id, wearer, say::TITLE, Part::Remedy(wearer));
    let held = untrack(|| {
        app.couple(id, |couple| app.practice(|practice| of_couple(couple, &StackRules::of(practice), wearer)))
    })
    .flatten();
    let rings = app.couple(id, |couple| form_of::rings_worn(couple, wearer)).unwrap_or_default();
    let computed = held.as_ref().and_then(StackAnswer::remedies);
    let page = open(id, format!("remedy.{id}.{}", wearer.code()), leave, |couple| {
        form_of::start(couple, wearer, computed, format::day)
    });
    let form = page.form;
    let band = app.couple(id, |couple| couple.band(wearer)).unwrap_or_default();
    let section_of_band = held.as_ref().and_then(StackAnswer::section_of_band);
    let save = move || {
        let read = page.read(|texts| form_of::read(texts, app.today.get(), section_of_band));
        let Some(read) = read else { return };
        page.save(read.writes(wearer, &band, section_of_band), say_frame::saved(say::TITLE));
    };
    let way = move || form_of::way_chosen(&form.texts());
    let amount = move || {
        let way = way()?;
        let field = fields::mm(form, form_of::amount(way), amount_name(way));
        Some(match way {
            Way::Lower => field.hint(say::MOST_HIGH_HINT).line(),
            Way::Shaped | Way::Gap => field.line(),
        })
    };
    let shaped = Memo::new(move |_| way() == Some(Way::Shaped));
    let away = Memo::new(move |_| shaped.get() && form.text(form_of::RING_ITSELF).with(|it| it == "yes"));
    let bench = move || {
        shaped.get().then(|| {
            section(
                say::FOR_BENCH,
                vec![
                    fields::yes(form, form_of::IMPRESSION, say::IMPRESSION, say::IMPRESSION_HINT),
                    fields::yes(form, form_of::TEMPLATE, say::TEMPLATE, say::TEMPLATE_HINT),
                    fields::yes(form, form_of::RING_ITSELF, say::RING, say::RING_HINT),
                ],
            )
        })
    };
    let names: Vec<(String, String)> =
        rings.iter().map(|ring| (ring.item.to_string(), say_book::ring_name(ring))).collect();
    let planned = move || {
        away.get().then(|| {
            let which =
                (names.len() > 1).then(|| fields::pick(form, form_of::WHICH_RING, say::WHICH_RING, names.clone()));
            let from = Signal::derive(move || {
                let today = app.today.get();
                form_of::typed_away(&form.texts(), today).from.unwrap_or(today)
            });
            all(vec![
                or_nothing(which),
                fields::day(form, form_of::AWAY_FROM, say::FROM),
                fields::day_from(form, form_of::AWAY_TO, say::TO, from),
                maybe(move || {
                    let wedding = app.couple(id, |couple| couple.wedding()).flatten()?;
                    let is_at_it = form_of::is_away_at(&form.texts(), wedding, app.today.get());
                    is_at_it.then(|| para("caution", say::AT_WEDDING))
                }),
            ])
        })
    };
    // Where a ring went, its days stay in sight, whatever is chosen meanwhile.
    let may_be_gone = Memo::new(move |_| away.get() || form.text(form_of::RING_GONE).with(|text| !text.is_empty()));
    let at_bench = move || {
        may_be_gone.get().then(|| {
            all(vec![
                fields::day(form, form_of::RING_GONE, say::GONE),
                fields::day(form, form_of::RING_BACK, say::BACK),
            ])
        })
    };
    let ways = std::iter::once(option(fields::NONE, say_frame::NOT_SETTLED))
        .chain(Way::ALL.map(|way| option(way.code(), capital(say::way(way)))))
        .collect();
    let content = all(vec![
        section(
            say::WORKED_OUT,
            vec![
                worked_out(&held),
                link_button(Weight::Quiet, say::TO_STACK, Address::of_topic(id, Topic::Stack(wearer))),
            ],
        ),
        fields::choice(form, form_of::WAY, say::WAY, Shape::Chips, ways),
        maybe(amount),
        maybe(bench),
        maybe(planned),
        maybe(at_bench),
    ]);
    form_page(head, form, content, say_frame::SAVE, save)
}

fn amount_name(way: Way) -> &'static str {
    match way {
        Way::Shaped => say::BAY,
        Way::Lower => say::MOST_HIGH,
        Way::Gap => say::GAP,
    }
}

fn worked_out(held: &Option<StackAnswer>) -> AnyView {
    let Some(held) = held else { return para("", say::NO_BAND) };
    let why = held_off_reasons(held);
    if why.is_empty() { para("", say::NOT_HELD_OFF) } else { reasons(Signal::stored(why)) }
}
