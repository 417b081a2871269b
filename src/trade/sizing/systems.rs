//! The table of size systems: rows with their source, no branches.

use super::size::Step;
use crate::trade::measure::Standing;

/// A way of writing ring sizes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum System {
    /// Letters: United Kingdom, Ireland, Australia, New Zealand, South Africa.
    Uk,
    /// Numbers: United States, Canada, Mexico.
    Us,
    /// The ISO number: the inside circumference in millimetres.
    Iso,
    /// Japan's custom scale (JCS).
    Japan,
    /// Italy, Spain, Switzerland.
    Italy,
    /// The inside diameter in millimetres, as Germany and the Netherlands may write it.
    Diameter,
    /// The inside circumference in millimetres, as Germany and the Netherlands may write it.
    Circumference,
}

impl System {
    /// Every system, in the order in which they are listed.
    pub const ALL: [System; ROWS.len()] =
        [System::Uk, System::Us, System::Iso, System::Japan, System::Italy, System::Diameter, System::Circumference];

    /// The code that records keep; it never changes.
    pub fn code(self) -> &'static str {
        self.row().code
    }

    /// The system with this code, if there is one.
    pub fn from_code(code: &str) -> Option<System> {
        System::ALL.into_iter().find(|system| system.code() == code)
    }

    /// How well the scale is founded.
    pub fn standing(self) -> Standing {
        self.row().standing
    }

    /// Whether it is a plain length in millimetres, which any value fits exactly.
    pub fn is_millimetres(self) -> bool {
        matches!(self, System::Diameter | System::Circumference)
    }

    /// The step that is used when this one is asked for: never finer than the system has.
    pub fn step(self, asked: Step) -> Step {
        asked.max(self.row().finest)
    }

    pub(super) fn row(self) -> &'static Row {
        // The assertion below the table holds at compile time: every system has its row at its own place.
        &ROWS[self as usize]
    }
}

/// What a scale counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Counts {
    Circumference,
    Diameter,
}

/// A straight scale: size `at` (in quarters) measures `measures`, and `over` quarters further it measures `rise` more;
/// both lengths in ten-thousandths of a millimetre. `first` is the first size there is, by name or by the accepted
/// circumferences; none is finer than `finest`.
pub(super) struct Row {
    pub system: System,
    pub code: &'static str,
    pub counts: Counts,
    pub at: i64,
    pub measures: i64,
    pub rise: i64,
    pub over: i64,
    pub first: i32,
    pub finest: Step,
    pub standing: Standing,
}

pub(super) const ROWS: [Row; 7] = [
    Row {
        system: System::Uk,
        code: "uk",
        counts: Counts::Circumference,
        at: 0, // A
        measures: 37_5000,
        rise: 1_2500,
        over: 4,
        first: 0, // nothing is called smaller than A
        finest: Step::Quarter,
        // BS 6820:1987 by way of encyclopaedias; Rowlett, How Many? A Dictionary of Units: C = 37.5 + 1.25 i
        standing: Standing::Published,
    },
    Row {
        system: System::Us,
        code: "us",
        counts: Counts::Diameter,
        at: 0,
        measures: 11_6332, // 0.458 in
        rise: 8128,        // 0.032 in
        over: 4,
        first: 0,
        finest: Step::Quarter,
        // no standard; encyclopaedias: diameter in inches = 0.458 + 0.032 n
        standing: Standing::CommonPractice,
    },
    Row {
        system: System::Iso,
        code: "iso",
        counts: Counts::Circumference,
        at: 0,
        measures: 0,
        rise: 1_0000,
        over: 4,
        first: 144,         // 36 mm
        finest: Step::Half, // the standard counts whole millimetres; halves are common practice
        // ISO 8653:2016
        standing: Standing::Published,
    },
    Row {
        system: System::Japan,
        code: "japan",
        counts: Counts::Diameter,
        at: 4, // size 1
        measures: 13_0000,
        rise: 1_0000, // three sizes to a millimetre
        over: 12,
        first: 4,
        finest: Step::Half, // whole numbers; halves from memory
        // JCS custom scale: d = 13 + (n - 1)/3 mm; not JIS S 4700, which is ISO 8653
        standing: Standing::CommonPractice,
    },
    Row {
        system: System::Italy,
        code: "italy",
        counts: Counts::Circumference,
        at: 0,
        measures: 40_0000,
        rise: 1_0000,
        over: 4,
        first: 0,
        finest: Step::Quarter,
        // encyclopaedias: C - 40 mm
        standing: Standing::CommonPractice,
    },
    Row {
        system: System::Diameter,
        code: "diameter",
        counts: Counts::Diameter,
        at: 0,
        measures: 0,
        rise: 1_0000,
        over: 4,
        first: 46, // 11.5 mm, 36.1 mm round
        finest: Step::Quarter,
        // d = C / pi, C as in ISO 8653:2016
        standing: Standing::Derived,
    },
    Row {
        system: System::Circumference,
        code: "circumference",
        counts: Counts::Circumference,
        at: 0,
        measures: 0,
        rise: 1_0000,
        over: 4,
        first: 144, // 36 mm
        finest: Step::Quarter,
        // ISO 8653:2016
        standing: Standing::Published,
    },
];

const _: () = {
    let mut place = 0;
    while place < ROWS.len() {
        assert!(ROWS[place].system as usize == place && System::ALL[place] as usize == place);
        place += 1;
    }
    assert!(System::Circumference as usize + 1 == ROWS.len());
};
