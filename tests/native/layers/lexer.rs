//! Just enough of Rust's grammar to tell code, comments and literals apart.

/// A source without its comments and literals, and its literals by their lines.
#[derive(Debug, PartialEq, Default)]
pub struct Lexed {
    pub code: String,
    pub literals: Vec<(usize, String)>,
}

pub fn lex(text: &str) -> Lexed {
    let mut lexed = Lexed::default();
    let mut rest = text;
    let mut line = 1;
    while let Some(c) = rest.chars().next() {
        let after = if rest.starts_with("//") {
            rest.find('\n').unwrap_or(rest.len())
        } else if rest.starts_with("/*") {
            rest.find("*/").map_or(rest.len(), |at| at + 2)
        } else if let Some(hashes) = raw_string(rest) {
            let start = 2 + hashes;
            let end = rest[start..].find(&format!("\"{}", "#".repeat(hashes))).map_or(rest.len(), |at| start + at);
            lexed.literals.push((line, rest[start..end].to_owned()));
            (end + 1 + hashes).min(rest.len())
        } else if c == '"' {
            let end = end_of_string(rest);
            lexed.literals.push((line, unbroken(&rest[1..end])));
            (end + 1).min(rest.len())
        } else if let Some(end) = char_literal(rest) {
            end
        } else {
            lexed.code.push(c);
            c.len_utf8()
        };
        line += rest[..after].matches('\n').count();
        rest = &rest[after..];
    }
    lexed
}

/// A literal over several lines, joined as Rust joins it.
fn unbroken(literal: &str) -> String {
    let mut parts = literal.split("\\\n");
    let first = parts.next().unwrap_or_default().to_owned();
    parts.fold(first, |all, part| all + part.trim_start())
}

fn raw_string(rest: &str) -> Option<usize> {
    let hashes = rest.strip_prefix('r')?.chars().take_while(|c| *c == '#').count();
    rest[1 + hashes..].starts_with('"').then_some(hashes)
}

fn end_of_string(rest: &str) -> usize {
    let mut escaped = false;
    for (at, c) in rest.char_indices().skip(1) {
        match c {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            '"' => return at,
            _ => {}
        }
    }
    rest.len() - 1
}

/// The end of a literal of one character; a lifetime is none.
fn char_literal(rest: &str) -> Option<usize> {
    let mut chars = rest.strip_prefix('\'')?.char_indices();
    let (_, first) = chars.next()?;
    if first == '\\' {
        let end = rest[3..].find('\'')?;
        return Some(3 + end + 1);
    }
    let (at, second) = chars.next()?;
    (second == '\'').then_some(1 + at + 1)
}
