//! The stack in words: verdicts, what is left, the shoulder match, errors.

use super::lengths::plain;
use super::{format, standing};
use crate::trade::band::section::SectionError;
use crate::trade::measure::{Length, Standing};
use crate::trade::stack::{
    Apart, Clears, Loses, Permille, ProfileMatch, Quantity, Remedies, ShoulderMatch, Stack, StackError, Stretch,
    Verdict, Wear, When, Why,
};

pub fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Roomy => "roomy",
        Verdict::Full => "full",
        Verdict::Crowded => "crowded",
        Verdict::DoesNotFit => "does not fit",
    }
}

pub fn when(when: When) -> &'static str {
    match when {
        When::Now => "worn now",
        When::Later => "to come",
    }
}

/// What a verdict means: "Roomy: 8.1 of 24 mm, 33.8 %; roomy ends at 8.4 mm."
pub fn summary(stack: &Stack, stretch: &Stretch) -> String {
    let taken = format!("{} of {} mm, {}", plain(stretch.total), plain(stack.free_length), share(stretch.share));
    match stretch.verdict {
        Verdict::Roomy => format!("Roomy: {taken}; roomy ends at {} mm.", plain(stack.roomy_to)),
        Verdict::Full => {
            format!("Full: {taken}; roomy ends at {} mm, full at {} mm.", plain(stack.roomy_to), plain(stack.full_to))
        }
        Verdict::Crowded => format!("Crowded: {taken}; full ends at {} mm.", plain(stack.full_to)),
        Verdict::DoesNotFit => {
            format!("Does not fit: {taken}; {} mm too long for the finger.", plain(stretch.left.abs()))
        }
    }
}

/// What a further ring may measure.
pub fn further(stretch: &Stretch) -> String {
    match (stretch.widest_roomy, stretch.widest_full) {
        (Some(roomy), Some(full)) => {
            format!("A further ring of up to {} mm leaves it roomy, of up to {} mm full.", plain(roomy), plain(full))
        }
        (None, Some(full)) => {
            format!("A further ring of up to {} mm leaves it full; any ring makes it less than roomy.", plain(full))
        }
        (Some(_) | None, None) => "Any further ring makes it crowded.".to_owned(),
    }
}

/// A share with its tenth: "33.8 %".
pub fn share(share: Permille) -> String {
    format!("{} %", format::mm(Length::tenthousandths(i64::from(share.0) * 1_000), 1))
}

/// What matching the shoulders gives, and what matching the top instead would have given.
pub fn shoulder_match(found: &ShoulderMatch) -> String {
    let said = shoulders_only(found);
    if found.if_top_at_shoulders == Length::ZERO {
        return format!("{said} The ring is as wide at the top, so that either place gives the same.");
    }
    format!(
        "{said} At the top it is {} it. Matched to the top instead, a band would be {} mm wide and {} the ring at three \
         and nine.",
        compared(found.at_top),
        plain(found.if_top),
        compared(found.if_top_at_shoulders)
    )
}

/// The same where the ring’s top was not measured.
pub fn shoulders_only(found: &ShoulderMatch) -> String {
    let back = match found.at_back == found.at_shoulders {
        true => String::new(),
        false => format!(", and at the back it is {} it", compared(found.at_back)),
    };
    format!("The band is {} the ring at three and nine o’clock, where it counts{back}.", compared(found.at_shoulders))
}

fn compared(difference: Length) -> String {
    if difference > Length::ZERO {
        format!("{} mm wider than", plain(difference))
    } else if difference < Length::ZERO {
        format!("{} mm narrower than", plain(difference.abs()))
    } else {
        "as wide as".to_owned()
    }
}

pub fn profile_match(found: ProfileMatch) -> &'static str {
    match found {
        ProfileMatch::Calm => "The same profile as the ring beside it: looks calm.",
        ProfileMatch::Deliberate => "Another profile than the ring beside it: a choice, and no fault.",
    }
}

/// How two neighbours lie: flush, or how far apart and why. `name` names the rings of the stack.
pub fn apart(found: &Apart, name: &dyn Fn(usize) -> String) -> String {
    let (near, far) = (name(found.rings.0), name(found.rings.1));
    let Some(cause) = found.cause else {
        return format!("{} and {far} lie flush.", capital(&near));
    };
    let most = if cause.at_most { "at most " } else { "" };
    let how = format!(
        "{most}{} mm at the top, {} mm at the shoulders, nothing at the palm",
        plain(found.top),
        plain(found.shoulders)
    );
    let why = match (cause.heads_meet, cause.head, cause.meets) {
        (true, ..) => format!("the heads of {} and {} meet", name(cause.head), name(cause.meets)),
        (_, head, meets)
            if [head, meets] == [found.rings.0, found.rings.1] || [meets, head] == [found.rings.0, found.rings.1] =>
        {
            format!("the head of {} reaches over {}", name(head), name(meets))
        }
        (_, head, meets) => format!("the head of {} reaches past its neighbour to {}", name(head), name(meets)),
    };
    let unknown = if cause.at_most { " Profile and height would say it more closely." } else { "" };
    format!("{} and {far} stand apart: {how}, because {why}.{unknown}", capital(&near))
}

