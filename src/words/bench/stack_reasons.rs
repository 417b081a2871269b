//! What the stack comes to, reason by reason: room, match, flush or not, wear.

use super::stack_answer::{Called, how_they_lie, ring_in_stack, ring_label};
use crate::answers::stack::{Elsewhere, Pair, StackAnswer};
use crate::book::couple::Ring;
use crate::trade::measure::Standing;
use crate::trade::stack::{House, RingState, StackInputs, Stretch, stack as compute};
use crate::words::answer::{CoupleView, Reason, reason};
use crate::words::{bench as say, book, remedy, showing, stack, standing};

fn common_practice() -> &'static str {
    standing::standing(Standing::CommonPractice)
}

pub fn room_reasons(found: &StackAnswer) -> Vec<Reason> {
    let (Some(palm), Some(widest), Some(gap)) = (&found.stack, found.widest(), found.gap) else { return Vec::new() };
    let rule = common_practice();
    let mut all = vec![reason(
        say::WORN_TOGETHER_NOW,
        say::width(palm.now.total),
        say::founded(&stack::summary(palm, &palm.now), rule),
    )];
    for (at, step) in palm.steps.iter().enumerate() {
        let summary = say::founded(&stack::summary(palm, step), rule);
        let name =
            if at + 1 == palm.steps.len() { say::WITH_RINGS_TO_COME.to_owned() } else { say::with_later(at + 1) };
        all.push(reason(name, say::width(step.total), summary));
    }
    all.extend(found.at_top.as_ref().map(|at_top| {
        let summary = say::founded(&stack::summary(at_top, &at_top.later), rule);
        let name = if found.curve.is_some() { remedy::WITH_BAY } else { remedy::WITH_GAP };
        reason(name, say::width(at_top.later.total), summary)
    }));
    all.push(reason(say::GAPS, say::width(gap), rule));
    // Of the place that the figure and its verdict are of: what is left at the palm is not left at the top.
    let left = say::left_of(widest.later.left);
    all.push(reason(say::LEFT, left, say::founded(&stack::further(&widest.later), rule)));
    all.push(reason(
        say::FREE_LENGTH,
        say::width(palm.free_length),
        format!("{} · {}", say::FREE_HOW, standing::standing(palm.free_standing)),
    ));
    for tighter in &found.tighter {
        let name = ring_in_stack(found, tighter.ring, Called::Own);
        let why = say::founded(&stack::tighter(tighter.by, &name), rule);
        all.push(reason(say::fit_later(&name), stack::by(tighter.by), why));
    }
    all
}

/// Rings that hold those nearer the web, each with how many lie there.
pub fn holding_reasons(holding: &[(Ring, usize)]) -> Vec<Reason> {
    let one = |(ring, inside): &(Ring, usize)| {
        let name = say::named(&book::ring_name(ring), RingState::Worn);
        reason(say::HOLDING, "", say::founded(&stack::holds(&name, *inside), common_practice()))
    };
    holding.iter().map(one).collect()
}

/// The other fingers of both hands, each against its own free length.
pub fn elsewhere_reasons(found: &StackAnswer, others: &[Elsewhere], house: House) -> Vec<Reason> {
    let rule = common_practice();
    let mut all = Vec::new();
    for on in others {
        let measured = found.free_elsewhere.iter().find(|(finger, _)| *finger == on.finger).map(|(_, free)| *free);
        if on.without_width > 0 {
            all.push(reason(say::without_width(on.finger, on.without_width), "", ""));
        }
        let Ok(there) = compute(&StackInputs { rings: on.rings.clone(), measured, house }) else { continue };
        let free = standing::standing(there.free_standing);
        let total = |stretch: &Stretch| {
            let said = say::founded(&stack::summary(&there, stretch), rule);
            (say::width(stretch.total), format!("{said} · {}: {free}", say::FREE_LENGTH))
        };
        let (now, said) = total(&there.now);
        all.push(reason(say::on_finger_now(on.finger), now, said));
        if !there.steps.is_empty() {
            let (later, said) = total(&there.later);
            all.push(reason(say::on_finger_later(on.finger), later, said));
        }
        let further = say::founded(&stack::further(&there.later), rule);
        all.push(reason(say::on_finger_left(on.finger), say::left_of(there.later.left), further));
    }
    all
}

pub fn match_reasons(found: &StackAnswer) -> Vec<Reason> {
    let rule = common_practice();
    let mut all = Vec::new();
    for it in &found.matches {
        let Some(ring) = found.rings.get(it.ring) else { continue };
        let name = ring_label(ring, Called::Own);
        all.push(reason(
            say::shoulder_match(&name),
            say::shoulder_figures(it.band, ring.widths.shoulders),
            say::founded(&say::shoulder_said(it.found, ring.top_known), rule),
        ));
        if let Some(profile) = it.profile {
            let said = say::founded(stack::profile_match(profile), rule);
            all.push(reason(say::profile_beside(&name), "", said));
        }
    }
    all
}

