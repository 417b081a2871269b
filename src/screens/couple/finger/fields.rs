//! The fields of one reading.

use crate::parts::el::maybe;
use crate::parts::layout::{all, para};
use leptos::prelude::*;

use super::Whom;
use crate::app::address::{Address, Calculator, Setting, with_query};
use crate::app::form::Form;
use crate::app::state::App;
use crate::archive::code::Code;
use crate::book::value::OwnGauge;
use crate::forms::reading;
use crate::parts::button::{Weight, link_button};
use crate::parts::choice::{Shape, choice_with, option};
use crate::parts::field::{Keyboard, complaint};
use crate::screens::shell::fields;
use crate::trade::band::Bore;
use crate::trade::fit::{Hands, Place, RINGS_BESIDE_MOST, ReadAt, Sits};
use crate::words::{
    band as say_band, bench as say_bench, book as say_book, finger as say_finger, fit as say_fit, screens as say,
};

pub fn to_gauges() -> AnyView {
    let to = Address::Setting(Setting::Gauges).to_string();
    all(vec![para("small", say::NO_GAUGES), link_button(Weight::Quiet, say::TO_GAUGES, to)])
}

pub fn reading_fields(whom: Whom, form: Form, gauges: Vec<(String, OwnGauge)>) -> AnyView {
    let mut options: Vec<(String, String)> =
        gauges.iter().map(|(key, own)| (key.clone(), say_book::gauge(own))).collect();
    options.push((reading::GAUGE_WORN.to_owned(), say_finger::WORN_RING.to_owned()));
    let gauges = StoredValue::new(gauges);
    let picked = form.text(reading::GAUGE);
    let is_worn = Memo::new(move |_| picked.with(|picked| picked == reading::GAUGE_WORN));
    let glass = Memo::new(move |_| reading::on_glass(&form.texts()).is_some());
    let on_stick = Memo::new(move |_| gauges.with_value(|gauges| reading::is_on_stick(&form.texts(), gauges)));
    let coded = move |key, legend: &'static str, options| fields::choice(form, key, legend, Shape::Segments, options);
    let touches =
        Signal::derive(move || gauges.with_value(|gauges| reading::touches(&form.texts(), gauges)).code().to_owned());
    let place_on_stick = form.following(reading::READ_AT.name(), touches);
    let read_at = move || {
        let places = ReadAt::ALL.map(|at| option(at.code(), say_fit::read_at(at)));
        let hint = Some(say_finger::READ_WHERE.into());
        let legend = say::READ_AT.into();
        on_stick
            .get()
            .then(|| choice_with(reading::READ_AT.name(), legend, hint, Shape::Segments, places.into(), place_on_stick))
    };
    let worn = move || {
        is_worn.get().then(|| {
            let bores = [Bore::Flat, Bore::Domed].map(|bore| option(bore.code(), say_band::bore(bore)));
            let sits = Sits::ALL.map(|sits| option(sits.code(), say_fit::sits(sits)));
            all(vec![
                fields::mm(form, reading::WORN_WIDTH, say_finger::WORN_WIDTH).hint(say_finger::WORN_WIDTH_HINT).line(),
                coded(reading::WORN_BORE, say_finger::WORN_BORE, bores.into()),
                fields::choice(form, reading::SITS, say_finger::SITS, Shape::Chips, sits.into()),
                maybe(move || glass.get().then(|| para("small", say_finger::ON_GLASS))),
                link_button(Weight::Quiet, say_bench::SCREEN_GAUGE, to_glass(whom)),
            ])
        })
    };
    let hands = move || {
        let hands = Hands::ALL.map(|hands| option(hands.code(), say_fit::hands(hands)));
        (!is_worn.get()).then(|| coded(reading::HANDS, say::HANDS, hands.into()))
    };
    all(vec![
        fields::text(form, reading::SIZE, say::READ_SIZE).hint(say::READ_SIZE_HINT).keyboard(Keyboard::Text).line(),
        maybe(move || fields::which_size(form, reading::SIZE, reading::SIZE_AS, say::READ_AS)),
        fields::pick(form, reading::GAUGE, say::GAUGE, options),
        maybe(worn),
        maybe(read_at),
        maybe(hands),
        coded(reading::PLACE, say::MEASURED_AT, Place::ALL.map(|it| option(it.code(), say_fit::place(it))).into()),
        fields::hand_and_finger(form),
        maybe(move || which_finger(whom, form)),
        fields::text(form, reading::BESIDE, say::BESIDE)
            .hint(fields::widths_hint(form.text(reading::BESIDE), say::BESIDE_HINT))
            .on_leave(move || form.look_at(reading::BESIDE, |form, key| form.widths(key, RINGS_BESIDE_MOST)))
            .line(),
        fields::time(form, reading::TAKEN_AT, say_finger::TAKEN_AT, say_finger::TAKEN_AT_EMPTY),
    ])
}

/// The question whether the band goes to the finger of the form, where it was for another one.
fn which_finger(whom: Whom, form: Form) -> Option<AnyView> {
    let Whom { app, id, wearer } = whom;
    let here = reading::finger(&form.texts())?;
    let other = app.couple(id, |couple| couple.finger(wearer)).flatten().filter(|chosen| *chosen != here)?;
    let options = vec![
        option(reading::moves_code(false, here), say_finger::stays(other)),
        option(reading::moves_code(true, here), say_finger::moves(here)),
    ];
    let unsaid = form.complaint(reading::MOVES.name());
    Some(all(vec![
        fields::choice(form, reading::MOVES, say_finger::does_it_move(here), Shape::Chips, options),
        complaint("moves-error".to_owned(), move || unsaid.get()),
    ]))
}

/// What is known while a reading is typed.
pub fn known(app: App, gauges: Vec<(String, OwnGauge)>) -> reading::Known {
    reading::Known {
        gauges,
        first_system: app.practice(|practice| practice.first_system()),
        today: app.today.get_untracked(),
        worn_on_stick: say_finger::worn_gauge_name().to_owned(),
        worn_on_glass: say_finger::WORN_ON_GLASS.to_owned(),
    }
}

fn to_glass(Whom { id, wearer, .. }: Whom) -> String {
    let query = [("couple".to_owned(), id.to_string()), ("who".to_owned(), wearer.code().to_owned())];
    with_query(Address::Calculator(Calculator::ScreenGauge), &query)
}
