//! The finger of one of the two: which it is, and every reading taken from it.

use crate::parts::el::{el, maybe};
use crate::parts::lay::{all, heading, para};
use leptos::prelude::*;

use super::said::beside;
use super::{Whose, whose_of};
use crate::app::address::{Address, Part, Setting};
use crate::app::clock;
use crate::app::form::Form;
use crate::app::state::{App, app};
use crate::archive::code::Code;
use crate::book::asks::Ask;
use crate::book::change::Write;
use crate::book::field::Field as Kept;
use crate::book::id::{ItemId, RecordId};
use crate::book::practice::Practice;
use crate::book::value::{OwnGauge, ReadingTaken, Value};
use crate::parts::button::{Weight, button, link_button};
use crate::parts::choice::{Shape, choice, option, pick, tick};
use crate::parts::field::Keyboard;
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::trade::fit::gauges::USUAL_SETS;
use crate::trade::fit::{GaugeKind, Hands, Place, ReadAt};
use crate::trade::sizing::SizeAsRead;
use crate::trade::wearer::{Digit, Finger, Hand, Wearer};
use crate::words::practice::USUAL_SET_NAMES;
use crate::words::{book as say_book, fit as say_fit, screens as say};

pub fn finger(id: RecordId, wearer: Wearer) -> AnyView {
    let app = app();
    let Whose { head, .. } = whose_of(id, wearer, say::FINGER, Part::Finger(wearer));
    let gauges = gauges_at_hand(app);
    let known = app.couple(id, |couple| couple.finger(wearer)).flatten();
    let finger = known.unwrap_or(Finger { hand: Hand::Left, digit: Digit::Ring });
    let form = Form::draft(
        format!("reading.{id}.{}", wearer.code()),
        vec![
            ("hand", finger.hand.code().to_owned()),
            ("digit", finger.digit.code().to_owned()),
            ("size", String::new()),
            ("as", String::new()),
            ("gauge", gauges.first().map(|(key, _)| key.clone()).unwrap_or_default()),
            ("read-at", ReadAt::LowerEdge.code().to_owned()),
            ("hands", Hands::Normal.code().to_owned()),
            ("place", Place::Base.code().to_owned()),
            ("beside", String::new()),
        ],
    );
    let has_none =
        Signal::derive(move || app.couple(id, |couple| couple.first_ring(wearer)).flatten().unwrap_or(false));
    let note_first = Callback::new(move |is: bool| {
        app.save(id, vec![Write::set(Kept::FirstRing(wearer), Value::Yes(is))], say::saved(say::FIRST_RING), || ());
    });
    let known_gauges = StoredValue::new(gauges.clone());
    let save = move || {
        let Some(writes) = known_gauges.with_value(|gauges| read(app, form, wearer, gauges)) else {
            return show_first_complaint();
        };
        app.save(id, writes, say::saved(say::READING), move || {
            form.done();
            form.reset();
        });
    };
    let content = all(vec![
        beside(id, Some(wearer), &[Ask::Hand, Ask::Finger, Ask::FirstRing]),
        readings(app, id, wearer),
        reading_fields(form, gauges),
        maybe(move || app.practice(|practice| practice.gauges().is_empty()).then(to_gauges)),
        tick("first-ring", say::FIRST_RING, Some(say::FIRST_RING_HINT.into()), has_none, note_first),
        para("small", say::DO_NOT_SIZE),
    ]);
    form_page(head, form, content, say::ADD_READING, save)
}

/// The jeweller's own gauges by their ids; while there are none, the usual sets, and the way to write down one's own.
fn gauges_at_hand(app: App) -> Vec<(String, OwnGauge)> {
    let own = |practice: Practice<'_>| {
        practice.gauges().into_iter().map(|(item, own)| (item.to_string(), own.clone())).collect::<Vec<_>>()
    };
    let own = app.practice(own);
    if !own.is_empty() {
        return own;
    }
    let usual = |(name, gauge): (&str, _)| (name.to_owned(), OwnGauge { name: name.to_owned(), gauge });
    USUAL_SET_NAMES.into_iter().zip(USUAL_SETS).map(usual).collect()
}

