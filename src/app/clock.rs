//! What time it is and random bits, for the book: nothing that is written into it has them from elsewhere.

use chrono::{NaiveDate, NaiveTime};
use js_sys::Date;

use crate::book::id::Moment;

/// The civil day and time on this phone's clock.
pub fn now() -> (NaiveDate, NaiveTime) {
    civil_of(&Date::new_0())
}

fn civil_of(date: &Date) -> (NaiveDate, NaiveTime) {
    let day = NaiveDate::from_ymd_opt(date.get_full_year() as i32, date.get_month() + 1, date.get_date());
    let time = NaiveTime::from_hms_opt(date.get_hours(), date.get_minutes(), 0);
    (day.unwrap_or(NaiveDate::MIN), time.unwrap_or(NaiveTime::MIN))
}

/// This moment, for the record of a change.
pub fn moment() -> Moment {
    Moment(Date::now() as i64)
}

/// The civil day and time of a moment, on this phone's clock.
pub fn civil(moment: Moment) -> (NaiveDate, NaiveTime) {
    civil_of(&Date::new(&wasm_bindgen::JsValue::from_f64(moment.0 as f64)))
}

/// 128 random bits from the browser's own generator. Without it nothing may be written: an id that is not random could
/// be another record's, so the app stops with its fault page instead.
pub fn random() -> u128 {
    let crypto = web_sys::window().and_then(|window| window.crypto().ok());
    let crypto = crypto.expect("window.crypto");
    let mut bytes = [0; 16];
    assert!(crypto.get_random_values_with_u8_array(&mut bytes).is_ok(), "getRandomValues");
    u128::from_be_bytes(bytes)
}
