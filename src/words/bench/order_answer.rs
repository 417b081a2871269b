//! The answer of the order size in words.

use crate::answers::order::{Caution, OrderAnswer, Reason as Part, SizedBand, WiderBand};
use crate::trade::fit::CUSTOMARY_UPS;
use crate::trade::measure::Standing;
use crate::trade::sizing::{Size, Stated};
use crate::words::answer::{CoupleView, Headline, Reason, reason};
use crate::words::{bench as say, finger, fit, format, showing, sizing, standing};

/// What a circumference to be made is called.
pub fn size_called(at: Stated) -> String {
    match at {
        Stated::Size(size) => sizing::size_name(size),
        Stated::Diameter(_) | Stated::Circumference(_) => sizing::stated_shown(at),
    }
}

/// The size to make, by its name.
pub fn size_made(size: Size) -> String {
    match size.system().is_millimetres() {
        true => sizing::stated_shown(size.into()),
        false => sizing::size_name(size),
    }
}

fn names_in_range(sized: &SizedBand) -> Vec<String> {
    sized.sizes_in_range().into_iter().map(sizing::size_name).collect()
}

pub fn order_headline(found: &OrderAnswer) -> Headline {
    let Some(sized) = &found.sized else { return Headline::none() };
    let (answer, scale) = (sized.answer(), sized.scale);
    let Some(made) = sized.made else {
        return Headline { figure: size_called(scale.name(answer.exact)), ..Headline::none() };
    };
    let range = match answer.joint_alone() {
        true => say::at_least_for_joint(answer),
        false => say::eight_in_ten(&names_in_range(sized)),
    };
    let mut lines = vec![say::mm_inside(made.size.circumference()), range];
    lines.retain(|line| !line.is_empty());
    if made.overruled {
        lines.push(say::overruled(&size_called(scale.name(answer.size))));
    }
    Headline { figure: size_made(made.size), lines, tone: sized.tone }
}

/// The same for the couple, without its picture.
pub fn order_shown(found: &OrderAnswer) -> Option<CoupleView> {
    let sized = found.sized.as_ref()?;
    let made = sized.made?;
    let names = if sized.answer().joint_alone() { Vec::new() } else { names_in_range(sized) };
    Some(CoupleView {
        title: showing::ORDER_TITLE.to_owned(),
        picture: String::new(),
        lines: vec![showing::inside(made.size.circumference()), showing::likely(&names)],
        figure: sizing::size_in_full(made.size),
    })
}

pub fn order_cautions(found: &OrderAnswer) -> Vec<String> {
    let called = |at| found.sized.as_ref().map(|sized| size_called(sized.scale.name(at))).unwrap_or_default();
    let one = |caution: &Caution| match caution {
        Caution::NoAnswer(error) => fit::error(error),
        Caution::SeveralReadings(count) => say::several_readings(*count),
        Caution::BeyondScale { exact, last } => say::beyond_scale(*exact, &sizing::size_name(*last)),
        Caution::MeasureAgain(reason, Some((name, width))) => fit::measure_again_with(reason, name, *width),
        Caution::MeasureAgain(reason, None) => fit::measure_again(reason),
        Caution::Tie(tie) => fit::tie(&called(tie.smaller), &called(tie.larger), tie.prefer_larger),
        Caution::Joint(finding) => fit::joint(finding),
        Caution::Outlier => say::OUTLIER.to_owned(),
        Caution::Wish(wish) => finger::wish_means(*wish).to_owned(),
        Caution::FirstRing => fit::first_ring().to_owned(),
    };
    found.cautions.iter().map(one).collect()
}

/// From the reading to the answer, each part with its amount, its reason and its standing.
pub fn order_reasons(found: &OrderAnswer) -> Vec<Reason> {
    found.reasons().iter().map(part).collect()
}

fn part(part: &Part) -> Reason {
    match part {
        Part::Reading { as_read, stated, gauge } => {
            let read = stated.map(sizing::stated_in_full).unwrap_or_default();
            let why = say::read_as(&read, &gauge.name);
            reason(say::reading_with(&gauge.gauge), format::mm(as_read.0, 2), why)
        }
        Part::Together { as_read, combined, singles } => {
            let names: Vec<String> = singles.iter().map(|at| size_called(*at)).collect();
            let why = say::weighed(combined, &names);
            reason(say::readings_together(singles.len()), format::mm(as_read.0, 2), why)
        }
        Part::Shift(shift) => {
            let why = if shift.standing == Standing::Yours && shift.amount != shift.worked_out {
                fit::worked_out(shift.worked_out)
            } else {
                fit::shift_reason(&shift.kind)
            };
            let why = format!("{why} · {}", fit::shift_standing(shift));
            reason(fit::shift_name(&shift.kind), format::mm_signed(shift.amount, 2), why)
        }
        Part::Sum(answer) => {
            Reason { sum: true, ..reason(say::TOGETHER, format::mm(answer.exact.0, 2), say::range(answer)) }
        }
        Part::ToMake { step, size, off } => {
            reason(say::nearest_step(*step), sizing::size_name(*size), say::off_by(*off))
        }
    }
}

/// What a band one millimetre wider would take.
pub fn order_wider(found: &OrderAnswer) -> String {
    match found.sized.as_ref().map(|sized| sized.wider) {
        Some(WiderBand::Takes(wider)) => fit::wider(&wider),
        Some(WiderBand::AmountStands) => fit::WIDER_BUT_YOURS.to_owned(),
        Some(WiderBand::JointDecides) => fit::WIDER_BUT_JOINT.to_owned(),
        Some(WiderBand::None) | None => String::new(),
    }
}

/// What benches customarily go up by, beside the answer.
pub fn customary_reasons() -> Vec<Reason> {
    let row = |up| reason(say::customary(up), "", standing::standing(Standing::CommonPractice));
    CUSTOMARY_UPS.iter().map(row).collect()
}

/// The inputs in one line.
pub fn order_summary(found: &OrderAnswer) -> String {
    let typed = &found.typed;
    let mut parts: Vec<String> = Vec::new();
    if typed.others > 0 {
        parts.push(say::readings(typed.others + 1));
    } else {
        parts.extend(typed.size.meant().map(|size| sizing::stated_name(size.stated)));
        parts.extend(typed.gauge.as_ref().map(|own| say::gauge_short(&own.gauge)));
    }
    if let Some(basis) = &typed.basis {
        parts.extend(basis.readings.first().map(|newest| fit::hands(newest.hands).to_ascii_lowercase()));
        parts.extend(basis.width.zip(basis.profile).map(|(width, profile)| say::band(width, profile)));
        if !basis.neighbours.is_empty() {
            parts.push(say::beside(&basis.neighbours));
        }
    }
    parts.join(" · ")
}

/// The size worn in the stack, and alone, where they differ: labels of the choice.
pub fn order_worn(sized: &SizedBand) -> Option<(String, String)> {
    let (alone, stack) = sized.worn_choice()?;
    Some((say::size_worn_in_stack(&size_called(stack)), say::size_worn_alone(&size_called(alone))))
}
