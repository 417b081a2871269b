//! A gauge measured against what is known: a ring of a known size, or callipers at a few of its sizes.

use super::constants::QUARTER_SIZE;
use crate::trade::measure::{Circumference, Length};

/// What the gauge says at one of its sizes, and what it really is there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct CalibrationPoint {
    pub says: Circumference,
    pub is: Circumference,
}

/// The line through what was measured.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Calibration {
    /// The middle of the sizes that were measured, and how much larger the gauge is there than it says.
    centre: Circumference,
    pub offset: Length,
    /// How much that grows for each millimetre, in millionths.
    slope_millionths: i64,
    ends: (Circumference, Circumference),
    /// What is left at each point, in the order of the points: measured less the line.
    pub residuals: Vec<Length>,
    /// Where the gauge is farthest off by the line, and how far; none if it is off by a quarter size nowhere.
    pub beyond_quarter: Option<(Circumference, Length)>,
    /// The sizes at which the gauge itself is off by more than a quarter size though the line is not, or that lie so
    /// far from the line: what each says, and by how much it is larger. Such a ring is bad whatever the others are.
    pub odd: Vec<(Circumference, Length)>,
}

/// The straight line of least squares through the points, offset and scale; of one point, or of several at one size,
/// the offset alone. None for no points.
///
/// is - says = a + b (says - mean says), b = sum((x - mean x)(y - mean y)) / sum((x - mean x)^2). Millimetres of
/// circumference. Source: least squares, as numpy.polyfit does it. Pointed out beyond a quarter of a UK letter,
/// 0.3125 mm, the line or a single size: house rule.
///
/// ```
/// use bandwright::trade::{fit::{CalibrationPoint, calibrate}, measure::{Circumference, Length}};
/// let point = |says, is| CalibrationPoint { says: Circumference::from_mm(says), is: Circumference::from_mm(is) };
/// let found = calibrate(&[point(50.0, 50.1), point(60.0, 60.3)]).unwrap();
/// assert_eq!(found.off_at(Circumference::from_mm(55.0)), Length::from_mm(0.2));
/// ```
pub fn calibrate(points: &[CalibrationPoint]) -> Option<Calibration> {
    let n = points.len() as f64;
    let mean = |of: fn(&CalibrationPoint) -> f64| points.iter().map(of).sum::<f64>() / n;
    let (x, y) = (mean(|point| point.says.mm()), mean(off_mm));
    let across: f64 = points.iter().map(|point| (point.says.mm() - x) * (off_mm(point) - y)).sum();
    let squares: f64 = points.iter().map(|point| (point.says.mm() - x).powi(2)).sum();
    let slope = if squares > 1e-9 { across / squares } else { 0.0 };
    let mut found = Calibration {
        centre: Circumference::from_mm(x),
        offset: Length::from_mm(y),
        slope_millionths: (slope * 1e6).round() as i64,
        ends: (points.iter().map(|point| point.says).min()?, points.iter().map(|point| point.says).max()?),
        residuals: Vec::new(),
        beyond_quarter: None,
        odd: Vec::new(),
    };
    found.residuals = points.iter().map(|point| point.is.0 - point.says.0 - found.off_at(point.says)).collect();
    let ends = [found.ends.0, found.ends.1].map(|at| (at, found.off_at(at)));
    let worst = ends.into_iter().max_by_key(|(_, off)| off.abs());
    let is_far = |off: Length| off.abs() > QUARTER_SIZE.value;
    found.beyond_quarter = worst.filter(|(_, off)| is_far(*off));
    let odd = |(point, left): (&CalibrationPoint, &Length)| {
        let off = point.is.0 - point.says.0;
        (is_far(*left) || is_far(off) && !is_far(found.off_at(point.says))).then_some((point.says, off))
    };
    found.odd = points.iter().zip(&found.residuals).filter_map(odd).collect();
    Some(found)
}

impl Calibration {
    /// How much larger the gauge is than it says, where it says this; beyond what was measured as at the nearest end.
    pub fn off_at(&self, says: Circumference) -> Length {
        let at = says.max(self.ends.0).min(self.ends.1);
        self.offset + (at.0 - self.centre.0) * (self.slope_millionths as f64 / 1e6)
    }

    /// How much the offset grows over ten millimetres of size.
    pub fn over_ten_mm(&self) -> Length {
        Length::from_mm(self.slope_millionths as f64 / 1e5)
    }
}

fn off_mm(point: &CalibrationPoint) -> f64 {
    (point.is.0 - point.says.0).mm()
}
