//! The finger of one of the two: which it is, every reading taken from it, and what is to be thought of.

mod fields;
mod fitted;
mod known;
mod tray;

use crate::parts::el::maybe;
use crate::parts::lay::{all, para};
use leptos::prelude::*;

use super::said::beside;
use super::{Whose, whose_of};
use crate::app::address::{Address, Part};
use crate::app::clock;
use crate::app::form::Form;
use crate::app::route::go_instead;
use crate::app::state::{App, app};
use crate::archive::code::Code;
use crate::book::asks::Ask;
use crate::book::change::Write;
use crate::book::field::Field as Kept;
use crate::book::fitting;
use crate::book::id::{ItemId, RecordId};
use crate::book::practice::Practice;
use crate::book::value::{ReadingTaken, Value};
use crate::parts::choice::tick;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::screens::start_of_page;
use crate::storage::typed;
use crate::trade::band::Bore;
use crate::trade::fit::{Hands, Place, ReadAt, Sits};
use crate::trade::measure::Length;
use crate::trade::wearer::{Digit, Finger, Hand, Wearer};
use crate::words::{finger as say_finger, screens as say};

pub use fitted::fitted;

/// The finger on whose screen the user is.
#[derive(Clone, Copy)]
struct Whom {
    app: App,
    id: RecordId,
    wearer: Wearer,
}

pub fn finger(id: RecordId, wearer: Wearer) -> AnyView {
    let app = app();
    let whom = Whom { app, id, wearer };
    let Whose { head, .. } = whose_of(id, wearer, say::FINGER, Part::Finger(wearer));
    let gauges = fields::gauges_at_hand(app);
    let form = form(whom, gauges.first().map(|(key, _)| key.clone()).unwrap_or_default());
    let has_none =
        Signal::derive(move || app.couple(id, |couple| couple.first_ring(wearer)).flatten().unwrap_or(false));
    let note_first = Callback::new(move |is: bool| {
        app.save(id, vec![Write::set(Kept::FirstRing(wearer), Value::Yes(is))], say::saved(say::FIRST_RING), || ());
    });
    let at_hand = StoredValue::new(gauges.clone());
    // The question about a reading that contradicts another is asked once for what was typed.
    let asked = StoredValue::new(String::new());
    let save = move || {
        let Some(reading) = at_hand.with_value(|gauges| fields::read(app, form, gauges)) else {
            return show_first_complaint();
        };
        if let Some(question) = contradiction(whom, &reading)
            && asked.get_value() != question
        {
            asked.set_value(question.clone());
            form.judge::<()>("size", Err(question));
            return show_first_complaint();
        }
        take(whom, reading, move || {
            form.done();
            form.reset();
            // The reading, and what all of them come to, stand at the top of the page.
            request_animation_frame(start_of_page);
        });
    };
    let content = all(vec![
        beside(id, Some(wearer), &[Ask::Hand, Ask::Finger, Ask::FirstRing]),
        known::readings(whom),
        fields::reading_fields(whom, form, gauges),
        maybe(move || app.practice(|practice| practice.gauges().is_empty()).then(fields::to_gauges)),
        tray::tray(whom, form),
        known::wishes(whom),
        tick("first-ring", say::FIRST_RING, Some(say::FIRST_RING_HINT.into()), has_none, note_first),
        known::again(whom),
        known::to_fitted(whom),
        para("small", say::DO_NOT_SIZE),
    ]);
    form_page(head, form, content, say::ADD_READING, save)
}

fn form(whom: Whom, gauge: String) -> Form {
    let Whom { app, id, wearer } = whom;
    let known = app.couple(id, |couple| couple.finger(wearer)).flatten();
    let finger = known.unwrap_or(Finger { hand: Hand::Left, digit: Digit::Ring });
    Form::draft(
        draft(id, wearer),
        vec![
            ("hand", finger.hand.code().to_owned()),
            ("digit", finger.digit.code().to_owned()),
            ("size", String::new()),
            ("as", String::new()),
            ("gauge", gauge),
            ("worn-width", String::new()),
            ("worn-bore", Bore::Flat.code().to_owned()),
            ("sits", Sits::Right.code().to_owned()),
            ("read-at", ReadAt::LowerEdge.code().to_owned()),
            ("hands", Hands::Normal.code().to_owned()),
            ("place", Place::Base.code().to_owned()),
            ("beside", String::new()),
            ("taken-at", String::new()),
            // What the screen gauge said, and how sure it is: nobody types them.
            ("glass", String::new()),
            ("glass-off", String::new()),
        ],
    )
}

fn draft(id: RecordId, wearer: Wearer) -> String {
    format!("reading.{id}.{}", wearer.code())
}

/// Takes a ring that was measured on the glass along to the form of a reading, as one that they wear.
pub fn write_down_from_glass(id: RecordId, wearer: Wearer, size: String, off: Length) {
    let name = draft(id, wearer);
    let mut words = typed::kept(&name).unwrap_or_default();
    let off = off.in_tenthousandths().to_string();
    let told = [("gauge", fields::WORN.to_owned()), ("as", String::new()), ("glass", size.clone()), ("glass-off", off)];
    words.extend(told.map(|(key, text)| (key.to_owned(), text)));
    words.insert("size".to_owned(), size);
    // Where the phone does not take them they last as long as this page, and the form says so.
    typed::keep(&name, &words);
    go_instead(&Address::Part(id, Part::Finger(wearer)).to_string());
}

fn contradiction(whom: Whom, fresh: &ReadingTaken) -> Option<String> {
    let Whom { app, id, wearer } = whom;
    let practice = app.with(|book| book.practice.clone());
    let asked = app.couple(id, |couple| {
        let practice = Practice(&practice);
        let (other, more) = fitting::contradicted(couple, practice, wearer, fresh)?;
        Some(say_finger::contradicts(other, more))
    });
    asked.flatten()
}

/// Saves a reading. The finger is the one it was taken from, and nobody waits for it any more.
fn take(whom: Whom, reading: ReadingTaken, then: impl FnOnce() + 'static) {
    let Whom { app, id, wearer } = whom;
    let writes = vec![
        Write::set(Kept::Finger(wearer), Value::Finger(reading.finger)),
        Write::set(Kept::Reading(wearer, ItemId(clock::random())), Value::Reading(reading)),
        Write::clear(Kept::MeasureAgain(wearer)),
    ];
    app.save(id, writes, say::saved(say::READING), then);
}
