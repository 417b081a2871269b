//! The words in pictures, and for each picture a text that says the same as it shows.

use super::band::profile;
use super::format;
use crate::trade::band::section::Section;
use crate::trade::fit::Worn;
use crate::trade::measure::{Circumference, Length};
use crate::trade::stack::{Head, RingState, Taper};

/// "N alone", "N½ in the stack".
pub fn size_worn(size: &str, worn: Worn) -> String {
    match worn {
        Worn::Alone => format!("{size} alone"),
        Worn::InStack => format!("{size} in the stack"),
    }
}

/// "reading M½"; of several, "3 readings, together M½".
pub fn reading(size: &str, of: usize) -> String {
    if of > 1 { format!("{of} readings, together {size}") } else { format!("reading {size}") }
}

/// "R stands apart": a reading that the others contradict.
pub fn apart(size: &str) -> String {
    format!("{size} stands apart")
}

/// "joint M": the size below which nothing passes the joint.
pub fn joint(size: &str) -> String {
    format!("joint {size}")
}

/// The name of the bar in which the size lies eight times out of ten.
pub fn range() -> &'static str {
    "8 in 10"
}

/// The same bar where the joint decides, and it is only what the base wants.
pub fn range_of_base() -> &'static str {
    "the base alone"
}

/// What a ladder shows.
pub struct LadderSaid<'a> {
    /// Each of several readings, and whether it stands apart.
    pub singles: &'a [(&'a str, Circumference, bool)],
    pub reading: (&'a str, Circumference),
    pub shifts: &'a [(&'a str, Length)],
    pub best: Circumference,
    pub range: (Circumference, Circumference),
    pub order: (&'a str, Worn),
    pub other: Option<&'a str>,
    pub joint: Option<(&'a str, Circumference)>,
}

/// The ladder from the reading to the order size, in words.
pub fn ladder(said: &LadderSaid) -> String {
    let mm = |c: Circumference| format::mm(c.0, 2);
    let mut text = String::from("Size rule. ");
    let single = |(size, at, apart): &(&str, Circumference, bool)| {
        format!("{size}, {} mm{}", mm(*at), if *apart { ", stands apart" } else { "" })
    };
    text += &match said.singles {
        [] => format!("Reading {}, {} mm", said.reading.0, mm(said.reading.1)),
        several => format!(
            "{} readings: {}. By their weights they read {}, {} mm",
            several.len(),
            several.iter().map(single).collect::<Vec<_>>().join("; "),
            said.reading.0,
            mm(said.reading.1)
        ),
    };
    for (name, amount) in said.shifts {
        text += &format!("; {name} {}", format::mm_signed(*amount, 2));
    }
    text += &format!("; together {} mm", mm(said.best));
    let (low, high) = (mm(said.range.0), mm(said.range.1));
    text += &if said.best > said.range.1 {
        format!(", at least, for the joint; the base alone wants {low} to {high} mm. ")
    } else {
        format!(", 8 in 10 between {low} and {high} mm. ")
    };
    text += &match said.other {
        Some(other) => {
            format!("Order {}; {}.", size_worn(said.order.0, said.order.1), size_worn(other, said.order.1.other()))
        }
        None => format!("Order {}.", said.order.0),
    };
    if let Some((size, at)) = said.joint {
        text += &format!(" The joint needs {size}, {} mm.", mm(at));
    }
    text
}

fn ring_state(state: RingState) -> &'static str {
    match state {
        RingState::Worn => "worn now",
        RingState::Wanted => "the new band",
        RingState::Planned => "to come",
    }
}

/// A ring's width as a dimension: "2.6", and "2.65" where a tenth would not be true.
pub fn width(width: Length) -> String {
    let tenths = width.in_tenthousandths() % 1_000 == 0;
    format::mm(width, if tenths { 1 } else { 2 })
}

/// "now 5.8".
pub fn total_now(total: Length) -> String {
    format!("now {}", width(total))
}

/// "8.5 with the ring to come", short enough for a drawing.
pub fn total_later(total: Length) -> String {
    format!("later {}", width(total))
}

/// "at the top 11.9".
pub fn total_at_top(total: Length) -> String {
    format!("at the top {}", width(total))
}

/// "2.6 engagement ring": what a number in a drawing stands for.
pub fn keyed(label: &str, across: Length) -> String {
    format!("{} {label}", width(across))
}

/// "15.5 left of 24.0", or "1.2 over 24.0".
pub fn left_of(left: Length, free: Length) -> String {
    if left < Length::ZERO {
        format!("{} over {}", width(left.abs()), width(free))
    } else {
        format!("{} left of {}", width(left), width(free))
    }
}

