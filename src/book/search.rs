//! Finding a couple by any word that was written down for it.

use super::couple::Couple;
use super::value::Value;

/// Whether every word that was typed stands somewhere in the couple, whatever its case. No words find everybody.
pub fn matches(couple: Couple<'_>, typed: &str) -> bool {
    let mut wanted = typed.split_whitespace().map(str::to_lowercase).peekable();
    if wanted.peek().is_none() {
        return true;
    }
    let written = written(couple);
    wanted.all(|word| written.contains(&word))
}

/// Everything that was written down in words, in lower case. A telephone number is found with and without its spaces.
fn written(couple: Couple<'_>) -> String {
    let mut all = String::new();
    for (_, value) in couple.0.fields() {
        let text = match value {
            Value::Text(text) => text.as_str(),
            Value::Reading(reading) => reading.size.typed.as_str(),
            _ => continue,
        };
        all.push_str(&text.to_lowercase());
        all.push('\n');
        if text.chars().any(|c| c.is_ascii_digit()) {
            all.extend(text.chars().filter(|c| !c.is_whitespace()).flat_map(char::to_lowercase));
            all.push('\n');
        }
    }
    all
}