pub fn flush_reasons(found: &StackAnswer) -> Vec<Reason> {
    let heads = found.rings.iter().any(|ring| ring.lying.head.is_some());
    let lying = found.pairs.iter().filter(|_| heads).flat_map(|pair| lying(found, pair, !found.is_settled(pair)));
    with_bench(lying.collect(), found.remedies().is_some())
}

/// The same of the pairs in which a head holds the band off, with what can be done about it.
pub fn held_off_reasons(found: &StackAnswer) -> Vec<Reason> {
    let of_band = found.pairs.iter().filter(|pair| found.is_of_band(pair));
    let all: Vec<Reason> = of_band.flat_map(|pair| lying(found, pair, true)).collect();
    let any = !all.is_empty();
    with_bench(all, any)
}

/// What the workshop needs for a shaped band, once.
fn with_bench(mut all: Vec<Reason>, shaped: bool) -> Vec<Reason> {
    let needs = || say::founded(say::SHAPED_NEEDS_WHAT, common_practice());
    all.extend(shaped.then(|| reason(say::SHAPED_NEEDS, "", needs())));
    all
}

/// How two neighbours lie, and what can be done where they do not lie flush.
fn lying(found: &StackAnswer, pair: &Pair, ways: bool) -> Vec<Reason> {
    let called = |at| ring_in_stack(found, at, Called::Own);
    let (near, far) = pair.apart.rings;
    let name = say::pair(&called(near), &called(far), pair.later);
    let said = how_they_lie(found, pair, Called::Own);
    let meets = pair.apart.cause.filter(|cause| !cause.heads_meet).and_then(|cause| found.rings.get(cause.meets));
    let rests_on = stack::rests_on(&pair.apart, meets.is_some_and(|ring| ring.usual_dome));
    let mut all = vec![reason(name, say::width(pair.left), say::founded(&said, &rests_on))];
    let Some(remedies) = pair.remedies.as_ref().filter(|_| ways) else { return all };
    let made = pair.apart.cause.map(|cause| called(cause.meets)).unwrap_or_default();
    let said = stack::remedies(remedies, &made).into_iter();
    all.extend(said.map(|(name, figure, said)| reason(name, figure, say::founded(&said, common_practice()))));
    all
}

pub fn wear_reasons(found: &StackAnswer) -> Vec<Reason> {
    let one = |pair: &Pair| {
        let called = |at| ring_in_stack(found, at, Called::Own);
        let (near, far) = (called(pair.apart.rings.0), called(pair.apart.rings.1));
        let name = say::pair(&near, &far, pair.later);
        let said = stack::wear(&pair.wear, &near, &far).into_iter();
        said.map(move |(said, founded)| reason(name.clone(), "", say::founded(&said, standing::standing(founded))))
            .collect::<Vec<_>>()
    };
    found.pairs.iter().flat_map(one).collect()
}

/// The same for the couple, with nobody's own words.
pub fn wear_shown(found: &StackAnswer) -> Option<CoupleView> {
    let one = |pair: &Pair| {
        let called = |at| ring_in_stack(found, at, Called::Plain);
        let (near, far) = (called(pair.apart.rings.0), called(pair.apart.rings.1));
        stack::wear(&pair.wear, &near, &far).into_iter().map(|(said, _)| said).collect::<Vec<_>>()
    };
    shown(showing::WEAR_TITLE, found.pairs.iter().flat_map(one).collect())
}

/// What can be done beside a head, for the couple; with a curve, how the band lies in it.
pub fn ways_shown(found: &StackAnswer) -> Option<CoupleView> {
    let one = |pair: &Pair| {
        let made = pair.apart.cause.map(|cause| ring_in_stack(found, cause.meets, Called::Plain)).unwrap_or_default();
        let ways = pair.remedies.filter(|_| !found.is_settled(pair));
        let ways = ways.map(|it| stack::remedies(&it, &made)).unwrap_or_default().into_iter();
        let ways = ways.map(|(name, _, said)| stack::way_shown(name, &said));
        std::iter::once(how_they_lie(found, pair, Called::Plain)).chain(ways).collect::<Vec<_>>()
    };
    let of_band = found.pairs.iter().filter(|pair| found.is_of_band(pair));
    shown(showing::WAYS_TITLE, of_band.flat_map(one).collect())
}

fn shown(title: &str, lines: Vec<String>) -> Option<CoupleView> {
    let blank = String::new();
    (!lines.is_empty()).then(|| CoupleView { title: title.to_owned(), picture: blank.clone(), figure: blank, lines })
}
