//! What people type, turned into typed values: sizes, lengths, whole numbers, texts and ways to reach somebody.
//!
//! INVARIANT: nothing typed is guessed away. What can be read in two ways gives both readings, and what cannot be read
//! gives an error with its kind; nothing panics on any text, and no sentence is made here.

mod contact;
mod names;
mod number;
mod plain;
mod size;
mod text;
mod widths;

pub use contact::{Contact, ContactError, read_contact};
pub use number::{NumberError, NumberFault, read_length, read_percent, read_whole};
pub use size::{SizeEntryError, read_size};
pub use text::{TextError, TextFault, read_needed, read_note, read_text};
pub use widths::{WidthsError, read_widths};