/// The stack on a finger, in words: rings from the web outwards.
pub fn stack(
    rings: &[(&str, Length, RingState)],
    now: Length,
    later: Length,
    at_top: Option<Length>,
    free: Length,
) -> String {
    let mut text = String::from("The finger from above, from the web to the joint.");
    for (name, across, state) in rings {
        text += &format!(" {name}, {} mm, {}.", width(*across), ring_state(*state));
    }
    text += &format!(" Now {} mm", width(now));
    if later != now {
        text += &format!(", later {} mm", width(later));
    }
    if let Some(at_top) = at_top {
        text += &format!(", {} mm at the top", width(at_top));
    }
    let left = free - later;
    text += &if left < Length::ZERO {
        format!("; {} mm more than the {} mm of free finger on the palm side.", width(left.abs()), width(free))
    } else {
        format!("; {} mm left of {} mm of free finger on the palm side.", width(left), width(free))
    };
    text
}

/// Where the free length of a finger is measured.
pub fn on_the_palm_side() -> &'static str {
    "measured on the palm side, web to joint crease"
}

/// "4.0 wide", "1.8 high", "dome 0.5", "relief 0.13": the dimensions of a section.
pub fn across(width: Length) -> String {
    format!("{} wide", self::width(width))
}

pub fn high(height: Length) -> String {
    format!("{} high", width(height))
}

pub fn dome(dome: Length) -> String {
    format!("dome {}", width(dome))
}

pub fn relief(relief: Length) -> String {
    format!("relief {}", width(relief))
}

/// A band among several.
pub fn band() -> &'static str {
    "The band"
}

/// A section in words.
pub fn section(label: &str, of: &Section) -> String {
    let mut text = format!(
        "{label} cut through: {}, {} mm wide, {} mm high",
        profile(of.profile()),
        width(of.width()),
        width(of.height())
    );
    if of.dome() > Length::ZERO {
        text += &format!(", domed by {} mm outside", width(of.dome()));
    }
    if of.relief() > Length::ZERO {
        text += &format!(", its edges {} mm off the finger inside", width(of.relief()));
    }
    text + "."
}

/// "gap 0.8".
pub fn gap(apart: Length) -> String {
    format!("gap {}", width(apart))
}

/// "bay 1.0".
pub fn bay(deep: Length) -> String {
    format!("bay {}", width(deep))
}

pub fn flush() -> &'static str {
    "flush"
}

/// Rings side by side, in words: each with how far it stands off from the one before it, and its head.
pub fn side<'a>(rings: impl Iterator<Item = (&'a str, Length, Length, Option<Head>)>) -> String {
    let mut text = String::from("Side view at the top of the finger, from the web.");
    for (at, (name, apart, bay, head)) in rings.enumerate() {
        text += &match (at, apart > Length::ZERO) {
            (0, _) => format!(" {name}"),
            (_, true) if bay > Length::ZERO => {
                format!(" {} mm further on, with a bay {} mm deep, {name}", width(apart), width(bay))
            }
            (_, true) => format!(" {} mm further on, {name}", width(apart)),
            (_, false) => format!(" Flush with it, {name}"),
        };
        text += &match head {
            Some(head) => format!(
                ", its head {} mm over the side to the web, {} mm over the other, its underside {} mm up.",
                width(head.to_web),
                width(head.to_tip),
                width(head.underside)
            ),
            None => ".".to_owned(),
        };
    }
    text
}

/// Where one is on a ring laid flat, from its back to its back.
pub fn places_round() -> [&'static str; 5] {
    ["back", "nine", "top", "three", "back"]
}

pub fn band_wide(band: Length) -> String {
    format!("the band, {} mm", width(band))
}

pub fn if_top(top: Length) -> String {
    format!("matched to the top it would be {} mm", width(top))
}

/// A tapering ring laid flat, in words.
pub fn unrolled(label: &str, ring: &Taper, band: Length) -> String {
    format!(
        "{label} laid flat: {} mm at the top, {} mm at three and nine o’clock, {} mm at the back. Against it the band, {} mm all round.",
        width(ring.top),
        width(ring.shoulders),
        width(ring.back),
        width(band)
    )
}

/// "53.13 mm", over the rules of the size scales.
pub fn millimetres(length: Length) -> String {
    format!("{} mm", format::mm(length, 2))
}

/// The rules of the size scales, in words: what is nearest on each, and how far it is off.
pub fn rules(at: Length, rows: &[(&str, &str, &str)]) -> String {
    let rows: Vec<String> = rows.iter().map(|(scale, size, off)| format!("{scale} {size}, {off}")).collect();
    format!("Size rules, {} mm round the inside across them all. Nearest: {}.", format::mm(at, 2), rows.join("; "))
}
