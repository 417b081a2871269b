//! Bandwright takes a jeweller and a couple from a first hello to an order size and an order-by date.
//!
//! The map, in reading order; a folder may use those above it and never those below:
//!
//! 1. [`trade`]: the arithmetic of the trade, in types; no browser, no clock, no words.

#[cfg(target_arch = "wasm32")]
pub mod app;
pub mod trade;
pub mod words;
