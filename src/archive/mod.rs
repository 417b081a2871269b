//! How records are written down: one JSON object a record, the same in the phone's storage and in files.
//!
//! INVARIANT: the only code that knows a file format. Pure: text in, records out, and back. The types of the core
//! carry no serialisation; the names used in files stand here and stay as they are.
//!
//! Every object carries a schema version, major.minor. A newer major is refused. A newer minor is read, and what is
//! unknown in it (fields, values, keys) is carried through unharmed.

pub mod calendar;
mod carried;
mod change;
pub mod code;
pub mod collision;
pub mod copy;
pub mod csv;
mod day;
pub mod file;
pub mod find;
pub mod import;
pub mod installation;
pub mod key;
pub mod list;
pub mod merge;
mod object;
mod plain;
pub mod row;
mod scan;
pub mod value;
pub mod version;
