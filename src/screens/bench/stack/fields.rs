//! The inputs of the stack: the band, and up to six rings beside it.

use crate::parts::el::{el, maybe};
use crate::parts::lay::{all, pair};
use leptos::prelude::*;

use super::super::Opened;
use super::super::sheet::Sheet;
use crate::app::form::Start;
use crate::book::couple::Couple;
use crate::parts::choice::{Shape, choice, option};
use crate::trade::wearer::Wearer;
use crate::words::{bench as say, book as say_book, lengths, screens};

/// A ring that is worn now, and one to come.
pub const NOW: &str = "now";
pub const LATER: &str = "later";
/// Where the band lies: nearest the web, or beyond the rings that are worn now.
const NEAREST_WEB: &str = "web";
pub const AFTER_WORN: &str = "after";

/// The names of a ring's fields.
pub struct RowKeys {
    pub name: &'static str,
    pub width: &'static str,
    pub top: &'static str,
    pub when: &'static str,
}

macro_rules! row {
    ($n:literal) => {
        RowKeys {
            name: concat!("ring", $n, "-name"),
            width: concat!("ring", $n, "-width"),
            top: concat!("ring", $n, "-top"),
            when: concat!("ring", $n, "-when"),
        }
    };
}

pub const ROWS: [RowKeys; 6] = [row!(1), row!(2), row!(3), row!(4), row!(5), row!(6)];

/// What the calculator starts with: the couple's rings and band, or nothing.
pub fn start(opened: &Opened) -> Vec<Start> {
    let gap = opened.app.practice(|practice| lengths::plain(practice.house().gap));
    let mut start: Vec<Start> =
        vec![("band", String::new()), ("place", NEAREST_WEB.to_owned()), ("gap", gap), ("free", String::new())];
    for row in &ROWS {
        start.extend([row.name, row.width, row.top].map(|key| (key, String::new())));
        start.push((row.when, NOW.to_owned()));
    }
    for (name, text) in opened.read(known).unwrap_or_default() {
        if let Some(entry) = start.iter_mut().find(|(of, _)| *of == name) {
            entry.1 = text;
        }
    }
    start
}

fn known(couple: Couple<'_>, who: Wearer) -> Vec<Start> {
    let mut known: Vec<Start> = Vec::new();
    known.extend(couple.band(who).width.map(|width| ("band", lengths::plain(width))));
    known.extend(couple.free_length(who).map(|free| ("free", lengths::plain(free))));
    let finger = couple.finger(who);
    let rings = couple.rings(who).into_iter();
    let here = rings.filter(|ring| ring.finger.is_none() || finger.is_none() || ring.finger == finger);
    for (row, ring) in ROWS.iter().zip(here) {
        known.push((row.name, say_book::ring_name(&ring)));
        known.extend(ring.shoulder_width.map(|width| (row.width, lengths::plain(width))));
        known.extend(ring.top_width.map(|width| (row.top, lengths::plain(width))));
        known.push((row.when, if ring.planned { LATER } else { NOW }.to_owned()));
    }
    known
}

pub fn fields(opened: &Opened, sheet: Sheet) -> AnyView {
    let form = sheet.form;
    let places = vec![option(NEAREST_WEB, say::NEAREST_WEB), option(AFTER_WORN, say::AFTER_WORN)];
    let free = opened.app.practice(|practice| say::free_hint(practice.house().free_length));
    let rows: Vec<AnyView> = (0..ROWS.len()).map(|at| row(sheet, at)).collect();
    let afresh = if opened.whose.is_some() { say::BACK_TO_THEIRS } else { say::AFRESH };
    all(vec![
        sheet.mm("band", say::BAND_TO_MAKE).line(),
        all(rows),
        choice("place", say::BAND_PLACE, Shape::Chips, places, form.text("place")),
        sheet.mm("free", say::FREE_LENGTH).hint(free).line(),
        sheet.mm("gap", say::GAP).hint(say::GAP_HINT).line(),
        sheet.afresh(afresh),
    ])
}

/// A ring; it is there once the one before it has something in it, and then it stays.
fn row(sheet: Sheet, at: usize) -> AnyView {
    let keys = &ROWS[at];
    let form = sheet.form;
    let filled = move |row: &RowKeys| [row.name, row.width].iter().any(|key| form.text(key).with(|it| !it.is_empty()));
    let shown =
        Memo::new(move |before: Option<&bool>| at == 0 || before == Some(&true) || ROWS[at - 1..].iter().any(filled));
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
                .view()
        })
    };
    maybe(inside)
}
