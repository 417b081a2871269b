//! Whether words are about a couple. Half-typed words belong to nobody until they are saved: when a couple is erased for
//! good, those that name them go too.

use super::field::Field;
use super::record::Record;
use super::search::Lower;
use super::value::Value;

/// Shorter numbers and addresses stand in other words by chance.
const REACH_LEAST: usize = 6;

/// Whether a name of the couple, or a way to reach them, stands in `words`, whatever its case. Names count as whole
/// words, one that was corrected later too.
pub fn mentions(record: &Record, words: &str, lower: Lower) -> bool {
    let words = lower(words);
    let spelled = split(&words);
    let run = compact(&words);
    let sets = record.changes().iter().flat_map(|change| &change.sets);
    sets.into_iter().any(|set| match (&set.field, &set.value) {
        (Field::Name(_), Some(Value::Text(name))) => {
            let name = lower(name);
            let name = split(&name);
            !name.is_empty() && spelled.windows(name.len()).any(|some| some == name)
        }
        (Field::Reach(_), Some(Value::Text(reach))) => {
            let reach = compact(&lower(reach));
            reach.chars().count() >= REACH_LEAST && run.contains(&reach)
        }
        _ => false,
    })
}

fn split(words: &str) -> Vec<&str> {
    words.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).collect()
}

/// Letters and digits alone: a telephone number is the same with and without its spaces.
fn compact(words: &str) -> String {
    words.chars().filter(|c| c.is_alphanumeric()).collect()
}
