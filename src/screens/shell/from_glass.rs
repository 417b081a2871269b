//! A ring that was measured on the glass, on its way to the form of a reading.

use crate::app::address::{Address, Part};
use crate::app::route::go_instead;
use crate::archive::code::Code;
use crate::book::id::RecordId;
use crate::forms::reading;
use crate::storage::typed;
use crate::trade::measure::Length;
use crate::trade::wearer::Wearer;

/// The name under which half-typed words of a reading are kept.
pub fn draft(id: RecordId, wearer: Wearer) -> String {
    format!("reading.{id}.{}", wearer.code())
}

/// Takes a ring that was measured on the glass along to the form of a reading, as one that they wear.
pub fn write_down_from_glass(id: RecordId, wearer: Wearer, size: String, off: Length) {
    let name = draft(id, wearer);
    let mut words = typed::kept(&name).unwrap_or_default();
    words.extend(reading::from_glass(size, off).into_pairs().into_iter().map(|(key, text)| (key.to_owned(), text)));
    // Where the phone does not take them they last as long as this page, and the form says so.
    typed::keep(&name, &words);
    go_instead(&Address::Part(id, Part::Finger(wearer)).to_string());
}
