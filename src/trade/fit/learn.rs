//! What fitted before: the constants as the bands that have been worn say, with the customary ones to begin from.
//!
//! What is learned is not used by itself. It says how sure it is, and how well it foretells bands that it has not
//! seen; whether five bands are enough is for the jeweller to say.

use super::constants::*;
use super::limits::FitError;
use super::order::{Inputs, Worn, order};
use super::terms::{ShiftKind, Term};
use crate::trade::measure::{Circumference, Length};

/// A band that has been worn, as far as it says something about width and bore.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WornBand {
    /// How much wider than the gauge it counts.
    pub apart: Length,
    /// How much more room its bore gives than the gauge's.
    pub room: Length,
    /// What it took beyond the reading: the size that fitted, less the reading put right for gauge and hands.
    pub took: Length,
    /// How sure that is, one standard deviation.
    pub u: Length,
}

/// A figure with one standard deviation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Estimate {
    pub value: Length,
    pub sd: Length,
}

/// The constants as the bands say.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Learned {
    pub bands: usize,
    pub width: Estimate,
    pub bore: Estimate,
    pub offset: Estimate,
    /// None of fewer than three bands.
    pub score: Option<Score>,
}

/// How far off each band's size was on the average (root of the mean square), foretold without it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Score {
    pub learned: Length,
    pub customary: Length,
}

/// What a band that fitted at this size says. None where the joint or a cap decided, or an amount of the jeweller's own.
pub fn worn_band(inputs: &Inputs, worn: Worn, fitted: Circumference) -> Result<Option<WornBand>, FitError> {
    let found = order(inputs)?;
    let answer = match worn {
        Worn::Alone => found.alone,
        Worn::InStack => found.in_stack,
    };
    let (mut apart, mut room, mut base) = (None, None, found.as_read.0);
    if [Term::Width, Term::Bore].into_iter().any(|term| inputs.overrules.of(term).is_some()) {
        return Ok(None);
    }
    for shift in &answer.shifts {
        match shift.kind {
            ShiftKind::Width { apart: by, at_most: None, .. } => apart = Some(by),
            ShiftKind::Bore { band_relief, gauge_relief, at_most: None, .. } => {
                room = Some(super::bore::bore_room(band_relief) - super::bore::bore_room(gauge_relief));
            }
            ShiftKind::Width { .. } | ShiftKind::Bore { .. } | ShiftKind::Level { .. } | ShiftKind::Joint { .. } => {
                return Ok(None);
            }
            ShiftKind::Offset => {}
            ShiftKind::Gauge | ShiftKind::Stick { .. } | ShiftKind::Hands(_) | ShiftKind::Sits(_) => {
                base = base + shift.worked_out;
            }
            ShiftKind::Several { term, .. } => match term {
                Term::Gauge | Term::Stick | Term::Hands | Term::Sits => base = base + shift.worked_out,
                Term::Width | Term::Bore | Term::Offset | Term::Joint => {}
            },
        }
    }
    let step = inputs.grid.step.mm() / 12f64.sqrt();
    let u = Length::from_mm((found.u_readings.mm().powi(2) + step * step).sqrt());
    Ok(apart.zip(room).map(|(apart, room)| WornBand { apart, room, took: fitted.0 - base, u }))
}

/// The constants from the bands that have been worn, by Bayesian linear regression with the customary ones as prior.
///
/// took = k apart - eta room + c + noise of u; (k, eta, c) ~ normal around (0.25, 0.8, 0) with (0.10, 0.3, 0.3). The
/// posterior has the precision P = P0 + sum(x x^T / u^2) and the mean P^-1 (P0 m0 + sum(x took / u^2)), x = (apart,
/// -room, 1). Millimetres. Source: conjugate normal regression with known noise, as in every textbook of it (Gelman et
/// al., Bayesian Data Analysis, chapter 14, cited from memory; numpy agrees, tests/native/fit); the prior is common
/// practice, that of c a house rule.
pub fn learn(bands: &[WornBand]) -> Learned {
    let (mean, covariance) = posterior(bands.iter());
    let estimate = |at: usize| Estimate {
        value: Length::from_mm(mean[at]),
        sd: Length::from_mm(covariance[at][at].max(0.0).sqrt()),
    };
    Learned {
        bands: bands.len(),
        width: estimate(0),
        bore: estimate(1),
        offset: estimate(2),
        score: (bands.len() >= 3).then(|| score(bands)),
    }
}

/// Each band is foretold from all the others, and by the customary constants.
fn score(bands: &[WornBand]) -> Score {
    let root = |squares: f64| Length::from_mm((squares / bands.len() as f64).sqrt());
    let off = |band: &WornBand, mean: [f64; 3]| {
        let foretold: f64 = row(band).iter().zip(mean).map(|(x, b)| x * b).sum();
        (band.took.mm() - foretold).powi(2)
    };
    let others = |place: usize| bands.iter().enumerate().filter(move |(at, _)| *at != place).map(|(_, band)| band);
    let learned = bands.iter().enumerate().map(|(place, band)| off(band, posterior(others(place)).0)).sum();
    let customary = bands.iter().map(|band| off(band, PRIOR.map(|(mean, _)| mean))).sum();
    Score { learned: root(learned), customary: root(customary) }
}

/// Mean and standard deviation of k, eta and c before any band has been worn.
const PRIOR: [(f64, f64); 3] = [
    (mm(WIDTH_PER_MM.value.0), mm(WIDTH_PER_MM_SD.value.0)),
    (mm(BORE_PER_MM.value.0), mm(BORE_PER_MM_SD.value.0)),
    (mm(OFFSET.value), mm(OFFSET_PRIOR_SD.value)),
];

const fn mm(length: Length) -> f64 {
    length.in_tenthousandths() as f64 / 10_000.0
}

fn row(band: &WornBand) -> [f64; 3] {
    [band.apart.mm(), -band.room.mm(), 1.0]
}

fn posterior<'a>(bands: impl Iterator<Item = &'a WornBand>) -> ([f64; 3], [[f64; 3]; 3]) {
    let mut precision = [[0.0; 3]; 3];
    let mut pulled = [0.0; 3];
    for (at, (mean, sd)) in PRIOR.into_iter().enumerate() {
        precision[at][at] = 1.0 / (sd * sd);
        pulled[at] = mean / (sd * sd);
    }
    for band in bands {
        let (x, weight) = (row(band), 1.0 / band.u.mm().max(0.01).powi(2));
        for i in 0..3 {
            pulled[i] += x[i] * band.took.mm() * weight;
            for j in 0..3 {
                precision[i][j] += x[i] * x[j] * weight;
            }
        }
    }
    let covariance = inverse(precision);
    let mean = covariance.map(|line| line.iter().zip(pulled).map(|(a, b)| a * b).sum());
    (mean, covariance)
}

/// The inverse of a symmetric matrix by its cofactors; the prior keeps it far from having none.
fn inverse(m: [[f64; 3]; 3]) -> [[f64; 3]; 3] {
    let cofactor = |i: usize, j: usize| {
        let (a, b, c, d) = ((i + 1) % 3, (i + 2) % 3, (j + 1) % 3, (j + 2) % 3);
        m[a][c] * m[b][d] - m[a][d] * m[b][c]
    };
    let determinant: f64 = (0..3).map(|j| m[0][j] * cofactor(0, j)).sum();
    std::array::from_fn(|i| std::array::from_fn(|j| cofactor(j, i) / determinant))
}
