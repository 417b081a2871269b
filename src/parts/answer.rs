//! The answer: one large figure, and what belongs to it beside it.
//!
//! It MUST be an `<output>` with a name, so that it is read out when it changes; what it thinks of the figure MUST
//! show in more than a colour: care has a sign and a word for ears.

use super::Words;
use super::el::{el, live};
use super::layout::all;
use crate::answers::Tone;
use crate::words::answer::Headline;
use crate::words::parts::{Mark, PartWord, part, sign};
use leptos::prelude::*;

/// Longer than this, the figure is set smaller.
const LONG: usize = 6;

/// An answer. `key` is its id; `name` is its accessible name ("Order size").
pub fn answer(key: &'static str, name: impl Into<Words>, said: impl Into<Signal<Headline>>) -> AnyView {
    let (name, said) = (name.into(), said.into());
    let class = move || {
        let (tone, long) = said.with(|said| (said.tone, said.figure.chars().count() > LONG));
        let class = match (tone, long) {
            (Tone::Act, false) => "answer rouge",
            (Tone::Act, true) => "answer rouge long",
            (Tone::Settled, false) => "answer settled",
            (Tone::Settled, true) => "answer settled long",
            (Tone::Care, false) => "answer care",
            (Tone::Care, true) => "answer care long",
        };
        Some(class.to_owned())
    };
    let inside = move || {
        let said = said.get();
        let care = (said.tone == Tone::Care).then(|| {
            all(vec![
                el("span").class("answer-sign").attr("aria-hidden", "true").text(sign(Mark::Care)).view(),
                el("span").class("unseen").text(format!("{} ", part(PartWord::Care))).view(),
            ])
        });
        let lines = said.lines.into_iter().map(|line| el("p").text(line).view()).collect();
        all(vec![
            el("span").class("answer-figure").maybe_child(care).text(said.figure).view(),
            " ".into_any(),
            el("div").class("answer-lines").children(lines).view(),
        ])
    };
    el("output").attr("id", key).live_attr("class", class).words_attr("aria-label", name).child(live(inside)).view()
}
