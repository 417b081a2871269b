//! The calibration of a gauge: what it says at a few of its sizes, and what it is there.

use crate::parts::el::maybe;
use crate::parts::lay::{all, pair, para};
use leptos::prelude::*;

use crate::app::form::{Form, Start};
use crate::app::state::app;
use crate::parts::details::details;
use crate::screens::fields;
use crate::trade::entry;
use crate::trade::fit::{CalibrationPoint, calibrate};
use crate::words::gauges as say;

/// So many sizes may be measured; the keys of what the gauge says and of what it is.
const POINTS: [(&str, &str); 5] = [
    ("cal1-says", "cal1-is"),
    ("cal2-says", "cal2-is"),
    ("cal3-says", "cal3-is"),
    ("cal4-says", "cal4-is"),
    ("cal5-says", "cal5-is"),
];

pub fn start(known: &[CalibrationPoint]) -> Vec<Start> {
    let mut start = Vec::new();
    for (place, (says, is)) in POINTS.into_iter().enumerate() {
        let point = known.get(place);
        start.push((says, point.map(|point| say::retyped(point.says)).unwrap_or_default()));
        start.push((is, point.map(|point| say::retyped(point.is)).unwrap_or_default()));
    }
    start
}

pub fn inputs(form: Form) -> AnyView {
    let row = |(place, (says, is)): (usize, (&'static str, &'static str))| {
        pair(vec![
            fields::text(form, says, &say::says(place + 1)).line(),
            fields::text(form, is, &say::is(place + 1)).line(),
        ])
    };
    let found = move || {
        let points: Vec<CalibrationPoint> = POINTS.into_iter().filter_map(|keys| understood(form, keys)).collect();
        calibrate(&points).map(|found| {
            let off = found.beyond_quarter.map(|(at, off)| para("caution", say::beyond_quarter(at, off)));
            let mut said = vec![para("", say::calibrated(&found)), para("small", say::residuals(&found.residuals))];
            said.extend(off);
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
        let blank = |key| form.text(key).with_untracked(|text| text.trim().is_empty());
        match (blank(says), blank(is)) {
            (true, true) => {
                let _: [Option<()>; 2] = [says, is].map(|key| form.judge(key, Ok(())));
            }
            (true, false) | (false, true) => {
                let (missing, typed) = if blank(says) { (says, is) } else { (is, says) };
                whole = false;
                if fields::read_size(form, typed, "").is_some() {
                    form.judge::<()>(missing, Err(say::BOTH_OR_NEITHER.to_owned()));
                }
            }
            (false, false) => {
                let sizes = (fields::read_size(form, says, ""), fields::read_size(form, is, ""));
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
fn understood(form: Form, (says, is): (&'static str, &'static str)) -> Option<CalibrationPoint> {
    let first = app().practice(|practice| practice.first_system());
    let one = |key| {
        let read = form.text(key).with(|text| entry::read_size(text, first)).ok()?;
        if let [only] = read.as_slice() { Some(only.circumference()) } else { None }
    };
    let (says, is) = (one(says), one(is));
    Some(CalibrationPoint { says: says?, is: is? })
}
