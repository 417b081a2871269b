//! The fields that several forms share: how each is drawn. `forms` says how what was typed in it is read.

use chrono::NaiveDate;
use leptos::prelude::*;

use crate::app::form::Form;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::forms::reading::{DIGIT, HAND};
use crate::forms::{self, Key, reading_codes, understood, write};
use crate::parts::Words;
use crate::parts::choice::{self as parts, Choosable, Shape};
use crate::parts::el::maybe;
use crate::parts::field::{Field, Keyboard};
use crate::parts::layout::{all, pair, para};
use crate::parts::picture::sketch;
use crate::pictures::ornament;
use crate::trade::band::{Profile, alloys};
use crate::trade::sizing::SizeAsRead;
use crate::trade::wearer::{Digit, Hand};
use crate::words::{band as say_band, dates as say_dates, entry as say_entry, screens as say, sizing as say_sizing};

/// A field of plain words.
pub fn text(form: Form, key: impl Into<&'static str>, label: &str) -> Field {
    let key = key.into();
    Field::new(key, label.to_owned(), form.text(key)).error(form.complaint(key))
}

/// A length in millimetres.
pub fn mm(form: Form, key: impl Into<&'static str>, label: &str) -> Field {
    text(form, key, label).unit("mm".to_owned()).keyboard(Keyboard::Decimal)
}

/// A share of a whole.
pub fn percent(form: Form, key: impl Into<&'static str>, label: &str) -> Field {
    text(form, key, label).unit("%".to_owned()).keyboard(Keyboard::Digits)
}

/// A number of days.
pub fn days(form: Form, key: impl Into<&'static str>, label: &str) -> Field {
    text(form, key, label).unit(say_dates::DAYS).keyboard(Keyboard::Digits)
}

/// A time of day, with what it is understood as.
pub fn time(form: Form, key: Key, label: &str, empty: &'static str) -> AnyView {
    let typed = form.text(key);
    let understood = Signal::derive(move || {
        let time = typed.with(|text| understood::time(text));
        time.map_or_else(|| empty.to_owned(), say_dates::time)
    });
    text(form, key, label).hint(understood).line()
}

/// How long something takes: least, usual and most, as three fields.
pub fn spread(form: Form, keys: [Key; 3]) -> AnyView {
    let [least, usual, most] = keys;
    all(vec![
        days(form, least, say_dates::LEAST).line(),
        days(form, usual, say_dates::USUAL).line(),
        days(form, most, say_dates::MOST).enter("done").line(),
    ])
}

/// The wedding date, with what it is understood as.
pub fn wedding(form: Form, key: Key) -> AnyView {
    let app = app();
    let typed = form.text(key);
    let understood = Signal::derive(move || {
        let today = app.today.get();
        say::wedding_understood(typed.with(|text| understood::wedding(text, today)), today)
    });
    text(form, key, say::WEDDING)
        .hint(understood)
        .on_leave(move || {
            form.look_at(key, |form, key| form.optional_wedding(key, app.today.get_untracked()));
        })
        .line()
}

/// A day, with what it is understood as.
pub fn day(form: Form, key: impl Into<&'static str>, label: &str) -> AnyView {
    let today = app().today;
    day_from(form, key, label, Signal::derive(move || today.get()))
}

/// A day; one without a year is the next such day from `from` on.
pub fn day_from(form: Form, key: impl Into<&'static str>, label: &str, from: Signal<NaiveDate>) -> AnyView {
    let (app, key) = (app(), key.into());
    let typed = form.text(key);
    let understood = Signal::derive(move || {
        let today = app.today.get();
        say::day_understood(typed.with(|text| understood::day(text, from.get(), today)), today)
    });
    text(form, key, label).hint(understood).line()
}

/// The profile of a band or ring, each drawn.
pub fn profile(form: Form, key: impl Into<&'static str>) -> AnyView {
    let drawn = Profile::ALL.map(|profile| {
        parts::drawn(profile.code(), say_band::profile(profile), sketch(ornament::profile(profile).svg))
    });
    let options = drawn.into_iter().chain([parts::option(NONE, say::NOT_SETTLED)]).collect();
    choice(form, key, say::PROFILE, Shape::Drawn, options)
}

