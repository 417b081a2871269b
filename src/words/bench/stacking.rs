//! The words of the stack.

use super::*;

use crate::book::couple::Couple;
use crate::trade::measure::Length;
use crate::trade::stack::{RingState, ShoulderMatch, Stretch, Verdict};
use crate::trade::wearer::{Finger, Wearer};
use crate::words::lengths::plain;
use crate::words::stack;
pub const STACK_LATER: &str = "The stack";
pub const BAND_TO_MAKE: &str = "Width of the band to make";
pub const BAND_PLACE: &str = "Where the band sits";
pub const NEAREST_WEB: &str = "nearest the web";
pub const AFTER_WORN: &str = "beyond the rings worn now";
pub const AT_SHOULDERS: &str = "At three and nine";
pub const WHEN_WORN: &str = "Worn";
/// What a ring is called, as it stands in a complaint.
pub const RING_NAME_NOUN: &str = "a name for the ring";
pub const WORN_NOW: &str = "Now";
pub const FREE_LENGTH: &str = "Free length of the finger";
pub const FREE_HOW: &str = "on the palm side, from web to joint crease";
pub const GAP: &str = "Gap between two rings";
pub const GAP_HINT: &str = "0.2 mm is customary.";
pub const WORN_TOGETHER_NOW: &str = "Worn now, with the band";
pub const WITH_RINGS_TO_COME: &str = "With the rings to come";
pub const GAPS: &str = "Each gap";
pub const LEFT: &str = "Left";
pub const BAND_MORE: &str = "The band’s height, profile, metal";
pub const BAND_SET: &str = "Set with stones";
pub const RING_MORE: &str = "Height, profile, metal, head";
pub const ROOM: &str = "Room on the finger";
pub const MATCH: &str = "Match";
pub const FLUSH: &str = "Flush or not";
pub const WEAR: &str = "Wear";
pub const CUT_THROUGH: &str = "Cut through";
pub const OTHER_FINGERS: &str = "Other fingers, both hands";
pub const CHOOSE_REMEDY: &str = "Choose what to do about it";
pub const HOLDING: &str = "What holds what";
pub const SEE_RINGS: &str = "See the rings";
pub const SHAPED_NEEDS: &str = "A shaped band: for the bench";
pub const SHAPED_NEEDS_WHAT: &str = "An impression of the rings as they are worn, a template of the curve, and the ring itself: write down from when to \
     when, and give a receipt.";
pub const CROWDED: &str =
    "Crowded by the house rule: knuckle and neighbours will press. Think of a narrower band, or fewer rings together.";
pub const DOES_NOT_FIT: &str = "The rings are longer than the finger is free: they cannot all be worn together.";

pub fn free_hint(usual: Length) -> String {
    format!("Measure it on the palm side, from web to joint crease. Empty: {} mm, from memory.", plain(usual))
}

/// "Free length, right ring finger".
pub fn free_length_of(finger: Finger) -> String {
    format!("Free length, {}", crate::words::band::finger(finger))
}

/// The rows of another finger: as it is now, with the rings to come, what is left.
pub fn on_finger_now(finger: Finger) -> String {
    format!("{}, now", stack::capital(&crate::words::band::finger(finger)))
}

pub fn on_finger_later(finger: Finger) -> String {
    format!("{}, with the rings to come", stack::capital(&crate::words::band::finger(finger)))
}

pub fn on_finger_left(finger: Finger) -> String {
    format!("{}, left", stack::capital(&crate::words::band::finger(finger)))
}

pub fn without_width(finger: Finger, count: usize) -> String {
    let rings = crate::words::format::counted(count as i64, "ring", "rings");
    format!("{}: {rings} without a width, not counted.", stack::capital(&crate::words::band::finger(finger)))
}

pub fn ring_number(n: usize) -> String {
    format!("Ring {n}, from the web outwards")
}

/// "beyond ring 2".
pub fn beyond_ring(n: usize) -> String {
    format!("beyond ring {n}")
}

/// A ring as it stands in a sentence: "the band", "the engagement ring", and as it was called where it has its own word.
pub fn named(name: &str, state: RingState) -> String {
    let has_article = ["the ", "a ", "an ", "her ", "his ", "their ", "my "].iter().any(|word| name.starts_with(word));
    match state {
        RingState::Wanted => format!("the {BAND}"),
        RingState::Worn | RingState::Planned if has_article => name.to_owned(),
        RingState::Planned if name == ring_by_its_state(state) => "the ring to come".to_owned(),
        RingState::Worn | RingState::Planned => format!("the {name}"),
    }
}

/// "Engagement ring and band, later": the heading of what is said of two neighbours.
pub fn pair(near: &str, far: &str, later: bool) -> String {
    let plain = |name: &str| name.strip_prefix("the ").unwrap_or(name).to_owned();
    let (near, far) = (stack::capital(&plain(near)), plain(far));
    if later { format!("{near} and {far}, later") } else { format!("{near} and {far}") }
}

