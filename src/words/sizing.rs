//! Sizes and size systems in words.

use super::format;
use crate::trade::limits::{self, Amount, Limit};
use crate::trade::measure::Length;
use crate::trade::sizing::{Conversion, Lean, Off, Published, Size, Stated, Step, System, chart_differs_at_most};

/// A size as it is written on its own scale: "M½", "Z+1½", "6¾", "54", "13¾", "17.25 mm".
pub fn size_name(size: Size) -> String {
    let (whole, quarters) = (size.quarters().div_euclid(4), size.quarters().rem_euclid(4));
    match size.system() {
        System::Uk => format!("{}{}", letter(whole), fraction(quarters)),
        System::Us | System::Iso | System::Japan | System::Italy => match (whole, quarters) {
            (0, 1..) => fraction(quarters).to_owned(),
            _ => format!("{whole}{}", fraction(quarters)),
        },
        System::Diameter => format!("{} mm", trimmed(size.diameter().0)),
        System::Circumference => format!("{} mm", trimmed(size.circumference().0)),
    }
}

/// A size that says which system it is of: "UK M½", "US 6¾", "ISO 54", "17.25 mm across".
pub fn size_in_full(size: Size) -> String {
    in_full(size.system(), &size_name(size))
}

/// What was stated, as it is written on its own scale; millimetres to the last figure that is kept.
pub fn stated_name(stated: Stated) -> String {
    match stated {
        Stated::Size(size) => size_name(size),
        Stated::Diameter(diameter) => format!("{} mm", trimmed(diameter.0)),
        Stated::Circumference(circumference) => format!("{} mm", trimmed(circumference.0)),
    }
}

/// What was stated, and in which system.
pub fn stated_in_full(stated: Stated) -> String {
    in_full(stated.system(), &stated_name(stated))
}

/// What was stated, with millimetres to the hundredth, for answers: "17.19 mm".
pub fn stated_shown(stated: Stated) -> String {
    match stated {
        Stated::Size(size) => size_name(size),
        Stated::Diameter(diameter) => format!("{} mm", format::mm(diameter.0, 2)),
        Stated::Circumference(circumference) => format!("{} mm", format::mm(circumference.0, 2)),
    }
}

/// The name of a system, as a label.
pub fn system_name(system: System) -> &'static str {
    match system {
        System::Uk => "UK letters",
        System::Us => "US numbers",
        System::Iso => "ISO number",
        System::Japan => "Japanese numbers",
        System::Italy => "Italian numbers",
        System::Diameter => "Inside diameter",
        System::Circumference => "Inside circumference",
    }
}

/// Where a system is used.
pub fn system_where(system: System) -> &'static str {
    match system {
        System::Uk => "UK, Ireland, Australia, New Zealand, South Africa",
        System::Us => "United States, Canada, Mexico",
        System::Iso => "much of Europe: millimetres round the inside",
        System::Japan => "Japan",
        System::Italy => "Italy, Spain, Switzerland",
        System::Diameter => "Germany and the Netherlands: ask which they mean",
        System::Circumference => "Germany and the Netherlands: ask which they mean",
    }
}

/// What a system rests on.
pub fn system_source(system: System) -> &'static str {
    match system {
        System::Uk => {
            "British Standard BS 6820, by way of encyclopaedias: A is 37.5 mm round the inside, each letter 1.25 mm more."
        }
        System::Us => {
            "There is no standard. Here the diameter in inches is 0.458 + 0.032 for each size; \
             other published formulas differ by up to 0.3 mm round the inside."
        }
        System::Iso => "ISO 8653: the number is the inside circumference in millimetres. Halves are common practice.",
        System::Japan => {
            "The everyday custom scale (JCS), not JIS S 4700: size 1 is 13 mm across, each size a third of \
             a millimetre more. Printed charts stray from it."
        }
        System::Italy => "Common practice, as encyclopaedias print it: millimetres round the inside, less 40.",
        System::Diameter => "Millimetres across the inside: the circumference divided by pi.",
        System::Circumference => "Millimetres round the inside, as ISO 8653 takes the size.",
    }
}

/// The name of a step, as a choice.
pub fn step_name(step: Step) -> &'static str {
    match step {
        Step::Quarter => "quarter sizes",
        Step::Half => "half sizes",
        Step::Whole => "whole sizes",
    }
}

