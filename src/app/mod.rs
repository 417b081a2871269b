//! The shell: state, addresses, forms, the clock, updates.
//!
//! INVARIANT: nothing here computes anything of the trade, and only `state` writes to the book.

pub mod address;
pub mod badge;
pub mod clock;
pub mod device;
pub mod form;
pub mod keeping;
pub mod list;
pub mod route;
pub mod seen;
pub mod share;
pub mod show;
pub mod state;
pub mod tabs;
pub mod theme;
pub mod updates;
