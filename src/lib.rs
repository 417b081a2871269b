//! Bandwright takes a jeweller and a couple from a first hello to an order size and an order-by date.
//!
//! The map, in reading order; a folder may use those above it and never those below:
//!
//! 1. [`trade`]: the arithmetic of the trade, in types; no browser, no clock, no words.
//! 2. [`book`]: couples and the jeweller's practice, as records of changes; undo, checklist, today.
//! 3. [`archive`]: how a record is written down; the only code that knows a file format.
//! 4. [`storage`]: what the phone keeps; the only code that touches IndexedDB and localStorage.
//! 5. [`words`]: every sentence, label and name that people read.
//! 6. `parts`: buttons, fields, answers, notices.
//! 7. [`pictures`]: numbers in, drawings out.
//! 8. `app`: state, addresses, forms, clock, updates.
//! 9. `screens`: one file a screen.
//!
//! `parts`, `app`, `screens` and most of `storage` exist in the browser only; the rest compiles and is tested anywhere.

pub mod archive;
pub mod book;
pub mod pictures;
pub mod storage;
pub mod trade;
pub mod words;

#[cfg(target_arch = "wasm32")]
pub mod app;
#[cfg(target_arch = "wasm32")]
pub mod parts;
#[cfg(target_arch = "wasm32")]
pub mod screens;
