//! Where the couple stands, and since when.

use chrono::NaiveDate;

use crate::archive::code::Code;
use crate::book::couple::Couple;
use crate::book::value::Stage;
use crate::forms::complaint::Complaints;
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};

pub const STAGE: Key = Key::new("stage");
pub const SINCE: Key = Key::new("since");

/// `day` writes a day as it is typed.
pub fn start(couple: Couple<'_>, today: NaiveDate, day: fn(NaiveDate) -> String) -> Texts {
    Texts::default().with(STAGE, couple.stage().code()).with(SINCE, day(today))
}

/// Reads the form: the stage, and the day on which it was reached. `now` is where the couple stands until then.
pub fn read(texts: &Texts, now: Stage, today: NaiveDate) -> Result<(Stage, NaiveDate), Complaints> {
    let mut form = Reader::new(texts);
    let stage = form.choice(STAGE).unwrap_or(now);
    let since = form.day(SINCE, today, today);
    form.checked(since.map(|since| (stage, since)))
}
