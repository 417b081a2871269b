//! Everything that is shown without a browser: one program, so that it is linked once.
//!
//! A subject has a file or a folder here, named below. What more than one of them needs is in `shared`, and random books
//! are in `arbitrary`. `cargo test stack_flush` runs one subject.

mod arbitrary;
mod archive;
mod bench;
mod book;
mod calendar;
mod closed;
mod colours;
mod copies;
mod dates;
mod dates_entry;
mod dates_properties;
mod entry;
mod files;
mod fit;
mod forecast;
mod forecast_by_hand;
mod glass;
mod holidays;
mod layers;
mod list;
mod measuring;
mod merge;
mod picture_words;
mod practice;
mod shared;
mod size_entry;
mod sizing;
mod specification;
mod spreadsheet;
mod stack;
mod stack_flush;
mod wear;
mod words;
