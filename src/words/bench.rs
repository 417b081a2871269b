//! The words of the Bench: its list, and what the four calculators say beside what the trade's own words say.

use super::lengths::plain;
use super::{band as say_band, book, dates, format, stack};
use crate::book::checklist::Topic;
use crate::book::couple::Couple;
use crate::book::value::OwnGauge;
use crate::trade::band::Profile;
use crate::trade::dates::countdown::{Countdown, Slack};
use crate::trade::dates::holidays::Region;
use crate::trade::dates::spread::{CalendarDays, Spread, WorkingDays};
use crate::trade::fit::{CustomaryUp, Gauge, GaugeKind, Hands, ReadAt, ShiftKind};
use crate::trade::measure::{Circumference, Length};
use crate::trade::sizing::{SizeAsRead, Stated, Step, System};
use crate::trade::stack::{ShoulderMatch, Stretch};
use crate::trade::wearer::Wearer;
use crate::words::pictures::RingState;
use chrono::NaiveDate;

// The list
pub const SIZE_CONVERTER: &str = "Size converter";
pub const SIZE_CONVERTER_HOW: &str = "What is this size called elsewhere, and how far off is the nearest?";
pub const ORDER_SIZE: &str = "Order size";
pub const ORDER_SIZE_HOW: &str = "From a reading to the size to make: wider, domed, cold hands, rings beside it.";
pub const STACK: &str = "Stack";
pub const STACK_HOW: &str = "Do all the rings fit on the finger, now and later?";
pub const COUNTDOWN: &str = "Working-day countdown";
pub const COUNTDOWN_HOW: &str = "From the wedding back to the last day to order.";
pub const BENCH_HOW: &str = "No couple needed: each remembers what it was last asked. Opened from a couple, it starts \
                             with their figures and writes its answer back.";

// What all four share
pub const CHANGE_FIGURES: &str = "Change the figures";
pub const AFRESH: &str = "Start afresh";
pub const BACK_TO_THEIRS: &str = "Back to their own figures";
pub const WHY: &str = "How it comes about";
pub const BAND: &str = "band";

/// The head of the folded inputs.
pub fn worked_out_from(figures: &str) -> String {
    format!("From {figures}")
}

/// What a couple lacks for an answer.
pub fn lacking(couple: Couple<'_>, topic: Topic) -> String {
    let name = |who| book::name_of(couple, who);
    match topic {
        Topic::Finger(who) => format!("There is no reading of the base of {}’s finger yet.", name(who)),
        Topic::Band(who) => format!("The width and profile of {}’s band are not chosen yet.", name(who)),
        Topic::Rings(who) => format!("Nobody has asked yet which rings {} wears.", name(who)),
        Topic::Wedding => "The wedding date has not been asked yet.".to_owned(),
        Topic::OrderSize(_) | Topic::Stack(_) | Topic::Dates | Topic::Notes | Topic::ReadBack => {
            format!("{}: not done yet.", book::topic(couple, topic))
        }
    }
}

/// "Ines · left ring finger".
fn whose(couple: Couple<'_>, who: Wearer) -> Vec<String> {
    let finger = couple.finger(who).map(say_band::finger);
    std::iter::once(book::name_of(couple, who)).chain(finger).collect()
}

/// More widths than a finger holds.
pub fn too_many_widths(most: usize) -> String {
    format!("Enter at most {most} widths, like 2.6 and 2.")
}

/// A sentence with how well it is founded behind it.
pub fn founded(sentence: &str, standing: &str) -> String {
    format!("{} · {standing}", sentence.trim_end_matches('.'))
}

/// A size as it would be typed again: as it was, or else by its full name.
pub fn retyped(size: &SizeAsRead) -> String {
    let typed = size.typed.trim();
    if typed.is_empty() { super::sizing::stated_in_full(size.stated) } else { typed.to_owned() }
}

/// Widths as they would be typed: "2.6 and 2".
pub fn widths(all: &[Length]) -> String {
    all.iter().map(|width| plain(*width)).collect::<Vec<_>>().join(" and ")
}

/// A length in figures, without its unit.
pub fn width(length: Length) -> String {
    plain(length)
}

