//! The days of a week that are worked.

use chrono::Weekday;

use crate::book::practice::USUAL_REGION;
use crate::forms::complaint::Complaint;
use crate::forms::reader::Reader;
use crate::forms::texts::Key;
use crate::forms::write;
use crate::trade::dates::closed::{Calendar, OnBankHolidays, Weekdays};

/// The words for a place that is closed on holidays, and for one that works on them.
pub const CLOSED: &str = "closed";
pub const OPEN: &str = "open";

pub fn word_of(on_holidays: OnBankHolidays) -> &'static str {
    match on_holidays {
        OnBankHolidays::Closed => CLOSED,
        OnBankHolidays::Works => OPEN,
    }
}

pub fn start(days: Weekdays) -> String {
    write::codes(days.iter(Weekday::Mon))
}

/// The days that are chosen. A week without a working day says so itself.
pub fn read(form: &mut Reader, key: Key) -> Option<Weekdays> {
    let days: Weekdays = form.choices(key).into_iter().collect();
    let worked = Calendar::new(USUAL_REGION, OnBankHolidays::Closed, days, Vec::new());
    form.note(key, worked.map_err(Complaint::Calendar)).map(|_| days)
}
