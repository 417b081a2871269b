//! Where words for people and colours may stand.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use super::{files, none, sources};

/// Folders in which no text for people may stand.
const WORDLESS: [&str; 10] =
    ["trade", "book", "archive", "forms", "answers", "storage", "pictures", "parts", "app", "screens"];

/// Text that is no sentence of the app's.
const NO_SENTENCES: [(&str, &str); 9] = [
    ("trade/glass.rs", "sources of the table"),
    ("trade/limits.rs", "why a limit is what it is, for those who review the table"),
    ("trade/dates/lead_times.rs", "a check of the table while compiling"),
    ("trade/dates/entry/parts.rs", "what people type for a date that is not known"),
    ("book/example.rs", "what the invented couples said"),
    ("archive/value/dates.rs", "the word of files for a wedding without a date"),
    ("trade/entry/names.rs", "what people type for a size system"),
    ("trade/entry/number.rs", "what people type for a unit"),
    ("forms/write.rs", "sizes as people type them"),
];

#[test]
fn words_for_people_stand_in_words_only() {
    let classes = classes();
    let wordless = sources().iter().filter(|source| source.is_in(&WORDLESS));
    let faults =
        wordless.filter(|source| !NO_SENTENCES.iter().any(|(path, _)| *path == source.path)).flat_map(|source| {
            let said = source.lexed.literals.iter().filter(|(_, text)| is_said(text, &classes));
            said.map(|(line, text)| format!("src/{}:{line}: {text:?}", source.path)).collect::<Vec<_>>()
        });
    none(faults.collect());
}

#[test]
fn each_exception_is_still_needed() {
    let sources = sources();
    for (path, why) in NO_SENTENCES {
        let source = sources.iter().find(|source| source.path == path).unwrap_or_else(|| panic!("{path} is gone"));
        let used = source.lexed.literals.iter().any(|(_, text)| is_said(text, &classes()));
        assert!(used, "{path} has nothing to except any more: {why}");
    }
}

/// Two or more words in a row, or one with a capital letter, are said to somebody, unless all are names of classes.
fn is_said(text: &str, classes: &BTreeSet<String>) -> bool {
    // Markup and selectors say nothing, but what stands between tags does.
    let text: String = if text.contains('<') || text.contains("=\"") { between_tags(text) } else { text.to_owned() };
    let tokens: Vec<&str> = text.split_whitespace().collect();
    if is_class_list(&tokens, classes) {
        return false;
    }
    let is_word = |token: &str| {
        let bare = token.trim_end_matches(['.', ',', ':', ';', '!', '?']).trim_start_matches(['(', '“', '‘']);
        (bare.chars().count() >= 2 || bare == "a") && bare.chars().all(|c| c.is_alphabetic() || c == '’' || c == '\'')
    };
    let in_a_row = tokens.windows(2).any(|pair| is_word(pair[0]) && (is_word(pair[1]) || pair[1].starts_with('{')));
    let capital = tokens.len() == 1
        && is_word(&text)
        && text.chars().next().is_some_and(char::is_uppercase)
        && text.chars().skip(1).all(char::is_lowercase);
    in_a_row || (capital && !KEYS.contains(&text.as_str()))
}

/// Lower-case names of which one at least is styled, and not one a little word that holds sentences together.
fn is_class_list(tokens: &[&str], classes: &BTreeSet<String>) -> bool {
    let little = ["a", "and", "are", "as", "at", "by", "for", "in", "is", "no", "not", "of", "on", "or", "the", "to"];
    // A selector names elements.
    let elements = ["a", "button", "input", "select", "textarea"];
    if tokens.len() > 1 && tokens.iter().all(|token| elements.contains(&token.trim_end_matches(','))) {
        return true;
    }
    let is_name = |token: &&str| {
        token.starts_with('{') || (!little.contains(token) && token.chars().all(|c| c.is_ascii_lowercase() || c == '-'))
    };
    tokens.iter().all(is_name) && tokens.iter().any(|token| classes.contains(*token))
}

/// Names of keys, of the browser's.
const KEYS: [&str; 6] = ["Enter", "Escape", "Home", "End", "Tab", "Backspace"];

fn between_tags(text: &str) -> String {
    let mut said = String::new();
    let mut inside = false;
    for c in text.chars() {
        match c {
            '<' => inside = true,
            '>' => inside = false,
            c if !inside => said.push(c),
            _ => {}
        }
    }
    // A piece of a tag, as `format!` puts them together.
    if text.contains("=\"") && !text.contains('>') { String::new() } else { said }
}

/// Every class that the styles name.
fn classes() -> BTreeSet<String> {
    let mut classes = BTreeSet::new();
    for path in files(Path::new("style"), "css") {
        let css = fs::read_to_string(path).unwrap();
        for part in css.split('.').skip(1) {
            let name: String = part.chars().take_while(|c| c.is_alphanumeric() || matches!(c, '-' | '_')).collect();
            if name.starts_with(|c: char| c.is_alphabetic()) {
                classes.insert(name);
            }
        }
    }
    assert!(classes.len() > 40, "{} classes found", classes.len());
    classes
}

#[test]
fn colours_are_named_by_their_job() {
    let is_colour = |text: &str| {
        text.match_indices('#').any(|(at, _)| {
            let digits = text[at + 1..].chars().take_while(char::is_ascii_alphanumeric).collect::<String>();
            matches!(digits.len(), 3 | 6 | 8) && digits.chars().all(|c| c.is_ascii_hexdigit())
        }) || ["rgb(", "rgba(", "hsl(", "hwb(", "oklch(", "oklab("].iter().any(|word| text.contains(word))
    };
    let rust = sources().iter().flat_map(|source| {
        let colours = source.lexed.literals.iter().filter(|(_, text)| is_colour(text));
        colours.map(|(line, text)| format!("src/{}:{line}: {text}", source.path)).collect::<Vec<_>>()
    });
    none(rust.collect());
    assert!(is_colour("fill: #8a2c20") && is_colour("#fff") && is_colour("rgb(1 2 3)") && !is_colour("#/tools"));
}

#[test]
fn the_heuristic_finds_what_it_looks_for() {
    let classes: BTreeSet<String> = ["line", "done"].map(str::to_owned).into();
    let said = |text: &str| is_said(text, &classes);
    for text in [
        "Save changes",
        "not saved",
        "Saved",
        "{name} is late",
        "order by {day}",
        "<b>Take care</b>",
        "Enter a width.",
        "the line is open",
    ] {
        assert!(said(text), "{text}");
    }
    for text in [
        "line done",
        "line {class}",
        "saved",
        "M 0 0 L 1 2",
        "Enter",
        "ArrowLeft",
        "<path class=\"thin line\"/>",
        "2.5 mm",
        "",
    ] {
        assert!(!said(text), "{text}");
    }
}
