//! Two rings side by side: which of them is likely to lose metal, and why. Never how long it takes.

use crate::trade::band::alloys::{Alloy, Family};
use crate::trade::measure::{Length, Standing};

/// A ring as its neighbour feels it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Surface {
    pub alloy: Option<&'static Alloy>,
    pub height: Option<Length>,
    /// Stones down its sides or shoulders, where the neighbour rubs.
    pub stones: bool,
}

/// Which of the two is likely to lose metal.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Loses {
    First,
    Second,
    /// About as much as each other.
    Alike,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Why {
    /// The same alloy: the safe advice.
    SameAlloy,
    /// White gold beside platinum: in one published test the platinum lost two to three times less volume.
    PlatinumKeepsMore,
    Harder,
    Denser,
    /// Different alloys that are about as hard and as dense.
    NearlyAlike,
}

/// What two neighbours do to each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Wear {
    /// None where an alloy is not known.
    pub metal: Option<(Loses, Why, Standing)>,
    /// Stones of one that rub on the metal of the other, which is the one named; both where both have stones.
    pub stones: Option<Loses>,
    /// Heights that differ by more than the threshold: they catch and wear claws.
    pub catches: Option<Length>,
    /// Different colours: fine, and some upkeep.
    pub colours: bool,
}

impl Wear {
    /// Whether a ring is likely to lose metal, or two catch.
    pub fn is_a_caution(&self) -> bool {
        let loses = self.metal.is_some_and(|(loses, ..)| loses != Loses::Alike);
        loses || self.stones.is_some() || self.catches.is_some()
    }
}

/// Harder by more than this counts as harder.
const CLEARLY_HARDER: u32 = 115;
/// Denser by more than this counts as denser.
const CLEARLY_DENSER: u32 = 110;

/// What two neighbours do to each other.
///
/// Same alloy: alike. White gold beside platinum: the gold (published). Otherwise the softer where the hardness differs
/// by more than 15 %, else the less dense where the density differs by more than 10 % (common practice, and no better
/// than the hardness of both is known).
///
/// ```
/// use bandwright::trade::{band::alloys::by_code, measure::{Length, Standing}, stack::*};
/// let of = |code| Surface { alloy: by_code(code), height: None, stones: false };
/// let found = wear(&of("white-750"), &of("platinum-950"), Length::from_mm(0.4));
/// assert_eq!(found.metal, Some((Loses::First, Why::PlatinumKeepsMore, Standing::Published)));
/// ```
pub fn wear(first: &Surface, second: &Surface, catch: Length) -> Wear {
    let stones = match (first.stones, second.stones) {
        (true, true) => Some(Loses::Alike),
        (true, false) => Some(Loses::Second),
        (false, true) => Some(Loses::First),
        (false, false) => None,
    };
    let apart = first.height.zip(second.height).map(|(a, b)| (a - b).abs());
    let alloys = first.alloy.zip(second.alloy);
    Wear {
        metal: alloys.map(|(a, b)| metal(a, b)),
        stones,
        catches: apart.filter(|apart| *apart > catch),
        colours: alloys.is_some_and(|(a, b)| a.family.colour() != b.family.colour()),
    }
}

fn metal(first: &Alloy, second: &Alloy) -> (Loses, Why, Standing) {
    if first.code == second.code {
        return (Loses::Alike, Why::SameAlloy, Standing::CommonPractice);
    }
    match (first.family, second.family) {
        (Family::WhiteGold, Family::Platinum) => return (Loses::First, Why::PlatinumKeepsMore, Standing::Published),
        (Family::Platinum, Family::WhiteGold) => return (Loses::Second, Why::PlatinumKeepsMore, Standing::Published),
        _ => {}
    }
    let less = |first: u16, second: u16, clearly: u32| {
        let (first, second) = (u32::from(first) * 100, u32::from(second) * 100);
        let clearly = |high: u32, low: u32| high * 100 > low * clearly;
        if clearly(second, first) {
            Some(Loses::First)
        } else if clearly(first, second) {
            Some(Loses::Second)
        } else {
            None
        }
    };
    let softer = less(first.hardness.0, second.hardness.0, CLEARLY_HARDER).map(|loses| (loses, Why::Harder));
    let lighter = || less(first.density.0, second.density.0, CLEARLY_DENSER).map(|loses| (loses, Why::Denser));
    let (loses, why) = softer.or_else(lighter).unwrap_or((Loses::Alike, Why::NearlyAlike));
    (loses, why, Standing::CommonPractice.max(first.standing).max(second.standing))
}
