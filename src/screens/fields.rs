//! The fields that several forms share: how each is drawn, and how what was typed in it is read. Reading notes the
//! complaint beside the field and answers with nothing; the words stay.

use crate::parts::el::maybe;
use crate::parts::lay::{all, pair, para};
use chrono::{NaiveDate, NaiveTime};
use leptos::prelude::*;

use crate::app::form::Form;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::forms::{self, reading_codes};
use crate::parts::choice::{self, Shape};
use crate::parts::field::{Field, Keyboard};
use crate::parts::picture::sketch;
use crate::pictures::ornament;
use crate::trade::band::{Profile, alloys};
use crate::trade::dates::entry as date_entry;
use crate::trade::dates::spread::{CalendarDays, Spread, SpreadError, WorkingDays};
use crate::trade::dates::wedding::Wedding;
use crate::trade::entry::{self, TextError, TextFault};
use crate::trade::fit::RINGS_BESIDE_MOST;
use crate::trade::limits::Limit;
use crate::trade::measure::{Length, Percent};
use crate::trade::sizing::{SizeAsRead, Stated};
use crate::trade::wearer::{Digit, Hand};
use crate::words::dates::{self as say_dates, Asked};
use crate::words::{band as say_band, entry as say_entry, format, screens as say, sizing as say_sizing};

/// A field of plain words.
pub fn text(form: Form, key: &'static str, label: &str) -> Field {
    Field::new(key, label.to_owned(), form.text(key)).error(form.complaint(key))
}

/// The name of one of the two.
pub fn name(form: Form, key: &'static str, label: &str) -> Field {
    text(form, key, label)
}

/// A telephone number or an e-mail address.
pub fn reach(form: Form, key: &'static str, label: &str) -> Field {
    text(form, key, label)
}

/// A length in millimetres.
pub fn mm(form: Form, key: &'static str, label: &str) -> Field {
    text(form, key, label).unit("mm".to_owned()).keyboard(Keyboard::Decimal)
}

/// A share of a whole.
pub fn percent(form: Form, key: &'static str, label: &str) -> Field {
    text(form, key, label).unit("%".to_owned()).keyboard(Keyboard::Digits)
}

/// A number of days.
pub fn days(form: Form, key: &'static str, label: &str) -> Field {
    text(form, key, label).unit(say_dates::DAYS).keyboard(Keyboard::Digits)
}

/// A time of day, with what it is understood as.
pub fn time(form: Form, key: &'static str, label: &str, empty: &'static str) -> AnyView {
    let typed = form.text(key);
    let understood = Signal::derive(move || match typed.with(|text| date_entry::read_time(text)) {
        Ok(time) => say_dates::time(time),
        Err(_) => empty.to_owned(),
    });
    text(form, key, label).hint(understood).line()
}

/// How long something takes: least, usual and most, as three fields.
pub fn spread(form: Form, keys: SpreadKeys) -> AnyView {
    let [least, usual, most] = keys;
    all(vec![
        days(form, least, say_dates::LEAST).line(),
        days(form, usual, say_dates::USUAL).line(),
        days(form, most, say_dates::MOST).enter("done").line(),
    ])
}

