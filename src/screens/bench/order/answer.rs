//! The order size as it is shown: drawn, said, and reasoned.

use super::reckon::Reckoned;
use crate::app::show::Shown;
use crate::parts::answer::{Said, Tone};
use crate::parts::reasons::{Reason, reason};
use crate::pictures::ladder::{self, Ladder, Named};
use crate::trade::fit::Worn;
use crate::trade::fit::{self, CUSTOMARY_UPS, JointFinding, JointHelp, Term};
use crate::trade::measure::{Length, Standing};
use crate::trade::sizing::{self, Step};
use crate::words::{
    bench as say, finger as say_finger, fit as say_fit, format, showing, sizing as say_sizing, standing,
};

/// The ladder from the reading to the size.
pub fn drawn(found: &Reckoned) -> Option<String> {
    let (order, answer, reading) = (found.order.as_ref()?, found.answer()?, found.size.meant()?);
    let named = |at| Named { at, label: found.name_at(at) };
    let ticks = sizing::all(found.system, found.step).map(|size| Named {
        at: size.circumference(),
        label: if size.is_on(Step::Whole) { say_sizing::size_name(size) } else { String::new() },
    });
    let shifts = answer.shifts.iter().filter(|shift| shift.amount != Length::ZERO);
    let shifts =
        shifts.map(|shift| ladder::Shift { label: say::shift_short(&shift.kind).to_owned(), amount: shift.amount });
    let (worn, other) =
        if found.is_in_stack() { (Worn::InStack, &order.alone) } else { (Worn::Alone, &order.in_stack) };
    let drawn = Ladder {
        ticks: ticks.collect(),
        reading: Named {
            at: order.as_read,
            label: match order.combined {
                Some(_) => found.name_at(order.as_read),
                None => say_sizing::stated_name(reading.stated),
            },
        },
        singles: singles(found),
        shifts: shifts.collect(),
        best: answer.exact,
        range: if answer.joint_alone() { answer.base } else { (answer.low, answer.high) },
        order: named(answer.size),
        worn,
        other: (other.size != answer.size).then(|| named(other.size)),
        joint: found
            .joint
            .meant()
            .map(|joint| Named { at: joint.circumference(), label: say_sizing::stated_name(joint.stated) }),
    };
    Some(ladder::ladder(&drawn).svg)
}

/// Each of several readings as it was read, and whether it stands apart.
fn singles(found: &Reckoned) -> Vec<ladder::Single> {
    let combined = found.order.as_ref().and_then(|order| order.combined.as_ref());
    let (Some(combined), Some(inputs)) = (combined, &found.inputs) else { return Vec::new() };
    let one = |(reading, part): (&fit::Reading, &fit::Part)| ladder::Single {
        read: Named { at: reading.as_read, label: found.name_at(reading.as_read) },
        apart: part.outlier,
    };
    inputs.readings().into_iter().zip(&combined.parts).map(one).collect()
}

pub fn said(found: &Reckoned) -> Said {
    let Some(answer) = found.answer() else {
        return Said { figure: String::new(), lines: Vec::new(), tone: Tone::Care };
    };
    let Some(made) = found.made() else {
        return Said { figure: found.name_at(answer.exact), lines: Vec::new(), tone: Tone::Care };
    };
    let range = match answer.joint_alone() {
        true => say::at_least_for_joint(answer),
        false => say::eight_in_ten(&found.names_in_range()),
    };
    let mut lines = vec![say::mm_inside(made.size.circumference()), range];
    lines.retain(|line| !line.is_empty());
    if made.overruled {
        lines.push(say::overruled(&found.name_at(answer.size)));
    }
    let again = found.order.as_ref().is_some_and(|order| !order.measure_again.is_empty());
    let loose = matches!(answer.joint, Some(JointFinding::Decides { help, .. }) if help != JointHelp::Accept);
    let tone = if again || loose || found.is_beyond() { Tone::Care } else { Tone::Rouge };
    Said { figure: made.name, lines, tone }
}

/// The same for the couple.
pub fn shown(found: &Reckoned) -> Option<Shown> {
    let (answer, made) = (found.answer()?, found.made()?);
    let names = if answer.joint_alone() { Vec::new() } else { found.names_in_range() };
    Some(Shown {
        title: showing::ORDER_TITLE.to_owned(),
        picture: drawn(found).unwrap_or_default(),
        lines: vec![showing::inside(made.size.circumference()), showing::likely(&names)],
        figure: say_sizing::size_in_full(made.size),
    })
}

