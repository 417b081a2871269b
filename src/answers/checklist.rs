//! The checklist of a couple: how each line stands, which is next, and what is settled elsewhere than it says.

use crate::book::checklist::{self, State, TOPICS, Topic};
use crate::book::couple::Couple;
use crate::trade::wearer::Wearer;

/// A line of the checklist.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    pub topic: Topic,
    pub state: State,
    /// It is the one thing to do next.
    pub is_next: bool,
    /// What wants another look is what was chosen beside a head, of one of the two.
    pub remedy_of: Option<Wearer>,
}

/// Every line.
pub fn rows(couple: Couple<'_>) -> Vec<Row> {
    let next = checklist::next(couple);
    checklist::topics(couple).into_iter().map(|topic| row(couple, topic, next)).collect()
}

/// The one thing to do next; none where all is done.
pub fn next(couple: Couple<'_>) -> Option<Row> {
    let next = checklist::next(couple);
    next.map(|topic| row(couple, topic, next))
}

/// What is read back: everything but the notes and the reading back itself.
pub fn read_back(couple: Couple<'_>) -> Vec<Row> {
    let asked = TOPICS.into_iter().filter(|topic| !matches!(topic, Topic::Notes | Topic::ReadBack));
    asked.map(|topic| row(couple, topic, None)).collect()
}

fn row(couple: Couple<'_>, topic: Topic, next: Option<Topic>) -> Row {
    Row {
        topic,
        state: checklist::state(couple, topic),
        is_next: next == Some(topic),
        remedy_of: checklist::is_about_remedy(couple, topic),
    }
}
