//! Words of copies and of what leaves the phone: the specification, files out and in, what became of them.

use super::format;
use chrono::NaiveDate;

// On the couple's page
pub const HAND_OVER: &str = "Hand over and keep";
pub const SPECIFICATION: &str = "Specification for the bench";
pub const SPECIFICATION_SMALL: &str = "as text, to send or to copy";

// The specification
pub const CALLED: &str = "Call them by";
pub const NAMES: &str = "Names";
pub const INITIALS: &str = "Initials";
pub const COPY_TEXT: &str = "Copy the text";
pub const SHARE: &str = "Share";
pub const COPIED: &str = "Copied";
pub const NOT_COPIED: &str = "This browser would not copy. The text is selected: hold it and choose copy.";
pub const SHARED: &str = "Handed to the share sheet";
pub const NOT_SHARED: &str = "Nothing was sent.";
pub const SPECIFICATION_STAYS: &str = "They said no to being recorded, so nothing about them leaves this phone: there \
                                       is no text to send. If they have changed their mind, write that down first.";
pub const EXAMPLE_STAYS: &str = "An invented example: it can be looked at and is sent to nobody.";
pub const TO_RECORDED: &str = "May be recorded";

// Today's reminder
pub const MAKE_ONE: &str = "Make a copy";

/// Changes have waited for a week.
pub fn nothing_since(day: NaiveDate) -> String {
    format!(
        "What was written since {} is on this phone only: if the phone is lost, so is that. Let a copy leave it.",
        format::day(day)
    )
}

// The list under Practice
pub const COPIES: &str = "Copies";
pub const COPIES_SMALL: &str = "files out, files in";
pub const NEVER: &str = "never made";

pub fn brought_in() -> String {
    "Brought in".to_owned()
}

pub fn import_undone() -> String {
    "The import was taken back".to_owned()
}

pub fn erased() -> String {
    "Erased for good".to_owned()
}

// Files out
pub const WHAT_LEAVES: &str = "What leaves";
pub const WHOLE_BOOK: &str = "The whole book";
pub const SOME_COUPLES: &str = "Some couples";
pub const SPREADSHEET: &str = "For a spreadsheet";
pub const CHOOSE_COUPLES: &str = "Couples";
pub const NOBODY_CHOSEN: &str = "Choose at least one couple.";
pub const COPIES_HOW: &str = "A file that this app reads again, here or on another phone. It is not locked: whoever has it can \
                              read it.";
pub const SPREADSHEET_HOW: &str = "A table to look at. The app cannot read it again: it is no copy.";
pub const NOT_ENCRYPTED: &str = "Send it only to somebody who may know what these couples said.";
pub const DOWNLOAD: &str = "Download";
pub const SHARE_FILE: &str = "Share the file";
pub const DOWNLOADED: &str = "The file is among the downloads";
pub const FILE_SHARED: &str = "The file has left";
pub const FILE_NOT_SHARED: &str = "The file has not left.";
pub const SET_ASIDE_OUT: &str = "Download what could not be read";
pub const COPY_ONE: &str = "File of this couple";
pub const COPY_ONE_SMALL: &str = "for a colleague’s phone";

/// "Last copy Mon 23 Nov 2026." and what has been written since.
pub fn last_copy(last: Option<NaiveDate>, waiting: Option<NaiveDate>) -> String {
    let last = match last {
        Some(day) => format!("Last copy of the whole book: {}.", format::day(day)),
        None => "No copy of the whole book has left this phone yet.".to_owned(),
    };
    match waiting {
        Some(day) => format!("{last} What was written since {} is on this phone only.", format::day(day)),
        None => format!("{last} Nothing was written since."),
    }
}

pub fn making(percent: u8) -> String {
    format!("Making the file: {percent} %")
}

pub fn reading(percent: u8) -> String {
    format!("Reading: {percent} %")
}

/// "12 couples, 340 kB."
pub fn ready(couples: usize, bytes: usize) -> String {
    format!("{}, {}.", couples_of(couples), super::storage::size(bytes as f64))
}

/// Who stays behind, and why.
pub fn stay(said_no: usize, examples: usize) -> String {
    let mut parts = Vec::new();
    if said_no > 0 {
        parts.push(format!("{} said no to being recorded and stay on this phone.", couples_of(said_no)));
    }
    if examples > 0 {
        let examples = format::counted(examples as i64, "invented example stays", "invented examples stay");
        parts.push(format!("{examples} here too."));
    }
    parts.join(" ")
}

pub fn couples_of(count: usize) -> String {
    format::counted(count as i64, "couple", "couples")
}

// Files in
pub const BRING_IN: &str = "Bring in a file";
pub const BRING_IN_SMALL: &str = "from another phone, or a copy of this one";
pub const BRING_IN_HOW: &str = "You see what it would bring before anything changes. What two people wrote is kept side by side; \
                                nothing is written over.";
