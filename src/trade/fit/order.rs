//! The order size: the size to make, the range it may lie in, and how it came about.

use super::constants::*;
use super::grid::Grid;
use super::joint::{self, JointFinding, NoBeads};
use super::limits::{FitError, check};
use super::reading::{Hands, Reading};
use super::shifts::{Shift, ShiftKind, base_shifts, felt_width};
use crate::trade::band::Bore;
use crate::trade::measure::{Circumference, Length, Standing};

/// The inside of the band that is to be made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Band {
    pub width: Length,
    pub bore: Bore,
    /// The edge relief of a domed bore where it is known; otherwise it follows from the width.
    pub relief: Option<Length>,
}

/// Everything an order size is worked out from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Inputs {
    pub reading: Reading,
    pub band: Band,
    /// The widths of the rings worn beside the band now, pressed tight; none that are only planned.
    pub neighbours: Vec<Length>,
    /// The wearer has not worn a ring before: said, and nothing shifted for it.
    pub first_ring: bool,
    /// The finger is changing for the time being.
    pub finger_changing: bool,
    /// The smallest gauge that passes the joint with a firm twist, taken in the band's width.
    pub joint: Option<Circumference>,
    /// Why the band takes no beads, if it takes none.
    pub no_beads: Option<NoBeads>,
    pub constants: Constants,
    /// The steps that the bench makes.
    pub grid: Grid,
}

/// Where the band is worn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Worn {
    Alone,
    InStack,
}

/// What to order, worn alone and worn with its neighbours.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Order {
    pub as_read: Circumference,
    /// Equal to `alone` where there are no neighbours.
    pub in_stack: Answer,
    pub alone: Answer,
    pub measure_again: Vec<MeasureAgain>,
    pub first_ring: bool,
}

/// One answer with its parts: `as_read` and the shifts add up to `exact`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    pub shifts: Vec<Shift>,
    /// Before it is put on the grid.
    pub exact: Circumference,
    /// How sure it is, one standard deviation.
    pub u: Length,
    /// The range that eight answers in ten lie in, cut off at the joint.
    pub low: Circumference,
    pub high: Circumference,
    /// The size to make: a step of the grid, the preferred one of a tie, never below the joint.
    pub size: Circumference,
    /// Both sizes where the exact answer lies half-way between them.
    pub tie: Option<Tie>,
    /// Every step of the grid within the range, and the size to make.
    pub in_range: Vec<Circumference>,
    pub joint: Option<JointFinding>,
}

/// Two sizes that are as near as each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tie {
    pub smaller: Circumference,
    pub larger: Circumference,
    /// The larger for a flat bore of 5 mm and over, otherwise the smaller.
    pub prefer_larger: bool,
}

/// Why the finger ought to be measured again.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MeasureAgain {
    /// The gauge is over 3 mm narrower or wider than the band, rings beside each counting half.
    GaugeUnlike {
        worn: Worn,
        band: Length,
        gauge: Length,
    },
    HandsNotNormal(Hands),
    FingerChanging,
}

/// From one reading to the size to order.
///
/// C = reading + width + bore + hands, and never less than the joint; the range is C +/- 1.28 u with
/// u^2 = max(0.35, step / sqrt 12)^2 + 0.3^2 + own error^2 + the squares of the shifts' own. Millimetres of
/// circumference; inputs within [`super::Quantity::range`]. Source: common practice, figure by figure in
/// [`super::constants`].
///
/// ```
/// use bandwright::trade::{band::Bore, fit::*, measure::{Circumference, Length}};
/// let mm = Length::from_mm;
/// let gauge = Gauge {
///     kind: GaugeKind::RingSet, width: mm(3.0), bore: Bore::Flat, relief: None, step: mm(0.625), own_error: mm(0.0),
/// };
/// let reading = Reading {
///     as_read: Circumference::from_mm(54.0), gauge, read_at: ReadAt::LowerEdge,
///     hands: Hands::Normal, place: Place::Base, beside: vec![],
/// };
/// let order = order(&Inputs {
///     reading, band: Band { width: mm(6.0), bore: Bore::Flat, relief: None }, neighbours: vec![],
///     first_ring: false, finger_changing: false, joint: None, no_beads: None, constants: Constants::default(),
///     grid: Grid { origin: Circumference::from_mm(37.5), step: mm(0.625) },
/// }).unwrap();
/// assert_eq!(order.alone.exact, Circumference::from_mm(54.75));
/// ```
pub fn order(inputs: &Inputs) -> Result<Order, FitError> {
    check(inputs)?;
    Ok(Order {
        as_read: inputs.reading.as_read,
        in_stack: answer(inputs, &inputs.neighbours),
        alone: answer(inputs, &[]),
        measure_again: measure_again(inputs),
        first_ring: inputs.first_ring,
    })
}

