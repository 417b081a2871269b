//! A typed size: every reading of it, and the one that is meant; and the form that asks for one alone, to be converted.

use super::complaint::{Complaint, Complaints};
use super::reader::Reader;
use super::texts::{Key, Texts};
use super::write;
use crate::book::couple::Couple;
use crate::trade::entry;
use crate::trade::sizing::{SizeAsRead, System};
use crate::trade::wearer::Wearer;

pub const SIZE: Key = Key::new("q");
pub const SIZE_AS: Key = Key::new("as");

/// What the form starts with: the settled size of one of the two, or the one that was read last.
pub fn start(couple: Option<(Couple<'_>, Wearer)>) -> Texts {
    let blank = Texts::default().with_blank([SIZE, SIZE_AS]);
    let Some((couple, who)) = couple else { return blank };
    if let Some(settled) = couple.order_size(who) {
        return blank.with(SIZE, write::of_size(settled.size));
    }
    match couple.readings(who).last() {
        Some((_, taken)) => blank.with(SIZE, write::size(&taken.size)).with(SIZE_AS, code_of_reading(&taken.size)),
        None => blank,
    }
}

/// Reads the form.
pub fn read(texts: &Texts, first: System) -> (SizeTyped, Complaints) {
    let mut form = Reader::new(texts);
    let typed = form.size(SIZE, SIZE_AS, first).unwrap_or_default();
    (typed, form.complaints())
}

/// The texts of a form for a size of which this is known.
pub fn of(size: impl Into<String>) -> Texts {
    Texts::default().with(SIZE, size)
}

#[derive(Clone, Debug, Default, PartialEq)]
pub struct SizeTyped {
    pub readings: Vec<SizeAsRead>,
    chosen: Option<usize>,
}

impl SizeTyped {
    /// Reads a size; the only reading is meant, of several the one that was chosen.
    pub fn read(text: &str, chosen: &str, first: System) -> Result<SizeTyped, Complaint> {
        let readings = entry::read_size(text, first).map_err(Complaint::Size)?;
        let chosen = match readings.len() {
            1 => Some(0),
            _ => meant(&readings, chosen, first),
        };
        Ok(SizeTyped { readings, chosen })
    }

    /// The reading that is meant; none where there are several and nobody has said which.
    pub fn meant(&self) -> Option<&SizeAsRead> {
        self.readings.get(self.chosen?)
    }

    /// Whether something was typed, and nobody has said which reading of it is meant.
    pub fn is_open(&self) -> bool {
        !self.readings.is_empty() && self.chosen.is_none()
    }

    /// The word that stands for the reading that is meant, where a word is needed.
    pub fn code(&self) -> String {
        let code = self.chosen.and_then(|at| reading_codes(&self.readings).into_iter().nth(at));
        code.filter(|_| self.readings.len() > 1).unwrap_or_default()
    }
}

/// Which of several readings is meant: the one that was chosen; before that the only one of the first system of the
/// practice, which is then shown as chosen beside the others.
pub fn meant(readings: &[SizeAsRead], chosen: &str, first: System) -> Option<usize> {
    let of_the_first = |reading: &SizeAsRead| reading.stated.system() == first;
    let only = || readings.iter().filter(|reading| of_the_first(reading)).count() == 1;
    let chosen = reading_codes(readings).iter().position(|code| code == chosen);
    chosen.or_else(|| readings.iter().position(of_the_first).filter(|_| only()))
}

/// The word that stands for each reading of a typed size: its system, and its number where a system has several, as the
/// UK has of "M+".
pub fn reading_codes(readings: &[SizeAsRead]) -> Vec<String> {
    let mut codes: Vec<String> = Vec::new();
    for reading in readings {
        let code = reading.stated.system().code();
        let before = codes.iter().filter(|other| other.split('-').next() == Some(code)).count();
        codes.push(if before == 0 { code.to_owned() } else { format!("{code}-{}", before + 1) });
    }
    codes
}

/// The word that stands for what was meant, when the size is typed as it was.
pub fn code_of_reading(size: &SizeAsRead) -> String {
    let system = size.stated.system();
    let readings = entry::read_size(&size.typed, system).unwrap_or_default();
    let place = readings.iter().position(|reading| reading.stated == size.stated);
    place.and_then(|place| reading_codes(&readings).into_iter().nth(place)).unwrap_or_else(|| system.code().to_owned())
}
