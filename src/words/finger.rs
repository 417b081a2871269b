//! What is said about a finger: its readings together, one that stands apart, what is to be thought of, the tray.

use super::{band, fit, format, lengths::plain, sizing};
use crate::answers::finger::{Counts, FingerAnswer, ReadingSeen};
use crate::answers::scale::Scale;
use crate::book::field::Wish;
use crate::book::fitting::JointRead;
use crate::book::value::{FittedAt, ReadingTaken, TryOnBand};
use crate::trade::fit::constants::PLAIN_WIDTH;
use crate::trade::fit::{Combined, Part, Place};
use crate::trade::measure::{Circumference, Length};
use crate::trade::sizing::{Step, System, nearest};
use crate::trade::wearer::Finger;
use chrono::NaiveDate;

pub const WORN_RING: &str = "a ring they wear";
pub const WORN_WIDTH: &str = "Width of that ring";
pub const WORN_WIDTH_HINT: &str = "At three and nine o’clock: the ring stands for the gauge.";
pub const ON_GLASS: &str = "Measured on the screen: no stick, and as sure as the screen gauge said.";
pub const WORN_ON_GLASS: &str = "ring they wear, on the screen";
pub const WORN_BORE: &str = "Its inside";
pub const SITS: &str = "How it sits";
pub const READ_WHERE: &str = "On a stick a flat inside touches at its lower edge, a domed one at the middle (ISO 8653). \
                              Leave it so where the size is known from a stamp.";
pub const TAKEN_AT: &str = "Time";
pub const TAKEN_AT_EMPTY: &str = "Morning or evening matters. Empty: not noted.";
pub const LEAVE_OUT: &str = "Leave it out";
pub const COUNT_IT: &str = "Count it again";
pub const LEFT_OUT: &str = "left out by you";
pub const STANDS_APART: &str = "stands apart from the others: measure again, or leave it out. Until then it counts";
pub const TRAY: &str = "Try-on bands";
pub const TRAY_HOW: &str = "Tap the band that fits: that is a reading.";
pub const NO_TRAY: &str = "Number your try-on bands once, and the one that fits is a reading with one tap.";
pub const TO_TRAY: &str = "Your try-on bands";
pub const WISHES: &str = "Does the finger change?";
pub const WISHES_WHY: &str = "Write down the wish, never a reason of health.";
pub const TO_ORDER_SIZE: &str = "See the order size";
pub const TAKE_OFF_TODAY: &str = "Take it off Today";
pub const AGAIN_IN_A_WEEK: &str = "Measure again: put it on Today, in a week";
pub const AGAIN_LIST: &str = "Measure again";
pub const FITTED: &str = "What fitted";
pub const FITTED_WHY: &str = "Once the band has been worn: the size that it was kept at, or resized to. Such answers \
                              tell what your own constants are.";
pub const FITTED_HOW: &str = "The band was";
pub const KEPT: &str = "Kept as it was";
pub const RESIZED: &str = "Resized";
pub const FITTED_SIZE: &str = "Size that fits";
pub const FITTED_NONE: &str = "not known yet";

/// "Together: 53.9 mm on a plain 3 mm gauge, M¾, give or take 0.42; 3 readings."
pub fn together(found: &Combined, place: Place, system: System, width: Length) -> String {
    let count = match found.parts.len() {
        1 => String::new(),
        many => format!("; {many} readings"),
    };
    let near = Scale { system, step: Step::Quarter }.name_read(found.plain);
    format!(
        "{}: {} mm as a flat gauge of {} mm would read it, near {}; give or take {} mm{count}.",
        fit::place(place),
        format::mm(found.plain.0, 2),
        plain(width),
        sizing::stated_in_full(near),
        format::mm(found.u, 2),
    )
}

pub const SAY_WHETHER_IT_MOVES: &str = "Say first which finger the band is for.";
pub const NOT_THE_BANDS: &str = "not the band’s finger: does not count";

/// "Is the band for the right ring finger now?"
pub fn does_it_move(here: Finger) -> String {
    format!("Is the band for the {} now?", band::finger(here))
}

/// "No, for the left ring finger: this is to compare".
pub fn stays(chosen: Finger) -> String {
    format!("No, for the {}: this is to compare", band::finger(chosen))
}

/// "Yes, for the right ring finger".
pub fn moves(here: Finger) -> String {
    format!("Yes, for the {}", band::finger(here))
}

/// The button that gives the band to another finger that was read.
pub fn move_it(here: Finger) -> String {
    format!("The band is for the {}", band::finger(here))
}

