//! Days and figures as people read them: through the browser's `Intl`, and natively the same by hand, so that the
//! sentences can be tested without a browser. A browser test holds the two side by side.
//!
//! The locale is `en-GB`, because the words are: one line to change when the words are spoken in another language.

use crate::trade::measure::Length;
use chrono::{Datelike, NaiveDate};

/// A day with its weekday: "Sat 22 May 2027".
pub fn day(day: NaiveDate) -> String {
    imp::day(day)
}

/// A day for names of files, which sort by it: "2027-05-22".
pub fn day_sortable(day: NaiveDate) -> String {
    format!("{}-{:02}-{:02}", day.year(), day.month(), day.day())
}

/// A day without its year, for places where the year is plain: "Sat 22 May".
pub fn day_short(day: NaiveDate) -> String {
    imp::day_short(day)
}

/// A month of a year: "May 2027".
pub fn month(year: i32, month: u32) -> String {
    imp::month(year, month)
}

/// A length in millimetres with a fixed number of decimals and no unit: "53.75".
pub fn mm(length: Length, decimals: u8) -> String {
    imp::number(length.mm(), decimals)
}

/// A difference in millimetres with its sign, a true minus: "+0.75", "−0.47", and "0.00" for none.
pub fn mm_signed(length: Length, decimals: u8) -> String {
    let text = imp::number(length.abs().mm(), decimals);
    if text.chars().all(|c| matches!(c, '0' | '.' | ',')) {
        text
    } else if length < Length::ZERO {
        format!("−{text}")
    } else {
        format!("+{text}")
    }
}

/// A whole number: "12,400".
pub fn count(value: i64) -> String {
    imp::number(value as f64, 0)
}

/// "1 day", "2 days": a number with its noun.
pub fn counted(value: i64, one: &str, many: &str) -> String {
    format!("{} {}", count(value), if value.abs() == 1 { one } else { many })
}

#[cfg(not(target_arch = "wasm32"))]
mod imp {
    use super::*;

    const MONTHS: [&str; 12] = [
        "January",
        "February",
        "March",
        "April",
        "May",
        "June",
        "July",
        "August",
        "September",
        "October",
        "November",
        "December",
    ];
    const DAYS: [&str; 7] = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];

    fn month_name(month: u32) -> &'static str {
        MONTHS.get(month.wrapping_sub(1) as usize).copied().unwrap_or("")
    }

    fn month_short(month: u32) -> &'static str {
        // en-GB writes September as Sept.
        if month == 9 { "Sept" } else { month_name(month).get(..3).unwrap_or("") }
    }

    pub fn day_short(day: NaiveDate) -> String {
        let weekday = DAYS[day.weekday().num_days_from_monday() as usize];
        format!("{weekday} {} {}", day.day(), month_short(day.month()))
    }

    pub fn day(day: NaiveDate) -> String {
        format!("{} {}", day_short(day), day.year())
    }

    pub fn month(year: i32, month: u32) -> String {
        format!("{} {year}", month_name(month))
    }

    pub fn number(value: f64, decimals: u8) -> String {
        // Halves away from zero, as the browser rounds them: the quarter sizes of the UK lie on halves.
        let scale = 10f64.powi(i32::from(decimals));
        let text = format!("{:.*}", decimals as usize, (value * scale).round() / scale);
        let (whole, rest) = text.split_once('.').map_or((text.as_str(), None), |(w, r)| (w, Some(r)));
        let (sign, digits) = whole.strip_prefix('-').map_or(("", whole), |d| ("-", d));
        let mut grouped = String::new();
        for (i, digit) in digits.chars().enumerate() {
            if i > 0 && (digits.len() - i).is_multiple_of(3) {
                grouped.push(',');
            }
            grouped.push(digit);
        }
        match rest {
            Some(rest) => format!("{sign}{grouped}.{rest}"),
            None => format!("{sign}{grouped}"),
        }
    }
}

#[cfg(target_arch = "wasm32")]
mod imp {
    use super::*;
    use js_sys::{Array, Date, Intl, Object, Reflect};
    use wasm_bindgen::JsValue;

    const LOCALE: &str = "en-GB";

    fn options(pairs: &[(&str, JsValue)]) -> Object {
        let object = Object::new();
        for (key, value) in pairs {
            let _ = Reflect::set(&object, &JsValue::from_str(key), value);
        }
        object
    }

    fn locales() -> Array {
        Array::of1(&JsValue::from_str(LOCALE))
    }

    /// A civil date is formatted as noon in UTC, in UTC: no time zone can move it to its neighbour.
    fn formatted(day: NaiveDate, pairs: &[(&str, JsValue)]) -> String {
        let mut pairs = pairs.to_vec();
        pairs.push(("timeZone", "UTC".into()));
        let format = Intl::DateTimeFormat::new(&locales(), &options(&pairs));
        let ms = Date::utc(f64::from(day.year()), f64::from(day.month0()))
            + (f64::from(day.day0()) * 24.0 + 12.0) * 3_600_000.0;
        let text = format.format().call1(&JsValue::UNDEFINED, &Date::new(&JsValue::from_f64(ms)));
        // en-GB puts a comma behind the weekday; the other figures here do without.
        text.ok().and_then(|t| t.as_string()).unwrap_or_default().replace(',', "")
    }

    pub fn day(day: NaiveDate) -> String {
        formatted(
            day,
            &[
                ("weekday", "short".into()),
                ("day", "numeric".into()),
                ("month", "short".into()),
                ("year", "numeric".into()),
            ],
        )
    }

    pub fn day_short(day: NaiveDate) -> String {
        formatted(day, &[("weekday", "short".into()), ("day", "numeric".into()), ("month", "short".into())])
    }

    pub fn month(year: i32, month: u32) -> String {
        NaiveDate::from_ymd_opt(year, month, 1)
            .map(|first| formatted(first, &[("month", "long".into()), ("year", "numeric".into())]))
            .unwrap_or_default()
    }

    pub fn number(value: f64, decimals: u8) -> String {
        let digits = JsValue::from_f64(f64::from(decimals));
        let format = Intl::NumberFormat::new(
            &locales(),
            &options(&[("minimumFractionDigits", digits.clone()), ("maximumFractionDigits", digits)]),
        );
        let text = format.format().call1(&JsValue::UNDEFINED, &JsValue::from_f64(value));
        text.ok().and_then(|t| t.as_string()).unwrap_or_default()
    }
}
