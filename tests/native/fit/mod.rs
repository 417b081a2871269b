//! From a reading to the order size: other people's figures, the sign of each term, the promises, the sentences.

mod joints;
mod learned;
mod promises;
mod readings;
mod sentences;
mod terms;

use crate::shared::{mm, rows};
use bandwright::trade::band::Bore;
use bandwright::trade::fit::*;
use bandwright::trade::measure::{Circumference, Length};
use chrono::NaiveDate;

fn round(mm: f64) -> Circumference {
    Circumference::from_mm(mm)
}

fn day(of_may: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(2027, 5, of_may).expect("a day of May")
}

const HALF_LETTERS: f64 = 0.625;

/// A 3 mm flat ring set, normal hands, base read as 54.0; a flat band of 6 mm worn alone.
fn plain() -> Inputs {
    let gauge = Gauge {
        kind: GaugeKind::RingSet,
        width: mm(3.0),
        bore: Bore::Flat,
        relief: None,
        step: mm(HALF_LETTERS),
        own_error: Length::ZERO,
    };
    Inputs {
        reading: Reading {
            as_read: round(54.0),
            gauge,
            read_at: ReadAt::LowerEdge,
            hands: Hands::Normal,
            place: Place::Base,
            beside: vec![],
            sits: None,
            gauge_off: Length::ZERO,
            day: day(1),
        },
        others: vec![],
        overrules: Overrules::default(),
        band: Band { width: mm(6.0), bore: Bore::Flat, relief: None },
        neighbours: vec![],
        first_ring: false,
        finger_changing: false,
        joint: None,
        joint_width: None,
        no_beads: None,
        constants: Constants::default(),
        grid: Grid { origin: round(37.5), step: mm(HALF_LETTERS) },
    }
}

fn with(change: impl FnOnce(&mut Inputs)) -> Inputs {
    let mut inputs = plain();
    change(&mut inputs);
    inputs
}

fn ordered(change: impl FnOnce(&mut Inputs)) -> Order {
    order(&with(change)).expect("within the ranges")
}

/// The rows of a reference file: no comments, no heading, fields split at commas.
fn figure(field: &str) -> f64 {
    field.parse().expect("a figure")
}

fn near(what: &str, found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance + 1e-9, "{what}: {found}, expected {expected} ± {tolerance}");
}

fn domed(width: f64, relief: Option<f64>) -> Band {
    Band { width: mm(width), bore: Bore::Domed, relief: relief.map(mm) }
}
