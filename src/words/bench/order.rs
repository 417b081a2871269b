//! The words of the order size.

use super::*;

use crate::book::couple::Couple;
use crate::book::value::OwnGauge;
use crate::trade::band::Profile;
use crate::trade::fit::{Answer, Combined, CustomaryUp, Gauge, GaugeKind, Hands, Part, ReadAt, ShiftKind, Sits, Term};
use crate::trade::measure::{Circumference, Length};
use crate::trade::sizing::Step;
use crate::trade::wearer::Wearer;
use crate::words::lengths::plain;
use crate::words::{band as say_band, format};
pub const THE_READING: &str = "The reading";
pub const THE_BAND: &str = "The band to make";
pub const OTHER_GAUGE: &str = "another gauge or a worn ring";
pub const GAUGE_KIND: &str = "It is";
pub const GAUGE_SET: &str = "Tried on";
pub const GAUGE_STICK: &str = "Read on a stick";
pub const GAUGE_WIDTH: &str = "Width of the gauge";
pub const GAUGE_WIDTH_HINT: &str = "A ring already worn stands for a gauge: its own width.";
pub const GAUGE_BORE: &str = "Its inside";
pub const READ_AT: &str = "Where on the stick";
pub const NEIGHBOURS: &str = "Rings worn beside it now";
pub const NEIGHBOURS_HINT: &str =
    "Widths in mm, like 2.6 and 2: the one on either side of it, and none that is still to come.";
pub const MORE: &str = "Joint, rings beside the gauge, and more";
pub const JOINT: &str = "Joint";
pub const JOINT_HINT: &str = "The smallest gauge that passes with a firm twist, as wide as the band. Empty: it passes.";
pub const JOINT_WIDTH: &str = "Width of that gauge";
pub const JOINT_WIDTH_HINT: &str = "Empty: as wide as the band, as it ought to be.";
pub const BEADS: &str = "Sizing beads";
pub const TAKES_BEADS: &str = "Can be fitted";
pub const CHANGING: &str = "The finger is changing";
pub const CHANGING_HINT: &str = "It is not as it usually is: measure again later. No reason is asked or kept.";
pub const WHICH_WORN: &str = "Which one counts";
pub const MAKE: &str = "Make";
pub const TOGETHER: &str = "Together";
pub const CUSTOMARY: &str = "What benches customarily do";
pub const CONFIRM: &str =
    "A calculation, not a promise: hands change. Confirm with your bench, and keep days in hand for a try-on.";

pub fn hands_short(hands: Hands) -> &'static str {
    match hands {
        Hands::Cold => "Cold",
        Hands::Normal => "Normal",
        Hands::Warm => "Warm",
    }
}

/// "Ines · left ring finger · band 6 mm court".
pub fn order_subtitle(couple: Couple<'_>, who: Wearer) -> String {
    let mut parts = whose(couple, who);
    let band = couple.band(who);
    if let Some(width) = band.width {
        let profile = band.profile.map(|profile| format!(" {}", say_band::profile(profile))).unwrap_or_default();
        parts.push(format!("band {} mm{profile}", plain(width)));
    }
    parts.join(" · ")
}

/// A gauge in a list: "narrow rings, 3 mm, flat inside".
pub fn gauge(own: &OwnGauge) -> String {
    format!("{}, {} mm, {}", own.name, plain(own.gauge.width), say_band::bore(own.gauge.bore))
}

/// The gauge of the couple's reading, in the list.
pub fn as_taken(own: &OwnGauge) -> String {
    format!("as taken: {}, {} mm", own.name, plain(own.gauge.width))
}

/// "3 mm gauge".
pub fn gauge_short(gauge: &Gauge) -> String {
    match gauge.kind {
        GaugeKind::RingSet => format!("{} mm gauge", plain(gauge.width)),
        GaugeKind::Stick { .. } => format!("{} mm ring on a stick", plain(gauge.width)),
    }
}

/// "6 mm court".
pub fn band(width: Length, profile: Profile) -> String {
    format!("{} mm {}", plain(width), say_band::profile(profile))
}

pub fn beside(neighbours: &[Length]) -> String {
    format!("beside {} mm", widths(neighbours))
}

pub fn mm_inside(at: Circumference) -> String {
    format!("{} mm inside", format::mm(at.0, 2))
}

/// "8 in 10: M½, N, N½"; of many only the ends.
pub fn eight_in_ten(names: &[String]) -> String {
    match names {
        [] => String::new(),
        [only] => format!("8 in 10: {only}"),
        few if few.len() <= 5 => format!("8 in 10: {}", few.join(", ")),
        many => format!("8 in 10: {} to {}, {} sizes", many[0], many[many.len() - 1], many.len()),
    }
}

pub fn overruled(worked_out: &str) -> String {
    format!("your choice; worked out: {worked_out}")
}

pub fn size_worn_alone(size: &str) -> String {
    format!("{size} worn alone")
}

pub fn size_worn_in_stack(size: &str) -> String {
    format!("{size} in the stack")
}

/// The worked-out circumference lies beyond the last size of the scale.
pub fn beyond_scale(at: Circumference, last: &str) -> String {
    format!(
        "The scale ends at {last}: {} mm inside has no size on it. Give the bench millimetres.",
        format::mm(at.0, 2)
    )
}

