//! The calibration of a gauge: what it says at a few of its sizes, and what it is there.

use crate::parts::el::maybe;
use crate::parts::lay::{all, pair, para};
use leptos::prelude::*;

use crate::app::form::{Form, Start};
use crate::app::state::app;
use crate::forms;
use crate::parts::details::details;
use crate::screens::fields;
use crate::trade::entry;
use crate::trade::fit::{CalibrationPoint, calibrate};
use crate::words::gauges as say;

/// A field for a size, and which reading of it is meant.
type Keys = (&'static str, &'static str);

/// So many sizes may be measured: what the gauge says, and what it is.
const POINTS: [(Keys, Keys); 5] = [
    (("cal1-says", "cal1-says-as"), ("cal1-is", "cal1-is-as")),
    (("cal2-says", "cal2-says-as"), ("cal2-is", "cal2-is-as")),
    (("cal3-says", "cal3-says-as"), ("cal3-is", "cal3-is-as")),
    (("cal4-says", "cal4-says-as"), ("cal4-is", "cal4-is-as")),
    (("cal5-says", "cal5-says-as"), ("cal5-is", "cal5-is-as")),
];

pub fn start(known: &[CalibrationPoint]) -> Vec<Start> {
    let mut start = Vec::new();
    for (place, (says, is)) in POINTS.into_iter().enumerate() {
        let point = known.get(place);
        start.push((says.0, point.map(|point| say::retyped(point.says)).unwrap_or_default()));
        start.push((is.0, point.map(|point| say::retyped(point.is)).unwrap_or_default()));
        start.extend([(says.1, String::new()), (is.1, String::new())]);
    }
    start
}

pub fn inputs(form: Form) -> AnyView {
    let row = |(place, (says, is)): (usize, (Keys, Keys))| {
        let (it_says, it_is) = (say::says(place + 1), say::is(place + 1));
        let fields = vec![fields::text(form, says.0, &it_says).line(), fields::text(form, is.0, &it_is).line()];
        let which = |(key, which): Keys, what: String| maybe(move || fields::which_size(form, key, which, &what));
        all(vec![pair(fields), which(says, it_says), which(is, it_is)])
    };
    let found = move || {
        let points: Vec<CalibrationPoint> = POINTS.into_iter().filter_map(|keys| understood(form, keys)).collect();
        calibrate(&points).map(|found| {
            let off = found.beyond_quarter.map(|(at, off)| para("caution", say::beyond_quarter(at, off)));
            let mut said =
                vec![para("", say::calibrated(&found)), para("small", say::residuals(&points, &found.residuals))];
            said.extend(off);
            let is_stick = form.text("gauge-kind").with(|kind| kind == super::gauge::STICK);
            said.extend(found.odd.iter().map(|(at, off)| para("caution", say::odd(*at, *off, is_stick))));
            all(said)
        })
    };
    let rows = POINTS.into_iter().enumerate().map(row).collect();
    details(say::CALIBRATION, all(vec![para("small", say::CALIBRATION_WHY), all(rows), maybe(found)]))
}

/// What was typed; none if something has to be put right first.
pub fn read(form: Form) -> Option<Vec<CalibrationPoint>> {
    let mut points = Vec::new();
    let mut whole = true;
    for (says, is) in POINTS {
        let blank = |key: Keys| form.text(key.0).with_untracked(|text| text.trim().is_empty());
        match (blank(says), blank(is)) {
            (true, true) => {
                let _: [Option<()>; 2] = [says, is].map(|key| form.judge(key.0, Ok(())));
            }
            (true, false) | (false, true) => {
                let (missing, typed) = if blank(says) { (says, is) } else { (is, says) };
                whole = false;
                if fields::read_size(form, typed.0, typed.1).is_some() {
                    form.judge::<()>(missing.0, Err(say::BOTH_OR_NEITHER.to_owned()));
                }
            }
            (false, false) => {
                let sizes = (fields::read_size(form, says.0, says.1), fields::read_size(form, is.0, is.1));
                match sizes {
                    (Some(says), Some(is)) => {
                        points.push(CalibrationPoint { says: says.circumference(), is: is.circumference() });
                    }
                    _ => whole = false,
                }
            }
        }
    }
    whole.then_some(points)
}

/// A pair as far as it can be read for certain, without a word about what cannot.
fn understood(form: Form, (says, is): (Keys, Keys)) -> Option<CalibrationPoint> {
    let first = app().practice(|practice| practice.first_system());
    let one = |(key, which): Keys| {
        let read = form.text(key).with(|text| entry::read_size(text, first)).ok()?;
        let chosen = form.text(which).get();
        match read.as_slice() {
            [only] => Some(only.circumference()),
            several => Some(several.get(forms::meant(several, &chosen, first)?)?.circumference()),
        }
    };
    let (says, is) = (one(says), one(is));
    Some(CalibrationPoint { says: says?, is: is? })
}
