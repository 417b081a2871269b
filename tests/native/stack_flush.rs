//! Sections and heads against shapely, the worked case, remedies, and what must only ever go one way.

use crate::shared::{lines, mm};
use bandwright::trade::band::Profile;
use bandwright::trade::band::section::{Section, SectionError, SectionInputs, usual_dome};
use bandwright::trade::fit::PerMm;
use bandwright::trade::measure::Length;
use bandwright::trade::stack::*;
use bandwright::words;
use proptest::prelude::*;

#[track_caller]
fn near(found: Length, expected: f64, within: f64, about: &str) {
    assert!((found.mm() - expected).abs() <= within, "{about}: {} and {expected}", found.mm());
}

fn profile(name: &str) -> Profile {
    match name {
        "flat" => Profile::Flat,
        "d" => Profile::D,
        "court" => Profile::Court,
        _ => Profile::FlatCourt,
    }
}

fn section_of(profile: Profile, width: f64, height: f64, dome: f64, relief: f64) -> Result<Section, SectionError> {
    let (dome, relief) = (Some(mm(dome)), Some(mm(relief)));
    Section::new(&SectionInputs { profile, width: mm(width), height: mm(height), dome, relief })
}

fn plain(section: Section) -> Lying {
    Lying { width: section.width(), section: Some(section), head: None, inside: None }
}

fn with_head(reach: f64, underside: f64, inside: Option<f64>) -> Lying {
    let head = Head { to_web: mm(reach), to_tip: mm(reach), underside: mm(underside) };
    Lying { width: mm(2.6), section: None, head: Some(head), inside: inside.map(mm) }
}

/// The area of a closed outline, by the shoelace formula.
fn area(outline: &[(Length, Length)]) -> f64 {
    let next = outline.iter().cycle().skip(1);
    let twice: f64 = outline.iter().zip(next).map(|(a, b)| a.0.mm() * b.1.mm() - b.0.mm() * a.1.mm()).sum();
    twice.abs() / 2.0
}

/// 1,000 random cases cut out and moved by shapely: tests/reference/generate/stack.py.
#[test]
fn sections_and_heads_as_shapely_has_them() {
    let rows = lines("stack-flush.csv");
    let mut checked = 0;
    for row in &rows {
        let cells: Vec<&str> = row.split(',').collect();
        let at = |i: usize| cells[i].parse::<f64>().unwrap();
        let section = section_of(profile(cells[0]), at(1), at(2), at(3), at(4)).unwrap();
        near(Length::from_mm(area(&section.outline(200))), at(5), 0.01, row);
        near(section.width().half() - section.recess(mm(at(6))), at(7), 0.001, row);

        let (underside, reach, larger, clearance) = (at(8), at(9), at(10), mm(at(11)));
        let ring = with_head(reach, underside, Some(17.0 + larger));
        let band = Lying { inside: Some(mm(17.0)), ..plain(section) };
        let next = plain(section_of(Profile::Flat, at(13), at(14), 0.0, 0.0).unwrap());
        let found = flush(&[ring, band, next], clearance);
        near(found[0].top, at(12), 0.002, row);
        near(found[1].top, at(15), 0.002, row);
        // From the other side the same, in a mirror.
        let mirrored = flush(&[next, band, ring], clearance);
        near(mirrored[1].top + mirrored[0].top, at(12) + at(15), 0.002, row);
        checked += 1;
    }
    assert_eq!(checked, 1000);
}

/// Derived: R = (2^2 + 0.5^2) / (2 x 0.5) = 4.25; at 1.5 the dome has receded by 0.43; 0.8 - 0.43 = 0.37.
#[test]
fn a_domed_band_clears_more_than_a_flat_one() {
    let ring = with_head(0.8, 1.5, None);
    let domed = plain(section_of(Profile::D, 4.0, 1.8, 0.5, 0.0).unwrap());
    let flat = plain(section_of(Profile::Flat, 4.0, 1.8, 0.0, 0.0).unwrap());
    near(flush(&[ring, domed], Length::ZERO)[0].top, 0.37, 0.005, "domed");
    near(flush(&[ring, flat], Length::ZERO)[0].top, 0.8, 0.0, "flat");
    let found = flush(&[ring, domed], Length::ZERO)[0];
    assert_eq!(found.shoulders, found.top.half());
    // With the usual clearance the head counts from 1.3 up, where the side is still straight.
    near(flush(&[ring, domed], mm(0.2))[0].top, 0.8, 0.0, "with clearance");
}

