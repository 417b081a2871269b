//! Merging: what had whose author seen, and where two people disagree.
//!
//! Two books with one couple hold two lists of changes; merged, they hold all of them ([`archive::merge`]). What stands
//! follows from what each change replaced, so the order in which files come does not matter.
//!
//! A change has seen: every change to the record by the same installation with a lower stamp, the changes that it
//! replaces or takes back, those it lists in `after`, and whatever these had seen. No clock has a say.
//!
//! [`archive::merge`]: crate::archive

pub mod conflict;
pub mod removal;
mod seen;
