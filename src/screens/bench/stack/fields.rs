//! The inputs of the stack: the band, and up to seven rings beside it.

use crate::parts::el::{el, maybe};
use crate::parts::lay::{all, pair, para};
use leptos::prelude::*;

use super::super::Opened;
use super::super::sheet::Sheet;
use crate::app::form::{Form, Start};
use crate::archive::code::Code;
use crate::book::couple::{Couple, Ring};
use crate::book::remedy::Way;
use crate::parts::choice::{Shape, choice, option};
use crate::parts::details::details_opened;
use crate::screens::fields;
use crate::trade::band::{Bore, Finish, Profile};
use crate::trade::measure::Length;
use crate::trade::stack::{RingOnFinger, When};
use crate::trade::wearer::{Digit, Finger, Hand, Wearer};
use crate::words::{bench as say, book as say_book, lengths, remedy as say_remedy, rings as say_rings, screens};

/// A ring that is worn now, and one to come.
pub const NOW: &str = "now";
pub const LATER: &str = "later";
/// Where the band lies: nearest the web, or beyond the rings that are worn now; otherwise beyond so many rings.
const NEAREST_WEB: &str = "web";
pub const AFTER_WORN: &str = "after";

/// The names of a ring's fields.
pub struct RowKeys {
    pub name: &'static str,
    pub width: &'static str,
    pub top: &'static str,
    pub back: &'static str,
    pub when: &'static str,
    pub height: &'static str,
    pub profile: &'static str,
    pub metal: &'static str,
    pub web: &'static str,
    pub tip: &'static str,
    pub under: &'static str,
    pub stones: &'static str,
    pub inside: &'static str,
    /// Those that are folded away at first.
    pub more: [&'static str; 6],
}

/// The fields of the band that are folded away at first.
const BAND_MORE: [&str; 5] = ["band-height", "band-dome", "band-relief", "band-bay", "band-inside"];

macro_rules! row {
    ($n:literal) => {
        RowKeys {
            name: concat!("ring", $n, "-name"),
            width: concat!("ring", $n, "-width"),
            top: concat!("ring", $n, "-top"),
            back: concat!("ring", $n, "-back"),
            when: concat!("ring", $n, "-when"),
            height: concat!("ring", $n, "-height"),
            profile: concat!("ring", $n, "-profile"),
            metal: concat!("ring", $n, "-metal"),
            web: concat!("ring", $n, "-web"),
            tip: concat!("ring", $n, "-tip"),
            under: concat!("ring", $n, "-under"),
            stones: concat!("ring", $n, "-stones"),
            inside: concat!("ring", $n, "-inside"),
            more: [
                concat!("ring", $n, "-back"),
                concat!("ring", $n, "-height"),
                concat!("ring", $n, "-web"),
                concat!("ring", $n, "-tip"),
                concat!("ring", $n, "-under"),
                concat!("ring", $n, "-inside"),
            ],
        }
    };
}

pub const ROWS: [RowKeys; 7] = [row!(1), row!(2), row!(3), row!(4), row!(5), row!(6), row!(7)];

/// The free length of each finger, and the name of its field.
pub const FREE: [(Finger, &str); 10] = [
    (finger(Hand::Left, Digit::Thumb), "free-left-thumb"),
    (finger(Hand::Left, Digit::Index), "free-left-index"),
    (finger(Hand::Left, Digit::Middle), "free-left-middle"),
    (finger(Hand::Left, Digit::Ring), "free-left-ring"),
    (finger(Hand::Left, Digit::Little), "free-left-little"),
    (finger(Hand::Right, Digit::Thumb), "free-right-thumb"),
    (finger(Hand::Right, Digit::Index), "free-right-index"),
    (finger(Hand::Right, Digit::Middle), "free-right-middle"),
    (finger(Hand::Right, Digit::Ring), "free-right-ring"),
    (finger(Hand::Right, Digit::Little), "free-right-little"),
];

const fn finger(hand: Hand, digit: Digit) -> Finger {
    Finger { hand, digit }
}

/// The rings on another finger, from the web outwards.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Elsewhere {
    pub finger: Finger,
    pub rings: Vec<RingOnFinger>,
    /// Rings of which no width is known.
    pub without_width: usize,
}

/// What lies on the other fingers of both hands, one entry a finger.
pub fn elsewhere(couple: Couple<'_>, who: Wearer) -> Vec<Elsewhere> {
    let Some(here) = of_band(couple, who) else { return Vec::new() };
    let mut fingers: Vec<Elsewhere> = Vec::new();
    for ring in couple.rings(who) {
        let Some(finger) = ring.finger.filter(|finger| *finger != here) else { continue };
        if !fingers.iter().any(|it| it.finger == finger) {
            fingers.push(Elsewhere { finger, rings: Vec::new(), without_width: 0 });
        }
        let Some(there) = fingers.iter_mut().find(|it| it.finger == finger) else { continue };
        let when = if ring.planned { When::Later } else { When::Now };
        match ring.shoulder_width {
            Some(width) => there.rings.push(RingOnFinger { width, when }),
            None => there.without_width += 1,
        }
    }
    fingers
}

