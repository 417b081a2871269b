//! A screen draws what `answers` says and sends what it would write: it names no function of `trade` or `book` that
//! works something out or reads what was typed.

use std::collections::BTreeSet;

use super::circles::{module, named};
use super::{Source, none, sources};

/// Functions that make a value or send one, or that ask the whole book, and decide nothing.
const MAKES: [&str; 13] = [
    // What the address says.
    "RecordId::parse",
    "Wearer::from_code",
    // What is written down.
    "Write::set",
    "Write::clear",
    // The place of an answer in a list.
    "AnswerKey::both",
    "AnswerKey::of",
    "AnswerKey::ring",
    // Whom typed words find, of all couples.
    "search::matches",
    // Which entries are one couple, and what leaves an entry out that two phones see differently.
    "same::joined",
    "book::merge::removal::confirm_removal",
    // What the browser says of its screen.
    "Pixels::new",
    "Ratio::new",
    // Of the whole book, and so not at every key.
    "OwnOrders::of",
];

#[test]
fn screens_name_no_function_that_works_something_out() {
    let core = Core::of(sources());
    assert!(core.functions.len() > 200, "{} functions found", core.functions.len());
    let held = sources().iter().filter(|source| source.is_in(&["screens"]));
    none(held.flat_map(|source| core.named_by(&source.path, &source.lexed.code)).collect());
}

/// The free functions of `trade` and `book`, each by every path by which it may be reached, and the modules. The verbs
/// of the book are what a screen sends.
struct Core {
    functions: BTreeSet<String>,
    modules: BTreeSet<String>,
}

impl Core {
    fn of(sources: &[Source]) -> Core {
        let mut core = Core { functions: BTreeSet::new(), modules: BTreeSet::new() };
        for source in sources.iter().filter(|source| source.is_in(&["trade", "book"])) {
            let of = module(&source.path).trim_end_matches("::mod").to_owned();
            core.modules.insert(of.clone());
            if of == "book::verbs" {
                continue;
            }
            for line in source.lexed.code.lines() {
                let Some(rest) = line.strip_prefix("pub fn ").or(line.strip_prefix("pub const fn ")) else { continue };
                let name: String = rest.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
                // A module may pass it on to those around it.
                let parts: Vec<&str> = of.split("::").collect();
                core.functions.extend((1..=parts.len()).map(|to| format!("{}::{name}", parts[..to].join("::"))));
            }
        }
        core.functions.retain(|path| !core.modules.contains(path));
        core
    }

    fn named_by(&self, path: &str, code: &str) -> Vec<String> {
        let home: Vec<&str> = path.split('/').collect();
        let named = named(code, &home[..home.len() - 1]);
        let mut faults = BTreeSet::new();
        for used in named.iter().filter(|used| used.starts_with("trade::") || used.starts_with("book::")) {
            let last = used.rsplit("::").next().unwrap_or_default();
            if self.functions.contains(used) {
                faults.insert(used.clone());
            }
            for called in called_of(code, last) {
                let is_function = self.modules.contains(used) && self.functions.contains(&format!("{used}::{called}"));
                let of_type = last.starts_with(char::is_uppercase) && called.starts_with(char::is_lowercase);
                if is_function || of_type {
                    faults.insert(format!("{last}::{called}"));
                }
            }
        }
        let faults = faults.into_iter().filter(|fault| !MAKES.contains(&fault.as_str()));
        faults.map(|fault| format!("{path} names {fault}")).collect()
    }
}

/// What stands behind a name and two colons, wherever it is called.
fn called_of<'a>(code: &'a str, name: &str) -> Vec<&'a str> {
    let start = format!("{name}::");
    let is_whole = |at: usize| !code[..at].ends_with(|c: char| c.is_alphanumeric() || c == '_' || c == ':');
    let found = code.match_indices(&start).filter(|(at, _)| is_whole(*at)).filter_map(|(at, _)| {
        let rest = &code[at + start.len()..];
        let end = rest.find(|c: char| !c.is_alphanumeric() && c != '_')?;
        rest[end..].starts_with('(').then_some(&rest[..end])
    });
    found.collect()
}

#[test]
fn what_works_something_out_is_found() {
    let core = Core {
        functions: ["trade::sizing::convert::nearest", "trade::sizing::nearest", "book::progress::plan"]
            .map(str::to_owned)
            .into(),
        modules: ["trade::sizing", "trade::sizing::convert", "book::progress"].map(str::to_owned).into(),
    };
    let faults = |code: &str| core.named_by("screens/bench/size.rs", code).len();
    assert_eq!(faults("use crate::trade::sizing::{Size, nearest};"), 1);
    assert_eq!(faults("use crate::trade::sizing::{self, Size}; fn a() { sizing::nearest(1); }"), 1);
    assert_eq!(faults("use crate::book::progress; fn a() { progress::plan(1) }"), 1);
    assert_eq!(faults("use crate::trade::band::section::Section; fn a() { Section::new(1) }"), 1);
    assert_eq!(faults("fn a() { crate::trade::sizing::nearest(1) }"), 1);
    assert_eq!(faults("use crate::trade::sizing::{Size, System}; fn a() -> Size { System::Uk }"), 0);
    assert_eq!(faults("use crate::book::change::Write; fn a() { Write::set(1) }"), 0);
    assert_eq!(faults("use crate::words::sizing; fn a() { sizing::nearest(1) }"), 0);
}
