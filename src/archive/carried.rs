//! What a newer version wrote and this one does not know: kept as text, and put back where it stood.

use serde_json::{Map, Value as Json};

/// What is left of an object once the known keys are taken out.
pub(super) fn rest(row: Map<String, Json>) -> Option<String> {
    if row.is_empty() { None } else { Some(settled(Json::Object(row).to_string())) }
}

/// A JSON text that reads and writes as itself. The library reads numbers of more than fifteen digits with an error in
/// the last one, so that each copy of such a text could differ from the one before.
pub(super) fn settled(mut text: String) -> String {
    for _ in 0..8 {
        let again = serde_json::from_str::<Json>(&text).unwrap_or_default().to_string();
        if again == text {
            break;
        }
        text = again;
    }
    text
}

/// An object to be filled: what was carried through.
pub(super) fn carried(text: Option<&str>) -> Map<String, Json> {
    text.and_then(|text| serde_json::from_str(text).ok()).unwrap_or_default()
}
