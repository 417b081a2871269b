//! A couple's preparation list: their answers, in their own words.
//!
//! It stands beside what the jeweller measured and settled, never in its place: a list is one value of its own.
//!
//! Why one value and not a field per answer: it was handed over in one go, and the jeweller never edits it. Under
//! its own random id the same list is known when it comes again, a later version takes the place of the earlier
//! one as one change, and what a newer version of the list asked is carried in it unharmed.

use std::collections::BTreeMap;

use chrono::NaiveDate;

use super::days::When;
use crate::book::asks::{AnswerKey, Ask, Kind, Of, Question, RANGE, ROWS, SOME};
use crate::book::id::ItemId;
use crate::trade::dates::entry::read_wedding;
use crate::trade::dates::holidays::Region;
use crate::trade::dates::wedding::Wedding;
use crate::trade::entry::{TextFault, read_note, read_text};
use crate::trade::limits::Limit;
use crate::trade::wearer::Wearer;

/// A preparation list, as far as it is filled in.
#[derive(Clone, Debug, PartialEq)]
pub struct PreparationList {
    /// The list's own name: the same list handed over twice is the same list.
    pub id: ItemId,
    /// The day on which it was last written in.
    pub saved: NaiveDate,
    /// The day on which they answered whether they may be recorded.
    pub asked: Option<NaiveDate>,
    pub invitation: Invitation,
    pub answers: BTreeMap<AnswerKey, String>,
    /// What a newer version wrote beside it, carried through unharmed.
    pub unknown: Option<String>,
}

/// What the jeweller's link says.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Invitation {
    pub first: Option<String>,
    pub second: Option<String>,
    pub when: Option<When>,
    pub region: Option<Region>,
}

/// Why an answer cannot be taken in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum AnswerError {
    Text(TextFault),
    /// None of the answers that the question offers.
    NotOffered,
}

impl PreparationList {
    pub fn new(id: ItemId, today: NaiveDate) -> PreparationList {
        let invitation = Invitation::default();
        PreparationList { id, saved: today, asked: None, invitation, answers: BTreeMap::new(), unknown: None }
    }

    /// An answer; blank is none.
    pub fn get(&self, spot: AnswerKey) -> Option<&str> {
        self.answers.get(&spot).map(|text| text.trim()).filter(|text| !text.is_empty())
    }

    /// Writes an answer on a day, as it was typed.
    pub fn set(&mut self, spot: AnswerKey, text: String, today: NaiveDate) {
        if self.answers.get(&spot).map_or("", String::as_str) == text {
            return;
        }
        self.saved = today;
        if spot.ask == Ask::Recorded {
            self.asked = (!text.is_empty()).then_some(today);
        }
        if text.is_empty() {
            self.answers.remove(&spot);
        } else {
            self.answers.insert(spot, text);
        }
    }

    /// Whether a question is answered: by each of the two, where each of them is asked.
    pub fn is_answered(&self, question: Question) -> bool {
        let each = ROWS.iter().any(|row| row.question == question && row.of == Of::Each);
        let by = |who: Option<Wearer>| self.has_answered(question, who);
        if each { Wearer::BOTH.into_iter().all(|who| by(Some(who))) } else { by(None) }
    }

    /// Who has still to answer a question of each that the other one has answered.
    pub fn waits_for(&self, question: Question) -> Option<Wearer> {
        let [first, second] = Wearer::BOTH.map(|who| self.has_answered(question, Some(who)));
        match (first, second) {
            (true, false) => Some(Wearer::Second),
            (false, true) => Some(Wearer::First),
            _ => None,
        }
    }

    /// Whether one of the two, or both together, have said anything of a question.
    fn has_answered(&self, question: Question, who: Option<Wearer>) -> bool {
        let of_it = |spot: &&AnswerKey| spot.ask.row().question == question && spot.who == who;
        self.answers.keys().filter(of_it).any(|spot| self.get(*spot).is_some())
    }

    /// How many of the questions are answered, each by whoever is asked.
    pub fn answered(&self) -> usize {
        let mut counted = Vec::new();
        for row in &ROWS {
            if !counted.contains(&row.question) && self.is_answered(row.question) {
                counted.push(row.question);
            }
        }
        counted.len()
    }

