//! What is wrong with what was typed into a field, as its sentence: what to enter instead.

use super::dates::{calendar_error, date_entry, spread_error, time_entry};
use super::entry::{contact_error, limit_noun, number_error_named, size_error, text_error_named, widths_error};
use super::{agenda, bench, finger, gauges, planning, remedy, rings, screens, stack};
use crate::forms::{Complaint, Complaints, Noun};
use crate::trade::limits::Limit;

/// The sentence for what is wrong with a field.
pub fn complaint(what: &Complaint) -> String {
    match what {
        Complaint::Number(error, noun) => number_error_named(*error, noun_of(*noun, error.limit)),
        Complaint::Text(error, noun) => text_error_named(*error, noun_of(*noun, error.limit)),
        Complaint::Contact(error) => contact_error(*error).to_owned(),
        Complaint::Widths(error) => widths_error(error.clone()),
        Complaint::Size(error) => size_error(*error),
        Complaint::WhichSize => screens::WHICH_SIZE.to_owned(),
        Complaint::Date(error, asked) => date_entry(*error, *asked),
        Complaint::Time(error) => time_entry(*error),
        Complaint::Spread(error) => spread_error(*error),
        Complaint::Calendar(error) => calendar_error(*error),
        Complaint::NeverWorks(last) => planning::never_works(*last),
        Complaint::Section(error) => stack::section_error(*error),
        Complaint::Stack(error) => stack::error(error),
        Complaint::BothOrNeither => gauges::BOTH_OR_NEITHER.to_owned(),
        Complaint::WhetherItMoves => finger::SAY_WHETHER_IT_MOVES.to_owned(),
        Complaint::HeadIncomplete => rings::HEAD_INCOMPLETE.to_owned(),
        Complaint::BackBeforeAway => remedy::TO_BEFORE_FROM.to_owned(),
        Complaint::BackBeforeGone => remedy::BACK_BEFORE_GONE.to_owned(),
        Complaint::BackNotGone => remedy::BACK_NOT_GONE.to_owned(),
        Complaint::StillAway => remedy::STILL_AWAY.to_owned(),
        Complaint::NotYet(today) => agenda::not_yet(*today),
        Complaint::TooEarly { from, ahead } => {
            agenda::too_early(ahead.as_ref().map(agenda::step_name).as_deref(), *from)
        }
        Complaint::DayPast { today, .. } => bench::decided_past(*today),
    }
}

/// The sentences for a form, by the names of its fields.
pub fn complaints(all: &Complaints) -> Vec<(&'static str, String)> {
    all.iter().map(|(key, what)| (key.name(), complaint(what))).collect()
}

fn noun_of(noun: Noun, limit: Limit) -> &'static str {
    match noun {
        Noun::OfLimit => limit_noun(limit),
        Noun::RingName => bench::RING_NAME_NOUN,
        Noun::CurveDepth => remedy::BAY_NOUN,
        Noun::MostThickness => remedy::MOST_HIGH_NOUN,
        Noun::GapAtTop => remedy::GAP_NOUN,
    }
}
