//! The answer of the stack in words: its figure, what to think of first, what rings are called.

use crate::answers::stack::{Caution, Pair, RingInStack, StackAnswer, Unsettled};
use crate::words::answer::{CoupleView, Headline};
use crate::words::harmless::harmless;
use crate::words::{bench as say, book, showing, stack};

/// For whom rings are named: what somebody calls a ring stays with the jeweller.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Called {
    Own,
    Plain,
}

/// What a ring is called in a picture or a list.
pub fn ring_label(ring: &RingInStack, called: Called) -> String {
    let plain = || match ring.number {
        Some(at) => say::ring_by_its_order(ring.state, at),
        None => say::ring_by_its_state(ring.state),
    };
    let own = ring.name.as_deref().map(harmless).filter(|name| called == Called::Own && !say::is_unnamed(name));
    own.unwrap_or_else(plain)
}

/// A ring of the stack as it stands in a sentence.
pub fn ring_in_stack(found: &StackAnswer, ring: usize, called: Called) -> String {
    let Some(ring) = found.rings.get(ring) else { return String::new() };
    let label = ring_label(ring, called);
    match called {
        Called::Own => say::named(&label, ring.state),
        Called::Plain => showing::ring_named(&label, ring.state),
    }
}

/// How two neighbours lie, with the curve of the band where it has one.
pub fn how_they_lie(found: &StackAnswer, pair: &Pair, called: Called) -> String {
    let name = |at| ring_in_stack(found, at, called);
    match found.curve.filter(|_| found.is_of_band(pair)) {
        Some(curve) => stack::in_bay(&pair.apart, curve, pair.left, &name),
        None => stack::apart(&pair.apart, &name),
    }
}

pub fn stack_headline(found: &StackAnswer) -> Headline {
    let (Some(palm), Some(widest)) = (&found.stack, found.widest()) else { return Headline::none() };
    let curve = found.curve.is_some();
    let mut lines = vec![
        say::stack_total(found.has_rings_to_come(), curve).to_owned(),
        say::verdict_of(&widest.later, widest.free_length),
    ];
    lines.extend(curve.then(|| say::at_the_palm(palm.later.total)));
    Headline { figure: say::width(widest.later.total), lines, tone: found.tone() }
}

/// The same for the couple, without its picture.
pub fn stack_shown(found: &StackAnswer) -> Option<CoupleView> {
    let widest = found.widest()?;
    Some(CoupleView {
        title: showing::STACK_TITLE.to_owned(),
        picture: String::new(),
        figure: showing::along(widest.later.total),
        lines: vec![
            showing::of_free(widest.free_length, found.has_rings_to_come(), found.curve),
            stack::verdict(widest.later.verdict).to_owned(),
        ],
    })
}

pub fn stack_cautions(found: &StackAnswer) -> Vec<String> {
    found.cautions().iter().flat_map(|caution| caution_said(found, caution, Called::Own, false)).collect()
}

/// What is to be thought of a band, where it stands among others.
pub fn stack_cautions_in_short(found: &StackAnswer, called: Called) -> Vec<String> {
    found.cautions_of_band().iter().flat_map(|caution| caution_said(found, caution, called, true)).collect()
}

fn caution_said(found: &StackAnswer, caution: &Caution, called: Called, in_short: bool) -> Vec<String> {
    let name = |at| ring_in_stack(found, at, called);
    let said = match caution {
        Caution::NoAnswer(error) => stack::error(error),
        Caution::DoesNotFit => say::DOES_NOT_FIT.to_owned(),
        Caution::Crowded => say::CROWDED.to_owned(),
        Caution::CrowdedAtTop { total, verdict } => say::crowded_at_top(*total, *verdict),
        Caution::Apart(at) => match found.pairs.get(*at) {
            Some(pair) if in_short => stack::apart_in_short(&pair.apart, pair.left),
            Some(pair) => how_they_lie(found, pair, called),
            None => return Vec::new(),
        },
        Caution::Wears(at) => {
            let Some(pair) = found.pairs.get(*at) else { return Vec::new() };
            let (near, far) = pair.apart.rings;
            let said = stack::wear(&pair.wear, &name(near), &name(far));
            return said.into_iter().map(|(said, _)| said).collect();
        }
        Caution::HeadUnknown { ring, over } => stack::head_unknown(&name(*ring), *over),
    };
    vec![said]
}

/// What about the couple's rings wants to be settled first.
pub fn stack_unsettled(what: &Unsettled) -> String {
    match what {
        Unsettled::OnNoFinger(ring) => say::on_no_finger(&book::ring_name(ring)),
        Unsettled::BandTakenFor(finger) => say::band_taken_for(*finger),
        Unsettled::NotCounted { recorded, left_out } => {
            let rings: Vec<String> = left_out.iter().map(book::ring).collect();
            say::not_counted(*recorded, *recorded - left_out.len(), &rings)
        }
    }
}

/// The inputs in one line.
pub fn stack_summary(found: &StackAnswer) -> String {
    let one = |ring: &RingInStack| say::ring_short(&ring_label(ring, Called::Own), ring.lying.width);
    found.rings.iter().map(one).collect::<Vec<_>>().join(" · ")
}

/// "Stack 9.1 mm at the top, full: 37.9 % of 24 mm": the figure of the stack's own page, on one line.
pub fn stack_in_short_of(found: &StackAnswer) -> Option<String> {
    let widest = found.widest()?;
    let verdict = say::verdict_of(&widest.later, widest.free_length);
    Some(say::stack_in_short(widest.later.total, found.curve.is_some(), &verdict))
}
