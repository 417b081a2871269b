//! What people call the size systems when they type: rows, the longer name before one that begins it.

use crate::trade::sizing::System::{self, Circumference, Diameter, Iso, Italy, Japan, Uk, Us};

const MM: &[System] = &[Diameter, Circumference];
/// "EU" is said of all that is in use on the continent.
const CONTINENT: &[System] = &[Iso, Italy, Diameter, Circumference];

#[rustfmt::skip]
pub(super) const NAMES: &[(&str, &[System])] = &[
    ("UNITED KINGDOM", &[Uk]), ("GREAT BRITAIN", &[Uk]), ("BRITISH", &[Uk]), ("BRITAIN", &[Uk]), ("ENGLAND", &[Uk]),
    ("U.K.", &[Uk]), ("UK", &[Uk]), ("GB", &[Uk]),
    ("IRELAND", &[Uk]), ("IRISH", &[Uk]), ("IE", &[Uk]),
    ("AUSTRALIAN", &[Uk]), ("AUSTRALIA", &[Uk]), ("AUS", &[Uk]), ("AU", &[Uk]),
    ("NEW ZEALAND", &[Uk]), ("NZ", &[Uk]), ("SOUTH AFRICA", &[Uk]), ("ZA", &[Uk]),
    ("UNITED STATES", &[Us]), ("AMERICAN", &[Us]), ("AMERICA", &[Us]), ("U.S.", &[Us]), ("USA", &[Us]), ("US", &[Us]),
    ("CANADIAN", &[Us]), ("CANADA", &[Us]), ("CA", &[Us]), ("MEXICO", &[Us]), ("MX", &[Us]),
    ("ISO NUMBER", &[Iso]), ("ISO", &[Iso]), ("EUROPEAN", CONTINENT), ("EUROPE", CONTINENT), ("EU", CONTINENT),
    ("JAPANESE", &[Japan]), ("JAPAN", &[Japan]), ("JCS", &[Japan]), ("JP", &[Japan]),
    ("ITALIAN", &[Italy]), ("ITALY", &[Italy]), ("IT", &[Italy]), ("SPANISH", &[Italy]), ("SPAIN", &[Italy]),
    ("ES", &[Italy]), ("SWISS", &[Italy]), ("SWITZERLAND", &[Italy]), ("CH", &[Italy]),
    ("GERMANY", MM), ("GERMAN", MM), ("DE", MM), ("NETHERLANDS", MM), ("DUTCH", MM), ("NL", MM),
    ("INSIDE DIAMETER", &[Diameter]), ("DIAMETER", &[Diameter]), ("DIAM", &[Diameter]), ("DIA", &[Diameter]),
    ("ACROSS", &[Diameter]), ("Ø", &[Diameter]),
    ("INSIDE CIRCUMFERENCE", &[Circumference]), ("CIRCUMFERENCE", &[Circumference]), ("CIRC", &[Circumference]),
    ("ROUND", &[Circumference]),
];

/// Takes a system's name off the front and off the end of a plain text; without one, every system is meant.
/// A text that names two that have nothing in common means none.
pub(super) fn without_name(text: &str) -> (&str, Vec<System>) {
    let mut meant = System::ALL.to_vec();
    let mut text = text;
    if let Some((rest, systems)) = NAMES.iter().find_map(|(name, systems)| Some((text.strip_prefix(name)?, systems))) {
        text = rest;
        meant.retain(|system| systems.contains(system));
    }
    text = text.trim_start_matches([' ', ':']);
    text = text.strip_prefix("SIZE").unwrap_or(text).trim_start();
    if let Some((rest, systems)) = NAMES.iter().find_map(|(name, systems)| Some((behind(text, name)?, systems))) {
        text = rest;
        meant.retain(|system| systems.contains(system));
    }
    (text.trim(), meant)
}

/// What stands before a name; a name at the end is a word of its own ("17 INCHES" does not end in Spain).
fn behind<'a>(text: &'a str, name: &str) -> Option<&'a str> {
    let rest = text.strip_suffix(name)?;
    (!rest.ends_with(char::is_alphabetic)).then_some(rest)
}
