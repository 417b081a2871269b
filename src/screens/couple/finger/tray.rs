//! The tray of try-on bands: one tap on the band that fits is a reading.

use crate::parts::el::maybe;
use crate::parts::lay::{all, block, para};
use leptos::prelude::*;

use super::{Whom, contradiction, fields, moves, take};
use crate::app::address::{Address, Setting};
use crate::app::clock;
use crate::app::form::Form;
use crate::archive::code::Code;
use crate::book::value::{OwnGauge, ReadingTaken, TryOnBand};
use crate::parts::button::{Weight, button, link_button};
use crate::parts::details::details;
use crate::trade::fit::gauges::{HALF_LETTER, OWN_ERROR};
use crate::trade::fit::{Gauge, GaugeKind, Hands, Place, ReadAt};
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
        let Some(reading) = reading(whom, form, &band) else { return };
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

/// The band that fits stands for the gauge: with the hands, place and finger that are chosen in the form.
fn reading(whom: Whom, form: Form, band: &TryOnBand) -> Option<ReadingTaken> {
    let text = |key| form.text(key).get_untracked();
    let gauge = Gauge {
        kind: GaugeKind::RingSet,
        width: band.width,
        bore: band.bore,
        relief: None,
        step: HALF_LETTER,
        own_error: OWN_ERROR,
    };
    Some(ReadingTaken {
        size: band.size.clone(),
        finger: fields::finger(form)?,
        place: Place::from_code(&text("place"))?,
        gauge: OwnGauge { name: say::try_on_name(&band.number), gauge, calibration: Vec::new() },
        read_at: ReadAt::right_for(band.bore),
        hands: Hands::from_code(&text("hands"))?,
        beside: crate::screens::fields::read_widths(form, "beside")?,
        sits: None,
        taken: whom.app.today.get_untracked(),
        at: Some(clock::now().1),
        left_out: false,
    })
}
