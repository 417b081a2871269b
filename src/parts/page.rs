//! A screen's page: its head, its content, and one action under the thumb.
//!
//! It MUST have one `<main>` and one `<h1>`; the way back MUST be a link with a name that says where it leads; the
//! action MUST NOT cover content: it stays above the bar of places and, at the end of the page, stands below the text.

use super::Words;
use crate::words::parts::{PartWord, part};
use leptos::prelude::*;

/// What stands at the head of a page.
pub struct Head {
    title: Words,
    subtitle: Option<Words>,
    back: Option<(Signal<String>, Words)>,
}

impl Head {
    pub fn new(title: impl Into<Words>) -> Self {
        Head { title: title.into(), subtitle: None, back: None }
    }

    /// A line under the title.
    pub fn subtitle(mut self, subtitle: impl Into<Words>) -> Self {
        self.subtitle = Some(subtitle.into());
        self
    }

    /// The way back: an address, and the name of what is there ("Couples").
    pub fn back(mut self, href: impl Into<Signal<String>>, to: impl Into<Words>) -> Self {
        self.back = Some((href.into(), to.into()));
        self
    }
}

/// A page with its content and, if there is one, its action under the thumb.
pub fn page(head: Head, content: AnyView, action: Option<AnyView>) -> AnyView {
    let back = head.back.map(|(href, to)| {
        let name = move || format!("{}: {}", part(PartWord::Back), to.get());
        view! { <a class="page-back" href=move || href.get() aria-label=name><span aria-hidden="true">"‹"</span></a> }
    });
    let subtitle = head.subtitle.map(|subtitle| view! { <p>{move || subtitle.get()}</p> });
    view! {
        <main class="page">
            <header class="page-head">
                {back}
                <h1 tabindex="-1">{move || head.title.get()}</h1>
                {subtitle}
            </header>
            <div class="page-content">{content}</div>
            {action.map(|action| view! { <div class="page-action">{action}</div> })}
        </main>
    }
    .into_any()
}
