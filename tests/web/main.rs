//! What can be shown only in a real browser: one program, so that it is linked and loaded once.
//!
//! A subject has a file here, named below. Records it writes go under names of its own, because all tests share an
//! origin. Run with `make test-browser`.
#![cfg(target_arch = "wasm32")]

mod dress;
mod ladders;
mod parts;
mod pictures;
mod storage;
mod updates;

wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);
