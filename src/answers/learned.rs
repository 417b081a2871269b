//! What the bands that have been worn say about the constants of the fit.

use crate::book::change::Write;
use crate::book::couple::Couple;
use crate::book::practice::{Practice, customary};
use crate::book::value::Constant;
use crate::book::worn_bands::bands_worn;
use crate::forms::setup::fit;
use crate::trade::fit::{Figure, Learned, Score, learn};
use crate::trade::measure::Length;

/// A constant as it was learned, with its give or take, beside the customary one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    pub constant: Constant,
    pub value: Length,
    pub sd: Length,
    pub customary: Figure<Length>,
}

#[derive(Clone, Debug, PartialEq)]
pub struct LearnedAnswer {
    /// Of so many bands.
    pub bands: usize,
    pub rows: [Row; 3],
    pub score: Option<Score>,
    /// What is written down to use it; none where the form would not take all of it.
    pub writes: Option<Vec<Write>>,
}

pub fn of_couples<'a>(couples: impl Iterator<Item = Couple<'a>>, practice: Practice<'_>) -> LearnedAnswer {
    answer(&learn(&bands_worn(couples, practice)))
}

fn answer(found: &Learned) -> LearnedAnswer {
    let row = |((constant, value), (_, sd))| Row { constant, value, sd, customary: customary(constant) };
    let (rows, writes) = (fit::learned(found).map(row), fit::use_learned(found));
    LearnedAnswer { bands: found.bands, rows, score: found.score, writes }
}