/// The finger of the band: the one that was noted, otherwise that of the first ring with a finger.
pub fn of_band(couple: Couple<'_>, who: Wearer) -> Option<Finger> {
    couple.finger(who).or_else(|| couple.rings(who).into_iter().find_map(|ring| ring.finger))
}

/// The rings that lie on the finger of the band, those without a finger among them.
pub fn here(couple: Couple<'_>, who: Wearer) -> Vec<Ring> {
    let finger = of_band(couple, who);
    let rings = couple.rings(who).into_iter();
    rings.filter(|ring| ring.finger.is_none() || finger.is_none() || ring.finger == finger).collect()
}

/// What the calculator starts with: the couple's rings and band, or nothing.
pub fn start(opened: &Opened) -> Vec<Start> {
    let gap = opened.app.practice(|practice| lengths::plain(practice.house().gap));
    let none = || fields::code_or_none::<Profile>(None);
    let mut start: Vec<Start> = vec![("place", NEAREST_WEB.to_owned()), ("gap", gap)];
    start.extend([("band-profile", none()), ("band-metal", none())]);
    let blank = ["band", "free", "band-height", "band-dome", "band-relief", "band-set", "band-inside", "band-bay"];
    start.extend(blank.map(|key| (key, String::new())));
    start.extend(FREE.map(|(_, key)| (key, String::new())));
    for row in &ROWS {
        let blank = [row.name, row.width, row.top, row.back, row.height, row.web, row.tip, row.under];
        start.extend(blank.into_iter().chain([row.stones, row.inside]).map(|key| (key, String::new())));
        start.extend([(row.when, NOW.to_owned()), (row.profile, none()), (row.metal, none())]);
    }
    for (name, text) in opened.read(known).unwrap_or_default() {
        if let Some(entry) = start.iter_mut().find(|(of, _)| *of == name) {
            entry.1 = text;
        }
    }
    start
}

