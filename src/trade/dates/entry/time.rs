//! The time of an appointment.

use chrono::NaiveTime;

/// Why a text is no time of day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TimeEntryError {
    Empty,
    TooLong,
    NotATime,
    /// There is no such hour or minute, or not with am or pm.
    NoSuchTime,
    /// "3" may be in the night or in the afternoon: hours 1 to 7 without a nought before them.
    AmOrPm {
        time: NaiveTime,
    },
}

const LONGEST: usize = 20;

/// Reads a time of day: "14:30", "2.30pm", "14", "1430", "9 am", "noon".
///
/// ```
/// use bandwright::trade::dates::entry::read_time;
/// assert_eq!(read_time("2.30pm"), Ok(chrono::NaiveTime::from_hms_opt(14, 30, 0).unwrap()));
/// ```
pub fn read_time(text: &str) -> Result<NaiveTime, TimeEntryError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(TimeEntryError::Empty);
    }
    if text.chars().nth(LONGEST).is_some() {
        return Err(TimeEntryError::TooLong);
    }
    let text = text.to_ascii_lowercase();
    let (text, half) = without_half(&text);
    if half.is_none() && matches!(text, "noon" | "midday") {
        return at(12, 0);
    }
    let (hour, minute) = hour_and_minute(text).ok_or(TimeEntryError::NotATime)?;
    match half {
        Some(_) if !(1..=12).contains(&hour) => Err(TimeEntryError::NoSuchTime),
        Some(Half::Am) => at(hour % 12, minute),
        Some(Half::Pm) => at(hour % 12 + 12, minute),
        None if (1..=7).contains(&hour) && !text.starts_with('0') => {
            Err(TimeEntryError::AmOrPm { time: at(hour, minute)? })
        }
        None => at(hour, minute),
    }
}

enum Half {
    Am,
    Pm,
}

/// Takes "am", "p.m." and the like off the end.
fn without_half(text: &str) -> (&str, Option<Half>) {
    let rest = |end| text.strip_suffix(end).map(str::trim_end);
    if let Some(rest) = rest("am").or_else(|| rest("a.m.")).or_else(|| rest("a.m")) {
        (rest, Some(Half::Am))
    } else if let Some(rest) = rest("pm").or_else(|| rest("p.m.")).or_else(|| rest("p.m")) {
        (rest, Some(Half::Pm))
    } else {
        (text, None)
    }
}

/// "14:30", "14.30", "14 30", "1430", "14".
fn hour_and_minute(text: &str) -> Option<(u32, u32)> {
    if let Some((hour, minute)) = text.split_once([':', '.', ' ']) {
        return if minute.len() == 2 { Some((number(hour)?, number(minute)?)) } else { None };
    }
    match text.len() {
        1 | 2 => Some((number(text)?, 0)),
        4 => Some((number(text.get(..2)?)?, number(text.get(2..)?)?)),
        _ => None,
    }
}

fn number(digits: &str) -> Option<u32> {
    let plain = (1..=2).contains(&digits.len()) && digits.bytes().all(|b| b.is_ascii_digit());
    if plain { digits.parse().ok() } else { None }
}

fn at(hour: u32, minute: u32) -> Result<NaiveTime, TimeEntryError> {
    NaiveTime::from_hms_opt(hour, minute, 0).ok_or(TimeEntryError::NoSuchTime)
}
