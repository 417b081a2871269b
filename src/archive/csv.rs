//! Comma-separated values for a spreadsheet: RFC 4180, UTF-8 with its mark, so that names keep their letters.
//!
//! Spreadsheets take a cell that begins like a formula for one, and a telephone number for a number. A cell that begins
//! so gets an apostrophe before it, as a person would type it; a telephone number keeps its digits, its plus and its
//! nought, by the space in it.

/// What stands before the first line.
pub const MARK: &str = "\u{feff}";

/// One line of cells.
pub fn line(cells: &[String]) -> String {
    let cells: Vec<String> = cells.iter().map(|text| cell(text)).collect();
    cells.join(",") + "\r\n"
}

/// One cell. Every cell is quoted: then nothing in it can end it.
fn cell(text: &str) -> String {
    format!("\"{}\"", inert(text).replace('"', "\"\""))
}

/// The text as a spreadsheet shows it and does not work it out.
fn inert(text: &str) -> String {
    if is_telephone(text) {
        return match text.split_at_checked(5) {
            Some((front, rest)) if !text.trim().contains(' ') => format!("{front} {rest}"),
            _ => text.to_owned(),
        };
    }
    let first = text.chars().find(|c| !c.is_whitespace() && !c.is_control());
    let begins_so = |c: char| matches!(c, '=' | '+' | '-' | '@' | '\u{ff1d}' | '\u{ff0b}' | '\u{ff0d}' | '\u{ff20}');
    if first.is_some_and(begins_so) || text.starts_with(['\t', '\r', '\n']) {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}

/// Digits and spaces, perhaps after a plus, and long enough: without a space inside it would be taken for a number.
fn is_telephone(text: &str) -> bool {
    let digits = text.strip_prefix('+').unwrap_or(text);
    let is_plain =
        digits.starts_with(|c: char| c.is_ascii_digit()) && digits.bytes().all(|b| b.is_ascii_digit() || b == b' ');
    is_plain && (text.trim().len() > 9 || text.trim().contains(' '))
}
