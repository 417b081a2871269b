//! Pictures in a browser: their measures read back from what is drawn, their words inside their edges, and the days
//! and figures that the browser writes as the native code does.

use crate::dress::dress;
use crate::ladders::a_ladder;
use bandwright::pictures::Picture;
use bandwright::pictures::calendar_strip::{CalendarStrip, calendar_strip};
use bandwright::pictures::ladder::{Named, ladder};
use bandwright::pictures::stack::{Ring, Stack, stack};
use bandwright::pictures::{section, side, unrolled};
use bandwright::trade::band::Profile;
use bandwright::trade::band::section::{Section, SectionInputs};
use bandwright::trade::measure::{Circumference, Diameter, Length};
use bandwright::trade::stack::RingState;
use bandwright::trade::stack::{Head, Taper};
use bandwright::words::calendar::DayMark;
use bandwright::words::format;
use chrono::{Datelike, NaiveDate};
use wasm_bindgen_test::wasm_bindgen_test;
use web_sys::{DomRect, Element};

/// The picture on a page 320 px wide less its margins, with the styles of the app.
pub fn show(picture: &Picture) -> Element {
    let document = web_sys::window().unwrap().document().unwrap();
    dress(&document);
    let host = document.create_element("div").unwrap();
    host.set_class_name("picture");
    host.set_attribute("style", "inline-size: 288px").unwrap();
    host.set_inner_html(&picture.svg);
    document.body().unwrap().append_child(&host).unwrap();
    host
}

pub fn all(host: &Element, selector: &str) -> Vec<Element> {
    let found = host.query_selector_all(selector).unwrap();
    (0..found.length()).filter_map(|i| found.get(i)).map(wasm_bindgen::JsCast::unchecked_into).collect()
}

pub fn figure(of: &Element, attribute: &str) -> f64 {
    of.get_attribute(attribute).and_then(|text| text.parse().ok()).unwrap_or_else(|| panic!("no {attribute}"))
}

#[track_caller]
pub fn near(drawn: f64, mm: f64) {
    assert!((drawn - mm).abs() <= 0.1, "drawn {drawn}, meant {mm}");
}

/// Every word inside the drawing, no two over one another, and a name that says what is there.
#[track_caller]
pub fn check_words(host: &Element) {
    let svg = host.query_selector("svg[role=img]").unwrap().expect("an image");
    let edge = svg.get_bounding_client_rect();
    assert!(svg.get_attribute("aria-label").is_some_and(|name| name.len() > 20));
    let texts: Vec<(String, DomRect)> = all(host, "svg text")
        .iter()
        .map(|t| (t.text_content().unwrap_or_default(), t.get_bounding_client_rect()))
        .collect();
    assert!(!texts.is_empty());
    for (i, (text, at)) in texts.iter().enumerate() {
        let inside = at.left() >= edge.left() - 0.5 && at.right() <= edge.right() + 0.5;
        assert!(inside && at.top() >= edge.top() - 1.0 && at.bottom() <= edge.bottom() + 1.0, "{text} is off the edge");
        for (other, there) in &texts[..i] {
            let wide = at.right().min(there.right()) - at.left().max(there.left());
            let high = at.bottom().min(there.bottom()) - at.top().max(there.top());
            assert!(wide <= 1.0 || high <= 3.0, "{text} lies over {other}");
        }
    }
}

pub fn c(mm: f64) -> Circumference {
    Circumference::from_mm(mm)
}

pub fn named(mm: f64, label: &str) -> Named {
    Named { at: c(mm), label: label.into() }
}

#[wasm_bindgen_test]
fn a_figure_beyond_all_sense_is_drawn_somehow() {
    let far = Length::tenthousandths(i64::MAX);
    let mut of = a_ladder(&[("wider", 0.5)], named(53.75, "N"), None, None);
    of.shifts[0].amount = far;
    of.best = Circumference(far);
    assert!(!ladder(&of).svg.contains("NaN"));
    let (state, head) = (RingState::Wanted, Some((far, far)));
    let ring = Ring { label: "💍".into(), width: far, top: far, height: far, state, head, apart: far, bend: far };
    let of = Stack {
        rings: vec![ring],
        gap: far,
        free: Length::ZERO,
        finger: Diameter(Length::ZERO),
        crowded: true,
        at_top: None,
    };
    let of = Stack { at_top: Some((far, true)), ..of };
    assert!(!stack(&of).svg.contains("NaN"));
}

fn ring(label: &str, mm: f64, state: RingState) -> Ring {
    let (width, height) = (Length::from_mm(mm), Length::from_mm(1.7));
    Ring { label: label.into(), width, top: width, height, state, head: None, apart: Length::ZERO, bend: Length::ZERO }
}

