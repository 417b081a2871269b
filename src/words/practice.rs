//! Words of Practice: what the jeweller sets for their own work.

use super::lengths::plain;
use super::sizing::trimmed;
use super::standing::standing;
use super::{band, dates, fit, format};
use crate::book::field::Constant;
use crate::book::practice::customary;
use crate::book::value::{NamedClosure, OwnGauge};
use crate::trade::dates::closed::{OnBankHolidays, Repeats, Weekdays};
use crate::trade::dates::lead_times::{self, Step as Work};
use crate::trade::dates::spread::{CalendarDays, Spread};
use crate::trade::fit::GaugeKind;
use crate::trade::limits::{self, Limit};
use crate::trade::measure::{Length, Percent, Standing};
use crate::trade::stack::House;
use chrono::Weekday;

// The list
pub const MEASURING: &str = "Measuring";
pub const DAYS: &str = "Days";
pub const APP: &str = "The app";
pub const NOT_SET: &str = "not set";
pub const BACK_TO_USUAL: &str = "Back to what is usual";

pub fn back_to_usual(what: &str) -> String {
    format!("{what}: back to what is usual")
}

// Fair
pub const FAIR: &str = "Fair of today";
pub const FAIR_HINT: &str =
    "New couples get it as the place where you met. It stays until you change it; save it empty to clear it.";

// Sizes
pub const SIZES: &str = "Sizes";
pub const FIRST_SYSTEM: &str = "Shown first";
pub const STEP: &str = "The bench makes";

// Gauges
pub const GAUGES: &str = "Gauges";
pub const GAUGE: &str = "Gauge";
pub const NEW_GAUGE: &str = "New gauge";
pub const ADD_GAUGE: &str = "Add a gauge";
pub const NO_GAUGES: &str = "Write down the ring sets and sticks you measure with. A reading keeps the gauge it was \
                             taken with.";
pub const ADD_USUAL_SETS: &str = "Add the two usual sets";
pub const USUAL_SETS_ADDED: &str = "Two ring sets added";
pub const USUAL_SET_NAMES: [&str; 2] = ["narrow rings", "wide rings"];
pub const GAUGE_NAME: &str = "What you call it";
pub const GAUGE_NAME_HINT: &str = "Narrow rings, wide rings, the old stick.";
pub const GAUGE_KIND: &str = "Kind";
pub const RING_SET: &str = "Ring set";
pub const STICK: &str = "Ring stick";
pub const GAUGE_WIDTH: &str = "Width";
pub const WIDTH_OF_SET: &str = "Of the rings in the set.";
pub const WIDTH_ON_STICK: &str = "Of the ring you usually read on it.";
pub const GAUGE_BORE: &str = "Inside";
pub const BORE_FLAT: &str = "Flat";
pub const BORE_DOMED: &str = "Domed";
pub const RELIEF: &str = "Edge relief";
pub const RELIEF_HINT: &str = "How far the edges stand back from the middle. Empty: worked out from the width.";
pub const GAUGE_STEP: &str = "Step";
pub const GAUGE_STEP_HINT: &str = "From one mark or ring to the next, round the inside: half a UK letter is 0.625, \
                                   half a US size about 1.28, an ISO mark 1.";
pub const OWN_ERROR: &str = "Its own error";
pub const TAPER: &str = "Taper";

/// "A 3 mm set and a 6 mm set, both flat inside: common practice."
pub fn usual_sets(widths: [Length; 2]) -> String {
    let [narrow, wide] = widths.map(plain);
    format!("A {narrow} mm set and a {wide} mm set, both flat inside: {}.", standing(Standing::CommonPractice))
}

pub fn own_error_hint(usual: Length) -> String {
    format!("Give or take, round the inside. Usual: {} · {}.", trimmed(usual), standing(Standing::CommonPractice))
}

pub fn taper_hint(usual: Length, founded: Standing, source: crate::trade::fit::Source) -> String {
    format!(
        "So much round the inside for each mm along it. Usual: {} · {}, {}.",
        trimmed(usual),
        standing(founded),
        fit::source(source)
    )
}

/// "3 mm, flat inside".
pub fn gauge(own: &OwnGauge) -> String {
    format!("{} mm, {}", plain(own.gauge.width), band::bore(own.gauge.bore))
}

