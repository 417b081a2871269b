//! The words of the Bench: its list, and what the calculators say beside what the trade's own words say.
//!
//! INVARIANT: as for all words. The order size, the stack, the bands and the countdown have a file each.

mod compare;
mod countdown;
mod dates_answer;
mod gauges_answer;
mod gauging;
mod order;
mod order_answer;
mod size_answer;
mod stack_answer;
mod stack_reasons;
mod stacking;

pub use compare::*;
pub use countdown::*;
pub use dates_answer::*;
pub use gauges_answer::*;
pub use gauging::*;
pub use order::*;
pub use order_answer::*;
pub use size_answer::*;
pub use stack_answer::*;
pub use stack_reasons::*;
pub use stacking::*;

use crate::book::checklist::Topic;
use crate::book::couple::Couple;
use crate::trade::measure::{Circumference, Length};
use crate::trade::paper::Paper;
use crate::trade::sizing::{SizeAsRead, Stated, System};
use crate::trade::wearer::Wearer;
use crate::words::lengths::plain;
use crate::words::{band as say_band, book, format};

// The list
pub const SIZE_CONVERTER: &str = "Size converter";
pub const SIZE_CONVERTER_HOW: &str = "What is this size called elsewhere, and how far off is the nearest?";
pub const ORDER_SIZE: &str = "Order size";
pub const ORDER_SIZE_HOW: &str = "From a reading to the size to make: wider, domed, cold hands, rings beside it.";
pub const STACK: &str = "Stack";
pub const STACK_HOW: &str = "Do all the rings fit on the finger, now and later?";
pub const COUNTDOWN: &str = "Working-day countdown";
pub const COUNTDOWN_HOW: &str = "From the wedding back to the last day to order.";
pub const BENCH_HOW: &str = "No couple needed: each remembers what it was last asked. Opened from a couple, it starts \
                             with their figures and writes its answer back.";

// What all share
pub const CHANGE_FIGURES: &str = "Change the figures";
pub const HELD: &str = "Two phones say different things of what would be saved here. Settle that first.";
pub const AFRESH: &str = "Start afresh";
pub const BACK_TO_THEIRS: &str = "Back to their own figures";
pub const WHY: &str = "How it comes about";
pub const BAND: &str = "band";

/// The head of the folded inputs.
pub fn worked_out_from(figures: &str) -> String {
    format!("From {figures}")
}

/// What a couple lacks for an answer.
pub fn lacking(couple: Couple<'_>, topic: Topic) -> String {
    let name = |who| book::name_of(couple, who);
    match topic {
        Topic::Finger(who) => format!("There is no reading of the base of {}’s finger yet.", name(who)),
        Topic::Band(who) => {
            let (band, name) = (couple.band(who), name(who));
            match (band.width, band.profile) {
                (Some(_), _) => {
                    format!("The profile of {name}’s band is not chosen yet: counted as court until it is.")
                }
                (None, Some(_)) => format!("The width of {name}’s band is not chosen yet."),
                (None, None) => format!("The width and profile of {name}’s band are not chosen yet."),
            }
        }
        Topic::Rings(who) => format!("Nobody has asked yet which rings {} wears.", name(who)),
        Topic::Wedding => "The wedding date has not been asked yet.".to_owned(),
        Topic::OrderSize(_) | Topic::Stack(_) | Topic::Dates | Topic::Notes | Topic::ReadBack | Topic::Fitted(_) => {
            format!("{}: not done yet.", book::topic(couple, topic))
        }
    }
}

/// "Ines · left ring finger".
fn whose(couple: Couple<'_>, who: Wearer) -> Vec<String> {
    let finger = couple.finger(who).map(say_band::finger);
    std::iter::once(book::name_of(couple, who)).chain(finger).collect()
}

/// A sentence with how well it is founded behind it.
pub fn founded(sentence: &str, standing: &str) -> String {
    format!("{} · {standing}", sentence.trim_end_matches('.'))
}