fn to_gauges() -> AnyView {
    let to = Address::Setting(Setting::Gauges).to_string();
    all(vec![para("small", say::NO_GAUGES), link_button(Weight::Quiet, say::TO_GAUGES, to)])
}

fn readings(app: App, id: RecordId, wearer: Wearer) -> AnyView {
    let taken = move || {
        let known = app.couple(id, |couple| {
            let readings = couple.readings(wearer).into_iter();
            readings.map(|(item, it)| (item, say_book::reading(it))).collect::<Vec<_>>()
        });
        let row = |(item, text): (ItemId, String)| {
            let remove = move || {
                app.save(id, vec![Write::clear(Kept::Reading(wearer, item))], say::removed(say::READING), || ());
            };
            el("li").class("note").child(para("", text)).child(button(Weight::Plain, say::REMOVE, remove)).view()
        };
        let rows: Vec<AnyView> = known.unwrap_or_default().into_iter().map(row).collect();
        (!rows.is_empty()).then(|| all(vec![heading(say::READINGS), el("ul").class("notes").children(rows).view()]))
    };
    maybe(taken)
}

fn reading_fields(form: Form, gauges: Vec<(String, OwnGauge)>) -> AnyView {
    let options = gauges.iter().map(|(key, own)| (key.clone(), say_book::gauge(own))).collect();
    let gauges = StoredValue::new(gauges);
    let on_stick = move || {
        let picked = form.text("gauge").get();
        gauges.with_value(|gauges| {
            gauges.iter().any(|(item, own)| *item == picked && matches!(own.gauge.kind, GaugeKind::Stick { .. }))
        })
    };
    all(vec![
        fields::text(form, "size", say::READ_SIZE).hint(say::READ_SIZE_HINT).keyboard(Keyboard::Text).line(),
        maybe(move || fields::which_size(form, "size", "as", say::READ_AS)),
        pick("gauge", say::GAUGE, options, form.text("gauge")),
        maybe(move || {
            on_stick().then(|| {
                choice(
                    "read-at",
                    say::READ_AT,
                    Shape::Segments,
                    ReadAt::ALL.map(|at| option(at.code(), say_fit::read_at(at))).into_iter().collect(),
                    form.text("read-at"),
                )
            })
        }),
        choice(
            "hands",
            say::HANDS,
            Shape::Segments,
            Hands::ALL.map(|hands| option(hands.code(), say_fit::hands(hands))).into_iter().collect(),
            form.text("hands"),
        ),
        choice(
            "place",
            say::MEASURED_AT,
            Shape::Segments,
            Place::ALL.map(|place| option(place.code(), say_fit::place(place))).into_iter().collect(),
            form.text("place"),
        ),
        fields::hand_and_finger(form),
        fields::text(form, "beside", say::BESIDE).hint(say::BESIDE_HINT).line(),
    ])
}

fn read(app: App, form: Form, wearer: Wearer, gauges: &[(String, OwnGauge)]) -> Option<Vec<Write>> {
    let size = fields::read_size(form, "size", "as");
    let beside = fields::read_widths(form, "beside");
    let text = |key| form.text(key).get_untracked();
    let picked = text("gauge");
    let gauge = gauges.iter().find(|(item, _)| *item == picked).map(|(_, own)| own.clone());
    let finger = Finger { hand: Hand::from_code(&text("hand"))?, digit: Digit::from_code(&text("digit"))? };
    let reading = ReadingTaken {
        size: SizeAsRead { stated: size?, typed: text("size").trim().to_owned() },
        finger,
        place: Place::from_code(&text("place"))?,
        gauge: gauge?,
        read_at: ReadAt::from_code(&text("read-at"))?,
        hands: Hands::from_code(&text("hands"))?,
        beside: beside?,
        taken: app.today.get_untracked(),
    };
    Some(vec![
        Write::set(Kept::Finger(wearer), Value::Finger(finger)),
        Write::set(Kept::Reading(wearer, ItemId(clock::random())), Value::Reading(reading)),
    ])
}
