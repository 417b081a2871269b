//! Several readings of the same place of the same finger: what they come to together, and which of them stands apart.
//!
//! Weights never depend on the band: a wider one can never come out smaller by them. A day whose readings
//! contradict each other counts for little. Nothing is dropped in silence: a reading that stands apart is pointed
//! out, and only the jeweller leaves it out; it stays in the list.

use super::constants::*;
use super::reading::Reading;
use super::shifts::{felt_width, gauge_room_mm, put_right};
use crate::trade::arrange::in_order;
use crate::trade::measure::{Circumference, Length, Percent};

/// What several readings come to, each put right for its gauge, for where it was read, and for the hands or for how
/// the ring sits.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Combined {
    /// As a flat gauge of 3 mm would have read with normal hands.
    pub plain: Circumference,
    /// How sure it is, one standard deviation.
    pub u: Length,
    /// In the order in which they were given.
    pub parts: Vec<Part>,
    /// The smallest and the largest, where they are more than two UK letters apart.
    pub apart: Option<(Circumference, Circumference)>,
}

/// One reading among several.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Part {
    /// As a flat gauge of 3 mm would have read it with normal hands: so that readings with unlike gauges compare.
    pub plain: Circumference,
    /// How much of the whole it is.
    pub share: Percent,
    /// It stands apart from the others. It counts all the same until somebody leaves it out.
    pub outlier: bool,
}

/// What some readings come to together.
///
/// Those of one day: their mean m, with u^2 = max(s, 0.35, step / sqrt 12)^2 / n + 0.3^2 + hands^2, s their spread.
/// Days, and each ring already worn: weighted by 1 / u^2. G of them that disagree by more than that make the mean less
/// sure: its variance, hands apart, is never less than sum share (m - mean)^2 / (G - 1). The gauges' own errors are not
/// averaged away. Millimetres of circumference; none for no readings. Source: weighted mean with its internal and its
/// external error as in textbooks of errors (Bevington and Robinson, Data Reduction and Error Analysis, chapter 4, and
/// R. T. Birge, Physical Review 40, 1932, both cited from memory; numpy agrees, tests/native/fit); the figures are common
/// practice.
///
/// A reading stands apart if, of three or more, it is farther from their median than 3.5 times their scale: MAD / 0.6745,
/// and never less than what one reading is off by. Source: Iglewicz and Hoaglin, How to Detect and Handle Outliers
/// (1993), as printed in the NIST/SEMATECH e-Handbook 1.3.5.17, both cited from memory; the least scale is a house rule.
pub fn combine(readings: &[&Reading], constants: &Constants) -> Option<Combined> {
    if readings.is_empty() {
        return None;
    }
    let plain: Vec<f64> = readings.iter().map(|reading| plain_mm(reading, constants)).collect();
    let weights = weights(readings, constants);
    let mean = plain.iter().zip(&weights.each).map(|(at, weight)| at * weight).sum();
    let u = (weights.variance + weights.hands * weights.hands + gauges(readings, &weights.each)).sqrt();
    let (middle, scale) = (median(&plain), scale(&plain, readings));
    let part = |at: f64, weight: f64| Part {
        plain: Circumference::from_mm(at),
        share: Percent((weight * 100.0).round() as u16),
        outlier: plain.len() >= 3 && (at - middle).abs() > 3.5 * scale,
    };
    let low = plain.iter().copied().fold(f64::INFINITY, f64::min);
    let high = plain.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let ends = (Circumference::from_mm(low), Circumference::from_mm(high));
    Some(Combined {
        plain: Circumference::from_mm(mean),
        u: Length::from_mm(u),
        parts: plain.iter().zip(&weights.each).map(|(at, weight)| part(*at, *weight)).collect(),
        apart: (ends.1.0 - ends.0.0 > READINGS_APART.value).then_some(ends),
    })
}

/// What each reading weighs, and how sure their mean is.
pub(super) struct Weights {
    /// They add up to one.
    pub each: Vec<f64>,
    /// Of the mean, without the hands, the gauges' own errors and what is common to all.
    pub variance: f64,
    /// The standard deviation for the hands, or for how rings sit.
    pub hands: f64,
}

/// The weights do not depend on the band that is to be made: a wider one can never be made smaller by them.
pub(super) fn weights(readings: &[&Reading], constants: &Constants) -> Weights {
    let mut groups: Vec<Group> = Vec::new();
    for (place, reading) in readings.iter().enumerate() {
        let same = |group: &&mut Group| group.day.is_some() && group.day == day_of(reading);
        match groups.iter_mut().find(same) {
            Some(group) => group.members.push(place),
            None => groups.push(Group { day: day_of(reading), members: vec![place] }),
        }
    }
    let plain: Vec<f64> = readings.iter().map(|reading| plain_mm(reading, constants)).collect();
    let found: Vec<(f64, f64)> = groups.iter().map(|group| group.variances(readings, &plain, constants)).collect();
    let whole: f64 = found.iter().map(|(own, hands)| 1.0 / (own + hands)).sum();
    let mut weights = Weights { each: vec![0.0; readings.len()], variance: 0.0, hands: 0.0 };
    let mut hands_squared = 0.0;
    for (group, (own, hands)) in groups.iter().zip(found) {
        let share = 1.0 / ((own + hands) * whole);
        weights.variance += share * share * own;
        hands_squared += share * share * hands;
        for member in &group.members {
            weights.each[*member] = share / group.members.len() as f64;
        }
    }
    weights.variance = weights.variance.max(between(&groups, &plain, &weights.each));
    weights.hands = hands_squared.sqrt();
    weights
}

