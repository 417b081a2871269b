//! Why the phone's storage did not do what was asked.

use crate::archive::row::RowError;

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StorageError {
    /// The browser does not let this page store anything.
    Denied,
    /// There is no room left.
    Full,
    /// A newer version of the app has already been here.
    Newer,
    /// The connection was lost, and opening it again did not help.
    Lost,
    /// The record as stored cannot be read; it was left as it is.
    Unreadable(RowError),
    /// The book, or this record, is no longer in the phone's storage: the browser has cleared it, or another tab has
    /// taken it back. A form saves only what was changed in it: written on nothing, that would pass for the whole couple.
    /// So nothing is written, the words stay, and the page, which still holds the book, offers it as a file. It is not
    /// put back by itself: somebody may have wanted it gone.
    Gone,
    /// The record was erased meanwhile.
    Erased,
    /// Something else, in the browser's own words.
    Failed(String),
}
