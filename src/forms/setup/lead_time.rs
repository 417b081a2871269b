//! How long one piece of work takes: a usual one, or one of the jeweller's own.

use crate::book::change::Write;
use crate::book::practice::Practice;
use crate::book::settings;
use crate::book::value::Extra;
use crate::forms::complaint::Complaints;
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::forms::write;
use crate::trade::dates::lead_times::{self, Step as Work};
use crate::trade::dates::spread::Spread;
use crate::trade::limits::Limit;

pub const NAME: Key = Key::new("extra-name");
/// The least, the usual and the most days.
pub const DAYS: [Key; 3] = [Key::new("least-days"), Key::new("usual-days"), Key::new("most-days")];

/// A usual piece of work: empty where nothing of one's own is set.
pub fn start_usual(practice: Practice<'_>, work: Work) -> Texts {
    let set = practice.is_set(settings::lead_time(work).field).then(|| practice.lead_time(work));
    days(Texts::default(), set)
}

/// Reads what is written down for a usual piece of work; all three empty are what is usual.
pub fn read_usual(texts: &Texts, work: Work) -> Result<Write, Complaints> {
    let usual = lead_times::usual(work).days;
    let mut form = Reader::new(texts);
    let spread = form.optional_spread(DAYS);
    form.checked(spread.map(|spread| settings::lead_time(work).unless_usual(spread.unwrap_or(usual), usual)))
}

/// One of the jeweller's own, or a new one.
pub fn start_own(known: Option<&Extra>) -> Texts {
    let texts = Texts::default().with(NAME, known.map(|extra| extra.name.clone()).unwrap_or_default());
    days(texts, known.map(|extra| extra.spread))
}

pub fn read_own(texts: &Texts) -> Result<Extra, Complaints> {
    let mut form = Reader::new(texts);
    let (name, spread) = (form.needed(NAME, Limit::NameText), form.spread(DAYS));
    form.checked(name.zip(spread).map(|(name, spread)| Extra { name, spread }))
}

fn days(texts: Texts, spread: Option<Spread>) -> Texts {
    DAYS.into_iter().zip(write::spread(spread)).fold(texts, |texts, (key, days)| texts.with(key, days))
}
