//! The screen gauge and the paper gauge: against numbers that numpy drew at random, and others' worked by hand.

use crate::shared::{figures, lines};
use bandwright::forms::order;
use bandwright::pictures::glass::{Patch, glass};
use bandwright::pictures::ladder::Named;
use bandwright::pictures::paper::{Sheet, circles_end, sheet};
use bandwright::trade::glass::{Pixels, Ratio, Screen, Thing};
use bandwright::trade::limits::{self, Limit};
use bandwright::trade::measure::{Circumference, Diameter, Length};
use bandwright::trade::paper::{Paper, Print, Verdict, one_percent};
use bandwright::words::bench as say;

fn screen(thing: Thing, span: f64, ratio: f64) -> Screen {
    Screen::new(thing, Pixels::new(span), Ratio::new(ratio)).unwrap()
}

/// Rows of `tests/reference/gauge-screen.csv`: a hundred thousand screens drawn at random for each.
#[test]
fn a_ring_on_the_glass_is_as_sure_as_numpy_finds_it() {
    let rows = lines("gauge-screen.csv");
    let mut count = 0;
    for row in &rows {
        let cells: Vec<&str> = row.split(',').collect();
        let figure = |place: usize| cells[place].parse::<f64>().unwrap();
        let thing = Thing::from_code(cells[0]).unwrap();
        let found = screen(thing, figure(1), figure(2)).measured(Pixels::new(figure(3))).unwrap();
        assert!((found.round.mm() - figure(4)).abs() < 0.005, "{row}: {}", found.round.mm());
        assert!((found.u.mm() / figure(5) - 1.0).abs() < 0.015, "{row}: {}", found.u.mm());
        // 1.2816 standard deviations either way hold eight in ten of a normal distribution (tables of it).
        assert!(((found.high.mm() - found.low.mm()) / found.u.mm() - 2.5631).abs() < 0.01);
        count += 1;
    }
    assert_eq!(count, 28);
}

#[test]
fn things_are_as_wide_as_is_published() {
    // ISO/IEC 7810, ID-1; Regulation (EU) 729/2014, annex I; secondary sources quoting the mint; the quarter from memory.
    let published = [53.98, 85.60, 25.75, 23.25, 25.9, 24.5, 24.26];
    for (thing, across) in Thing::ALL.into_iter().zip(published) {
        assert_eq!(thing.row().across.mm(), across);
        assert_eq!(Thing::from_code(thing.row().code), Some(thing));
        assert!(say::thing_known(thing).contains(thing.row().source), "{}", say::thing_known(thing));
    }
    assert!(say::thing_known(Thing::UsQuarter).ends_with("from memory"));
}

#[test]
fn only_what_goes_onto_the_screen_is_offered() {
    let fits =
        |room: f64| -> Vec<Thing> { Thing::ALL.into_iter().filter(|thing| thing.fits(Pixels::new(room))).collect() };
    // A phone of 360 pixels at 160 to an inch is 57 mm wide: the short side of a card goes onto it, the long one not.
    assert_eq!(fits(360.0)[..2], [Thing::CardShort, Thing::TwoEuro]);
    assert!(!fits(320.0).contains(&Thing::CardShort) && fits(320.0).contains(&Thing::TwoEuro));
    assert_eq!(fits(640.0), Thing::ALL);
    assert!(fits(100.0).is_empty());
}

#[test]
fn no_screen_is_like_that() {
    let new = |span: f64, ratio: f64| Screen::new(Thing::CardShort, Pixels::new(span), Ratio::new(ratio));
    assert!(new(300.0, 3.0).is_some());
    for (span, ratio) in
        [(0.0, 3.0), (-5.0, 3.0), (40.0, 3.0), (900.0, 3.0), (300.0, 0.0), (300.0, 99.0), (f64::NAN, 1.0)]
    {
        assert!(new(span, ratio).is_none(), "{span} {ratio}");
    }
    let phone = screen(Thing::CardShort, 300.0, 3.0);
    assert_eq!(phone.measured(Pixels::new(20.0)), None);
    assert_eq!(phone.measured(Pixels::new(300.0)), None);
    let (least, most) = phone.circles();
    for end in [least, most] {
        assert!(phone.measured(end).is_some(), "both ends are rings");
    }
    assert!(phone.measured(Pixels(least.0 - 20)).is_none() && phone.measured(Pixels(most.0 + 20)).is_none());
}

