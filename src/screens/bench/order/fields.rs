//! The inputs of the order size.

use crate::parts::el::{el, live, maybe, or_nothing};
use crate::parts::layout::{all, heading, para};
use leptos::prelude::*;

use super::super::Opened;
use super::super::sheet::Sheet;
use crate::answers::order::OrderAnswer;
use crate::app::address::{Address, Setting};
use crate::archive::code::Code;
use crate::forms::order::{self as form_of, no_beads_code, own};
use crate::parts::choice::{Choosable, Shape, choice, drawn, option, pick};
use crate::parts::details::details;
use crate::parts::picture::sketch;
use crate::pictures::ornament;
use crate::screens::shell::fields::widths_hint;
use crate::trade::band::{Bore, Profile};
use crate::trade::fit::gauges::OWN_ERROR;
use crate::trade::fit::{GaugeKind, Hands, NoBeads, ReadAt, Term};
use crate::words::{
    band as say_band, bench as say, fit as say_fit, practice as say_practice, rings as say_rings, screens,
};

pub fn fields(opened: &Opened, sheet: Sheet, found: Memo<OrderAnswer>) -> AnyView {
    let form = sheet.form;
    let size = sheet.field(form_of::SIZE.name(), screens::READ_SIZE).hint(screens::READ_SIZE_HINT);
    let joint = sheet.field(form_of::JOINT.name(), say::JOINT).hint(say::JOINT_HINT);
    let hands = Hands::ALL.map(|hands| option(hands.code(), say::hands_short(hands))).into_iter().collect();
    let beads =
        [NoBeads::FullEternity, NoBeads::HardMetal].map(|why| option(no_beads_code(why), say_fit::no_beads(why)));
    let beads = std::iter::once(option("", say::TAKES_BEADS)).chain(beads).collect();
    let more = all(vec![
        sheet
            .field(form_of::BESIDE.name(), screens::BESIDE)
            .hint(widths_hint(form.text(form_of::BESIDE), screens::BESIDE_HINT))
            .line(),
        sheet.size(
            form_of::JOINT.name(),
            form_of::JOINT_AS.name(),
            joint,
            Signal::derive(move || found.with(|found| found.typed.joint.clone())),
        ),
        sheet.mm(form_of::JOINT_WIDTH.name(), say::JOINT_WIDTH).hint(say::JOINT_WIDTH_HINT).line(),
        choice(form_of::NO_BEADS.name(), say::BEADS, Shape::Chips, beads, form.text(form_of::NO_BEADS)),
        el("div")
            .child(sheet.yes(form_of::FIRST_RING.name(), screens::FIRST_RING, Some(screens::FIRST_RING_HINT)))
            .child(sheet.yes(form_of::CHANGING.name(), say::CHANGING, Some(say::CHANGING_HINT)))
            .view(),
    ]);
    let has_relief = Memo::new(move |_| form_of::has_relief(&form.texts()));
    let relief = move || {
        has_relief
            .get()
            .then(|| sheet.mm(form_of::RELIEF.name(), say_rings::RELIEF).hint(say_rings::RELIEF_HINT).line())
    };
    let afresh = if opened.opener.is_some() { say::BACK_TO_THEIRS } else { say::AFRESH };
    all(vec![
        heading(say::THE_READING),
        sheet.size(
            form_of::SIZE.name(),
            form_of::SIZE_AS.name(),
            size,
            Signal::derive(move || found.with(|found| found.typed.size.clone())),
        ),
        others(opened, sheet),
        gauge(opened, sheet, found),
        choice(form_of::HANDS.name(), screens::HANDS, Shape::Segments, hands, form.text(form_of::HANDS)),
        heading(say::THE_BAND),
        sheet.mm(form_of::WIDTH.name(), screens::BAND_WIDTH).line(),
        profile(sheet),
        maybe(relief),
        sheet
            .field(form_of::NEIGHBOURS.name(), say::NEIGHBOURS)
            .hint(widths_hint(form.text(form_of::NEIGHBOURS), say::NEIGHBOURS_HINT))
            .line(),
        details(say::MORE, more),
        overrules(sheet, found),
        para("small", screens::DO_NOT_SIZE),
        sheet.afresh(afresh),
    ])
}

/// That further readings count, and a box to have them not.
fn others(opened: &Opened, sheet: Sheet) -> AnyView {
    let count = opened.read(form_of::readings).map_or(0, |taken| taken.len().saturating_sub(1));
    or_nothing((count > 0).then(|| {
        let hint = say::other_readings(count);
        sheet.yes(form_of::ALONE_READING.name(), say::ONE_READING, Some(&hint))
    }))
}

