//! Handing the list over: the page for it, and the list as a message that people can read.

use super::asked::{answer, short};
use super::pages::of;
use crate::book::asks::{AnswerKey, Ask, Of, ROWS};
use crate::book::preparation_list::PreparationList;
use crate::trade::wearer::Wearer;

pub const INTRO: &str = "When you are ready, send the list to your jeweller: the simplest way is to answer the message in which the link came. You can \
send it again after you have changed something: it stays one list.";
pub const NOTHING_YET: &str = "Nothing is answered yet, so there is nothing to hand over.";
pub const STILL_OPEN: &str = "One question before it goes";
pub const SEND_FILE: &str = "Send as a file";
pub const SAVE_FILE: &str = "Save as a file";
pub const SEND_TEXT: &str = "Send as a message";
pub const COPY_TEXT: &str = "Copy as a message";
pub const SAID_NO: &str = "You said no to being recorded, so only your names and that no are handed over. Show the rest on this phone when you meet.";
pub const STAYS: &str = "Not handed over as it stands";
pub const WHAT_LEAVES: &str = "What is handed over";
pub const FILE_LEFT: &str = "The file is on its way, or among your downloads.";
pub const TEXT_LEFT: &str = "The message is on its way.";
pub const COPIED: &str = "Copied. Paste it into a message to your jeweller, all of it.";
pub const NOT_LEFT: &str = "Nothing was sent. Try one of the other ways.";
pub const FILE_NAME: &str = "preparation-list.json";
pub const MESSAGE_TITLE: &str = "Our preparation list";

const HEAD: &str = "Our preparation list for the wedding bands";
const FOOT: &str = "For the jeweller: copy this whole message and paste it in Bandwright, under Couples, Take in a list. The rest is for the app:";

/// A group of answers: of both together, or of one of the two.
pub struct Group {
    pub heading: Option<String>,
    pub lines: Vec<(String, String)>,
}

/// Every answer in words, in the order of the questions.
pub fn groups(said: &PreparationList) -> Vec<Group> {
    let mut groups = vec![Group { heading: None, lines: lines_of(said, None) }];
    groups.retain(|both| !both.lines.is_empty());
    for who in Wearer::BOTH {
        let lines = lines_of(said, Some(who));
        // A name stands over what one of the two said, and alone if that is nothing.
        if !lines.is_empty() || said.name(who).is_some() {
            groups.push(Group { heading: Some(of(said, who)), lines });
        }
    }
    groups
}

/// One ring of theirs on a line, if anything was said of it: "engagement ring, 2.6 mm at three and nine o'clock".
pub fn ring(said: &PreparationList, who: Wearer, number: u8) -> Option<String> {
    let get = |ask| said.get(AnswerKey::ring(ask, who, number)).map(|text| answer(ask, text));
    let mut parts: Vec<String> = Vec::new();
    parts.extend(get(Ask::RingName).map(str::to_owned));
    parts.extend(get(Ask::RingWidth).map(|width| format!("{} at three and nine o\u{2019}clock", mm(width))));
    parts.extend(get(Ask::RingTop).map(|width| format!("{} at the top", mm(width))));
    parts.extend(get(Ask::RingMetal).map(str::to_owned));
    parts.extend(said.get(AnswerKey::ring(Ask::RingHow, who, number)).map(|how| match how {
        "guess" => "a guess, not measured".to_owned(),
        how => format!("measured with {}", answer(Ask::RingHow, how)),
    }));
    if parts.is_empty() { None } else { Some(parts.join(", ")) }
}

/// The list as a message: readable lines, then the line for the app.
pub fn message(said: &PreparationList, line: &str) -> String {
    let mut text = HEAD.to_owned();
    for group in groups(said) {
        text.push('\n');
        if let Some(heading) = group.heading {
            text.push('\n');
            text.push_str(&heading);
        }
        for (label, value) in group.lines {
            text.push_str(&format!("\n{label}: {value}"));
        }
    }
    text.push_str(&format!("\n\n{FOOT}\n{line}\n"));
    text
}

fn lines_of(said: &PreparationList, who: Option<Wearer>) -> Vec<(String, String)> {
    let mut lines = Vec::new();
    for row in &ROWS {
        let spot = AnswerKey { ask: row.ask, who, ring: None };
        if row.ask == Ask::RingName {
            let numbers = who.map_or(0, |who| said.rings(who));
            for number in 1..=numbers {
                let ring = who.and_then(|who| ring(said, who, number));
                lines.extend(ring.map(|ring| (super::pages::ring(number), ring)));
            }
        } else if row.of != Of::Ring && spot.exists() && !(who.is_some() && row.ask == Ask::Name) {
            let value = said.get(spot).map(|text| answer(row.ask, text).to_owned());
            lines.extend(value.map(|value| (short(row.ask).to_owned(), value)));
        }
    }
    lines
}

/// Their words with the unit that they left out.
fn mm(width: &str) -> String {
    let bare = width.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | ',' | ' ' | '/'));
    if bare { format!("{width} mm") } else { width.to_owned() }
}
