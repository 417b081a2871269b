//! The rooms of the app do not know each other: what several of them need stands in the shell, which knows none of them.
//! Only the screens' own face and what fetches them lead from one to another.

use super::{none, sources};

const ROOMS: [&str; 6] = ["bench", "copies", "couple", "list", "practice", "taking"];

#[test]
fn no_room_uses_another() {
    let mut seen = 0;
    let mut faults = Vec::new();
    for source in sources() {
        let Some(room) = source.path.strip_prefix("screens/").and_then(|path| path.split_once('/')) else { continue };
        if room.0 == "shell" || ROOMS.contains(&room.0) {
            seen += 1;
            faults.extend(
                rooms_in(&source.lexed.code).filter(|it| *it != room.0).map(|it| format!("{}: {it}", source.path)),
            );
        }
    }
    assert!(seen > 80, "{seen} files of rooms found");
    none(faults);
}

#[test]
fn a_way_into_another_room_is_found() {
    let code = "use crate::screens::copies::part;\nlet x = screens::{list, shell::fields};";
    assert_eq!(rooms_in(code).collect::<Vec<_>>(), ["copies", "list"]);
    assert_eq!(
        rooms_in("use crate::screens::shell::fields;\nuse super::super::taking::taking;").collect::<Vec<_>>(),
        ["taking"]
    );
}

/// The rooms that stand in the paths of a text.
fn rooms_in(code: &str) -> impl Iterator<Item = &str> {
    let after = |way: &'static str| code.match_indices(way).map(move |(at, _)| &code[at + way.len()..]);
    let named = after("screens::").chain(after("super::super::")).flat_map(|rest| {
        let (rest, end) = match rest.strip_prefix('{') {
            Some(rest) => (rest, '}'),
            None => (rest, ';'),
        };
        rest[..rest.find(end).unwrap_or(0)].split(',')
    });
    let first = named.filter_map(|path| path.trim().split("::").next());
    first.filter(|name| ROOMS.contains(name))
}
