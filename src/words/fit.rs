//! The order size in words: shifts and their reasons, what to measure again, the joint, errors.

use super::lengths::plain;
use crate::trade::fit::{
    CustomaryUp, FitError, Hands, JointFinding, JointHelp, MeasureAgain, NoBeads, Place, Quantity, ReadAt, Shift,
    ShiftKind, Sits, Source, Term, Wider, Worn,
};
use crate::trade::measure::{Length, Standing};

/// The line that a shift stands on.
pub fn shift_name(kind: &ShiftKind) -> &'static str {
    match kind {
        ShiftKind::Gauge => term(Term::Gauge),
        ShiftKind::Several { term, .. } => self::term(*term),
        ShiftKind::Sits(now) => sits(*now),
        ShiftKind::Offset => term(Term::Offset),
        ShiftKind::Stick { read_at: ReadAt::Centre, .. } => "Read at the middle of the ring",
        ShiftKind::Stick { read_at: ReadAt::LowerEdge, .. } => "Read at the lower edge of the ring",
        ShiftKind::Width { apart, .. } if *apart > Length::ZERO => "Wider than the gauge",
        ShiftKind::Width { apart, .. } if *apart < Length::ZERO => "Narrower than the gauge",
        ShiftKind::Width { .. } => "As wide as the gauge",
        ShiftKind::Bore { band_relief, gauge_relief, .. } if band_relief > gauge_relief => "Domed bore gives room",
        ShiftKind::Bore { band_relief, gauge_relief, .. } if band_relief < gauge_relief => {
            "Flatter bore than the gauge"
        }
        ShiftKind::Bore { .. } => "Bore like the gauge’s",
        ShiftKind::Level { .. } => "No larger than a wider band",
        ShiftKind::Hands(now) => hands(*now),
        ShiftKind::Joint { .. } => "To pass the joint",
    }
}

/// Why a shift is as large as it is, without its standing.
pub fn shift_reason(kind: &ShiftKind) -> String {
    match kind {
        ShiftKind::Gauge => "by its calibration".to_owned(),
        ShiftKind::Several { readings, .. } => format!("each of the {readings} readings by its weight"),
        ShiftKind::Sits(Sits::Tight) => "a ring that is tight is half a UK letter small".to_owned(),
        ShiftKind::Sits(Sits::Right) => "a ring that sits right needs nothing".to_owned(),
        ShiftKind::Sits(Sits::Spins) => "a ring that spins is half a UK letter large".to_owned(),
        ShiftKind::Sits(Sits::SticksInSummer) => "a quarter of a UK letter for the summer".to_owned(),
        ShiftKind::Offset => "what bands come out off by at your bench".to_owned(),
        ShiftKind::Stick { read_at: ReadAt::Centre, width, taper } => format!(
            "a flat bore touches at its lower edge: half of {} mm, at {} mm a millimetre",
            plain(*width),
            plain_taper(taper.0)
        ),
        ShiftKind::Stick { read_at: ReadAt::LowerEdge, width, taper } => format!(
            "a domed bore touches at mid-width: half of {} mm, at {} mm a millimetre",
            plain(*width),
            plain_taper(taper.0)
        ),
        ShiftKind::Width { apart, per_mm, beside, at_most } => {
            let half = if *beside { ", rings beside it counted half" } else { "" };
            if *apart == Length::ZERO {
                return format!("no difference in width{half}");
            }
            let by = if *apart > Length::ZERO { "wider" } else { "narrower" };
            let most = at_most.map(|most| format!(", at most {} mm down", plain(most))).unwrap_or_default();
            format!("{} mm a millimetre, {} mm {by} than the gauge{half}{most}", plain(per_mm.0), plain(apart.abs()))
        }
        ShiftKind::Bore { band_relief, gauge_relief, per_mm, at_most } => {
            if *band_relief == Length::ZERO && *gauge_relief == Length::ZERO {
                return "both are flat inside".to_owned();
            }
            let most = at_most.map(|most| format!(", at most {} mm", plain(most))).unwrap_or_default();
            format!(
                "edge relief {} mm in the band, {} mm in the gauge; {} of the room counts{most}",
                plain(*band_relief),
                plain(*gauge_relief),
                plain(per_mm.0)
            )
        }
        ShiftKind::Level { as_wide_as } => {
            format!("a {} mm band of this bore would come out smaller, so this takes its size", plain(*as_wide_as))
        }
        ShiftKind::Hands(Hands::Cold) => "cold hands read small".to_owned(),
        ShiftKind::Hands(Hands::Normal) => "nothing to allow for".to_owned(),
        ShiftKind::Hands(Hands::Warm) => "warm hands read large".to_owned(),
        ShiftKind::Joint { passes_at, width: None } => {
            format!("the joint passes at {} mm in the band’s width", plain(passes_at.0))
        }
        ShiftKind::Joint { passes_at, width: Some(width) } => {
            format!("the joint passes at {} mm in a gauge of {} mm", plain(passes_at.0), plain(*width))
        }
    }
}

