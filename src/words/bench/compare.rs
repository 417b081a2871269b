//! The words of bands side by side.

use crate::book::couple::Band;
use crate::trade::band::section::Section;
use crate::trade::band::{Bore, Finish};
use crate::trade::measure::Length;
use crate::words::lengths::plain;
use crate::words::stack::capital;

pub const COMPARE: &str = "Compare bands";
pub const COMPARE_HOW: &str = "Up to four bands side by side: picture, order size, stack, and what to think of.";
pub const COMPARE_WHY: &str = "Sizes and stacks are worked out as on their own pages, where each reason stands. \
                               Thresholds are common practice, or your own.";
pub const MAKE_THIS: &str = "Make this the band";

pub fn alternative(n: usize) -> String {
    format!("Band {n}")
}

/// All that is said of one: "Band 2: 4 mm flat, titanium. Order size N½. Stack 4 mm, roomy".
pub fn alternative_said(n: usize, said: &[String]) -> String {
    let said: Vec<&str> = said.iter().map(|line| line.trim_end_matches('.')).collect();
    format!("{}: {}", alternative(n), said.join(". "))
}

/// The head of the folded inputs: "2 bands".
pub fn alternatives(n: usize) -> String {
    crate::words::format::counted(n as i64, "band", "bands")
}

pub const ANOTHER: &str = "Another like this";

/// "See the 2 bands".
pub fn see_bands(n: usize) -> String {
    format!("See the {}", alternatives(n))
}

/// "Order size N½".
pub fn order_size_of(size: &str) -> String {
    format!("Order size {size}")
}

/// What an order size lacks: the profile, or where that is known, a reading.
pub fn no_order_size(profile_known: bool, has_reading: bool) -> String {
    let missing = match (profile_known, has_reading) {
        (false, false) => "a reading and a profile are needed",
        (false, true) => "a profile is needed",
        (true, false) => "a reading is needed",
        (true, true) => "it cannot be worked out yet; see its own page",
    };
    format!("Order size: {missing}.")
}

/// What it is domed by, outside and at its edges, and whether somebody chose it or it is the usual one.
pub fn arcs(band: &Band, section: &Section) -> Option<String> {
    let one = |what: &str, is_there: bool, known: Option<Length>, by: Length| {
        let usual = if known.is_none() { "usual " } else { "" };
        is_there.then(|| format!("{usual}{what} {} mm", plain(by)))
    };
    let dome = one("dome", section.profile().is_domed_outside(), band.dome, section.dome());
    let relief = one("edge relief", section.profile().bore() == Bore::Domed, band.relief, section.relief());
    let said: Vec<String> = dome.into_iter().chain(relief).collect();
    (!said.is_empty()).then(|| capital(&said.join(", ")))
}

/// Why a band cannot be resized later, or hardly.
pub fn cannot_be_resized(band: &Band) -> Option<&'static str> {
    if band.finish == Some(Finish::SetAllRound) {
        Some("Set all round: it cannot be resized.")
    } else if band.metal.is_some_and(|alloy| alloy.hard) {
        Some("This metal cannot be resized, or hardly.")
    } else {
        None
    }
}