fn known(couple: Couple<'_>, who: Wearer) -> Vec<Start> {
    let length = |of: Option<Length>| of.map(lengths::plain).unwrap_or_default();
    let band = couple.band(who);
    let inside = couple.order_size(who).map(|size| size.size.circumference().diameter().0);
    let set = matches!(band.finish, Some(Finish::Set | Finish::SetAllRound));
    let mut known: Vec<Start> = vec![
        ("band", length(band.width)),
        ("band-height", length(band.height)),
        ("band-profile", fields::code_or_none(band.profile)),
        ("band-dome", length(band.dome)),
        ("band-relief", length(band.relief)),
        ("band-metal", band.metal.map_or(fields::NONE, |alloy| alloy.code).to_owned()),
        ("band-set", fields::yes_or_nothing(set)),
        ("band-inside", length(inside)),
        ("band-bay", length(couple.remedy(who).filter(|it| it.way == Way::Shaped).map(|it| it.by))),
        ("free", length(couple.free_length(who))),
    ];
    let free = |(finger, key): (Finger, &'static str)| (key, length(couple.free_length_of(who, finger)));
    known.extend(FREE.into_iter().filter(|(finger, _)| of_band(couple, who) != Some(*finger)).map(free));
    known.extend(band.place.filter(|place| place.0 > 0).map(|place| ("place", place.0.to_string())));
    for (row, ring) in ROWS.iter().zip(here(couple, who)) {
        known.extend([
            (row.name, say_book::ring_name(&ring)),
            (row.width, length(ring.shoulder_width)),
            (row.top, length(ring.top_width)),
            (row.back, length(ring.back_width)),
            (row.height, length(ring.height)),
            (row.profile, fields::code_or_none(ring.profile)),
            (row.metal, ring.metal.map_or(fields::NONE, |alloy| alloy.code).to_owned()),
            (row.web, length(ring.head.to_web)),
            (row.tip, length(ring.head.to_tip)),
            (row.under, length(ring.head.underside)),
            (row.stones, fields::yes_or_nothing(ring.stones)),
            (row.inside, length(ring.inside)),
            (row.when, if ring.planned { LATER } else { NOW }.to_owned()),
        ]);
    }
    known
}

pub fn fields(opened: &Opened, sheet: Sheet) -> AnyView {
    let form = sheet.form;
    let free = opened.app.practice(|practice| say::free_hint(practice.house().free_length));
    let rows: Vec<AnyView> = (0..ROWS.len()).map(|at| row(sheet, at)).collect();
    let others = opened.read(elsewhere).unwrap_or_default().into_iter().filter_map(|it| {
        let (_, key) = FREE.into_iter().find(|(finger, _)| *finger == it.finger)?;
        Some(sheet.mm(key, &say::free_length_of(it.finger)).line())
    });
    let others = others.collect();
    let afresh = if opened.whose.is_some() { say::BACK_TO_THEIRS } else { say::AFRESH };
    all(vec![
        sheet.mm("band", say::BAND_TO_MAKE).line(),
        details_opened(say::BAND_MORE, band(sheet), sheet.complains(&BAND_MORE)),
        all(rows),
        place(form),
        sheet.mm("free", say::FREE_LENGTH).hint(free).line(),
        all(others),
        sheet.mm("gap", say::GAP).hint(say::GAP_HINT).line(),
        sheet.afresh(afresh),
    ])
}

/// Where the band lies, among as many rings as there are.
fn place(form: Form) -> AnyView {
    let rings = Memo::new(move |_| ROWS.iter().filter(|row| is_filled(form, row)).count());
    maybe(move || {
        let between = (1..=rings.get()).map(|n| option(n.to_string(), say::beyond_ring(n)));
        let ends = [option(NEAREST_WEB, say::NEAREST_WEB), option(AFTER_WORN, say::AFTER_WORN)];
        let places = ends.into_iter().chain(between.filter(|_| rings.get() > 1)).collect();
        Some(choice("place", say::BAND_PLACE, Shape::Chips, places, form.text("place")))
    })
}

fn band(sheet: Sheet) -> AnyView {
    let form = sheet.form;
    let profile = move || Profile::from_code(&form.text("band-profile").get());
    let dome = move || {
        profile().filter(|it| it.is_domed_outside())?;
        Some(sheet.mm("band-dome", say_rings::DOME).hint(say_rings::DOME_HINT).line())
    };
    let relief = move || {
        profile().filter(|it| it.bore() == Bore::Domed)?;
        Some(sheet.mm("band-relief", say_rings::RELIEF).hint(say_rings::RELIEF_HINT).line())
    };
    all(vec![
        sheet.mm("band-height", say_rings::BAND_HEIGHT).line(),
        fields::profile(form, "band-profile"),
        maybe(dome),
        maybe(relief),
        fields::metal(form, "band-metal"),
        sheet.mm("band-bay", say_remedy::BAY).hint(say_remedy::BAY_HINT).line(),
        sheet.yes("band-set", say::BAND_SET, Some(say_rings::STONES_HINT)),
        sheet.mm("band-inside", say_rings::INSIDE).hint(say_rings::INSIDE_HINT).line(),
    ])
}

fn is_filled(form: Form, row: &RowKeys) -> bool {
    [row.name, row.width].iter().any(|key| form.text(key).with(|it| !it.is_empty()))
}

/// A ring; it is there once the one before it has something in it, and then it stays.
fn row(sheet: Sheet, at: usize) -> AnyView {
    let keys = &ROWS[at];
    let form = sheet.form;
    let shown = Memo::new(move |before: Option<&bool>| {
        at == 0 || before == Some(&true) || ROWS[at - 1..].iter().any(|row| is_filled(form, row))
    });
    let inside = move || {
        shown.get().then(|| {
            let when = vec![option(NOW, say::WORN_NOW), option(LATER, screens::PLANNED)];
            el("fieldset")
                .class("bench-ring")
                .child(el("legend").text(say::ring_number(at + 1)).view())
                .child(sheet.field(keys.name, screens::RING_NAME).hint(screens::RING_NAME_HINT).line())
                .child(pair(vec![
                    sheet.mm(keys.width, say::AT_SHOULDERS).line(),
                    sheet.mm(keys.top, screens::TOP_WIDTH).line(),
                ]))
                .child(choice(keys.when, say::WHEN_WORN, Shape::Segments, when, form.text(keys.when)))
                .child(details_opened(say::RING_MORE, more(sheet, keys), sheet.complains(&keys.more)))
                .view()
        })
    };
    maybe(inside)
}

fn more(sheet: Sheet, keys: &'static RowKeys) -> AnyView {
    all(vec![
        pair(vec![sheet.mm(keys.back, say_rings::BACK_WIDTH).line(), sheet.mm(keys.height, say_rings::HEIGHT).line()]),
        fields::profile(sheet.form, keys.profile),
        fields::metal(sheet.form, keys.metal),
        para("small", say_rings::HEAD_HOW),
        pair(vec![sheet.mm(keys.web, say_rings::TO_WEB).line(), sheet.mm(keys.tip, say_rings::TO_TIP).line()]),
        sheet.mm(keys.under, say_rings::UNDERSIDE).line(),
        sheet.yes(keys.stones, say_rings::STONES, Some(say_rings::STONES_HINT)),
        sheet.mm(keys.inside, say_rings::INSIDE).hint(say_rings::INSIDE_HINT).line(),
    ])
}
