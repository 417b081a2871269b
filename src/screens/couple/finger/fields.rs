//! The fields of one reading.

use crate::parts::el::maybe;
use crate::parts::lay::{all, para};
use leptos::prelude::*;

use super::Whom;
use crate::app::address::{Address, Calculator, Setting, with_query};
use crate::app::form::Form;
use crate::app::state::App;
use crate::archive::code::Code;
use crate::book::practice::Practice;
use crate::book::value::{OwnGauge, ReadingTaken};
use crate::parts::button::{Weight, link_button};
use crate::parts::choice::{Shape, choice, choice_with, option, pick};
use crate::parts::field::{Keyboard, complaint};
use crate::screens::fields;
use crate::trade::band::Bore;
use crate::trade::fit::constants::STICK_TAPER;
use crate::trade::fit::gauges::{HALF_LETTER, OWN_ERROR, USUAL_SETS};
use crate::trade::fit::{Gauge, GaugeKind, Hands, Place, ReadAt, Sits};
use crate::trade::limits::Limit;
use crate::trade::measure::Length;
use crate::trade::sizing::SizeAsRead;
use crate::trade::wearer::{Digit, Finger, Hand};
use crate::words::practice::USUAL_SET_NAMES;
use crate::words::{
    band as say_band, bench as say_bench, book as say_book, finger as say_finger, fit as say_fit, screens as say,
};

/// The word for a ring that they wear, in the place of a gauge.
pub const WORN: &str = "worn";

/// The jeweller's own gauges by their ids; while there are none, the usual sets, and the way to write down one's own.
pub fn gauges_at_hand(app: App) -> Vec<(String, OwnGauge)> {
    let own = |practice: Practice<'_>| {
        practice.gauges().into_iter().map(|(item, own)| (item.to_string(), own.clone())).collect::<Vec<_>>()
    };
    let own = app.practice(own);
    if !own.is_empty() {
        return own;
    }
    let usual = |(name, gauge): (&str, _)| {
        (name.to_owned(), OwnGauge { name: name.to_owned(), gauge, calibration: Vec::new() })
    };
    USUAL_SET_NAMES.into_iter().zip(USUAL_SETS).map(usual).collect()
}

pub fn to_gauges() -> AnyView {
    let to = Address::Setting(Setting::Gauges).to_string();
    all(vec![para("small", say::NO_GAUGES), link_button(Weight::Quiet, say::TO_GAUGES, to)])
}

pub fn reading_fields(whom: Whom, form: Form, gauges: Vec<(String, OwnGauge)>) -> AnyView {
    let mut options: Vec<(String, String)> =
        gauges.iter().map(|(key, own)| (key.clone(), say_book::gauge(own))).collect();
    options.push((WORN.to_owned(), say_finger::WORN_RING.to_owned()));
    let gauges = StoredValue::new(gauges);
    let picked = form.text("gauge");
    let is_worn = Memo::new(move |_| picked.with(|picked| picked == WORN));
    let glass = Memo::new(move |_| on_glass(form).is_some());
    let on_stick = Memo::new(move |_| {
        let picked = picked.get();
        let is_stick = |own: &OwnGauge| matches!(own.gauge.kind, GaugeKind::Stick { .. });
        (picked == WORN && !glass.get())
            || gauges.with_value(|all| all.iter().any(|(item, own)| *item == picked && is_stick(own)))
    });
    let coded = move |key: &'static str, legend: &'static str, options| {
        choice(key, legend, Shape::Segments, options, form.text(key))
    };
    let touches = Signal::derive(move || {
        let bore = gauges.with_value(|gauges| bore(form, gauges));
        ReadAt::right_for(bore).code().to_owned()
    });
    let place_on_stick = form.following("read-at", touches);
    let read_at = move || {
        let places = ReadAt::ALL.map(|at| option(at.code(), say_fit::read_at(at)));
        let hint = Some(say_finger::READ_WHERE.into());
        let legend = say::READ_AT.into();
        on_stick.get().then(|| choice_with("read-at", legend, hint, Shape::Segments, places.into(), place_on_stick))
    };
    let worn = move || {
        is_worn.get().then(|| {
            let bores = [Bore::Flat, Bore::Domed].map(|bore| option(bore.code(), say_band::bore(bore)));
            let sits = Sits::ALL.map(|sits| option(sits.code(), say_fit::sits(sits)));
            all(vec![
                fields::mm(form, "worn-width", say_finger::WORN_WIDTH).hint(say_finger::WORN_WIDTH_HINT).line(),
                coded("worn-bore", say_finger::WORN_BORE, bores.into()),
                choice("sits", say_finger::SITS, Shape::Chips, sits.into(), form.text("sits")),
                maybe(move || glass.get().then(|| para("small", say_finger::ON_GLASS))),
                link_button(Weight::Quiet, say_bench::SCREEN_GAUGE, to_glass(whom)),
            ])
        })
    };
    let hands = move || {
        let hands = Hands::ALL.map(|hands| option(hands.code(), say_fit::hands(hands)));
        (!is_worn.get()).then(|| coded("hands", say::HANDS, hands.into()))
    };
    all(vec![
        fields::text(form, "size", say::READ_SIZE).hint(say::READ_SIZE_HINT).keyboard(Keyboard::Text).line(),
        maybe(move || fields::which_size(form, "size", "as", say::READ_AS)),
        pick("gauge", say::GAUGE, options, picked),
        maybe(worn),
        maybe(read_at),
        maybe(hands),
        coded("place", say::MEASURED_AT, Place::ALL.map(|it| option(it.code(), say_fit::place(it))).into()),
        fields::hand_and_finger(form),
        maybe(move || which_finger(whom, form)),
        fields::text(form, "beside", say::BESIDE)
            .hint(fields::widths_hint(form.text("beside"), say::BESIDE_HINT))
            .on_leave(move || {
                let _ = fields::read_widths(form, "beside");
            })
            .line(),
        fields::time(form, "taken-at", say_finger::TAKEN_AT, say_finger::TAKEN_AT_EMPTY),
    ])
}

