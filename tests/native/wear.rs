//! Two rings side by side: who loses metal, what catches, and the table of alloys it rests on.

use crate::shared::mm;
use std::collections::HashMap;

use bandwright::trade::band::alloys::{ALLOYS, Alloy, by_code};
use bandwright::trade::measure::Standing;
use bandwright::trade::stack::*;
use bandwright::words;

fn of(code: &str) -> Surface {
    Surface { alloy: by_code(code), height: None, stones: false }
}

#[track_caller]
fn check(first: &Surface, second: &Surface, expected: &[(&str, Standing)]) {
    let found = wear(first, second, mm(0.4));
    let said = words::stack::wear(&found, "the band", "the engagement ring");
    let said: Vec<(&str, Standing)> = said.iter().map(|(text, standing)| (text.as_str(), *standing)).collect();
    assert_eq!(said, expected);
}

#[test]
fn which_ring_is_likely_to_lose_metal() {
    use Standing::{CommonPractice, FromMemory, Published};
    check(
        &of("platinum-950"),
        &of("platinum-950"),
        &[("The band and the engagement ring are of the same alloy: the safe choice.", CommonPractice)],
    );
    check(
        &of("platinum-950"),
        &of("white-750"),
        &[(
            "The engagement ring is likely to lose metal to the band: in one published test platinum lost two to three \
             times less volume than white golds, and hardness did not predict the loss.",
            Published,
        )],
    );
    check(
        &of("yellow-916"),
        &of("platinum-950"),
        &[
            ("The band is likely to lose metal: the engagement ring is harder.", FromMemory),
            (
                "The band and the engagement ring have different colours: a fine choice that costs some upkeep.",
                CommonPractice,
            ),
        ],
    );
    check(
        &of("palladium-950"),
        &of("platinum-900"),
        &[("The band is likely to lose metal: the engagement ring is about as hard, and denser.", FromMemory)],
    );
    check(
        &of("silver-925"),
        &of("silver-958"),
        &[(
            "The band and the engagement ring are of different alloys, about as hard as each other: both may lose a \
             little.",
            CommonPractice,
        )],
    );
    check(&of("nothing we know"), &of("platinum-950"), &[]);
}

#[test]
fn stones_and_heights() {
    let set = Surface { stones: true, ..of("platinum-950") };
    let plain = of("platinum-950");
    let same = ("The band and the engagement ring are of the same alloy: the safe choice.", Standing::CommonPractice);
    let says = |text: &'static str| (text, Standing::CommonPractice);
    check(&plain, &set, &[same, says("The stones of the engagement ring rub on the metal of the band, which wears.")]);
    check(&set, &plain, &[same, says("The stones of the band rub on the metal of the engagement ring, which wears.")]);
    check(
        &set,
        &set,
        &[same, says("The stones of the band and the engagement ring rub on each other: their edges may chip.")],
    );
    let high = |height: f64| Surface { alloy: None, height: Some(mm(height)), stones: false };
    check(&high(1.8), &high(2.2), &[]);
    check(
        &high(1.8),
        &high(2.3),
        &[says("The band and the engagement ring differ in height by 0.5 mm: they catch, and claws wear.")],
    );
}

/// A white gold is called after what makes it white, as the recipes have it, and nickel is known of.
#[test]
fn white_golds_say_what_makes_them_white() {
    let name = |code| words::band::alloy(by_code(code).unwrap());
    for (code, recipe) in RECIPES.iter().filter(|(code, _)| code.starts_with("white-")) {
        assert_eq!(name(code), recipe.replace(" (", " with ").replace(')', ""));
    }
    assert_eq!(name("white-750"), "18 ct white gold with palladium");
    let with_nickel: Vec<&str> = ALLOYS.iter().filter(|alloy| alloy.has_nickel()).map(|alloy| alloy.code).collect();
    assert_eq!(with_nickel, ["white-585-nickel", "white-750-nickel", "tungsten-carbide"]);
    let said = |code| words::band::nickel(by_code(code)).is_some_and(|said| said.contains("nickel-free"));
    assert!(said("white-750-nickel") && !said("white-750") && !said("none"));
    // Of the two the one with nickel is by far the harder, from memory.
    check(
        &of("white-750"),
        &of("white-750-nickel"),
        &[("The band is likely to lose metal: the engagement ring is harder.", Standing::FromMemory)],
    );
}

