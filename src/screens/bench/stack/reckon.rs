//! The inputs of the stack, read, and what `trade` makes of them.

use leptos::prelude::*;

use super::super::sheet::{Complaints, judge, read_needed, read_optional};
use super::fields::{AFTER_WORN, NOW, ROWS};
use crate::app::form::Form;
use crate::app::state::App;
use crate::trade::entry;
use crate::trade::limits::Limit;
use crate::trade::measure::Length;
use crate::trade::stack::{self, RingOnFinger, ShoulderMatch, Stack, StackError, StackInputs, Stretch, When};
use crate::words::pictures::RingState;
use crate::words::{bench as say, entry as say_entry};

/// What was typed, read, and what it comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Reckoned {
    pub complaints: Complaints,
    /// From the web outwards, the band among them.
    pub rings: Vec<Ring>,
    pub gap: Option<Length>,
    pub measured: Option<Length>,
    pub stack: Option<Stack>,
    pub error: Option<StackError>,
    pub shoulders: Vec<Shoulder>,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ring {
    pub name: String,
    /// At three and nine o'clock.
    pub width: Length,
    pub top: Option<Length>,
    pub state: RingState,
}

/// The band against a ring that lies next to it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shoulder {
    pub name: String,
    pub band: Length,
    pub shoulders: Length,
    pub top: Option<Length>,
    pub found: ShoulderMatch,
}

pub fn reckon(app: App, form: Form) -> Reckoned {
    let text = |key| form.text(key).get();
    let mut complaints = Complaints::new();
    let house = app.practice(|practice| practice.house());
    let band = judge(&mut complaints, "band", read_needed(&text("band"), Limit::BandWidth));
    let gap = judge(&mut complaints, "gap", read_needed(&text("gap"), Limit::GapBetweenRings));
    let measured = judge(&mut complaints, "free", read_optional(&text("free"), Limit::FreeLength)).flatten();

    let mut rings = Vec::new();
    for row in &ROWS {
        let name = entry::read_text(&text(row.name), Limit::LineText)
            .map_err(|error| say_entry::text_error_named(error, say::RING_NAME_NOUN));
        let name = judge(&mut complaints, row.name, name).flatten();
        let top = judge(&mut complaints, row.top, read_optional(&text(row.top), Limit::RingWidth)).flatten();
        let typed = text(row.width);
        // A row with a name and no width is a ring whose width is missing; an empty row is no ring.
        if typed.trim().is_empty() && name.is_none() && top.is_none() {
            continue;
        }
        let width = judge(&mut complaints, row.width, read_needed(&typed, Limit::RingWidth));
        let state = if text(row.when) == NOW { RingState::Worn } else { RingState::Planned };
        if let Some(width) = width {
            rings.push(Ring { name: name.unwrap_or_else(|| say::ring_by_its_state(state)), width, top, state });
        }
    }
    if let Some(width) = band {
        let place = if text("place") == AFTER_WORN {
            rings.iter().rposition(|ring| ring.state == RingState::Worn).map_or(0, |last| last + 1)
        } else {
            0
        };
        rings.insert(place, Ring { name: say::BAND.to_owned(), width, top: None, state: RingState::Wanted });
    }

    let inputs = gap.filter(|_| complaints.is_empty()).map(|gap| {
        let on_finger = |ring: &Ring| RingOnFinger {
            width: ring.width,
            when: if ring.state == RingState::Planned { When::Later } else { When::Now },
        };
        StackInputs { rings: rings.iter().map(on_finger).collect(), measured, house: stack::House { gap, ..house } }
    });
    let (stack, error) = match inputs.as_ref().map(stack::stack) {
        Some(Ok(stack)) => (Some(stack), None),
        Some(Err(error)) => (None, Some(error)),
        None => (None, None),
    };
    let shoulders = shoulders(&rings);
    Reckoned { complaints, rings, gap, measured, stack, error, shoulders }
}

/// The band against each ring that lies next to it.
fn shoulders(rings: &[Ring]) -> Vec<Shoulder> {
    let Some(at) = rings.iter().position(|ring| ring.state == RingState::Wanted) else { return Vec::new() };
    let band = rings[at].width;
    let beside = [at.checked_sub(1), Some(at + 1)].into_iter().flatten().filter_map(|at| rings.get(at));
    let one = |ring: &Ring| {
        let found = stack::shoulder_match(band, ring.width, ring.top.unwrap_or(ring.width)).ok()?;
        Some(Shoulder { name: ring.name.clone(), band, shoulders: ring.width, top: ring.top, found })
    };
    beside.filter_map(one).collect()
}

impl Reckoned {
    /// With every ring that is to come.
    pub fn later(&self) -> Option<&Stretch> {
        self.stack.as_ref().map(|stack| &stack.later)
    }
}
