//! Phones by name, who did what and when, and what to do where two phones say different things.

use super::{dates, format};
use chrono::{Datelike, Days, NaiveDate, NaiveTime};

// Differences
pub const DIFFERENCES: &str = "Differences to settle";
pub const DIFFERENCES_HOW: &str = "Two people wrote without having seen each other’s words. Choose what counts; the other \
                                   stays in the history.";
/// The settings of the practice, where they stand among couples.
pub const SETTINGS: &str = "Settings under Practice";
/// Differing values that only a newer version can read.
pub const NEWER: &str = "A newer version of the app has written this. Update the app on this phone, then choose.";
/// Where what was written belongs to an entry that was joined with another.
pub const WAS_JOINED: &str = "This entry was joined with another one, which can take over what came since.";
pub const ALL_SETTLED: &str = "Nothing is left to settle.";
pub const AWAY_BUT_EDITED: &str = "Put away, but edited elsewhere";
pub const AWAY_BUT_EDITED_HOW: &str = "One phone put this couple away without having seen what the other had written:";
pub const GONE_BUT_EDITED: &str = "Taken out, but edited elsewhere";
pub const GONE_BUT_EDITED_HOW: &str = "One phone took this out without having seen what the other had written into it:";
pub const TAKEN_OUT: &str = "Taken out";
pub const BRING_IT_BACK: &str = "Bring it back";
pub const LEAVE_IT_OUT: &str = "Leave it out";
pub const GONE_OR_NOT: &str = "taken out on one phone, edited on the other";
pub const KEEP_AWAY: &str = "Leave it put away";

/// One of several sides of a difference: what sets it apart, the rest of it, and its button.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OneSide {
    pub value: String,
    pub rest: String,
    pub keep: String,
}

/// Sides by what sets them apart. Of a figure that is said with its grounds ("UK P (56.25 mm inside), worn alone") that
/// is what comes first, as long as it tells the sides apart; free words are never split.
pub fn sides(values: &[(String, bool)]) -> Vec<OneSide> {
    let heads: Vec<&str> = values.iter().map(|(text, free)| if *free { text } else { head(text) }).collect();
    let apart = (1..heads.len()).all(|at| !heads[..at].contains(&heads[at]));
    let side = |(at, (text, _)): (usize, &(String, bool))| {
        let head = if apart { heads[at] } else { text };
        let keep = if head.chars().count() > LONG { KEEP_NTH.get(at).copied().unwrap_or(KEEP_THIS) } else { "" };
        let keep = if keep.is_empty() { format!("Keep {head}") } else { keep.to_owned() };
        OneSide { value: head.to_owned(), rest: grounds(&text[head.len()..]), keep }
    };
    values.iter().enumerate().map(side).collect()
}

/// What a value begins with, before its grounds.
pub fn head(value: &str) -> &str {
    let end = [" (", ", ", ": "].iter().filter_map(|sign| value.find(sign)).min();
    &value[..end.unwrap_or(value.len())]
}

/// The grounds of a value without the sign that they begin with.
fn grounds(rest: &str) -> String {
    let rest = rest.trim_start_matches([',', ':', ' ']);
    // One bracket that closes in the middle is opened out: "(56.25 mm inside), worn alone".
    match rest.strip_prefix('(').and_then(|rest| rest.split_once(')')) {
        Some((inside, more)) => format!("{inside}{more}"),
        None => rest.to_owned(),
    }
}

/// What sets one of several like things apart in a list to pick from: "Tess: reading, M".
pub fn beginning(name: &str, value: &str) -> String {
    let head = head(value);
    let short: String = head.chars().take(LONG).collect();
    let more = if short.len() < head.len() { "…" } else { "" };
    format!("{name}, {}{more}", short.trim_end())
}

/// The name of the next of several that are called the same: "Tess: reading, M (2)".
pub fn numbered(name: String, before: usize) -> String {
    if before == 0 { name } else { format!("{name} ({})", before + 1) }
}

/// Whether one is called so, with or without a number.
pub fn is_numbered(name: &str, other: &str) -> bool {
    name.strip_prefix(other).is_some_and(|rest| rest.is_empty() || rest.starts_with(" ("))
}

/// Longer than this no button repeats it.
const LONG: usize = 32;
const KEEP_NTH: [&str; 3] = ["Keep the first", "Keep the second", "Keep the third"];
const KEEP_THIS: &str = "Keep this one";

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
pub const HISTORY_HOW: &str = "Choose one thing to see every value that it had. There an earlier one can be put back.";
pub const OF_WHAT: &str = "Show";
pub const EVERYTHING: &str = "all changes";
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
