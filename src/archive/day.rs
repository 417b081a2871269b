//! Days ("2027-05-22") and times of day ("14:30").

use chrono::{NaiveDate, NaiveTime, Timelike};
use serde_json::{Value as Json, json};

pub(super) fn write_day(day: NaiveDate) -> Json {
    json!(day.to_string())
}

pub(super) fn read_day(json: &Json) -> Option<NaiveDate> {
    // From the end, because a year may have a sign.
    let mut parts = json.as_str()?.rsplitn(3, '-');
    let mut part = || parts.next();
    let (day, month, year) = (part()?, part()?, part()?);
    let day = NaiveDate::from_ymd_opt(year.parse().ok()?, month.parse().ok()?, day.parse().ok()?)?;
    // What cannot be written back as it was read is no day of ours.
    (day.to_string() == json.as_str()?).then_some(day)
}

pub(super) fn write_time(time: NaiveTime) -> Json {
    json!(format!("{:02}:{:02}", time.hour(), time.minute()))
}

pub(super) fn read_time(json: &Json) -> Option<NaiveTime> {
    let (hour, minute) = json.as_str()?.split_once(':')?;
    NaiveTime::from_hms_opt(hour.parse().ok()?, minute.parse().ok()?, 0)
}
