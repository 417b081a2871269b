//! The order size: the size to make, the range it may lie in, and how it came about.

use super::combine::{self, Combined, combine, weights};
use super::constants::*;
use super::grid::Grid;
use super::joint::{self, JointFinding, NoBeads};
use super::limits::{FitError, check};
use super::reading::{Hands, Reading};
use super::shifts::{base_shifts, felt_width};
use super::terms::{Overrules, Shift, ShiftKind, Term};
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
    /// The newest reading of the base of the finger, or the only one.
    pub reading: Reading,
    /// Further readings of it, of the same hand and finger, that count with it.
    pub others: Vec<Reading>,
    pub band: Band,
    /// The widths of the rings worn beside the band now, pressed tight; none that are only planned.
    pub neighbours: Vec<Length>,
    /// The wearer has not worn a ring before: said, and nothing shifted for it.
    pub first_ring: bool,
    /// The finger is changing for the time being.
    pub finger_changing: bool,
    /// The smallest gauge that passes the joint with a firm twist, as read: no term for width, bore or stack.
    pub joint: Option<Circumference>,
    /// How wide that gauge was; none for one as wide as the band, as it ought to be.
    pub joint_width: Option<Length>,
    /// Why the band takes no beads, if it takes none.
    pub no_beads: Option<NoBeads>,
    pub constants: Constants,
    /// What the jeweller puts in the place of what the rules give.
    pub overrules: Overrules,
    /// The steps that the bench makes.
    pub grid: Grid,
}

impl Inputs {
    /// All readings, the newest first.
    pub fn readings(&self) -> Vec<&Reading> {
        std::iter::once(&self.reading).chain(&self.others).collect()
    }
}

/// Where the band is worn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Worn {
    Alone,
    InStack,
}

impl Worn {
    /// The other way of wearing it.
    pub fn other(self) -> Worn {
        match self {
            Worn::Alone => Worn::InStack,
            Worn::InStack => Worn::Alone,
        }
    }
}

/// What to order, worn alone and worn with its neighbours.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Order {
    /// Of several readings their mean, each by its weight, before anything is put right.
    pub as_read: Circumference,
    /// What several readings come to; none for one.
    pub combined: Option<Combined>,
    /// Equal to `alone` where there are no neighbours.
    pub in_stack: Answer,
    pub alone: Answer,
    pub measure_again: Vec<MeasureAgain>,
    pub first_ring: bool,
    /// How sure the readings themselves are, one standard deviation.
    pub u_readings: Length,
}

impl Order {
    /// Whether one of several readings stands apart from the others.
    pub fn has_outlier(&self) -> bool {
        self.combined.as_ref().is_some_and(|combined| combined.parts.iter().any(|part| part.outlier))
    }
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
    /// The same range before the joint cuts it off: what the base alone wants.
    pub base: (Circumference, Circumference),
    /// The size to make: a step of the grid, the preferred one of a tie, never below the joint unless that was overruled.
    pub size: Circumference,
    /// Both sizes where the exact answer lies half-way between them.
    pub tie: Option<Tie>,
    /// Every step of the grid within the range, and the size to make.
    pub in_range: Vec<Circumference>,
    pub joint: Option<JointFinding>,
}

impl Answer {
    /// Whether the joint leaves nothing of the range: it alone decides, and how sure the base is says nothing more.
    pub fn joint_alone(&self) -> bool {
        self.low == self.high && self.base.0 < self.base.1
    }
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
    /// The joint was tried in another width than the band's.
    JointUnlike {
        band: Length,
        gauge: Length,
    },
    /// The smallest and the largest reading contradict each other.
    ReadingsApart {
        low: Circumference,
        high: Circumference,
    },
}

impl MeasureAgain {
    /// The width of the gauge that is wanted, and of the one that was nearest to it, where another gauge is asked for.
    pub fn wanted_width(&self) -> Option<(Length, Length)> {
        match self {
            MeasureAgain::GaugeUnlike { band, gauge, .. } | MeasureAgain::JointUnlike { band, gauge } => {
                Some((*band, *gauge))
            }
            MeasureAgain::HandsNotNormal(_) | MeasureAgain::FingerChanging | MeasureAgain::ReadingsApart { .. } => None,
        }
    }
}

