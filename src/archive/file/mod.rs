//! The book as one file: a header, and records as they stand in the phone's storage, in the order of their ids.
//!
//! ```json
//! {"schema":"1.2","kind":"bandwright-book","written":1792000000000,"by":"<32 hex>","practice":"<32 hex>","holds":"book",
//! "records":[
//! {"changes":[...],"id":"<32 hex>","kind":"couple","schema":"1.2"},
//! ...
//! ]}
//! ```
//!
//! One row a line, UTF-8, line feeds. `holds` says what was asked for: "book" for all of it, "couples" for one or some.
//! `practice` names which of the practices in it is the writer's own; it stands in whole books only. The same records
//! give the same bytes after the header. `public/book.schema.json` describes it for others.

mod open;
mod write;

pub use open::{Reader, Row, open};
pub use write::{Writer, write};

use crate::book::id::{InstallationId, Moment, RecordId};

/// The word by which a file is known for ours.
pub const KIND: &str = "bandwright-book";

/// No file above this size is read: seven and a half times a book of 20,000 couples.
pub const MOST_BYTES: usize = 256 << 20;

/// No file nested deeper is read. Ours have ten levels at most.
pub const MOST_LEVELS: usize = 100;

/// What a file was asked to hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Holds {
    /// All that the phone has.
    Book,
    /// One couple, or some.
    Couples,
}

/// What stands above the records.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Header {
    pub written: Moment,
    /// The installation that wrote it.
    pub by: InstallationId,
    /// Which of the practices in it is the writer's own.
    pub practice: Option<RecordId>,
    pub holds: Holds,
    /// What a newer version wrote beside it, carried through unharmed.
    pub unknown: Option<String>,
}

/// Why a file cannot be read at all.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FileError {
    /// Nothing is in it.
    Empty,
    /// Above [`MOST_BYTES`].
    TooBig,
    /// A picture, a sheet, a program: not text.
    NotText,
    /// Text, but stored as UTF-16.
    Utf16,
    /// Packed as a zip archive.
    Zip,
    /// Text, but not JSON, or damaged JSON.
    NotJson,
    /// The end is missing.
    CutOff,
    /// Nested deeper than [`MOST_LEVELS`].
    TooDeep,
    /// JSON of another program, or another kind of file of ours.
    NotOurs,
    /// Written by a newer version of the app, with this major version.
    Newer(u32),
    /// Ours, but a part of its header is missing or is not what it should be.
    Damaged,
}
