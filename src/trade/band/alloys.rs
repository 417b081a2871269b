//! The alloys a band can be made of: a code that files keep, and what it is. Names for people are in `words`.
//!
//! Codes are our own and stay as they are: records hold them. Finenesses are the legal ones of the Hallmarking
//! Act 1973 where a metal has them. Densities are those of the usual recipe by the mixture rule, 100 / sum(w / rho);
//! a maker's own recipe differs by some per cent. A white gold is called after what makes it white as well.

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

/// What makes gold white.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Whitener {
    Palladium,
    Silver,
    Nickel,
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
    /// Of a white gold.
    pub with: Option<Whitener>,
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
    Alloy { code, family, with: None, fineness, hard, density: Density(density), hardness: Vickers(hardness), standing }
}

/// A white gold, hardness from memory.
const fn white(code: &'static str, with: Whitener, fineness: u16, figures: (u16, u16)) -> Alloy {
    Alloy { with: Some(with), ..row(code, Family::WhiteGold, Some(fineness), false, figures, FromMemory) }
}

#[rustfmt::skip]
pub const ALLOYS: [Alloy; 21] = [
    row("yellow-375", Family::YellowGold, Some(375), false, (1115, 220), FromMemory),
    row("yellow-585", Family::YellowGold, Some(585), false, (1286, 245), FromMemory),
    row("yellow-750", Family::YellowGold, Some(750), false, (1545, 230), FromMemory),
    row("yellow-916", Family::YellowGold, Some(916), false, (1790, 135), FromMemory),
    row("rose-375", Family::RoseGold, Some(375), false, (1164, 235), FromMemory),
    row("rose-585", Family::RoseGold, Some(585), false, (1330, 250), FromMemory),
    row("rose-750", Family::RoseGold, Some(750), false, (1514, 240), FromMemory),
    white("white-375", Whitener::Silver, 375, (1250, 170)),
    white("white-585", Whitener::Palladium, 585, (1439, 200)),
    white("white-585-nickel", Whitener::Nickel, 585, (1269, 275)),
    white("white-750", Whitener::Palladium, 750, (1632, 190)),
    white("white-750-nickel", Whitener::Nickel, 750, (1468, 325)),
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

impl Alloy {
    /// Whether nickel is part of it: white golds by their recipe, tungsten carbide by its binder.
    pub fn has_nickel(&self) -> bool {
        self.with == Some(Whitener::Nickel) || self.family == Family::TungstenCarbide
    }
}

/// The alloy with this code, if there is one.
pub fn by_code(code: &str) -> Option<&'static Alloy> {
    ALLOYS.iter().find(|alloy| alloy.code == code)
}
