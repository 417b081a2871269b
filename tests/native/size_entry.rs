//! Ring sizes as people type them: every reading of a text, or the sentence that says what would be right.

use crate::shared::lines;
use bandwright::trade::entry::read_size;
use bandwright::trade::sizing::{SizeAsRead, Stated, System};
use bandwright::words::entry as words;
use bandwright::words::sizing::stated_in_full;

/// What a typed size comes to: every reading by its full name, or the sentence.
fn sizes(text: &str, preferred: System) -> String {
    match read_size(text, preferred) {
        Ok(found) => found.iter().map(|read| stated_in_full(read.stated)).collect::<Vec<_>>().join(", "),
        Err(error) => words::size_error(error),
    }
}

#[track_caller]
fn check_size(text: &str, expected: &str) {
    assert_eq!(sizes(text, System::Uk), expected, "{text:?}");
}

#[test]
fn letters() {
    for text in [
        "M½",
        "M 1/2",
        "M1/2",
        "m.5",
        "m,5",
        "M 0.5",
        "M+1/2",
        "M+½",
        "M + 1/2",
        "m½",
        " M½ ",
        "M ½",
        "UK M½",
        "uk m 1/2",
        "UKM½",
        "UK size M½",
        "U.K. M½",
        "M½ UK",
        "AU M½",
        "Ireland M½",
        "NZ m.5",
        "size M½",
        "M½",
        "M¹⁄₂",
        "M¹/₂",
        "M 2/4",
    ] {
        check_size(text, "UK M½");
    }
    check_size("N¼", "UK N¼");
    check_size("n.25", "UK N¼");
    check_size("n 3/4", "UK N¾");
    check_size("a", "UK A");
    check_size("I", "UK I");
    check_size("Z", "UK Z");
    check_size("Z1/2", "UK Z½");
    check_size("Z+1", "UK Z+1");
    check_size("z1", "UK Z+1");
    check_size("z2 1/2", "UK Z+2½");
    check_size("Z+1½", "UK Z+1½");
    check_size("Z+1.5", "UK Z+1½");
    check_size("Z + 9", "UK Z+9");
}

#[test]
fn a_plus_is_a_shade_over_and_is_asked_about() {
    check_size("M+", "UK M¼, UK M½");
    check_size("Z+", "UK Z¼, UK Z½, UK Z+1");
}

#[test]
fn numbers_with_their_system() {
    check_size("US 7", "US 7");
    check_size("us 6 1/4", "US 6¼");
    check_size("USA 6¾", "US 6¾");
    check_size("7 US", "US 7");
    check_size("us 1/2", "US ½");
    check_size("Canada 7", "US 7");
    check_size("ISO 54", "ISO 54");
    check_size("iso54", "ISO 54");
    check_size("ISO 54.5", "ISO 54½");
    check_size("ISO 54 mm", "ISO 54");
    check_size("EU 54", "ISO 54");
    check_size("EU 14", "Italy 14, 14 mm across");
    check_size("JP 12", "Japan 12");
    check_size("Japan: 12", "Japan 12");
    check_size("IT 14", "Italy 14");
    check_size("Italy 13¾", "Italy 13¾");
    check_size("Swiss 14", "Italy 14");
    check_size("DE 17,25", "17.25 mm across");
    check_size("DE 54", "54 mm round");
    check_size("NL 54", "54 mm round");
    check_size("Ø 17.2", "17.2 mm across");
    check_size("⌀17.2 mm", "17.2 mm across");
    check_size("diameter 17.2", "17.2 mm across");
}

#[test]
fn bare_numbers_list_every_reading() {
    check_size("6 1/4", "US 6¼, Italy 6¼");
    check_size("6,25", "US 6¼, Italy 6¼");
    check_size("6¼", "US 6¼, Italy 6¼");
    check_size("54", "ISO 54");
    check_size("54.25", "54.25 mm round"); // no ISO number, yet a circumference
    check_size("7", "US 7, Japan 7, Italy 7");
    check_size("17", "US 17, Japan 17, Italy 17, 17 mm across");
    check_size("38", "ISO 38, Japan 38, Italy 38");
    check_size("0", "US 0, Italy 0");
    check_size("6¹⁄₂", "US 6½, Japan 6½, Italy 6½"); // small digits are a fraction, not 61/2
    check_size("¹⁰⁸⁄₂", "ISO 54"); // and several of them one number
    check_size("٥٤", "ISO 54");
    check_size("५४", "ISO 54");
    check_size("\u{ff15}\u{ff14}", "ISO 54"); // full width
    check_size("\u{ff2d}\u{bd}", "UK M½");
    check_size("\u{ff4d}\u{ff0e}\u{ff15}", "UK M½");
    // The preferred system first; an ISO number and its circumference once.
    assert_eq!(sizes("17", System::Italy), "Italy 17, US 17, Japan 17, 17 mm across");
    assert_eq!(sizes("17", System::Diameter), "17 mm across, US 17, Japan 17, Italy 17");
    assert_eq!(sizes("54", System::Circumference), "54 mm round");
    assert_eq!(sizes("54", System::Iso), "ISO 54");
    assert_eq!(sizes("EU 14", System::Diameter), "14 mm across, Italy 14");
}