#[test]
fn a_finer_screen_and_a_larger_thing_make_it_surer() {
    let u = |thing, span, ratio| screen(thing, span, ratio).measured(Pixels::new(96.0)).unwrap().u;
    assert!(u(Thing::CardShort, 300.0, 3.0) < u(Thing::CardShort, 300.0, 1.0));
    let per_mm = 300.0 / 53.98;
    assert!(u(Thing::CardLong, 85.6 * per_mm, 3.0) < u(Thing::CardShort, 300.0, 3.0));
    assert!(u(Thing::CardShort, 300.0, 3.0) < u(Thing::OneEuro, 23.25 * per_mm, 3.0));
}

#[test]
fn a_print_is_judged_and_put_right() {
    let print = |mm: f64| Print::new(Length::from_mm(mm));
    assert_eq!(print(100.0).verdict(), Verdict::True);
    assert_eq!(print(100.2).verdict(), Verdict::True);
    assert_eq!(print(99.0).verdict(), Verdict::PutRight { off: Length::from_mm(-1.0) });
    // "Fit to page" makes 94 to 97 of 100.
    assert_eq!(print(96.9).verdict(), Verdict::PrintAgain { off: Length::from_mm(-3.1) });
    // 0.5 mm on size 54, as the trade says it.
    assert!((one_percent(Circumference::from_mm(54.0)).mm() - 0.5).abs() < 0.05);
    // On a print of 98 of 100, a ring of 17.15 mm fills the circle that says 17.50; a finger of 53 mm, with 0.31 mm for
    // the paper (its middle is half of 0.1 mm farther out all round), reads 53.31 / 0.98 = 54.40 on the strip.
    assert!((print(98.0).ring(Diameter::from_mm(17.5)).mm() - 17.15).abs() < 0.0005);
    assert!((print(98.0).finger(Circumference::from_mm(54.402)).mm() - 53.0).abs() < 0.001);
    assert!(limits::of(Limit::ControlLine).holds(bandwright::trade::limits::Amount::Length(Length::from_mm(99.0))));
}

/// A strip by hand is off by half a millimetre, a ring on a circle by 0.1 mm across, which is 0.314 round; a ruler that
/// reads 100 mm to a quarter of a millimetre either way adds 54 x 0.0025 / sqrt 3 = 0.078.
#[test]
fn how_sure_paper_is() {
    let print = Print::new(Length::from_mm(99.0));
    let at = Circumference::from_mm(54.0);
    let (finger, ring) = (print.finger_u(at), print.ring_u(at));
    assert!((finger.mm() - 0.506).abs() < 0.0005, "{finger:?}");
    assert!((ring.mm() - 0.3237).abs() < 0.0005, "{ring:?}");
    assert_eq!(
        say::put_right(at, finger, true),
        [
            "54.00 mm round, 17.19 mm across",
            "less 0.31 mm for paper of 0.1 mm",
            "give or take 0.51 mm round · common practice",
        ]
    );
    // As the order size takes it: no more than it accepts.
    // As it is typed into the order size, and no more than that takes.
    let error = |u| order::of_gauge(Length::from_mm(54.0), None, u).get(order::GAUGE_ERROR).to_owned();
    assert_eq!((error(finger), error(Length::from_mm(1.4))), ("0.51".to_owned(), "1".to_owned()));
}

