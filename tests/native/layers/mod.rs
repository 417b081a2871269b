//! The invariants of the folders: who may use whom, where words, colours and storage may stand, how long a file is.

mod circles;
mod deciding;
mod guides;
mod lexer;
mod rooms;
mod words;

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use lexer::{Lexed, lex};

/// The folders in their order: each may use those before it, and itself.
const ORDER: [&str; 11] =
    ["trade", "book", "archive", "forms", "answers", "storage", "words", "pictures", "parts", "app", "screens"];

/// One Rust file of the app.
struct Source {
    /// "book/record.rs".
    path: String,
    text: String,
    lexed: Lexed,
}

impl Source {
    fn folder(&self) -> Option<&str> {
        self.path.split_once('/').map(|(folder, _)| folder)
    }

    fn is_in(&self, folders: &[&str]) -> bool {
        self.folder().is_some_and(|folder| folders.contains(&folder))
    }
}

fn sources() -> &'static [Source] {
    static ALL: LazyLock<Vec<Source>> =
        LazyLock::new(|| files(Path::new("src"), "rs").into_iter().map(source).collect());
    assert!(ALL.len() > 80, "{} sources found", ALL.len());
    &ALL
}

fn source(path: PathBuf) -> Source {
    let text = fs::read_to_string(&path).unwrap();
    let lexed = lex(&text);
    let path = path.strip_prefix("src").unwrap().to_str().unwrap().replace('\\', "/");
    Source { path, text, lexed }
}

fn files(folder: &Path, extension: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap().flatten() {
        let path = entry.path();
        if path.is_dir() {
            found.extend(files(&path, extension));
        } else if path.extension().is_some_and(|its| its == extension) {
            found.push(path);
        }
    }
    found
}

fn none(faults: Vec<String>) {
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

// ---- Who may use whom ----

#[test]
fn each_folder_uses_only_those_above_it() {
    none(sources().iter().flat_map(|source| wrong_uses(&source.path, &source.lexed.code)).collect());
}

/// The folders that this file names and may not.
fn wrong_uses(path: &str, code: &str) -> Vec<String> {
    let Some((folder, _)) = path.split_once('/') else { return vec![] };
    let Some(place) = ORDER.iter().position(|known| *known == folder) else {
        return vec![format!("{path}: the folder {folder} has no place in the order")];
    };
    let named = crate_paths(code);
    let wrong = named.iter().filter(|used| ORDER.iter().position(|known| known == used).is_none_or(|at| at > place));
    wrong.map(|used| format!("{path}: {folder} uses {used}, which is below it")).collect()
}

/// Every folder that is named after `crate::`, in `crate::{a, b::c}` too, or after enough `super::` to leave one's own.
fn crate_paths(code: &str) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    for (at, _) in code.match_indices("crate::") {
        let rest = &code[at + "crate::".len()..];
        match rest.strip_prefix('{') {
            Some(list) => {
                let mut depth = 0;
                let mut name = String::new();
                for c in list.chars() {
                    match c {
                        '{' => depth += 1,
                        '}' if depth == 0 => break,
                        '}' => depth -= 1,
                        ',' if depth == 0 => drop(found.insert(std::mem::take(&mut name))),
                        _ if depth == 0 && !c.is_whitespace() => name.push(c),
                        _ => {}
                    }
                }
                found.insert(name);
            }
            None => drop(found.insert(rest.to_owned())),
        }
    }
    let first = |path: String| path.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect::<String>();
    found.into_iter().map(first).filter(|name| !name.is_empty()).collect()
}

#[test]
fn a_folder_is_not_left_by_way_of_super() {
    let faults = sources().iter().filter_map(|source| {
        // From `a/b.rs`, `super::` is `a`; from `a/mod.rs` it is the crate already.
        let inside = source.path.split('/').count() - usize::from(source.path.ends_with("mod.rs"));
        let leaves = "super::".repeat(inside);
        (inside > 0 && source.lexed.code.contains(&leaves)).then(|| format!("{}: {leaves}", source.path))
    });
    none(faults.collect());
}

#[test]
fn the_folders_are_those_of_the_map() {
    let found: BTreeSet<String> = sources().iter().filter_map(|source| source.folder().map(str::to_owned)).collect();
    assert_eq!(found, ORDER.iter().map(|folder| folder.to_string()).collect());
    let map = fs::read_to_string("src/lib.rs").unwrap();
    let places = ORDER.map(|folder| map.find(&format!("`{folder}`")).unwrap_or_else(|| panic!("{folder} in the map")));
    assert!(places.is_sorted(), "the map of lib.rs is in the order of the folders");
}

