//! The reasons of an answer: each part with its amount, why, and how well founded it is.
//!
//! It MUST be a list, each reason read as one: name, amount, why.

use leptos::prelude::*;

/// One reason.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reason {
    pub name: String,
    /// With its sign: "+0.75".
    pub amount: String,
    /// "0.25 mm a millimetre · common practice"; may be empty.
    pub why: String,
    /// What the reasons come to, under a stroke.
    pub sum: bool,
}

/// A reason that is one of several.
pub fn reason(name: impl Into<String>, amount: impl Into<String>, why: impl Into<String>) -> Reason {
    Reason { name: name.into(), amount: amount.into(), why: why.into(), sum: false }
}

/// The reasons, in order.
pub fn reasons(reasons: impl Into<Signal<Vec<Reason>>>) -> AnyView {
    let reasons = reasons.into();
    let rows = move || reasons.get().into_iter().map(row).collect::<Vec<_>>();
    view! { <ul class="reasons">{rows}</ul> }.into_any()
}

fn row(reason: Reason) -> AnyView {
    let class = if reason.sum { "reason sum" } else { "reason" };
    let why = (!reason.why.is_empty()).then(|| view! { " " <span class="reason-why">{reason.why}</span> });
    view! {
        <li class=class>
            <span class="reason-name">{reason.name}</span>
            " "
            <span class="reason-amount">{reason.amount}</span>
            {why}
        </li>
    }
    .into_any()
}
