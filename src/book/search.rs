//! Finding a couple by any word that was written down for it.

use super::couple::Couple;
use super::value::Value;

/// Puts words into lower case, in any script. The shell hands it in: the browser has the tables for it, and the
/// library's own weigh 10 kB in the app.
pub type Lower = fn(&str) -> String;

/// Whether every word that was typed stands somewhere in the couple, whatever its case. No words find everybody.
pub fn matches(couple: Couple<'_>, typed: &str, lower: Lower) -> bool {
    let typed = lower(typed);
    let mut wanted = typed.split_whitespace().peekable();
    if wanted.peek().is_none() {
        return true;
    }
    let written = lower(&written(couple));
    wanted.all(|word| written.contains(word))
}

/// Everything that was written down in words. A telephone number is found with and without its spaces.
fn written(couple: Couple<'_>) -> String {
    let mut all = String::new();
    for (_, value) in couple.0.fields() {
        let text = match value {
            Value::Text(text) => text.as_str(),
            Value::Reading(reading) => reading.size.typed.as_str(),
            Value::PreparationList(said) => {
                for text in said.answers.values() {
                    all.push_str(text);
                    all.push('\n');
                }
                continue;
            }
            _ => continue,
        };
        all.push_str(text);
        all.push('\n');
        if text.chars().any(|c| c.is_ascii_digit()) {
            all.extend(text.chars().filter(|c| !c.is_whitespace()));
            all.push('\n');
        }
    }
    all
}
