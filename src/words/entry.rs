//! What to say when something typed cannot be taken: one sentence that says what would be right.

use super::format;
use super::sizing::{circumference_ends, size_name, trimmed};
use crate::trade::entry::{ContactError, NumberError, NumberFault, SizeEntryError, TextError, TextFault, WidthsError};
use crate::trade::limits::{self, Amount, Limit, Whole};
use crate::trade::measure::{Circumference, Length, Percent};
use crate::trade::sizing::{Step, System, all};

/// What to say of the widths of some rings that cannot be read.
pub fn widths_error(error: WidthsError) -> String {
    match error {
        WidthsError::Number(error) => number_error(error),
        WidthsError::TooMany { most } => format!("Enter at most {most} widths, like 2.6 and 2."),
        WidthsError::OneOrTwo { one, two: [first, second] } => {
            let (one, first, second) = (trimmed(one), trimmed(first), trimmed(second));
            let two =
                if first == second { format!("two of {first} mm") } else { format!("two, {first} and {second} mm") };
            format!("One ring of {one} mm, or {two}: write {one}, or {first} and {second}.")
        }
    }
}

/// What was understood of the widths of some rings: "one ring of 2.6 mm", "2 rings: 2.6 and 2 mm".
pub fn widths_understood(widths: &[Length]) -> String {
    let all: Vec<String> = widths.iter().map(|width| trimmed(*width)).collect();
    match all.as_slice() {
        [] => String::new(),
        [only] => format!("One ring of {only} mm."),
        many => format!("{} rings: {} mm.", many.len(), many.join(" and ")),
    }
}

/// What to say of a size that cannot be read.
pub fn size_error(error: SizeEntryError) -> String {
    let (least, most) = circumference_ends();
    match error {
        SizeEntryError::Empty => "Enter a size, like M½, 6¾, 54 or 17.2 mm.".to_owned(),
        SizeEntryError::TooLong => "Enter one size in a few characters, like M½, 6¾, 54 or 17.2 mm.".to_owned(),
        SizeEntryError::NotASize => {
            "Enter a size as a letter, a number or millimetres, like M½, 6¾, 54 or 17.2 mm.".to_owned()
        }
        SizeEntryError::LetterLast => "Enter the letter first, then its fraction, like M½ or Z+1½.".to_owned(),
        SizeEntryError::LetterElsewhere => {
            "Enter a number for that system, like 6¾ or 54: letters are UK sizes.".to_owned()
        }
        SizeEntryError::NumberForLetter => "Enter a UK size as a letter, like M, M½ or Z+1.".to_owned(),
        SizeEntryError::BetweenSteps => {
            "Enter a size on its steps: quarters for the UK, the US and Italy, halves for ISO and Japan.".to_owned()
        }
        SizeEntryError::OutOfRange => format!(
            "A size must be between {least} and {most} mm round the inside: {}, {}, {} or {}.",
            span("UK", System::Uk),
            span("US", System::Us),
            span("ISO", System::Iso),
            span("Japan", System::Japan),
        ),
        SizeEntryError::LengthOutOfRange => {
            let across = |end: Option<Circumference>| end.map(|c| format::mm(c.diameter().0, 1)).unwrap_or_default();
            let ends = |amount| if let Amount::Length(length) = amount { Some(Circumference(length)) } else { None };
            let range = limits::of(Limit::Circumference);
            format!(
                "A ring must be between {} and {} mm across the inside, or {least} and {most} mm round it.",
                across(ends(range.least)),
                across(ends(range.most)),
            )
        }
    }
}

/// What to say of a figure that cannot be taken.
pub fn number_error(error: NumberError) -> String {
    number_error_named(error, limit_noun(error.limit))
}

/// The same for a field with a name of its own, with its article: "a width at the top".
pub fn number_error_named(error: NumberError, noun: &str) -> String {
    let range = limits::of(error.limit);
    let unit = unit(range.least);
    let between = format!("between {} and {}{unit}", figure(range.least), figure(range.most));
    let like = format!("like {}", figure(range.example));
    match error.fault {
        NumberFault::Empty => format!("Enter {noun} {between}, {like}."),
        NumberFault::NotANumber => format!("Enter {noun} in figures, {between}, {like}."),
        NumberFault::TwoSeparators => format!("Enter {noun} with one decimal point, {between}, {like}."),
        NumberFault::NotWhole => format!("Enter {noun} as a whole number {between}, {like}."),
        NumberFault::OutOfRange => format!("{} must be {between}, {like}.", capital(noun)),
        NumberFault::TooLong => format!("Enter {noun} in a few figures, {between}, {like}."),
    }
}

