//! What is said when the phone's storage does not do what was asked: what happened, and what to do.

use chrono::NaiveDate;

use crate::archive::row::RowError;
use crate::storage::error::StorageError;

/// Saving failed. What was typed is still on the screen.
pub fn not_saved(error: &StorageError) -> String {
    let what = match error {
        StorageError::Denied => {
            "this browser does not let the page store anything. Leave private browsing, or allow site data, then save again"
        }
        StorageError::Full => "the phone's storage is full. Free some room, then save again",
        StorageError::Newer => {
            "a newer version of Bandwright is open. Close the other tabs, reload this one, then save again"
        }
        StorageError::Lost => "the connection to the phone's storage was lost. Save again",
        StorageError::Unreadable(_) => "the record on this phone cannot be read, so nothing was written over it",
        StorageError::Gone => {
            "it is no longer in the phone's storage, which was cleared, or it was taken back in another tab. What this page shows can still leave: make a copy before you close it"
        }
        StorageError::Erased => "this couple has been erased meanwhile, in another tab or by an import",
        StorageError::Failed(_) => "the phone's storage refused it. Save again; if that fails, reload the page",
    };
    format!("Not saved: {what}. What you typed is still here.")
}

/// The book could not be opened.
pub fn not_opened(error: &StorageError) -> String {
    match error {
        StorageError::Denied => {
            "This browser does not let the page store anything. Leave private browsing, or allow site data for this page, and try again.".to_owned()
        }
        StorageError::Full => "The phone's storage is full. Free some room and try again; the book itself is untouched.".to_owned(),
        StorageError::Newer => {
            "A newer version of Bandwright has already opened this book. Close the other tabs and load this page again.".to_owned()
        }
        StorageError::Lost => "The connection to the phone's storage was lost. Try again; the book itself is untouched.".to_owned(),
        StorageError::Unreadable(why) => format!("The book's own register cannot be read ({}). Nothing was changed.", row_error(*why)),
        StorageError::Gone => "The book was cleared from the phone while it was being opened. Try again.".to_owned(),
        StorageError::Erased => "The couple has been erased meanwhile; the book itself is untouched.".to_owned(),
        StorageError::Failed(words) => format!("The phone's storage did not open ({words}). Try again; the book itself is untouched."),
    }
}

/// The book does not open yet.
pub const HELD_UP: &str = "An older version of Bandwright is open in another tab and holds the book. Close that tab: this one goes on by itself. Until then copies are made there.";
pub const SLOW: &str = "This takes long, as a large book may on an older phone. What you saved is still there.";
/// What was brought in is put in its places before the book opens.
pub const ARRIVING: &str =
    "What you brought in last is all here and is being put in its places. The book opens by itself.";

// A form
pub const TYPED_ELSEWHERE: &str = "This form is open in another tab too, with words that are not saved. They stay there; what you type here is kept apart.";
pub const CHANGED_MEANWHILE: &str = "Something else was saved here meanwhile. To save this takes its place.";
pub const TYPED_UNKEPT: &str =
    "This phone does not keep half-typed words just now. Save them before you close or reload this page.";

// What can still leave a phone whose book does not open
pub const RESCUE: &str = "What can still leave this phone";
pub const RESCUE_LOOKING: &str = "Looking for what can be read.";
pub const RESCUE_HOW: &str = "The file holds the book as far as it can be read. Bandwright reads it again, on another \
                              phone or in another browser: Practice, Copies, Bring in a file.";
pub const RESCUE_BOOK: &str = "Download the book";
pub const RESCUE_NOTHING: &str = "Nothing of the book can be read from here just now.";
pub const RESCUE_UNREADABLE: &str = "Download what could not be read";
pub const RESCUE_TYPED: &str = "Typed and not saved";
pub const RESCUE_TYPED_OUT: &str = "Download these words";
pub const RESCUE_NOT_IN_BOOK: &str = "Not in the book yet";
pub const RENEW: &str = "Begin a new register";
pub const RENEW_HOW: &str = "The register says which phone this is. The couples do not need it: with a new one the book \
                             opens again, and this phone goes on as if it were another. The old register is kept \
                             beside it.";

/// Where settings of several phones are here.
pub const RENEW_WHICH: &str = "More than one phone’s settings are here, and only the register said which are this \
                               phone’s. The others stay beside them.";
pub const RENEW_WITH_NONE: &str = "Begin a new register, with none of these settings";

/// "Begin a new register, with the settings of Studio tablet at Quay fair, last set on Wed 25 Nov 2026".
pub fn renew_with(phones: &[String], fair: Option<&str>, day: NaiveDate) -> String {
    let of = if phones.is_empty() { String::new() } else { format!(" of {}", phones.join(", ")) };
    let fair = fair.map(|fair| format!(" at {fair}")).unwrap_or_default();
    format!("{RENEW}, with the settings{of}{fair}, last set on {}", super::format::day(day))
}

/// "12 couples can be read." and who stays.
pub fn rescued(couples: usize, said_no: usize, examples: usize) -> String {
    let stay = super::copies::stay(said_no, examples);
    let read = format!("{} can be read and may leave.", super::copies::couples_of(couples));
    if stay.is_empty() { read } else { format!("{read} {stay}") }
}

/// A field's name in the app, as people may read it: "first name".
pub fn typed_field(key: &str) -> String {
    key.replace(['-', '.', '_'], " ")
}

/// Why a record cannot be read.
pub fn row_error(why: RowError) -> String {
    match why {
        RowError::NotJson => "it is cut off or damaged".to_owned(),
        RowError::NotARecord => "it is not a record of this app".to_owned(),
        RowError::Newer(major) => format!("it was written by a newer version of the app, format {major}"),
        RowError::Damaged => "a part of it is missing or damaged".to_owned(),
    }
}

/// Some records were set aside.
pub fn quarantined(count: usize) -> String {
    let records = if count == 1 { "One record".to_owned() } else { format!("{count} records") };
    format!("{records} on this phone could not be read. Nothing was changed in it; it is kept as it is.")
}

/// How full the storage is.
pub fn room(used_bytes: Option<f64>, quota_bytes: Option<f64>) -> String {
    match (used_bytes, quota_bytes) {
        (Some(used), Some(quota)) if quota > 0.0 => {
            format!("{} of {} used", bytes(used), bytes(quota))
        }
        (Some(used), _) => format!("{} used", bytes(used)),
        _ => "this browser does not say how full its storage is".to_owned(),
    }
}

pub fn persistent(persistent: Option<bool>) -> &'static str {
    match persistent {
        Some(true) => "The browser keeps this book until you delete it.",
        Some(false) => {
            "The browser may clear this book if the phone runs short of room. Install the app, or ask the browser to keep it."
        }
        None => "This browser does not say whether it may clear the book by itself.",
    }
}

/// "340 kB", "1.2 MB".
pub fn size(bytes: f64) -> String {
    self::bytes(bytes)
}

fn bytes(bytes: f64) -> String {
    if bytes < 1_000_000.0 {
        format!("{:.0} kB", (bytes / 1000.0).ceil())
    } else if bytes < 1_000_000_000.0 {
        format!("{:.1} MB", bytes / 1_000_000.0)
    } else {
        format!("{:.1} GB", bytes / 1_000_000_000.0)
    }
}
