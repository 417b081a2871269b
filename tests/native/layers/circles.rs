//! No circles in the book and in the archive: of two files at most one uses the other, however far round. A folder's
//! own face, its `mod.rs`, may name what lies in it, and what lies in it may name the face.

use std::collections::{BTreeMap, BTreeSet};

use super::{none, sources};

const FOLDERS: [&str; 2] = ["book", "archive"];

#[test]
fn the_book_and_the_archive_have_no_circles() {
    let files: BTreeMap<&str, &str> = sources()
        .iter()
        .filter(|source| source.is_in(&FOLDERS) && !source.path.ends_with("/mod.rs"))
        .map(|source| (source.path.as_str(), source.lexed.code.as_str()))
        .collect();
    let uses: BTreeMap<&str, BTreeSet<&str>> =
        files.iter().map(|(path, code)| (*path, used_by(path, code, files.keys()))).collect();
    let arrows: usize = uses.values().map(BTreeSet::len).sum();
    assert!(arrows > 100, "{arrows} uses found");
    let round = uses.keys().filter(|path| reached_from(path, &uses).contains(*path));
    none(round.map(|path| format!("{path} uses itself by way of {:?}", uses[path])).collect());
}

#[test]
fn a_circle_is_found() {
    let files = ["book/one.rs", "book/two.rs", "book/value/three.rs"];
    let uses = |path, code| used_by(path, code, files.iter());
    assert_eq!(uses("book/one.rs", "use super::two::Two;"), ["book/two.rs"].into());
    assert_eq!(uses("book/value/three.rs", "use crate::book::{one, value};"), ["book/one.rs"].into());
    assert_eq!(uses("book/two.rs", "use super::{one, value::three};"), ["book/one.rs", "book/value/three.rs"].into());
    let round = [("a", ["b"].into()), ("b", ["c"].into()), ("c", ["b"].into())].into();
    assert_eq!(reached_from("a", &round), ["b", "c"].into());
    assert!(reached_from("c", &round).contains("c"));
}

/// The files whose modules stand in the `use` lines and paths of this one.
fn used_by<'a>(path: &str, code: &str, files: impl Iterator<Item = &'a &'a str>) -> BTreeSet<&'a str> {
    let home: Vec<&str> = path.split('/').collect();
    let home = &home[..home.len() - 1];
    let named = named(code, home);
    files.copied().filter(|file| *file != path && named.contains(&module(file))).collect()
}

/// "book/value/days.rs" as "book::value::days".
pub fn module(file: &str) -> String {
    file.trim_end_matches(".rs").replace('/', "::")
}

/// Every path that begins with `crate::` or `super::`, from the crate's root, each of its beginnings too.
pub fn named(code: &str, home: &[&str]) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    for start in ["crate::", "super::"] {
        for (at, _) in code.match_indices(start) {
            // Of `super::super::` the first counts.
            if code[..at].ends_with("::") {
                continue;
            }
            let mut rest = &code[at..];
            let mut from: Vec<&str> = Vec::new();
            if let Some(after) = rest.strip_prefix("crate::") {
                rest = after;
            } else {
                from = home.to_vec();
                rest = &rest["super::".len()..];
                while let Some(after) = rest.strip_prefix("super::") {
                    from.pop();
                    rest = after;
                }
            }
            tree(&from.join("::"), rest, &mut found);
        }
    }
    found
}

/// Takes in a path, or a list of paths in braces, and what comes after it in the same list; how much was read.
fn tree(from: &str, text: &str, found: &mut BTreeSet<String>) -> usize {
    let joined = |name: &str| if from.is_empty() { name.to_owned() } else { format!("{from}::{name}") };
    if let Some(list) = text.strip_prefix('{') {
        let mut at = 0;
        while let Some(next) = list.get(at..).and_then(|rest| rest.chars().next()) {
            match next {
                '}' => return at + 2,
                c if c.is_alphanumeric() || c == '_' || c == '{' => at += tree(from, &list[at..], found),
                c => at += c.len_utf8(),
            }
        }
        return text.len();
    }
    let name: String = text.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
    let path = joined(&name);
    found.insert(path.clone());
    match text[name.len()..].strip_prefix("::") {
        Some(rest) => name.len() + 2 + tree(&path, rest, found),
        None => name.len().max(1),
    }
}

/// Every file that can be reached by uses, at least one step away.
fn reached_from<'a>(path: &str, uses: &BTreeMap<&'a str, BTreeSet<&'a str>>) -> BTreeSet<&'a str> {
    let mut reached = BTreeSet::new();
    let mut open: Vec<&str> = uses[path].iter().copied().collect();
    while let Some(next) = open.pop() {
        if reached.insert(next) {
            open.extend(uses.get(next).into_iter().flatten());
        }
    }
    reached
}