/// The keys of the least, the usual and the most.
pub type SpreadKeys = [&'static str; 3];

/// The wedding date, with what it is understood as.
pub fn wedding(form: Form, key: &'static str) -> AnyView {
    let app = app();
    let typed = form.text(key);
    let understood = Signal::derive(move || {
        let today = app.today.get();
        match typed.with(|text| date_entry::read_wedding(text, today)) {
            Ok(Wedding::Day(day)) => {
                format!("{} · {}", format::day(day), say::from_today(day, today))
            }
            Ok(wedding) => say_dates::wedding(wedding),
            Err(_) => say::WEDDING_HINT.to_owned(),
        }
    });
    text(form, key, say::WEDDING)
        .hint(understood)
        .on_leave(move || {
            let _ = read_wedding(form, key, app.today.get_untracked());
        })
        .line()
}

/// A day, with what it is understood as.
pub fn day(form: Form, key: &'static str, label: &str) -> AnyView {
    let today = app().today;
    day_from(form, key, label, Signal::derive(move || today.get()))
}

/// A day; one without a year is the next such day from `from` on.
pub fn day_from(form: Form, key: &'static str, label: &str, from: Signal<NaiveDate>) -> AnyView {
    let app = app();
    let typed = form.text(key);
    let understood = Signal::derive(move || {
        let today = app.today.get();
        understood_day(typed.with(|text| date_entry::read_day_from(text, from.get(), today)), say::DAY_HINT, today)
    });
    text(form, key, label).hint(understood).line()
}

/// What stands under a day: what was understood, or which two days may be meant.
pub fn understood_day(
    read: Result<NaiveDate, date_entry::DateEntryError>,
    empty: &'static str,
    today: NaiveDate,
) -> String {
    match read {
        Ok(day) => format!("{} · {}", format::day(day), say::from_today(day, today)),
        Err(either @ date_entry::DateEntryError::EitherDay { .. }) => say_dates::date_entry(either, Asked::Day),
        Err(_) => empty.to_owned(),
    }
}

/// The profile of a band or ring, each drawn.
pub fn profile(form: Form, key: &'static str) -> AnyView {
    let drawn = Profile::ALL.map(|profile| {
        choice::drawn(profile.code(), say_band::profile(profile), sketch(ornament::profile(profile).svg))
    });
    let options = drawn.into_iter().chain([choice::option(NONE, say::NOT_SETTLED)]).collect();
    choice::choice(key, say::PROFILE, Shape::Drawn, options, form.text(key))
}

/// The metal of a band or ring; one with nickel in it says so.
pub fn metal(form: Form, key: &'static str) -> AnyView {
    let alloys = alloys::ALLOYS.iter().map(|alloy| (alloy.code.to_owned(), say_band::alloy(alloy)));
    let options = std::iter::once((NONE.to_owned(), say::NOT_SETTLED.to_owned())).chain(alloys).collect();
    let nickel = maybe(move || say_band::nickel(alloys::by_code(&form.text(key).get())).map(|it| para("caution", it)));
    all(vec![choice::pick(key, say::METAL, options, form.text(key)), nickel])
}

/// A box to tick, kept as "yes" or nothing.
pub fn yes(form: Form, key: &'static str, label: &'static str, hint: &'static str) -> AnyView {
    let text = form.text(key);
    let ticked = Signal::derive(move || text.with(|text| text == "yes"));
    let set = Callback::new(move |yes: bool| text.set(yes_or_nothing(yes)));
    choice::tick(key, label, Some(hint.into()), ticked, set)
}

pub use crate::forms::code_of_reading as meant;
pub use crate::forms::write::yes as yes_or_nothing;
pub use crate::forms::write::{NONE, code_or_none};

/// The hand and the finger.
pub fn hand_and_finger(form: Form) -> AnyView {
    let hands = Hand::ALL.map(|hand| choice::option(hand.code(), say_band::hand(hand)));
    let digits = Digit::ALL.map(|digit| (digit.code().to_owned(), say_band::digit(digit).to_owned()));
    pair(vec![
        choice::choice("hand", say::HAND, Shape::Segments, hands.into_iter().collect(), form.text("hand")),
        choice::pick("digit", say::FINGER, digits.into_iter().collect(), form.text("digit")),
    ])
}

/// Which of several readings of what was typed is meant: nothing to choose while there is only one. `key` is the
/// field with the size, `which` the one with the choice.
pub fn which_size(form: Form, key: &'static str, which: &'static str, legend: &str) -> Option<AnyView> {
    let first = app().practice(|practice| practice.first_system());
    let readings = form.text(key).with(|text| entry::read_size(text, first)).unwrap_or_default();
    (readings.len() > 1).then(|| {
        let chosen = form.text(which);
        let codes = reading_codes(&readings);
        let meant = chosen.with_untracked(|code| forms::meant(&readings, code, first));
        let code = meant.map(|at| codes[at].clone()).unwrap_or_default();
        if chosen.with_untracked(|text| *text != code) {
            chosen.set(code);
        }
        let named = |(code, size): (String, &SizeAsRead)| choice::option(code, say_sizing::stated_in_full(size.stated));
        let options = codes.into_iter().zip(&readings).map(named).collect();
        choice::choice(which, legend.to_owned(), Shape::Chips, options, chosen)
    })
}

fn typed(form: Form, key: &str) -> String {
    form.text(key).get_untracked()
}

pub fn read_name(form: Form, key: &str) -> Option<String> {
    let read = entry::read_needed(&typed(form, key), Limit::NameText);
    form.judge(key, read.map_err(say_entry::text_error))
}

pub fn read_optional_name(form: Form, key: &str) -> Option<Option<String>> {
    let read = entry::read_text(&typed(form, key), Limit::NameText);
    form.judge(key, read.map_err(say_entry::text_error))
}

pub fn read_line(form: Form, key: &str) -> Option<Option<String>> {
    let read = entry::read_text(&typed(form, key), Limit::LineText);
    form.judge(key, read.map_err(say_entry::text_error))
}

/// A note; one with nothing in it is no note.
pub fn read_note(form: Form, key: &str) -> Option<String> {
    let limit = Limit::NoteText;
    let read = entry::read_note(&typed(form, key), limit);
    let read = read.and_then(|note| note.ok_or(TextError { limit, fault: TextFault::Empty }));
    form.judge(key, read.map_err(say_entry::text_error))
}

/// A way to reach them, or nothing for an empty field.
pub fn read_reach(form: Form, key: &str) -> Option<Option<String>> {
    let text = typed(form, key);
    if text.trim().is_empty() {
        return form.judge(key, Ok(None));
    }
    let read = entry::read_contact(&text).map(|contact| Some(contact.text().to_owned()));
    form.judge(key, read.map_err(|error| say_entry::contact_error(error).to_owned()))
}

/// The wedding, or nothing for an empty field.
pub fn read_wedding(form: Form, key: &str, today: NaiveDate) -> Option<Option<Wedding>> {
    let text = typed(form, key);
    if text.trim().is_empty() {
        return form.judge(key, Ok(None));
    }
    let read = date_entry::read_wedding(&text, today).map(Some);
    form.judge(key, read.map_err(|error| say_dates::date_entry(error, Asked::Wedding)))
}

pub fn read_day(form: Form, key: &str, today: NaiveDate) -> Option<NaiveDate> {
    read_day_from(form, key, today, today)
}

/// A day; one without a year is the next such day from `from` on.
pub fn read_day_from(form: Form, key: &str, from: NaiveDate, today: NaiveDate) -> Option<NaiveDate> {
    let read = date_entry::read_day_from(&typed(form, key), from, today);
    form.judge(key, read.map_err(|error| say_dates::date_entry(error, Asked::Day)))
}

/// A size: the only reading of what was typed, or the one that was chosen of several.
pub fn read_size(form: Form, key: &str, which: &str) -> Option<Stated> {
    let first = app().practice(|practice| practice.first_system());
    let readings = match entry::read_size(&typed(form, key), first) {
        Ok(readings) => readings,
        Err(error) => return form.judge(key, Err(say_entry::size_error(error))),
    };
    let chosen = typed(form, which);
    let meant = match readings.as_slice() {
        [only] => Some(only),
        several => forms::meant(several, &chosen, first).and_then(|place| several.get(place)),
    };
    form.judge(key, meant.map(|size| size.stated).ok_or_else(|| say::WHICH_SIZE.to_owned()))
}

/// The widths of some rings in a field, up to as many as a finger holds beside a gauge.
pub fn read_widths(form: Form, key: &str) -> Option<Vec<Length>> {
    form.judge(key, widths(&typed(form, key), RINGS_BESIDE_MOST))
}

/// The widths of some rings, at most so many; none for an empty field.
pub fn widths(text: &str, most: usize) -> Result<Vec<Length>, String> {
    entry::read_widths(text, most).map_err(say_entry::widths_error)
}

/// The hint of a field for the widths of some rings: what was understood, once there is something.
pub fn widths_hint(text: RwSignal<String>, hint: &'static str) -> Signal<String> {
    Signal::derive(move || {
        let understood = text.with(|text| entry::read_widths(text, RINGS_BESIDE_MOST).unwrap_or_default());
        if understood.is_empty() { hint.to_owned() } else { say_entry::widths_understood(&understood) }
    })
}

/// A day, or nothing for an empty field.
pub fn read_optional_day(form: Form, key: &str, today: NaiveDate) -> Option<Option<NaiveDate>> {
    if typed(form, key).trim().is_empty() {
        return form.judge(key, Ok(None));
    }
    read_day(form, key, today).map(Some)
}

/// A length that has to be there.
pub fn read_length(form: Form, key: &str, limit: Limit) -> Option<Length> {
    let read = entry::read_length(&typed(form, key), limit);
    form.judge(key, read.map_err(say_entry::number_error))
}

/// A length, or nothing for an empty field.
pub fn read_optional_length(form: Form, key: &str, limit: Limit) -> Option<Option<Length>> {
    if typed(form, key).trim().is_empty() {
        return form.judge(key, Ok(None));
    }
    read_length(form, key, limit).map(Some)
}

/// A share, or nothing for an empty field.
pub fn read_optional_percent(form: Form, key: &str, limit: Limit) -> Option<Option<Percent>> {
    if typed(form, key).trim().is_empty() {
        return form.judge(key, Ok(None));
    }
    let read = entry::read_percent(&typed(form, key), limit).map(Some);
    form.judge(key, read.map_err(say_entry::number_error))
}

/// A time of day, or nothing for an empty field.
pub fn read_optional_time(form: Form, key: &str) -> Option<Option<NaiveTime>> {
    if typed(form, key).trim().is_empty() {
        return form.judge(key, Ok(None));
    }
    form.judge(key, date_entry::read_time(&typed(form, key)).map(Some).map_err(say_dates::time_entry))
}

/// Days of the calendar, or nothing for an empty field.
pub fn read_optional_days(form: Form, key: &str) -> Option<Option<CalendarDays>> {
    if typed(form, key).trim().is_empty() {
        return form.judge(key, Ok(None));
    }
    let read = entry::read_whole(&typed(form, key), Limit::DaysInHand);
    form.judge(key, read.map(|days| Some(CalendarDays(days.0))).map_err(say_entry::number_error))
}

/// Three numbers of working days in order.
pub fn read_spread(form: Form, keys: SpreadKeys) -> Option<Spread> {
    let [least, usual, most] = keys.map(|key| read_working_days(form, key));
    let read = Spread::new(least?, usual?, most?);
    let at = match &read {
        Err(SpreadError::LeastAboveUsual { .. }) => keys[1],
        Ok(_) | Err(SpreadError::UsualAboveMost { .. } | SpreadError::TooLong { .. }) => keys[2],
    };
    form.judge(at, read.map_err(say_dates::spread_error))
}

/// The same, or nothing where all three are empty.
pub fn read_optional_spread(form: Form, keys: SpreadKeys) -> Option<Option<Spread>> {
    if keys.iter().all(|key| typed(form, key).trim().is_empty()) {
        keys.iter().for_each(|key| form.complaint(key).set(None));
        return Some(None);
    }
    read_spread(form, keys).map(Some)
}

fn read_working_days(form: Form, key: &str) -> Option<WorkingDays> {
    let read = entry::read_whole(&typed(form, key), Limit::LeadTimeDays);
    form.judge(key, read.map(|days| WorkingDays(days.0)).map_err(say_entry::number_error))
}