/// Eight in ten of a normal distribution lie within so many standard deviations.
const EIGHT_IN_TEN: f64 = 1.28;

fn answer(inputs: &Inputs, neighbours: &[Length]) -> Answer {
    let mut shifts = base_shifts(inputs, neighbours);
    let wanted = Circumference(inputs.reading.as_read.0 + shifts.iter().map(|shift| shift.amount).sum());
    let u = uncertainty(inputs, &shifts);
    let joint = inputs.joint;
    if let Some(passes_at) = joint.filter(|joint| *joint > wanted) {
        let kind = ShiftKind::Joint { passes_at };
        let amount = passes_at.0 - wanted.0;
        shifts.push(Shift { kind, amount, sd: Length::ZERO, standing: Standing::Published });
    }
    let at_least = |at: Circumference| joint.map_or(at, |joint| at.max(joint));
    let reach = u * EIGHT_IN_TEN;
    let (low, high) = (at_least(Circumference(wanted.0 - reach)), at_least(Circumference(wanted.0 + reach)));

    let (size_for_base, tie) = on_grid(inputs, wanted);
    let size = joint.map_or(size_for_base, |joint| size_for_base.max(inputs.grid.above(joint)));
    let mut in_range = inputs.grid.within(low, high);
    if let Err(place) = in_range.binary_search(&size) {
        in_range.insert(place, size);
    }
    Answer {
        shifts,
        exact: at_least(wanted),
        u,
        low,
        high,
        size,
        tie: tie.filter(|tie| joint.is_none_or(|joint| tie.smaller >= joint)),
        in_range,
        joint: joint.map(|joint| joint::finding(joint, wanted, size_for_base, size, inputs.no_beads)),
    }
}

/// The step to make for a circumference, and the tie if it is one.
fn on_grid(inputs: &Inputs, wanted: Circumference) -> (Circumference, Option<Tie>) {
    let (smaller, larger) = (inputs.grid.below(wanted), inputs.grid.above(wanted));
    let Some(twice_past_half) = inputs.grid.twice_past_half(wanted) else { return (wanted, None) };
    if twice_past_half.abs().half() <= HALF_WAY.value {
        let prefer_larger = inputs.band.bore == Bore::Flat && inputs.band.width >= WIDE_FLAT.value;
        let size = if prefer_larger { larger } else { smaller };
        return (size, Some(Tie { smaller, larger, prefer_larger }));
    }
    (if twice_past_half > Length::ZERO { larger } else { smaller }, None)
}

fn uncertainty(inputs: &Inputs, shifts: &[Shift]) -> Length {
    let gauge = &inputs.reading.gauge;
    let reading = READING_SD.value.mm().max(gauge.step.mm() / 12f64.sqrt());
    let parts = [reading, DAY_SD.value.mm(), gauge.own_error.mm()];
    let squares = parts.into_iter().chain(shifts.iter().map(|shift| shift.sd.mm())).map(|part| part * part);
    Length::from_mm(squares.sum::<f64>().sqrt())
}

fn measure_again(inputs: &Inputs) -> Vec<MeasureAgain> {
    let gauge = felt_width(inputs.reading.gauge.width, &inputs.reading.beside);
    let unlike = |worn, neighbours: &[Length]| {
        let band = felt_width(inputs.band.width, neighbours);
        ((band - gauge).abs() > APART_MOST.value).then_some(MeasureAgain::GaugeUnlike { worn, band, gauge })
    };
    let mut reasons = Vec::new();
    if !inputs.neighbours.is_empty() {
        reasons.extend(unlike(Worn::InStack, &inputs.neighbours));
    }
    reasons.extend(unlike(Worn::Alone, &[]));
    match inputs.reading.hands {
        Hands::Normal => {}
        hands @ (Hands::Cold | Hands::Warm) => reasons.push(MeasureAgain::HandsNotNormal(hands)),
    }
    if inputs.finger_changing {
        reasons.push(MeasureAgain::FingerChanging);
    }
    reasons
}
