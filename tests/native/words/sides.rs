//! The sides of a difference, the things of a history told apart, and what a button says that takes a file in.

use bandwright::words::copies::bring_in;
use bandwright::words::phones::{OneSide, beginning, is_numbered, numbered, sides};

fn check(values: &[(&str, bool)], expected: &[[&str; 3]]) {
    let values: Vec<_> = values.iter().map(|(text, free)| ((*text).to_owned(), *free)).collect();
    let side = |[value, rest, keep]: &[&str; 3]| OneSide {
        value: (*value).to_owned(),
        rest: (*rest).to_owned(),
        keep: (*keep).to_owned(),
    };
    assert_eq!(sides(&values), expected.iter().map(side).collect::<Vec<_>>());
}

#[test]
fn a_side_shows_first_what_sets_it_apart() {
    let size = "UK M (52.50 mm inside; 8 in 10: 51.66 to 53.10 mm), worn alone";
    let other = "UK P (56.25 mm inside; 8 in 10: 55.41 to 56.85 mm), worn alone";
    check(
        &[(size, false), (other, false)],
        &[
            ["UK M", "52.50 mm inside; 8 in 10: 51.66 to 53.10 mm, worn alone", "Keep UK M"],
            ["UK P", "56.25 mm inside; 8 in 10: 55.41 to 56.85 mm, worn alone", "Keep UK P"],
        ],
    );
    check(&[("2.5 mm", false), ("nothing", false)], &[["2.5 mm", "", "Keep 2.5 mm"], ["nothing", "", "Keep nothing"]]);
}

#[test]
fn sides_that_begin_alike_are_shown_whole() {
    check(
        &[("Fri 4 Dec 2026, 10:00", false), ("Fri 4 Dec 2026, 11:00", false)],
        &[
            ["Fri 4 Dec 2026, 10:00", "", "Keep Fri 4 Dec 2026, 10:00"],
            ["Fri 4 Dec 2026, 11:00", "", "Keep Fri 4 Dec 2026, 11:00"],
        ],
    );
    let long = "UK M (52.50 mm inside; 8 in 10: 51.66 to 53.10 mm), worn";
    let [alone, stack] = ["alone", "in the stack"].map(|how| format!("{long} {how}"));
    check(&[(&alone, false), (&stack, false)], &[[&alone, "", "Keep the first"], [&stack, "", "Keep the second"]]);
}

#[test]
fn free_words_are_never_split() {
    check(
        &[("Ada, or Addie", true), ("Bo", true)],
        &[["Ada, or Addie", "", "Keep Ada, or Addie"], ["Bo", "", "Keep Bo"]],
    );
}

#[test]
fn like_things_are_told_apart_in_a_list() {
    assert_eq!(beginning("Tess: reading", "M½, comb 6 mm flat, normal hands"), "Tess: reading, M½");
    let long = "never likes anything that catches on the wool";
    assert_eq!(beginning("Note", long), "Note, never likes anything that catche…");
    assert_eq!(numbered("Note".to_owned(), 0), "Note");
    assert_eq!(numbered("Note".to_owned(), 2), "Note (3)");
    assert!(is_numbered("Note (3)", "Note") && is_numbered("Note", "Note") && !is_numbered("Notes", "Note"));
}

#[test]
fn the_button_says_how_many_come_and_how_many_go() {
    let rows = [
        (0, 0, "Bring it in"),
        (1, 0, "Bring in 1 couple"),
        (2, 1, "Bring in 2 couples, erase 1"),
        (0, 1, "Bring it in, erase 1 couple"),
    ];
    for (come, go, expected) in rows {
        assert_eq!(bring_in(come, go), expected);
    }
}
