//! The alloys a band can be made of: a code that files keep, and what it is. Names for people are in `words`.
//!
//! Codes are our own and stay as they are: records hold them. Finenesses are the legal ones of the Hallmarking
//! Act 1973 where a metal has them.

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

/// One row of the table of alloys.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Alloy {
    pub code: &'static str,
    pub family: Family,
    /// Parts of precious metal in a thousand; none for a metal without a legal fineness.
    pub fineness: Option<u16>,
    /// Hard or sintered: it cannot be resized, or hardly, and takes no sizing beads.
    pub hard: bool,
}

const fn row(code: &'static str, family: Family, fineness: Option<u16>, hard: bool) -> Alloy {
    Alloy { code, family, fineness, hard }
}

#[rustfmt::skip]
pub const ALLOYS: [Alloy; 19] = [
    row("yellow-375", Family::YellowGold, Some(375), false),
    row("yellow-585", Family::YellowGold, Some(585), false),
    row("yellow-750", Family::YellowGold, Some(750), false),
    row("yellow-916", Family::YellowGold, Some(916), false),
    row("rose-375", Family::RoseGold, Some(375), false),
    row("rose-585", Family::RoseGold, Some(585), false),
    row("rose-750", Family::RoseGold, Some(750), false),
    row("white-375", Family::WhiteGold, Some(375), false),
    row("white-585", Family::WhiteGold, Some(585), false),
    row("white-750", Family::WhiteGold, Some(750), false),
    row("platinum-900", Family::Platinum, Some(900), false),
    row("platinum-950", Family::Platinum, Some(950), false),
    row("palladium-950", Family::Palladium, Some(950), false),
    row("silver-925", Family::Silver, Some(925), false),
    row("silver-958", Family::Silver, Some(958), false),
    row("titanium", Family::Titanium, None, true),
    row("zirconium", Family::Zirconium, None, true),
    row("tantalum", Family::Tantalum, None, true),
    row("tungsten-carbide", Family::TungstenCarbide, None, true),
];

/// The alloy with this code, if there is one.
pub fn by_code(code: &str) -> Option<&'static Alloy> {
    ALLOYS.iter().find(|alloy| alloy.code == code)
}
