//! Ways to reach somebody: a telephone number or an e-mail address.

use super::plain::{digit, is_invisible};

/// A way to reach somebody.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Contact {
    /// As typed, with plain digits.
    Phone(String),
    /// As typed; to be encoded before it becomes part of a link.
    Email(String),
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ContactError {
    Empty,
    TooLong,
    /// It looks like a telephone number and has fewer than five digits or more than twenty.
    PhoneDigits,
    /// It has an @ and is no address.
    BadEmail,
    /// Neither.
    Neither,
}

impl Contact {
    /// As it was typed.
    pub fn text(&self) -> &str {
        match self {
            Contact::Phone(text) | Contact::Email(text) => text,
        }
    }

    /// What a telephone dials: the digits, with the plus before them if there is one. Of an address, nothing.
    pub fn dials(&self) -> Option<String> {
        match self {
            Contact::Phone(text) => Some(text.chars().filter(|c| c.is_ascii_digit() || *c == '+').collect()),
            Contact::Email(_) => None,
        }
    }
}

/// A telephone number (digits, spaces, brackets, dashes, a plus before them) or an e-mail address.
///
/// ```
/// use bandwright::trade::entry::{Contact, read_contact};
/// assert_eq!(read_contact("+44 (0)113 496 0000").unwrap().dials().as_deref(), Some("+4401134960000"));
/// assert_eq!(read_contact("mara@example.org"), Ok(Contact::Email("mara@example.org".into())));
/// ```
pub fn read_contact(text: &str) -> Result<Contact, ContactError> {
    let text = text.trim();
    if text.chars().nth(MOST_CHARS).is_some() {
        return Err(ContactError::TooLong);
    }
    let text: String = text.chars().filter(|c| !is_invisible(*c)).collect();
    if text.is_empty() {
        Err(ContactError::Empty)
    } else if text.contains('@') {
        if is_email(&text) { Ok(Contact::Email(text)) } else { Err(ContactError::BadEmail) }
    } else {
        phone(&text)
    }
}

/// The longest address that mail carries (RFC 5321).
const MOST_CHARS: usize = 254;

fn phone(text: &str) -> Result<Contact, ContactError> {
    let text: String = text.chars().map(plain_sign).collect();
    let (plus, rest) = text.strip_prefix('+').map_or((false, text.as_str()), |rest| (true, rest));
    if !rest.chars().all(|c| c.is_ascii_digit() || matches!(c, ' ' | '(' | ')' | '-')) {
        return Err(ContactError::Neither);
    }
    match rest.chars().filter(char::is_ascii_digit).count() {
        0 if !plus => Err(ContactError::Neither),
        5..=20 => Ok(Contact::Phone(text)),
        _ => Err(ContactError::PhoneDigits),
    }
}

fn plain_sign(c: char) -> char {
    match c {
        '\u{FF0B}' => '+',
        '\u{2010}' | '\u{2011}' | '\u{2013}' | '\u{2212}' | '\u{FF0D}' => '-',
        '\u{FF08}' => '(',
        '\u{FF09}' => ')',
        c if c.is_whitespace() && !c.is_control() => ' ',
        c => digit(c).unwrap_or(c),
    }
}

/// Something, an @, and something with a dot inside; no spaces, no second @, nothing that would end the address.
fn is_email(text: &str) -> bool {
    let Some((name, place)) = text.split_once('@') else { return false };
    let parts = |text: &str, allowed: fn(char) -> bool| {
        text.split('.').all(|part| !part.is_empty() && part.chars().all(allowed))
    };
    let in_name = |c: char| c.is_alphanumeric() || "!#$%&'*+-/=?^_`{|}~".contains(c);
    let in_place = |c: char| c.is_alphanumeric() || c == '-';
    place.contains('.') && parts(name, in_name) && parts(place, in_place)
}
