//! What the tools answer: one file a tool. What was typed or recorded and what is known (the couple, the practice,
//! today) go in, as values; one plain answer comes out: its figure, its cautions ranked by harm, its reasons each with
//! its standing, the numbers of its picture, and what it would write into a couple's record.
//!
//! A tool uses another's answer as a value: comparing bands asks the order size and the stack with another band. What a
//! couple's page, the read-back or the specification says of a figure comes from the same functions.
//!
//! INVARIANT: pure. Knows no browser, no storage, no form's texts and no words: `words` has the sentences of an answer,
//! `pictures` draws its numbers, a screen lays out both.

pub mod ahead;
pub mod checklist;
pub mod compare;
pub mod dates;
pub mod finger;
pub mod learned;
pub mod list_match;
pub mod order;
pub mod paper_gauge;
pub mod plan;
pub mod scale;
pub mod screen_gauge;
pub mod size;
pub mod stack;
pub mod table;

/// How an answer is to be taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tone {
    /// A figure to act on.
    Act,
    /// Nothing to do.
    Settled,
    /// Wants care.
    Care,
}
