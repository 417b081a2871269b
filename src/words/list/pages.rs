//! The pages of the list: what they are called, what stands at their head, and what the couple can do there.

use super::super::{book, format};
use crate::book::asks::{QUESTIONS, Section};
use crate::book::preparation_list::{Invitation, PreparationList};
use crate::trade::wearer::Wearer;

pub const TITLE: &str = "Before we make your wedding bands";
pub const LIST: &str = "The list";
pub const INTRO: &str = "A few questions about the two of you, your hands and your rings. Answer what you like, in any order, and leave out what you like: \
your jeweller goes through it with you anyway. Half an hour is plenty.";
pub const KEPT: &str =
    "Every word is kept on this phone as you write it, and works without a network. Nothing is sent until you send it.";
pub const MAY_BE_CLEARED: &str = "If you do not open this list for a week, this phone’s browser may delete it. So send it early, even half filled in: you can send it again later, and it stays one list.";
pub const NOT_KEPT: &str = "This browser keeps nothing: what you write is gone when you close the page. Leave private browsing, then open the list again.";
pub const NOT_KEPT_ANY_MORE: &str = "This phone has stopped keeping what you write: it is gone when you close the page. Free some room on the phone, or hand the list over now.";
pub const ADD_RING: &str = "Another ring";
pub const DELETE: &str = "Delete everything on this phone";
pub const DELETED: &str =
    "Deleted from this phone. What you have handed over already is with your jeweller: ask them to erase it.";
pub const PUT_BACK: &str = "Put it back";
pub const RESUME: &str = "Go on with the preparation list";

pub fn title(section: Section) -> &'static str {
    match section {
        Section::Two => "The two of you",
        Section::Wedding => "The wedding",
        Section::Wearing => "How you will wear them",
        Section::Rings => "Rings beside the band",
        Section::Look => "What you like",
        Section::Hands => "What your hands do",
        Section::Budget => "Budget, and anything else",
        Section::Bring => "What to bring",
        Section::Measure => "About measuring your finger",
        Section::Privacy => "Who will see this",
        Section::Send => "Hand it over",
    }
}

/// What stands at the head of a page of questions.
pub fn intro(section: Section) -> Option<&'static str> {
    Some(match section {
        Section::Two => "First names are enough. One of you can fill in the list for both.",
        Section::Wedding => {
            "Bands are made to order, and that takes weeks. The sooner the date is known, the better; a month will do."
        }
        Section::Wearing => "Left and right hand differ in size, so it helps to know which it will be.",
        Section::Rings => {
            "The new band is made to sit well with the rings that you wear beside it. Your jeweller would like to know what each of them is, and how wide."
        }
        Section::Look => "Nobody expects you to know the names of things. Say it in your own words.",
        Section::Hands => {
            "Metals differ in how they take knocks and scratches, and some rings are better left off for some work."
        }
        Section::Budget => "A range is enough. It saves you being shown what you do not want.",
        Section::Bring | Section::Measure | Section::Privacy | Section::Send => return None,
    })
}

/// The heading over what is asked of one of the two.
pub fn of(said: &PreparationList, who: Wearer) -> String {
    said.name(who).map_or_else(|| nameless(who).to_owned(), str::to_owned)
}

pub fn nameless(who: Wearer) -> &'static str {
    match who {
        Wearer::First => "One of you",
        Wearer::Second => "The other of you",
    }
}

/// "Ring 2".
pub fn ring(number: u8) -> String {
    format!("Ring {number}")
}

/// "7 of 16 answered", and how many of the others one of the two has answered.
pub fn progress(said: &PreparationList) -> String {
    let answered = format!("{} of {QUESTIONS} answered", said.answered());
    let questions = || Section::ALL.into_iter().flat_map(|section| section.questions());
    match questions().filter(|question| said.waits_for(**question).is_some()).count() {
        0 => answered,
        half => format!("{answered}, {half} more by one of you"),
    }
}

/// Who of the two has still to answer something on a page that the other has answered; otherwise what is on it.
pub fn small_of(section: Section, said: &PreparationList) -> String {
    let waits = |who: &Wearer| section.questions().iter().any(|question| said.waits_for(*question) == Some(*who));
    let waiting: Vec<String> = Wearer::BOTH.into_iter().filter(waits).map(|who| of(said, who)).collect();
    if waiting.is_empty() { small(section).to_owned() } else { format!("Still to answer: {}", waiting.join(", ")) }
}

/// How far a page is, at the end of its row.
pub fn section_progress(answered: usize, of: usize) -> String {
    match (answered, of) {
        (_, 0) => "to read".to_owned(),
        (0, 1) => String::new(),
        (_, 1) => "answered".to_owned(),
        _ => format!("{answered} of {of}"),
    }
}

pub fn next(section: Section) -> String {
    format!("Next: {}", title(section))
}

/// The way on from the list itself.
pub fn go_on(section: Section, begun: bool) -> String {
    match (section, begun) {
        (Section::Send, _) => title(section).to_owned(),
        (_, false) => format!("Begin: {}", title(section)),
        (_, true) => format!("Go on: {}", title(section)),
    }
}

/// What a row says under its title, where the title does not say all of it.
pub fn small(section: Section) -> &'static str {
    match section {
        Section::Privacy => "with one question, and how to delete the list",
        _ => "",
    }
}

/// A link for somebody else was opened on a phone with a list.
pub fn for_others(invited: &Invitation, there: &PreparationList) -> String {
    let nobody = || "somebody".to_owned();
    let there = [there.name(Wearer::First), there.name(Wearer::Second)].map(|name| name.map(str::to_owned));
    let [first, second] = there;
    format!(
        "This link is for {}, and there is a list of {} on this phone. A new list takes its place.",
        both(invited.first.as_ref(), invited.second.as_ref()).unwrap_or_else(nobody),
        both(first.as_ref(), second.as_ref()).unwrap_or_else(nobody),
    )
}
pub const NEW_LIST: &str = "Begin a new list";
pub const KEEP_LIST: &str = "Keep the list that is here";
pub const REPLACED: &str = "The list that was here is deleted from this phone.";

/// Whom the list is for, and the appointment, as the jeweller's link says.
pub fn greeting(invitation: &Invitation) -> Option<String> {
    let names = both(invitation.first.as_ref(), invitation.second.as_ref());
    let when = invitation.when.map(book::when);
    // The region is for counting days, and would read as the place of the appointment.
    Some(match (names, when) {
        (Some(names), Some(when)) => format!("For {names}. Your appointment: {when}."),
        (Some(names), None) => format!("For {names}."),
        (None, Some(when)) => format!("Your appointment: {when}."),
        (None, None) => return None,
    })
}

fn both(first: Option<&String>, second: Option<&String>) -> Option<String> {
    match (first, second) {
        (Some(first), Some(second)) => Some(format!("{first} and {second}")),
        (Some(only), None) | (None, Some(only)) => Some(only.clone()),
        (None, None) => None,
    }
}

/// The day on which something was said, as it stands beside it.
pub fn said_on(said: &PreparationList) -> String {
    format!("Said by the couple, {}", format::day(said.saved))
}

/// A whole list in a word or two: "the list of Wed 25 Nov 2026, 12 answers".
pub fn list_of(said: &PreparationList) -> String {
    format!("the list of {}, {}", format::day(said.saved), super::taking::answers(said.answers.len()))
}

/// The answer to a choice that nobody has to make.
pub const LEAVE_OPEN: &str = "leave open";