/// From one reading to the size to order.
///
/// C = reading + gauge + width + bore + hands, and never less than the joint unless that is overruled; the range is C +/- 1.28 u with
/// u^2 = max(0.35, step / sqrt 12)^2 + 0.3^2 + own error^2 + the squares of the shifts' own; several readings as
/// [`combine`](super::combine()) has them. Millimetres of circumference; inputs within [`super::Quantity::range`].
/// Source: common practice, figure by figure in [`super::constants`].
///
/// ```
/// use bandwright::trade::{band::Bore, fit::*, measure::{Circumference, Length}};
/// let mm = Length::from_mm;
/// let gauge = Gauge {
///     kind: GaugeKind::RingSet, width: mm(3.0), bore: Bore::Flat, relief: None, step: mm(0.625), own_error: mm(0.0),
/// };
/// let reading = Reading {
///     as_read: Circumference::from_mm(54.0), gauge, read_at: ReadAt::LowerEdge,
///     hands: Hands::Normal, place: Place::Base, beside: vec![], sits: None, gauge_off: mm(0.0), day: Default::default(),
/// };
/// let order = order(&Inputs {
///     reading, others: vec![], overrules: Overrules::default(), band: Band { width: mm(6.0), bore: Bore::Flat, relief: None }, neighbours: vec![],
///     first_ring: false, finger_changing: false, joint: None, joint_width: None, no_beads: None, constants: Constants::default(),
///     grid: Grid { origin: Circumference::from_mm(37.5), step: mm(0.625) },
/// }).unwrap();
/// assert_eq!(order.alone.exact, Circumference::from_mm(54.75));
/// ```
pub fn order(inputs: &Inputs) -> Result<Order, FitError> {
    check(inputs)?;
    let readings = inputs.readings();
    let weights = weights(&readings, &inputs.constants);
    let as_read = match readings.as_slice() {
        [only] => only.as_read,
        _ => {
            let each = readings.iter().zip(&weights.each);
            Circumference::from_mm(each.map(|(reading, weight)| reading.as_read.mm() * weight).sum())
        }
    };
    let combined = if readings.len() > 1 { combine(&readings, &inputs.constants) } else { None };
    let own = weights.variance + weights.hands.powi(2) + combine::gauges(&readings, &weights.each);
    let answer = |neighbours| answer(inputs, base_shifts(inputs, &weights.each, neighbours), as_read, own);
    Ok(Order {
        as_read,
        in_stack: answer(&inputs.neighbours),
        alone: answer(&[]),
        measure_again: measure_again(inputs, &readings, combined.as_ref()),
        combined,
        u_readings: Length::from_mm(own.sqrt()),
        first_ring: inputs.first_ring,
    })
}

/// What a wider band would take.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Wider {
    pub by: Length,
    pub more: Length,
    /// Steps of what the bench makes.
    pub steps: i64,
}

/// What a band one millimetre wider would take, everything else as it is; none where no band is so wide.
pub fn wider(inputs: &Inputs, worn: Worn) -> Option<Wider> {
    let by = Length::from_mm(1.0);
    let answer = |inputs: &Inputs| {
        let order = order(inputs).ok()?;
        Some(match worn {
            Worn::Alone => order.alone,
            Worn::InStack => order.in_stack,
        })
    };
    let mut wide = inputs.clone();
    wide.band.width = wide.band.width + by;
    let (now, then) = (answer(inputs)?, answer(&wide)?);
    let step = inputs.grid.step.in_tenthousandths().max(1);
    let steps = (then.size.0 - now.size.0).in_tenthousandths() / step;
    Some(Wider { by, more: then.exact.0 - now.exact.0, steps })
}

/// Eight in ten of a normal distribution lie within so many standard deviations.
pub(in crate::trade) const EIGHT_IN_TEN: f64 = 1.28;