/// How well a shift is founded. What passes the joint is what was read; that it must pass is the rule.
pub fn shift_standing(shift: &Shift) -> &'static str {
    match (&shift.kind, shift.standing) {
        (ShiftKind::Joint { .. }, Standing::Published) => "rule published, amount as read",
        (_, standing) => super::standing::standing(standing),
    }
}

/// The line of a term.
pub fn term(term: Term) -> &'static str {
    match term {
        Term::Gauge => "Gauge put right",
        Term::Stick => "Place on the stick",
        Term::Width => "Width",
        Term::Bore => "Bore",
        Term::Hands => "Hands",
        Term::Sits => "How the ring sits",
        Term::Offset => "Your own leaning",
        Term::Joint => "Joint",
    }
}

/// What the rule gave, beside the jeweller's own amount.
pub fn worked_out(amount: Length) -> String {
    format!("worked out: {}", super::format::mm_signed(amount, 2))
}

/// "1 mm wider: +0.25 mm, one step up."
pub fn wider(wider: &Wider) -> String {
    let steps = match wider.steps {
        0 => "the same size".to_owned(),
        1 => "one step up".to_owned(),
        many => format!("{many} steps up"),
    };
    format!("{} mm wider: {} mm, {steps}.", plain(wider.by), super::format::mm_signed(wider.more, 2))
}

/// Said in the place of it where the width has an amount of the jeweller's own.
pub const WIDER_BUT_YOURS: &str = "1 mm wider: your amount for the width stands.";

/// Said in the place of it where the joint alone decides.
pub const WIDER_BUT_JOINT: &str = "1 mm wider: the joint decides, and has to be tried in that width.";

/// How a ring sits, as a choice.
pub fn sits(sits: Sits) -> &'static str {
    match sits {
        Sits::Tight => "Tight",
        Sits::Right => "Right",
        Sits::Spins => "Spins",
        Sits::SticksInSummer => "Sticks in summer",
    }
}

/// The same with the gauge of the practice that is nearest to what is wanted, by its name: "Yours: wide rings, 6 mm."
pub fn measure_again_with(reason: &MeasureAgain, name: &str, width: Length) -> String {
    format!(
        "{} Yours that comes nearest: {}, {} mm.",
        measure_again(reason),
        super::harmless::harmless(name),
        plain(width)
    )
}

