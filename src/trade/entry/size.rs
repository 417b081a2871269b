//! Ring sizes as people type them: every reading of the text, never silently one.

use super::names::without_name;
use super::number::without_unit;
use super::plain::{Exact, plain};
use crate::trade::arrange::in_order;
use crate::trade::limits::{self, Amount, Limit};
use crate::trade::measure::{Circumference, Diameter, Length};
use crate::trade::sizing::{Size, SizeAsRead, Stated, Step, System};

/// Why a text is no size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SizeEntryError {
    Empty,
    TooLong,
    /// Neither letter, number nor millimetres.
    NotASize,
    /// A fraction before its letter: "½M".
    LetterLast,
    /// A letter where another system than the UK's was named.
    LetterElsewhere,
    /// A number where the UK's letters were named.
    NumberForLetter,
    /// Between the steps of a system.
    BetweenSteps,
    /// Beyond the ends of every system it could belong to.
    OutOfRange,
    /// A length that is neither an inside diameter nor an inside circumference of a ring.
    LengthOutOfRange,
}

/// Every reading of a typed size, the preferred system's first.
///
/// The first of them may be shown as chosen, with the others beside it: somebody who measures in US sizes types "7" all
/// day. A letter is the UK's. A bare number is listed under every system in which it is a size; the ISO number and the same
/// circumference in millimetres count as one. With "mm" it is a diameter or a circumference, whichever a ring can have.
///
/// ```
/// use bandwright::trade::entry::read_size;
/// use bandwright::trade::sizing::System;
/// let systems: Vec<System> = read_size("17", System::Japan).unwrap().iter().map(|read| read.stated.system()).collect();
/// assert_eq!(systems, [System::Japan, System::Us, System::Italy, System::Diameter]);
/// ```
pub fn read_size(text: &str, preferred: System) -> Result<Vec<SizeAsRead>, SizeEntryError> {
    let typed = text.trim();
    if typed.chars().nth(MOST_CHARS).is_some() {
        return Err(SizeEntryError::TooLong);
    }
    let text = plain(typed);
    if text.is_empty() {
        return Err(SizeEntryError::Empty);
    }
    let (text, meant) = without_name(&text);
    let meant = in_order(meant, |system| *system != preferred);
    let stated = match letter(text) {
        Some((place, rest)) if meant.contains(&System::Uk) => letters(place, rest)?,
        Some(_) => return Err(SizeEntryError::LetterElsewhere),
        None if is_letter_last(text) => return Err(SizeEntryError::LetterLast),
        None => numbers(text, &meant)?,
    };
    Ok(stated.into_iter().map(|stated| SizeAsRead { stated, typed: typed.to_owned() }).collect())
}

/// Longer than any size with its system written out.
const MOST_CHARS: usize = 40;
const Z: i32 = 25;

/// The place of the one letter that a text begins with, A is nought, and what follows it.
fn letter(text: &str) -> Option<(i32, &str)> {
    let mut chars = text.chars();
    let first = chars.next().filter(char::is_ascii_uppercase)?;
    let rest = chars.as_str();
    let place = u32::from(first) - u32::from('A');
    (!rest.starts_with(char::is_alphabetic)).then_some((place as i32, rest.trim()))
}

/// A number with one letter behind it, and nothing else.
fn is_letter_last(text: &str) -> bool {
    let number = text.strip_suffix(|c: char| c.is_ascii_uppercase()).map(str::trim_end);
    number.is_some_and(|number| {
        number.starts_with(|c: char| c.is_ascii_digit() || c == '.' || c == ',') && Exact::parse(number).is_ok()
    })
}

/// What follows a letter: nothing, a fraction, "+" for a shade over it, and behind Z whole sizes too.
fn letters(place: i32, rest: &str) -> Result<Vec<Stated>, SizeEntryError> {
    let shades: &[i32] = match (rest, place) {
        ("", _) => &[0],
        ("+", Z) => &[1, 2, 4],
        ("+", _) => &[1, 2],
        _ => &[quarters_behind(place, rest)?],
    };
    let sizes = shades.iter().filter_map(|quarters| Size::new(System::Uk, place * 4 + quarters));
    some(sizes.map(Stated::Size).collect(), SizeEntryError::OutOfRange)
}

