//! The reasons of an answer: each part with its amount, why, and how well founded it is.
//!
//! It MUST be a list, each reason read as one: name, amount, why.

use super::el::{el, live};
use super::layout::all;
use crate::words::answer::Reason;
use leptos::prelude::*;

/// The reasons, in order.
pub fn reasons(reasons: impl Into<Signal<Vec<Reason>>>) -> AnyView {
    let reasons = reasons.into();
    let rows = move || all(reasons.get().into_iter().map(row).collect());
    el("ul").class("reasons").child(live(rows)).view()
}

fn row(reason: Reason) -> AnyView {
    let class = if reason.sum { "reason sum" } else { "reason" };
    let span = |class: &'static str, text: String| el("span").class(class).text(text).view();
    let mut said = vec![span("reason-name", reason.name), " ".into_any(), span("reason-amount", reason.amount)];
    if !reason.why.is_empty() {
        said.extend([" ".into_any(), span("reason-why", reason.why)]);
    }
    el("li").class(class).children(said).view()
}
