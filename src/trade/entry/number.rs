//! Lengths, whole numbers and shares.

use super::plain::{Exact, NotExact, plain};
use crate::trade::limits::{self, Amount, Limit, Whole};
use crate::trade::measure::{Length, Percent};

/// What was wrong with a figure, and which figure it was to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct NumberError {
    pub limit: Limit,
    pub fault: NumberFault,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum NumberFault {
    Empty,
    NotANumber,
    TwoSeparators,
    NotWhole,
    OutOfRange,
    TooLong,
}

/// Units of length that people type, and how many ten-thousandths of a millimetre each is.
const UNITS: [(&str, i64); 10] = [
    ("MILLIMETRES", 10_000),
    ("MILLIMETERS", 10_000),
    ("MILLIMETRE", 10_000),
    ("MILLIMETER", 10_000),
    ("MM", 10_000),
    ("CM", 100_000),
    ("INCHES", 254_000),
    ("INCH", 254_000),
    ("IN", 254_000),
    ("\"", 254_000),
];

/// Takes a unit of length off the end of a plain text.
pub(super) fn without_unit(text: &str) -> Option<(&str, i64)> {
    let (unit, factor) = UNITS.iter().find(|(unit, _)| text.ends_with(unit))?;
    Some((text.strip_suffix(unit)?.trim_end(), *factor))
}

/// A length as typed, in millimetres unless it says otherwise: "16,5", "2.5", "2 1/2", "2½ mm", "0.25 cm", "0.65 in".
///
/// ```
/// use bandwright::trade::{entry::read_length, limits::Limit, measure::Length};
/// assert_eq!(read_length("2½ mm", Limit::BandWidth), Ok(Length::from_mm(2.5)));
/// ```
pub fn read_length(text: &str, limit: Limit) -> Result<Length, NumberError> {
    let error = |fault| NumberError { limit, fault };
    let text = short(text).map_err(error)?;
    let (number, factor) = without_unit(&text).unwrap_or((&text, 10_000));
    let number = Exact::parse(number).map_err(|fault| error(fault.into()))?;
    let length = Length::tenthousandths(number.rounded_times(factor));
    within(limit, Amount::Length(length)).map(|()| length)
}

/// A whole number as typed, with or without "days".
pub fn read_whole(text: &str, limit: Limit) -> Result<Whole, NumberError> {
    let whole = whole(text, limit, &["WORKING DAYS", "WORKING DAY", "DAYS", "DAY"])?;
    let amount = match limits::of(limit).least {
        Amount::Characters(_) => Amount::Characters(whole),
        // Where a length or a share is asked for, days are refused.
        Amount::Days(_) | Amount::Length(_) | Amount::Percent(_) => Amount::Days(whole),
    };
    within(limit, amount).map(|()| whole)
}

/// A share as typed, in whole per cent, with or without its sign.
pub fn read_percent(text: &str, limit: Limit) -> Result<Percent, NumberError> {
    let percent = Percent(whole(text, limit, &["PER CENT", "PERCENT", "%"])?.0);
    within(limit, Amount::Percent(percent)).map(|()| percent)
}

fn whole(text: &str, limit: Limit, units: &[&str]) -> Result<Whole, NumberError> {
    let error = |fault| NumberError { limit, fault };
    let text = short(text).map_err(error)?;
    let number = units.iter().find_map(|unit| text.strip_suffix(unit)).unwrap_or(&text);
    let number = Exact::parse(number).map_err(|fault| error(fault.into()))?;
    // "1,000" may be a thousand or one: no separator is taken for either.
    let plain = !text.contains(['.', ',', '/']);
    let value = number.whole_times(1).filter(|_| plain).ok_or(error(NumberFault::NotWhole))?;
    u16::try_from(value).map(Whole).map_err(|_| error(NumberFault::OutOfRange))
}

/// Longer than any figure.
const MOST_CHARS: usize = 40;

fn short(text: &str) -> Result<String, NumberFault> {
    let text = text.trim();
    if text.chars().nth(MOST_CHARS).is_some() {
        return Err(NumberFault::TooLong);
    }
    let text = plain(text);
    if text.is_empty() { Err(NumberFault::Empty) } else { Ok(text) }
}

fn within(limit: Limit, amount: Amount) -> Result<(), NumberError> {
    let range = limits::of(limit);
    if range.holds(amount) { Ok(()) } else { Err(NumberError { limit, fault: NumberFault::OutOfRange }) }
}

impl From<NotExact> for NumberFault {
    fn from(fault: NotExact) -> NumberFault {
        match fault {
            NotExact::NotANumber => NumberFault::NotANumber,
            NotExact::TwoSeparators => NumberFault::TwoSeparators,
        }
    }
}
