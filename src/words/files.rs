//! What is said about files: why one cannot be read, and what would be left out of one.

use super::storage::row_error;
use crate::archive::file::{FileError, MOST_BYTES};
use crate::archive::import::Refused;

/// A file, or a pasted text, cannot be read at all. The book is untouched.
pub fn error(error: FileError) -> String {
    let what = match error {
        FileError::Empty => "There is nothing in it. Choose the file again, or copy the whole message.".to_owned(),
        FileError::TooBig => {
            format!("It is bigger than {} MB, and no book of ours is. Choose another file.", MOST_BYTES >> 20)
        }
        FileError::NotText => {
            "It is not text: perhaps a picture or a document. Choose the file that Bandwright wrote.".to_owned()
        }
        FileError::Utf16 => {
            "It was saved in another encoding, UTF-16. Save it as UTF-8, or send the file anew.".to_owned()
        }
        FileError::Zip => "It is packed as a zip. Unpack it first, then choose the file that was in it.".to_owned(),
        FileError::NotJson => {
            "It is not a file of Bandwright, or it was damaged on the way. Have it sent again, as a file.".to_owned()
        }
        FileError::CutOff => {
            "The end of it is missing. Have it sent again, as a file rather than a message.".to_owned()
        }
        FileError::TooDeep => "It is nested deeper than any file of Bandwright. Choose another file.".to_owned(),
        FileError::NotOurs => {
            "It was made by another program, or is another kind of file. Choose another one.".to_owned()
        }
        FileError::Newer(major) => {
            format!("It was written by a newer version of Bandwright, format {major}. Reload this app, then try again.")
        }
        FileError::Damaged => {
            "It is a book of Bandwright, but its first lines are damaged. Have it sent again.".to_owned()
        }
    };
    format!("{what} Nothing was changed.")
}

/// A couple's list was chosen where files of the book come in.
pub const IS_A_LIST: &str = "This is a couple’s preparation list, and no file of the book. Nothing was changed.";

/// Why one couple of a file is left out, after "left out: ".
pub fn refused(why: Refused) -> String {
    match why {
        Refused::Row(why) => row_error(why),
        Refused::Repeated => "it stands in the file twice, and the first one counts".to_owned(),
        Refused::UnreadableHere => {
            "the same couple on this phone cannot be read, and nothing is written over it: under Practice, on the screen \
             of this phone, put the damaged one aside first"
                .to_owned()
        }
        Refused::OtherKind => "its name is taken by another kind of record".to_owned(),
        Refused::Settings => "it erases settings, which can only be changed".to_owned(),
        Refused::Counter => "its changes are numbered as no phone numbers them".to_owned(),
    }
}
