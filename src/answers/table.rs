//! The table of sizes: every size of one scale with what it is called on the others.

use crate::forms::table::TableTyped;
use crate::trade::measure::Circumference;
use crate::trade::sizing::{self, Conversion, Size, Step, System};

/// The scales of the columns, in their order.
const COLUMNS: [System; 6] = [System::Uk, System::Us, System::Iso, System::Japan, System::Italy, System::Diameter];

/// The table, with its first column's scale.
#[derive(Clone, Debug, PartialEq)]
pub struct SizeTable {
    pub first: System,
    /// The scales of the other columns.
    pub others: Vec<System>,
    pub rows: Vec<Row>,
}

/// A size, how far it is round the inside, and the nearest on each other scale, in quarters where it has them.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    pub size: Size,
    pub at: Circumference,
    pub others: Vec<Conversion>,
}

/// The table that was chosen.
pub fn answer(typed: &TableTyped) -> SizeTable {
    let first = typed.first;
    let others: Vec<System> = COLUMNS.into_iter().filter(|system| *system != first).collect();
    let row = |size: Size| {
        let at = size.circumference();
        let found = others.iter().map(|system| sizing::convert(*system, at, Step::Quarter));
        Row { size, at, others: found.collect() }
    };
    let rows = sizing::all(first, typed.step).map(row).collect();
    SizeTable { first, others, rows }
}
