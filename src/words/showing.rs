//! What the couple is shown, in plain words: no names, no notes, no prices.

use super::{bench, format, lengths};
use crate::trade::measure::{Circumference, Length};
use crate::trade::wearer::Wearer;
use chrono::NaiveDate;

/// The button beside an answer.
pub const SHOW: &str = "Show to the couple";

// The clean view
pub const ORDER_TITLE: &str = "The size to make";
pub const SIZE_TITLE: &str = "One size on every scale";
pub const STACK_TITLE: &str = "Your rings together";
pub const FLAT_TITLE: &str = "The ring and the band, laid flat";
pub const SIDE_TITLE: &str = "How they lie side by side";
pub const WEAR_TITLE: &str = "How they wear together";
pub const WAYS_TITLE: &str = "Beside the head: what can be done";
pub const SECTION_TITLE: &str = "Cut through";
pub const COMPARE_TITLE: &str = "Bands side by side";
pub const SETTLED_TITLE: &str = "What we have settled";
pub const DATES_TITLE: &str = "When to order";
pub const READY_TITLE: &str = "When it would be ready";
pub const FINISH: &str = "Hold to finish";
pub const LIFT: &str = "Lift your finger";
pub const FINISH_QUESTION: &str = "Finish showing?";
pub const FINISH_WHY: &str = "The next screen is for the jeweller.";
pub const KEEP_SHOWING: &str = "Keep showing";
pub const FINISH_NOW: &str = "Yes, finish";

/// "53.75 mm round the inside, 17.11 mm across".
pub fn inside(at: Circumference) -> String {
    format!("{} mm round the inside, {} mm across", format::mm(at.0, 2), format::mm(at.diameter().0, 2))
}

/// "In 8 of 10 cases the right size is M½, N or N½."
pub fn likely(names: &[String]) -> String {
    match names {
        [] => String::new(),
        [only] => format!("In 8 of 10 cases {only} is right."),
        [first, .., last] => format!("In 8 of 10 cases the right size lies between {first} and {last}."),
    }
}

/// "UK letters: M½".
pub fn on_scale(system: &str, size: &str) -> String {
    format!("{system}: {size}")
}

/// "7.1 mm".
pub fn along(total: Length) -> String {
    format!("{} mm", lengths::plain(total))
}

/// "along a finger that has 24 mm free, with the rings still to come".
pub fn of_free(free: Length, to_come: bool, bay: Option<Length>) -> String {
    let bay = if bay.is_some() { ", at the top, with the bay of the band" } else { "" };
    let to_come = if to_come { ", with the rings still to come" } else { "" };
    format!("along a finger that has {} mm free{bay}{to_come}", lengths::plain(free))
}

/// "Flush", or "0.8 mm apart".
pub fn off(off: Length) -> String {
    if off > Length::ZERO { format!("{} mm apart", lengths::plain(off)) } else { "Flush".to_owned() }
}

/// "4 × 1.8 mm".
pub fn width_and_height(width: Length, height: Length) -> String {
    format!("{}\u{a0}×\u{a0}{} mm", lengths::plain(width), lengths::plain(height))
}

/// "For one of you: 2.5 mm court, plain, platinum 950, UK N": nobody's name.
pub fn for_one(who: Wearer, what: &[String]) -> String {
    let whom = match who {
        Wearer::First => "For one of you",
        Wearer::Second => "For the other",
    };
    format!("{whom}: {}", what.join(", "))
}

pub fn order_by(day: NaiveDate) -> String {
    format!("To be ordered by {}", format::day(day))
}

/// A ring by its plain name, as it stands in a sentence for the couple: "the ring" where there is one of its kind.
pub fn ring_named(name: &str, state: crate::trade::stack::RingState) -> String {
    match name.strip_prefix("a ") {
        Some(name) => format!("the {name}"),
        None => bench::named(name, state),
    }
}