    /// Whether they agree to be recorded, if they have said.
    pub fn agrees(&self) -> Option<bool> {
        match self.get(AnswerKey::both(Ask::Recorded))? {
            "yes" => Some(true),
            "no" => Some(false),
            _ => None,
        }
    }

    pub fn name(&self, who: Wearer) -> Option<&str> {
        self.get(AnswerKey::of(Ask::Name, who))
    }

    /// The wedding date, where their words can be read as one. A day without its year counts from the day on which
    /// the list was last written in.
    pub fn wedding(&self, today: NaiveDate) -> Option<Wedding> {
        let typed = self.get(AnswerKey::both(Ask::Wedding))?;
        read_wedding(typed, self.saved.min(today)).ok().filter(|wedding| !wedding.is_past(today))
    }

    /// The highest number of a ring of which something was said.
    pub fn rings(&self, who: Wearer) -> u8 {
        let of = |spot: &AnswerKey| if spot.who == Some(who) { spot.ring } else { None };
        self.answers.keys().filter(|spot| self.get(**spot).is_some()).filter_map(of).max().unwrap_or(0)
    }

    /// What may leave the couple's phone, and what the jeweller may keep: all of it but what a later answer has made
    /// void, or after a no to being recorded their names and the no alone.
    pub fn as_agreed(mut self) -> PreparationList {
        let void: Vec<AnswerKey> = self.answers.keys().copied().filter(|spot| self.is_void(*spot)).collect();
        void.iter().for_each(|spot| drop(self.answers.remove(spot)));
        if self.agrees() == Some(false) {
            self.answers.retain(|spot, _| matches!(spot.ask, Ask::Name | Ask::Recorded));
            self.unknown = None;
            self.invitation = Invitation::default();
        }
        self
    }

    /// Whether another answer says that this one does not count: figures beside "rather say it in person", rings beside
    /// "no". They stay where they were typed, in case that answer changes again.
    fn is_void(&self, spot: AnswerKey) -> bool {
        let (asked, counts) = match spot.ask {
            Ask::BudgetLeast | Ask::BudgetMost => (AnswerKey::both(Ask::Budget), RANGE),
            _ if spot.ask.row().of == Of::Ring => (AnswerKey { ask: Ask::OwnsRings, ring: None, ..spot }, SOME),
            _ => return false,
        };
        self.get(asked).is_some_and(|answer| answer != counts)
    }

    /// The answers that can be taken in, each without the spaces at its ends; and those that cannot, with why.
    pub fn checked(mut self) -> (PreparationList, Vec<(AnswerKey, AnswerError)>) {
        let mut wrong = Vec::new();
        let mut good = BTreeMap::new();
        for (spot, text) in std::mem::take(&mut self.answers) {
            match check(spot.ask, &text) {
                Ok(Some(text)) => drop(good.insert(spot, text)),
                Ok(None) => {}
                Err(why) => wrong.push((spot, why)),
            }
        }
        self.answers = good;
        (self, wrong)
    }

    /// The same list with the two in the other order.
    pub fn swapped(mut self) -> PreparationList {
        let answers = std::mem::take(&mut self.answers);
        self.answers.extend(answers.into_iter().map(|(spot, text)| (spot.swapped(), text)));
        self
    }
}

/// Whether a choice is one of the answers that its question offers, or none at all; other questions offer none.
pub fn is_offered(ask: Ask, text: &str) -> bool {
    match ask.row().kind {
        Kind::Choice(offered) => text.trim().is_empty() || offered.contains(&text.trim()),
        _ => true,
    }
}

/// An answer as it is kept; blank is none.
pub fn check(ask: Ask, text: &str) -> Result<Option<String>, AnswerError> {
    let fault = |error: crate::trade::entry::TextError| AnswerError::Text(error.fault);
    match ask.row().kind {
        Kind::Name => read_text(text, Limit::NameText).map_err(fault),
        Kind::Line | Kind::Wedding | Kind::Width => read_text(text, Limit::LineText).map_err(fault),
        Kind::Note => read_note(text, Limit::NoteText).map_err(fault),
        Kind::Choice(_) if is_offered(ask, text) => Ok(Some(text.trim().to_owned()).filter(|it| !it.is_empty())),
        Kind::Choice(_) => Err(AnswerError::NotOffered),
    }
}