/// "With the first ring to come", "With the first 2 to come".
pub fn with_later(n: usize) -> String {
    if n == 1 { "With the first ring to come".to_owned() } else { format!("With the first {n} to come") }
}

pub fn fit_later(name: &str) -> String {
    format!("Fit of {name}, later")
}

pub fn profile_beside(ring: &str) -> String {
    format!("Profile, {ring}")
}

pub fn on_no_finger(ring: &str) -> String {
    format!("{ring} is on no finger yet: it is counted here. Note the finger with the ring.")
}

/// The finger of the band was not noted, and rings are on several.
pub fn band_taken_for(finger: Finger) -> String {
    format!("The finger of the band is not noted: it is counted on the {}.", crate::words::band::finger(finger))
}

/// A ring that was given no name.
pub fn ring_by_its_state(state: RingState) -> String {
    match state {
        RingState::Worn => "a ring".to_owned(),
        RingState::Wanted => BAND.to_owned(),
        RingState::Planned => "to come".to_owned(),
    }
}

/// A ring that was given no name, where there are several: "first ring", counted from the web.
pub fn ring_by_its_order(state: RingState, at: usize) -> String {
    const ORDER: [&str; 8] = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"];
    let which = ORDER.get(at).copied().unwrap_or("last");
    match state {
        RingState::Worn => format!("{which} ring"),
        RingState::Wanted => BAND.to_owned(),
        RingState::Planned => format!("{which} ring to come"),
    }
}

/// Whether a ring is called what one without a name is.
pub fn is_unnamed(name: &str) -> bool {
    [ring_by_its_state(RingState::Worn), ring_by_its_state(RingState::Planned), "a ring to come".to_owned()]
        .contains(&name.to_owned())
}

pub fn stack_subtitle(couple: Couple<'_>, who: Wearer) -> String {
    whose(couple, who).join(" · ")
}

/// "Stack 5.3 mm, roomy: 22.1 % of 24 mm", "Stack 9.1 mm at the top, full: 37.9 % of 24 mm".
pub fn stack_in_short(total: Length, at_top: bool, verdict: &str) -> String {
    let place = if at_top { " at the top" } else { "" };
    format!("{STACK} {} mm{place}, {verdict}", plain(total))
}

/// What the large figure is of.
pub fn stack_total(to_come: bool, bay: bool) -> &'static str {
    match (to_come, bay) {
        (true, true) => "mm at the top, with the bay and the rings to come",
        (true, false) => "mm, with the rings to come",
        (false, true) => "mm at the top, with the bay",
        (false, false) => "mm along the finger",
    }
}

/// The palm takes no bay.
pub fn at_the_palm(total: Length) -> String {
    format!("{} mm at the palm", plain(total))
}

/// A gap takes nothing of the palm, where the free length is measured, and may be too much at the top.
pub fn crowded_at_top(total: Length, verdict: Verdict) -> String {
    let rule = match verdict {
        Verdict::DoesNotFit => "longer than the finger is free",
        Verdict::Roomy | Verdict::Full | Verdict::Crowded => "crowded there by the house rule",
    };
    format!("At the top, with the gap, the rings take {} mm: {rule}.", plain(total))
}

/// "9 rings are recorded for this finger, and 7 are counted beside the band. Not counted: signet ring, 3 mm."
pub fn not_counted(recorded: usize, counted: usize, left_out: &[String]) -> String {
    format!(
        "{recorded} rings are recorded for this finger, and {counted} are counted beside the band. Not counted: {}. So the \
         stack cannot be noted.",
        left_out.join("; ")
    )
}

/// "roomy: 35.4 % of 24 mm".
pub fn verdict_of(stretch: &Stretch, free: Length) -> String {
    format!("{}: {} of {} mm", stack::verdict(stretch.verdict), stack::share(stretch.share), plain(free))
}

pub fn left_of(left: Length) -> String {
    if left < Length::ZERO { format!("{} too long", plain(left.abs())) } else { plain(left) }
}

pub fn shoulder_match(ring: &str) -> String {
    format!("Shoulder match, {ring}")
}

/// "3 / 2.6": band, and ring at three and nine o'clock.
pub fn shoulder_figures(band: Length, shoulders: Length) -> String {
    format!("{} / {}", plain(band), plain(shoulders))
}

/// The two differences; where the top was not measured, the one there is.
pub fn shoulder_said(found: ShoulderMatch, top_known: bool) -> String {
    if top_known {
        return stack::shoulder_match(&found);
    }
    format!("{} The width at its top is not known.", stack::shoulders_only(&found))
}

/// "engagement ring 2.6".
pub fn ring_short(name: &str, width: Length) -> String {
    format!("{name} {}", plain(width))
}

pub fn see_stack(total: Length) -> String {
    format!("{} mm: see the stack", plain(total))
}

pub fn note_stack(name: &str) -> String {
    format!("Note this stack for {name}")
}

pub fn stack_saved() -> String {
    format!("{STACK} saved")
}
