//! What the text of one field stands for, as far as it can be read: for the line under it, while somebody types.

use chrono::{NaiveDate, NaiveTime};

use crate::trade::band::alloys::{self, Alloy};
use crate::trade::dates::entry::{self as dates, DateEntryError};
use crate::trade::dates::wedding::Wedding;
use crate::trade::entry;
use crate::trade::fit::RINGS_BESIDE_MOST;
use crate::trade::measure::Length;
use crate::trade::sizing::{SizeAsRead, System};

pub fn time(text: &str) -> Option<NaiveTime> {
    dates::read_time(text).ok()
}

/// A day, or why it is none: of one that may be two the two are said.
pub fn day(text: &str, from: NaiveDate, today: NaiveDate) -> Result<NaiveDate, DateEntryError> {
    dates::read_day_from(text, from, today)
}

pub fn wedding(text: &str, today: NaiveDate) -> Option<Wedding> {
    dates::read_wedding(text, today).ok()
}

/// The widths of the rings worn beside a gauge.
pub fn widths(text: &str) -> Vec<Length> {
    entry::read_widths(text, RINGS_BESIDE_MOST).unwrap_or_default()
}

/// Every reading of a size.
pub fn sizes(text: &str, first: System) -> Vec<SizeAsRead> {
    entry::read_size(text, first).unwrap_or_default()
}

/// The metal of a word.
pub fn metal(code: &str) -> Option<&'static Alloy> {
    alloys::by_code(code)
}
