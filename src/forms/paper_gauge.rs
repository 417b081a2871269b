//! The paper gauge: what is printed, what its control line measures, and what was read on it.

use super::complaint::Complaints;
use super::reader::Reader;
use super::size::SizeTyped;
use super::texts::{Key, Texts};
use crate::trade::limits::Limit;
use crate::trade::paper::{Paper, Print};
use crate::trade::sizing::System;

pub const FIRST: Key = Key::new("first");
pub const PAPER: Key = Key::new("paper");
/// What the line on the print measures.
pub const LINE: Key = Key::new("line");
pub const BY: Key = Key::new("by");
pub const READ: Key = Key::new("read");
pub const READ_AS: Key = Key::new("as");

/// The words for what was read with.
pub const BY_STRIP: &str = "strip";
pub const BY_CIRCLE: &str = "circle";

/// What a size was read with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReadWith {
    /// A strip round a finger.
    Strip,
    /// A circle that a ring was laid on.
    Circle,
}

/// What was typed about a print, as far as it could be read.
#[derive(Clone, Debug, PartialEq)]
pub struct PaperTyped {
    /// The scale that is printed.
    pub first: System,
    pub paper: Paper,
    /// None while its line was not measured.
    pub print: Option<Print>,
    pub with: ReadWith,
    pub read: SizeTyped,
}

/// What the form starts with: the practice's own scale.
pub fn start(first: System) -> Texts {
    Texts::default()
        .with(FIRST, first.code())
        .with(PAPER, Paper::A4.code())
        .with_blank([LINE])
        .with(BY, BY_STRIP)
        .with_blank([READ, READ_AS])
}

/// Reads the form.
pub fn read(texts: &Texts) -> (PaperTyped, Complaints) {
    let mut form = Reader::new(texts);
    let first = form.choice(FIRST).unwrap_or(System::Uk);
    let typed = PaperTyped {
        first,
        paper: Paper::from_code(form.text(PAPER)).unwrap_or_default(),
        print: form.optional_length(LINE, Limit::ControlLine).flatten().map(Print::new),
        with: if form.text(BY) == BY_STRIP { ReadWith::Strip } else { ReadWith::Circle },
        read: form.optional_size(READ, READ_AS, first).flatten().unwrap_or_default(),
    };
    (typed, form.complaints())
}
