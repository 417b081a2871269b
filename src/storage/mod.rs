//! What the phone keeps: the book in IndexedDB, half-typed words and preferences in localStorage.
//!
//! INVARIANT: the only code that touches the phone's storage. What it cannot read of the book it sets aside, never
//! overwrites.
//! "Saved" means that the transaction has completed with strict durability.

pub mod error;

#[cfg(target_arch = "wasm32")]
mod blocks;
#[cfg(target_arch = "wasm32")]
pub mod book;
#[cfg(target_arch = "wasm32")]
pub mod copies;
#[cfg(target_arch = "wasm32")]
pub mod database;
#[cfg(target_arch = "wasm32")]
pub mod drafts;
#[cfg(target_arch = "wasm32")]
pub mod import;
#[cfg(target_arch = "wasm32")]
pub mod list;
#[cfg(target_arch = "wasm32")]
mod local;
#[cfg(target_arch = "wasm32")]
pub mod parcels;
#[cfg(target_arch = "wasm32")]
pub mod preferences;
#[cfg(target_arch = "wasm32")]
pub mod rescue;
#[cfg(target_arch = "wasm32")]
pub mod room;
#[cfg(target_arch = "wasm32")]
pub mod typed;
