//! Sizes against other people's numbers, and what must hold for every size of every system.

use crate::shared::lines;
use bandwright::trade::entry::read_size;
use bandwright::trade::measure::{Circumference, Length, Standing};
use bandwright::trade::sizing::{
    Lean, Off, Published, Size, Stated, Step, System, all, chart_differs_at_most, convert, nearest, published,
    rounded_up, within,
};
use bandwright::words::sizing as words;

/// The one size that a text with its system's name means.
fn size(text: &str) -> Size {
    let found = read_size(text, System::Uk).unwrap_or_else(|error| panic!("{text}: {error:?}"));
    match found.as_slice() {
        [one] => match one.stated {
            Stated::Size(size) => size,
            other => panic!("{text}: {other:?}"),
        },
        _ => panic!("{text}: {found:?}"),
    }
}

#[test]
fn worked_sizes() {
    let mut checked = 0;
    for row in &lines("sizes-worked.csv") {
        let [system, name, measured, expected, tolerance, _source] =
            row.splitn(6, ',').collect::<Vec<_>>().try_into().unwrap();
        let size = size(&format!("{system} {name}"));
        assert_eq!(size.system().code(), system, "{row}");
        let found = match measured {
            "circumference" => size.circumference().mm(),
            "diameter" => size.diameter().mm(),
            _ => panic!("{row}"),
        };
        let (expected, tolerance): (f64, f64) = (expected.parse().unwrap(), tolerance.parse().unwrap());
        assert!((found - expected).abs() <= tolerance + 1e-9, "{row}: found {found}");
        checked += 1;
    }
    assert_eq!(checked, 6);
}

/// The printed UK letters that do not follow 37.5 + 1.25 i; where the chart differs from the rule, the rule stands.
const FAULTY_LETTERS: [&str; 15] = ["B", "B½", "C", "C½", "D", "D½", "E", "E½", "F", "F½", "G", "G½", "H", "H½", "I"];

#[test]
fn the_printed_chart() {
    let mut checked = [0; 4];
    for row in &lines("ring-sizes-encyclopaedia.csv") {
        let [c, d, uk, us, italy] = row.split(',').collect::<Vec<_>>().try_into().unwrap();
        let printed = Circumference::from_mm(c.parse().unwrap());
        let off = |size: Size| (printed.mm() - size.circumference().mm()).abs();

        assert!((printed.diameter().mm() - d.parse::<f64>().unwrap()).abs() <= 0.02, "{row}");
        if uk != "-" {
            let too_large = printed.mm() - size(&format!("UK {uk}")).circumference().mm();
            if FAULTY_LETTERS.contains(&uk) {
                assert!((0.30..=0.551).contains(&too_large), "{row}: {too_large}");
                checked[0] += 1;
            } else {
                assert!(too_large.abs() <= 0.401, "{row}: {too_large}");
                checked[1] += 1;
            }
        }
        if us == "-" {
            assert!(
                off(nearest(System::Us, printed, Step::Half).size) > 0.5,
                "{row}: a US half is near, yet none is printed"
            );
        } else {
            assert!(off(size(&format!("US {us}"))) <= 0.05, "{row}");
            assert_eq!(nearest(System::Us, printed, Step::Half).size, size(&format!("US {us}")), "{row}");
            checked[2] += 1;
        }
        if italy != "-" {
            assert!(off(size(&format!("Italy {italy}"))) <= 0.151, "{row}");
            checked[3] += 1;
        }
    }
    assert_eq!(checked, [15, 34, 26, 49], "faulty letters, letters, US and Italian numbers in the chart");
}

/// Every size of every system on every step, with its step.
fn every() -> impl Iterator<Item = (Size, Step)> {
    System::ALL
        .into_iter()
        .flat_map(|system| Step::ALL.map(|step| (system, step)))
        .flat_map(|(system, step)| all(system, step).map(move |size| (size, step)))
}

#[test]
fn every_size_comes_back_from_its_circumference() {
    for (size, step) in every() {
        let found = nearest(size.system(), size.circumference(), step);
        assert_eq!((found.size, found.off), (size, Off(Length::ZERO)), "{size:?}");
        assert_eq!(rounded_up(size.system(), size.circumference(), step).map(|up| up.size), Some(size));
        assert_eq!(Size::new(size.system(), size.quarters()), Some(size));
        assert_eq!(convert(size.system(), size.circumference(), step).off.lean(), Lean::Exact, "{size:?}");
    }
}

