//! The figures of a stack: its gaps, the usual free length, what counts as roomy and as full, and what a head needs.

use crate::book::change::Write;
use crate::book::field::PracticeField;
use crate::book::practice::Practice;
use crate::book::settings;
use crate::forms::complaint::{Complaint, Complaints};
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::forms::write;
use crate::trade::limits::Limit;
use crate::trade::stack::{House, thresholds};

pub const FREE_LENGTH: Key = Key::new("free-length");
pub const GAP: Key = Key::new("gap");
pub const ROOMY: Key = Key::new("roomy");
pub const FULL: Key = Key::new("full");
pub const CLEARANCE: Key = Key::new("clearance");
pub const CATCH: Key = Key::new("catch");
pub const THINNEST: Key = Key::new("thinnest");

/// What this form sets.
pub const FIELDS: [PracticeField; 7] = [
    PracticeField::FreeLength,
    PracticeField::Gap,
    PracticeField::Roomy,
    PracticeField::Full,
    PracticeField::Clearance,
    PracticeField::Catch,
    PracticeField::Thinnest,
];

/// Empty where nothing of one's own is set.
pub fn start(practice: Practice<'_>) -> Texts {
    let house = practice.house();
    let set = |field, text: String| if practice.is_set(field) { text } else { String::new() };
    Texts::default()
        .with(FREE_LENGTH, set(PracticeField::FreeLength, write::mm(house.free_length)))
        .with(GAP, set(PracticeField::Gap, write::mm(house.gap)))
        .with(ROOMY, set(PracticeField::Roomy, house.roomy.0.to_string()))
        .with(FULL, set(PracticeField::Full, house.full.0.to_string()))
        .with(CLEARANCE, set(PracticeField::Clearance, write::mm(house.clearance)))
        .with(CATCH, set(PracticeField::Catch, write::mm(house.catch)))
        .with(THINNEST, set(PracticeField::Thinnest, write::mm(house.thinnest)))
}

/// Reads the form; what is empty is as usual.
pub fn read(texts: &Texts) -> Result<Vec<Write>, Complaints> {
    let usual = House::default();
    let mut form = Reader::new(texts);
    let free_length = form.optional_length(FREE_LENGTH, Limit::FreeLength);
    let gap = form.optional_length(GAP, Limit::GapBetweenRings);
    let roomy = form.optional_percent(ROOMY, Limit::StackShare);
    let full = form.optional_percent(FULL, Limit::StackShare);
    let clearance = form.optional_length(CLEARANCE, Limit::Clearance);
    let catch = form.optional_length(CATCH, Limit::HeightDifference);
    let thinnest = form.optional_length(THINNEST, Limit::RingHeight);
    let house = (|| {
        let house = House {
            gap: gap?.unwrap_or(usual.gap),
            free_length: free_length?.unwrap_or(usual.free_length),
            roomy: roomy?.unwrap_or(usual.roomy),
            full: full?.unwrap_or(usual.full),
            clearance: clearance?.unwrap_or(usual.clearance),
            catch: catch?.unwrap_or(usual.catch),
            thinnest: thinnest?.unwrap_or(usual.thinnest),
        };
        form.note(FULL, thresholds(&house).map_err(Complaint::Stack)).map(|_| house)
    })();
    form.checked(house.map(|house| {
        vec![
            settings::free_length().unless_usual(house.free_length, usual.free_length),
            settings::gap().unless_usual(house.gap, usual.gap),
            settings::roomy().unless_usual(house.roomy, usual.roomy),
            settings::full().unless_usual(house.full, usual.full),
            settings::clearance().unless_usual(house.clearance, usual.clearance),
            settings::catch().unless_usual(house.catch, usual.catch),
            settings::thinnest().unless_usual(house.thinnest, usual.thinnest),
        ]
    }))
}