fn a_stack(rings: Vec<Ring>) -> Stack {
    let (gap, free) = (Length::from_mm(0.2), Length::from_mm(24.0));
    Stack { rings, gap, free, finger: Diameter::from_mm(17.1), crowded: false, at_top: None }
}

#[wasm_bindgen_test]
fn a_stack_is_drawn_to_the_scale_of_its_free_length() {
    let rings = vec![
        ring("engagement", 2.6, RingState::Worn),
        ring("band", 3.0, RingState::Wanted),
        ring("eternity", 2.5, RingState::Planned),
    ];
    let host = show(&stack(&a_stack(rings)));
    let totals = all(&host, ".total .span");
    let free = &all(&host, ".free .span")[0];
    // From the web to the crease it is 24 mm.
    let mm = 24.0 / (figure(free, "x2") - figure(&totals[0], "x1"));
    for (drawn, meant) in all(&host, "rect.ring").iter().map(|ring| figure(ring, "width") * mm).zip([2.5, 2.6, 3.0]) {
        near(drawn, meant);
    }
    let long = |span: &Element| (figure(span, "x2") - figure(span, "x1")) * mm;
    near(long(&totals[0]), 5.8);
    near(long(&totals[1]), 8.5);
    near(long(free), 15.5);
    assert_eq!(all(&host, "rect.ring.planned.dashed").len(), 1);
    check_words(&host);
}

#[wasm_bindgen_test]
fn a_full_stack_keeps_its_names_apart() {
    let states = [RingState::Worn, RingState::Wanted, RingState::Planned];
    let rings =
        (0..7).map(|i| ring("grandmother's engagement ring", 1.5 + f64::from(i), states[i as usize % 3])).collect();
    check_words(&show(&stack(&a_stack(rings))));
}

/// The scale that is written down with a drawing: units to a millimetre.
fn unit(host: &Element) -> f64 {
    figure(&all(host, "svg")[0], "data-unit")
}

fn upright(span: &Element) -> f64 {
    (figure(span, "y2") - figure(span, "y1")).abs()
}

fn across(span: &Element) -> f64 {
    (figure(span, "x2") - figure(span, "x1")).abs()
}

/// Drawn as wide and as high as this path is.
fn extent(path: &Element) -> (f64, f64) {
    let figures: Vec<f64> = path
        .get_attribute("d")
        .unwrap()
        .split(|c: char| c.is_alphabetic() || c == ' ')
        .filter_map(|it| it.parse().ok())
        .collect();
    let span = |from: usize| {
        let of = || figures.iter().skip(from).step_by(2).copied();
        of().fold(f64::MIN, f64::max) - of().fold(f64::MAX, f64::min)
    };
    (span(0), span(1))
}

fn a_section(profile: Profile, width: f64, height: f64, dome: f64, relief: f64) -> Section {
    let mm = Length::from_mm;
    let (dome, relief) = (Some(mm(dome)), Some(mm(relief)));
    Section::new(&SectionInputs { profile, width: mm(width), height: mm(height), dome, relief }).unwrap()
}

#[wasm_bindgen_test]
fn a_section_is_drawn_to_scale() {
    for (width, height, dome, relief) in [(4.0, 1.8, 0.5, 0.13), (1.5, 1.5, 0.3, 0.02), (9.0, 1.4, 0.4, 0.3)] {
        let section = a_section(Profile::Court, width, height, dome, relief);
        let host = show(&section::section("a band with a rather long name that has to be cut somewhere", &section));
        let unit = unit(&host);
        let (wide, high) = extent(&all(&host, "path.section")[0]);
        near(wide / unit, width);
        near(high / unit, height);
        for (dim, meant) in [("dim-height", height), ("dim-dome", dome), ("dim-relief", relief)] {
            near(upright(&all(&host, &format!(".{dim} .span"))[0]) / unit, meant);
        }
        near(across(&all(&host, ".dim-width .span")[0]) / unit, width);
        check_words(&host);
        check_words(&show(&section::beside(&section, Length::from_mm(9.0), Some("Band 2"))));
    }
}

