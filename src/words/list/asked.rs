//! The questions of the list, their answers, and what helps with them.

use crate::book::asks::Ask;
use crate::book::preparation_list::AnswerError;
use crate::trade::entry::{TextError, TextFault};
use crate::trade::limits::Limit;

/// The question, as the couple read it.
pub fn label(ask: Ask) -> &'static str {
    match ask {
        Ask::Name => "First name",
        Ask::Wedding => "When are you getting married?",
        Ask::NeededBy => "When do you need the bands?",
        Ask::Hand => "On which hand?",
        Ask::Finger => "On which finger?",
        Ask::FirstRing => "Will this be your first ring ever?",
        Ask::OwnsRings => "Do you have rings to wear beside the band?",
        Ask::RingName => "What is it?",
        Ask::RingWidth => "Width at three and nine o\u{2019}clock",
        Ask::RingTop => "Width at the top",
        Ask::RingMetal => "Its metal",
        Ask::RingHow => "Measured with",
        Ask::ToCome => "Is another ring still to come?",
        Ask::Colour => "Which colour do you like?",
        Ask::Metal => "Which metal do you have in mind?",
        Ask::Nickel => "Would you like it free of nickel?",
        Ask::Likes => "What do you like?",
        Ask::Engraving => "Words inside the band",
        Ask::Work => "What do your hands do at work?",
        Ask::Sport => "And in your spare time?",
        Ask::Budget => "What would you like to spend on both bands?",
        Ask::BudgetLeast => "From",
        Ask::BudgetMost => "Up to",
        Ask::Else => "Is there anything else to know?",
        Ask::Recorded => "May your jeweller write this down and keep it?",
    }
}

/// The question in a word or two, as it stands before an answer.
pub fn short(ask: Ask) -> &'static str {
    match ask {
        Ask::Name => "Name",
        Ask::Wedding => "Wedding",
        Ask::NeededBy => "Bands needed",
        Ask::Hand => "Hand",
        Ask::Finger => "Finger",
        Ask::FirstRing => "First ring ever",
        Ask::OwnsRings => "Rings beside the band",
        Ask::RingName => "Ring",
        Ask::RingWidth => "Width at three and nine o\u{2019}clock",
        Ask::RingTop => "Width at the top",
        Ask::RingMetal => "Metal of the ring",
        Ask::RingHow => "Measured with",
        Ask::ToCome => "Rings to come",
        Ask::Colour => "Colour",
        Ask::Metal => "Metal",
        Ask::Nickel => "Nickel-free",
        Ask::Likes => "Likes",
        Ask::Engraving => "Engraving",
        Ask::Work => "Work with hands",
        Ask::Sport => "Spare time",
        Ask::Budget => "Budget for both bands",
        Ask::BudgetLeast => "Budget from",
        Ask::BudgetMost => "Budget up to",
        Ask::Else => "Anything else",
        Ask::Recorded => "May be recorded",
    }
}

/// What helps with a question.
pub fn help(ask: Ask) -> Option<&'static str> {
    Some(match ask {
        Ask::Wedding => "A day, a month or a year: 22 May 2027, May 2027, 2027, or not yet.",
        Ask::NeededBy => {
            "Two weeks before the wedding leaves time for a change of size. Earlier for photographs, or a ceremony before the day."
        }
        Ask::Hand => "Mostly the left in Britain and the right in many other countries. There is no rule.",
        Ask::FirstRing => "A first ring feels tight until you are used to it. That is as it should be.",
        Ask::OwnsRings => "An engagement ring, most often. The band is made to lie flat against it.",
        Ask::RingName => "Engagement ring, signet, my grandmother\u{2019}s ring.",
        Ask::RingWidth => "This is the width that the band is matched to.",
        Ask::ToCome => "An engagement ring that is being made, an eternity ring one day: room is kept for it.",
        Ask::Nickel => "Some white gold has nickel in it. Say what you wish; nobody needs to know why.",
        Ask::Likes => {
            "Narrow or wide, plain or patterned, a pair or two of a kind; a ring you saw; what you do not want."
        }
        Ask::Engraving => "Exactly as it should read, capitals and full stops too. It can wait.",
        Ask::Work => "Machines, electricity, gloves, clay, patients, strings: whatever a ring would meet.",
        Ask::Sport => "Climbing, weights, swimming, gardening: whatever you would take a ring off for.",
        Ask::Recorded => "You can change your mind at any time.",
        Ask::Name | Ask::Finger | Ask::RingTop | Ask::RingMetal | Ask::RingHow | Ask::Colour | Ask::Metal => {
            return None;
        }
        Ask::BudgetLeast => "With its currency: \u{a3}1,500, or 1,800 euros.",
        Ask::Budget | Ask::BudgetMost | Ask::Else => return None,
    })
}

