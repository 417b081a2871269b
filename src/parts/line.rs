//! A row of a list: of the checklist, of couples, of what is due.
//!
//! The whole row MUST be one link, 44 px high at least, and read as one: its state in words, its name, what it says.
//! The state MUST be a sign as well as a colour.

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
    let rows = move || lines.get().into_iter().map(row).collect::<Vec<_>>();
    view! { <ul class="lines">{rows}</ul> }.into_any()
}

fn row(line: Line) -> AnyView {
    let class = match line.mark {
        None => "line bare",
        Some(Mark::Done) => "line done",
        Some(Mark::Open) => "line open",
        Some(Mark::Care) => "line care",
        Some(Mark::Next) => "line next",
    };
    let state = line.mark.map(|state| {
        view! {
            <span class="line-mark">
                <span aria-hidden="true">{sign(state)}</span>
                <span class="unseen">{mark(state)}": "</span>
            </span>
        }
    });
    let value = (!line.value.is_empty()).then(|| view! { " " <span class="line-value">{line.value}</span> });
    let small = (!line.small.is_empty()).then(|| view! { " " <span class="line-small">{line.small}</span> });
    let said = view! {
        {state}
        <span class="line-said">
            <span class="line-name">{line.name}</span>
            {value}
            {small}
        </span>
    };
    let inside = match line.href {
        Some(href) => view! { <a href=href>{said}</a> }.into_any(),
        None => view! { <div class="line-still">{said}</div> }.into_any(),
    };
    view! { <li class=class>{inside}</li> }.into_any()
}