/// "ring set · step 0.625 · own error 0.1 mm".
pub fn gauge_details(own: &OwnGauge) -> String {
    let kind = match own.gauge.kind {
        GaugeKind::RingSet => "ring set".to_owned(),
        GaugeKind::Stick { taper } => format!("ring stick · taper {}", trimmed(taper.0)),
    };
    let relief = own.gauge.relief.map(|relief| format!(" · edge relief {}", trimmed(relief))).unwrap_or_default();
    let off = if own.calibration.is_empty() { "" } else { " · calibrated" };
    format!(
        "{kind}{relief}{off} · step {} · own error {}\u{a0}mm",
        trimmed(own.gauge.step),
        trimmed(own.gauge.own_error)
    )
}

/// "narrow rings, wide rings", or how many there are.
pub fn gauges(names: &[&str]) -> String {
    match names {
        [] => "none yet".to_owned(),
        [one] => (*one).to_owned(),
        [one, other] => format!("{one}, {other}"),
        many => format::counted(many.len() as i64, "gauge", "gauges"),
    }
}

// Lead times
pub const TIMES: &str = "Lead times";
pub const TIMES_WHY: &str =
    "Working days. Order-by dates count every length with its chance, and keep the chance that you plan for.";
pub const OWN_EXTRAS: &str = "Your own extras";
pub const NO_EXTRAS: &str = "Anything else that takes days at your bench: plating, a pattern, a casting house.";
pub const NEW_EXTRA: &str = "New extra";
pub const ADD_EXTRA: &str = "Add an extra";
pub const EXTRA_NAME: &str = "What it is";
pub const EXTRA_DAYS: &str = "Working days on top of making:";
pub const EMPTY_IS_USUAL: &str = "Empty takes the usual figure.";
pub const EMPTY_ARE_USUAL: &str = "All three empty takes the usual figures.";

/// "15 to 20".
pub fn days_range(spread: Spread) -> String {
    let (least, most) = (spread.least(), spread.most());
    if least == most { format::count(most.0.into()) } else { format!("{} to {}", least.0, most.0) }
}

/// "usually 17 · common practice".
pub fn days_details(spread: Spread, founded: Standing) -> String {
    format!("usually {} · {}", spread.usual().0, standing(founded))
}

/// How long a piece of work usually takes.
pub fn days_usual(of: Work) -> String {
    let usual = lead_times::usual(of);
    format!("Usual: {} · {}.", dates::spread(usual.days), standing(usual.standing))
}

// Closed days
pub const CLOSED_DAYS: &str = "Closed days";
pub const REGION: &str = "Bank holidays of";
pub const WEEKDAYS: &str = "Days worked";
pub const ON_HOLIDAYS: &str = "On bank holidays the workshop is";
pub const HOLIDAYS_CLOSED: &str = "Closed";
pub const HOLIDAYS_WORKED: &str = "Open";
pub const CUT_OFF: &str = "Cut-off";
pub const CUT_OFF_HINT: &str = "A later order counts as the next day’s: 14:30 or 2.30pm. Empty: there is none.";
pub const IN_HAND: &str = "In hand before the wedding";
pub const CLOSURES: &str = "Workshop closed";
pub const NO_CLOSURES: &str = "No closures yet.";
pub const NEW_CLOSURE: &str = "New closure";
pub const ADD_CLOSURE: &str = "Add a closure";
pub const CLOSURE_NAME: &str = "Why";
pub const CLOSURE_NAME_HINT: &str = "Summer fortnight, trade fair, stocktaking.";
pub const CLOSURE_FROM: &str = "First day closed";
pub const CLOSURE_TO: &str = "Last day closed";
pub const NEXT_HOLIDAYS: &str = "Next bank holidays";
pub const IS_OVER: &str = "over";

pub fn in_hand_hint(usual: CalendarDays) -> String {
    format!(
        "Time for the try-on, and for a change of size. Usual: {} · {}.",
        dates::calendar_days(usual),
        standing(Standing::CommonPractice)
    )
}

/// "Mon to Fri", "Mon, Wed, Fri", "every day".
pub fn weekdays(set: Weekdays) -> String {
    let days: Vec<Weekday> = set.iter(Weekday::Mon).collect();
    let run = days.windows(2).all(|pair| pair[0].succ() == pair[1]);
    match days.as_slice() {
        [_, _, _, _, _, _, _] => "every day".to_owned(),
        [first, .., last] if run && days.len() > 2 => format!("{} to {}", weekday(*first), weekday(*last)),
        days => days.iter().map(|day| weekday(*day)).collect::<Vec<_>>().join(", "),
    }
}