pub fn measure_again(reason: &MeasureAgain) -> String {
    match reason {
        MeasureAgain::GaugeUnlike { worn, band, gauge } => {
            let which = if band > gauge { "wider" } else { "narrower" };
            let (band, gauge) = (plain(*band), plain(*gauge));
            match worn {
                Worn::Alone => format!(
                    "Measure again with a {which} gauge: alone, the band counts as {band} mm, the gauge as {gauge} mm."
                ),
                Worn::InStack => format!(
                    "Measure again with a {which} gauge: in the stack, the band counts as {band} mm, the gauge as \
                     {gauge} mm."
                ),
            }
        }
        MeasureAgain::HandsNotNormal(Hands::Cold) => {
            "Measure again another day with this gauge: the hands were cold.".to_owned()
        }
        MeasureAgain::HandsNotNormal(Hands::Warm) => {
            "Measure again another day with this gauge: the hands were warm.".to_owned()
        }
        MeasureAgain::HandsNotNormal(Hands::Normal) => "Measure again another day with this gauge.".to_owned(),
        MeasureAgain::JointUnlike { band, gauge } => {
            let (band, gauge) = (plain(*band), plain(*gauge));
            format!(
                "Try the joint again in {band} mm: it was tried in {gauge} mm, and a wider band passes less easily."
            )
        }
        MeasureAgain::ReadingsApart { low, high } => {
            format!("Measure again: two readings are {} mm apart, more than two UK letters.", plain(high.0 - low.0))
        }
        MeasureAgain::FingerChanging => "Measure again once the finger has settled, with this gauge.".to_owned(),
    }
}

pub fn joint(finding: &JointFinding) -> String {
    match finding {
        JointFinding::Passes { spare } => format!("The joint passes, with {} mm to spare.", plain(*spare)),
        JointFinding::Overruled { short } => {
            format!("By your word it is {} mm smaller than the joint needs: try the joint again.", plain(*short))
        }
        JointFinding::Decides { needs_more, looseness, help } => {
            let needs = if *needs_more > Length::ZERO {
                format!("The joint needs {} mm more than the base", plain(*needs_more))
            } else {
                "The size below would not pass the joint".to_owned()
            };
            format!("{needs}: the ring will be {} mm loose at the base. {}", plain(*looseness), joint_help(*help))
        }
    }
}

pub fn joint_help(help: JointHelp) -> &'static str {
    match help {
        JointHelp::Accept => "Leave it so.",
        JointHelp::BeadsOrSpring => "Offer sizing beads or a spring.",
        JointHelp::AskBench => "Ask the bench.",
        JointHelp::AskBenchInsteadOfBeads(NoBeads::FullEternity) => {
            "Ask the bench: with stones all round it takes no beads."
        }
        JointHelp::AskBenchInsteadOfBeads(NoBeads::HardMetal) => "Ask the bench: a metal this hard takes no beads.",
        JointHelp::HingedShank => "Offer a hinged shank.",
    }
}

/// Said for a first ring.
pub fn first_ring() -> &'static str {
    "A first ring feels tighter than it is until the finger is used to it: do not go up for that alone."
}

/// Said where the answer lies half-way; the sizes as the screen names them.
pub fn tie(smaller: &str, larger: &str, prefer_larger: bool) -> String {
    if prefer_larger {
        format!("Half-way between {smaller} and {larger}: the larger, for a wide band that is flat inside.")
    } else {
        format!("Half-way between {smaller} and {larger}: the smaller.")
    }
}

/// What benches customarily do, beside the answer.
pub fn customary(up: &CustomaryUp) -> String {
    match up {
        CustomaryUp::HalfUkLetter { at } => format!("half a UK letter up at {} mm", plain(*at)),
        CustomaryUp::OneUkLetter { from, to } => {
            format!("about one UK letter up at {} to {} mm", plain(*from), plain(*to))
        }
        CustomaryUp::HalfUsSize { from } => format!("half a US size up from {} mm", plain(*from)),
    }
}

pub fn source(source: Source) -> &'static str {
    match source {
        Source::RingStickStandard => "ISO 8653:2016, ring stick",
        Source::WideBandHabit => "what benches add for a wide band; nothing is printed",
        Source::DomedBoreHabit => "what benches take off for a domed bore; nothing is printed",
        Source::HandsHabit => "what benches allow for cold and warm hands; nothing is printed",
        Source::JointHabit => "what benches do about a large joint; nothing is printed",
        Source::HouseRule => "a house rule; nothing is printed",
    }
}

