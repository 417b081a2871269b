//! The tray of try-on bands: one tap on the band that fits is a reading.

use crate::parts::el::maybe;
use crate::parts::layout::{all, block, para};
use leptos::prelude::*;

use super::{Whom, contradiction, fields, moves, take};
use crate::app::address::{Address, Setting};
use crate::app::clock;
use crate::app::form::Form;
use crate::book::value::{ReadingTaken, TryOnBand};
use crate::forms::reading;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::details::details;
use crate::words::finger as say;

pub fn tray(whom: Whom, form: Form) -> AnyView {
    let bands: Vec<TryOnBand> =
        whom.app.practice(|practice| practice.tray().into_iter().map(|(_, band)| band.clone()).collect());
    let inside = if bands.is_empty() {
        let to = Address::Setting(Setting::Tray).to_string();
        vec![para("small", say::NO_TRAY), link_button(Weight::Quiet, say::TO_TRAY, to)]
    } else {
        let asked = RwSignal::new(None::<String>);
        let buttons = bands.into_iter().map(|band| one(whom, form, band, asked)).collect();
        let question = maybe(move || asked.get().map(|question| para("caution", question)));
        vec![para("small", say::TRAY_HOW), block("row", buttons), question]
    };
    details(say::TRAY, all(inside))
}

fn one(whom: Whom, form: Form, band: TryOnBand, asked: RwSignal<Option<String>>) -> AnyView {
    let label = say::try_on(&band);
    button(Weight::Quiet, label, move || {
        let Some(reading) = reading_of(whom, form, &band) else { return };
        let Some(moves) = moves(whom, form) else { return asked.set(Some(say::SAY_WHETHER_IT_MOVES.to_owned())) };
        // The question about a reading that contradicts another is asked once.
        let question = contradiction(whom, &reading);
        if question.is_some() && asked.get_untracked() != question {
            return asked.set(question);
        }
        asked.set(None);
        take(whom, reading, moves, || ());
    })
}

/// The band that fits, as a reading that was taken now.
fn reading_of(whom: Whom, form: Form, band: &TryOnBand) -> Option<ReadingTaken> {
    let known = fields::known(whom.app, Vec::new());
    let read = untrack(|| reading::try_on(&form.texts(), &known, band, say::try_on_name(&band.number)));
    form.checked(read).map(|taken| ReadingTaken { at: Some(clock::now().1), ..taken })
}
