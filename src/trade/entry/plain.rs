//! Text made plain: other scripts' digits, fractions and signs as the ones on every keyboard; and exact numbers.

/// The noughts of scripts with decimal digits of their own, each followed by its one to nine.
const NOUGHTS: [u32; 19] = [
    0x0660, 0x06F0, 0x07C0, 0x0966, 0x09E6, 0x0A66, 0x0AE6, 0x0B66, 0x0BE6, 0x0C66, 0x0CE6, 0x0D66, 0x0E50, 0x0ED0,
    0x0F20, 0x1040, 0x17E0, 0x1810, 0xFF10,
];

/// Written-out fractions.
const FRACTIONS: [(char, &str); 19] = [
    ('¼', "1/4"),
    ('½', "1/2"),
    ('¾', "3/4"),
    ('⅐', "1/7"),
    ('⅑', "1/9"),
    ('⅒', "1/10"),
    ('⅓', "1/3"),
    ('⅔', "2/3"),
    ('⅕', "1/5"),
    ('⅖', "2/5"),
    ('⅗', "3/5"),
    ('⅘', "4/5"),
    ('⅙', "1/6"),
    ('⅚', "5/6"),
    ('⅛', "1/8"),
    ('⅜', "3/8"),
    ('⅝', "5/8"),
    ('⅞', "7/8"),
    ('⅟', "1/"),
];

const SMALL_DIGITS: [char; 20] =
    ['⁰', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹', '₀', '₁', '₂', '₃', '₄', '₅', '₆', '₇', '₈', '₉'];

/// The text in capitals of the plain alphabet, with plain digits and signs, single spaces, and none at the ends.
/// A written-out fraction gets a space before it, so that 2½ becomes "2 1/2" and never "21/2".
pub(super) fn plain(text: &str) -> String {
    let mut out = String::new();
    let mut small_before = false;
    for c in text.chars() {
        let small = SMALL_DIGITS.iter().position(|&digit| digit == c).map(|place| place % 10);
        if let Some((_, fraction)) = FRACTIONS.iter().find(|(sign, _)| *sign == c) {
            out.push(' ');
            out.push_str(fraction);
        } else if let Some(digit) = small {
            if !small_before && !out.ends_with('/') {
                out.push(' ');
            }
            out.extend(char::from_digit(digit as u32, 10));
        } else if !is_invisible(c) {
            out.push(plain_char(c));
        }
        small_before = small.is_some();
    }
    out.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Characters without ink that a keyboard or a paste may leave behind.
pub(super) fn is_invisible(c: char) -> bool {
    matches!(c, '\u{AD}' | '\u{200B}'..='\u{200F}' | '\u{2060}' | '\u{FE0E}' | '\u{FE0F}' | '\u{FEFF}')
}

/// A digit of any script in the table as a plain one.
pub(super) fn digit(c: char) -> Option<char> {
    let code = u32::from(c);
    let value = NOUGHTS.iter().map(|nought| code.wrapping_sub(*nought)).find(|value| *value < 10)?;
    char::from_digit(value, 10)
}

fn plain_char(c: char) -> char {
    if let Some(digit) = digit(c) {
        return digit;
    }
    match c {
        '\u{FF01}'..='\u{FF5E}' => {
            char::from_u32(u32::from(c) - 0xFEE0).map_or(c, |narrow| narrow.to_ascii_uppercase())
        }
        '⁄' | '∕' => '/',
        '−' | '‐' | '‑' | '–' => '-',
        '٫' => '.',
        '″' | '“' | '”' => '"',
        'ø' | '⌀' | '∅' => 'Ø',
        _ => c.to_ascii_uppercase(),
    }
}

/// A number exactly as written: a fraction of two whole numbers, the lower one above nought.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Exact {
    upper: i128,
    lower: i128,
}

/// Why a text is no number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum NotExact {
    NotANumber,
    TwoSeparators,
}

