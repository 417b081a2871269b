//! Words that came from elsewhere, made harmless to show.
//!
//! A file may bring names and notes that no form here would take: control characters, and characters that turn the
//! direction of whatever follows. They are kept as they are in the record, and go through here wherever they are shown
//! beside words of ours: names, notes, rings, gauges, places. Markup needs nothing more: the page shows it as text.

/// The text without control characters and without embeddings, overrides and isolates of direction. Line breaks and
/// plain marks of direction stay.
pub fn harmless(text: &str) -> String {
    let shown = |c: char| match c {
        '\n' => Some(c),
        '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}' => None,
        c if c.is_control() => Some(' '),
        c => Some(c),
    };
    text.chars().filter_map(shown).collect()
}
