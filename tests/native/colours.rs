//! The colours, measured: every text 7:1 on every ground it may stand on (WCAG 2.2, 1.4.6 enhanced contrast), the
//! lines of controls 3:1 (1.4.11), in the light and in the dark; and literal colours in the tokens file only.

use std::collections::BTreeMap;
use std::fs;

/// Relative luminance as WCAG 2.2 defines it.
fn luminance(hex: &str) -> f64 {
    let channel = |at: usize| {
        let c = f64::from(u8::from_str_radix(&hex[at..at + 2], 16).unwrap()) / 255.0;
        if c <= 0.04045 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) }
    };
    0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5)
}

fn contrast(a: &str, b: &str) -> f64 {
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

/// The name of each colour with its value in the light and in the dark.
fn colours() -> BTreeMap<String, [String; 2]> {
    let tokens = fs::read_to_string("style/tokens.css").unwrap();
    let rows = tokens.lines().filter_map(|line| {
        let (name, rest) = line.trim().strip_prefix("--")?.split_once(": light-dark(")?;
        let (light, dark) = rest.strip_suffix(");")?.split_once(", ")?;
        Some((name.to_string(), [light.to_string(), dark.to_string()]))
    });
    rows.collect()
}

fn check(text: &str, grounds: &[&str], least: f64) {
    let colours = colours();
    for ground in grounds {
        for (i, scheme) in ["light", "dark"].into_iter().enumerate() {
            let measured = contrast(&colours[text][i], &colours[*ground][i]);
            assert!(measured >= least, "{text} on {ground}, {scheme}: {measured:.2}, at least {least}");
        }
    }
}

#[test]
fn the_measure_agrees_with_figures_of_others() {
    // The limits of the scale, and the grey that WCAG's authors give as the lightest that passes 4.5 on white.
    assert!((contrast("#000000", "#ffffff") - 21.0).abs() < 0.01);
    assert!((contrast("#767676", "#ffffff") - 4.54).abs() < 0.01);
}

#[test]
fn text_keeps_seven_to_one() {
    for text in ["ink", "ink-soft", "rouge", "verdigris", "ochre"] {
        check(text, &["paper", "leaf"], 7.0);
    }
    check("paper", &["ink"], 7.0);
    check("on-accent", &["rouge", "verdigris"], 7.0);
}

#[test]
fn controls_and_marks_keep_three_to_one() {
    check("line-control", &["paper", "leaf"], 3.0);
    check("rouge", &["wash-rouge", "wash-ink"], 3.0);
    check("verdigris", &["wash-ink"], 3.0);
}

#[test]
fn colours_are_written_in_the_tokens_only() {
    let mut files = Vec::new();
    for folder in ["style", "style/parts", "style/screens"] {
        let entries = fs::read_dir(folder).into_iter().flatten().flatten();
        files.extend(entries.map(|entry| entry.path()).filter(|path| path.extension().is_some_and(|e| e == "css")));
    }
    assert!(files.len() > 10, "{} style files found", files.len());
    for path in files.iter().filter(|path| !path.ends_with("tokens.css")) {
        let css = fs::read_to_string(path).unwrap();
        for (n, line) in css.lines().enumerate() {
            assert!(!has_colour(line), "{}:{}: {line}", path.display(), n + 1);
        }
    }
    assert!(has_colour("  color: #8a2c20;") && has_colour("a{color:#fff}") && has_colour("fill: rgb(1 2 3)"));
}

/// Whether a line has a colour in it; the name of an element (`#answer`) is none.
fn has_colour(line: &str) -> bool {
    let hex = |rest: &str| {
        let word: String = rest.chars().take_while(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '_')).collect();
        matches!(word.len(), 3 | 4 | 6 | 8) && word.chars().all(|c| c.is_ascii_hexdigit())
    };
    line.split('#').skip(1).any(hex) || line.contains("rgb(") || line.contains("hsl(")
}
