//! The alloys a band can be made of: a code that files keep, and what it is. Names for people are in `words`.
//!
//! Codes are our own and stay as they are: records hold them. Finenesses are the legal ones of the Hallmarking
//! Act 1973 where a metal has them. Densities are those of the usual recipe by the mixture rule, 100 / sum(w / rho);
//! a maker's own recipe differs by some per cent. White golds of 585 and 750 are those with palladium, without nickel.

use crate::trade::measure::Standing::{self, FromMemory, Published};

/// The metal an alloy is called after.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Family {
    YellowGold,
    RoseGold,
    WhiteGold,
    Platinum,
    Palladium,
    Silver,
    Titanium,
    Zirconium,
    Tantalum,
    TungstenCarbide,
}

/// The colour a metal is seen in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Colour {
    Yellow,
    Rose,
    White,
    Grey,
}

impl Family {
    pub fn colour(self) -> Colour {
        match self {
            Family::YellowGold => Colour::Yellow,
            Family::RoseGold => Colour::Rose,
            Family::WhiteGold | Family::Platinum | Family::Palladium | Family::Silver => Colour::White,
            Family::Titanium | Family::Zirconium | Family::Tantalum | Family::TungstenCarbide => Colour::Grey,
        }
    }
}

/// Hundredths of a gram in a cubic centimetre.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Density(pub u16);

/// Hardness as worn, Vickers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Vickers(pub u16);

/// One row of the table of alloys.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Alloy {
    pub code: &'static str,
    pub family: Family,
    /// Parts of precious metal in a thousand; none for a metal without a legal fineness.
    pub fineness: Option<u16>,
    /// Hard or sintered: it cannot be resized, or hardly, and takes no sizing beads.
    pub hard: bool,
    pub density: Density,
    /// The middle of what is given for the metal as it is worked.
    pub hardness: Vickers,
    /// How well its hardness is founded.
    pub standing: Standing,
}

const fn row(
    code: &'static str,
    family: Family,
    fineness: Option<u16>,
    hard: bool,
    (density, hardness): (u16, u16),
    standing: Standing,
) -> Alloy {
    Alloy { code, family, fineness, hard, density: Density(density), hardness: Vickers(hardness), standing }
}

#[rustfmt::skip]
pub const ALLOYS: [Alloy; 19] = [
    row("yellow-375", Family::YellowGold, Some(375), false, (1115, 220), FromMemory),
    row("yellow-585", Family::YellowGold, Some(585), false, (1286, 245), FromMemory),
    row("yellow-750", Family::YellowGold, Some(750), false, (1545, 230), FromMemory),
    row("yellow-916", Family::YellowGold, Some(916), false, (1790, 135), FromMemory),
    row("rose-375", Family::RoseGold, Some(375), false, (1164, 235), FromMemory),
    row("rose-585", Family::RoseGold, Some(585), false, (1330, 250), FromMemory),
    row("rose-750", Family::RoseGold, Some(750), false, (1514, 240), FromMemory),
    // with silver
    row("white-375", Family::WhiteGold, Some(375), false, (1250, 170), FromMemory),
    row("white-585", Family::WhiteGold, Some(585), false, (1439, 200), FromMemory),
    row("white-750", Family::WhiteGold, Some(750), false, (1632, 190), FromMemory),
    // with iridium, and with ruthenium: Conlon (Johnson Matthey), platinum alloys; the worked 900 is from memory
    row("platinum-900", Family::Platinum, Some(900), false, (2156, 185), FromMemory),
    row("platinum-950", Family::Platinum, Some(950), false, (2070, 220), Published),
    // with ruthenium
    row("palladium-950", Family::Palladium, Some(950), false, (1204, 180), FromMemory),
    // printed silver hardness tables
    row("silver-925", Family::Silver, Some(925), false, (1036, 123), Published),
    row("silver-958", Family::Silver, Some(958), false, (1042, 125), Published),
    // grade 2
    row("titanium", Family::Titanium, None, true, (451, 152), FromMemory),
    row("zirconium", Family::Zirconium, None, true, (652, 165), FromMemory),
    row("tantalum", Family::Tantalum, None, true, (1665, 185), FromMemory),
    // with a nickel binder
    row("tungsten-carbide", Family::TungstenCarbide, None, true, (1450, 1500), FromMemory),
];

/// The alloy with this code, if there is one.
pub fn by_code(code: &str) -> Option<&'static Alloy> {
    ALLOYS.iter().find(|alloy| alloy.code == code)
}
