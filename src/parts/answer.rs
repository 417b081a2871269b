//! The answer: one large figure, and what belongs to it beside it.
//!
//! It MUST be an `<output>` with a name, so that it is read out when it changes; what it thinks of the figure MUST
//! show in more than a colour: care has a sign and a word for ears.

use super::Words;
use crate::words::parts::{Mark, PartWord, part, sign};
use leptos::prelude::*;

/// What the answer thinks of itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tone {
    /// A figure to act on.
    Rouge,
    /// Settled: nothing to do.
    Settled,
    /// Wants care.
    Care,
}

/// An answer as it is shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    pub figure: String,
    pub lines: Vec<String>,
    pub tone: Tone,
}

/// Longer than this, the figure is set smaller.
const LONG: usize = 6;

/// An answer. `key` is its id; `name` is its accessible name ("Order size").
pub fn answer(key: &'static str, name: impl Into<Words>, said: impl Into<Signal<Said>>) -> AnyView {
    let (name, said) = (name.into(), said.into());
    let class = move || {
        let (tone, long) = said.with(|said| (said.tone, said.figure.chars().count() > LONG));
        match (tone, long) {
            (Tone::Rouge, false) => "answer rouge",
            (Tone::Rouge, true) => "answer rouge long",
            (Tone::Settled, false) => "answer settled",
            (Tone::Settled, true) => "answer settled long",
            (Tone::Care, false) => "answer care",
            (Tone::Care, true) => "answer care long",
        }
    };
    let care = move || {
        (said.with(|said| said.tone) == Tone::Care).then(|| {
            view! {
                <span class="answer-sign" aria-hidden="true">{sign(Mark::Care)}</span>
                <span class="unseen">{part(PartWord::Care)}" "</span>
            }
        })
    };
    let lines = move || said.get().lines.into_iter().map(|line| view! { <p>{line}</p> }.into_any()).collect::<Vec<_>>();
    view! {
        <output class=class id=key aria-label=move || name.get()>
            <span class="answer-figure">{care}{move || said.get().figure}</span>
            " "
            <div class="answer-lines">{lines}</div>
        </output>
    }
    .into_any()
}