/// The answer for these shifts. `own` is the variance of the readings themselves.
fn answer(inputs: &Inputs, mut shifts: Vec<Shift>, as_read: Circumference, own: f64) -> Answer {
    let wanted = Circumference(as_read.0 + shifts.iter().map(|shift| shift.amount).sum());
    let u = uncertainty(own, &shifts);
    let large_joint = inputs.joint.filter(|joint| *joint > wanted).map(|passes_at| {
        let kind = ShiftKind::Joint { passes_at, width: inputs.joint_width };
        Shift::new(kind, passes_at.0 - wanted.0, Length::ZERO, Standing::Published).overruled(&inputs.overrules)
    });
    shifts.extend(large_joint);
    // The least that is made: what the joint needs, or what the jeweller puts in its place.
    let least = match large_joint {
        Some(shift) => Some(Circumference(wanted.0 + shift.amount)),
        None => inputs.joint,
    };
    let at_least = |at: Circumference| least.map_or(at, |least| at.max(least));
    let reach = u * EIGHT_IN_TEN;
    let base = (Circumference(wanted.0 - reach), Circumference(wanted.0 + reach));
    let (low, high) = (at_least(base.0), at_least(base.1));

    let (size_for_base, tie) = on_grid(inputs, wanted);
    let size = least.map_or(size_for_base, |least| size_for_base.max(inputs.grid.above(least)));
    let mut in_range = inputs.grid.within(low, high);
    if let Err(place) = in_range.binary_search(&size) {
        in_range.insert(place, size);
    }
    Answer {
        exact: at_least(wanted),
        u,
        low,
        high,
        base,
        size,
        tie: tie.filter(|tie| least.is_none_or(|least| tie.smaller >= least)),
        in_range,
        joint: inputs.joint.map(|joint| joint::finding(joint, wanted, size_for_base, size, inputs.no_beads)),
        shifts,
    }
}

/// The step to make for a circumference, and the tie if it is one.
fn on_grid(inputs: &Inputs, wanted: Circumference) -> (Circumference, Option<Tie>) {
    let (smaller, larger) = (inputs.grid.below(wanted), inputs.grid.above(wanted));
    let Some(twice_past_half) = inputs.grid.twice_past_half(wanted) else { return (wanted, None) };
    let half_way = HALF_WAY.value.min(Length::tenthousandths(inputs.grid.step.in_tenthousandths() / 5));
    if twice_past_half.abs().half() <= half_way {
        let prefer_larger = inputs.band.bore == Bore::Flat && inputs.band.width >= WIDE_FLAT.value;
        let size = if prefer_larger { larger } else { smaller };
        return (size, Some(Tie { smaller, larger, prefer_larger }));
    }
    (if twice_past_half > Length::ZERO { larger } else { smaller }, None)
}

/// For the hands the readings have answered already.
fn uncertainty(own: f64, shifts: &[Shift]) -> Length {
    let asked = |shift: &&Shift| !matches!(shift.kind.term(), Some(Term::Hands | Term::Sits));
    let squares: f64 = shifts.iter().filter(asked).map(|shift| shift.sd.mm().powi(2)).sum();
    Length::from_mm((own + squares).sqrt())
}

fn measure_again(inputs: &Inputs, readings: &[&Reading], combined: Option<&Combined>) -> Vec<MeasureAgain> {
    let gauges: Vec<Length> = readings.iter().map(|one| felt_width(one.gauge.width, &one.beside)).collect();
    let unlike = |worn, neighbours: &[Length]| {
        let band = felt_width(inputs.band.width, neighbours);
        let gauge = gauges.iter().copied().min_by_key(|gauge| (band - *gauge).abs())?;
        ((band - gauge).abs() > APART_MOST.value).then_some(MeasureAgain::GaugeUnlike { worn, band, gauge })
    };
    let mut reasons = Vec::new();
    if !inputs.neighbours.is_empty() {
        reasons.extend(unlike(Worn::InStack, &inputs.neighbours));
    }
    reasons.extend(unlike(Worn::Alone, &[]));
    if let (Some(_), Some(gauge)) = (inputs.joint, inputs.joint_width)
        && (inputs.band.width - gauge).abs() > JOINT_APART.value
    {
        reasons.push(MeasureAgain::JointUnlike { band: inputs.band.width, gauge });
    }
    if let Some((low, high)) = combined.and_then(|combined| combined.apart) {
        reasons.push(MeasureAgain::ReadingsApart { low, high });
    }
    let normal = readings.iter().any(|one| one.sits.is_some() || one.hands == Hands::Normal);
    match inputs.reading.hands {
        hands @ (Hands::Cold | Hands::Warm) if !normal => reasons.push(MeasureAgain::HandsNotNormal(hands)),
        Hands::Cold | Hands::Normal | Hands::Warm => {}
    }
    if inputs.finger_changing {
        reasons.push(MeasureAgain::FingerChanging);
    }
    reasons
}
