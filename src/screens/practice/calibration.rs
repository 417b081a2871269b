//! The calibration of a gauge: what it says at a few of its sizes, and what it is there.

use leptos::prelude::*;

use crate::app::form::Form;
use crate::app::state::app;
use crate::forms::setup::calibration::{POINTS, PointKeys, SizeKeys, points_so_far};
use crate::forms::setup::gauge::is_stick;
use crate::parts::details::details;
use crate::parts::el::maybe;
use crate::parts::layout::{all, pair, para};
use crate::screens::shell::fields;
use crate::trade::fit::calibrate;
use crate::words::gauges as say;

pub fn inputs(form: Form) -> AnyView {
    let app = app();
    let row = |(place, PointKeys { says, is }): (usize, PointKeys)| {
        let (it_says, it_is) = (say::says(place + 1), say::is(place + 1));
        let fields = vec![fields::text(form, says.size, &it_says).line(), fields::text(form, is.size, &it_is).line()];
        let which =
            |keys: SizeKeys, what: String| maybe(move || fields::which_size(form, keys.size, keys.which, &what));
        all(vec![pair(fields), which(says, it_says), which(is, it_is)])
    };
    let found = move || {
        let points = points_so_far(&form.texts(), app.practice(|practice| practice.first_system()));
        calibrate(&points).map(|found| {
            let off = found.beyond_quarter.map(|(at, off)| para("caution", say::beyond_quarter(at, off)));
            let mut said =
                vec![para("", say::calibrated(&found)), para("small", say::residuals(&points, &found.residuals))];
            said.extend(off);
            let is_stick = is_stick(&form.texts());
            said.extend(found.odd.iter().map(|(at, off)| para("caution", say::odd(*at, *off, is_stick))));
            all(said)
        })
    };
    let rows = POINTS.into_iter().enumerate().map(row).collect();
    details(say::CALIBRATION, all(vec![para("small", say::CALIBRATION_WHY), all(rows), maybe(found)]))
}