#[test]
fn the_core_is_pure() {
    let forbidden = [
        "leptos",
        "web_sys",
        "js_sys",
        "wasm_bindgen",
        "gloo",
        "idb",
        "send_wrapper",
        "async_lock",
        "std::time",
        "std::env",
        "std::fs",
        "std::thread",
        "Instant::",
        "SystemTime",
        "Utc::",
        "Local::",
        "rand",
        "getrandom",
        "thread_rng",
        "RandomState",
        "HashMap",
        "HashSet",
        "println",
        "panic!",
        "todo!",
        "unreachable!",
        "unimplemented!",
    ];
    let core = sources().iter().filter(|source| source.is_in(&["trade", "book", "archive", "forms", "answers"]));
    let faults = core.flat_map(|source| {
        let words: BTreeSet<&str> = source.lexed.code.split(|c: char| !c.is_alphanumeric() && c != '_').collect();
        let named = forbidden.into_iter().filter(|name| match name.chars().all(|c| c.is_alphanumeric() || c == '_') {
            true => words.contains(name),
            false => source.lexed.code.contains(name),
        });
        named
            .map(|name| format!("{} names {name}", source.path))
            .filter(|fault| !ALLOWED.contains(&fault.as_str()))
            .collect::<Vec<_>>()
    });
    none(faults.collect());
}

/// Checked while compiling: a table that is wrong does not build.
const ALLOWED: [&str; 2] = ["trade/dates/holidays.rs names panic!", "trade/dates/lead_times.rs names panic!"];

#[test]
fn the_phones_storage_is_touched_in_storage_only() {
    let forbidden = [
        "LocalStorage",
        "SessionStorage",
        "local_storage",
        "session_storage",
        "gloo_storage",
        "idb::",
        "indexed_db",
        "IdbDatabase",
    ];
    let faults = sources().iter().filter(|source| !source.is_in(&["storage"])).flat_map(|source| {
        let named = forbidden.into_iter().filter(|name| source.lexed.code.contains(name));
        named.map(|name| format!("{} names {name}", source.path)).collect::<Vec<_>>()
    });
    none(faults.collect());
}

// ---- Files ----

#[test]
fn no_file_is_longer_than_400_lines() {
    let of = |folder: &str, kind: &str| files(Path::new(folder), kind);
    let rust = [of("src", "rs"), of("tests", "rs"), of("public", "rs")];
    let others = [of("style", "css"), of("tests", "js"), of("tests", "mjs"), of("tests", "py"), of("public", "mjs")];
    let all = rust.into_iter().chain(others).flatten();
    let long = all.map(|path| (fs::read_to_string(&path).unwrap().lines().count(), path));
    none(long.filter(|(lines, _)| *lines > 400).map(|(lines, path)| format!("{}: {lines}", path.display())).collect());
}

#[test]
fn each_folder_says_what_it_is_for() {
    let faults = sources().iter().filter_map(|source| {
        let starts = source.path == "main.rs" || source.text.starts_with("//! ");
        if !starts {
            return Some(format!("{} does not open with what it is for", source.path));
        }
        // The folders of the map say what is deliberately absent; those inside them may leave it to theirs.
        let is_folder = ORDER.iter().any(|folder| source.path == format!("{folder}/mod.rs"));
        let head: String = source.text.lines().take_while(|line| line.starts_with("//!")).collect();
        (is_folder && !head.contains("INVARIANT: ")).then(|| format!("{} names no INVARIANT", source.path))
    });
    none(faults.collect());
}

#[test]
fn nothing_is_left_for_later() {
    let marks = ["TODO", "FIXME", "XXX", "todo!", "unimplemented!", "#[ignore"].map(|mark| mark.to_owned());
    let rust = files(Path::new("src"), "rs").into_iter().chain(files(Path::new("tests"), "rs"));
    let others = files(Path::new("style"), "css").into_iter().chain(files(Path::new("tests/web"), "js"));
    let faults = rust.chain(others).filter(|path| !path.ends_with("layers/mod.rs")).flat_map(|path| {
        let text = fs::read_to_string(&path).unwrap();
        let found = marks.iter().filter(|mark| text.contains(*mark)).map(|mark| format!("{}: {mark}", path.display()));
        found.collect::<Vec<_>>()
    });
    none(faults.collect());
}

// ---- That these tests can fail ----

#[test]
fn the_checks_find_what_they_look_for() {
    let lexed = lex("fn a<'b>() { // \"no\"\n let x = ('\"', '\\'', \"yes \\\" sir\", r#\"a \"b\"\"#); /* \"no\" */ }");
    assert_eq!(lexed.literals, [(2, "yes \\\" sir".to_owned()), (2, "a \"b\"".to_owned())]);
    assert!(!lexed.code.contains("no") && lexed.code.contains("let x"));

    let wrong = |path: &str, code: &str| wrong_uses(path, code).len();
    assert_eq!(wrong("trade/fit/order.rs", "use crate::trade::measure::Length;"), 0);
    assert_eq!(wrong("trade/fit/order.rs", "use crate::book::field::Field;"), 1);
    assert_eq!(wrong("book/record.rs", "use crate::{trade::{fit, stack}, words, archive::key};"), 2);
    assert_eq!(wrong("book/record.rs", "let x = crate::archive::row::write(y);"), 1);
    assert_eq!(wrong("screens/couple/mod.rs", "use crate::{app, parts, words, trade, book};"), 0);
    assert_eq!(wrong("helpers/x.rs", ""), 1);
}
