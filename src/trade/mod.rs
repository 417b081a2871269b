//! The trade's arithmetic: sizes, fit, stack, dates.
//!
//! INVARIANT: knows no browser, no clock, no storage, no randomness and no words for people.
//! Nothing in here panics on bad input: what cannot be answered is a value of an error type.
//! Lengths, sizes, shares and numbers of days are types; a bare number is a count or a chance between 0 and 1.

pub mod arrange;
pub mod band;
pub mod card;
pub mod dates;
pub mod entry;
pub mod fit;
pub mod glass;
pub mod limits;
pub mod measure;
pub mod paper;
pub mod sizing;
pub mod stack;
pub mod wearer;
