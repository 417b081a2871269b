//! The band wanted: width, profile, surface and metal, each as far as it is settled.

use crate::archive::code::Code;
use crate::book::couple::Band;
use crate::forms::complaint::{Complaint, Complaints};
use crate::forms::reader::Reader;
use crate::forms::stack;
use crate::forms::texts::{Key, Texts};
use crate::forms::write;
use crate::trade::band::section::{Section, SectionError};
use crate::trade::band::{Bore, Profile};
use crate::trade::limits::{Limit, Whole};

pub const WIDTH: Key = Key::new("band-width");
pub const PROFILE: Key = Key::new("profile");
pub const FINISH: Key = Key::new("finish");
pub const METAL: Key = Key::new("metal");
pub const HEIGHT: Key = Key::new("height");
pub const DOME: Key = Key::new("dome");
pub const RELIEF: Key = Key::new("relief");

pub fn start(known: &Band) -> Texts {
    Texts::default()
        .with(WIDTH, write::optional_mm(known.width))
        .with(PROFILE, write::code_or_none(known.profile))
        .with(FINISH, write::code_or_none(known.finish))
        .with(METAL, write::metal(known.metal))
        .with(HEIGHT, write::optional_mm(known.height))
        .with(DOME, write::optional_mm(known.dome))
        .with(RELIEF, write::optional_mm(known.relief))
}

/// Which of its arcs a band of the profile that is chosen has: a dome, and a relief of its edges.
pub fn arcs(texts: &Texts) -> (bool, bool) {
    let profile = Profile::from_code(texts.get(PROFILE));
    let domed_bore = |profile: Profile| profile.bore() == Bore::Domed;
    (profile.is_some_and(Profile::is_domed_outside), profile.is_some_and(domed_bore))
}

/// Reads the form. What the profile does not ask is not kept. `place` is where the band lies, which nobody types here.
pub fn read(texts: &Texts, place: Option<Whole>) -> Result<Band, Complaints> {
    let mut form = Reader::new(texts);
    let profile: Option<Profile> = form.choice(PROFILE);
    let (has_dome, has_relief) = arcs(texts);
    let width = form.optional_length(WIDTH, Limit::BandWidth);
    let height = form.optional_length(HEIGHT, Limit::RingHeight);
    let dome = if has_dome { form.optional_length(DOME, Limit::DomeHeight) } else { Some(None) };
    let relief = if has_relief { form.optional_length(RELIEF, Limit::EdgeRelief) } else { Some(None) };
    let band = (|| {
        let (width, height, dome, relief) = (width?, height?, dome?, relief?);
        if let Some(made) = width.and_then(|width| stack::section(width, profile, height, (dome, relief))) {
            let at = match &made {
                Ok(_) | Err(SectionError::Nothing) => HEIGHT,
                Err(_) if has_dome => DOME,
                Err(_) => RELIEF,
            };
            form.note(at, made.map_err(Complaint::Section))?;
        }
        let (finish, metal) = (form.choice(FINISH), form.metal(METAL));
        Some(Band { width, profile, finish, metal, height, dome, relief, place })
    })();
    form.checked(band)
}

/// The cut through the band as it is typed so far, if it is one. A dome or a relief that cannot be read is left out.
pub fn section(texts: &Texts) -> Option<Section> {
    let mut form = Reader::new(texts);
    let (dome, relief) = (form.length(DOME, Limit::DomeHeight), form.length(RELIEF, Limit::EdgeRelief));
    let (width, height) = (form.length(WIDTH, Limit::BandWidth)?, form.length(HEIGHT, Limit::RingHeight)?);
    stack::section(width, form.choice(PROFILE), Some(height), (dome, relief))?.ok()
}
