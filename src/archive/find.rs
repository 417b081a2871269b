//! A preparation list among other words: in a file, or in a message that was pasted as a whole.
//!
//! Messengers wrap lines, bend quotes, swap spaces and eat asterisks. So in a message the list is written with plain
//! letters, digits and the signs of JSON only, and without a single space: whatever else is found in it when it comes
//! back is damage, and is taken out again.

use serde_json::{Value as Json, from_str};

use super::file;
use super::list::{LIMIT, ListError, read_json, write};
use crate::book::preparation_list::PreparationList;

/// So many places where a list may begin are looked at.
const BEGINNINGS: usize = 16;
/// No list is nested deeper.
const DEEPEST: usize = 8;
/// The head of a file of the book is not longer, in signs.
const HEAD: usize = 1000;
/// What stands before what a field of a record holds.
const VALUE: &str = "\"value\":";

/// A list as one line that survives being sent in a message.
pub fn write_line(said: &PreparationList) -> String {
    let text = write(said);
    let mut line = String::with_capacity(text.len() * 2);
    let mut inside = false;
    let mut escaped = false;
    for c in text.chars() {
        if !inside {
            inside = c == '"';
            line.push(c);
        } else if escaped {
            escaped = false;
            line.push(c);
        } else if c == '"' {
            inside = false;
            line.push(c);
        } else if c == '\\' {
            escaped = true;
            line.push(c);
        } else if c.is_ascii_alphanumeric() || c == '.' || c == '-' || c == ':' {
            line.push(c);
        } else {
            for unit in c.encode_utf16(&mut [0; 2]) {
                line.push_str(&format!("\\u{unit:04x}"));
            }
        }
    }
    line
}

/// The list in a file, or in a message, whatever stands round it.
pub fn read(bytes: &[u8]) -> Result<PreparationList, ListError> {
    let text = text(bytes)?;
    let text = text.trim_start_matches('\u{FEFF}').trim();
    if text.is_empty() {
        return Err(ListError::Empty);
    }
    if let Ok(json @ (Json::Object(_) | Json::Array(_))) = from_str(text) {
        let said = read_json(json)?;
        // What is carried through has to fit into a record, which may not be nested without end either.
        return object(text).0.map(|_| said);
    }
    let mut why = ListError::NoList;
    let unbent: String = text.chars().filter_map(unbend).collect();
    for text in [text, &unbent] {
        let mut from = 0;
        for _ in 0..BEGINNINGS {
            let Some(at) = text[from..].find('{').map(|at| from + at) else { break };
            let rest = &text[at..];
            if is_book(rest) {
                return Err(ListError::OtherKind);
            }
            let (object, len) = object(rest);
            let read = object.and_then(|object| from_str(object).map_err(|_| ListError::Damaged));
            // A brace in a sentence begins no list.
            let is_object = read.is_ok() || looks_like_an_object(rest);
            // What stands inside of an object is a part of it. After one that is cut off, another may begin.
            let is_passed = is_object && read != Err(ListError::CutOff);
            from = at + if is_passed { len } else { 1 };
            match read.and_then(read_json) {
                Ok(said) if !is_value(&text[..at]) => return Ok(said),
                Ok(_) | Err(ListError::OtherKind) => return Err(ListError::OtherKind),
                Err(error) if is_object => why = worse(why, error),
                Err(_) => {}
            }
        }
    }
    let deep = text.starts_with('[') && object(text).0 == Err(ListError::TooDeep);
    Err(if deep { ListError::TooDeep } else { why })
}

/// Whether a file of the book begins here, whole or cut off: it says so before its first record.
fn is_book(text: &str) -> bool {
    let signs = text.chars().skip(1).filter_map(unbend);
    let head: String = signs.take_while(|sign| *sign != '{').take(HEAD).collect();
    head.contains(&format!("\"kind\":\"{}\"", file::KIND))
}

/// Whether what comes next is what a field of a record holds.
fn is_value(before: &str) -> bool {
    let signs = before.chars().rev().filter_map(unbend);
    signs.take(VALUE.len()).eq(VALUE.chars().rev())
}

fn text(bytes: &[u8]) -> Result<std::borrow::Cow<'_, str>, ListError> {
    if bytes.len() > LIMIT {
        return Err(ListError::TooLarge);
    }
    if bytes.starts_with(b"PK\x03\x04") {
        return Err(ListError::Zip);
    }
    let start = &bytes[..bytes.len().min(64)];
    let every_other = |from| start.len() > 3 && start.iter().skip(from).step_by(2).all(|byte| *byte == 0);
    if start.starts_with(&[0xFF, 0xFE]) || start.starts_with(&[0xFE, 0xFF]) || every_other(0) || every_other(1) {
        return Err(ListError::Utf16);
    }
    if bytes.contains(&0) {
        return Err(ListError::NotText);
    }
    Ok(String::from_utf8_lossy(bytes))
}

/// Of two complaints the one that says more.
fn worse(one: ListError, other: ListError) -> ListError {
    let says = |why| match why {
        ListError::NoList => 0,
        ListError::NotOurs => 1,
        ListError::Damaged => 2,
        ListError::CutOff => 3,
        _ => 4,
    };
    if says(other) > says(one) { other } else { one }
}

/// What a character of a list was before it was sent; none for one that was added on the way.
fn unbend(c: char) -> Option<char> {
    match c {
        '\u{201C}'..='\u{201F}' | '\u{AB}' | '\u{BB}' | '\u{2033}' | '\u{FF02}' => Some('"'),
        '\u{2010}'..='\u{2015}' | '\u{2212}' => Some('-'),
        c if c.is_ascii_alphanumeric() => Some(c),
        '{' | '}' | '[' | ']' | ':' | ',' | '"' | '\\' | '.' | '-' => Some(c),
        _ => None,
    }
}

/// The object that the text begins with, up to its closing brace, and how long it is: one that is cut off is all of it.
fn object(text: &str) -> (Result<&str, ListError>, usize) {
    let (mut depth, mut inside, mut escaped) = (0_usize, false, false);
    let mut deepest = 0;
    let or_too_deep = |deepest: usize, found| if deepest > DEEPEST { Err(ListError::TooDeep) } else { found };
    for (at, c) in text.char_indices() {
        match c {
            _ if escaped => escaped = false,
            '\\' if inside => escaped = true,
            '"' => inside = !inside,
            '{' | '[' if !inside => {
                depth += 1;
                deepest = deepest.max(depth);
            }
            '}' | ']' if !inside => {
                depth = depth.saturating_sub(1);
                if depth == 0 {
                    return (or_too_deep(deepest, Ok(&text[..=at])), at + 1);
                }
            }
            _ => {}
        }
    }
    (or_too_deep(deepest, Err(ListError::CutOff)), text.len())
}

fn looks_like_an_object(text: &str) -> bool {
    let mut signs = text.chars().skip(1).filter_map(unbend);
    matches!(signs.next(), Some('"' | '{' | '[' | '}') | None)
}
