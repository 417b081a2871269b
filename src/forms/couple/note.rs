//! A note.

use crate::forms::complaint::Complaints;
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::trade::limits::Limit;

pub const NOTE: Key = Key::new("note");

pub fn start() -> Texts {
    Texts::default().with_blank([NOTE])
}

pub fn read(texts: &Texts) -> Result<String, Complaints> {
    let mut form = Reader::new(texts);
    let note = form.note_text(NOTE, Limit::NoteText);
    form.checked(note)
}
