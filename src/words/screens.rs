//! Words of the frame and of the screens of Today and Couples.

use super::dates::Asked;
use super::{dates, format};
use crate::book::field::Stage;
use crate::trade::dates::entry::DateEntryError;
use crate::trade::dates::wedding::Wedding;
use chrono::NaiveDate;

pub const TODAY: &str = "Today";
pub const COUPLES: &str = "Couples";
pub const TOOLS: &str = "Tools";
pub const SETUP: &str = "Setup";

pub const OPENING: &str = "Opening the book";
pub const NOT_OPENED: &str = "The book did not open";
pub const TRY_AGAIN: &str = "Try again";
pub const NOT_FETCHED: &str = "This part has not arrived yet";
pub const NOT_FETCHED_HOW: &str = "The first visit needs a connection for a little longer. Nothing that you saved is lost. Try again when there is a signal.";
pub const UNDO: &str = "Undo";
pub const PUT_BACK: &str = "Put back";
pub const SAVE: &str = "Save";
pub const REMOVE: &str = "Remove";
pub const NOT_HERE: &str = "This is not on this phone";
pub const NOT_HERE_WHY: &str = "It may have been taken back, or the address belongs to another phone.";

pub fn update_ready() -> &'static str {
    "A new version is ready. What you have typed is kept."
}

pub fn update_now() -> &'static str {
    "Use it now"
}

pub const DRAFT_BACK: &str = "Your unsaved words are back.";
pub const DRAFT_DISCARD: &str = "Throw them away";

// Today
pub const NEW_COUPLE: &str = "New couple";
pub const LATE: &str = "Late";
pub const NEXT_APPOINTMENTS: &str = "Appointments";
pub const ORDER_BY_DATES: &str = "Order by";
pub const NOTHING_DUE: &str = "Nothing is due. The next couple will turn up here.";
pub const NOT_ORDERED: &str = "not ordered";
pub const NO_OUTCOME: &str = "what became of it?";
pub const FIRST_TIME: &str = "The book is empty. Write down the first couple, or look round with the example book.";
pub const LOAD_EXAMPLES: &str = "Load the example book";

/// "order by Tue 23 Mar 2027".
pub fn order_by(day: NaiveDate) -> String {
    format!("order by {}", format::day(day))
}

/// "Try on: was due Tue 23 Mar 2027".
pub fn was_due(what: &str, by: NaiveDate) -> String {
    format!("{what}: was due {}", format::day(by))
}

/// "ask for the day: order by Tue 23 Mar 2027 at the latest".
pub fn ask_the_day(last: NaiveDate) -> String {
    format!("ask for the day: {} at the latest", order_by(last))
}

/// "in 3 days", "today", "2 days ago".
pub fn from_today(day: NaiveDate, today: NaiveDate) -> String {
    match (day - today).num_days() {
        0 => "today".to_owned(),
        1 => "tomorrow".to_owned(),
        -1 => "yesterday".to_owned(),
        ahead if ahead > 0 => format!("in {} days", format::count(ahead)),
        ago => format!("{} days ago", format::count(-ago)),
    }
}

/// What stands under a day: what was understood, or which two days may be meant.
pub fn day_understood(read: Result<NaiveDate, DateEntryError>, today: NaiveDate) -> String {
    match read {
        Ok(day) => format!("{} · {}", format::day(day), from_today(day, today)),
        Err(either @ DateEntryError::EitherDay { .. }) => dates::date_entry(either, Asked::Day),
        Err(_) => DAY_HINT.to_owned(),
    }
}

/// What stands under a wedding.
pub fn wedding_understood(read: Option<Wedding>, today: NaiveDate) -> String {
    match read {
        Some(Wedding::Day(day)) => day_understood(Ok(day), today),
        Some(wedding) => dates::wedding(wedding),
        None => WEDDING_HINT.to_owned(),
    }
}

// Couples
pub const FIND: &str = "Find by any word";
pub const NOBODY_YET: &str = "Nobody is in the book yet.";
pub const NOBODY_FOUND: &str = "Nobody has all of these words. Try fewer of them.";
pub const SHOW_PUT_AWAY: &str = "Show couples put away";
pub const PUT_AWAY_MARK: &str = "put away";
pub const EXAMPLE_MARK: &str = "example";

