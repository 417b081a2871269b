//! What a couple said, to be read: on their own phone before it is handed over, and on the jeweller's.

use leptos::prelude::*;

use crate::parts::el::{el, or_nothing};
use crate::parts::layout::{block, column};
use crate::words::list::handing::Group;

/// The answers, group by group.
pub fn in_words(groups: Vec<Group>) -> AnyView {
    column(groups.into_iter().map(group).collect())
}

fn group(group: Group) -> AnyView {
    let mut rows = Vec::new();
    for (label, value) in group.lines {
        rows.push(el("dt").text(label).view());
        rows.push(el("dd").text(value).view());
    }
    let heading = group.heading.map(|heading| el("h3").text(heading).view());
    let lines = (!rows.is_empty()).then(|| el("dl").class("said-lines").children(rows).view());
    block("said-group", vec![or_nothing(heading), or_nothing(lines)])
}
