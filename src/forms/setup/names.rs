//! Two forms of one name each: the fair of today, and what a phone is called.

use crate::book::change::Write;
use crate::book::id::InstallationId;
use crate::book::practice::Practice;
use crate::book::settings;
use crate::forms::complaint::Complaints;
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};

pub const FAIR: Key = Key::new("fair");
pub const PHONE_NAME: Key = Key::new("phone-name");

pub fn start_fair(practice: Practice<'_>) -> Texts {
    Texts::default().with(FAIR, practice.fair().unwrap_or_default())
}

pub fn read_fair(texts: &Texts) -> Result<Write, Complaints> {
    let mut form = Reader::new(texts);
    let fair = form.optional_line(FAIR);
    form.checked(fair.map(|fair| settings::fair().write(fair)))
}

pub fn start_phone(practice: Practice<'_>, phone: InstallationId) -> Texts {
    Texts::default().with(PHONE_NAME, practice.phone_name(phone).unwrap_or_default())
}

pub fn read_phone(texts: &Texts, phone: InstallationId) -> Result<Write, Complaints> {
    let mut form = Reader::new(texts);
    let name = form.optional_name(PHONE_NAME);
    form.checked(name.map(|name| settings::phone_name(phone).write(name)))
}
