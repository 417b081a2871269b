//! What is typed into the couple's own list. Nothing of it is refused: it is kept as it stands, and said where it could
//! not be understood.

use chrono::NaiveDate;

use crate::book::asks::{Ask, Kind};
use crate::book::preparation_list::{AnswerError, check};
use crate::trade::dates::entry::{DateEntryError, read_wedding};
use crate::trade::entry::read_length;
use crate::trade::limits::Limit;

/// Why an answer is not understood.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotUnderstood {
    Wedding(DateEntryError),
    Answer(AnswerError),
}

/// What could not be understood of an answer, if anything; nothing is wrong with a blank one.
pub fn not_understood(ask: Ask, text: &str, today: NaiveDate) -> Option<NotUnderstood> {
    if text.trim().is_empty() {
        return None;
    }
    match ask.row().kind {
        Kind::Wedding => read_wedding(text, today).err().map(NotUnderstood::Wedding),
        Kind::Name | Kind::Line | Kind::Width | Kind::Note | Kind::Choice(_) => {
            check(ask, text).err().map(NotUnderstood::Answer)
        }
    }
}

/// Whether a width is written otherwise than as a figure that a ring can have, 0.5 to 25 mm. It is taken as it is.
pub fn is_no_width(ask: Ask, text: &str) -> bool {
    ask.row().kind == Kind::Width && !text.trim().is_empty() && read_length(text, Limit::RingWidth).is_err()
}
