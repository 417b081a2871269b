//! The book: couples and the jeweller's own practice, as records made of changes that are only ever added.
//!
//! INVARIANT: pure. Knows no browser, no clock, no storage, no file format and no words for people; the shell hands
//! in the day, the time and the random bits.
//!
//! A [`record::Record`] is a list of [`change::Change`]s. A change is one act of the user: it names the installation
//! that made it and a counter of that installation, the time, and for each field the new value and the writes that
//! it replaced. Nothing is ever taken out of the list: undo is a change too. What a couple "is" is read off the newest
//! writes through [`couple::Couple`], what the jeweller has set through [`practice::Practice`].

pub mod agenda;
pub mod arcs;
pub mod asks;
pub mod band;
pub mod care;
pub mod change;
pub mod checklist;
pub mod copies;
pub mod couple;
pub mod example;
pub mod field;
pub mod fit_basis;
pub mod fitting;
pub mod id;
pub mod late;
pub mod leaving;
pub mod mentions;
pub mod merge;
pub mod practice;
pub mod preparation_list;
pub mod progress;
pub mod record;
pub mod remedy;
pub mod ring;
pub mod same;
pub mod schedule;
pub mod search;
pub mod settings;
mod table;
pub mod today;
mod undo;
pub mod value;
pub mod verbs;
pub mod worn_bands;