// Sizes
pub const SIZE: &str = "Size";
pub const INSIDE: &str = "Round the inside";
pub const EVERY_SYSTEM: &str = "The size in every system";
pub const ABOUT_SCALES: &str = "Where each is used, and what it rests on";
pub const ORDER_FROM_THIS: &str = "Order size from this";

/// "17 can be read as".
pub fn which_size(typed: &str) -> String {
    format!("{} is", typed.trim())
}

/// A reading among several: "US 6, 51.9 mm".
pub fn reading_named(name: &str, at: Circumference) -> String {
    format!("{name} · {} mm round", format::mm(at.0, 1))
}

pub fn several_readings(count: usize) -> String {
    format!("It can be read in {count} ways. Tap the one that is meant.")
}

/// Millimetres to the hundredth.
pub fn hundredths(length: Length) -> String {
    format::mm(length, 2)
}

/// What stands beside the circumference: "mm round the inside", "16.91 mm across", and the size it is of.
pub fn inside(stated: Stated, at: Circumference) -> Vec<String> {
    let across = format!("{} mm across", format::mm(at.diameter().0, 2));
    let named = super::sizing::stated_in_full(stated);
    match stated {
        Stated::Size(_) => vec!["mm round the inside".to_owned(), across, named],
        Stated::Diameter(_) | Stated::Circumference(_) => vec!["mm round the inside".to_owned(), across],
    }
}

/// The short name of a system, beside its rule.
pub fn rule_name(system: System) -> &'static str {
    match system {
        System::Uk => "UK",
        System::Us => "US",
        System::Iso => "ISO",
        System::Japan => "Japan",
        System::Italy => "Italy",
        System::Diameter => "across",
        System::Circumference => "round",
    }
}

/// Where a system is used, as a sentence.
pub fn used_in(system: System) -> String {
    let text = super::sizing::system_where(system);
    let mut chars = text.chars();
    let first = chars.next().map(|first| first.to_ascii_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}.", chars.as_str())
}

/// "Ines · left ring finger · order size N".
pub fn size_subtitle(couple: Couple<'_>, who: Wearer) -> String {
    let mut parts = whose(couple, who);
    parts.extend(couple.order_size(who).map(|size| format!("order size {}", super::sizing::size_in_full(size.size))));
    parts.join(" · ")
}

pub fn back_to(names: &str) -> String {
    format!("Back to {names}")
}

// The order size
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
pub const NEIGHBOURS_HINT: &str = "Widths in mm, like 2.6 and 2; none that are still to come.";
pub const MORE: &str = "Joint, rings beside the gauge, and more";
pub const JOINT: &str = "Joint";
pub const JOINT_HINT: &str = "The smallest gauge that passes with a firm twist, as wide as the band. Empty: it passes.";
pub const BEADS: &str = "Sizing beads";
pub const TAKES_BEADS: &str = "Can be fitted";
pub const CHANGING: &str = "The finger is changing";
pub const CHANGING_HINT: &str = "Swollen, injured, in pregnancy, losing or gaining weight: measure again later.";
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

/// "Reading, 3 mm flat gauge".
pub fn reading_with(gauge: &Gauge) -> String {
    format!("Reading, {}, {}", gauge_short(gauge), say_band::bore(gauge.bore))
}

/// "UK M½, narrow rings".
pub fn read_as(size: &str, gauge: &str) -> String {
    if gauge.is_empty() { size.to_owned() } else { format!("{size}, {gauge}") }
}

pub fn range(low: Circumference, high: Circumference) -> String {
    format!("8 in 10 between {} and {} mm", format::mm(low.0, 2), format::mm(high.0, 2))
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
    super::sizing::off(crate::trade::sizing::Off(off))
}

