//! How the assay office or the courier works.

use super::week;
use crate::book::change::Write;
use crate::book::practice::Practice;
use crate::book::settings;
use crate::forms::complaint::Complaints;
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::trade::dates::closed::OnBankHolidays;
use crate::trade::dates::places::{Place, PlaceDays};

pub use super::week::{CLOSED, OPEN};

pub const WEEKDAYS: Key = Key::new("place-weekdays");
pub const ON_HOLIDAYS: Key = Key::new("place-holidays");
pub const AT_CHRISTMAS: Key = Key::new("place-christmas");

pub fn start(practice: Practice<'_>, of: Place) -> Texts {
    let known = practice.place_days(of);
    Texts::default()
        .with(WEEKDAYS, week::start(known.weekdays))
        .with(ON_HOLIDAYS, week::word_of(known.on_bank_holidays))
        .with(AT_CHRISTMAS, if known.shut_at_christmas { CLOSED } else { OPEN })
}

pub fn read(texts: &Texts, of: Place) -> Result<Write, Complaints> {
    let mut form = Reader::new(texts);
    let weekdays = week::read(&mut form, WEEKDAYS);
    let works = form.text(ON_HOLIDAYS) == OPEN;
    let on_bank_holidays = if works { OnBankHolidays::Works } else { OnBankHolidays::Closed };
    let shut_at_christmas = form.text(AT_CHRISTMAS) == CLOSED;
    let days = weekdays.map(|weekdays| PlaceDays { weekdays, on_bank_holidays, shut_at_christmas });
    form.checked(days.map(|days| settings::place_days(of).unless_usual(days, of.usual_days())))
}
