//! One size on every scale, and the table of sizes: what is said of a size in each system, and what it starts from.

use super::{Told, WHO, day, read_practice};
use bandwright::answers::size::{SizeAnswer, answer};
use bandwright::answers::table;
use bandwright::book::change::Write;
use bandwright::book::field::Field;
use bandwright::book::value::{OrderSize, Value};
use bandwright::forms::{size as form, table as table_form, write};
use bandwright::pictures::size_rules::size_rules;
use bandwright::trade::entry::read_size;
use bandwright::trade::measure::{Circumference, Standing};
use bandwright::trade::paper::Paper;
use bandwright::trade::sizing::{Size, Stated, Step, System};
use bandwright::words::bench as say;

fn asked(text: &str, first: System) -> SizeAnswer {
    answer(&form::read(&form::of(text), first).0, first)
}

#[test]
fn one_size_is_said_in_every_system_the_first_one_first() {
    let found = asked("M½", System::Italy);
    let converted = found.converted.as_ref().unwrap();
    let systems: Vec<System> = converted.systems.iter().map(|it| it.found.stated.system()).collect();
    assert_eq!((systems[0], systems.len()), (System::Italy, System::ALL.len()));
    // BS 6820: A is 37.5 mm round, each letter 1.25 mm more.
    assert_eq!(converted.at, Circumference::from_mm(37.5 + 12.5 * 1.25));
    let rows = say::size_reasons(&found);
    let row = |name: &str| rows.iter().find(|it| it.name.starts_with(name)).unwrap();
    assert_eq!(row("UK").amount, "M½");
    // ISO 8653 counts whole millimetres, and is published; how the last is founded the row says too.
    let iso = converted.systems.iter().find(|it| it.found.stated.system() == System::Iso).unwrap();
    assert_eq!((iso.standing, row("ISO").amount.as_str()), (Standing::Published, "53"));
    assert!(row("ISO").why.ends_with(" · published"), "{:?}", row("ISO"));
    let shown = say::size_shown(&found).unwrap();
    assert_eq!(shown.lines.len(), rows.len(), "the couple is told of every system");
    assert!(size_rules(converted).svg.contains("53.13 mm round the inside"), "{}", size_rules(converted).svg);
}

#[test]
fn where_a_scale_has_no_size_nothing_is_said_of_it() {
    let found = asked("37 mm round", System::Uk);
    let converted = found.converted.as_ref().unwrap();
    let beyond: Vec<System> =
        converted.systems.iter().filter(|it| it.found.is_beyond()).map(|it| it.found.stated.system()).collect();
    // Japan's scale begins at 13 mm across, 40.8 round (JCS).
    assert!(beyond.contains(&System::Japan), "{beyond:?}");
    assert!(!beyond.contains(&System::Iso), "{beyond:?}");
    assert!(converted.systems.iter().all(|it| !it.found.is_beyond() || it.published.is_empty()));
    // Where it has one, what charts print of it is said.
    assert!(say::size_published(&asked("M½", System::Uk)).iter().any(|it| it.contains("UK M½")));
}

#[test]
fn several_readings_are_asked_about_and_never_chosen_in_silence() {
    let found = asked("17", System::Uk);
    assert!(found.is_open() && found.converted.is_none());
    let said = say::size_headline(&found);
    assert_eq!((said.figure.as_str(), said.lines.len()), ("?", 1));
    assert!(!asked("", System::Uk).is_open() && say::size_shown(&asked("abc", System::Uk)).is_none());
    let (typed, _) = form::read(&form::of("17").with(form::SIZE_AS, "japan"), System::Uk);
    assert_eq!(answer(&typed, System::Uk).converted.unwrap().stated.system(), System::Japan);
}

/// The settled size, or else the reading that was taken last; as it reads back.
#[test]
fn it_starts_with_the_couples_size() {
    let mut told = Told::new();
    let text = |told: &Told| form::start(Some((told.couple(), WHO))).get(form::SIZE).to_owned();
    assert_eq!(text(&told), "");
    told.read(20, "R");
    told.read(21, "US 6¼");
    assert_eq!(text(&told), "US 6¼");
    let size = Size::new(System::Japan, 14 * 4).unwrap();
    let settled = OrderSize {
        size,
        exact: size.circumference(),
        from: size.circumference(),
        to: size.circumference(),
        in_stack: false,
        overruled: false,
        own: Default::default(),
        measure_again: false,
        settled: day("2026-11-25"),
    };
    told.say(vec![Write::set(Field::OrderSize(WHO), Value::OrderSize(settled))]);
    assert_eq!(text(&told), "Japan 14");
}

#[test]
fn every_size_reads_back_as_it_is_written() {
    for system in System::ALL {
        for size in bandwright::trade::sizing::all(system, Step::Quarter) {
            let typed = write::of_size(size);
            let read = read_size(&typed, System::Uk).unwrap_or_else(|error| panic!("{typed}: {error:?}"));
            let at: Vec<Circumference> = read.iter().map(|it| it.circumference()).collect();
            assert_eq!(at, [size.circumference()], "{typed}");
        }
    }
}

#[test]
fn the_table_has_every_size_beside_the_other_scales() {
    let start = read_practice(|practice| table_form::start(practice.first_system(), practice.step()));
    let typed = table_form::read(&start.with(table_form::FIRST, "us").with(table_form::STEP, "whole"));
    let found = table::answer(&typed);
    assert!(!found.others.contains(&System::Us) && found.others.len() == 5);
    let six = found.rows.iter().find(|row| row.size.quarters() == 24).unwrap();
    // A US size 6 is 0.65 in across: 16.51 mm.
    assert_eq!(six.others.last().map(|it| format!("{:.2}", it.stated.diameter().mm())), Some("16.51".to_owned()));
    assert!(matches!(six.others[0].stated, Stated::Size(size) if size.system() == System::Uk));
    assert!(found.rows.windows(2).all(|pair| pair[0].at < pair[1].at));
    let garbage = table_form::read(&table_form::start(System::Us, Step::Whole).with(table_form::PAPER, "a9"));
    assert_eq!((garbage.first, garbage.paper), (System::Us, Paper::A4));
}