pub const CHOOSE_FILE: &str = "Choose a file";
pub const PASTE: &str = "Or paste its text";
pub const LOOK_AT_IT: &str = "Look at it";
pub const NOT_READ: &str = "The phone would not hand over this file. Choose it again.";
pub const NOTHING_NEW: &str = "Everything in it is here already.";
pub const NEW_HERE: &str = "New here";
pub const CHANGED_HERE: &str = "Here, and the file knows more";
pub const IN_CONFLICT: &str = "Say something else than here: to be settled afterwards";
pub const ERASED_THERE: &str = "Erased on the other phone";
pub const ERASED_THERE_WHY: &str = "They are erased here too. That cannot be taken back.";
pub const LEFT_OUT: &str = "Left out";
pub const LEAVE_IT: &str = "Leave it";
pub const TAKE_PRACTICE: &str = "Take over the settings of the practice too";
pub const TAKE_PRACTICE_HINT: &str = "Gauges, times and closed days, as after a lost phone.";
pub const CLAIMS_OURS: &str = "The file holds words under this phone’s own mark that this phone never wrote: another phone was set up \
                               from a copy of this one. Both are kept, and this phone takes a new mark.";
pub const UNDO_IMPORT: &str = "Take the import back";
pub const KEEP_IMPORT_HOW: &str = "What you changed since stays. What it erased stays erased.";

/// "From Studio tablet, written Mon 23 Nov 2026."
pub fn from(who: &str, day: NaiveDate) -> String {
    format!("From {who}, written {}.", format::day(day))
}

/// The button that takes it all in.
pub fn bring_in(count: usize) -> String {
    match count {
        0 => "Bring it in".to_owned(),
        count => format!("Bring in {}", couples_of(count)),
    }
}

/// "3 couples are the same here."
pub fn same(count: usize) -> String {
    format!("{} the same here.", format::counted(count as i64, "record is", "records are"))
}

pub fn erased_here(count: usize) -> String {
    format!("{} erased on this phone and stay so.", format::counted(count as i64, "couple was", "couples were"))
}

/// "Entry 3: it is cut off or damaged".
pub fn left_out(at: usize, why: &str) -> String {
    format!("Entry {}: {why}.", format::count(at as i64))
}

/// A clock that was wrong.
pub fn far_off(who: &str, day: NaiveDate, ahead: bool) -> String {
    let when = if ahead { "in the future" } else { "long past" };
    let whose = if ahead { "its clock or this phone’s is wrong" } else { "its clock was wrong" };
    format!("{who} wrote under a date {when}, {}: {whose}. Only the shown time is affected.", format::day(day))
}

/// "and 140 more".
pub fn and_more(count: usize) -> String {
    format!("and {} more", format::count(count as i64))
}

/// "Brought in Wed 25 Nov 2026 from Studio tablet: 12 couples."
pub fn last_import(day: NaiveDate, who: &str, count: usize) -> String {
    format!("Brought in {} from {who}: {}.", format::day(day), couples_of(count))
}

// Erasing
pub const ERASE: &str = "Erase for good";
pub const ERASE_SMALL: &str = "when they ask for it";
pub const ERASE_WHAT: &str = "What goes";
pub const ERASE_HOW: &str = "This cannot be undone. A bare mark without names stays, so that an old file does not bring them back. \
                             On other phones it takes effect when they bring in a file of this one; files that have left \
                             already stay where they are.";
pub const ERASE_COPY_FIRST: &str = "A file of this couple first";
pub const ERASE_PUT_AWAY: &str = "Only out of sight? Put them away instead: nothing is lost then.";
pub const ERASE_SURE: &str = "I have read what goes";
pub const ERASE_NOW: &str = "Erase";

/// How much goes: readings, rings, appointments, notes and changes of a couple.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Goes {
    pub readings: usize,
    pub rings: usize,
    pub appointments: usize,
    pub notes: usize,
    pub changes: usize,
}

/// "Both names, every way to reach them, 2 readings, 1 ring, and the history of 14 changes."
pub fn goes(names: &str, goes: Goes) -> String {
    let of = |count: usize, one, many| format::counted(count as i64, one, many);
    let all = [
        (goes.readings, of(goes.readings, "reading", "readings")),
        (goes.rings, of(goes.rings, "ring", "rings")),
        (goes.appointments, of(goes.appointments, "appointment", "appointments")),
        (goes.notes, of(goes.notes, "note", "notes")),
    ];
    let said: Vec<String> = all.into_iter().filter(|(count, _)| *count > 0).map(|(_, said)| said).collect();
    let more = if said.is_empty() { String::new() } else { format!(", {}", said.join(", ")) };
    format!(
        "Everything about {names}: their names and every way to reach them{more}, and the history of {}.",
        of(goes.changes, "change", "changes")
    )
}