pub fn show_more(left: usize) -> String {
    format!("Show {} more", format::count(left as i64))
}

// A new couple, and the people of one
pub const FIRST_NAME: &str = "First name";
pub const SECOND_NAME: &str = "Second name";
pub const SECOND_NAME_HINT: &str = "May stay empty.";
pub const REACH: &str = "Telephone or e-mail";
pub const REACH_HINT: &str = "One for now; more can be added later.";
pub const REACH_ANOTHER: &str = "Another telephone or e-mail";
pub const MET: &str = "Where you met";
pub const WEDDING: &str = "Wedding date";
pub const WEDDING_HINT: &str = "A day, a month or a year: 22 May 2027, May 2027, 2027, or not yet.";
pub const MAY_RECORD: &str = "May you write this down?";
pub const MAY_RECORD_HINT: &str = "A no keeps them on this phone and out of every file.";
pub const NOT_ASKED: &str = "Not asked";
pub const NOT_ASKED_YET: &str = "not asked yet";
pub const YES: &str = "Yes";
pub const NO: &str = "No";
pub const PEOPLE: &str = "Names and ways to reach them";
pub const PEOPLE_SHORT: &str = "Names";
pub const CALL: &str = "Call";
pub const WRITE: &str = "Write";

// A couple
pub const CHECKLIST: &str = "Checklist";
pub const ABOUT: &str = "About them";
pub const APPOINTMENTS: &str = "Appointments";
pub const NONE_YET: &str = "none yet";
pub const RECORDED: &str = "May be recorded";
pub const STAGE: &str = "Stage";
pub const NEXT: &str = "next";
pub const UNDO_LAST: &str = "Undo the last change";
pub const PUT_AWAY: &str = "Put away";
pub const BRING_BACK: &str = "Bring back";
pub const IS_PUT_AWAY: &str = "Put away: out of sight, and nothing is lost.";
pub const ALL_DONE: &str = "Everything is settled.";

/// The answer to whether they may be recorded, with its day.
pub fn recorded(agrees: bool, asked: NaiveDate) -> String {
    format!("{}, {}", if agrees { "yes" } else { "no" }, format::day(asked))
}

/// "Put away", as the notice says it.
pub fn was_put_away(names: &str) -> String {
    format!("{names}: put away")
}

pub fn was_brought_back(names: &str) -> String {
    format!("{names}: back in the book")
}

/// What saving a thing is called in the notice.
pub fn saved(what: &str) -> String {
    format!("{what} saved")
}

pub fn removed(what: &str) -> String {
    format!("{what} removed")
}

// Appointments
pub const NEW_APPOINTMENT: &str = "New appointment";
pub const APPOINTMENT: &str = "Appointment";
pub const DAY: &str = "Day";
pub const DAY_HINT: &str = "22 May 2027, 22/5/27, tomorrow or Thursday.";
pub const TIME: &str = "Time";
pub const TIME_HINT: &str = "14:30 or 2.30pm; may stay empty.";
pub const PLACE: &str = "Place";
pub const OUTCOME: &str = "What became of it";
pub const OUTCOME_OPEN: &str = "Not said yet";

// Recorded, stage, notes, read-back
pub const ASKED_ON: &str = "Asked on";
pub const RECORDED_WHY: &str = "Ask before you write more than a name. They may say no, see what is kept, and have it erased; your local law on \
personal data decides.";
pub const STAGE_DAY: &str = "Since";
pub const NOTES: &str = "Notes";
pub const NEW_NOTE: &str = "New note";
pub const NEW_NOTE_HINT: &str = "Wishes, not diagnoses: \u{201c}nickel-free wanted\u{201d} rather than the reason.";
pub const ADD_NOTE: &str = "Add note";
pub const READ_BACK: &str = "Read-back";
pub const READ_BACK_HOW: &str =
    "Read it out together. When both of you say yes, it is confirmed; anything changed later shows here.";