/// What is said behind a reading that counts with others.
/// Of the joint there is no weight: the plain mean counts.
fn part(part: &Part, place: Place) -> String {
    match (part.outlier, place) {
        (true, _) => STANDS_APART.to_owned(),
        (false, Place::Base) => format!("counts {} %", part.share.0),
        (false, Place::Joint) => String::new(),
    }
}

/// "put right: 52.84 mm", of a reading that stands for more than it says.
fn put_right(at: Circumference) -> String {
    format!("put right: {} mm", format::mm(at.0, 2))
}

/// Notes under a reading: its share, whether it differs from the others or was left out, and the corrected figure.
pub fn said_of(it: &ReadingSeen) -> String {
    let counts = match &it.counts {
        Counts::OfAnotherFinger => return NOT_THE_BANDS.to_owned(),
        Counts::LeftOut => LEFT_OUT.to_owned(),
        Counts::Alone => String::new(),
        Counts::Part(of) => part(of, it.taken.place),
    };
    let said = [counts, it.put_right.map(put_right).unwrap_or_default()];
    said.into_iter().filter(|said| !said.is_empty()).collect::<Vec<_>>().join(" · ")
}

/// What the readings come to together: at the base, and at the joint.
pub fn comes_to(found: &FingerAnswer) -> Vec<String> {
    let base = found.base.as_ref().map(|base| together(base, Place::Base, found.system, PLAIN_WIDTH.value));
    base.into_iter().chain(found.joint.map(|it| joint(&it, found.system))).collect()
}

/// "Joint: passes at 55.50 mm, near P, as read in 3 mm."
pub fn joint(found: &JointRead, system: System) -> String {
    let near = nearest(system, found.passes_at, Step::Quarter).size;
    let count = match found.readings {
        1 => String::new(),
        many => format!("; {many} readings"),
    };
    format!(
        "{}: passes at {} mm, near {}, as read in {} mm{count}.",
        fit::place(Place::Joint),
        format::mm(found.passes_at.0, 2),
        sizing::size_in_full(near),
        plain(found.width),
    )
}

/// The question about a reading that contradicts another.
pub fn contradicts(other: &ReadingTaken, more: Length) -> String {
    format!(
        "Check the size: put right it is {} mm {} than the reading {} of {}, more than two sizes; press again to keep \
         it.",
        plain(more.abs()),
        if more > Length::ZERO { "larger" } else { "smaller" },
        sizing::stated_name(other.size.stated),
        format::day(other.taken),
    )
}

/// A wish, as a box to tick.
pub fn wish(wish: Wish) -> &'static str {
    match wish {
        Wish::WarmWork => "Works with warm hands",
        Wish::Sport => "Sport or climbing",
        Wish::Adjustable => "Wishes a shank that can be adjusted",
    }
}

/// What a wish means for the order.
pub fn wish_means(wish: Wish) -> &'static str {
    match wish {
        Wish::WarmWork => {
            "They work with warm hands: take the reading after work too, and see that both sizes are in the range."
        }
        Wish::Sport => "They do sport with their hands: the ring comes off for it, so it has to pass the joint easily.",
        Wish::Adjustable => "They wish for a shank that can be adjusted: ask the bench before the size is settled.",
    }
}

/// "In a week", "In 2 weeks": when to measure again.
pub fn in_weeks(weeks: u16) -> String {
    if weeks == 1 { "In a week".to_owned() } else { format!("In {weeks} weeks") }
}

pub fn is_on_today(day: NaiveDate) -> String {
    format!("On Today for {}.", format::day(day))
}

/// The gauge that a worn ring stands for.
pub fn worn_gauge_name() -> &'static str {
    "ring they wear"
}

/// The gauge that a try-on band stands for.
pub fn try_on_name(number: &str) -> String {
    format!("try-on band {number}")
}

/// "7: N, 4 mm, domed inside".
pub fn try_on(it: &TryOnBand) -> String {
    format!("{}: {}, {} mm, {}", it.number, sizing::stated_name(it.size.stated), plain(it.width), band::bore(it.bore))
}

/// What else is known of a try-on band.
pub fn try_on_small(band: &TryOnBand) -> String {
    band.height.map(|height| format!("{} mm thick", plain(height))).unwrap_or_default()
}

/// "kept at N", "resized to N½".
pub fn fitted(fitted: &FittedAt) -> String {
    let size = sizing::stated_in_full(fitted.size.stated);
    if fitted.resized { format!("resized to {size}") } else { format!("kept at {size}") }
}
