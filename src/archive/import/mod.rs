//! Taking a file in: first a preview of what would come in, then all of it or nothing, then one tap to take it back.

pub mod log;
mod plan;
mod preview;

pub use plan::{Entry, FarOff, News, Offer, Plan, Refused, Unreadable};
pub use preview::{Here, Preview, plan};
