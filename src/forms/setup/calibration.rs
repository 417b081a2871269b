//! The calibration of a gauge: what it says at a few of its sizes, and what it is there.

use crate::forms::complaint::Complaint;
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::forms::write;
use crate::trade::fit::CalibrationPoint;
use crate::trade::measure::Circumference;
use crate::trade::sizing::System;

/// The fields of a size: what was typed, and which reading of it is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SizeKeys {
    pub size: Key,
    pub which: Key,
}

/// The fields of one point: what the gauge says, and what it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PointKeys {
    pub says: SizeKeys,
    pub is: SizeKeys,
}

macro_rules! point {
    ($n:literal) => {
        PointKeys {
            says: SizeKeys {
                size: Key::new(concat!("cal", $n, "-says")),
                which: Key::new(concat!("cal", $n, "-says-as")),
            },
            is: SizeKeys { size: Key::new(concat!("cal", $n, "-is")), which: Key::new(concat!("cal", $n, "-is-as")) },
        }
    };
}

/// So many sizes may be measured.
pub const POINTS: [PointKeys; 5] = [point!(1), point!(2), point!(3), point!(4), point!(5)];

pub(super) fn start(known: &[CalibrationPoint], mut texts: Texts) -> Texts {
    for (at, keys) in POINTS.iter().enumerate() {
        let point = known.get(at);
        texts.set(keys.says.size, point.map(|point| write::circumference(point.says)).unwrap_or_default());
        texts.set(keys.is.size, point.map(|point| write::circumference(point.is)).unwrap_or_default());
        texts = texts.with_blank([keys.says.which, keys.is.which]);
    }
    texts
}

/// Reads the points. Of the two sizes at a point both are there, or neither.
pub(super) fn read(form: &mut Reader, first: System) -> Option<Vec<CalibrationPoint>> {
    let mut points = Some(Vec::new());
    for PointKeys { says, is } in POINTS {
        match (form.is_blank(says.size), form.is_blank(is.size)) {
            (true, true) => continue,
            (false, false) => {
                let (says, is) = (read_one(form, says, first), read_one(form, is, first));
                let point = says.zip(is).map(|(says, is)| CalibrationPoint { says, is });
                points = points.zip(point).map(|(points, point)| points.into_iter().chain([point]).collect());
            }
            (says_is_missing, _) => {
                let (missing, typed) = if says_is_missing { (says, is) } else { (is, says) };
                points = None;
                // What is wrong with the other one is said first.
                if read_one(form, typed, first).is_some() {
                    form.complain(missing.size, Complaint::BothOrNeither);
                }
            }
        }
    }
    points
}

/// The points as far as they can be read for certain.
pub fn points_so_far(texts: &Texts, first: System) -> Vec<CalibrationPoint> {
    let mut form = Reader::new(texts);
    let mut point = |PointKeys { says, is }| {
        let (says, is) = (read_one(&mut form, says, first), read_one(&mut form, is, first));
        says.zip(is).map(|(says, is)| CalibrationPoint { says, is })
    };
    POINTS.into_iter().filter_map(&mut point).collect()
}

fn read_one(form: &mut Reader, keys: SizeKeys, first: System) -> Option<Circumference> {
    form.meant_size(keys.size, keys.which, first).map(|size| size.circumference())
}
