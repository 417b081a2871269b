//! What is typed into a form, and what is read from it: one file a form, with its keys, the texts it starts with, and
//! the typed value that its texts come to.
//!
//! How a form is made:
//! 1. Its keys are constants ([`Key`]), made here and nowhere else: a wrong key does not compile.
//! 2. `start(what is recorded) -> Texts` writes the record into texts. Numbers are plain decimals ([`write`]).
//! 3. `read(&Texts, what is known) -> Result<Value, Complaints>` reads them with a [`Reader`]: it has one way to read
//!    millimetres, sizes, figures that may be left out, days, choices and boxes. A tool that answers while somebody
//!    types gives back what it could read beside the complaints instead.
//! 4. A screen does `Memo(read(&form.texts(), known))` and draws it; `words::complaint` has the sentences.
//! 5. A row in `tests/native/forms/bad_input.rs` has every field of it fed with bad input.
//!
//! INVARIANT: pure. Knows no browser, no storage and no words: what is wrong is a [`Complaint`], never a sentence.
//! Nothing is worked out here but what the texts mean.

pub mod compare;
mod complaint;
pub mod couple;
pub mod dates;
pub mod list;
pub mod order;
pub mod paper_gauge;
mod reader;
pub mod reading;
pub mod remedy;
pub mod screen_gauge;
pub mod setup;
pub mod size;
pub mod stack;
pub mod table;
mod texts;
pub mod understood;
pub mod write;

pub use complaint::{Asked, Complaint, Complaints, Noun};
pub use reader::Reader;
pub use size::{SizeTyped, code_of_reading, meant, reading_codes};
pub use texts::{Key, Texts};
