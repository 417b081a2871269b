//! Bandwright takes a jeweller and a couple from a first hello to an order size and an order-by date.
//!
//! The map, in reading order; a folder may use those above it and never those below:
//!
//! 1. [`trade`]: the arithmetic of the trade, in types; no browser, no clock, no words.
//! 2. [`book`]: couples and the jeweller's practice, as records of changes; undo, checklist, today.
//! 3. [`archive`]: how a record is written down; the only code that knows a file format.
//! 4. [`forms`]: what is typed into a form, and what is read from it; texts in, typed values or complaints out.
//! 5. [`answers`]: what the tools answer; typed values in, one plain answer out.
//! 6. [`storage`]: what the phone keeps; the only code that touches IndexedDB and localStorage.
//! 7. [`words`]: every sentence, label and name that people read.
//! 8. [`pictures`]: numbers in, drawings out.
//! 9. `parts`: buttons, fields, answers, notices.
//! 10. `app`: state, addresses, forms, clock, updates.
//! 11. `screens`: one file a screen.
//!
//! `parts`, `app`, `screens` and most of `storage` exist in the browser only; the rest compiles and is tested anywhere.

pub mod answers;
pub mod archive;
pub mod book;
pub mod forms;
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
