//! Values as texts of a form: as somebody would type them, and so that they read back as they were.

use crate::archive::code::Code;
use crate::trade::band::alloys::Alloy;
use crate::trade::measure::Length;
use crate::trade::sizing::SizeAsRead;

/// What stands for a choice that nobody has made.
pub const NONE: &str = "none";

/// A length as a plain decimal, to the last figure that is kept: "2.5", "-0.3125".
pub fn mm(length: Length) -> String {
    let units = length.in_tenthousandths();
    let (whole, rest) = (units.unsigned_abs() / 10_000, units.unsigned_abs() % 10_000);
    let sign = if units < 0 { "-" } else { "" };
    let decimals = format!("{rest:04}");
    let decimals = decimals.trim_end_matches('0');
    if decimals.is_empty() { format!("{sign}{whole}") } else { format!("{sign}{whole}.{decimals}") }
}

/// A length, or nothing.
pub fn optional_mm(length: Option<Length>) -> String {
    length.map(mm).unwrap_or_default()
}

/// The widths of some rings: "2.6 and 2".
pub fn widths(all: &[Length]) -> String {
    all.iter().map(|width| mm(*width)).collect::<Vec<_>>().join(" and ")
}

/// The word of a choice, or the one for none.
pub fn code_or_none<T: Code>(of: Option<T>) -> String {
    of.map_or(NONE, T::code).to_owned()
}

/// The word of a metal, or the one for none.
pub fn metal(of: Option<&Alloy>) -> String {
    of.map_or(NONE, |alloy| alloy.code).to_owned()
}

/// The word of a ticked box.
pub fn yes(is: bool) -> String {
    if is { "yes" } else { "" }.to_owned()
}

/// A size as it was typed; none for one that came without its text.
pub fn size(size: &SizeAsRead) -> Option<String> {
    let typed = size.typed.trim();
    (!typed.is_empty()).then(|| typed.to_owned())
}
