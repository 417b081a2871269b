//! The size system shown first, and the step in which the bench makes sizes.

use crate::archive::code::Code;
use crate::book::change::Write;
use crate::book::field::PracticeField;
use crate::book::practice::{Practice, USUAL_STEP, USUAL_SYSTEM};
use crate::book::settings;
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::trade::sizing::System;

pub const FIRST_SYSTEM: Key = Key::new("first-system");
pub const STEP: Key = Key::new("step");

/// What this form sets.
pub const FIELDS: [PracticeField; 2] = [PracticeField::FirstSystem, PracticeField::Step];

pub fn start(practice: Practice<'_>) -> Texts {
    Texts::default().with(FIRST_SYSTEM, practice.first_system().code()).with(STEP, practice.step().code())
}

/// The system that is chosen.
pub fn system(texts: &Texts) -> System {
    Reader::new(texts).choice(FIRST_SYSTEM).unwrap_or(USUAL_SYSTEM)
}

/// Reads the form, in which nothing can be wrong.
pub fn read(texts: &Texts) -> Vec<Write> {
    let step = Reader::new(texts).choice(STEP).unwrap_or(USUAL_STEP);
    vec![
        settings::first_system().unless_usual(system(texts), USUAL_SYSTEM),
        settings::step().unless_usual(step, USUAL_STEP),
    ]
}
