//! What was opened on the one of two screens that could not read it, handed on to the other that can: a couple's list
//! where files of the book come in, and a file of the book where a list is taken in.

use std::cell::RefCell;

thread_local! {
    static HANDED: RefCell<Option<Vec<u8>>> = const { RefCell::new(None) };
}

/// Keeps it for the screen that is opened next.
pub fn give(bytes: Vec<u8>) {
    HANDED.set(Some(bytes));
}

/// Takes it, once.
pub fn take() -> Option<Vec<u8>> {
    HANDED.take()
}
