//! The finger of one of the two: which it is, every reading taken from it, and what is to be thought of.

mod fields;
mod fitted;
mod known;
mod tray;

use crate::parts::el::maybe;
use crate::parts::layout::{all, para};
use crate::screens::shell::from_glass::draft;
use leptos::prelude::*;

use super::{CouplePage, page_of_wearer};
use crate::answers::finger::contradicted;
use crate::app::address::Part;
use crate::app::clock;
use crate::app::form::Form;
use crate::app::state::{App, app};
use crate::book::asks::Ask;
use crate::book::id::{ItemId, RecordId};
use crate::book::practice::Practice;
use crate::book::value::ReadingTaken;
use crate::book::verbs;
use crate::forms::{Complaint, reading};
use crate::parts::choice::tick;
use crate::parts::focus::{focus, start_of_page};
use crate::screens::shell::beside::beside;
use crate::screens::shell::form_page::{form_page, read, show_first_complaint};
use crate::trade::wearer::{Finger, Wearer};
use crate::words::practice::USUAL_SET_NAMES;
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
    let CouplePage { head, .. } = page_of_wearer(id, wearer, say::FINGER, Part::Finger(wearer));
    let gauges = app.practice(|practice| reading::at_hand(practice, USUAL_SET_NAMES));
    let form = form(whom, gauges.first().map(|(key, _)| key.clone()).unwrap_or_default());
    let has_none =
        Signal::derive(move || app.couple(id, |couple| couple.first_ring(wearer)).flatten().unwrap_or(false));
    let note_first = Callback::new(move |is: bool| {
        app.save(id, vec![verbs::first_ring(wearer, is)], say::saved(say::FIRST_RING), || ());
    });
    let at_hand = StoredValue::new(gauges.clone());
    // The question about a reading that contradicts another is asked once for what was typed.
    let asked = StoredValue::new(String::new());
    let save = move || {
        let known = fields::known(app, at_hand.get_value());
        let Some(reading) = read(form, |texts| reading::read(texts, &known)) else { return };
        let Some(moves) = moves(whom, form) else {
            form.checked::<()>(Err(vec![(reading::MOVES, Complaint::WhetherItMoves)]));
            return show_question();
        };
        if let Some(question) = contradiction(whom, &reading)
            && asked.get_value() != question
        {
            asked.set_value(question.clone());
            form.complaint(reading::SIZE.name()).set(Some(question));
            return show_first_complaint();
        }
        take(whom, reading, moves, move || {
            form.done();
            if form.is_left() {
                return;
            }
            // The next reading is of the band's finger, which may be another one now, with the same gauge.
            let next = reading::start_after(&untrack(|| form.texts()), chosen(whom).unwrap_or(Finger::LEFT_RING));
            form.start_with(&next.into_pairs());
            form.reset();
            // The reading, and what all of them come to, stand at the top of the page.
            start_of_page();
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
    let Whom { id, wearer, .. } = whom;
    Form::draft(draft(id, wearer), reading::start(chosen(whom).unwrap_or(Finger::LEFT_RING), gauge))
}

fn contradiction(whom: Whom, fresh: &ReadingTaken) -> Option<String> {
    let Whom { app, id, wearer } = whom;
    let practice = app.with(|book| book.practice.clone());
    let asked = app.couple(id, |couple| {
        let practice = Practice(&practice);
        let (other, more) = contradicted(couple, practice, wearer, fresh)?;
        Some(say_finger::contradicts(other, more))
    });
    asked.flatten()
}

/// The finger that the band is for, once there is one.
fn chosen(whom: Whom) -> Option<Finger> {
    let Whom { app, id, wearer } = whom;
    untrack(|| app.couple(id, |couple| couple.finger(wearer)).flatten())
}

/// Whether the band goes to the finger of the form; none while nobody has said.
fn moves(whom: Whom, form: Form) -> Option<bool> {
    reading::moves(&untrack(|| form.texts()), chosen(whom))
}

/// Goes to the question of which finger the band is for.
fn show_question() {
    focus("[name='moves']");
}

/// Saves a reading. `moves`: the band is for its finger from now on.
fn take(whom: Whom, reading: ReadingTaken, moves: bool, then: impl FnOnce() + 'static) {
    let Whom { app, id, wearer } = whom;
    let writes = verbs::measure(wearer, ItemId(clock::random()), reading, moves, chosen(whom));
    app.save(id, writes, say::saved(say::READING), then);
}
