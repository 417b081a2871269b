//! Texts that somebody, or something, has scribbled in: the same for the same seed.

/// SplitMix64, by Steele, Lea and Flood.
fn next(state: &mut u64) -> u64 {
    *state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
    let mut z = *state;
    z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    z ^ (z >> 31)
}

/// Pieces that matter to a reader.
const PIECES: [&str; 24] = [
    "{",
    "}",
    "[",
    "]",
    "\"",
    ",",
    ":",
    "\\",
    "null",
    "true",
    "-1",
    "1e999",
    "9007199254740993",
    "\"1.9\"",
    "\"2.0\"",
    "\u{feff}",
    "\u{202e}",
    "\\ud800",
    "\"replaces\":[",
    "\"after\":[",
    "\"erased\":",
    "\0",
    "[[[[[[[[[[[[",
    "💍",
];

pub fn mutate(text: &str, seed: u64) -> Vec<u8> {
    let mut state = seed;
    let mut bytes = text.as_bytes().to_vec();
    for _ in 0..1 + next(&mut state) % 3 {
        let at = (next(&mut state) as usize) % bytes.len().max(1);
        let to = (at + 1 + (next(&mut state) as usize) % 60).min(bytes.len());
        match next(&mut state) % 7 {
            0 if next(&mut state).is_multiple_of(6) => bytes.truncate(at),
            1 => drop(bytes.drain(at.min(to)..to)),
            2 => {
                let again = bytes[at.min(to)..to].to_vec();
                let place = (next(&mut state) as usize) % (bytes.len() + 1);
                bytes.splice(place..place, again);
            }
            3 if at < bytes.len() => bytes[at] = next(&mut state) as u8,
            4 if at < bytes.len() => bytes[at] ^= 1 << (next(&mut state) % 8),
            0 | 5 => {
                // A digit for a digit: numbers, dates and ids that look whole.
                if let Some(byte) = bytes[at.min(to)..to].iter_mut().find(|byte| byte.is_ascii_digit()) {
                    *byte = b'0' + (next(&mut state) % 10) as u8;
                }
            }
            _ => {
                let piece = PIECES[(next(&mut state) % PIECES.len() as u64) as usize];
                bytes.splice(at.min(to)..at.min(to), piece.bytes());
            }
        }
    }
    bytes
}
