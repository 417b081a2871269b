//! Gauges put right, and constants from what fitted before: against numpy.

use super::*;
use bandwright::words::{fit as say, gauges};

fn pairs(text: &str) -> impl Iterator<Item = Vec<f64>> {
    text.split(' ').filter(|one| !one.is_empty()).map(|one| one.split(':').map(figure).collect())
}

#[test]
fn a_gauge_is_put_right_as_numpy_fits_it() {
    let rows = rows("fit-calibrated.csv");
    assert_eq!(rows.len(), 30);
    for row in rows {
        let points: Vec<CalibrationPoint> =
            pairs(&row[0]).map(|pair| CalibrationPoint { says: round(pair[0]), is: round(pair[1]) }).collect();
        let found = calibrate(&points).expect("there are points");
        let (offset, slope) = (figure(&row[1]), figure(&row[2]));
        near("offset", found.offset.mm(), offset, 0.0001);
        near("over ten mm", found.over_ten_mm().mm(), slope * 10.0, 0.0001);
        let centre = points.iter().map(|point| point.says.mm()).sum::<f64>() / points.len() as f64;
        for (point, (left, residual)) in points.iter().zip(found.residuals.iter().zip(row[3].split(' '))) {
            near("residual", left.mm(), figure(residual), 0.0002);
            near("off", found.off_at(point.says).mm(), offset + slope * (point.says.mm() - centre), 0.0002);
        }
        let ends = [points.first(), points.last()].map(|point| offset + slope * (point.unwrap().says.mm() - centre));
        let worst = ends[0].abs().max(ends[1].abs());
        assert_eq!(found.beyond_quarter.is_some(), worst > 0.3125, "{}", row[0]);
        assert_eq!(found.off_at(round(30.0)), found.off_at(points[0].says), "beyond the ends as at the end");
    }
    assert_eq!(calibrate(&[]), None);
    let one = CalibrationPoint { says: round(54.0), is: round(54.4) };
    assert_eq!(calibrate(&[one]).unwrap().off_at(round(70.0)), mm(0.4), "one point: the offset alone");
}

/// One bad ring in a set: the line hides it, and it is named all the same.
#[test]
fn one_bad_ring_of_a_set_is_named() {
    let found = |pairs: &[(f64, f64)]| {
        let points: Vec<CalibrationPoint> =
            pairs.iter().map(|(says, is)| CalibrationPoint { says: round(*says), is: round(*is) }).collect();
        let found = calibrate(&points).unwrap();
        let odd: Vec<String> = found.odd.iter().map(|(at, off)| gauges::odd(*at, *off, false)).collect();
        (odd, gauges::residuals(&points, &found.residuals), found.beyond_quarter.is_some())
    };
    let (odd, left, beyond) = found(&[(50.0, 50.0), (54.0, 54.9), (58.0, 58.0)]);
    assert_eq!(odd, ["The 54 mm ring is +0.90: replace it, or do not read with it."]);
    assert_eq!(left, "Left over, in mm: at 50 −0.30, at 54 +0.60, at 58 −0.30.");
    assert!(!beyond, "by the line alone nothing is off by a quarter size");
    // Off by itself though it lies within a quarter size of the line.
    assert_eq!(found(&[(50.0, 50.0), (54.0, 54.35), (58.0, 58.0)]).0.len(), 1);
    // A set that is off alike has no odd ring: the line puts it right, and says so.
    let (odd, _, beyond) = found(&[(50.0, 50.5), (54.0, 54.5), (58.0, 58.5)]);
    assert!(odd.is_empty() && beyond);
}

#[test]
fn a_gauge_that_is_off_shifts_the_reading() {
    let found = ordered(|inputs| {
        inputs.band.width = mm(3.0);
        inputs.reading.gauge_off = mm(0.4);
    });
    near("the gauge is larger than it says", found.alone.exact.mm(), 54.4, 0.0);
}

#[test]
fn constants_are_learned_as_numpy_learns_them() {
    let rows = rows("fit-learned.csv");
    assert_eq!(rows.len(), 40);
    let mut scored = 0;
    for row in rows {
        let bands: Vec<WornBand> = pairs(&row[0])
            .map(|it| WornBand { apart: mm(it[0]), room: mm(it[1]), took: mm(it[2]), u: mm(it[3]) })
            .collect();
        let found = learn(&bands);
        assert_eq!(found.bands, bands.len());
        let estimates = [found.width, found.bore, found.offset];
        for (at, estimate) in estimates.iter().enumerate() {
            near(&format!("constant {at} of {}", row[0]), estimate.value.mm(), figure(&row[1 + at]), 0.0001);
            near(&format!("its error of {}", row[0]), estimate.sd.mm(), figure(&row[4 + at]), 0.0001);
        }
        assert_eq!(found.score.is_some(), !row[7].is_empty());
        if let Some(score) = found.score {
            near("score", score.learned.mm(), figure(&row[7]), 0.0001);
            near("score of the customary", score.customary.mm(), figure(&row[8]), 0.0001);
            scored += 1;
        }
    }
    assert!(scored > 15);
}

/// What a band that fitted says: worked by hand. A 6 mm flat band read as 54.0 on a 3 mm gauge with cold hands.
#[test]
fn a_band_that_has_been_worn() {
    let inputs = with(|inputs| {
        inputs.reading.hands = Hands::Cold;
        inputs.constants.offset = mm(0.2);
    });
    let found = worn_band(&inputs, Worn::Alone, round(55.0)).unwrap().expect("nothing is capped");
    assert_eq!((found.apart, found.room, found.took), (mm(3.0), Length::ZERO, mm(0.5)));
    // sqrt(0.35^2 + 0.3^2 + 0.4^2 + 0.625^2 / 12)
    near("u", found.u.mm(), 0.6364, 0.0002);
    let none = |change: fn(&mut Inputs)| worn_band(&with(change), Worn::Alone, round(55.0)).unwrap();
    assert_eq!(none(|inputs| inputs.joint = Some(round(58.0))), None, "the joint decided");
    assert_eq!(none(|inputs| inputs.reading.gauge.width = mm(12.0)), None, "the cap decided");
    assert_eq!(none(|inputs| inputs.overrules.set(Term::Width, Some(mm(1.0)))), None, "the jeweller decided");
    assert!(worn_band(&with(|inputs| inputs.band.width = mm(0.1)), Worn::Alone, round(55.0)).is_err());
}

/// scipy integrates the arc itself; s / 3 is its mean to within a hundredth of a millimetre round the inside.
#[test]
fn room_of_a_dome_by_integration() {
    let rows = rows("fit-room-integrated.csv");
    assert_eq!(rows.len(), 47);
    for row in rows {
        let relief = edge_relief(mm(figure(&row[0])));
        near(&format!("relief at {}", row[0]), relief.mm(), figure(&row[1]), 0.003);
        near(&format!("room at {}", row[0]), bore_room(relief).mm(), figure(&row[2]), 0.01);
    }
    assert!(!say::term(Term::Bore).is_empty());
}