#[test]
fn a_head_that_reaches_past_its_neighbour() {
    let low = plain(section_of(Profile::Flat, 2.0, 1.2, 0.0, 0.0).unwrap());
    let high = plain(section_of(Profile::Flat, 2.0, 2.2, 0.0, 0.0).unwrap());
    let found = flush(&[with_head(2.6, 1.5, None), low, high], mm(0.2));
    assert_eq!((found[0].top, found[0].cause), (Length::ZERO, None));
    assert_eq!(found[1].top, mm(0.6));
    let cause = found[1].cause.unwrap();
    assert_eq!((cause.head, cause.meets, cause.heads_meet), (0, 2, false));
    let names = ["the engagement ring", "the band", "the eternity ring"];
    assert_eq!(
        words::stack::apart(&found[1], &|at| names[at].to_owned()),
        "The band and the eternity ring stand apart: 0.6 mm at the top, 0.3 mm at the shoulders, nothing at the palm, \
         because the head of the engagement ring reaches past its neighbour to the eternity ring."
    );
}

#[test]
fn heads_on_both_sides_meet() {
    let found = flush(&[with_head(0.5, 1.5, None), with_head(0.7, 3.0, None)], mm(0.2));
    assert_eq!(found[0].top, mm(1.2));
    assert!(found[0].cause.unwrap().heads_meet);
    let ways = remedies(&found[0], &[with_head(0.5, 1.5, None), with_head(0.7, 3.0, None)], mm(0.2), mm(1.3)).unwrap();
    assert_eq!(ways.height, Clears::HeadsMeet);
    let said = words::stack::remedies(&ways, "the ring to come");
    assert_eq!(said.len(), 2, "a bay gives way to no head");
    assert_eq!(said[0].2, "No way out: two heads meet, and how high a band is does not matter.");
}

#[test]
fn what_is_not_known_is_the_most_it_can_be() {
    let unknown = Lying { width: mm(2.5), section: None, head: None, inside: None };
    let found = flush(&[with_head(0.9, 1.9, None), unknown], mm(0.2));
    assert_eq!(found[0].top, mm(0.9));
    assert!(found[0].cause.unwrap().at_most);
    assert!(words::stack::apart(&found[0], &|at| format!("ring {at}")).contains("at most 0.9 mm at the top"));
}

/// A dome higher than the band, a relief that leaves no edge, heights of nought: a sentence each.
#[test]
fn sections_that_cannot_be_made() {
    let check = |profile, width, height, dome, relief, expected: &str| {
        assert_eq!(
            words::stack::section_error(section_of(profile, width, height, dome, relief).unwrap_err()),
            expected
        );
    };
    check(Profile::D, 4.0, 0.0, 0.5, 0.0, "A band must have a width and a height above nothing.");
    check(Profile::Flat, 0.0, 1.8, 0.0, 0.0, "A band must have a width and a height above nothing.");
    check(Profile::D, 4.0, 1.8, 2.0, 0.0, "The dome must be lower than the band: 2 mm is not below 1.8 mm.");
    check(
        Profile::Court,
        4.0,
        1.8,
        1.5,
        0.3,
        "Dome and edge relief must leave an edge: 1.5 and 0.3 mm leave none of 1.8 mm of height.",
    );
    check(
        Profile::D,
        2.0,
        1.8,
        1.2,
        0.0,
        "A dome and an edge relief must be less than half the width of the band: 1 mm.",
    );
    // What a flat band has of a dome is not asked.
    assert!(section_of(Profile::Flat, 4.0, 1.8, 3.0, 3.0).is_ok());
    assert_eq!(usual_dome(mm(4.0), mm(1.8)), mm(0.5));
    assert_eq!(usual_dome(mm(12.0), mm(1.5)), mm(0.6));
}

