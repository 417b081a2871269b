//! Values as texts of a form: as somebody would type them, and so that they read back as they were.

use chrono::{NaiveTime, Timelike};

use crate::archive::code::Code;
use crate::trade::band::alloys::Alloy;
use crate::trade::dates::spread::Spread;
use crate::trade::measure::{Circumference, Length};
use crate::trade::sizing::{Size, SizeAsRead, Stated, System};

/// What stands for a choice that nobody has made.
pub const NONE: &str = "none";

/// What stands for a question that nobody has asked.
pub const NOT_ASKED: &str = "not-asked";

/// A length as a plain decimal, to the last figure that is kept: "2.5", "-0.3125".
pub fn mm(length: Length) -> String {
    let units = length.in_tenthousandths();
    let (whole, rest) = (units.unsigned_abs() / 10_000, units.unsigned_abs() % 10_000);
    let sign = if units < 0 { "-" } else { "" };
    let decimals = format!("{rest:04}");
    let decimals = decimals.trim_end_matches('0');
    if decimals.is_empty() { format!("{sign}{whole}") } else { format!("{sign}{whole}.{decimals}") }
}

/// A figure that was computed, to the hundredth, as it is shown.
pub fn to_hundredths(length: Length) -> Length {
    Length::from_mm((length.mm() * 100.0).round() / 100.0)
}

/// A length, or nothing.
pub fn optional_mm(length: Option<Length>) -> String {
    length.map(mm).unwrap_or_default()
}

/// A whole number: of days, or of parts in a hundred.
pub fn whole(number: u16) -> String {
    number.to_string()
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

/// The word of an answer, or the one for a question that nobody has asked.
pub fn answer(of: Option<bool>) -> String {
    match of {
        Some(true) => "yes",
        Some(false) => "no",
        None => NOT_ASKED,
    }
    .to_owned()
}

/// The words of several choices, as a group of boxes has them: "mon tue fri".
pub fn codes<T: Code>(all: impl IntoIterator<Item = T>) -> String {
    all.into_iter().map(T::code).collect::<Vec<_>>().join(" ")
}

/// A time of day, or nothing: "14:30".
pub fn optional_time(of: Option<NaiveTime>) -> String {
    of.map(|time| format!("{:02}:{:02}", time.hour(), time.minute())).unwrap_or_default()
}

/// The least, the usual and the most working days, or nothing for each.
pub fn spread(of: Option<Spread>) -> [String; 3] {
    let days = of.map(|spread| [spread.least(), spread.usual(), spread.most()].map(|days| days.0.to_string()));
    days.unwrap_or_default()
}

/// A size as it would be typed again: as it was, or else with its system: "UK M½", "US 6¼", "17.25 mm across".
pub fn size(size: &SizeAsRead) -> String {
    let typed = size.typed.trim();
    if !typed.is_empty() {
        return typed.to_owned();
    }
    match size.stated {
        Stated::Size(size) => of_size(size),
        Stated::Diameter(diameter) => format!("{} mm across", mm(diameter.0)),
        Stated::Circumference(round) => circumference(round),
    }
}

/// A size in millimetres, to the hundredth: "17.20 mm". Whether it is across or round is plain from how long it is.
pub fn size_in_mm(size: Length) -> String {
    let hundredths = to_hundredths(size).in_tenthousandths() / 100;
    format!("{}.{:02} mm", hundredths / 100, hundredths % 100)
}

/// "53.125 mm round".
pub fn circumference(round: Circumference) -> String {
    format!("{} mm round", mm(round.0))
}

/// A size with its system: "UK M½", "US 6¼", "Japan 14", "17.25 mm across".
pub fn of_size(size: Size) -> String {
    let system = match size.system() {
        System::Diameter => return format!("{} mm across", mm(size.circumference().diameter().0)),
        System::Circumference => return circumference(size.circumference()),
        System::Uk => "UK",
        System::Us => "US",
        System::Iso => "ISO",
        System::Japan => "Japan",
        System::Italy => "Italy",
    };
    const Z: i32 = 25;
    let (whole, quarters) = (size.quarters().div_euclid(4), size.quarters().rem_euclid(4));
    let fraction = ["", "¼", "½", "¾"].get(quarters as usize).copied().unwrap_or_default();
    match (size.system(), u8::try_from(whole).ok().filter(|_| whole <= Z)) {
        (System::Uk, Some(place)) => format!("{system} {}{fraction}", char::from(b'A' + place)),
        (System::Uk, None) => format!("{system} Z+{}{fraction}", whole - Z),
        _ => format!("{system} {whole}{fraction}"),
    }
}
