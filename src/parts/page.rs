//! A screen's page: its head, its content, and one action under the thumb.
//!
//! It MUST have one `<main>` and one `<h1>`; the way back MUST be a link with a name that says where it leads; the
//! action MUST NOT cover content: it stays above the bar of places and, at the end of the page, stands below the text.

use super::Words;
use super::el::el;
use super::layout::{block, para};
use crate::words::parts::{PartWord, part};
use leptos::prelude::*;

/// What stands at the head of a page.
pub struct PageHeader {
    title: Words,
    subtitle: Option<Words>,
    back: Option<(Words, Words)>,
    busy: bool,
}

impl PageHeader {
    pub fn new(title: impl Into<Words>) -> Self {
        PageHeader { title: title.into(), subtitle: None, back: None, busy: false }
    }

    /// A line under the title.
    pub fn subtitle(mut self, subtitle: impl Into<Words>) -> Self {
        self.subtitle = Some(subtitle.into());
        self
    }

    /// The way back: an address, and the name of what is there ("Couples").
    pub fn back(mut self, href: impl Into<Words>, to: impl Into<Words>) -> Self {
        self.back = Some((href.into(), to.into()));
        self
    }

    /// Its content is still on its way, and takes the place of this page.
    pub fn busy(mut self) -> Self {
        self.busy = true;
        self
    }
}

/// A page with its content and, if there is one, its action under the thumb.
pub fn page(head: PageHeader, content: AnyView, action: Option<AnyView>) -> AnyView {
    let back = head.back.map(|(href, to)| {
        el("a")
            .class("page-back")
            .words_attr("href", href)
            .live_attr("aria-label", move || Some(format!("{}: {}", part(PartWord::Back), to.now())))
            .child(el("span").attr("aria-hidden", "true").text("‹").view())
            .view()
    });
    let header = el("header")
        .class("page-head")
        .maybe_child(back)
        .child(el("h1").attr("tabindex", "-1").words(head.title).view())
        .maybe_child(head.subtitle.map(|subtitle| para("", subtitle)));
    el("main")
        .class("page")
        .maybe_attr("aria-busy", head.busy.then(|| "true".to_owned()))
        .child(header.view())
        .child(block("page-content", vec![content]))
        .maybe_child(action.map(|action| block("page-action", vec![action])))
        .view()
}
