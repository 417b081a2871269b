//! Whether they agree to be recorded, and when they were asked.

use chrono::NaiveDate;

use crate::book::couple::Couple;
use crate::book::value::Recorded;
use crate::forms::complaint::Complaints;
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::forms::write;

pub const MAY_RECORD: Key = Key::new("may-record");
pub const ASKED: Key = Key::new("asked");

/// `day` writes a day as it is typed.
pub fn start(couple: Couple<'_>, today: NaiveDate, day: fn(NaiveDate) -> String) -> Texts {
    let known = couple.recorded();
    Texts::default()
        .with(MAY_RECORD, write::answer(known.map(|it| it.agrees)))
        .with(ASKED, day(known.map_or(today, |it| it.asked)))
}

/// Reads the form; none if they were not asked.
pub fn read(texts: &Texts, today: NaiveDate) -> Result<Option<Recorded>, Complaints> {
    let mut form = Reader::new(texts);
    let agrees = form.answer(MAY_RECORD);
    let asked = form.day(ASKED, today, today);
    form.checked(asked.map(|asked| agrees.map(|agrees| Recorded { agrees, asked })))
}
