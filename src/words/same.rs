//! One couple under two ids: what is asked, and what comes of it.

pub const SAME: &str = "The same couple?";
pub const TWICE: &str = "Perhaps here twice";
pub const JOINED: &str = "Joined with another entry";
pub const THESE_TWO: &str = "These two entries";
pub const SAME_HOW: &str = "Two entries with the same names, and weddings that can be on one day.";
pub const JOIN_HOW: &str = "Joined, what either knows stands in one entry. Where they say different things both are kept, \
                            and you choose. The other entry is put away, and all of it can be taken apart again.";
pub const JOIN: &str = "One couple: join them";
pub const SETTLE_FIRST: &str = "Settle what differs in one of them first";
pub const TWO: &str = "Two couples";
pub const NOBODY: &str = "No other entry looks like this couple.";
pub const THIS_ENTRY: &str = "This entry";
pub const OTHER_ENTRY: &str = "The other entry";
pub const IS_JOINED: &str = "Joined";
pub const IS_JOINED_HOW: &str = "What was known of them stands in one of the two entries. The other is put away.";
pub const TAKE_OVER: &str = "Take over what came since";
pub const TAKE_APART: &str = "Take them apart";
pub const PUT_AWAY: &str = "put away";

// In the preview of a file
pub const PERHAPS_HERE: &str = "New, but perhaps here already";
pub const PERHAPS_HERE_WHY: &str = "Same names, and weddings that can be on one day. Nothing of them is mixed: open one \
                                    of them afterwards to join the two, or to say that they are two couples.";

pub fn joined() -> String {
    "Joined".to_owned()
}

pub fn taken_apart() -> String {
    "Taken apart".to_owned()
}

pub fn said_two() -> String {
    "Two couples: noted".to_owned()
}

/// "First written: This phone, Wed 25 Nov 2026, 10:00."
pub fn first_written(who_and_when: &str) -> String {
    format!("First written: {who_and_when}.")
}
