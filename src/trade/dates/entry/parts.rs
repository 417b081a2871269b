//! The parts of a typed date: numbers, months and weekdays, and the shapes that they make together.

use super::DateEntryError;
use chrono::Weekday;

/// A date as it is written, before anybody has asked whether it exists.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Written {
    Day {
        day: u32,
        month: u32,
        year: Option<i32>,
        weekday: Option<Weekday>,
    },
    Month {
        month: u32,
        year: Option<i32>,
    },
    Year(i32),
    NotYet,
    /// So many days from today: "today", "tomorrow", "yesterday".
    FromToday(i64),
    /// A weekday alone, and whether "next" stands before it.
    Weekday(Weekday, bool),
}

/// Longer than any date that is written in words.
const LONGEST: usize = 60;

const NOT_YET: [&str; 13] = [
    "not yet",
    "not yet known",
    "not known",
    "not known yet",
    "not sure",
    "not sure yet",
    "not decided",
    "no date yet",
    "don't know",
    "dont know",
    "don't know yet",
    "unknown",
    "tbc",
];

const MONTHS: [&[&str]; 12] = [
    &["january", "jan"],
    &["february", "feb"],
    &["march", "mar"],
    &["april", "apr"],
    &["may"],
    &["june", "jun"],
    &["july", "jul"],
    &["august", "aug"],
    &["september", "sept", "sep"],
    &["october", "oct"],
    &["november", "nov"],
    &["december", "dec"],
];

const WEEKDAYS: [(Weekday, &[&str]); 7] = [
    (Weekday::Mon, &["monday", "mon"]),
    (Weekday::Tue, &["tuesday", "tues", "tue"]),
    (Weekday::Wed, &["wednesday", "weds", "wed"]),
    (Weekday::Thu, &["thursday", "thurs", "thur", "thu"]),
    (Weekday::Fri, &["friday", "fri"]),
    (Weekday::Sat, &["saturday", "sat"]),
    (Weekday::Sun, &["sunday", "sun"]),
];

/// Days that are named by how far they are from today.
const NEAR: [(&str, i64); 3] = [("today", 0), ("tomorrow", 1), ("yesterday", -1)];

/// Words that may stand in a date and say nothing: "the 22nd of May", "some time in 2027".
const FILLERS: [&str; 7] = ["the", "of", "in", "on", "some", "time", "sometime"];

const ORDINALS: [&str; 4] = ["st", "nd", "rd", "th"];

/// Reads the shape of a date.
pub(super) fn written(text: &str) -> Result<Written, DateEntryError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(DateEntryError::Empty);
    }
    if text.chars().nth(LONGEST).is_some() {
        return Err(DateEntryError::TooLong);
    }
    let text = text.to_ascii_lowercase().replace('’', "'");
    let words: Vec<&str> = text.trim_end_matches('.').split_whitespace().collect();
    if NOT_YET.contains(&words.join(" ").as_str()) {
        return Ok(Written::NotYet);
    }
    let said: Vec<&str> = words.iter().copied().filter(|word| !FILLERS.contains(word)).collect();
    if let Some((_, days)) = NEAR.iter().find(|(word, _)| said == [*word]) {
        return Ok(Written::FromToday(*days));
    }
    let alone = match said.as_slice() {
        ["next", name] => weekday_named(name).map(|day| (day, true)),
        ["this", name] | [name] => weekday_named(name).map(|day| (day, false)),
        _ => None,
    };
    if let Some((day, next)) = alone {
        return Ok(Written::Weekday(day, next));
    }
    shape(&text).ok_or(DateEntryError::NotADate)?
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Part {
    /// A number of one or two figures, and how many: a day, a month, or with two a year of this century.
    Short(u32, usize),
    /// A number of four figures: a year.
    Year(i32),
    Month(u32),
}

fn shape(text: &str) -> Option<Result<Written, DateEntryError>> {
    use Part::{Month as M, Short as S, Year as Y};
    let (weekday, parts) = parts(text)?;
    let day = |day, month, year| Ok(Written::Day { day, month, year, weekday });
    let found = match *parts.as_slice() {
        [S(d, _), M(m)] | [S(d, _), S(m, _)] => day(d, m, None),
        [S(d, _), M(m), Y(y)] | [S(d, _), S(m, _), Y(y)] => day(d, m, Some(y)),
        [M(m), S(d, _), Y(y)] | [Y(y), S(m, _), S(d, _)] => day(d, m, Some(y)),
        [S(d, _), M(m), S(y, 2)] | [S(d, _), S(m, _), S(y, 2)] => day(d, m, Some(century(y)?)),
        // Only a whole date has a weekday.
        _ if weekday.is_some() => return None,
        [M(month), S(number @ 1..=31, _)] => Err(DateEntryError::DayOrYear { month, number }),
        [M(month), Y(y)] | [S(month, _), Y(y)] | [Y(y), S(month, _)] => Ok(Written::Month { month, year: Some(y) }),
        [M(month)] => Ok(Written::Month { month, year: None }),
        [Y(y)] => Ok(Written::Year(y)),
        _ => return None,
    };
    Some(found)
}

fn century(year: u32) -> Option<i32> {
    i32::try_from(year).ok().map(|year| 2000 + year)
}

/// The numbers and months in order, and the weekday if one is named; nothing if there is anything else.
fn parts(text: &str) -> Option<(Option<Weekday>, Vec<Part>)> {
    let mut weekday = None;
    let mut parts = Vec::new();
    let mut rest = text;
    let mut after_number = false;
    while let Some(first) = rest.chars().next() {
        let is_number = first.is_ascii_digit();
        let same = |c: char| if is_number { c.is_ascii_digit() } else { c.is_ascii_alphabetic() };
        if !is_number && !first.is_ascii_alphabetic() {
            let next = rest.chars().nth(1);
            let between = parts.last().is_some() || weekday.is_some();
            match first {
                c if c.is_whitespace() => {}
                '.' | '/' | '-' if between => {}
                // "22 May, 2027", but not the comma of a decimal.
                ',' if between && next.is_none_or(char::is_whitespace) => {}
                _ => return None,
            }
            rest = &rest[first.len_utf8()..];
            after_number = false;
            continue;
        }
        let (word, after) = rest.split_at(rest.find(|c| !same(c)).unwrap_or(rest.len()));
        if is_number {
            parts.push(number(word)?);
        } else if let Some(named) = weekday_named(word) {
            if weekday.replace(named).is_some() {
                return None;
            }
        } else if let Some(month) = month_named(word) {
            parts.push(Part::Month(month));
        } else if !(FILLERS.contains(&word) || after_number && ORDINALS.contains(&word)) {
            return None;
        }
        after_number = is_number;
        rest = after;
    }
    Some((weekday, parts))
}

fn number(digits: &str) -> Option<Part> {
    match digits.len() {
        figures @ (1 | 2) => digits.parse().ok().map(|number| Part::Short(number, figures)),
        4 => digits.parse().ok().map(Part::Year),
        _ => None,
    }
}

fn month_named(word: &str) -> Option<u32> {
    (1..).zip(MONTHS).find(|(_, names)| names.contains(&word)).map(|(month, _)| month)
}

fn weekday_named(word: &str) -> Option<Weekday> {
    WEEKDAYS.iter().find(|(_, names)| names.contains(&word)).map(|(weekday, _)| *weekday)
}