/// What is published about a size, beside the rule here.
pub fn published(size: Size, found: Published) -> String {
    let name = size_in_full(size);
    match found {
        Published::Chart { prints, larger } if larger.abs() <= CHART_ROUNDS => {
            format!("The encyclopaedia’s chart prints {name} as {} mm: as here, rounded.", format::mm(prints.0, 1))
        }
        Published::Chart { prints, larger } => format!(
            "The encyclopaedia’s chart prints {name} as {} mm, {} mm {} than the rule. The rule stands.",
            format::mm(prints.0, 1),
            format::mm(larger.abs(), 2),
            if larger > Length::ZERO { "larger" } else { "smaller" },
        ),
        Published::LeftOut => format!("The encyclopaedia’s chart leaves {name} out."),
        Published::UsFormulas => {
            "US: four published formulas differ by 0.2 mm round the inside at size 7 and by 0.3 mm at 12.".to_owned()
        }
        Published::JapanColumns => {
            "Japan: printed charts stray from the custom scale by up to 1.7 mm round the inside.".to_owned()
        }
    }
}

/// The chart has one decimal.
const CHART_ROUNDS: Length = Length::tenthousandths(501);

/// The scales that are not here, and why.
pub const NOT_HERE: &str = "India, China and Hong Kong: not here, for no source says what their numbers measure. Ask for \
                            millimetres.";

/// A size in a table: "M½ (+0.12)", with the millimetres by which it is looser; millimetres as they are; a dash where
/// the scale has no such size.
pub fn in_table(found: &Conversion) -> String {
    if found.is_beyond() {
        return NO_SUCH_SIZE.to_owned();
    }
    let name = stated_shown(found.stated);
    let name = name.trim_end_matches(" mm");
    if found.stated.system().is_millimetres() || found.off.lean() == Lean::Exact {
        return name.to_owned();
    }
    format!("{name} ({})", format::mm_signed(found.off.0, 2))
}

/// What stands in the place of a size beyond the ends of a scale.
pub const NO_SUCH_SIZE: &str = "–";

/// How far the nearest size of a scale is off, or that there is none.
pub fn nearest_off(found: &Conversion) -> String {
    if found.is_beyond() { "no such size on this scale".to_owned() } else { off(found.off) }
}

/// What a size is called on another scale, or the dash.
pub fn on_scale(found: &Conversion) -> String {
    if found.is_beyond() { NO_SUCH_SIZE.to_owned() } else { stated_shown(found.stated) }
}

/// Where published charts differ, under a table of sizes.
pub fn charts_differ() -> String {
    let most = |system| chart_differs_at_most(system).map_or_else(String::new, |most| format::mm(most, 2));
    format!(
        "Published charts differ from these rules, round the inside: an encyclopaedia’s by up to {} mm for UK letters, \
         {} mm for US and {} mm for Italian numbers; four published US formulas by up to 0.3 mm; printed Japanese \
         columns by up to 1.7 mm.",
        most(System::Uk),
        most(System::Us),
        most(System::Italy),
    )
}

/// How far a size is off: "0.31 mm looser", "exact".
pub fn off(off: Off) -> String {
    let size = format::mm(off.0.abs(), 2);
    match off.lean() {
        Lean::Exact => "exact".to_owned(),
        Lean::Tighter => format!("{size} mm tighter"),
        Lean::Looser => format!("{size} mm looser"),
    }
}

/// Both ends of the accepted circumferences, as "36 and 80".
pub(super) fn circumference_ends() -> (String, String) {
    let range = limits::of(Limit::Circumference);
    let end = |amount| match amount {
        Amount::Length(length) => trimmed(length),
        Amount::Percent(_) | Amount::Days(_) | Amount::Characters(_) => String::new(),
    };
    (end(range.least), end(range.most))
}

/// A length in millimetres with as many decimals as it has, up to the four that are kept: "17.25", "54", "−0.5".
pub fn trimmed(length: Length) -> String {
    let units = length.in_tenthousandths();
    let (whole, rest) = (units.unsigned_abs() / 10_000, units.unsigned_abs() % 10_000);
    let sign = if units < 0 { "−" } else { "" };
    let decimals = format!("{rest:04}");
    let decimals = decimals.trim_end_matches('0');
    if decimals.is_empty() { format!("{sign}{whole}") } else { format!("{sign}{whole}.{decimals}") }
}

fn in_full(system: System, name: &str) -> String {
    match system {
        System::Uk => format!("UK {name}"),
        System::Us => format!("US {name}"),
        System::Iso => format!("ISO {name}"),
        System::Japan => format!("Japan {name}"),
        System::Italy => format!("Italy {name}"),
        System::Diameter => format!("{name} across"),
        System::Circumference => format!("{name} round"),
    }
}

fn letter(place: i32) -> String {
    match u8::try_from(place).ok().filter(|place| *place < 26) {
        Some(place) => char::from(b'A' + place).to_string(),
        None => format!("Z+{}", place - 25),
    }
}

fn fraction(quarters: i32) -> &'static str {
    match quarters {
        1 => "¼",
        2 => "½",
        3 => "¾",
        _ => "",
    }
}
