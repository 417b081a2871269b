//! Names, lines and notes.

use super::plain::is_invisible;
use crate::trade::limits::{self, Amount, Limit, Whole};

/// What was wrong with a text, and which text it was to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct TextError {
    pub limit: Limit,
    pub fault: TextFault,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TextFault {
    /// Nothing to be seen, where something must be.
    Empty,
    TooLong,
    /// A character that controls instead of being read, or a line break in a single line.
    Control,
    /// A character that turns the direction of what follows and so can disguise it.
    Direction,
}

/// One line as typed, without the spaces at its ends; blank is none.
pub fn read_text(text: &str, limit: Limit) -> Result<Option<String>, TextError> {
    read(text, limit, char::is_control)
}

/// One line that must not be blank.
pub fn read_needed(text: &str, limit: Limit) -> Result<String, TextError> {
    read_text(text, limit)?.ok_or(TextError { limit, fault: TextFault::Empty })
}

/// Several lines as typed, without the spaces at the ends; every kind of line break becomes the plain one.
pub fn read_note(text: &str, limit: Limit) -> Result<Option<String>, TextError> {
    let text = text.replace("\r\n", "\n").replace('\r', "\n");
    read(&text, limit, |c| c.is_control() && c != '\n' && c != '\t')
}

fn read(text: &str, limit: Limit, refused: fn(char) -> bool) -> Result<Option<String>, TextError> {
    let error = |fault| Err(TextError { limit, fault });
    let text = text.trim();
    if text.chars().all(|c| c.is_whitespace() || is_invisible(c)) {
        return Ok(None);
    }
    if text.chars().any(refused) {
        return error(TextFault::Control);
    }
    if text.chars().any(turns_direction) {
        return error(TextFault::Direction);
    }
    let length = u16::try_from(text.chars().count()).map_or(u16::MAX, |count| count);
    if !limits::of(limit).holds(Amount::Characters(Whole(length))) {
        return error(TextFault::TooLong);
    }
    Ok(Some(text.to_owned()))
}

/// Embeddings, overrides and isolates; the plain direction marks are kept, names are written with them.
pub(super) fn turns_direction(c: char) -> bool {
    matches!(c, '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}')
}