#[test]
fn millimetres_and_inches() {
    check_size("16.9 mm", "16.9 mm across");
    check_size("16,9mm", "16.9 mm across");
    check_size("54mm", "54 mm round");
    check_size("54 MM", "54 mm round");
    check_size("1.69 cm", "16.9 mm across");
    check_size("0.65 in", "16.51 mm across");
    check_size("0.65\"", "16.51 mm across");
    check_size("2 1/8 inches", "53.975 mm round");
    check_size("17 millimetres", "17 mm across");
}

#[test]
fn sizes_that_cannot_be_read() {
    let like = "like M½, 6¾, 54 or 17.2 mm.";
    let not_a_size = format!("Enter a size as a letter, a number or millimetres, {like}");
    check_size("", &format!("Enter a size, {like}"));
    check_size(" \u{a0}\u{200b} ", &format!("Enter a size, {like}"));
    check_size(&"9".repeat(10_000), &format!("Enter one size in a few characters, {like}"));
    check_size(&" ".repeat(10_000), &format!("Enter a size, {like}"));
    for text in [
        "hello", "chair", "US size", "Usual M", "💍", "M💍", "MM", "M½½", "M 1", "M1.5", "M+1", "M--1/2", "M-1/2",
        "US", "UK", "mm", "1/0", "M 1/0", "M½M", "½½M",
    ] {
        check_size(text, &not_a_size);
    }
    for text in
        ["6..5", "6 5", "1e2", "NaN", "inf", "6/", "/4", "2 5/4", ".", ",", "-", "+", "54 kg", "IT 14 US 7", "US 7 JP"]
    {
        check_size(text, &not_a_size);
    }
    for text in ["½M", "1/2 M", "UK ½ M", "1 1/2 Z", "1Z", ".5m"] {
        check_size(text, "Enter the letter first, then its fraction, like M½ or Z+1½.");
    }
    check_size("US M", "Enter a number for that system, like 6¾ or 54: letters are UK sizes.");
    check_size("UK 7", "Enter a UK size as a letter, like M, M½ or Z+1.");
    let steps = "Enter a size on its steps: quarters for the UK, the US and Italy, halves for ISO and Japan.";
    check_size("M 1/3", steps);
    check_size("US 7.3", steps);
    check_size("JP 12¼", steps);
    let range =
        "A size must be between 36 and 80 mm round the inside: UK A to Z+9, US 0 to 17, ISO 36 to 80 or Japan 1 to 38.";
    for text in [
        "-7",
        "81",
        "999999999999999999999999999999999999",
        "Z+10",
        "Z+9999999999999",
        "US 18",
        "JP 0",
        "ISO 35",
        "DE 30",
    ] {
        check_size(text, range);
    }
    let lengths = "A ring must be between 11.5 and 25.5 mm across the inside, or 36 and 80 mm round it.";
    for text in ["30 mm", "-17 mm", "0 mm", "5 in", "US 7 mm"] {
        check_size(text, lengths);
    }
}

/// Four thousand texts from a grammar, each with every size that it may mean: none is silently taken for another.
#[test]
fn whatever_way_it_is_typed() {
    let rows = lines("sizes-typed.csv");
    let mut several = 0;
    for row in &rows {
        let (text, expected) = row.split_once(',').unwrap();
        let text = text.replace('‚', ",");
        let found = read_size(&text, System::Uk).unwrap_or_else(|error| panic!("{text:?}: {error:?}"));
        let meaning = |read: &SizeAsRead| match read.stated {
            Stated::Size(size) => format!("{}:{}", size.system().code(), size.quarters()),
            Stated::Diameter(across) => format!("diameter:{:?}", across.mm()),
            Stated::Circumference(round) => format!("circumference:{:?}", round.mm()),
        };
        let mut found: Vec<String> = found.iter().map(meaning).collect();
        found.sort();
        assert_eq!(found.join(" "), expected, "{text:?}");
        several += usize::from(found.len() > 1);
    }
    assert_eq!(rows.len(), 4000);
    assert!(several > 500, "ambiguous ones list every reading: {several}");
}
