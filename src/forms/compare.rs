//! Bands side by side: up to four of them.

use super::complaint::{Complaint, Complaints};
use super::reader::Reader;
use super::stack::section;
use super::texts::{Key, Texts};
use super::write;
use crate::book::arcs;
use crate::book::couple::Band;
use crate::trade::limits::Limit;

/// The fields of one band.
pub struct BandKeys {
    pub width: Key,
    pub thickness: Key,
    pub profile: Key,
    pub metal: Key,
    pub finish: Key,
}

impl BandKeys {
    pub fn all(&self) -> [Key; 5] {
        [self.width, self.thickness, self.profile, self.metal, self.finish]
    }
}

macro_rules! keys {
    ($n:literal) => {
        BandKeys {
            width: Key::new(concat!("band", $n, "-width")),
            thickness: Key::new(concat!("band", $n, "-height")),
            profile: Key::new(concat!("band", $n, "-profile")),
            metal: Key::new(concat!("band", $n, "-metal")),
            finish: Key::new(concat!("band", $n, "-finish")),
        }
    };
}

pub const BANDS: [BandKeys; 4] = [keys!(1), keys!(2), keys!(3), keys!(4)];

/// One of the bands, as far as it could be read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BandTyped {
    /// Which of the form it is, from one.
    pub number: usize,
    pub band: Band,
    /// Nothing of it has to be put right.
    pub is_whole: bool,
}

/// The first of them is the band as it is chosen so far.
pub fn start(band: &Band) -> Texts {
    let mut texts = Texts::default();
    for (at, keys) in BANDS.iter().enumerate() {
        let band = if at == 0 { *band } else { Band::default() };
        texts.set(keys.width, write::optional_mm(band.width));
        texts.set(keys.thickness, write::optional_mm(band.height));
        texts.set(keys.profile, write::code_or_none(band.profile));
        texts.set(keys.metal, write::metal(band.metal));
        texts.set(keys.finish, write::code_or_none(band.finish));
    }
    texts
}

/// Reads every band that has a width. A dome and a relief that are known of the band chosen so far belong to one of the
/// same width, thickness and profile alone.
pub fn read(texts: &Texts, chosen: &Band) -> (Vec<BandTyped>, Complaints) {
    let mut form = Reader::new(texts);
    let mut all = Vec::new();
    for (at, keys) in BANDS.iter().enumerate() {
        if form.is_blank(keys.width) {
            continue;
        }
        let width = form.length(keys.width, Limit::BandWidth);
        let thickness = form.optional_length(keys.thickness, Limit::RingHeight);
        let band = Band {
            width,
            height: thickness.flatten(),
            profile: form.choice(keys.profile),
            metal: form.metal(keys.metal),
            finish: form.choice(keys.finish),
            place: chosen.place,
            ..Band::default()
        };
        let (dome, relief) = arcs::known_for(chosen, &band);
        let band = Band { dome, relief, ..band };
        let Some(width) = width else { continue };
        // A dome or a relief that does not fit is the usual one for this width and thickness.
        let made = section(width, band.profile, band.height, (dome, relief));
        let made = made.map_or(Ok(()), |made| made.map(|_| ()).map_err(Complaint::Section));
        let fits = form.note(keys.thickness, made).is_some();
        all.push(BandTyped { number: at + 1, band, is_whole: fits && thickness.is_some() });
    }
    (all, form.complaints())
}
