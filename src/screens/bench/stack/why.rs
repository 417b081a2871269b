//! What the stack comes to, reason by reason: room, match, flush or not, wear.

use super::fields::{self, Elsewhere};
use super::reckon::{Pair, Reckoned};
use crate::app::show::Shown;
use crate::book::couple::{Couple, Ring};
use crate::parts::reasons::{Reason, reason};
use crate::trade::limits::Whole;
use crate::trade::measure::{Length, Standing};
use crate::trade::stack::RingState;
use crate::trade::stack::{House, StackInputs, Stretch, stack};
use crate::trade::wearer::Wearer;
use crate::words::{bench as say, book as say_book, remedy as say_remedy, showing, stack as say_stack, standing};

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

/// Rings that hold those nearer the web.
pub fn holding(couple: Couple<'_>, who: Wearer) -> Vec<Reason> {
    let rule = standing::standing(Standing::CommonPractice);
    let here = fields::here(couple, who);
    let band = couple.band(who);
    let one = |(at, ring): (usize, &Ring)| {
        let band = band.width.is_some() && usize::from(band.place.unwrap_or(Whole(0)).0) <= at;
        let name = say::named(&say_book::ring_name(ring), RingState::Worn);
        let said = say_stack::holds(&name, at + usize::from(band));
        ring.holds.then(|| reason(say::HOLDING, "", say::founded(&said, rule)))
    };
    here.iter().enumerate().filter_map(one).collect()
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
    let one = |pair: &Pair| {
        let (near, far) = (found.name(pair.apart.rings.0), found.name(pair.apart.rings.1));
        let name = say::pair(&near, &far, pair.later);
        let said = say_stack::wear(&pair.wear, &near, &far).into_iter();
        said.map(move |(said, founded)| reason(name.clone(), "", say::founded(&said, standing::standing(founded))))
            .collect::<Vec<_>>()
    };
    found.pairs.iter().flat_map(one).collect()
}

/// The same for the couple, with nobody's own words.
pub fn wear_shown(found: &Reckoned) -> Option<Shown> {
    let one = |pair: &Pair| {
        let (near, far) = (found.plain_name(pair.apart.rings.0), found.plain_name(pair.apart.rings.1));
        say_stack::wear(&pair.wear, &near, &far).into_iter().map(|(said, _)| said).collect::<Vec<_>>()
    };
    shown(showing::WEAR_TITLE, found.pairs.iter().flat_map(one).collect())
}

/// What can be done beside a head, for the couple; with a bay, how the band lies in it.
pub fn ways_shown(found: &Reckoned) -> Option<Shown> {
    let name = |at: usize| found.plain_name(at);
    let one = |pair: &Pair| {
        let made = pair.apart.cause.map(|cause| name(cause.meets)).unwrap_or_default();
        let settled = found.bay.is_some() && pair.left == Length::ZERO;
        let ways = pair.remedies.filter(|_| !settled).map(|it| say_stack::remedies(&it, &made)).unwrap_or_default();
        let ways = ways.into_iter().map(|(name, _, said)| say_stack::way_shown(name, &said));
        std::iter::once(found.lie(pair, &name)).chain(ways).collect::<Vec<_>>()
    };
    let of_band = found.pairs.iter().filter(|pair| found.is_of_band(pair));
    shown(showing::WAYS_TITLE, of_band.flat_map(one).collect())
}

fn shown(title: &str, lines: Vec<String>) -> Option<Shown> {
    let picture = String::new();
    (!lines.is_empty()).then(|| Shown { title: title.to_owned(), picture, figure: String::new(), lines })
}
