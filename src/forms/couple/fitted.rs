//! What fitted in the end: whether the band was kept as it was or resized, and its size then.

use chrono::NaiveDate;

use crate::book::couple::Couple;
use crate::book::value::FittedAt;
use crate::forms::complaint::Complaints;
use crate::forms::reader::Reader;
use crate::forms::size::code_of_reading;
use crate::forms::texts::{Key, Texts};
use crate::forms::write;
use crate::trade::sizing::System;
use crate::trade::wearer::Wearer;

pub const HOW: Key = Key::new("fitted-how");
pub const SIZE: Key = Key::new("fitted-size");
pub const SIZE_AS: Key = Key::new("fitted-as");

pub const KEPT: &str = "kept";
pub const RESIZED: &str = "resized";

/// What is known; before that, the size that was ordered.
pub fn start(couple: Couple<'_>, who: Wearer) -> Texts {
    let known = couple.fitted(who);
    let ordered = || couple.order_size(who).map(|it| write::of_size(it.size)).unwrap_or_default();
    Texts::default()
        .with(HOW, if known.is_some_and(|it| it.resized) { RESIZED } else { KEPT })
        .with(SIZE, known.map_or_else(ordered, |it| write::size(&it.size)))
        .with(SIZE_AS, known.map(|it| code_of_reading(&it.size)).unwrap_or_default())
}

pub fn read(texts: &Texts, first: System, today: NaiveDate) -> Result<FittedAt, Complaints> {
    let mut form = Reader::new(texts);
    let size = form.meant_size(SIZE, SIZE_AS, first);
    let resized = form.text(HOW) == RESIZED;
    form.checked(size.map(|size| FittedAt { size, resized, noted: today }))
}