/// What benches customarily do, as a line of its own.
pub fn customary(up: &CustomaryUp) -> String {
    let text = super::fit::customary(up);
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

pub fn size_saved() -> String {
    format!("{ORDER_SIZE} saved")
}

// The stack
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
pub const CROWDED: &str =
    "Crowded by the house rule: knuckle and neighbours will press. Think of a narrower band, or fewer rings together.";
pub const DOES_NOT_FIT: &str = "The rings are longer than the finger is free: they cannot all be worn together.";

pub fn free_hint(usual: Length) -> String {
    format!("Measure it on the palm side, from web to joint crease. Empty: {} mm, from memory.", plain(usual))
}

pub fn ring_number(n: usize) -> String {
    format!("Ring {n}, from the web outwards")
}

/// A ring that was given no name.
pub fn ring_by_its_state(state: RingState) -> String {
    match state {
        RingState::Worn => "a ring".to_owned(),
        RingState::Wanted => BAND.to_owned(),
        RingState::Planned => "to come".to_owned(),
    }
}

pub fn stack_subtitle(couple: Couple<'_>, who: Wearer) -> String {
    whose(couple, who).join(" · ")
}

/// What the large figure is of.
pub fn stack_total(to_come: bool) -> &'static str {
    if to_come { "mm, with the rings to come" } else { "mm along the finger" }
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
    let said = stack::shoulder_match(&found);
    let at_shoulders = said.split(", where it counts").next().unwrap_or(&said);
    format!("{at_shoulders}, where it counts. The width at its top is not known.")
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

// The countdown
pub const ORDER_BY: &str = "Order by";
pub const ORDER_BY_HOW: &str = "every step at its longest, back from the day it has to be in hand";
pub const IF_ORDERED_TODAY: &str = "If ordered today";
pub const REGION: &str = "Bank holidays of";
pub const MAKING_DAYS: &str = "Making, in working days";
pub const LEAST: &str = "Least";
pub const USUAL: &str = "Usual";
pub const MOST: &str = "Most";
pub const ON_TOP: &str = "On top of making";
pub const OWN_EXTRA: &str = "Extra work";
pub const IN_HAND: &str = "In hand before the wedding";
pub const DAYS_BEFORE: &str = "days";
pub const IN_HAND_BY: &str = "In hand by";
pub const WORK_STARTS: &str = "Work starts";
pub const DAY_ZERO_HOW: &str = "day zero: the day of the order, or the next working day";
pub const PAST_CUT_OFF: &str = "Past today’s cut-off: an order now counts from the next working day.";
pub const CLOSED_DAYS: &str = "Closed days";
pub const TO_CLOSURES: &str = "Closures";
pub const TO_TIMES: &str = "Your times";
/// What is typed for a wedding whose date is not known.
pub const NOT_YET: &str = "not yet";

pub fn slack(slack: Slack) -> String {
    match slack {
        Slack::Left(WorkingDays(0)) => "the last day: no working day to spare".to_owned(),
        Slack::Left(days) => format!("{} left", dates::working_days(days)),
        Slack::Late(days) => format!("{} too late", dates::working_days(days)),
    }
}

pub fn ready_at_latest() -> &'static str {
    "at the latest, if ordered today"
}

pub fn before_the_wedding(days: CalendarDays) -> String {
    format!("{} before the wedding, for a try-on", dates::calendar_days(days))
}

/// What counts of a step: "20 days".
pub fn longest(days: Spread) -> String {
    format::counted(days.most().0.into(), "day", "days")
}

/// "15 to 20 days’ making".
pub fn making_short(making: Spread) -> String {
    format!("making {} to {}", making.least().0, making.most().0)
}

pub fn extras_short(count: usize) -> String {
    format::counted(count as i64, "extra", "extras")
}

/// How many closed days lie between today and the wedding.
pub fn closed_count(answer: &Countdown, today: NaiveDate) -> String {
    let between = answer.closed_days.iter().filter(|closed| closed.day >= today && closed.day <= answer.wedding);
    format::count(between.count() as i64)
}

pub fn closed_how(region: Region) -> String {
    format!("until the wedding: days not worked, closures, bank holidays of {}", dates::region(region))
}

/// How many closures of the workshop are counted.
pub fn closures_known(count: usize) -> String {
    match count {
        0 => "No workshop closures are written down.".to_owned(),
        count => format!("{} counted.", format::counted(count as i64, "workshop closure is", "workshop closures are")),
    }
}

pub fn see_order_by(day: NaiveDate) -> String {
    format!("Order by {}: see why", format::day_short(day))
}

/// The button that writes the dates back.
pub fn use_order_by(day: &str) -> String {
    format!("Use order by {day}")
}

pub fn dates_saved() -> String {
    "Dates saved".to_owned()
}