/// "Mon".
pub fn weekday(day: Weekday) -> &'static str {
    dates::weekday(day).get(..3).unwrap_or_default()
}

/// "Mon to Fri, closed on bank holidays, 1 closure to come".
pub fn closed_days(set: Weekdays, on: OnBankHolidays, to_come: usize) -> String {
    let holidays = match on {
        OnBankHolidays::Closed => "closed on bank holidays",
        OnBankHolidays::Works => "open on bank holidays",
    };
    let closures = match to_come {
        0 => String::new(),
        many => format!(", {} to come", format::counted(many as i64, "closure", "closures")),
    };
    format!("{}, {holidays}{closures}", weekdays(set))
}

/// "Mon 2 Aug to Fri 13 Aug 2027 · 12 days".
pub fn closure_days(closure: &NamedClosure) -> String {
    let (from, to) = (closure.days.from(), closure.days.to());
    let days = format::counted((to - from).num_days() + 1, "day", "days");
    let said = if from == to {
        format::day(from)
    } else {
        format!("{} to {} · {days}", format::day_short(from), format::day(to))
    };
    match closure.days.repeats() {
        Repeats::Once => said,
        Repeats::SameDates | Repeats::SameWeekday => format!("{said}, then every year"),
    }
}

// Stack
pub const STACK: &str = "Stack";
pub const FREE_LENGTH: &str = "Free length of finger";
pub const FREE_LENGTH_WHY: &str =
    "Palm side, from the web to the crease of the joint. Taken until a finger is measured.";
pub const GAP: &str = "Gap between rings";
pub const ROOMY: &str = "Roomy up to";
pub const ROOMY_WHY: &str = "Of the free length.";
pub const FULL: &str = "Full up to";
pub const FULL_WHY: &str = "Above it: crowded.";
pub const CLEARANCE: &str = "Clearance under a head";
pub const CATCH: &str = "Heights differ by at most";
pub const THINNEST: &str = "Thinnest band offered under a head";

/// "24 mm, roomy to 35 %, full to 50 %".
pub fn house(house: &House) -> String {
    format!(
        "{}\u{a0}mm free, roomy to {}\u{a0}%, full to {}\u{a0}%",
        plain(house.free_length),
        house.roomy.0,
        house.full.0
    )
}

/// What is usual of each figure of a stack, in the order of its form: the free length, the gap, roomy, full, the
/// clearance, the catch and the thinnest band.
pub fn house_usual() -> [String; 7] {
    let usual = House::default();
    let length = |of, limit| usual_length(of, limits::of(limit).standing);
    let share = |of| usual_share(of, limits::of(Limit::StackShare).standing);
    [
        format!("{FREE_LENGTH_WHY} {}", length(usual.free_length, Limit::FreeLength)),
        length(usual.gap, Limit::GapBetweenRings),
        format!("{ROOMY_WHY} {}", share(usual.roomy)),
        format!("{FULL_WHY} {}", share(usual.full)),
        length(usual.clearance, Limit::Clearance),
        length(usual.catch, Limit::HeightDifference),
        length(usual.thinnest, Limit::RingHeight),
    ]
}

pub fn usual_length(usual: Length, founded: Standing) -> String {
    format!("Usual: {} · {}.", trimmed(usual), standing(founded))
}

pub fn usual_share(usual: Percent, founded: Standing) -> String {
    format!("Usual: {} · {}.", usual.0, standing(founded))
}

// Fit
pub const FIT: &str = "Fit";
pub const FIT_WHY: &str = "What an order size is shifted by, in mm round the inside. Give or take: two in three lie \
                           within it. Empty takes the usual figure.";
pub const CUSTOMARY: &str = "as is usual";

/// The heading over some of the constants, and what they are about.
pub fn fit_part(first: Constant) -> (&'static str, &'static str) {
    match first {
        Constant::Width | Constant::WidthSpread => ("Width", "For each mm that the band is wider than the gauge."),
        Constant::Bore | Constant::BoreSpread => {
            ("Domed bore", "For each mm of the room that a domed bore gives the finger.")
        }
        Constant::Cold | Constant::Warm | Constant::HandsSpread | Constant::NormalSpread => {
            ("Hands", "When the finger was measured.")
        }
        Constant::Offset | Constant::OffsetSpread => {
            ("Your own leaning", "What bands come out off by at your bench, whatever their width and bore.")
        }
    }
}

