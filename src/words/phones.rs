//! Phones by name, who did what and when, and what to do where two phones say different things.

use super::{dates, format};
use chrono::{Datelike, Days, NaiveDate, NaiveTime};

// Differences
pub const DIFFERENCES: &str = "Differences to settle";
pub const DIFFERENCES_HOW: &str = "Two people wrote without having seen each other’s words. Choose what counts; the other \
                                   stays in the history.";
pub const ALL_SETTLED: &str = "Nothing is left to settle.";
pub const AWAY_BUT_EDITED: &str = "Put away, but edited elsewhere";
pub const AWAY_BUT_EDITED_HOW: &str = "One phone put this couple away without having seen what the other had written:";
pub const KEEP_AWAY: &str = "Leave it put away";

/// The button of one side.
pub fn keep(value: &str) -> String {
    format!("Keep {value}")
}

/// "2 differences to settle".
pub fn differences(count: usize) -> String {
    format!("{} to settle", format::counted(count as i64, "difference", "differences"))
}

/// What the notice says after a choice.
pub fn chosen(field: &str) -> String {
    format!("{field}: settled")
}

// History
pub const HISTORY: &str = "History";
pub const HISTORY_SMALL: &str = "who changed what, and when";
pub const OF_WHAT: &str = "Of";
pub const EVERYTHING: &str = "everything";
pub const STANDS: &str = "this is what counts now";
pub const TAKEN_BACK: &str = "taken back";
pub const TAKES_BACK: &str = "takes back an earlier change";

/// One write in the history: "Band, width: 2.5 mm".
pub fn wrote(field: &str, value: &str) -> String {
    format!("{field}: {value}")
}

/// The button that puts an earlier value back.
pub fn put_back(value: &str) -> String {
    format!("Put back {value}")
}

pub fn was_put_back(field: &str) -> String {
    format!("{field}: earlier value put back")
}

// Names of phones
pub const PHONES: &str = "Phones";
pub const THIS_PHONE: &str = "This phone";
pub const PHONE_NAME: &str = "Name of the phone";
pub const PHONE_NAME_HINT: &str =
    "“Studio tablet”. It goes along in files of the whole book, so that others see who wrote what. Empty for none.";

pub const DATED_BACK: &str = "dated before words it had seen: a clock was wrong";

/// What a phone is called in a sentence.
pub fn phone(name: Option<&str>, ours: bool, id: &str) -> String {
    match (name, ours) {
        (Some(name), true) => format!("{name} (this phone)"),
        (Some(name), false) => name.to_owned(),
        (None, true) => THIS_PHONE.to_owned(),
        (None, false) => format!("Another phone ({})", id.get(..4).unwrap_or_default()),
    }
}

/// "This phone, Wed 25 Nov 2026, 10:00"; a time that cannot be is pointed out.
pub fn who_and_when(who: &str, day: NaiveDate, time: NaiveTime, today: NaiveDate) -> String {
    let when = format!("{who}, {}, {}", format::day(day), dates::time(time));
    let tomorrow = today.checked_add_days(Days::new(1)).unwrap_or(today);
    if day > tomorrow || day.year() < 2025 {
        format!("{when} (that phone’s clock or this one’s is wrong)")
    } else {
        when
    }
}
