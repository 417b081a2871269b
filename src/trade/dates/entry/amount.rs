//! Numbers of days, as they are typed for lead times and for days in hand.

use super::super::closed::Closure;
use super::super::spread::{CalendarDays, Spread, WorkingDays};

/// Why a text is no number of days.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AmountEntryError {
    Empty,
    TooLong,
    NotANumber,
    /// A half day, a fraction, a decimal.
    NotWhole,
    Negative,
    TooMany {
        most: u16,
    },
}

const LONGEST: usize = 30;
const UNITS: [&str; 3] = ["days", "day", "working"];

/// Reads a number of working days: "15", "15 days", "15 working days".
pub fn read_working_days(text: &str) -> Result<WorkingDays, AmountEntryError> {
    whole(text, Spread::LONGEST.0).map(WorkingDays)
}

/// Reads a number of days of the calendar, a year at most: "14", "14 days".
pub fn read_calendar_days(text: &str) -> Result<CalendarDays, AmountEntryError> {
    whole(text, Closure::LONGEST.0).map(CalendarDays)
}

fn whole(text: &str, most: u16) -> Result<u16, AmountEntryError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(AmountEntryError::Empty);
    }
    if text.chars().nth(LONGEST).is_some() {
        return Err(AmountEntryError::TooLong);
    }
    let lower = text.to_ascii_lowercase();
    let number = UNITS.iter().fold(lower.as_str(), |text, unit| text.strip_suffix(unit).unwrap_or(text).trim_end());
    let (sign, digits) = number.strip_prefix(['-', '−']).map_or((false, number), |rest| (true, rest.trim_start()));
    if !digits.is_empty() && digits.bytes().all(|b| b.is_ascii_digit()) {
        let amount = digits.parse().unwrap_or(u64::MAX);
        match u16::try_from(amount) {
            Ok(0) => Ok(0),
            _ if sign => Err(AmountEntryError::Negative),
            Ok(amount) if amount <= most => Ok(amount),
            _ => Err(AmountEntryError::TooMany { most }),
        }
    } else if digits.starts_with(|c: char| c.is_ascii_digit() || "½¼¾".contains(c))
        && digits.chars().all(|c| c.is_ascii_digit() || " .,/½¼¾".contains(c))
    {
        Err(AmountEntryError::NotWhole)
    } else {
        Err(AmountEntryError::NotANumber)
    }
}
