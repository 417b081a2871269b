//! What the stack comes to, reason by reason: room, match, flush or not, wear.

use super::fields::Elsewhere;
use super::reckon::{Pair, Reckoned};
use crate::parts::reasons::{Reason, reason};
use crate::trade::measure::{Length, Standing};
use crate::trade::stack::{House, StackInputs, Stretch, stack};
use crate::words::{bench as say, remedy as say_remedy, stack as say_stack, standing};

pub fn room(found: &Reckoned) -> Vec<Reason> {
    let (Some(stack), Some(gap)) = (&found.stack, found.gap) else { return Vec::new() };
    let rule = standing::standing(Standing::CommonPractice);
    let mut all = vec![reason(
        say::WORN_TOGETHER_NOW,
        say::width(stack.now.total),
        say::founded(&say_stack::summary(stack, &stack.now), rule),
    )];
    for (at, step) in stack.steps.iter().enumerate() {
        let summary = say::founded(&say_stack::summary(stack, step), rule);
        let name =
            if at + 1 == stack.steps.len() { say::WITH_RINGS_TO_COME.to_owned() } else { say::with_later(at + 1) };
        all.push(reason(name, say::width(step.total), summary));
    }
    all.extend(found.at_top.as_ref().map(|at_top| {
        let summary = say::founded(&say_stack::summary(at_top, &at_top.later), rule);
        let name = if found.bay.is_some() { say_remedy::WITH_BAY } else { say_remedy::WITH_GAP };
        reason(name, say::width(at_top.later.total), summary)
    }));
    all.push(reason(say::GAPS, say::width(gap), rule));
    let left = say::left_of(stack.later.left);
    all.push(reason(say::LEFT, left, say::founded(&say_stack::further(&stack.later), rule)));
    all.push(reason(
        say::FREE_LENGTH,
        say::width(stack.free_length),
        format!("{} · {}", say::FREE_HOW, standing::standing(stack.free_standing)),
    ));
    for tighter in &found.tighter {
        let name = found.name(tighter.ring);
        let why = say::founded(&say_stack::tighter(tighter.by, &name), rule);
        all.push(reason(say::fit_later(&name), say_stack::by(tighter.by), why));
    }
    all
}

/// The other fingers of both hands, each against its own free length.
pub fn elsewhere(found: &Reckoned, others: &[Elsewhere], house: House) -> Vec<Reason> {
    let rule = standing::standing(Standing::CommonPractice);
    let mut all = Vec::new();
    for on in others {
        let measured = found.elsewhere.iter().find(|(finger, _)| *finger == on.finger).map(|(_, free)| *free);
        if on.without_width > 0 {
            all.push(reason(say::without_width(on.finger, on.without_width), "", ""));
        }
        let Ok(there) = stack(&StackInputs { rings: on.rings.clone(), measured, house }) else { continue };
        let free = standing::standing(there.free_standing);
        let total = |stretch: &Stretch| {
            let said = say::founded(&say_stack::summary(&there, stretch), rule);
            (say::width(stretch.total), format!("{said} · {}: {free}", say::FREE_LENGTH))
        };
        let (now, said) = total(&there.now);
        all.push(reason(say::on_finger_now(on.finger), now, said));
        if !there.steps.is_empty() {
            let (later, said) = total(&there.later);
            all.push(reason(say::on_finger_later(on.finger), later, said));
        }
        let further = say::founded(&say_stack::further(&there.later), rule);
        all.push(reason(say::on_finger_left(on.finger), say::left_of(there.later.left), further));
    }
    all
}

pub fn matches(found: &Reckoned) -> Vec<Reason> {
    let rule = standing::standing(Standing::CommonPractice);
    let mut all = Vec::new();
    for it in &found.matches {
        let Some(ring) = found.rings.get(it.ring) else { continue };
        all.push(reason(
            say::shoulder_match(&ring.name),
            say::shoulder_figures(it.band, ring.widths.shoulders),
            say::founded(&say::shoulder_said(it.found, ring.top_known), rule),
        ));
        if let Some(profile) = it.profile {
            let said = say::founded(say_stack::profile_match(profile), rule);
            all.push(reason(say::profile_beside(&ring.name), "", said));
        }
    }
    all
}

pub fn flush(found: &Reckoned) -> Vec<Reason> {
    let heads = found.rings.iter().any(|ring| ring.lying.head.is_some());
    let lying = found.pairs.iter().filter(|_| heads).flat_map(|pair| {
        // With a bay deep enough there is nothing more to be done.
        let settled = found.bay.is_some() && found.is_of_band(pair) && pair.left == Length::ZERO;
        lying(found, pair, !settled)
    });
    with_bench(lying.collect(), found.remedies().is_some())
}

/// The same of the pairs in which a head holds the band off, with what can be done about it.
pub fn held_off(found: &Reckoned) -> Vec<Reason> {
    let of_band = found.pairs.iter().filter(|pair| found.is_of_band(pair));
    let all: Vec<Reason> = of_band.flat_map(|pair| lying(found, pair, true)).collect();
    let any = !all.is_empty();
    with_bench(all, any)
}

/// What the bench needs for a shaped band, once.
fn with_bench(mut all: Vec<Reason>, shaped: bool) -> Vec<Reason> {
    let rule = standing::standing(Standing::CommonPractice);
    all.extend(shaped.then(|| reason(say::SHAPED_NEEDS, "", say::founded(say::SHAPED_NEEDS_WHAT, rule))));
    all
}

/// How two neighbours lie, and what can be done where they do not lie flush.
fn lying(found: &Reckoned, pair: &Pair, ways: bool) -> Vec<Reason> {
    let (near, far) = pair.apart.rings;
    let name = say::pair(&found.name(near), &found.name(far), pair.later);
    let said = found.lie(pair, &|at| found.name(at));
    let meets = pair.apart.cause.filter(|cause| !cause.heads_meet).and_then(|cause| found.rings.get(cause.meets));
    let rests_on = say_stack::rests_on(&pair.apart, meets.is_some_and(|ring| ring.usual_dome));
    let mut all = vec![reason(name, say::width(pair.left), say::founded(&said, &rests_on))];
    let Some(remedies) = pair.remedies.as_ref().filter(|_| ways) else { return all };
    let made = pair.apart.cause.map(|cause| found.name(cause.meets)).unwrap_or_default();
    let rule = standing::standing(Standing::CommonPractice);
    let said = say_stack::remedies(remedies, &made).into_iter();
    all.extend(said.map(|(name, figure, said)| reason(name, figure, say::founded(&said, rule))));
    all
}

pub fn wear(found: &Reckoned) -> Vec<Reason> {
    let mut all = Vec::new();
    for pair in &found.pairs {
        let (near, far) = (found.name(pair.apart.rings.0), found.name(pair.apart.rings.1));
        for (said, founded) in say_stack::wear(&pair.wear, &near, &far) {
            let name = say::pair(&near, &far, pair.later);
            all.push(reason(name, "", say::founded(&said, standing::standing(founded))));
        }
    }
    all
}