/// Every middle lies within what its recipe is printed or remembered to have, worked.
#[test]
fn hardness_is_that_of_the_recipes() {
    let recipes = include_str!("../reference/alloys.csv");
    for (code, name) in RECIPES {
        let row = recipes.lines().find(|row| row.split(',').next() == Some(name)).unwrap();
        // Behind the note, which may have commas, if only within quotes.
        let quoted = row.split('"').enumerate().filter(|(at, _)| at % 2 == 0).map(|(_, part)| part);
        let plain = quoted.collect::<String>();
        let columns: Vec<&str> = plain.split(',').collect();
        let given = if columns[6].is_empty() { columns[5] } else { columns[6] };
        let ends: Vec<u16> = given.split('-').map(|end| end.parse().unwrap()).collect();
        let ours = by_code(code).unwrap().hardness.0;
        assert!((ends[0]..=ends[ends.len() - 1]).contains(&ours), "{name}: {ours}, not {given}");
    }
}

#[test]
fn the_other_way_round_it_is_the_other_ring() {
    for (a, b) in ALLOYS.iter().flat_map(|a| ALLOYS.iter().map(move |b| (a, b))) {
        let surface = |alloy: &'static Alloy| Surface { alloy: Some(alloy), height: None, stones: false };
        let one = wear(&surface(a), &surface(b), mm(0.4)).metal.unwrap();
        let other = wear(&surface(b), &surface(a), mm(0.4)).metal.unwrap();
        let turned = match other.0 {
            Loses::First => Loses::Second,
            Loses::Second => Loses::First,
            Loses::Alike => Loses::Alike,
        };
        assert_eq!((one.0, one.1, one.2), (turned, other.1, other.2), "{} and {}", a.code, b.code);
    }
}

/// Each alloy of ours, and the recipe of tests/reference/alloys.csv that it stands for.
const RECIPES: [(&str, &str); 19] = [
    ("yellow-375", "9 ct yellow gold"),
    ("yellow-585", "14 ct yellow gold"),
    ("yellow-750", "18 ct yellow gold"),
    ("yellow-916", "22 ct yellow gold"),
    ("rose-375", "9 ct rose gold"),
    ("rose-585", "14 ct rose gold"),
    ("rose-750", "18 ct rose gold"),
    ("white-375", "9 ct white gold (silver)"),
    ("white-585", "14 ct white gold (palladium)"),
    ("white-585-nickel", "14 ct white gold (nickel)"),
    ("white-750", "18 ct white gold (palladium)"),
    ("white-750-nickel", "18 ct white gold (nickel)"),
    ("platinum-900", "platinum 900 iridium"),
    ("platinum-950", "platinum 950 ruthenium"),
    ("palladium-950", "palladium 950 ruthenium"),
    ("silver-925", "silver 925"),
    ("silver-958", "silver 958"),
    ("zirconium", "zirconium"),
    ("tantalum", "tantalum"),
];

/// The mixture rule on the densities of the elements, from mendeleev and from a handbook: within 3 %.
#[test]
fn densities_are_those_of_the_recipes() {
    let elements = include_str!("../reference/elements-density.csv").lines().skip(1);
    let elements: HashMap<&str, Vec<f64>> = elements
        .filter_map(|row| {
            let (name, figures) = row.split_once(',')?;
            Some((name, figures.split(',').filter_map(|figure| figure.parse().ok()).collect()))
        })
        .collect();
    let recipes = include_str!("../reference/alloys.csv");
    for (code, name) in RECIPES {
        let row = recipes.lines().find(|row| row.split(',').next() == Some(name)).unwrap();
        let parts: Vec<(&str, f64)> = row.split(',').nth(2).unwrap().split(' ').map(part).collect();
        let whole: f64 = parts.iter().map(|(_, weight)| weight).sum();
        assert!((whole - 100.0).abs() < 0.5, "{name}: {whole}");
        let ours = f64::from(by_code(code).unwrap().density.0) / 100.0;
        let mixed = |column: usize| {
            100.0 / parts.iter().map(|(element, weight)| weight / elements[element][column]).sum::<f64>()
        };
        for mixed in [mixed(0), mixed(1)] {
            assert!((ours / mixed - 1.0).abs() < 0.03, "{name}: {ours} and {mixed}");
        }
    }
}

/// "Au91.7": an element and its share by weight.
fn part(text: &str) -> (&str, f64) {
    let at = text.find(|c: char| c.is_ascii_digit()).unwrap();
    (&text[..at], text[at..].parse().unwrap())
}