#[test]
fn remedies_with_their_dimensions() {
    let ring = with_head(0.8, 1.5, None);
    let flat = plain(section_of(Profile::Flat, 4.0, 1.8, 0.0, 0.0).unwrap());
    let found = remedies(&flush(&[ring, flat], mm(0.1))[0], &[ring, flat], mm(0.1), mm(1.3)).unwrap();
    assert_eq!((found.bay, found.height, found.gap), (mm(0.9), Clears::At(mm(1.4)), mm(0.8)));
    let said = words::stack::remedies(&found, "the band");
    let said: Vec<(&str, &str, &str)> = said.iter().map(|(name, figure, said)| (*name, &**figure, &**said)).collect();
    assert_eq!(
        said,
        [
            ("A shaped band", "0.9", "With a bay 0.9 mm deep, so much more of the finger at the top goes to the band."),
            ("A thinner band", "1.4", "At most 1.4 mm high, the band clears the head and stays straight."),
            ("The gap accepted", "0.8", "Straight as it is, the band stands off 0.8 mm at the top."),
        ]
    );
    // Not below the least height.
    let thin = remedies(&flush(&[ring, flat], mm(0.2))[0], &[ring, flat], mm(0.2), mm(1.35)).unwrap();
    assert_eq!(thin.height, Clears::TooThin { least: mm(1.35) });
    assert_eq!(
        words::stack::remedies(&thin, "the band")[1].2,
        "No way out: the band would have to be thinner than 1.35 mm to clear the head."
    );
    // What is not known is not the same as no way out.
    let unknown = Lying { width: mm(4.0), section: None, head: None, inside: None };
    let sentence = |under: f64| {
        let rings = [with_head(0.8, under, None), unknown];
        let found = remedies(&flush(&rings, mm(0.2))[0], &rings, mm(0.2), mm(1.3)).unwrap();
        words::stack::remedies(&found, "the band").remove(1).2
    };
    assert_eq!(
        sentence(1.5),
        "1.3 mm high, the band clears the head whatever its profile. Profile and height are needed to say how much \
         higher it may be."
    );
    assert_eq!(sentence(1.4), "Profile and height are needed to say whether there is one.");
    let free = plain(section_of(Profile::Flat, 4.0, 1.2, 0.0, 0.0).unwrap());
    assert_eq!(remedies(&flush(&[ring, free], mm(0.2))[0], &[ring, free], mm(0.2), mm(1.3)), None);
}

/// Two heads over one band: the lower height does for both, and where one leaves no way, there is none.
#[test]
fn what_clears_both_of_two_heads() {
    let at = |height| Clears::At(mm(height));
    let thin = Clears::TooThin { least: mm(1.3) };
    let known = Clears::NotKnown { least: Some(mm(1.3)) };
    assert_eq!(at(1.5).and(at(1.4)), at(1.4));
    assert_eq!((at(1.5).and(thin), thin.and(at(1.5))), (thin, thin));
    assert_eq!(known.and(Clears::NotKnown { least: None }), Clears::NotKnown { least: None });
    assert_eq!(known.and(known), known);
}

/// A band with a bay deep enough lies flush; with a shallower one it stands off the rest.
#[test]
fn a_band_in_its_bay() {
    let ring = with_head(0.8, 1.5, None);
    let flat = plain(section_of(Profile::Flat, 4.0, 1.8, 0.0, 0.0).unwrap());
    let held = flush(&[ring, flat], mm(0.2))[0];
    let names = |at: usize| ["the engagement ring", "the band"][at].to_owned();
    assert_eq!(
        words::stack::in_bay(&held, mm(1.0), Length::ZERO, &names),
        "The head of the engagement ring would hold the band off 0.8 mm: with the bay of 1 mm it lies flush."
    );
    assert_eq!(
        words::stack::in_bay(&held, mm(0.5), mm(0.3), &names),
        "The head of the engagement ring would hold the band off 0.8 mm: with the bay of 0.5 mm it still stands off 0.3 \
         mm at the top."
    );
}

/// A stand-off is geometry that rests on customs: which of them, is said.
#[test]
fn what_a_stand_off_rests_on() {
    let flat = plain(section_of(Profile::Flat, 4.0, 1.8, 0.0, 0.0).unwrap());
    let held = flush(&[with_head(0.8, 1.5, None), flat], mm(0.2))[0];
    let said = |of: &Apart, usual_dome| words::stack::rests_on(of, usual_dome);
    assert_eq!(said(&held, false), "derived; the clearance under the head is common practice");
    assert_eq!(said(&held, true), "derived; the clearance under the head and the usual dome are common practice");
    let meet = flush(&[with_head(0.5, 1.5, None), with_head(0.7, 3.0, None)], mm(0.2))[0];
    assert_eq!(said(&meet, true), "derived", "where two heads meet, neither counts");
}

/// A cluster of 9 mm on shoulders of 3 reaches over them by 3 a side; a ring that narrows reaches over nothing.
#[test]
fn a_ring_that_is_wider_at_its_top() {
    let taper = |top: f64| Taper { top: mm(top), shoulders: mm(3.0), back: mm(3.0) };
    assert_eq!((taper(9.0).over_shoulders(), taper(2.0).over_shoulders()), (mm(3.0), Length::ZERO));
    assert_eq!(
        words::stack::head_unknown("the cluster", mm(3.0)),
        "The cluster is wider at its top than at three and nine, by about 3 mm a side, and its head is not written down: \
         it may hold the ring beside it off by as much. Measure how far its head reaches, and its underside."
    );
}

