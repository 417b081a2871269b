//! What is planned for: the chance of being in time, a busy season, a change of size, and whether today counts.

use crate::book::change::Write;
use crate::book::field::PracticeField;
use crate::book::practice::Practice;
use crate::book::settings;
use crate::forms::complaint::Complaints;
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::trade::dates::countdown::{CONFIDENCE, RESIZE_CHANCE, TRY_ON_AFTER};
use crate::trade::dates::season::MonthSet;
use crate::trade::limits::Limit;
use crate::trade::measure::Percent;

pub const CONFIDENCE_WANTED: Key = Key::new("confidence");
pub const COUNTS_TODAY: Key = Key::new("counts-today");
pub const RESIZE: Key = Key::new("resize-chance");
pub const WAIT: Key = Key::new("try-on-after");
pub const BUSY: Key = Key::new("busy-chance");
pub const LONGER: Key = Key::new("busy-longer");
pub const MONTHS: Key = Key::new("busy-months");

/// The words for whether today counts.
pub const TODAY_TOO: &str = "yes";
pub const NOT_TODAY: &str = "no";

/// What this form sets.
pub const FIELDS: [PracticeField; 7] = [
    PracticeField::Confidence,
    PracticeField::CountsToday,
    PracticeField::ResizeChance,
    PracticeField::TryOnAfter,
    PracticeField::BusyChance,
    PracticeField::BusyLonger,
    PracticeField::BusyMonths,
];

pub fn start(practice: Practice<'_>) -> Texts {
    let busy = practice.busy();
    let set = |field, text: String| if practice.is_set(field) { text } else { String::new() };
    let months = busy.months.months().map(|month| month.to_string()).collect::<Vec<_>>();
    Texts::default()
        .with(CONFIDENCE_WANTED, set(PracticeField::Confidence, practice.confidence().0.to_string()))
        .with(COUNTS_TODAY, if practice.counts_today() { TODAY_TOO } else { NOT_TODAY })
        .with(RESIZE, set(PracticeField::ResizeChance, practice.resize_chance().0.to_string()))
        .with(WAIT, set(PracticeField::TryOnAfter, practice.try_on_after().0.to_string()))
        .with(BUSY, set(PracticeField::BusyChance, busy.chance.0.to_string()))
        .with(LONGER, set(PracticeField::BusyLonger, busy.longer.0.to_string()))
        .with(MONTHS, set(PracticeField::BusyMonths, months.join(" ")))
}

pub fn read(texts: &Texts) -> Result<Vec<Write>, Complaints> {
    const NEVER: Percent = Percent(0);
    let mut form = Reader::new(texts);
    let confidence = form.optional_percent(CONFIDENCE_WANTED, Limit::ConfidenceShare);
    let resize = form.optional_percent(RESIZE, Limit::ChanceShare);
    let wait = form.optional_days(WAIT, Limit::DaysInHand);
    let busy = form.optional_percent(BUSY, Limit::ChanceShare);
    let longer = form.optional_percent(LONGER, Limit::LongerShare);
    let counts = form.text(COUNTS_TODAY) == TODAY_TOO;
    let months = form.text(MONTHS).split(' ').filter_map(|month| month.parse().ok());
    // None ticked and all ticked are the same: all the year.
    let months = MonthSet::of(months).filter(|months| !months.is_empty()).unwrap_or(MonthSet::ALL);
    let writes = (|| {
        Some(vec![
            settings::confidence().unless_usual(confidence?.unwrap_or(CONFIDENCE), CONFIDENCE),
            settings::counts_today().unless_usual(counts, true),
            settings::resize_chance().unless_usual(resize?.unwrap_or(RESIZE_CHANCE), RESIZE_CHANCE),
            settings::try_on_after().unless_usual(wait?.unwrap_or(TRY_ON_AFTER), TRY_ON_AFTER),
            settings::busy_chance().unless_usual(busy?.unwrap_or(NEVER), NEVER),
            settings::busy_longer().unless_usual(longer?.unwrap_or(NEVER), NEVER),
            settings::busy_months().unless_usual(months, MonthSet::ALL),
        ])
    })();
    form.checked(writes)
}
