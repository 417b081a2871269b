//! A row of a list: of the checklist, of couples, of what is due.
//!
//! The whole row MUST be one link, 44 px high at least, and read as one: its state in words, its name, what it says.
//! The state MUST be a sign as well as a colour.

use super::el::{el, live};
use super::layout::all;
use crate::words::parts::{Mark, mark, sign};
use leptos::prelude::*;

/// One row.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Line {
    pub name: String,
    /// What it says, at the end of the row; may be empty.
    pub value: String,
    /// A smaller line under both; may be empty.
    pub small: String,
    pub mark: Option<Mark>,
    /// Where it leads; none for a row that only says something.
    pub href: Option<String>,
}

/// A row that leads somewhere.
pub fn line(name: impl Into<String>, value: impl Into<String>, href: impl Into<String>) -> Line {
    Line { name: name.into(), value: value.into(), small: String::new(), mark: None, href: Some(href.into()) }
}

impl Line {
    pub fn small(mut self, small: impl Into<String>) -> Self {
        self.small = small.into();
        self
    }

    pub fn mark(mut self, mark: Mark) -> Self {
        self.mark = Some(mark);
        self
    }
}

/// Rows one under the other. `name` is the accessible name of the list, where no heading says it.
pub fn lines(lines: impl Into<Signal<Vec<Line>>>) -> AnyView {
    let lines = lines.into();
    let rows = move || all(lines.get().into_iter().map(row).collect());
    el("ul").class("lines").child(live(rows)).view()
}

fn row(line: Line) -> AnyView {
    let class = match line.mark {
        None => "line bare",
        Some(Mark::Done) => "line done",
        Some(Mark::Open) => "line open",
        Some(Mark::Care) => "line care",
        Some(Mark::Next) => "line next",
    };
    let span = |class: &'static str, text: String| el("span").class(class).text(text).view();
    let state = line.mark.map(|state| {
        let sign = el("span").attr("aria-hidden", "true").text(sign(state)).view();
        el("span").class("line-mark").child(sign).child(span("unseen", format!("{}: ", mark(state)))).view()
    });
    let mut said = vec![span("line-name", line.name)];
    for (class, text) in [("line-value", line.value), ("line-small", line.small)] {
        if !text.is_empty() {
            said.extend([" ".into_any(), span(class, text)]);
        }
    }
    let said = el("span").class("line-said").children(said).view();
    let inside = match line.href {
        Some(href) => el("a").attr("href", href),
        None => el("div").class("line-still"),
    };
    el("li").class(class).child(inside.maybe_child(state).child(said).view()).view()
}