/// An answer that was offered, by its code; an answer in their own words as it is.
pub fn answer(ask: Ask, text: &str) -> &str {
    match ask {
        Ask::Hand | Ask::Finger => place(text),
        Ask::RingMetal | Ask::Colour | Ask::Metal => metal(text),
        Ask::RingHow => how(text),
        Ask::FirstRing | Ask::Recorded => yes_no(text),
        Ask::OwnsRings => match text {
            "some" => "yes",
            "none" => "no",
            other => other,
        },
        Ask::Nickel => match text {
            "yes" => "yes, please",
            "no" => "it does not matter",
            "unsure" => "not sure",
            other => other,
        },
        Ask::Budget => match text {
            "range" => "a range",
            "in-person" => "rather say it in person",
            "unsure" => "we do not know yet",
            other => other,
        },
        Ask::Name | Ask::Wedding | Ask::NeededBy | Ask::RingName | Ask::RingWidth | Ask::RingTop | Ask::ToCome => text,
        Ask::Likes | Ask::Engraving | Ask::Work | Ask::Sport | Ask::BudgetLeast | Ask::BudgetMost | Ask::Else => text,
    }
}

fn place(code: &str) -> &str {
    match code {
        "ring" => "ring finger",
        "middle" => "middle finger",
        "index" => "index finger",
        "little" => "little finger",
        "unsure" => "not sure yet",
        left_right_or_thumb => left_right_or_thumb,
    }
}

fn metal(code: &str) -> &str {
    match code {
        "yellow-gold" => "yellow gold",
        "rose-gold" => "rose gold",
        "white-gold" => "white gold",
        "white" => "white or grey",
        "dark" => "dark or black",
        "two" => "two colours",
        "other" => "another",
        "unsure" => "not sure",
        plain => plain,
    }
}

fn how(code: &str) -> &str {
    match code {
        "ruler" => "a ruler",
        "calliper" => "a calliper",
        "card" => "a paper strip and a card",
        "guess" => "a guess",
        other => other,
    }
}

fn yes_no(code: &str) -> &str {
    code
}

/// What to say of an answer that cannot be taken, beside its field.
pub fn error(ask: Ask, why: AnswerError) -> String {
    match why {
        AnswerError::Text(fault) => super::super::entry::text_error(TextError { limit: limit(ask), fault }),
        AnswerError::NotOffered => "Choose one of the answers that are offered.".to_owned(),
    }
}

/// A width in words, or out of the ordinary: it is theirs to write.
pub const KEPT_AS_WRITTEN: &str = "Kept as you wrote it. A figure like 2.6 would help.";

/// Why an answer was left out when a list was taken in: what it is, and what is wrong with it.
pub fn left_out(ask: Ask, why: AnswerError) -> String {
    let what = short(ask);
    match why {
        AnswerError::Text(TextFault::Empty) => format!("{what}: it is empty."),
        AnswerError::Text(TextFault::TooLong) => format!("{what}: it is too long."),
        AnswerError::Text(TextFault::Control) => format!("{what}: it has hidden control characters in it."),
        AnswerError::Text(TextFault::Direction) => {
            format!("{what}: it has characters in it that turn the writing direction.")
        }
        AnswerError::NotOffered => format!("{what}: it is none of the answers that are offered."),
    }
}

fn limit(ask: Ask) -> Limit {
    use crate::book::asks::Kind;
    match ask.row().kind {
        Kind::Name => Limit::NameText,
        Kind::Note => Limit::NoteText,
        Kind::Line | Kind::Wedding | Kind::Width | Kind::Choice(_) => Limit::LineText,
    }
}