/// The variance of the mean by how far the groups lie from it, each with its share; nothing for a single one.
fn between(groups: &[Group], plain: &[f64], weights: &[f64]) -> f64 {
    let mean: f64 = plain.iter().zip(weights).map(|(at, weight)| at * weight).sum();
    let far = |group: &Group| {
        let share: f64 = group.members.iter().map(|member| weights[*member]).sum();
        share * (group.mean(plain) - mean).powi(2)
    };
    let others = groups.len().saturating_sub(1);
    if others == 0 { 0.0 } else { groups.iter().map(far).sum::<f64>() / others as f64 }
}

/// The variance of the gauges' own errors: that of one gauge is the same in all of its readings.
pub(super) fn gauges(readings: &[&Reading], weights: &[f64]) -> f64 {
    let mut sum = 0.0;
    for (place, reading) in readings.iter().enumerate() {
        let same = |other: &&&Reading| other.gauge == reading.gauge;
        if readings[..place].iter().any(|other| same(&other)) {
            continue;
        }
        let alike = readings.iter().zip(weights).filter(|(other, _)| same(other));
        let weight: f64 = alike.map(|(_, weight)| weight).sum();
        sum += (weight * reading.gauge.own_error.mm()).powi(2);
    }
    sum
}

/// The readings of one day, or one ring that is worn through all of them.
struct Group {
    day: Option<chrono::NaiveDate>,
    members: Vec<usize>,
}

impl Group {
    /// Of the mean: without the hands, and of the hands alone, which are the same for all of a day.
    fn variances(&self, readings: &[&Reading], plain: &[f64], constants: &Constants) -> (f64, f64) {
        let n = self.members.len() as f64;
        let mean = self.mean(plain);
        let squares: f64 = self.members.iter().map(|member| (plain[*member] - mean).powi(2)).sum();
        let spread = if n > 1.0 { (squares / (n - 1.0)).sqrt() } else { 0.0 };
        let one = self.members.iter().map(|member| reading_sd_mm(readings[*member])).fold(spread, f64::max);
        let day = self.day.map_or(0.0, |_| DAY_SD.value.mm());
        let hands = self.members.iter().map(|member| put_right(readings[*member], constants).hands_sd).sum::<f64>() / n;
        // Nothing is known for certain: a spread of nought in what the jeweller has set would weigh without end.
        ((one * one / n + day * day).max(1e-6), hands * hands)
    }

    fn mean(&self, plain: &[f64]) -> f64 {
        self.members.iter().map(|member| plain[*member]).sum::<f64>() / self.members.len() as f64
    }
}

fn day_of(reading: &Reading) -> Option<chrono::NaiveDate> {
    reading.sits.is_none().then_some(reading.day)
}

/// What one reading is off by.
fn reading_sd_mm(reading: &Reading) -> f64 {
    READING_SD.value.mm().max(reading.gauge.step.mm() / 12f64.sqrt())
}

/// A reading as a flat gauge of 3 mm would have read it with normal hands.
fn plain_mm(reading: &Reading, constants: &Constants) -> f64 {
    let gauge = felt_width(reading.gauge.width, &reading.beside).mm();
    let by_width = constants.width_per_mm.factor() * (PLAIN_WIDTH.value.mm() - gauge);
    let by_bore = constants.bore_per_mm.factor() * gauge_room_mm(reading);
    reading.as_read.mm() + put_right(reading, constants).all() + by_width + by_bore
}

fn median(of: &[f64]) -> f64 {
    // In whole ten-thousandths, which can be put in order.
    let ordered = in_order(of.iter().map(|at| Length::from_mm(*at)), |at| *at);
    match (ordered.get(ordered.len().saturating_sub(1) / 2), ordered.get(ordered.len() / 2)) {
        (Some(below), Some(above)) => (below.mm() + above.mm()) / 2.0,
        _ => 0.0,
    }
}

fn scale(plain: &[f64], readings: &[&Reading]) -> f64 {
    let middle = median(plain);
    let off: Vec<f64> = plain.iter().map(|at| (at - middle).abs()).collect();
    let least = readings.iter().map(|reading| reading_sd_mm(reading)).fold(0.0, f64::max);
    (median(&off) / 0.6745).max(least)
}
