//! What the tools answer, without a browser; and that every place that says a figure says the same one.

mod compared;
mod converted;
mod dates;
mod fingers;
mod gauges;
mod recorded;
mod remedies;
mod sizes;
mod stacks;

use crate::arbitrary;
use bandwright::book::change::Write;
use bandwright::book::couple::{Band, Couple, Head, Ring};
use bandwright::book::field::Field;
use bandwright::book::id::ItemId;
use bandwright::book::practice::Practice;
use bandwright::book::record::{Kind, Record};
use bandwright::book::remedy::{Remedy, Way};
use bandwright::book::value::{OwnGauge, ReadingTaken, Value};
use bandwright::book::{id::RecordId, verbs};
use bandwright::trade::band::Bore;
use bandwright::trade::entry::read_size;
use bandwright::trade::fit::{Gauge, GaugeKind, Hands, Place, ReadAt};
use bandwright::trade::measure::Length;
use bandwright::trade::sizing::System;
use bandwright::trade::wearer::{Digit, Finger, Hand, Wearer};
use chrono::NaiveDate;

const WHO: Wearer = Wearer::First;
const LEFT: Finger = Finger { hand: Hand::Left, digit: Digit::Ring };

fn mm(mm: f64) -> Length {
    Length::from_mm(mm)
}

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

fn practice() -> Record {
    Record::new(RecordId(0), Kind::Practice)
}

/// A couple's record, written to by one installation.
struct Told {
    record: Record,
    n: u64,
}

impl Told {
    fn new() -> Told {
        Told { record: arbitrary::new_couple(), n: 0 }
    }

    fn say(&mut self, writes: Vec<Write>) {
        self.n += 1;
        arbitrary::say(&mut self.record, arbitrary::OURS, self.n, writes);
    }

    fn couple(&self) -> Couple<'_> {
        Couple(&self.record)
    }

    /// A band of 2.2 mm nearest the web, a ring of 2.6 mm whose head reaches 0.6 mm over either side, and one of 2.5 mm
    /// to come beyond it: at the palm 7.7 mm with the gaps between them.
    fn with_a_head() -> Told {
        let mut told = Told::new();
        told.say(vec![Write::set(Field::Finger(WHO), Value::Finger(LEFT))]);
        let head = Head { to_web: Some(mm(0.6)), to_tip: Some(mm(0.6)), underside: Some(mm(1.5)) };
        let ring = Ring {
            name: Some("engagement ring".into()),
            shoulder_width: Some(mm(2.6)),
            place: Some(bandwright::trade::limits::Whole(1)),
            head,
            ..Ring::unknown(ItemId(3))
        };
        told.say(verbs::note_ring(WHO, ring));
        told.say(verbs::note_ring(
            WHO,
            Ring { shoulder_width: Some(mm(2.5)), planned: true, ..Ring::unknown(ItemId(4)) },
        ));
        told.say(verbs::choose_band(WHO, Band { width: Some(mm(2.2)), ..Band::default() }));
        told
    }

    fn choose(&mut self, way: Way, by: f64) {
        let remedy = Remedy { way, by: mm(by), impression: true, template: false, ring: None };
        self.say(vec![Write::set(Field::Remedy(WHO), Value::Remedy(remedy))]);
    }

    fn read(&mut self, item: u128, size: &str) {
        self.say(vec![Write::set(Field::Reading(WHO, ItemId(item)), Value::Reading(taken(size)))]);
    }
}

/// A reading on a flat gauge of 3 mm.
fn taken(size: &str) -> ReadingTaken {
    let gauge = Gauge {
        kind: GaugeKind::RingSet,
        width: mm(3.0),
        bore: Bore::Flat,
        relief: None,
        step: mm(0.625),
        own_error: Length::ZERO,
    };
    ReadingTaken {
        size: read_size(size, System::Uk).unwrap().remove(0),
        finger: LEFT,
        place: Place::Base,
        gauge: OwnGauge { name: "rings".into(), gauge, calibration: Vec::new() },
        read_at: ReadAt::LowerEdge,
        hands: Hands::Normal,
        beside: Vec::new(),
        sits: None,
        taken: day("2026-10-03"),
        at: None,
        left_out: false,
    }
}

fn read_practice<T>(read: impl FnOnce(Practice<'_>) -> T) -> T {
    read(Practice(&practice()))
}