#[wasm_bindgen_test]
fn a_head_and_the_gap_it_makes_are_drawn_to_scale() {
    let mm = Length::from_mm;
    let head = Head { to_web: mm(0.5), to_tip: mm(0.8), underside: mm(1.5) };
    let ring = side::Ring {
        label: "engagement ring".into(),
        width: mm(2.6),
        section: Some(a_section(Profile::Court, 2.6, 1.4, 0.3, 0.05)),
        head: Some(head),
        state: RingState::Worn,
        apart: Length::ZERO,
        bay: Length::ZERO,
    };
    let section = Some(a_section(Profile::D, 4.0, 1.8, 0.5, 0.0));
    let band = side::Ring {
        label: "band".into(),
        width: mm(4.0),
        section,
        head: None,
        state: RingState::Wanted,
        apart: mm(0.37),
        bay: Length::ZERO,
    };
    for rings in [
        vec![ring.clone(), band.clone()],
        vec![side::Ring { apart: Length::ZERO, ..band }, side::Ring { apart: mm(0.37), ..ring }],
    ] {
        let host = show(&side::side(&rings));
        let unit = unit(&host);
        near(across(&all(&host, ".dim-gap .span")[0]) / unit, 0.37);
        near(upright(&all(&host, ".dim-underside .span")[0]) / unit, 1.5);
        near(upright(&all(&host, ".dim-height .span")[0]) / unit, 1.8);
        near(figure(&all(&host, "rect.head")[0], "width") / unit, 2.6 + 0.5 + 0.8);
        near(extent(&all(&host, "path.body.rouge")[0]).0 / unit, 4.0);
        check_words(&host);
    }
}

#[wasm_bindgen_test]
fn a_taper_is_laid_flat_to_scale() {
    let mm = Length::from_mm;
    let ring = Taper { top: mm(1.8), shoulders: mm(2.6), back: mm(2.0) };
    let host = show(&unrolled::unrolled(&unrolled::Unrolled {
        label: "engagement ring".into(),
        ring,
        band: mm(2.5),
        round: c(54.0),
    }));
    let unit = unit(&host);
    let widths: Vec<f64> = all(&host, ".dim-width .span").iter().map(upright).collect();
    for (drawn, meant) in widths.iter().zip([1.8, 2.6, 2.6]) {
        near(drawn / unit, meant);
    }
    let (long, wide) = extent(&all(&host, "path.ring")[0]);
    near(long / unit, 54.0);
    near(wide / unit, 2.6);
    let band = &all(&host, "rect.band")[0];
    near(figure(band, "height") / unit, 2.5);
    near((figure(&all(&host, ".if-top")[0], "y1") - figure(band, "y")) / unit, 1.8);
    check_words(&host);
}

#[wasm_bindgen_test]
fn a_ring_that_tapers_and_one_that_leans_are_drawn_to_scale() {
    let mm = Length::from_mm;
    let tapers = Ring { top: mm(1.8), head: Some((mm(0.9), mm(0.9))), ..ring("engagement", 2.6, RingState::Worn) };
    let leans = Ring { apart: mm(0.8), ..ring("band", 3.0, RingState::Wanted) };
    let host = show(&stack(&a_stack(vec![tapers, leans])));
    let unit = unit(&host);
    // A head reaches over its shoulders, as it does from the side, and not over the narrower top.
    near(2.0 * figure(&all(&host, "circle.head")[0], "r") / unit, 2.6 + 2.0 * 0.9);
    let total = &all(&host, ".total .span")[0];
    near(across(total) / unit, 5.8);
    // At the shoulders the band stands off half as far: from 2.6 + 0.2 + 0.4 on.
    let d = all(&host, "path.ring.wanted")[0].get_attribute("d").unwrap();
    let start: f64 = d[1..].split(' ').next().unwrap().parse().unwrap();
    near((start - figure(total, "x1")) / unit, 3.2);
    check_words(&host);
}

/// A shaped band bends at its top alone, and what lies beyond it leans on the bend; the top has a dimension of its own.
#[wasm_bindgen_test]
fn a_band_in_its_bay_is_drawn_to_scale() {
    let mm = Length::from_mm;
    let bends = Ring { bend: mm(1.0), ..ring("band", 3.0, RingState::Wanted) };
    let rings = vec![ring("engagement", 2.6, RingState::Worn), bends, ring("eternity", 2.0, RingState::Planned)];
    let host = show(&stack(&Stack { at_top: Some((mm(9.0), false)), ..a_stack(rings) }));
    let unit = unit(&host);
    let totals = all(&host, ".total .span");
    near(across(&totals[1]) / unit, 9.0);
    let begins = |path: &str| {
        let d = all(&host, path)[0].get_attribute("d").unwrap();
        let start: f64 = d[1..].split(' ').next().unwrap().parse().unwrap();
        (start - figure(&totals[0], "x1")) / unit
    };
    near(begins("path.ring.wanted"), 2.8);
    // From 6 on, and half of what the bend takes.
    near(begins("path.ring.planned"), 6.5);
    check_words(&host);
    // From the side the bay lies between the two.
    let block = |label: &str, state, apart, bay| side::Ring {
        label: label.into(),
        width: mm(2.6),
        section: None,
        head: None,
        state,
        apart,
        bay,
    };
    let host = show(&side::side(&[
        block("ring", RingState::Worn, Length::ZERO, Length::ZERO),
        block("band", RingState::Wanted, mm(1.0), mm(1.0)),
        block("to come", RingState::Planned, Length::ZERO, Length::ZERO),
    ]));
    near(across(&all(&host, ".dim-bay .span")[0]) / self::unit(&host), 1.0);
    assert_eq!(all(&host, ".dim-gap").len(), 0);
    // What is worn and not known is dotted; dashes are for what is to come.
    assert_eq!((all(&host, ".body.dotted").len(), all(&host, ".body.dashed").len()), (2, 1));
    check_words(&host);
}

