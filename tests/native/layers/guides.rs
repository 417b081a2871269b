//! The guides are true of the tree: what they name is there, and the first of them stays short.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use super::{ORDER, files, none, sources};

/// What somebody reads who comes to the code for the first time, in bytes at most.
const GUIDE_MOST: usize = 12_000;

/// DEVELOPERS.md and every README, as paths from the root.
fn guides() -> Vec<PathBuf> {
    let below = ["src", "style", "tests", "public"].iter().flat_map(|folder| files(Path::new(folder), "md"));
    let all: Vec<PathBuf> = ["README.md", "DEVELOPERS.md"].map(PathBuf::from).into_iter().chain(below).collect();
    assert!(all.len() >= 7, "{} guides found", all.len());
    all
}

fn read(path: &Path) -> String {
    fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// What stands between two backticks on a line; of a block of code the lines as they are, which hold none.
fn quoted(text: &str) -> impl Iterator<Item = &str> {
    text.lines().flat_map(|line| line.split('`').skip(1).step_by(2))
}

#[test]
fn the_first_guide_stays_short() {
    let bytes = read(Path::new("DEVELOPERS.md")).len();
    assert!(bytes <= GUIDE_MOST, "DEVELOPERS.md has {bytes} bytes");
}

#[test]
fn each_path_that_a_guide_names_is_there() {
    let mut faults = Vec::new();
    let mut seen = 0;
    for guide in guides() {
        for named in quoted(&read(&guide)).filter(|named| is_path(named)) {
            seen += 1;
            if !is_there(named) {
                faults.push(format!("{}: {named} is not there", guide.display()));
            }
        }
    }
    assert!(seen > 100, "{seen} paths found");
    none(faults);
}

/// Whether this is a path of the tree: it begins with one of its folders and goes on.
fn is_path(named: &str) -> bool {
    let folders = ["src/", "style/", "tests/", "public/"];
    folders.iter().any(|folder| named.starts_with(folder)) && !named.contains(' ')
}

/// Whether a path is there; where it says which files of a folder (`tests/web/*.rs`), whether there are any.
fn is_there(named: &str) -> bool {
    match named.split_once('*') {
        None => Path::new(named).exists(),
        Some((folder, kind)) => {
            Path::new(folder).is_dir() && !files(Path::new(folder), kind.rsplit('.').next().unwrap_or(kind)).is_empty()
        }
    }
}

#[test]
fn each_link_of_a_guide_leads_somewhere() {
    let mut faults = Vec::new();
    for guide in guides() {
        let text = read(&guide);
        let links = text.split("](").skip(1).chain(text.split("src=\"").skip(1));
        for link in links.filter_map(|rest| rest.split([')', '"', '#']).next()) {
            let is_elsewhere = link.is_empty() || link.starts_with("https://");
            if !is_elsewhere && !guide.parent().unwrap_or(Path::new("")).join(link).exists() {
                faults.push(format!("{}: the link to {link} leads nowhere", guide.display()));
            }
        }
    }
    none(faults);
}

#[test]
fn each_name_of_the_code_that_a_guide_mentions_is_there() {
    let mut faults = Vec::new();
    let mut seen = 0;
    for guide in guides() {
        let text = read(&guide);
        let blocks: Vec<&str> = text.split("```").skip(1).step_by(2).flat_map(str::split_whitespace).collect();
        for named in quoted(&text).chain(blocks).filter(|named| is_name(named)) {
            seen += 1;
            if !is_defined(named) {
                faults.push(format!("{}: there is no {named}", guide.display()));
            }
        }
    }
    assert!(seen > 20, "{seen} names found");
    none(faults);
}

/// Whether this is a path of Rust that begins with one of the folders: `forms::order::read`.
fn is_name(named: &str) -> bool {
    named.split_once("::").is_some_and(|(folder, _)| ORDER.contains(&folder))
}

/// Whether the file of the module has each of the names that follow in its code.
fn is_defined(named: &str) -> bool {
    let parts: Vec<&str> = named.split("::").collect();
    let code = |path: String| sources().iter().find(|source| source.path == path).map(|source| &source.lexed.code);
    (1..parts.len()).rev().any(|depth| {
        let module = parts[..depth].join("/");
        let code = code(format!("{module}.rs")).or_else(|| code(format!("{module}/mod.rs")));
        code.is_some_and(|code| {
            let words: BTreeSet<&str> = code.split(|c: char| !c.is_alphanumeric() && c != '_').collect();
            parts[depth..].iter().all(|name| words.contains(name))
        })
    })
}

#[test]
fn a_guide_that_is_wrong_is_found() {
    assert_eq!(quoted("in `src/lib.rs` and `words`\nand `x").collect::<Vec<_>>(), ["src/lib.rs", "words", "x"]);
    assert!(is_path("src/lib.rs") && is_path("style/") && !is_path("forms/mod.rs") && !is_path("src/a b"));
    assert!(is_there("src/lib.rs") && is_there("tests/native/") && is_there("tests/web/*.spec.js"));
    assert!(!is_there("src/gone.rs") && !is_there("src/gone/*.rs") && !is_there("src/*.spec.py"));
    assert!(is_name("forms::order::read") && !is_name("row::open") && !is_name("forms"));
    assert!(is_defined("trade::measure::Length") && is_defined("forms::order::read") && is_defined("app::state"));
    assert!(is_defined("book::record::Record::draft") && !is_defined("book::record::Record::gone"));
    assert!(!is_defined("trade::gone::order") && !is_defined("words::bench::gone"));
}