/// The metal of a band or ring; one with nickel in it says so.
pub fn metal(form: Form, key: impl Into<&'static str>) -> AnyView {
    let key = key.into();
    let alloys = alloys::ALLOYS.iter().map(|alloy| (alloy.code.to_owned(), say_band::alloy(alloy)));
    let options = std::iter::once((NONE.to_owned(), say::NOT_SETTLED.to_owned())).chain(alloys).collect();
    let nickel =
        maybe(move || say_band::nickel(understood::metal(&form.text(key).get())).map(|it| para("caution", it)));
    all(vec![pick(form, key, say::METAL, options), nickel])
}

/// A box to tick, kept as "yes" or nothing.
pub fn yes(form: Form, key: impl Into<&'static str>, label: &'static str, hint: &'static str) -> AnyView {
    let key = key.into();
    let text = form.text(key);
    let ticked = Signal::derive(move || text.with(|text| text == "yes"));
    let set = Callback::new(move |yes: bool| text.set(write::yes(yes)));
    parts::tick(key, label, Some(hint.into()), ticked, set)
}

pub use crate::forms::write::NONE;

/// A group of radios.
pub fn choice(
    form: Form,
    key: impl Into<&'static str>,
    legend: impl Into<Words>,
    shape: Shape,
    options: Vec<Choosable>,
) -> AnyView {
    let key = key.into();
    parts::choice(key, legend, shape, options, form.text(key))
}

/// A list to pick one from.
pub fn pick(
    form: Form,
    key: impl Into<&'static str>,
    label: impl Into<Words>,
    options: Vec<(String, String)>,
) -> AnyView {
    let key = key.into();
    parts::pick(key, label, options, form.text(key))
}

/// A group of boxes of which several may be ticked.
pub fn several(form: Form, key: Key, legend: impl Into<Words>, options: Vec<Choosable>) -> AnyView {
    let key = key.name();
    parts::several(key, legend, options, form.text(key), form.complaint(key))
}

/// The same with long names, one under the other.
pub fn several_rows(form: Form, key: Key, legend: impl Into<Words>, options: Vec<Choosable>) -> AnyView {
    let key = key.name();
    parts::several_rows(key, legend, options, form.text(key), form.complaint(key))
}

/// Whether they agree to be recorded.
pub fn may_record(form: Form, key: Key) -> AnyView {
    let answers = vec![
        parts::option(write::NOT_ASKED, say::NOT_ASKED),
        parts::option("yes", say::YES),
        parts::option("no", say::NO),
    ];
    let hint = Some(say::MAY_RECORD_HINT.into());
    parts::choice_with(key.name(), say::MAY_RECORD.into(), hint, Shape::Segments, answers, form.text(key))
}

/// The hand and the finger.
pub fn hand_and_finger(form: Form) -> AnyView {
    let hands = Hand::ALL.map(|hand| parts::option(hand.code(), say_band::hand(hand)));
    let digits = Digit::ALL.map(|digit| (digit.code().to_owned(), say_band::digit(digit).to_owned()));
    pair(vec![
        choice(form, HAND, say::HAND, Shape::Segments, hands.into()),
        pick(form, DIGIT, say::FINGER, digits.into()),
    ])
}

/// Which of several readings of what was typed is meant: nothing to choose while there is only one. `key` is the
/// field with the size, `which` the one with the choice.
pub fn which_size(form: Form, key: Key, which: Key, legend: &str) -> Option<AnyView> {
    let first = app().practice(|practice| practice.first_system());
    let readings = form.text(key).with(|text| understood::sizes(text, first));
    (readings.len() > 1).then(|| {
        let chosen = form.text(which);
        let codes = reading_codes(&readings);
        let meant = chosen.with_untracked(|code| forms::meant(&readings, code, first));
        let code = meant.map(|at| codes[at].clone()).unwrap_or_default();
        if chosen.with_untracked(|text| *text != code) {
            chosen.set(code);
        }
        let named = |(code, size): (String, &SizeAsRead)| parts::option(code, say_sizing::stated_in_full(size.stated));
        let options = codes.into_iter().zip(&readings).map(named).collect();
        parts::choice(which.name(), legend.to_owned(), Shape::Chips, options, chosen)
    })
}

/// The hint of a field for the widths of some rings: what was understood, once there is something.
pub fn widths_hint(text: RwSignal<String>, hint: &'static str) -> Signal<String> {
    Signal::derive(move || {
        let widths = text.with(|text| understood::widths(text));
        if widths.is_empty() { hint.to_owned() } else { say_entry::widths_understood(&widths) }
    })
}