fn quarters_behind(place: i32, rest: &str) -> Result<i32, SizeEntryError> {
    let number = rest.strip_prefix('+').unwrap_or(rest).trim_start();
    if number.starts_with(['+', '-']) {
        return Err(SizeEntryError::NotASize);
    }
    let number = Exact::parse(number).map_err(|_| SizeEntryError::NotASize)?;
    if place != Z && !number.is_below_one() {
        return Err(SizeEntryError::NotASize);
    }
    let quarters = number.whole_times(4).ok_or(SizeEntryError::BetweenSteps)?;
    i32::try_from(quarters.min(1000)).map_err(|_| SizeEntryError::OutOfRange)
}

fn numbers(text: &str, meant: &[System]) -> Result<Vec<Stated>, SizeEntryError> {
    let (number, unit) = match without_unit(text) {
        Some((number, unit)) => (number, Some(unit)),
        None => (text, None),
    };
    let number = Exact::parse(number).map_err(|_| SizeEntryError::NotASize)?;
    match meant {
        [] => return Err(SizeEntryError::NotASize),
        [System::Uk] => return Err(SizeEntryError::NumberForLetter),
        _ => {}
    }
    let mut found: Vec<Stated> = Vec::new();
    for system in meant {
        let Some(stated) = in_system(*system, number, unit, meant) else { continue };
        if !found.iter().any(|other| same(*other, stated)) {
            found.push(stated);
        }
    }
    let error = match unit {
        Some(_) => SizeEntryError::LengthOutOfRange,
        None if meant.iter().any(|system| is_between_steps(*system, number)) => SizeEntryError::BetweenSteps,
        None => SizeEntryError::OutOfRange,
    };
    some(found, error)
}

/// The number as a size of one system, if it is one there. A unit makes it a length; only ISO, when it is named, takes
/// millimetres as its number.
fn in_system(system: System, number: Exact, unit: Option<i64>, meant: &[System]) -> Option<Stated> {
    let length = Length::tenthousandths(number.rounded_times(unit.unwrap_or(10_000)));
    let in_range = |circumference: Circumference| {
        limits::of(Limit::Circumference).holds(Amount::Length(circumference.0)).then_some(())
    };
    match system {
        System::Diameter => in_range(Diameter(length).circumference()).map(|()| Stated::Diameter(Diameter(length))),
        System::Circumference => in_range(Circumference(length)).map(|()| Stated::Circumference(Circumference(length))),
        System::Uk => None,
        System::Iso if unit == Some(10_000) && meant == [System::Iso] => on_scale(system, number),
        System::Us | System::Iso | System::Japan | System::Italy if unit.is_none() => on_scale(system, number),
        System::Us | System::Iso | System::Japan | System::Italy => None,
    }
}

fn on_scale(system: System, number: Exact) -> Option<Stated> {
    let quarters = i32::try_from(number.whole_times(4)?).ok()?;
    Size::new(system, quarters).map(Stated::Size)
}

/// Whether the system has a size on either side of the number.
fn is_between_steps(system: System, number: Exact) -> bool {
    let quarters = match system.step(Step::Quarter) {
        Step::Quarter => number.rounded_times(4),
        Step::Half => number.rounded_times(2).saturating_mul(2),
        Step::Whole => number.rounded_times(1).saturating_mul(4),
    };
    !system.is_millimetres() && i32::try_from(quarters).is_ok_and(|quarters| Size::new(system, quarters).is_some())
}

/// An ISO number is the circumference in millimetres: once is enough.
fn same(one: Stated, other: Stated) -> bool {
    let round = |stated: Stated| matches!(stated.system(), System::Iso | System::Circumference);
    round(one) && round(other) && one.circumference() == other.circumference()
}

fn some(found: Vec<Stated>, error: SizeEntryError) -> Result<Vec<Stated>, SizeEntryError> {
    if found.is_empty() { Err(error) } else { Ok(found) }
}
