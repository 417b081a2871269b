//! Something to open where it stands.
//!
//! It MUST be native, so that it opens without us and is found by searching the page; its summary MUST be 44 px high.

use super::Words;
use leptos::prelude::*;

/// A part of the page that is folded away at first.
pub fn details(summary: impl Into<Words>, inside: AnyView) -> AnyView {
    let summary = summary.into();
    view! {
        <details class="details">
            <summary>{move || summary.get()}</summary>
            <div class="details-inside">{inside}</div>
        </details>
    }
    .into_any()
}