pub fn hands(hands: Hands) -> &'static str {
    match hands {
        Hands::Cold => "Cold hands",
        Hands::Normal => "Normal hands",
        Hands::Warm => "Warm hands",
    }
}

pub fn place(place: Place) -> &'static str {
    match place {
        Place::Base => "Base of the finger",
        Place::Joint => "Joint",
    }
}

pub fn read_at(read_at: ReadAt) -> &'static str {
    match read_at {
        ReadAt::LowerEdge => "At the lower edge",
        ReadAt::Centre => "At the middle",
    }
}

pub fn no_beads(why: NoBeads) -> &'static str {
    match why {
        NoBeads::FullEternity => "Stones all round",
        NoBeads::HardMetal => "Hard metal",
    }
}

/// The sentence for what is wrong.
pub fn error(error: &FitError) -> String {
    match error {
        FitError::OutOfRange { what, range } => format!(
            "{} must be between {} and {} mm{}.",
            quantity(*what),
            plain(range.least),
            plain(range.most),
            if is_rate(*what) { " a millimetre" } else { "" }
        ),
        FitError::TooManyBeside { most } => format!("Enter at most {most} rings worn beside it."),
        FitError::TooManyReadings { most } => format!("Enter at most {most} readings of one finger."),
        FitError::NotTheBase => {
            "Enter a reading of the base of the finger: the joint is asked for on its own.".to_owned()
        }
    }
}

/// What is checked, as the beginning of a sentence.
pub fn quantity(what: Quantity) -> &'static str {
    match what {
        Quantity::AsRead => "The reading",
        Quantity::Joint => "The size that passes the joint",
        Quantity::BandWidth => "The band’s width",
        Quantity::GaugeWidth => "The gauge’s width",
        Quantity::BesideWidth => "The width of a ring worn beside it",
        Quantity::BandRelief => "The band’s edge relief",
        Quantity::GaugeRelief => "The gauge’s edge relief",
        Quantity::GaugeStep => "The gauge’s step",
        Quantity::OwnError => "The gauge’s own error",
        Quantity::Taper => "The stick’s taper",
        Quantity::MakeStep => "The step the bench makes",
        Quantity::WidthPerMm => "The shift for width",
        Quantity::WidthPerMmSd => "The uncertainty of the shift for width",
        Quantity::BorePerMm => "The shift for a domed bore",
        Quantity::BorePerMmSd => "The uncertainty of the shift for a domed bore",
        Quantity::Cold => "The shift for cold hands",
        Quantity::Warm => "The shift for warm hands",
        Quantity::HandsOffSd => "The uncertainty for cold or warm hands",
        Quantity::HandsNormalSd => "The uncertainty for normal hands",
        Quantity::Offset => "What bands come out off by",
        Quantity::OffsetSd => "The uncertainty of what bands come out off by",
        Quantity::GaugeOff => "What the gauge is off by",
        Quantity::Own => "An amount of your own",
    }
}

fn is_rate(what: Quantity) -> bool {
    match what {
        Quantity::Taper
        | Quantity::WidthPerMm
        | Quantity::WidthPerMmSd
        | Quantity::BorePerMm
        | Quantity::BorePerMmSd => true,
        Quantity::AsRead
        | Quantity::Joint
        | Quantity::BandWidth
        | Quantity::GaugeWidth
        | Quantity::BesideWidth
        | Quantity::BandRelief
        | Quantity::GaugeRelief
        | Quantity::GaugeStep
        | Quantity::OwnError
        | Quantity::MakeStep
        | Quantity::Cold
        | Quantity::Warm
        | Quantity::HandsOffSd
        | Quantity::HandsNormalSd
        | Quantity::Offset
        | Quantity::OffsetSd
        | Quantity::GaugeOff
        | Quantity::Own => false,
    }
}

/// A taper keeps its third decimal: 0.219.
fn plain_taper(taper: Length) -> String {
    super::format::mm(taper, 3)
}
