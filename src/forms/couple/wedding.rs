//! The wedding, as far as it is known.

use chrono::NaiveDate;

use crate::forms::complaint::Complaints;
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::trade::dates::wedding::Wedding;

pub const WEDDING: Key = Key::new("wedding");

/// `written` writes a wedding as it is typed.
pub fn start(known: Option<Wedding>, written: fn(Wedding) -> String) -> Texts {
    Texts::default().with(WEDDING, known.map(written).unwrap_or_default())
}

/// Reads the form. What is known may be in the past by now, and stays: as long as nobody types, it is not read again.
pub fn read(
    texts: &Texts,
    known: Option<Wedding>,
    written: fn(Wedding) -> String,
    today: NaiveDate,
) -> Result<Option<Wedding>, Complaints> {
    if *texts == start(known, written) {
        return Ok(known);
    }
    let mut form = Reader::new(texts);
    let wedding = form.optional_wedding(WEDDING, today);
    form.checked(wedding)
}
