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