/// The same in short: "Not flush: 0.37 mm off at the top."
pub fn apart_in_short(found: &Apart, left: Length) -> String {
    let most = if found.cause.is_some_and(|cause| cause.at_most) { "at most " } else { "" };
    format!("Not flush: {most}{} mm off at the top.", plain(left))
}

/// What a stand-off rests on: geometry, and where something is held off also the clearance, and a dome that nobody
/// measured.
pub fn rests_on(found: &Apart, usual_dome: bool) -> String {
    let derived = standing::standing(Standing::Derived);
    let common = standing::standing(Standing::CommonPractice);
    match (found.cause.filter(|cause| !cause.heads_meet), usual_dome) {
        (None, _) if found.cause.is_some() => derived.to_owned(),
        (_, false) => format!("{derived}; the clearance under the head is {common}"),
        (_, true) => format!("{derived}; the clearance under the head and the usual dome are {common}"),
    }
}

/// A ring that is wider at its top than at its shoulders, by so much a side, and of whose head nothing is known.
pub fn head_unknown(name: &str, over: Length) -> String {
    format!(
        "{} is wider at its top than at three and nine, by about {} mm a side, and its head is not written down: it may \
         hold the ring beside it off by as much. Measure how far its head reaches, and its underside.",
        capital(name),
        plain(over)
    )
}

/// How a band with a bay lies beside the head that would hold it off: flush, or still off by so much.
pub fn in_bay(found: &Apart, bay: Length, left: Length, name: &dyn Fn(usize) -> String) -> String {
    let (head, band) = found.cause.map_or((found.rings.0, found.rings.1), |cause| (cause.head, cause.meets));
    let most = if found.cause.is_some_and(|cause| cause.at_most) { "at most " } else { "" };
    let with = if left > Length::ZERO {
        format!("with the bay of {} mm it still stands off {most}{} mm at the top", plain(bay), plain(left))
    } else {
        format!("with the bay of {} mm it lies flush", plain(bay))
    };
    let held = format!("The head of {} would hold {} off {most}{} mm", name(head), name(band), plain(found.top));
    format!("{held}: {with}.")
}

/// What can be done about it: name, dimension, and what it means.
pub fn remedies(found: &Remedies, band: &str) -> Vec<(&'static str, String, String)> {
    let bay = format!("With a bay {} mm deep, so much more of the finger at the top goes to {band}.", plain(found.bay));
    let height = found.height.height().map(plain).unwrap_or_default();
    let thinner = ("A thinner band", height, thinner(found.height, band));
    let gap = format!("Straight as it is, {band} stands off {} mm at the top.", plain(found.gap));
    let gap = ("The gap accepted", plain(found.gap), gap);
    match found.height {
        // Nothing about a band gives way to a head beside its own.
        Clears::HeadsMeet => vec![thinner, gap],
        Clears::At(_) | Clears::TooThin { .. } | Clears::NotKnown { .. } => {
            vec![("A shaped band", plain(found.bay), bay), thinner, gap]
        }
    }
}

/// A way out on one line, for the couple: "A shaped band: with a bay ...".
pub fn way_shown(name: &str, said: &str) -> String {
    format!("{name}. {said}")
}

/// Whether a thinner band clears the head.
fn thinner(found: Clears, band: &str) -> String {
    match found {
        Clears::At(height) => {
            format!("At most {} mm high, {band} clears the head and stays straight.", plain(height))
        }
        Clears::TooThin { least } => {
            format!("No way out: {band} would have to be thinner than {} mm to clear the head.", plain(least))
        }
        Clears::NotKnown { least: Some(least) } => format!(
            "{} mm high, {band} clears the head whatever its profile. Profile and height are needed to say how much \
             higher it may be.",
            plain(least)
        ),
        Clears::NotKnown { least: None } => "Profile and height are needed to say whether there is one.".to_owned(),
        Clears::HeadsMeet => "No way out: two heads meet, and how high a band is does not matter.".to_owned(),
    }
}

