//! The stack in words: verdicts, what is left, the shoulder match, errors.

use super::lengths::plain;
use crate::trade::measure::Length;
use crate::trade::stack::{Permille, Quantity, ShoulderMatch, Stack, StackError, Stretch, Verdict, When};

pub fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Roomy => "roomy",
        Verdict::Full => "full",
        Verdict::Crowded => "crowded",
        Verdict::DoesNotFit => "does not fit",
    }
}

pub fn when(when: When) -> &'static str {
    match when {
        When::Now => "worn now",
        When::Later => "to come",
    }
}

/// What a verdict means: "Roomy: 8.1 of 24 mm, 33.8 %; roomy ends at 8.4 mm."
pub fn summary(stack: &Stack, stretch: &Stretch) -> String {
    let taken = format!("{} of {} mm, {}", plain(stretch.total), plain(stack.free_length), share(stretch.share));
    match stretch.verdict {
        Verdict::Roomy => format!("Roomy: {taken}; roomy ends at {} mm.", plain(stack.roomy_to)),
        Verdict::Full => {
            format!("Full: {taken}; roomy ends at {} mm, full at {} mm.", plain(stack.roomy_to), plain(stack.full_to))
        }
        Verdict::Crowded => format!("Crowded: {taken}; full ends at {} mm.", plain(stack.full_to)),
        Verdict::DoesNotFit => {
            format!("Does not fit: {taken}; {} mm too long for the finger.", plain(stretch.left.abs()))
        }
    }
}

/// What a further ring may measure.
pub fn further(stretch: &Stretch) -> String {
    match (stretch.widest_roomy, stretch.widest_full) {
        (Some(roomy), Some(full)) => {
            format!("A further ring of up to {} mm leaves it roomy, of up to {} mm full.", plain(roomy), plain(full))
        }
        (None, Some(full)) => {
            format!("A further ring of up to {} mm leaves it full; any ring makes it less than roomy.", plain(full))
        }
        (Some(_) | None, None) => "Any further ring makes it crowded.".to_owned(),
    }
}

/// A share with its tenth: "33.8 %".
pub fn share(share: Permille) -> String {
    format!("{} %", super::format::mm(Length::tenthousandths(i64::from(share.0) * 1_000), 1))
}

pub fn shoulder_match(found: &ShoulderMatch) -> String {
    format!(
        "The band is {} the ring at three and nine o’clock, where it counts, and {} it at the top.",
        compared(found.at_shoulders),
        compared(found.at_top)
    )
}

fn compared(difference: Length) -> String {
    if difference > Length::ZERO {
        format!("{} mm wider than", plain(difference))
    } else if difference < Length::ZERO {
        format!("{} mm narrower than", plain(difference.abs()))
    } else {
        "as wide as".to_owned()
    }
}

/// The sentence for what is wrong.
pub fn error(error: &StackError) -> String {
    match error {
        StackError::NoRings => "Enter the width of at least one ring.".to_owned(),
        StackError::TooManyRings { most } => format!("Enter at most {most} rings."),
        StackError::OutOfRange { what, range } => {
            format!("{} must be between {} and {} mm.", quantity(*what), plain(range.least), plain(range.most))
        }
        StackError::Thresholds { roomy, full } => format!(
            "Enter a share for full that is above roomy and at most 100 %: now roomy is {} % and full is {} %.",
            roomy.0, full.0
        ),
    }
}

/// What is checked, as the beginning of a sentence.
pub fn quantity(what: Quantity) -> &'static str {
    match what {
        Quantity::RingWidth => "A ring’s width",
        Quantity::Gap => "The gap between two rings",
        Quantity::FreeLength => "The free length of the finger",
        Quantity::BandWidth => "The band’s width",
        Quantity::ShoulderWidth => "The ring’s width at three and nine o’clock",
        Quantity::TopWidth => "The ring’s width at the top",
    }
}
