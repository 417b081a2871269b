//! Where words go in a drawing: how wide they may be at most, and how they stand beside each other without touching.

/// The size of text in a drawing, and of smaller text, in units of the drawing.
pub const TEXT: f64 = 13.5;
pub const SMALL: f64 = 12.5;

/// How wide a text is at most: taken from the widest fonts that phones bring, so that it holds in the others.
pub fn width_of(text: &str, size: f64, strong: bool) -> f64 {
    let wide = |c: char| match c {
        'm' | 'w' | 'M' | 'W' | '½' | '¼' | '¾' | '→' => 0.98,
        'i' | 'j' | 'l' | '.' | ',' | '\'' | ' ' | '·' => 0.36,
        'f' | 't' | 'r' => 0.45,
        '+' | '−' => 0.84,
        c if !c.is_ascii() => 1.0,
        _ => 0.64,
    };
    text.chars().map(wide).sum::<f64>() * size * if strong { 1.12 } else { 1.0 }
}

/// The text, cut short with an ellipsis where it would be wider than `most`.
pub fn cut(text: &str, size: f64, strong: bool, most: f64) -> String {
    if width_of(text, size, strong) <= most {
        return text.to_string();
    }
    let mut kept = String::new();
    for c in text.chars().take(80) {
        if width_of(&format!("{kept}{c}…"), size, strong) > most {
            break;
        }
        kept.push(c);
    }
    format!("{}…", kept.trim_end())
}

/// Middles for things of the given widths, as near to where they want to be as they can without touching one
/// another or passing the edges. None when they do not fit in one row. `wanted` goes up.
pub fn spread(wanted: &[f64], widths: &[f64], gap: f64, edges: (f64, f64)) -> Option<Vec<f64>> {
    let room = widths.iter().sum::<f64>() + gap * widths.len().saturating_sub(1) as f64;
    if room > edges.1 - edges.0 {
        return None;
    }
    let mut middles = wanted.to_vec();
    let mut free_from = edges.0;
    for (middle, width) in middles.iter_mut().zip(widths) {
        *middle = middle.max(free_from + width / 2.0);
        free_from = *middle + width / 2.0 + gap;
    }
    let mut free_to = edges.1;
    for (middle, width) in middles.iter_mut().zip(widths).rev() {
        *middle = middle.min(free_to - width / 2.0);
        free_to = *middle - width / 2.0 - gap;
    }
    Some(middles)
}

/// A straight scale from millimetres (or days) to units of the drawing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    from: f64,
    at: f64,
    unit: f64,
}

impl Scale {
    /// The scale that puts `values` between `edges`; never narrower than `least` values.
    pub fn fit(values: (f64, f64), least: f64, edges: (f64, f64)) -> Scale {
        let (low, high) = (values.0.min(values.1), values.0.max(values.1));
        let short = (least - (high - low)).max(0.0) / 2.0;
        let span = (high - low + 2.0 * short).max(1e-6);
        Scale { from: low - short, at: edges.0, unit: (edges.1 - edges.0) / span }
    }

    pub fn x(self, value: f64) -> f64 {
        self.at + (value - self.from) * self.unit
    }
}