#[test]
fn what_is_said_of_a_print() {
    let check = |mm: f64, sentence: &str| assert_eq!(say::verdict(Print::new(Length::from_mm(mm)).verdict()), sentence);
    check(100.1, "The print is as true as a ruler can tell.");
    check(101.0, "The print is +1.0 % off: readings are put right here.");
    check(95.0, "The print is −5.0 % off, made to fit the page: print it again at 100 %.");
    assert!(
        say::one_percent_is(Circumference::from_mm(54.0))
            .contains("1 % too large or too small is 0.54 mm off at size 54")
    );
}

#[test]
fn the_patch_is_as_wide_as_it_is_told() {
    let disc = glass(Patch::Disc(Pixels::new(96.25)), Pixels::new(360.0), "A filled circle").svg;
    assert_eq!(figures(&disc, "circle class=\"patch\"", "r"), [48.13]);
    assert_eq!(figures(&disc, "svg", "width"), [360.0]);
    assert!(disc.contains("viewBox=\"0 0 360 200\""), "{disc}");
    let card = glass(Patch::Card { wide: Pixels::new(300.0), long_side: false }, Pixels::new(360.0), "A card").svg;
    // 3.18 mm of 53.98 mm, of 300.
    assert!(card.contains("M30 0 L30 170.33 A17.67 17.67 0 0 0 47.67 188"), "{card}");
}

/// Where there is no room for more circles, it is known at which size they end.
#[test]
fn circles_that_find_no_room_are_not_passed_over() {
    let named = |mm: i32| Named { at: Circumference::from_mm(mm.into()), label: mm.to_string() };
    let of =
        |paper, last| Sheet { paper, scale: "ISO".into(), sizes: vec![], circles: (44..=last).map(named).collect() };
    let drawn = |sheet: &Sheet| figures(&paper_sheet(sheet), "circle class=\"bore\"", "r").len();
    let small = of(Paper::A6, 72);
    let end = circles_end(&small).expect("no room for all").clone();
    assert_eq!(drawn(&small), (44..=72).position(|mm| named(mm) == end).unwrap() + 1);
    assert!((60.0..70.0).contains(&end.at.mm()), "{end:?}");
    assert!(circles_end(&of(Paper::A6, 50)).is_none() && circles_end(&of(Paper::A4, 72)).is_none());
    let said = say::circles_end(&end.label, end.at);
    assert!(said.contains(&format!("end at {}, {}.0 mm round; A4 has larger ones.", end.label, end.label)), "{said}");
}

fn paper_sheet(of: &Sheet) -> String {
    sheet(of).svg
}

#[test]
fn the_sheet_has_what_it_is_measured_by() {
    let named = |mm: f64, label: &str| Named { at: Circumference::from_mm(mm), label: label.into() };
    let sizes = vec![named(52.5, "M"), named(53.125, ""), named(53.75, "N")];
    for (paper, width, height) in [(Paper::A4, 186.0, 270.0), (Paper::A6, 93.0, 135.0)] {
        let of = Sheet { paper, scale: "UK letters".into(), sizes: sizes.clone(), circles: vec![named(53.75, "N")] };
        let svg = sheet(&of).svg;
        assert_eq!(figures(&svg, "svg ", "width"), [width]);
        assert_eq!(figures(&svg, "svg ", "height"), [height]);
        // Four units to a millimetre: a ring of 17.11 mm, its stroke of 0.2 mm inside the size.
        let radius = figures(&svg, "circle class=\"bore\"", "r")[0];
        assert!((2.0 * (radius / 4.0 + 0.1) - 53.75 / std::f64::consts::PI).abs() < 0.01, "{radius}");
        let end = |name: &str| figures(&svg, "class=\"span\"", name)[0];
        assert_eq!((end("x2") - end("x1")).hypot(end("y2") - end("y1")) / 4.0, 100.0);
        assert_eq!(figures(&svg, "size-tick", "x1")[..3], [210.0, 212.5, 215.0]);
    }
}
