//! A list of a couple's answers that came as a message.

use crate::archive::find;
use crate::archive::list::ListError;
use crate::book::value::PreparationList;
use crate::forms::texts::{Key, Texts};

pub const MESSAGE: Key = Key::new("message");

pub fn start() -> Texts {
    Texts::default().with_blank([MESSAGE])
}

/// The list in the message, or why there is none in it; nothing for an empty field.
pub fn read(texts: &Texts) -> Option<Result<PreparationList, ListError>> {
    let text = texts.get(MESSAGE);
    (!text.trim().is_empty()).then(|| find::read(text.as_bytes()))
}
