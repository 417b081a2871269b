//! One band of the tray.

use crate::archive::code::Code;
use crate::book::value::TryOnBand;
use crate::forms::complaint::Complaints;
use crate::forms::reader::Reader;
use crate::forms::size::code_of_reading;
use crate::forms::texts::{Key, Texts};
use crate::forms::write;
use crate::trade::band::Bore;
use crate::trade::limits::Limit;
use crate::trade::sizing::System;

pub use crate::forms::reading::{SIZE, SIZE_AS};

pub const NUMBER: Key = Key::new("try-on-number");
pub const WIDTH: Key = Key::new("try-on-width");
pub const BORE: Key = Key::new("try-on-bore");
pub const HEIGHT: Key = Key::new("try-on-height");

/// A band that is known, or a new one.
pub fn start(known: Option<&TryOnBand>) -> Texts {
    Texts::default()
        .with(NUMBER, known.map(|it| it.number.clone()).unwrap_or_default())
        .with(SIZE, known.map(|it| write::size(&it.size)).unwrap_or_default())
        .with(SIZE_AS, known.map(|it| code_of_reading(&it.size)).unwrap_or_default())
        .with(WIDTH, write::optional_mm(known.map(|it| it.width)))
        .with(BORE, known.map_or(Bore::Flat, |it| it.bore).code())
        .with(HEIGHT, write::optional_mm(known.and_then(|it| it.height)))
}

pub fn read(texts: &Texts, first: System) -> Result<TryOnBand, Complaints> {
    let mut form = Reader::new(texts);
    let number = form.needed(NUMBER, Limit::NameText);
    let size = form.meant_size(SIZE, SIZE_AS, first);
    let width = form.length(WIDTH, Limit::GaugeWidth);
    let height = form.optional_length(HEIGHT, Limit::TryOnHeight);
    let bore = form.choice(BORE);
    let band = (|| Some(TryOnBand { number: number?, width: width?, bore: bore?, height: height?, size: size? }))();
    form.checked(band)
}