/// A field for each term of the answer, with what the rule gives.
fn overrules(sheet: Sheet, found: Memo<OrderAnswer>) -> AnyView {
    let form = sheet.form;
    // A field that was there once stays: what is typed in it may leave the calculation without an answer for a while.
    let listed = Memo::new(move |before: Option<&[bool; Term::ALL.len()]>| {
        let typed = |term| form.text(own(term).name()).with_untracked(|text| !text.is_empty());
        Term::ALL.map(|term| {
            let now = found.with(|found| found.has_term(term));
            now || typed(term) || before.is_some_and(|before| before[term as usize])
        })
    });
    let field = move |term: Term| {
        let hint = Signal::derive(move || {
            found.with(|found| found.worked_out(term)).map(say_fit::worked_out).unwrap_or_default()
        });
        sheet.mm(own(term).name(), say_fit::term(term)).hint(hint).line()
    };
    let fields = live(move || {
        let listed = listed.get();
        all(Term::ALL.into_iter().filter(|term| listed[*term as usize]).map(field).collect())
    });
    details(say::OWN_AMOUNTS, all(vec![para("small", say::OWN_AMOUNTS_WHY), fields]))
}

/// The profile, as it is seen from its cut end.
pub fn profile(sheet: Sheet) -> AnyView {
    let one =
        |profile: Profile| drawn(profile.code(), say_band::profile(profile), sketch(ornament::profile(profile).svg));
    let options: Vec<Choosable> = Profile::ALL.map(one).into_iter().collect();
    choice(form_of::PROFILE.name(), screens::PROFILE, Shape::Drawn, options, sheet.form.text(form_of::PROFILE))
}

fn gauge(opened: &Opened, sheet: Sheet, found: Memo<OrderAnswer>) -> AnyView {
    let form = sheet.form;
    let own = opened.app.practice(|practice| {
        let gauges = practice.gauges().into_iter();
        gauges.map(|(item, own)| (item.to_string(), say::gauge(own))).collect::<Vec<_>>()
    });
    let taken = opened.read(form_of::readings).and_then(|taken| taken.into_iter().next());
    let mut options: Vec<(String, String)> = Vec::new();
    let none_of_their_own = own.is_empty() && taken.is_none();
    options.extend(taken.map(|taken| (form_of::GAUGE_AS_TAKEN.to_owned(), say::as_taken(&taken.gauge))));
    options.extend(own);
    options.push((form_of::GAUGE_OTHER.to_owned(), say::OTHER_GAUGE.to_owned()));
    let known: Vec<String> = options.iter().map(|(code, _)| code.clone()).collect();
    let picked = form.text(form_of::GAUGE);
    let other = Memo::new(move |_| picked.with(|picked| picked == form_of::GAUGE_OTHER || !known.contains(picked)));
    let stick = Memo::new(move |_| {
        found.with(|found| {
            let known = found.typed.gauge.as_ref().map(|own| matches!(own.gauge.kind, GaugeKind::Stick { .. }));
            known.unwrap_or_else(|| form.text(form_of::GAUGE_KIND).with(|kind| kind == form_of::KIND_STICK))
        })
    });
    let about = move || {
        let kinds = vec![option(form_of::KIND_SET, say::GAUGE_SET), option(form_of::KIND_STICK, say::GAUGE_STICK)];
        let bores = [Bore::Flat, Bore::Domed].map(|bore| option(bore.code(), say_band::bore(bore)));
        other.get().then(|| {
            all(vec![
                choice(
                    form_of::GAUGE_KIND.name(),
                    say::GAUGE_KIND,
                    Shape::Segments,
                    kinds,
                    form.text(form_of::GAUGE_KIND),
                ),
                sheet.mm(form_of::GAUGE_WIDTH.name(), say::GAUGE_WIDTH).hint(say::GAUGE_WIDTH_HINT).line(),
                choice(
                    form_of::GAUGE_BORE.name(),
                    say::GAUGE_BORE,
                    Shape::Segments,
                    bores.into_iter().collect(),
                    form.text(form_of::GAUGE_BORE),
                ),
                sheet
                    .mm(form_of::GAUGE_ERROR.name(), say_practice::OWN_ERROR)
                    .hint(say_practice::own_error_hint(OWN_ERROR))
                    .line(),
            ])
        })
    };
    let touches =
        Signal::derive(move || found.with(|found| form_of::touches(&form.texts(), &found.typed)).code().to_owned());
    let place_on_stick = form.following(form_of::READ_AT.name(), touches);
    let read_at = move || {
        stick.get().then(|| {
            let places = ReadAt::ALL.map(|at| option(at.code(), say_fit::read_at(at)));
            choice(form_of::READ_AT.name(), say::READ_AT, Shape::Segments, places.into_iter().collect(), place_on_stick)
        })
    };
    let to_gauges = none_of_their_own.then(|| {
        let to = Address::Setting(Setting::Gauges).to_string();
        el("p")
            .class("small")
            .text(screens::NO_GAUGES)
            .child(" ".into_any())
            .child(el("a").class("bench-link").attr("href", to).text(screens::TO_GAUGES).view())
            .view()
    });
    all(vec![
        pick(form_of::GAUGE.name(), screens::GAUGE, options, picked),
        maybe(about),
        maybe(read_at),
        or_nothing(to_gauges),
    ])
}
