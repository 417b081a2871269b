//! A band made lower to clear a head: what is offered does clear it once it is saved, with the dome it was worked out with.

use super::Told;
use crate::shared::mm;
use bandwright::book::arcs::{known_for, lowered};
use bandwright::book::change::Write;
use bandwright::book::couple::Band;
use bandwright::book::field::{BandField, Field};
use bandwright::book::value::Value;
use bandwright::book::verbs;
use bandwright::trade::band::section::{Section, SectionInputs};
use bandwright::trade::band::{Profile, alloys};
use bandwright::trade::measure::Length;
use bandwright::trade::stack::{Head, Lying, flush, remedies};
use bandwright::trade::wearer::Wearer;
use bandwright::words;
use proptest::prelude::*;

const WHO: Wearer = Wearer::First;

/// The section of a band as the calculator starts with it: from words of two decimals.
fn section_of(band: &Band) -> Option<Section> {
    let typed = |of: Option<Length>| of.map(|it| mm(words::lengths::plain(it).parse().unwrap()));
    let (dome, relief) = (typed(band.dome), typed(band.relief));
    let (width, height) = (typed(band.width)?, typed(band.height)?);
    Section::new(&SectionInputs { profile: band.profile?, width, height, dome, relief }).ok()
}

/// What is left of a gap beside a ring with this head once the thinner band that is offered there was saved and read
/// again; none where no such band is offered.
fn off_once_saved(band: Band, head: Head) -> Option<Length> {
    let clearance = mm(0.2);
    let mut told = Told::new();
    told.say(verbs::choose_band(WHO, band));
    let beside = |section: Section| {
        let lying = Lying { width: section.width(), section: Some(section), head: None, inside: None };
        [Lying { width: mm(2.6), section: None, head: Some(head), inside: None }, lying]
    };
    let section = section_of(&band)?;
    let rings = beside(section);
    let height = remedies(&flush(&rings, clearance)[0], &rings, clearance, mm(1.3))?.height.height()?;
    told.say(lowered(WHO, &band, Some(&section), height));
    let saved = told.couple().band(WHO);
    assert_eq!(saved.height, Some(height));
    Some(flush(&beside(section_of(&saved)?), clearance)[0].top)
}

/// A head that reaches as far over either side of its shank.
fn head(reach: Length, underside: Length) -> Head {
    Head { to_web: reach, to_tip: reach, underside }
}

proptest! {
    /// The thinner band that is offered, saved and read again, clears the head, and nothing thinner is asked for.
    #[test]
    fn a_thinner_band_clears_once_it_is_saved(
        profile in 0usize..4, width in 100i64..900, height in 130i64..300, dome in proptest::option::of(0i64..60),
        reach in 10i64..300, underside in 80i64..300,
    ) {
        let of = |hundredths: i64| Length::tenthousandths(hundredths * 100);
        let profile = Profile::ALL[profile];
        let dome = dome.filter(|_| profile.is_domed_outside()).map(of);
        let band = Band { profile: Some(profile), width: Some(of(width)), height: Some(of(height)), dome, ..Band::default() };
        let off = off_once_saved(band, head(of(reach), of(underside))).unwrap_or_default();
        prop_assert_eq!(off, Length::ZERO);
    }
}

/// This dome falls by 0.00996 mm over the reach. Rounded to 0.01, it made of 1.29996 mm a height of 1.3, which is held
/// off by 0.003: it takes a hundredth less, and where that is too thin no height does.
#[test]
fn a_drop_that_was_rounded_up_lifts_no_height() {
    let court = |dome| Band {
        profile: Some(Profile::Court),
        width: Some(mm(8.65)),
        height: Some(mm(1.69)),
        dome: Some(mm(dome)),
        ..Band::default()
    };
    assert_eq!(off_once_saved(court(0.1), head(mm(2.96), mm(1.49))), None, "1.29 mm is too thin");
    assert_eq!(off_once_saved(court(0.1), head(mm(2.96), mm(1.5))), Some(Length::ZERO));
}

/// The example of the audit: 6 x 1.8 D without a dome of its own, a head of 0.8 at 1.5.
#[test]
fn a_lowered_band_keeps_the_dome_it_was_worked_out_with() {
    let band = Band { width: Some(mm(6.0)), height: Some(mm(1.8)), profile: Some(Profile::D), ..Band::default() };
    let section = section_of(&band).unwrap();
    assert_eq!(
        lowered(WHO, &band, Some(&section), mm(1.67)),
        [
            Write::set(Field::Band(WHO, BandField::Height), Value::Length(mm(1.67))),
            Write::set(Field::Band(WHO, BandField::Dome), Value::Length(mm(0.72))),
        ]
    );
    // One that was chosen is there already; a flat band has none.
    assert_eq!(lowered(WHO, &Band { dome: Some(mm(0.3)), ..band }, Some(&section), mm(1.67)).len(), 1);
    let flat = Band { profile: Some(Profile::Flat), ..band };
    assert_eq!(lowered(WHO, &flat, section_of(&flat).as_ref(), mm(1.3)).len(), 1);
}

#[test]
fn a_dome_is_known_for_the_band_it_was_chosen_for() {
    let band = Band {
        width: Some(mm(6.0)),
        height: Some(mm(1.8)),
        profile: Some(Profile::Court),
        dome: Some(mm(0.3)),
        relief: Some(mm(0.2)),
        ..Band::default()
    };
    let platinum = Band { metal: alloys::by_code("platinum-950"), dome: None, relief: None, ..band };
    assert_eq!(known_for(&band, &platinum), (Some(mm(0.3)), Some(mm(0.2))));
    for other in [
        Band { width: Some(mm(5.0)), ..platinum },
        Band { height: Some(mm(1.7)), ..platinum },
        Band { profile: Some(Profile::D), ..platinum },
    ] {
        assert_eq!(known_for(&band, &other), (None, None));
        let section = section_of(&other).unwrap();
        assert!(words::bench::arcs(&other, &section).unwrap().starts_with("Usual dome "));
    }
    let chosen = words::bench::arcs(&band, &section_of(&band).unwrap());
    assert_eq!(chosen.as_deref(), Some("Dome 0.3 mm, edge relief 0.2 mm"));
}
