//! Rows under a heading, as they stand on Today.

use leptos::prelude::*;

use crate::parts::el::or_nothing;
use crate::parts::layout::{para, section};
use crate::parts::line::{Line, lines};
use crate::words::copies as say_copies;

/// Rows under a heading, and how many more there are than these.
pub fn group(heading: &'static str, rows: Vec<Line>, all: usize) -> Option<AnyView> {
    let more = all.saturating_sub(rows.len());
    let said = (more > 0).then(|| para("small", say_copies::and_more(more)));
    (!rows.is_empty()).then(|| section(heading, vec![lines(Signal::stored(rows)), or_nothing(said)]))
}