#[test]
fn a_ring_to_come_makes_the_one_beside_it_tighter() {
    let ring = |width, when| RingOnFinger { width: mm(width), when };
    let rings = [ring(2.6, When::Now), ring(2.4, When::Later), ring(3.0, When::Now)];
    // Between two that are worn, it takes a neighbour away from each: 0.25 x (2.4 - 3.0) / 2 is less than nothing.
    assert_eq!(tighter_later(&rings, PerMm(mm(0.25))), []);
    let rings = [ring(2.6, When::Now), ring(3.0, When::Now), ring(2.4, When::Later)];
    let found = tighter_later(&rings, PerMm(mm(0.25)));
    assert_eq!(found, [Tighter { ring: 1, by: mm(0.3) }]);
    assert_eq!(
        words::stack::tighter(found[0].by, "the band"),
        "The band will feel about 0.3 mm tighter with the rings to come beside it; today’s order stays as it is."
    );
}

fn some_section() -> impl Strategy<Value = Section> {
    (0usize..4, 10_000i64..90_000, 8_000i64..30_000, 0i64..10_000, 0i64..4_000).prop_filter_map(
        "no edge",
        |(profile, width, height, dome, relief)| {
            let of = Length::tenthousandths;
            let (dome, relief) = (Some(of(dome)), Some(of(relief)));
            let profile = Profile::ALL[profile];
            Section::new(&SectionInputs { profile, width: of(width), height: of(height), dome, relief }).ok()
        },
    )
}

proptest! {
    /// The further a head reaches and the lower it is, the further off the band; never further than it reaches.
    #[test]
    fn one_way_only(section in some_section(), reach in 0i64..50_000, underside in 0i64..40_000, more in 0i64..10_000) {
        let off = |reach: i64, underside: i64| {
            let (reach, underside) = (Length::tenthousandths(reach), Length::tenthousandths(underside));
            let head = Head { to_web: reach, to_tip: reach, underside };
            let ring = Lying { width: mm(2.6), section: None, head: Some(head), inside: None };
            flush(&[ring, plain(section)], mm(0.2))[0].top
        };
        let here = off(reach, underside);
        prop_assert!(off(reach + more, underside) >= here);
        prop_assert!(off(reach, underside + more) <= here);
        prop_assert!(here <= Length::tenthousandths(reach) && here >= Length::ZERO);
    }

    /// A band of the height that is offered does clear, and one that is a little higher does not.
    #[test]
    fn the_height_that_clears_clears(section in some_section(), reach in 1_000i64..50_000, underside in 8_000i64..40_000) {
        let reach = Length::tenthousandths(reach);
        let head = Head { to_web: reach, to_tip: reach, underside: Length::tenthousandths(underside) };
        let ring = Lying { width: mm(2.6), section: None, head: Some(head), inside: None };
        let rings = [ring, plain(section)];
        let Some(found) = remedies(&flush(&rings, mm(0.2))[0], &rings, mm(0.2), mm(0.5)) else { return Ok(()) };
        let Some(height) = found.height.height() else { return Ok(()) };
        prop_assert!(height < section.height());
        let at = |height| flush(&[ring, plain(section.at_height(height).unwrap())], mm(0.2))[0].top;
        prop_assert!(at(height) <= mm(0.001), "{:?}", at(height));
        if let Ok(higher) = section.at_height(height + mm(0.03)) {
            prop_assert!(flush(&[ring, plain(higher)], mm(0.2))[0].top > Length::ZERO);
        }
    }

    #[test]
    fn never_panics(figures in proptest::collection::vec(any::<i64>(), 12)) {
        let of = |i: usize| Length::tenthousandths(figures[i]);
        let inputs = SectionInputs {
            profile: Profile::Court, width: of(0), height: of(1), dome: Some(of(2)), relief: Some(of(3)),
        };
        match Section::new(&inputs) {
            Ok(section) => {
                section.outline(9);
                section.recess(of(4));
            }
            Err(error) => prop_assert!(words::stack::section_error(error).ends_with('.')),
        }
        let head = Head { to_web: of(5), to_tip: of(6), underside: of(7) };
        let ring = Lying { width: of(8), section: Section::new(&inputs).ok(), head: Some(head), inside: Some(of(9)) };
        let rings = [ring, Lying { inside: None, ..ring }, Lying { head: None, ..ring }];
        for apart in flush(&rings, of(10)) {
            words::stack::apart(&apart, &|at| at.to_string());
            remedies(&apart, &rings, of(10), of(11));
        }
    }
}