pub fn constant(constant: Constant) -> &'static str {
    match constant {
        Constant::Width => "Wider: larger by",
        Constant::WidthSpread => "Wider: give or take",
        Constant::Bore => "Domed: smaller by",
        Constant::BoreSpread => "Domed: give or take",
        Constant::Cold => "Cold: larger by",
        Constant::Warm => "Warm: smaller by",
        Constant::HandsSpread => "Cold or warm: give or take",
        Constant::NormalSpread => "Normal: give or take",
        Constant::Offset => "All bands: larger by",
        Constant::OffsetSpread => "All bands: give or take",
    }
}

/// "Usual: 0.25 · common practice." A shift down is asked for without its sign.
pub fn constant_usual(of: Constant) -> String {
    let figure = customary(of);
    usual_length(figure.value.abs(), figure.standing)
}

/// Where the customary figure of a constant comes from, as a sentence.
pub fn from_source(of: Constant) -> String {
    format!("From {}.", fit::source(customary(of).source))
}

/// How many of the constants are the jeweller’s own.
pub fn own_constants(own: usize) -> String {
    match own {
        0 => CUSTOMARY.to_owned(),
        own => format!("{own} of your own"),
    }
}

// This phone
pub const PHONE: &str = "This phone";
pub const THEME: &str = "Light or dark";
pub const THEME_SYSTEM: &str = "As the phone";
pub const THEME_LIGHT: &str = "Light";
pub const THEME_DARK: &str = "Dark";
pub const THEME_NOT_KEPT: &str =
    "The phone did not keep this: it holds until the page is closed. Allow site data to have it kept.";
pub const STORAGE: &str = "Storage";
pub const STORAGE_ASKING: &str = "Asking the browser.";
pub const ASK_TO_KEEP: &str = "Ask the browser to keep it";
pub const KEEPS: &str = "The browser keeps the book";
pub const REFUSED: &str = "The browser did not agree. Install the app or use it for some days, then ask again.";
pub const SET_ASIDE: &str = "Set aside";
pub const LEAVES: &str = "What leaves this phone";
pub const LEAVES_WHAT: &str =
    "Nothing by itself: no account, no server, no request to anyone; a call or a message starts only when you tap it.";
pub const INSTALL: &str = "Install";
pub const INSTALL_HOW: &str = "In the browser’s menu, or under its share sign, choose to install the app or add it to \
                               the home screen. On some phones an installed app does not see what was typed in the \
                               browser: install before you start.";
pub const VERSION: &str = "Version";

/// "as the phone", as the list says it.
pub fn theme(theme: &str) -> &'static str {
    match theme {
        "light" => "light",
        "dark" => "dark",
        _ => "as the phone is set",
    }
}

pub fn version(version: &str) -> String {
    format!("Bandwright {version}")
}

/// The room as a sentence of its own.
pub fn room(said: &str) -> String {
    let mut chars = said.chars();
    let first = chars.next().map(|first| first.to_ascii_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}.", chars.as_str())
}

// Example book
pub const EXAMPLE: &str = "Example book";
pub const EXAMPLE_WHAT: &str = "Four invented couples, dated from today: one measured and nearly settled, one with \
                                little time left, one just met, one without a date.";
pub const EXAMPLE_FLAGGED: &str =
    "Each is marked as an example and is never part of a file. One that you edit stays when the book is removed.";
pub const EXAMPLE_LOAD: &str = "Load the example book";
pub const EXAMPLE_REMOVE: &str = "Remove the example book";
pub const EXAMPLE_NONE: &str = "not loaded";

/// How many example couples there are.
pub fn examples(untouched: usize, edited: usize) -> String {
    let loaded = |count: usize| format::counted(count as i64, "couple", "couples");
    match (untouched, edited) {
        (0, 0) => EXAMPLE_NONE.to_owned(),
        (untouched, 0) => loaded(untouched),
        (untouched, edited) => format!("{}, {edited} edited", loaded(untouched + edited)),
    }
}
