//! The days of the workshop: its region, its week, the cut-off of a day, and the days in hand before a wedding.

use chrono::NaiveDate;

use super::week;
use crate::book::change::Write;
use crate::book::field::PracticeField;
use crate::book::practice::{Practice, USUAL_REGION};
use crate::book::settings;
use crate::forms::complaint::Complaints;
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::forms::write;
use crate::trade::dates::closed::MON_TO_FRI;
use crate::trade::dates::holidays::{Holiday, Region, upcoming};
use crate::trade::dates::lead_times::IN_HAND;
use crate::trade::limits::Limit;

pub use super::week::{CLOSED, OPEN};

/// About a year of them.
const HOLIDAYS_SHOWN: usize = 10;

pub const REGION: Key = Key::new("region");
pub const WEEKDAYS: Key = Key::new("weekdays");
pub const ON_HOLIDAYS: Key = Key::new("on-holidays");
pub const CUT_OFF: Key = Key::new("cut-off");
pub const DAYS_IN_HAND: Key = Key::new("in-hand");

/// What this form sets; the closures have forms of their own.
pub const FIELDS: [PracticeField; 5] = [
    PracticeField::Region,
    PracticeField::Weekdays,
    PracticeField::WorksOnHolidays,
    PracticeField::CutOff,
    PracticeField::DaysInHand,
];

pub fn start(practice: Practice<'_>) -> Texts {
    let in_hand = practice.is_set(PracticeField::DaysInHand).then(|| practice.in_hand().0.to_string());
    Texts::default()
        .with(REGION, practice.region().code())
        .with(WEEKDAYS, week::start(practice.weekdays()))
        .with(ON_HOLIDAYS, week::word_of(practice.on_bank_holidays()))
        .with(CUT_OFF, write::optional_time(practice.cut_off()))
        .with(DAYS_IN_HAND, in_hand.unwrap_or_default())
}

/// The region that is chosen.
pub fn region(texts: &Texts) -> Region {
    Reader::new(texts).choice(REGION).unwrap_or(USUAL_REGION)
}

/// The next bank holidays of the region that is chosen.
pub fn next_holidays(texts: &Texts, today: NaiveDate) -> Vec<Holiday> {
    upcoming(region(texts), today).take(HOLIDAYS_SHOWN).collect()
}

pub fn read(texts: &Texts) -> Result<Vec<Write>, Complaints> {
    let mut form = Reader::new(texts);
    let days = week::read(&mut form, WEEKDAYS);
    let cut_off = form.optional_time(CUT_OFF);
    let in_hand = form.optional_days(DAYS_IN_HAND, Limit::DaysInHand);
    let works = form.text(ON_HOLIDAYS) == OPEN;
    let writes = (|| {
        Some(vec![
            settings::region().unless_usual(region(texts), USUAL_REGION),
            settings::weekdays().unless_usual(days?, MON_TO_FRI),
            settings::works_on_holidays().unless_usual(works, false),
            settings::cut_off().write(cut_off?),
            settings::days_in_hand().unless_usual(in_hand?.unwrap_or(IN_HAND), IN_HAND),
        ])
    })();
    form.checked(writes)
}