#[test]
fn every_size_comes_back_from_its_name() {
    for (size, _) in every() {
        let stated = Stated::from(size);
        for name in [words::size_name(size), words::stated_name(stated)] {
            let found = read_size(&name, size.system()).unwrap_or_else(|error| panic!("{name}: {error:?}"));
            assert_eq!(found.first().map(|read| read.stated), Some(stated), "{name}: the preferred system comes first");
            assert!(found.iter().all(|read| read.typed == name));
        }
        for name in [words::size_in_full(size), words::stated_in_full(stated)] {
            let found: Vec<Stated> =
                read_size(&name, System::Uk).unwrap_or_default().iter().map(|read| read.stated).collect();
            assert_eq!(found, [stated], "{name}: its full name means nothing else");
        }
        assert_eq!(stated.circumference(), size.circumference());
        assert_eq!(stated.system(), size.system());
    }
}

#[test]
fn scales_run_from_end_to_end() {
    // How many sizes there are on each step, and what the first and last are called.
    let check = |system: System, first: &str, last: &str, counts: [usize; 3]| {
        let sizes: Vec<Size> = all(system, Step::Quarter).collect();
        let name = |size: Option<&Size>| size.map(|size| words::size_name(*size)).unwrap_or_default();
        assert_eq!((name(sizes.first()).as_str(), name(sizes.last()).as_str()), (first, last), "{system:?}");
        assert_eq!(Step::ALL.map(|step| all(system, step).count()), counts, "{system:?}");
        assert_eq!(Size::new(system, Size::first(system).quarters()), sizes.first().copied(), "{system:?}");
        assert!(sizes.is_sorted_by_key(|size| size.circumference()));
        for pair in sizes.windows(2) {
            assert!(pair[0].circumference() < pair[1].circumference());
            assert_eq!(pair[0].larger(Step::Quarter), Some(pair[1]));
            assert_eq!(pair[1].smaller(Step::Quarter), Some(pair[0]));
        }
        assert_eq!(sizes.first().and_then(|size| size.smaller(Step::Quarter)), None);
        assert_eq!(sizes.last().and_then(|size| size.larger(Step::Quarter)), None);
    };
    check(System::Uk, "A", "Z+9", [137, 69, 35]);
    check(System::Us, "0", "17", [69, 35, 18]);
    check(System::Iso, "36", "80", [89, 89, 45]);
    check(System::Japan, "1", "38", [75, 75, 38]);
    check(System::Italy, "0", "40", [161, 81, 41]);
    check(System::Diameter, "11.5 mm", "25.25 mm", [56, 28, 14]);
    check(System::Circumference, "36 mm", "80 mm", [177, 89, 45]);
}

#[test]
fn no_size_lies_off_its_scale() {
    let none = |system, quarters| assert_eq!(Size::new(system, quarters), None, "{system:?} {quarters}");
    none(System::Uk, -1); // smaller than A
    none(System::Uk, 137); // Z+9¼ is 80.31 mm
    none(System::Us, -4);
    none(System::Us, 69); // 17¼ is 80.6 mm
    none(System::Iso, 217); // 54¼: ISO has halves at the finest
    none(System::Japan, 0); // the scale begins at 1
    none(System::Iso, i32::MAX);
    none(System::Us, i32::MIN);
}

#[test]
fn nearest_and_how_far_off() {
    let check = |mm: f64, system: System, step: Step, name: &str, off: &str| {
        let found = nearest(system, Circumference::from_mm(mm), step);
        assert_eq!(words::size_name(found.size), name, "{mm} {system:?}");
        assert_eq!(words::off(found.off), off, "{mm} {system:?}");
    };
    // Lengths by hand from the chart's own rules.
    check(53.125, System::Uk, Step::Half, "M½", "exact");
    check(54.0, System::Uk, Step::Half, "N", "0.25 mm tighter");
    check(54.0, System::Uk, Step::Quarter, "N¼", "0.06 mm looser");
    check(54.0, System::Uk, Step::Whole, "N", "0.25 mm tighter");
    check(53.4375, System::Uk, Step::Half, "N", "0.31 mm looser"); // half-way: the larger
    check(54.42, System::Us, Step::Quarter, "7", "exact");
    check(54.0, System::Japan, Step::Whole, "14", "0.45 mm looser"); // 17.333 mm across is 54.454 round
    check(54.0, System::Italy, Step::Quarter, "14", "exact");
    check(54.3, System::Iso, Step::Quarter, "54½", "0.20 mm looser");
    // Beyond the ends: the last size there is.
    check(36.0, System::Uk, Step::Half, "A", "1.50 mm looser");
    check(300.0, System::Us, Step::Whole, "17", "220.04 mm tighter");
    check(-5.0, System::Italy, Step::Whole, "0", "45.00 mm looser");
}