impl Exact {
    /// "16,5", "2.5", ".5", "5/2", "2 1/2" and "2-1/2", with or without a sign; the text is already plain.
    pub(super) fn parse(text: &str) -> Result<Exact, NotExact> {
        let text = text.trim();
        let (sign, text) = match text.strip_prefix('-') {
            Some(rest) => (-1, rest),
            None => (1, text.strip_prefix('+').unwrap_or(text)),
        };
        let text = text.trim_start();
        let number = match text.split_once('/') {
            Some((before, below)) => fraction(before.trim_end(), below.trim_start())?,
            None => decimal(text)?,
        };
        Ok(Exact { upper: sign * number.upper, lower: number.lower })
    }

    /// This many times as much, as a whole number if it is one.
    pub(super) fn whole_times(self, factor: i64) -> Option<i64> {
        let upper = self.upper * i128::from(factor);
        (upper % self.lower == 0).then(|| clamp(upper / self.lower))
    }

    /// This many times as much, to the nearest whole number, halves away from nought.
    pub(super) fn rounded_times(self, factor: i64) -> i64 {
        let twice = 2 * self.upper * i128::from(factor);
        clamp((twice + twice.signum() * self.lower) / (2 * self.lower))
    }

    pub(super) fn is_below_one(self) -> bool {
        self.upper < self.lower
    }
}

/// No figure that anybody enters has more digits before its decimal point; what has becomes this large.
const LARGEST: i128 = 1_000_000_000_000;
/// Decimals beyond these are dropped: ten thousand times finer than what a length keeps.
const DECIMALS: usize = 8;

fn clamp(value: i128) -> i64 {
    i64::try_from(value).unwrap_or(if value < 0 { i64::MIN } else { i64::MAX })
}

fn digits(text: &str) -> Result<i128, NotExact> {
    if text.is_empty() || !text.bytes().all(|b| b.is_ascii_digit()) {
        return Err(NotExact::NotANumber);
    }
    Ok(text.bytes().fold(0, |value: i128, b| (value * 10 + i128::from(b - b'0')).min(LARGEST)))
}

fn decimal(text: &str) -> Result<Exact, NotExact> {
    let separators = text.bytes().filter(|b| matches!(b, b'.' | b',')).count();
    let others = text.bytes().all(|b| b.is_ascii_digit() || matches!(b, b'.' | b',' | b' '));
    if separators > 1 && others && text.bytes().any(|b| b.is_ascii_digit()) {
        return Err(NotExact::TwoSeparators);
    }
    let Some((whole, decimals)) = text.split_once(['.', ',']) else {
        return Ok(Exact { upper: digits(text)?, lower: 1 });
    };
    if whole.is_empty() && decimals.is_empty() {
        return Err(NotExact::NotANumber);
    }
    let whole = if whole.is_empty() { 0 } else { digits(whole)? };
    if decimals.is_empty() {
        return Ok(Exact { upper: whole, lower: 1 });
    }
    digits(decimals)?;
    let kept = decimals.get(..DECIMALS).unwrap_or(decimals);
    let lower = 10_i128.pow(kept.len() as u32);
    Ok(Exact { upper: whole * lower + digits(kept)?, lower })
}

fn fraction(before: &str, below: &str) -> Result<Exact, NotExact> {
    let whole = before.trim_end_matches(|c: char| c.is_ascii_digit());
    let joined = !whole.is_empty();
    let (above, lower) = (digits(before.strip_prefix(whole).unwrap_or(before))?, digits(below)?);
    let whole = whole.trim_end();
    let whole = whole.strip_suffix(['-', '+']).unwrap_or(whole).trim_end();
    if lower == 0 {
        return Err(NotExact::NotANumber);
    }
    if whole.is_empty() {
        return if joined { Err(NotExact::NotANumber) } else { Ok(Exact { upper: above, lower }) };
    }
    if above >= lower {
        return Err(NotExact::NotANumber);
    }
    Ok(Exact { upper: digits(whole)? * lower + above, lower })
}
