//! The widths of some rings in one field.

use super::number::{NumberError, read_length};
use super::plain::plain;
use crate::trade::limits::Limit;
use crate::trade::measure::Length;

/// Why a text is no list of widths.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum WidthsError {
    Number(NumberError),
    TooMany {
        most: usize,
    },
    /// "2,2": one ring with a decimal comma, or two with a comma between them.
    OneOrTwo {
        one: Length,
        two: [Length; 2],
    },
}

/// The widths of some rings, "2.6 and 2", "2.6; 2" or "2.6, 2", at most so many; none for an empty text.
///
/// A comma with a space behind it stands between two rings. Without one, and with one digit on either side and nothing
/// else in the text, it may be either: then it is asked.
///
/// ```
/// use bandwright::trade::entry::{WidthsError, read_widths};
/// assert_eq!(read_widths("2.6 and 2", 9).unwrap().len(), 2);
/// assert!(matches!(read_widths("2,2", 9), Err(WidthsError::OneOrTwo { .. })));
/// ```
pub fn read_widths(text: &str, most: usize) -> Result<Vec<Length>, WidthsError> {
    let width = |part: &str| read_length(part, Limit::RingWidth).map_err(WidthsError::Number);
    if let Some((first, second)) = digits_about_a_comma(&plain(text)) {
        let both = (width(&first.to_string()), width(&second.to_string()));
        // "0,8" is no two rings: none is so narrow.
        if let (Ok(one), (Ok(first), Ok(second))) = (width(&format!("{first}.{second}")), both) {
            return Err(WidthsError::OneOrTwo { one, two: [first, second] });
        }
    }
    let text = text.replace(" and ", ";").replace(", ", ";");
    let parts = text.split([';', '&', '+']).map(str::trim).filter(|part| !part.is_empty());
    let widths: Vec<Length> = parts.map(width).collect::<Result<_, _>>()?;
    if widths.len() > most { Err(WidthsError::TooMany { most }) } else { Ok(widths) }
}

fn digits_about_a_comma(text: &str) -> Option<(char, char)> {
    let mut chars = text.trim_end_matches("MM").trim().chars();
    match (chars.next(), chars.next(), chars.next(), chars.next()) {
        (Some(first), Some(','), Some(second), None) if first.is_ascii_digit() && second.is_ascii_digit() => {
            Some((first, second))
        }
        _ => None,
    }
}