#[test]
fn millimetres_are_converted_as_they_are() {
    let check = |mm: f64, system: System, shown: &str| {
        let found = convert(system, Circumference::from_mm(mm), Step::Half);
        assert_eq!(words::stated_shown(found.stated), shown);
        assert_eq!(found.off.lean(), Lean::Exact);
    };
    check(54.0, System::Diameter, "17.19 mm");
    check(54.4, System::Diameter, "17.32 mm");
    check(53.75, System::Circumference, "53.75 mm");
}

#[test]
fn rounding_up_never_gives_a_tighter_size() {
    for tenths in 300..900 {
        let wanted = Circumference::from_mm(f64::from(tenths) / 10.0);
        for (system, step) in System::ALL.into_iter().flat_map(|system| Step::ALL.map(|step| (system, step))) {
            let Some(up) = rounded_up(system, wanted, step) else {
                let last = all(system, step).last().map(Size::circumference);
                assert!(last < Some(wanted), "{system:?} {wanted:?}");
                continue;
            };
            assert!(up.size.circumference() >= wanted);
            assert_eq!(up.off, Off::between(wanted, up.size.circumference()));
            let below = up.size.smaller(step).filter(|size| size.is_on(system.step(step)));
            assert!(below.is_none_or(|size| size.circumference() < wanted), "{system:?} {step:?} {wanted:?}");
        }
    }
}

#[test]
fn sizes_within_a_range() {
    let check = |least: f64, most: f64, system: System, step: Step, names: &str| {
        let range = Circumference::from_mm(least)..=Circumference::from_mm(most);
        let found: Vec<String> = within(system, range, step).into_iter().map(words::size_name).collect();
        assert_eq!(found.join(" "), names);
    };
    check(52.5, 53.75, System::Uk, Step::Half, "M M½ N");
    check(52.5, 53.75, System::Uk, Step::Quarter, "M M¼ M½ M¾ N");
    check(52.5, 53.75, System::Us, Step::Half, "6½");
    check(68.0, 71.0, System::Uk, Step::Half, "Y½ Z Z½ Z+1 Z+1½");
    check(53.0, 55.0, System::Iso, Step::Whole, "53 54 55");
    check(53.9, 53.1, System::Iso, Step::Whole, "");
}

#[test]
fn systems_keep_their_codes() {
    let codes = ["uk", "us", "iso", "japan", "italy", "diameter", "circumference"];
    assert_eq!(System::ALL.map(System::code), codes);
    assert_eq!(codes.map(System::from_code), System::ALL.map(Some));
    assert_eq!(System::from_code("UK"), None);
    assert_eq!(System::Iso.step(Step::Quarter), Step::Half);
    assert_eq!(System::Uk.step(Step::Whole), Step::Whole);
}

#[test]
fn every_system_says_what_it_rests_on() {
    for system in System::ALL {
        assert!(words::system_source(system).ends_with('.'), "{system:?}");
        assert!(!words::system_name(system).is_empty() && !words::system_where(system).is_empty());
    }
    // Nobody here has read that standard itself.
    assert!(words::system_source(System::Uk).starts_with("British Standard BS 6820, by way of encyclopaedias: "));
    assert!(words::system_source(System::Us).starts_with("There is no standard."));
    assert!(words::system_source(System::Japan).contains("not JIS"));
}