/// What wants to be read before anything is ordered.
pub fn cautions(found: &Reckoned) -> Vec<String> {
    let mut all: Vec<String> = found.error.iter().map(say_fit::error).collect();
    if found.size.readings.len() > 1 && found.size.meant().is_none() {
        all.push(say::several_readings(found.size.readings.len()));
    }
    let (Some(order), Some(answer)) = (&found.order, found.answer()) else { return all };
    if found.is_beyond() {
        all.push(say::beyond_scale(answer.exact, &say_sizing::size_name(found.nearest(answer.size).size)));
    }
    all.extend(order.measure_again.iter().map(|reason| match found.nearer_gauge(reason) {
        Some((name, width)) => say_fit::measure_again_with(reason, name, *width),
        None => say_fit::measure_again(reason),
    }));
    if let Some(tie) = &answer.tie {
        all.push(say_fit::tie(&found.name_at(tie.smaller), &found.name_at(tie.larger), tie.prefer_larger));
    }
    all.extend(answer.joint.iter().map(say_fit::joint));
    if order.has_outlier() {
        all.push(say::OUTLIER.to_owned());
    }
    all.extend(found.wishes.iter().map(|wish| say_finger::wish_means(*wish).to_owned()));
    if order.first_ring {
        all.push(say_fit::first_ring().to_owned());
    }
    all
}

/// From the reading to the answer, each part with its amount, its reason and its standing.
pub fn reasons(found: &Reckoned) -> Vec<Reason> {
    let (Some(order), Some(answer), Some(gauge)) = (&found.order, found.answer(), &found.gauge) else {
        return Vec::new();
    };
    let mut all = Vec::new();
    if let Some(combined) = &order.combined {
        let readings = found.inputs.as_ref().map(|inputs| inputs.readings().len()).unwrap_or_default();
        let names: Vec<String> = singles(found).into_iter().map(|single| single.read.label).collect();
        let weighed = say::weighed(combined, &names);
        all.push(reason(say::readings_together(readings), format::mm(order.as_read.0, 2), weighed));
    }
    let read = found.size.meant().map(|size| say_sizing::stated_in_full(size.stated)).unwrap_or_default();
    if all.is_empty() {
        let why = say::read_as(&read, &gauge.name);
        all.push(reason(say::reading_with(&gauge.gauge), format::mm(order.as_read.0, 2), why));
    }
    all.extend(answer.shifts.iter().map(|shift| {
        let why = if shift.standing == Standing::Yours && shift.amount != shift.worked_out {
            say_fit::worked_out(shift.worked_out)
        } else {
            say_fit::shift_reason(&shift.kind)
        };
        let why = format!("{why} · {}", say_fit::shift_standing(shift));
        reason(say_fit::shift_name(&shift.kind), format::mm_signed(shift.amount, 2), why)
    }));
    let mut sum = reason(say::TOGETHER, format::mm(answer.exact.0, 2), say::range(answer));
    sum.sum = true;
    all.push(sum);
    all.extend(found.worked_out(answer).map(|nearest| {
        let off = say::off_by(nearest.circumference().0 - answer.exact.0);
        reason(say::nearest_step(found.step), say_sizing::size_name(nearest), off)
    }));
    all
}

/// What a band one millimetre wider would take.
pub fn wider(found: &Reckoned) -> String {
    let own = found.inputs.as_ref().is_some_and(|inputs| inputs.overrules.of(Term::Width).is_some());
    if own {
        return say_fit::WIDER_BUT_YOURS.to_owned();
    }
    if found.answer().is_some_and(fit::Answer::joint_alone) {
        return say_fit::WIDER_BUT_JOINT.to_owned();
    }
    found.wider().map(|wider| say_fit::wider(&wider)).unwrap_or_default()
}

/// What benches customarily go up by, beside the answer.
pub fn customary() -> Vec<Reason> {
    let row = |up| reason(say::customary(up), String::new(), standing::standing(Standing::CommonPractice));
    CUSTOMARY_UPS.iter().map(row).collect()
}

/// The inputs in one line.
pub fn summary(found: &Reckoned) -> String {
    let mut parts: Vec<String> = Vec::new();
    if found.others > 0 {
        parts.push(say::readings(found.others + 1));
    } else {
        parts.extend(found.size.meant().map(|size| say_sizing::stated_name(size.stated)));
        parts.extend(found.gauge.as_ref().map(|own| say::gauge_short(&own.gauge)));
    }
    if let Some(inputs) = &found.inputs {
        parts.push(say_fit::hands(inputs.reading.hands).to_ascii_lowercase());
        parts.extend(found.profile.map(|profile| say::band(inputs.band.width, profile)));
        if !inputs.neighbours.is_empty() {
            parts.push(say::beside(&inputs.neighbours));
        }
    }
    parts.join(" · ")
}