pub const READ_BACK_HELD: &str =
    "Two phones say different things of what stands here. Settle that first; then it can be confirmed.";
pub const READ_BACK_CONFIRM: &str = "We agree: confirmed today";
pub const READ_BACK_OPEN: &str = "open";

// Fingers, readings, rings, bands
pub const HAND: &str = "Hand";
pub const FINGER: &str = "Finger";
pub const FIRST_RING: &str = "First ring ever";
pub const FIRST_RING_HINT: &str = "A right size will feel tight at first. Say so; do not go up for that alone.";
pub const READINGS: &str = "Readings";
pub const READING: &str = "Reading";
pub const READ_SIZE: &str = "Size read";
pub const READ_SIZE_HINT: &str = "M½, M 1/2, 6 1/4, 54 or 16.9 mm.";
pub const READ_AS: &str = "That is";
pub const GAUGE: &str = "Gauge";
pub const MEASURED_AT: &str = "Measured at the";
pub const HANDS: &str = "Hands";
pub const BESIDE: &str = "Widths of rings worn beside it";
pub const BESIDE_HINT: &str = "In mm, like 2.6 and 2; empty for none.";
pub const ADD_READING: &str = "Add reading";
pub const DO_NOT_SIZE: &str = "Do not size a finger that is swollen or injured, or in pregnancy: measure again later.";
pub const NO_GAUGES: &str =
    "These are the usual sets (common practice). Write down your own gauges once, and they are offered instead.";
pub const TO_GAUGES: &str = "Your gauges";
pub const RINGS: &str = "Rings";
pub const NO_RINGS_SAID: &str = "None: no other ring for this finger.";
pub const NO_RINGS_BACK: &str = "Not so: ask again";
pub const NO_RINGS: &str = "No other ring for this finger";
pub const NEW_RING: &str = "Add a ring";
pub const RING: &str = "Ring";
pub const RING_NAME: &str = "What it is";
pub const RING_NAME_HINT: &str = "Engagement ring, signet, eternity ring.";
pub const SHOULDER_WIDTH: &str = "Width at three and nine o\u{2019}clock";
pub const SHOULDER_WIDTH_HINT: &str = "The band is matched to this width, not to the top.";
pub const TOP_WIDTH: &str = "Width at the top";
pub const PROFILE: &str = "Profile";
pub const METAL: &str = "Metal";
pub const FINISH: &str = "Surface";
pub const BAND_WIDTH: &str = "Width";
pub const NOT_SETTLED: &str = "Not settled";
pub const PLANNED: &str = "Still to come";
pub const PLANNED_HINT: &str = "Not worn yet: room is kept for it.";

pub const WHEN_WORN: &str = "Worn";
pub const WORN_NOW: &str = "Now";
pub const READ_AT: &str = "Read at the";
pub const BAND: &str = "Band";
pub const WHICH_SIZE: &str = "Choose which of these sizes is meant, or type it with its system, like UK M or US 6.";
pub const NICKEL: &str = "For anybody who wants it nickel-free: ask for the wish, not the reason, and have the bench confirm the alloy. \
In the EU a ring may give off at most 0.5 micrograms of nickel a square centimetre a week (REACH, Annex XVII, entry 27).";

/// "Engagement ring is 2.6 mm at three and nine o'clock: match that, not its top."
pub fn match_shoulders(name: &str, width: crate::trade::measure::Length) -> String {
    format!("{name}: {} mm at three and nine o\u{2019}clock. Match that, not its top.", super::lengths::plain(width))
}

/// What the read-back says of itself.
pub fn confirmed(day: NaiveDate, stale: bool) -> String {
    let day = format::day(day);
    if stale {
        format!("Confirmed on {day}, and something has changed since: read it back again.")
    } else {
        format!("Confirmed together on {day}.")
    }
}

/// The heading of a screen about one of the two: "Ines: finger".
pub fn of(name: &str, what: &str) -> String {
    format!("{name}: {what}")
}

/// What moving to a stage is called in the notice.
pub fn moved_to(stage: Stage) -> String {
    format!("Now {}", super::book::stage(stage))
}
