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
pub const WHOLE_BOOK: &str = "Whole book";
pub const SOME_COUPLES: &str = "Some couples";
pub const SPREADSHEET: &str = "Spreadsheet";
pub const CHOOSE_COUPLES: &str = "Couples";
pub const NOBODY_CHOSEN: &str = "Choose at least one couple.";
pub const COPIES_HOW: &str = "A file that this app reads again, here or on another phone. It is not locked: whoever has it can \
                              read it.";
pub const SPREADSHEET_HOW: &str = "A table to look at. The app cannot read it again: it is no copy.";
pub const NOT_ENCRYPTED: &str = "Send it only to somebody who may know what stands in it.";
pub const DOWNLOAD: &str = "Download";
pub const SHARE_FILE: &str = "Share the file";
pub const DOWNLOADED: &str = "The file is among the downloads";
pub const FILE_SHARED: &str = "The file has left";
pub const FILE_NOT_SHARED: &str = "The file has not left.";
pub const SET_ASIDE_OUT: &str = "Download what could not be read";
pub const PUT_ASIDE: &str = "Put it aside for good";
pub const PUT_ASIDE_HOW: &str = "Where a file has the same couple whole: put the damaged record aside, then bring the file in. It stays on \
                                 this phone, and can still be downloaded here.";
pub const COPY_ONE: &str = "File of this couple";
pub const COPY_ONE_SMALL: &str = "for a colleague’s phone";

/// "Last copy Mon 23 Nov 2026." and what has been written since.
pub fn last_copy(last_day: Option<NaiveDate>, waiting: Option<NaiveDate>) -> String {
    let last = match last_day {
        Some(day) => format!("Last copy of the whole book: {}.", format::day(day)),
        None => "No copy of the whole book has left this phone yet.".to_owned(),
    };
    match waiting {
        Some(day) if last_day == Some(day) => format!("{last} What was written here after it is on this phone only."),
        Some(day) => format!("{last} What was written here since {} is on this phone only.", format::day(day)),
        None if last_day.is_none() => format!("{last} Nothing was written here."),
        None => format!("{last} Nothing was written here since."),
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
        let couples = format::counted(
            said_no as i64,
            "couple said no to being recorded and stays",
            "couples said no to being recorded and stay",
        );
        parts.push(format!("{couples} on this phone."));
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
pub const IN_CONFLICT: &str = "Differ from here: you choose afterwards";
pub const ERASED_THERE: &str = "Erased on the other phone";
pub const ERASED_THERE_WHY: &str =
    "Bringing this in erases them here too, with what only this phone knew. That cannot be taken back.";
pub const ERASED_COPY_FIRST: &str = "make a file of them first";
pub const LEFT_OUT: &str = "Left out";
pub const BRINGING_IN: &str = "Bringing it in.";
pub const LEAVE_IT: &str = "Leave it";
pub const TAKE_PRACTICE: &str = "Take over the settings of the practice too";
pub const TAKE_PRACTICE_HINT: &str = "Gauges, times and closed days, as after a lost phone.";
pub const CLAIMS_OURS: &str = "The file holds words under this phone’s own mark that this phone never wrote: another phone was set up \
                               from a copy of this one. Both are kept, and this phone takes a new mark.";
pub const UNDO_IMPORT: &str = "Take the import back";
pub const KEEP_IMPORT_HOW: &str = "What you changed since stays. What it erased stays erased.";

/// "Studio tablet wrote this file on Mon 23 Nov 2026."
pub fn from(who: &str, day: NaiveDate) -> String {
    format!("{who} wrote this file on {}.", format::day(day))
}

/// The button that takes it all in: so many couples come, so many go.
pub fn bring_in(count: usize, erased: usize) -> String {
    match (count, erased) {
        (0, 0) => "Bring it in".to_owned(),
        (count, 0) => format!("Bring in {}", couples_of(count)),
        (0, erased) => format!("Bring it in, erase {}", couples_of(erased)),
        (count, erased) => format!("Bring in {}, erase {}", couples_of(count), format::count(erased as i64)),
    }
}

/// What one field says here and in the file: "band, width: 2.5 mm here, 3 mm there".
pub fn here_and_there(field: &str, here: &str, there: &str) -> String {
    format!("{field}: {here} here, {there} in the file")
}

/// "2 couples to settle", and whether the settings are.
pub fn to_settle(couples: usize, settings: bool) -> String {
    match (couples, settings) {
        (0, true) => "The settings to settle".to_owned(),
        (couples, true) => format!("{} and the settings to settle", couples_of(couples)),
        (couples, false) => format!("{} to settle", couples_of(couples)),
    }
}

pub const REST_IS_HERE: &str = "The rest of the file is here already.";
pub const NOTHING_TO_SETTLE: &str = "Brought in: nothing of it has to be settled.";

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

/// "12 couples brought in on Wed 25 Nov 2026. Studio tablet wrote the file."
pub fn last_import(day: NaiveDate, who: &str, count: usize) -> String {
    format!("{} brought in on {}. {who} wrote the file.", couples_of(count), format::day(day))
}

// Erasing
pub const ERASE: &str = "Erase for good";
pub const ERASE_SMALL: &str = "when they ask for it";
pub const ERASE_WHAT: &str = "What goes";
pub const ERASE_HOW: &str = "This cannot be undone. A bare mark without names stays, so that an old file does not bring them back. \
                             On other phones it takes effect when they bring in a file of this one; files that have left \
                             already stay where they are.";
pub const ERASE_COPY_FIRST: &str = "A file of this couple first";
pub const ERASE_PUT_AWAY: &str = "Only out of sight? Then put them away instead: nothing is lost.";
pub const PUT_AWAY_INSTEAD: &str = "Put them away instead";
pub const IS_ERASED: &str = "They were erased for good. A bare mark without names is all that is left of them.";
pub const ERASE_SURE: &str = "I have read what goes";
pub const ERASE_NOW: &str = "Erase";

/// How much goes: readings, rings, appointments, notes, preparation lists and changes of a couple.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Goes {
    pub readings: usize,
    pub rings: usize,
    pub appointments: usize,
    pub notes: usize,
    pub lists: usize,
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
        (goes.lists, of(goes.lists, "list of theirs", "lists of theirs")),
    ];
    let said: Vec<String> = all.into_iter().filter(|(count, _)| *count > 0).map(|(_, said)| said).collect();
    let more = if said.is_empty() { String::new() } else { format!(", {}", said.join(", ")) };
    format!(
        "Everything about {names}: their names and every way to reach them{more}, and the history of {}.",
        of(goes.changes, "change", "changes")
    )
}

/// "2 entries that were joined with this one go with it."
pub fn erase_joined(count: usize) -> String {
    match count {
        1 => "The entry that was joined with this one goes with it.".to_owned(),
        count => format!("{} entries that were joined with this one go with it.", format::count(count as i64)),
    }
}

/// What the notice says once damaged records were put aside.
pub fn was_quarantined(count: usize) -> String {
    format!("{} put aside: a file can bring them in again", format::counted(count as i64, "record", "records"))
}
