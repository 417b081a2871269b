//! Where the WebAssembly is cut: `public/build/split.mjs` puts what each of these functions needs, and the first screen
//! does not, into a file of its own.

use leptos::prelude::*;
use leptos::wasm_split::{SplitLoaderError, wasm_split};

use super::{Later, NotFetched};
use crate::book::asks::Section;

#[wasm_split(work, wasm_split_path = leptos::wasm_split, fallible, preload(preload_work))]
pub fn work(what: Later) -> Result<AnyView, NotFetched> {
    Ok(super::work(what))
}

#[wasm_split(list, wasm_split_path = leptos::wasm_split, fallible, preload(preload_list))]
pub fn list(section: Option<Section>) -> Result<AnyView, NotFetched> {
    Ok(crate::screens::list::list(section))
}

pub async fn fetch_work() -> Result<(), SplitLoaderError> {
    preload_work().await
}

pub async fn fetch_list() -> Result<(), SplitLoaderError> {
    preload_list().await
}
