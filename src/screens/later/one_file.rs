//! The same as `files`, with nothing cut off: for a build in one file (`SPLIT=no`), which is quicker to make.

use leptos::prelude::*;
use leptos::wasm_split::SplitLoaderError;

use super::{Later, NotFetched};
use crate::book::asks::Section;

pub async fn work(what: Later) -> Result<AnyView, NotFetched> {
    Ok(super::work(what))
}

pub async fn list(section: Option<Section>) -> Result<AnyView, NotFetched> {
    Ok(crate::screens::list::list(section))
}

pub async fn fetch_work() -> Result<(), SplitLoaderError> {
    Ok(())
}

pub async fn fetch_list() -> Result<(), SplitLoaderError> {
    Ok(())
}