/// What two neighbours do to each other, a sentence each with its standing.
pub fn wear(found: &Wear, first: &str, second: &str) -> Vec<(String, Standing)> {
    let mut all = Vec::new();
    if let Some((loses, why, standing)) = found.metal {
        all.push((metal(loses, why, first, second), standing));
    }
    let common = Standing::CommonPractice;
    all.extend(found.stones.map(|loses| (stones(loses, first, second), common)));
    all.extend(found.catches.map(|by| {
        let text = format!(
            "{} and {second} differ in height by {} mm: they catch, and claws wear.",
            capital(first),
            plain(by)
        );
        (text, common)
    }));
    if found.colours {
        let text =
            format!("{} and {second} have different colours: a fine choice that costs some upkeep.", capital(first));
        all.push((text, common));
    }
    all
}

fn metal(loses: Loses, why: Why, first: &str, second: &str) -> String {
    let (soft, hard) = if loses == Loses::Second { (second, first) } else { (first, second) };
    match why {
        Why::SameAlloy => format!("{} and {second} are of the same alloy: the safe choice.", capital(first)),
        Why::PlatinumKeepsMore => format!(
            "{} is likely to lose metal to {hard}: in one published test platinum lost two to three times less volume \
             than white golds, and hardness did not predict the loss.",
            capital(soft)
        ),
        Why::Harder => format!("{} is likely to lose metal: {hard} is harder.", capital(soft)),
        Why::Denser => format!("{} is likely to lose metal: {hard} is about as hard, and denser.", capital(soft)),
        Why::NearlyAlike => {
            format!(
                "{} and {second} are of different alloys, about as hard as each other: both may lose a little.",
                capital(first)
            )
        }
    }
}

fn stones(loses: Loses, first: &str, second: &str) -> String {
    match loses {
        Loses::First => format!("The stones of {second} rub on the metal of {first}, which wears."),
        Loses::Second => format!("The stones of {first} rub on the metal of {second}, which wears."),
        Loses::Alike => format!("The stones of {first} and {second} rub on each other: their edges may chip."),
    }
}

/// A ring that will feel tighter later.
pub fn tighter(by: Length, name: &str) -> String {
    format!(
        "{} will feel about {} mm tighter with the rings to come beside it; today’s order stays as it is.",
        capital(name),
        format::mm(by, 1)
    )
}

/// "0.3 tighter", as an amount.
pub fn by(length: Length) -> String {
    format!("−{}", format::mm(length, 1))
}

/// A ring that holds those nearer the web; where nothing lies there, it holds nothing.
pub fn holds(name: &str, inside: usize) -> String {
    match inside {
        0 => format!("{} is to hold the rings nearer the web, and none lies there.", capital(name)),
        _ => format!(
            "{} holds the rings nearer the web: it is the tighter one, goes on last and comes off first.",
            capital(name)
        ),
    }
}

/// Why a band has no section.
pub fn section_error(error: SectionError) -> String {
    match error {
        SectionError::Nothing => "A band must have a width and a height above nothing.".to_owned(),
        SectionError::DomeTooHigh { dome, height } => {
            format!("The dome must be lower than the band: {} mm is not below {} mm.", plain(dome), plain(height))
        }
        SectionError::NoEdge { dome, relief, height } => format!(
            "Dome and edge relief must leave an edge: {} and {} mm leave none of {} mm of height.",
            plain(dome),
            plain(relief),
            plain(height)
        ),
        SectionError::TooRound { most } => {
            format!("A dome and an edge relief must be less than half the width of the band: {} mm.", plain(most))
        }
    }
}

pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

/// The sentence for what is wrong.
pub fn error(error: &StackError) -> String {
    match error {
        StackError::NoRings => "Enter the width of at least one ring.".to_owned(),
        StackError::TooManyRings { most } => format!("Enter at most {most} rings."),
        StackError::OutOfRange { what, range } => {
            format!("{} must be between {} and {} mm.", quantity(*what), plain(range.least), plain(range.most))
        }
        StackError::WiderThanFinger { width, free } => format!(
            "A ring must be narrower than the finger is free: {} mm is more than {} mm.",
            plain(*width),
            plain(*free)
        ),
        StackError::Thresholds { roomy, full } => format!(
            "Enter a share for full that is above roomy and at most 100 %: now roomy is {} % and full is {} %.",
            roomy.0, full.0
        ),
    }
}

/// What is checked, as the beginning of a sentence.
pub fn quantity(what: Quantity) -> &'static str {
    match what {
        Quantity::RingWidth => "A ring’s width",
        Quantity::Gap => "The gap between two rings",
        Quantity::FreeLength => "The free length of the finger",
        Quantity::BandWidth => "The band’s width",
        Quantity::ShoulderWidth => "The ring’s width at three and nine o’clock",
        Quantity::TopWidth => "The ring’s width at the top",
    }
}