/// A shift on the ladder, in few words.
pub fn shift_short(kind: &ShiftKind) -> &'static str {
    match kind {
        ShiftKind::Gauge => "gauge",
        ShiftKind::Several { term, .. } => term_short(*term),
        ShiftKind::Sits(Sits::Tight) => "sits tight",
        ShiftKind::Sits(Sits::Right) => "sits right",
        ShiftKind::Sits(Sits::Spins) => "spins",
        ShiftKind::Sits(Sits::SticksInSummer) => "sticks in summer",
        ShiftKind::Offset => "your own leaning",
        ShiftKind::Stick { read_at: ReadAt::Centre, .. } => "read at the middle",
        ShiftKind::Stick { read_at: ReadAt::LowerEdge, .. } => "read at the edge",
        ShiftKind::Width { apart, .. } if *apart < Length::ZERO => "narrower",
        ShiftKind::Width { .. } => "wider",
        ShiftKind::Bore { band_relief, gauge_relief, .. } if band_relief < gauge_relief => "flatter bore",
        ShiftKind::Bore { .. } => "domed bore",
        ShiftKind::Level { .. } => "as a wider band",
        ShiftKind::Hands(Hands::Cold) => "cold hands",
        ShiftKind::Hands(Hands::Normal) => "normal hands",
        ShiftKind::Hands(Hands::Warm) => "warm hands",
        ShiftKind::Joint { .. } => "joint",
    }
}

fn term_short(term: Term) -> &'static str {
    match term {
        Term::Gauge => "gauges",
        Term::Stick => "place on the stick",
        Term::Width => "width",
        Term::Bore => "bore",
        Term::Hands => "hands",
        Term::Sits => "how rings sit",
        Term::Offset => "your own leaning",
        Term::Joint => "joint",
    }
}

/// "Reading, 3 mm flat gauge".
pub fn reading_with(gauge: &Gauge) -> String {
    format!("Reading, {}, {}", gauge_short(gauge), say_band::bore(gauge.bore))
}

pub const OUTLIER: &str =
    "One of the readings stands apart from the others. It counts all the same: measure again, or leave it out.";
pub const OWN_AMOUNTS: &str = "Put amounts of your own in";
pub const OWN_AMOUNTS_WHY: &str =
    "In mm round the inside, up or down. The record keeps yours and what was worked out. Empty takes the rule.";
pub const ONE_READING: &str = "Take the newest reading alone";

/// "3 readings together".
pub fn readings_together(count: usize) -> String {
    format!("{count} readings together")
}

/// What each reading weighs: "M 40 %, M½ 35 %, R 25 % (stands apart)".
pub fn weighed(found: &Combined, names: &[String]) -> String {
    let one = |(part, name): (&Part, &String)| {
        format!("{name} {} %{}", part.share.0, if part.outlier { " (stands apart)" } else { "" })
    };
    let shares: Vec<String> = found.parts.iter().zip(names).map(one).collect();
    format!("as read, each by how sure it is: {}", shares.join(", "))
}

pub fn other_readings(count: usize) -> String {
    match count {
        1 => "One more reading counts with it.".to_owned(),
        many => format!("{many} more readings count with it."),
    }
}

/// "UK M½, narrow rings".
pub fn read_as(size: &str, gauge: &str) -> String {
    if gauge.is_empty() { size.to_owned() } else { format!("{size}, {gauge}") }
}

/// The range that the size may lie in: by the joint alone where that is all that counts.
pub fn range(answer: &Answer) -> String {
    if answer.joint_alone() {
        return at_least_for_joint(answer);
    }
    format!("8 in 10 between {} and {} mm", format::mm(answer.low.0, 2), format::mm(answer.high.0, 2))
}

/// "at least 56.25 mm (the joint); the base alone wants 53.0 to 54.6".
pub fn at_least_for_joint(answer: &Answer) -> String {
    let tenth = |at: Circumference| format::mm(at.0, 1);
    let (low, high) = (tenth(answer.base.0), tenth(answer.base.1));
    format!("at least {} mm (the joint); the base alone wants {low} to {high}", format::mm(answer.low.0, 2))
}

/// Of several readings: "3 readings".
pub fn readings(count: usize) -> String {
    format!("{count} readings")
}

pub fn nearest_step(step: Step) -> &'static str {
    match step {
        Step::Quarter => "To make, in quarter sizes",
        Step::Half => "To make, in half sizes",
        Step::Whole => "To make, in whole sizes",
    }
}

/// How far the size to make is from what was worked out.
pub fn off_by(off: Length) -> String {
    crate::words::sizing::off(crate::trade::sizing::Off(off))
}

/// What benches customarily do, as a line of its own.
pub fn customary(up: &CustomaryUp) -> String {
    let text = crate::words::fit::customary(up);
    let mut chars = text.chars();
    let first = chars.next().map(|first| first.to_ascii_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}", chars.as_str())
}

pub fn see_why(size: &str) -> String {
    format!("{size}: see why")
}

/// The button that writes the size back: "Use N for Ines’s band".
pub fn use_size(size: &str, name: &str) -> String {
    format!("Use {size} for {name}’s band")
}

/// `band`: with what was typed of the band.
pub fn size_saved(band: bool) -> String {
    if band { format!("{ORDER_SIZE} saved, and with it the {BAND}") } else { format!("{ORDER_SIZE} saved") }
}
