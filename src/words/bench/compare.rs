//! The words of bands side by side.

use super::order_answer::size_made;
use super::stack_answer::{Called, stack_cautions_in_short, stack_in_short_of};
use crate::answers::compare::{Alternative, NoResizing, NoSize};
use crate::book::couple::Band;
use crate::trade::band::Bore;
use crate::trade::band::section::Section;
use crate::trade::measure::Length;
use crate::words::book as say_book;
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

/// What stands beside the picture of one: the band, its order size, its stack.
pub fn alternative_lines(it: &Alternative) -> Vec<String> {
    let mut lines = vec![say_book::band(&it.band)];
    lines.extend(it.section.and_then(|section| arcs(&it.band, &section)));
    lines.extend(it.size.and_then(Result::ok).map(|size| order_size_of(&size_made(size))));
    lines.extend(stack_in_short_of(&it.stack));
    lines
}

/// What is to be thought of it.
pub fn alternative_cautions(it: &Alternative, called: Called) -> Vec<String> {
    let mut all = stack_cautions_in_short(&it.stack, called);
    all.extend(it.resizing.map(|why| cannot_be_resized(why).to_owned()));
    all
}

/// All that the couple is shown of one: "Band 2: 4 mm flat, titanium. Order size N½. Stack 4 mm, roomy". What is missing
/// is said to the jeweller alone.
pub fn alternative_shown(it: &Alternative) -> String {
    let said = alternative_lines(it).into_iter().chain(alternative_cautions(it, Called::Plain));
    let said: Vec<String> = said.map(|line| line.trim_end_matches('.').to_owned()).collect();
    format!("{}: {}", alternative(it.number), said.join(". "))
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
fn order_size_of(size: &str) -> String {
    format!("Order size {size}")
}

/// What an order size lacks: the profile, or where that is known, a reading.
pub fn no_order_size(lacks: NoSize) -> String {
    let missing = match (lacks.profile_known, lacks.has_reading) {
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
fn cannot_be_resized(why: NoResizing) -> &'static str {
    match why {
        NoResizing::StonesAllRound => "Set all round: it cannot be resized.",
        NoResizing::HardMetal => "This metal cannot be resized, or hardly.",
    }
}