/// A size as it would be typed again: as it was, or else by its full name.
pub fn retyped(size: &SizeAsRead) -> String {
    let typed = size.typed.trim();
    if typed.is_empty() { crate::words::sizing::stated_in_full(size.stated) } else { typed.to_owned() }
}

/// Widths as they would be typed: "2.6 and 2".
pub fn widths(all: &[Length]) -> String {
    all.iter().map(|width| plain(*width)).collect::<Vec<_>>().join(" and ")
}

/// A length in figures, without its unit.
pub fn width(length: Length) -> String {
    plain(length)
}

// Sizes
pub const SIZE: &str = "Size";
pub const INSIDE: &str = "Round the inside";
pub const EVERY_SYSTEM: &str = "The size in every system";
pub const ABOUT_SCALES: &str = "Where each is used, and what it rests on";
pub const CHARTS_DIFFER: &str = "What published charts say";
pub const TABLE: &str = "Size table";
pub const TABLE_HOW: &str = "Every size beside what it is called elsewhere, to print for the case.";
pub const TO_TABLE: &str = "The whole table, to print";
pub const TABLE_OF: &str = "The sizes of";
pub const TABLE_STEP: &str = "In";
pub const MM_ROUND: &str = "mm round";
pub const PAPER: &str = "Paper";
pub const PRINT: &str = "Print";
pub const TABLE_NOTE: &str = "Nearest size of each scale, in quarters where it has them; in brackets by how many millimetres \
                              round the inside it is looser (+) or tighter (−). A dash: the scale has no such size.";
pub const ORDER_FROM_THIS: &str = "Order size from this";

/// What a paper is called.
pub fn paper(paper: Paper) -> &'static str {
    match paper {
        Paper::A4 => "A4",
        Paper::A6 => "A6",
    }
}

/// "17 can be read as".
pub fn which_size(typed: &str) -> String {
    format!("{} is", typed.trim())
}

/// A reading among several: "US 6, 51.9 mm".
pub fn reading_named(name: &str, at: Circumference) -> String {
    format!("{name} · {} mm round", format::mm(at.0, 1))
}

pub fn several_readings(count: usize) -> String {
    format!("It can be read in {count} ways. Tap the one that is meant.")
}

/// Millimetres to the hundredth.
pub fn hundredths(length: Length) -> String {
    format::mm(length, 2)
}

/// What stands beside the circumference: "mm round the inside", "16.91 mm across", and the size it is of.
pub fn inside(stated: Stated, at: Circumference) -> Vec<String> {
    let inches = Length::from_mm(at.diameter().mm() / 25.4);
    let across = format!("{} mm across, {} in", format::mm(at.diameter().0, 2), format::mm(inches, 3));
    let named = crate::words::sizing::stated_in_full(stated);
    match stated {
        Stated::Size(_) => vec!["mm round the inside".to_owned(), across, named],
        Stated::Diameter(_) | Stated::Circumference(_) => vec!["mm round the inside".to_owned(), across],
    }
}

/// The short name of a system, beside its rule.
pub fn rule_name(system: System) -> &'static str {
    match system {
        System::Uk => "UK",
        System::Us => "US",
        System::Iso => "ISO",
        System::Japan => "Japan",
        System::Italy => "Italy",
        System::Diameter => "across",
        System::Circumference => "round",
    }
}

/// Where a system is used, as a sentence.
pub fn used_in(system: System) -> String {
    let text = crate::words::sizing::system_where(system);
    let mut chars = text.chars();
    let first = chars.next().map(|first| first.to_ascii_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}.", chars.as_str())
}

/// "Ines · left ring finger · order size N".
pub fn size_subtitle(couple: Couple<'_>, who: Wearer) -> String {
    let mut parts = whose(couple, who);
    parts.extend(
        couple.order_size(who).map(|size| format!("order size {}", crate::words::sizing::size_in_full(size.size))),
    );
    parts.join(" · ")
}

pub fn back_to(names: &str) -> String {
    format!("Back to {names}")
}
