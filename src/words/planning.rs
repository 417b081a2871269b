//! Words of what the jeweller plans for: chances, holidays one by one, other calendars, closures that come again.

use super::standing::standing;
use super::{dates, format, practice};
use crate::trade::dates::closed::Repeats;
use crate::trade::dates::places::PlaceDays;
use crate::trade::dates::season::{Busy, MonthSet};
use crate::trade::dates::spread::CalendarDays;
use crate::trade::measure::{Percent, Standing};
use chrono::NaiveDate;

pub const WHO_ELSE: &str = "Holidays and other calendars";
pub const HOLIDAYS_KEPT: &str = "Holidays kept";
pub const PLACE_WHY: &str = "Closures of its own are added under Closed days, with who is closed.";
pub const PLACE_HOLIDAYS: &str = "On bank holidays";
pub const PLACE_CHRISTMAS: &str = "24 December to 1 January";

pub fn holidays_why(region: &str) -> String {
    format!(
        "Public holidays of {region}. Ticked: the workshop is closed. Those by choice depend on the employer or the place."
    )
}

/// How many holidays are switched against what is usual.
pub fn switched(count: usize) -> String {
    match count {
        0 => "as is usual in your region".to_owned(),
        count => format!("{} otherwise than usual", format::counted(count as i64, "holiday", "holidays")),
    }
}

/// "Mon to Fri, closed on bank holidays, 24 Dec to 1 Jan · common practice".
pub fn place_days(days: PlaceDays, usual: bool) -> String {
    let christmas = if days.shut_at_christmas { ", 24 Dec to 1 Jan" } else { "" };
    let founded = standing(if usual { Standing::CommonPractice } else { Standing::Yours });
    format!("{}{christmas} · {founded}", practice::closed_days(days.weekdays, days.on_bank_holidays, 0))
}

// Chances
pub const CHANCES: &str = "What you plan for";
pub const CONFIDENCE: &str = "Chance of being in time";
pub const RESIZE_CHANCE: &str = "Chance of a change of size";
pub const TRY_ON_AFTER: &str = "From in hand to the try-on";
pub const BUSY_CHANCE: &str = "Chance of a busy season";
pub const BUSY_HINT: &str = "In a busy season everything takes longer together. Empty: never.";
pub const BUSY_MONTHS: &str = "Busy months";
/// The question above the months; none is all the year.
pub const BUSY_MONTHS_ASKED: &str = "In which months? None ticked: at any time of the year.";
pub const BUSY_LONGER: &str = "Longer by, in a busy season";
pub const BUSY_LONGER_HINT: &str = "50 % is half as long again. Empty: no longer.";
pub const COUNTS_TODAY: &str = "Among the working days left, today is";
pub const COUNTED: &str = "Counted";
pub const NOT_COUNTED: &str = "Not counted";

pub fn confidence_hint(usual: Percent) -> String {
    format!("Order-by dates keep it. {}", practice::usual_share(usual, Standing::CommonPractice))
}

pub fn resize_hint(usual: Percent) -> String {
    practice::usual_share(usual, Standing::CommonPractice)
}

pub fn try_on_hint(usual: CalendarDays) -> String {
    format!("Usual: {} · {}.", dates::calendar_days(usual), standing(Standing::CommonPractice))
}

/// "95 %".
pub fn share(share: Percent) -> String {
    format!("{} %", format::count(share.0.into()))
}

/// "a change of size 10 %, no busy season".
pub fn chances(busy: Busy, resize: Percent) -> String {
    let busy = match busy.chance {
        Percent(0) => "no busy season".to_owned(),
        chance if busy.months == MonthSet::ALL => format!("a busy season {}", share(chance)),
        chance => format!("a busy season {} ({})", share(chance), months(busy.months)),
    };
    format!("a change of size {}, {busy}", share(resize))
}

/// "May to July, December"; months in a row from three on are a span, across the turn of the year too.
pub fn months(set: MonthSet) -> String {
    if set == MonthSet::ALL {
        return "all the year".to_owned();
    }
    let next = |month: u32| month % 12 + 1;
    let begins = set.months().filter(|month| !set.has((month + 10) % 12 + 1));
    let span = |first: u32| {
        let (mut last, mut many) = (first, 1);
        while set.has(next(last)) {
            (last, many) = (next(last), many + 1);
        }
        let (first, last) = (dates::month_name(first), dates::month_name(last));
        match many {
            1 => first,
            2 => format!("{first}, {last}"),
            _ => format!("{first} to {last}"),
        }
    };
    begins.map(span).collect::<Vec<_>>().join(", ")
}

pub const CLOSURE_REPEATS: &str = "Comes again";
pub const CLOSURE_PLACE: &str = "Who is closed";

/// Why a closure is not taken: nobody would work at all.
pub fn never_works(last: NaiveDate) -> String {
    format!("Shorten the closure: there would be no working day in the year after {}.", format::day(last))
}

/// Whether a closure comes again.
pub fn repeats(repeats: Repeats) -> &'static str {
    match repeats {
        Repeats::Once => "Once",
        Repeats::SameDates => "Every year, same dates",
        Repeats::SameWeekday => "Every year, same week",
    }
}