/// The question whether the band goes to the finger of the form, where it was for another one.
fn which_finger(whom: Whom, form: Form) -> Option<AnyView> {
    let Whom { app, id, wearer } = whom;
    let coded = |key| form.text(key).get();
    let here = Finger { hand: Hand::from_code(&coded("hand"))?, digit: Digit::from_code(&coded("digit"))? };
    let other = app.couple(id, |couple| couple.finger(wearer)).flatten().filter(|chosen| *chosen != here)?;
    let options = vec![
        option(moves_code(false, here), say_finger::stays(other)),
        option(moves_code(true, here), say_finger::moves(here)),
    ];
    let unsaid = form.complaint("moves");
    Some(all(vec![
        choice("moves", say_finger::does_it_move(here), Shape::Chips, options, form.text("moves")),
        complaint("moves-error".to_owned(), move || unsaid.get()),
    ]))
}

/// The word for an answer to that question. It names the finger: another one is asked about anew.
pub fn moves_code(moves: bool, to: Finger) -> String {
    format!("{}-{}-{}", if moves { "yes" } else { "no" }, to.hand.code(), to.digit.code())
}

/// The reading as it was typed; none if something has to be put right first.
pub fn read(app: App, form: Form, gauges: &[(String, OwnGauge)]) -> Option<ReadingTaken> {
    let text = |key| form.text(key).get_untracked();
    let size = fields::read_size(form, "size", "as");
    let beside = fields::read_widths(form, "beside");
    let at = fields::read_optional_time(form, "taken-at");
    let is_worn = text("gauge") == WORN;
    let gauge = if is_worn {
        worn_ring(form)
    } else {
        let picked = text("gauge");
        gauges.iter().find(|(item, _)| *item == picked).map(|(_, own)| own.clone())
    };
    let touches = || ReadAt::right_for(untrack(|| bore(form, gauges)));
    let read_at = ReadAt::from_code(&text("read-at")).unwrap_or_else(touches);
    Some(ReadingTaken {
        size: SizeAsRead { stated: size?, typed: text("size").trim().to_owned() },
        finger: finger(form)?,
        place: Place::from_code(&text("place"))?,
        gauge: gauge?,
        read_at,
        hands: Hands::from_code(&text("hands"))?,
        beside: beside?,
        sits: if is_worn { Some(Sits::from_code(&text("sits"))?) } else { None },
        taken: app.today.get_untracked(),
        at: at?,
        left_out: false,
    })
}

/// The finger that is chosen in the form.
pub fn finger(form: Form) -> Option<Finger> {
    let text = |key| form.text(key).get_untracked();
    Some(Finger { hand: Hand::from_code(&text("hand"))?, digit: Digit::from_code(&text("digit"))? })
}

/// The inside of the gauge, or of the ring they wear.
fn bore(form: Form, gauges: &[(String, OwnGauge)]) -> Bore {
    let picked = form.text("gauge").get();
    match gauges.iter().find(|(item, _)| *item == picked) {
        Some((_, own)) => own.gauge.bore,
        None => form.text("worn-bore").with(|code| Bore::from_code(code)).unwrap_or(Bore::Flat),
    }
}

/// How sure the screen gauge was of the size; none if it did not say this one.
fn on_glass(form: Form) -> Option<Length> {
    let same = form.text("size").with(|size| form.text("glass").with(|glass| !glass.is_empty() && size == glass));
    let off = form.text("glass-off").get();
    off.parse().ok().filter(|_| same).map(Length::tenthousandths)
}

fn to_glass(Whom { id, wearer, .. }: Whom) -> String {
    let query = [("couple".to_owned(), id.to_string()), ("who".to_owned(), wearer.code().to_owned())];
    with_query(Address::Calculator(Calculator::ScreenGauge), &query)
}

/// A ring that they wear stands for the gauge; its size is read on a stick, or was on the glass.
fn worn_ring(form: Form) -> Option<OwnGauge> {
    let width = fields::read_length(form, "worn-width", Limit::GaugeWidth)?;
    let bore = Bore::from_code(&form.text("worn-bore").get_untracked())?;
    let (kind, own_error, name) = match untrack(|| on_glass(form)) {
        Some(off) => (GaugeKind::RingSet, off, say_finger::WORN_ON_GLASS),
        None => (GaugeKind::Stick { taper: STICK_TAPER.value }, OWN_ERROR, say_finger::worn_gauge_name()),
    };
    let gauge = Gauge { kind, width, bore, relief: None, step: HALF_LETTER, own_error };
    Some(OwnGauge { name: name.to_owned(), gauge, calibration: Vec::new() })
}
