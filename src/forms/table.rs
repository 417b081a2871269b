//! The table of sizes, to look up and to print: of which scale, in which steps, on which paper.

use super::texts::{Key, Texts};
use crate::archive::code::Code;
use crate::trade::paper::Paper;
use crate::trade::sizing::{Step, System};

pub const FIRST: Key = Key::new("first");
pub const STEP: Key = Key::new("step");
pub const PAPER: Key = Key::new("paper");

/// What was chosen. A word that stands for nothing counts as the most usual: UK letters, in halves, on A4.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TableTyped {
    pub first: System,
    pub step: Step,
    pub paper: Paper,
}

/// What the form starts with: the practice's own scale and steps.
pub fn start(first: System, step: Step) -> Texts {
    Texts::default().with(FIRST, first.code()).with(STEP, step.code()).with(PAPER, Paper::A4.code())
}

/// Reads the form: it is picked, and nothing in it can be wrong.
pub fn read(texts: &Texts) -> TableTyped {
    TableTyped {
        first: System::from_code(texts.get(FIRST)).unwrap_or(System::Uk),
        step: Step::from_code(texts.get(STEP)).unwrap_or(Step::Half),
        paper: Paper::from_code(texts.get(PAPER)).unwrap_or(Paper::A4),
    }
}
