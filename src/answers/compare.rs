//! Bands side by side: what the order size and the stack answer for each, everything but the band as it is.

use super::order::size_to_make;
use super::stack::{self, StackAnswer, StackRules};
use crate::book::couple::{Band, Couple};
use crate::book::fit_basis::{FitBasis, FitRules};
use crate::book::practice::Practice;
use crate::forms::compare::BandTyped;
use crate::forms::stack::StackTyped;
use crate::trade::band::Finish;
use crate::trade::band::section::Section;
use crate::trade::measure::Length;
use crate::trade::sizing::Size;
use crate::trade::wearer::Wearer;

/// What all bands share: the other rings, the curve that was chosen, and what the order size rests on.
#[derive(Clone, Debug, PartialEq)]
pub struct Shared {
    pub stack: StackTyped,
    pub stack_rules: StackRules,
    /// None without a couple.
    pub fit: Option<FitBasis>,
    pub fit_rules: FitRules,
    /// The band as it is chosen so far.
    pub chosen: Band,
}

impl Shared {
    pub fn of(couple: Option<(Couple<'_>, Wearer)>, practice: Practice<'_>) -> Shared {
        Shared {
            stack: StackTyped::recorded(couple, &practice.house()),
            stack_rules: StackRules::of(practice),
            fit: couple.map(|(couple, who)| FitBasis::of(couple, who)),
            fit_rules: FitRules::of(practice),
            chosen: couple.map(|(couple, who)| couple.band(who)).unwrap_or_default(),
        }
    }
}

/// One band as it would be.
#[derive(Clone, Debug, PartialEq)]
pub struct Alternative {
    pub number: usize,
    pub band: Band,
    pub section: Option<Section>,
    /// None without a couple.
    pub size: Option<Result<Size, NoSize>>,
    pub stack: StackAnswer,
    pub resizing: Option<NoResizing>,
}

/// What an order size lacks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoSize {
    pub profile_known: bool,
    pub has_reading: bool,
}

/// Why a band cannot be resized later, or hardly.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoResizing {
    StonesAllRound,
    HardMetal,
}

/// What becomes of each band. The stack, with the curve that was chosen for the couple, is the one that the stack's own
/// page has for that band; so is the order size.
pub fn alternatives(bands: &[BandTyped], shared: &Shared) -> Vec<Alternative> {
    bands.iter().map(|typed| alternative(typed, shared)).collect()
}

fn alternative(typed: &BandTyped, shared: &Shared) -> Alternative {
    let band = typed.band;
    let with_band = shared.stack.with_band(&band);
    let with_band = StackTyped { is_whole: with_band.is_whole && typed.is_whole, ..with_band };
    let stack = stack::answer(&with_band, &shared.stack_rules);
    let size = shared.fit.as_ref().map(|fit| {
        let found = size_to_make(&fit.clone().with_band(&band), shared.fit_rules);
        found.ok_or(NoSize { profile_known: band.profile.is_some(), has_reading: !fit.readings.is_empty() })
    });
    Alternative {
        number: typed.number,
        section: stack.section_of_band(),
        size,
        stack,
        resizing: no_resizing(&band),
        band,
    }
}

fn no_resizing(band: &Band) -> Option<NoResizing> {
    if band.finish == Some(Finish::SetAllRound) {
        Some(NoResizing::StonesAllRound)
    } else if band.metal.is_some_and(|alloy| alloy.hard) {
        Some(NoResizing::HardMetal)
    } else {
        None
    }
}

/// The width of the widest: all are drawn to its scale.
pub fn widest(all: &[Alternative]) -> Length {
    all.iter().map(|it| it.band.width.unwrap_or_default()).max().unwrap_or_default()
}