/// What to say of a text that cannot be taken.
pub fn text_error(error: TextError) -> String {
    text_error_named(error, limit_noun(error.limit))
}

/// The same for a field with a name of its own, with its article.
pub fn text_error_named(error: TextError, noun: &str) -> String {
    match error.fault {
        TextFault::Empty => format!("Enter {noun}."),
        TextFault::TooLong => format!("Enter {noun} of at most {} characters.", figure(limits::of(error.limit).most)),
        TextFault::Control => format!("Enter {noun} without hidden control characters: type it anew."),
        TextFault::Direction => {
            format!("Enter {noun} without characters that turn the writing direction: type it anew.")
        }
    }
}

/// What to say of a way to reach somebody that cannot be taken.
pub fn contact_error(error: ContactError) -> &'static str {
    match error {
        ContactError::Empty => "Enter a phone number or an e-mail address.",
        ContactError::TooLong => "Enter one phone number or e-mail address of at most 254 characters.",
        ContactError::PhoneDigits => "A phone number must have between 5 and 20 digits.",
        ContactError::BadEmail => "Enter an e-mail address like name@example.org.",
        ContactError::Neither => "Enter a phone number in digits, or an e-mail address like name@example.org.",
    }
}

/// What a limit is of, with its article, as it stands in a sentence: "a band width".
pub fn limit_noun(limit: Limit) -> &'static str {
    match limit {
        Limit::Circumference => "an inside circumference",
        Limit::BandWidth => "a band width",
        Limit::GaugeWidth => "a gauge width",
        Limit::TryOnHeight => "a thickness of the band",
        Limit::RingWidth => "a ring width",
        Limit::FreeLength => "a free length of finger",
        Limit::GapBetweenRings => "a gap between rings",
        Limit::RingHeight => "a height",
        Limit::DomeHeight => "a dome",
        Limit::HeadReach => "a reach over the side",
        Limit::HeadUnderside => "a height of the head’s underside",
        Limit::InsideDiameter => "a width across the inside",
        Limit::Clearance => "a clearance under the head",
        Limit::HeightDifference => "a difference of heights",
        Limit::EdgeRelief => "an edge relief",
        Limit::GaugeStep => "a step of the gauge",
        Limit::GaugeError => "a gauge error",
        Limit::StickTaper => "a taper for each mm of the stick",
        Limit::WidthFactor => "a shift for each mm of width",
        Limit::WidthFactorSpread => "a give or take for each mm of width",
        Limit::BoreFactor => "a shift for each mm of a domed bore’s room",
        Limit::BoreFactorSpread => "a give or take for each mm of a domed bore’s room",
        Limit::ConditionShift => "a shift for cold or warm hands",
        Limit::ConditionSpread => "a give or take for cold or warm hands",
        Limit::OwnShift => "a shift of your own",
        Limit::ControlLine => "a length of the printed line",
        Limit::StackShare => "a share of the free length",
        Limit::ConfidenceShare => "a chance to plan for",
        Limit::ChanceShare => "a chance",
        Limit::LongerShare => "a stretch of the work",
        Limit::LeadTimeDays => "a number of working days",
        Limit::DaysInHand => "a number of days",
        Limit::NameText => "a name",
        Limit::LineText => "a line",
        Limit::NoteText => "a note",
    }
}

/// An amount without its unit: "2.5", "35".
pub fn figure(amount: Amount) -> String {
    match amount {
        Amount::Length(length) => trimmed(length),
        Amount::Percent(Percent(value)) => format::count(i64::from(value)),
        Amount::Days(Whole(value)) | Amount::Characters(Whole(value)) => format::count(i64::from(value)),
    }
}

/// What follows the figure: " mm", " %", or nothing where the noun says it.
fn unit(amount: Amount) -> &'static str {
    match amount {
        Amount::Length(_) => " mm",
        Amount::Percent(_) => " %",
        Amount::Days(_) | Amount::Characters(_) => "",
    }
}

fn span(name: &str, system: System) -> String {
    let ends = |size: Option<_>| size.map(size_name).unwrap_or_default();
    format!("{name} {} to {}", ends(all(system, Step::Quarter).next()), ends(all(system, Step::Quarter).last()))
}

fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map(|first| std::iter::once(first.to_ascii_uppercase()).chain(chars).collect()).unwrap_or_default()
}