/// Decimals of thirty digits, from the scales' own formulas: every size there is, and none that is not.
#[test]
fn every_size_measures_what_its_formula_says() {
    let mut expected: Vec<(System, i32)> = Vec::new();
    for row in &lines("sizes-all.csv") {
        let [code, quarters, mm] = row.split(',').collect::<Vec<_>>().try_into().unwrap();
        let (system, quarters) = (System::from_code(code).unwrap(), quarters.parse().unwrap());
        let size = Size::new(system, quarters).unwrap_or_else(|| panic!("{row}"));
        let off = size.circumference().mm() - mm.parse::<f64>().unwrap();
        assert!(off.abs() <= 0.0001, "{row}: {off}");
        expected.push((system, quarters));
    }
    let lengths = |size: &(Size, Step)| !size.0.system().is_millimetres() && size.1 == Step::Quarter;
    let found: Vec<(System, i32)> = every().filter(lengths).map(|(size, _)| (size.system(), size.quarters())).collect();
    assert_eq!(found, expected);
}

/// The chart in the app is the chart as printed, and what is said of it is how far it is off.
#[test]
fn what_is_said_of_the_printed_chart() {
    let mut checked = 0;
    for row in &lines("ring-sizes-encyclopaedia.csv") {
        let [c, _, uk, us, italy] = row.split(',').collect::<Vec<_>>().try_into().unwrap();
        for (name, text) in [("UK", uk), ("US", us), ("Italy", italy)] {
            if text == "-" {
                continue;
            }
            let size = size(&format!("{name} {text}"));
            let prints = Circumference::from_mm(c.parse().unwrap());
            let larger = prints.0 - size.circumference().0;
            assert_eq!(published(size)[0], Published::Chart { prints, larger }, "{row}");
            checked += 1;
        }
    }
    assert_eq!(checked, 49 + 26 + 49);
    let said = |text: &str| -> Vec<String> {
        let size = size(text);
        published(size).into_iter().map(|found| words::published(size, found)).collect()
    };
    assert_eq!(
        said("UK B"),
        ["The encyclopaedia’s chart prints UK B as 39.1 mm, 0.35 mm larger than the rule. The rule stands."]
    );
    assert_eq!(said("UK M"), ["The encyclopaedia’s chart prints UK M as 52.5 mm: as here, rounded."]);
    assert_eq!(said("UK I½"), ["The encyclopaedia’s chart leaves UK I½ out."]);
    assert_eq!(said("UK M¼"), [""; 0]);
    assert_eq!(said("US 7").len(), 2);
    assert_eq!(said("JP 12").len(), 1);
}

#[test]
fn a_size_in_a_table() {
    let said = |mm: f64, system| words::in_table(&convert(system, Circumference::from_mm(mm), Step::Half));
    assert_eq!(said(53.125, System::Uk), "M½");
    assert_eq!(said(54.0, System::Uk), "N (−0.25)");
    assert_eq!(said(54.3, System::Iso), "54½ (+0.20)");
    assert_eq!(said(54.0, System::Diameter), "17.19");
    // Half a step beyond the last size nothing is called by its name.
    assert_eq!((said(37.5, System::Japan), said(37.5, System::Italy)), ("–".to_owned(), "–".to_owned()));
    assert_eq!(said(37.5, System::Uk), "A");
}

/// The nearest size is the nearest that there is, whatever steps the bench makes.
#[test]
fn quarters_are_found_where_a_scale_has_them() {
    let called = |text: &str, system| {
        let found = convert(system, size(text).circumference(), Step::Quarter);
        (words::on_scale(&found), words::nearest_off(&found))
    };
    assert_eq!(called("UK N 1/4", System::Uk), ("N¼".to_owned(), "exact".to_owned()));
    assert_eq!(called("UK M", System::Us), ("6¼".to_owned(), "0.01 mm looser".to_owned()));
    assert_eq!(called("UK A", System::Japan), ("–".to_owned(), "no such size on this scale".to_owned()));
}

/// The standard of ISO numbers counts whole millimetres.
#[test]
fn half_iso_numbers_are_common_practice() {
    assert_eq!(size("ISO 54").standing(), Standing::Published);
    assert_eq!(size("ISO 54.5").standing(), Standing::CommonPractice);
    assert_eq!(size("UK M 1/2").standing(), Standing::Published);
}

#[test]
fn the_table_says_how_far_charts_differ() {
    // UK H, 46.25 mm, is printed as 46.8; nothing is printed of the Japanese scale.
    assert_eq!(chart_differs_at_most(System::Uk), Some(Length::from_mm(0.55)));
    assert_eq!(chart_differs_at_most(System::Japan), None);
    assert!(words::charts_differ().contains("by up to 0.55 mm for UK letters"));
}
