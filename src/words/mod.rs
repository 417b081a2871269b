//! Every sentence, label and name that people read. One exhaustive function a kind of message, so that a missing
//! one does not compile.
//!
//! INVARIANT: the only code with words for people. Knows no browser but its `Intl`, and that only in `format`.

pub mod agenda;
pub mod ahead;
pub mod answer;
pub mod band;
pub mod bench;
pub mod book;
pub mod calendar;
pub mod complaint;
pub mod copies;
pub mod dates;
pub mod entry;
pub mod fields;
pub mod files;
pub mod finger;
pub mod fit;
pub mod format;
pub mod gauges;
pub mod harmless;
pub mod keeping;
pub mod lengths;
pub mod list;
pub mod parts;
pub mod phones;
pub mod pictures;
pub mod planning;
pub mod practice;
pub mod remedy;
pub mod rings;
pub mod same;
pub mod screens;
pub mod showing;
pub mod sizing;
pub mod specification;
pub mod spreadsheet;
pub mod stack;
pub mod standing;
pub mod storage;