/// More than five rings have numbers beside them and their names in a key below, so that no line crosses a name.
#[wasm_bindgen_test]
fn many_rings_have_a_key() {
    let rings = |n: usize| (1..=n).map(|at| ring(&format!("ring called {at}"), 1.8, RingState::Worn)).collect();
    let named = |n| {
        let host = show(&stack(&a_stack(rings(n))));
        check_words(&host);
        all(&host, "text").iter().filter_map(|text| text.text_content()).collect::<Vec<_>>()
    };
    let five = named(5);
    assert!(five.iter().all(|text| !text.starts_with("1.8 ring")), "{five:?}");
    let eight = named(8);
    for at in 1..=8 {
        let said = format!("1.8 ring called {at}");
        assert!(eight.iter().any(|text| text.trim() == said), "{said}: {eight:?}");
        assert_eq!(
            eight.iter().filter(|text| text.trim() == at.to_string()).count(),
            2,
            "{at}: beside it and in the key"
        );
    }
}

fn day(y: i32, m: u32, d: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(y, m, d).unwrap()
}

#[track_caller]
fn check_calendar(today: NaiveDate, wedding: NaiveDate, closed: usize) {
    let weekend = |day: NaiveDate| day.weekday().num_days_from_monday() >= 5;
    let before = |days: u64| wedding - chrono::Days::new(days);
    let host = show(&calendar_strip(&CalendarStrip {
        marks: vec![
            (DayMark::Today, today),
            (DayMark::OrderBy, before(45)),
            (DayMark::Start, today.succ_opt().unwrap()),
            (DayMark::Finish, before(20)),
            (DayMark::InHand, before(14)),
            (DayMark::TryOn, before(12)),
            (DayMark::LastResize, before(9)),
            (DayMark::Wedding, wedding),
        ],
        finish: &[(before(21), 0.25), (before(20), 0.5), (before(17), 0.25)],
        closed: &weekend,
    }));
    check_words(&host);
    assert_eq!(all(&host, "rect.closed").len(), closed);
}

#[wasm_bindgen_test]
fn a_calendar_can_be_read_from_three_weeks_to_two_years() {
    // Saturdays and Sundays counted on a wall calendar: 25 Nov to 16 Dec 2026 from 1 Nov on (order-by 1 Nov) has 13.
    check_calendar(day(2026, 11, 25), day(2026, 12, 16), 13);
    // 25 Nov 2026 to 23 Jan 2027: nine Saturdays and eight Sundays.
    check_calendar(day(2026, 11, 25), day(2027, 1, 23), 17);
    // A whole year, Friday 1 Jan 2027 to Saturday 1 Jan 2028: 53 Saturdays and 52 Sundays.
    check_calendar(day(2027, 1, 1), day(2028, 1, 1), 105);
    // Two years, Friday 1 Jan 2027 to Sunday 31 Dec 2028: 105 Saturdays and 105 Sundays.
    check_calendar(day(2027, 1, 1), day(2028, 12, 31), 210);
}

#[wasm_bindgen_test]
fn the_browser_writes_days_and_figures_as_the_native_code_does() {
    // The same rows are true natively: en-GB, without the comma behind the weekday.
    assert_eq!(format::day(day(2027, 5, 22)), "Sat 22 May 2027");
    assert_eq!(format::day(day(2026, 9, 1)), "Tue 1 Sept 2026");
    assert_eq!(format::day(day(2028, 2, 29)), "Tue 29 Feb 2028");
    assert_eq!(format::day_short(day(2027, 1, 1)), "Fri 1 Jan");
    assert_eq!(format::month(2027, 12), "December 2027");
    assert_eq!(format::mm(Length::from_mm(53.75), 2), "53.75");
    // UK half letters end on 0.125: a half is rounded up.
    assert_eq!(format::mm(Length::from_mm(53.125), 2), "53.13");
    assert_eq!(format::mm(Length::from_mm(1234.5), 1), "1,234.5");
    assert_eq!(format::mm_signed(Length::from_mm(-0.47), 2), "−0.47");
    assert_eq!(format::mm_signed(Length::from_mm(0.75), 2), "+0.75");
    assert_eq!(format::mm_signed(Length::from_mm(-0.004), 2), "0.00");
    assert_eq!(format::count(12_400), "12,400");
    assert_eq!(format::counted(1, "day", "days"), "1 day");
}
