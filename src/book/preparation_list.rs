//! Taking a couple's preparation list into the book.

use chrono::NaiveDate;

use super::change::Write;
use super::couple::Couple;
use super::field::{AppointmentField, Field, Stage};
use super::value::{Recorded, Value};
use super::verbs;
use crate::trade::wearer::Wearer;

pub use super::value::{AnswerError, Invitation, PreparationList, check, is_offered};

/// How a list stands to the same list as it was taken in before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Again {
    Same,
    /// Saved on the same day or later: what has changed takes the place of what they said then.
    Newer,
    /// Saved before the one that is known, which was saved on this day.
    Older(NaiveDate),
}

/// How a list stands to the one that is known under its name. The two of a couple may have been swapped when it was
/// taken in.
pub fn again(known: &PreparationList, said: &PreparationList) -> Again {
    if known == said || *known == said.clone().swapped() {
        Again::Same
    } else if said.saved < known.saved {
        Again::Older(known.saved)
    } else {
        Again::Newer
    }
}

/// Takes a list in: into a new couple (`into` is none) or into one that is there, beside what is known. Names and a
/// wedding date are filled in where nothing is known yet. After a no to being recorded nothing is kept but the no, and
/// the names of a couple that is new.
pub fn take_in(said: PreparationList, into: Option<Couple<'_>>, today: NaiveDate) -> Vec<Write> {
    let said = said.as_agreed();
    let mut writes = Vec::new();
    let recorded = said.agrees().map(|agrees| Recorded { agrees, asked: said.asked.unwrap_or(said.saved) });
    let may_fill = into.is_none() || said.agrees() != Some(false);
    for who in Wearer::BOTH.into_iter().filter(|_| may_fill) {
        let name = said.name(who).filter(|_| into.is_none_or(|couple| couple.name(who).is_none()));
        writes.extend(name.map(|name| Write::set(Field::Name(who), Value::Text(name.to_owned()))));
    }
    if into.is_none() {
        writes.extend(verbs::move_to(Stage::Enquiry, today));
    }
    if said.agrees() != Some(false) {
        let wedding = said.wedding(today).filter(|_| into.is_none_or(|couple| couple.wedding().is_none()));
        writes.extend(wedding.map(|wedding| Write::set(Field::Wedding, Value::Wedding(wedding))));
        // The appointment that the invitation named, if it was sent before they stood in the book.
        let when = said.invitation.when.filter(|when| into.is_none() && when.day >= today);
        let field = Field::Appointment(said.id, AppointmentField::When);
        writes.extend(when.map(|when| Write::set(field, Value::When(when))));
    }
    // A no always counts; a yes does not speak over an answer that the jeweller has heard.
    let known = into.and_then(Couple::recorded);
    if let Some(recorded) = recorded.filter(|it| known.is_none_or(|known| !it.agrees && known.agrees)) {
        writes.push(Write::set(Field::Recorded, Value::Recorded(recorded)));
    }
    let field = Field::PreparationList(said.id);
    if said.agrees() == Some(false) {
        if into.is_some_and(|couple| couple.0.get(&field).is_some()) {
            writes.push(Write::clear(field));
        }
    } else {
        writes.push(Write::set(field, Value::PreparationList(Box::new(said))));
    }
    writes
}
