//! Several readings of one finger: against numpy, and case by case.

use super::*;
use bandwright::trade::measure::{Percent, Standing};
use bandwright::words;

/// A reading on a flat gauge of 3 mm with normal hands, 4 May.
fn read(mm_round: f64) -> Reading {
    Reading { as_read: round(mm_round), ..plain().reading }
}

fn together(readings: &[Reading]) -> Combined {
    combine(&readings.iter().collect::<Vec<_>>(), &Constants::default()).expect("there are readings")
}

/// Readings as numpy was given them: `day:size:gauge width:step:own error:hands or sits`.
fn listed(text: &str) -> Vec<Reading> {
    let one = |text: &str| {
        let parts: Vec<&str> = text.split(':').collect();
        let mut reading = read(figure(parts[1]));
        reading.day = day(1 + parts[0].parse::<u32>().expect("a day"));
        reading.gauge.width = mm(figure(parts[2]));
        reading.gauge.step = mm(figure(parts[3]));
        reading.gauge.own_error = mm(figure(parts[4]));
        match parts[5] {
            "cold" => reading.hands = Hands::Cold,
            "warm" => reading.hands = Hands::Warm,
            "normal" => {}
            "tight" => reading.sits = Some(Sits::Tight),
            "right" => reading.sits = Some(Sits::Right),
            "spins" => reading.sits = Some(Sits::Spins),
            "summer" => reading.sits = Some(Sits::SticksInSummer),
            other => panic!("{other}"),
        }
        reading
    };
    text.split(' ').map(one).collect()
}

#[test]
fn readings_come_together_as_numpy_has_them() {
    let rows = rows("fit-combined.csv");
    assert_eq!(rows.len(), 60);
    for row in rows {
        let readings = listed(&row[0]);
        let found = together(&readings);
        near(&format!("mean of {}", row[0]), found.plain.mm(), figure(&row[1]), 0.0002);
        near(&format!("u of {}", row[0]), found.u.mm(), figure(&row[2]), 0.0002);
        for (part, share) in found.parts.iter().zip(row[3].split(' ')) {
            near(&format!("share in {}", row[0]), f64::from(part.share.0), figure(share), 0.51);
        }

        // The order size rests on the same readings: a flat band of 6 mm takes 0.75 mm more than their mean on 3 mm.
        let order = ordered(|inputs| {
            inputs.reading = readings[0].clone();
            inputs.others = readings[1..].to_vec();
        });
        near(&format!("order from {}", row[0]), order.alone.exact.mm(), figure(&row[1]) + 0.75, 0.0005);
        near("u of the readings", order.u_readings.mm(), figure(&row[2]), 0.0002);
        assert_eq!(order.combined.is_some(), readings.len() > 1);
        let sum: Length = order.alone.shifts.iter().map(|shift| shift.amount).sum();
        assert_eq!(order.as_read.0 + sum, order.alone.exact.0);
    }
}

#[test]
fn one_that_stands_apart_is_pointed_out_and_counts() {
    let outliers = |all: &[f64]| -> Vec<bool> {
        let readings: Vec<Reading> = all.iter().map(|at| read(*at)).collect();
        together(&readings).parts.iter().map(|part| part.outlier).collect()
    };
    assert_eq!(outliers(&[54.0, 54.4, 53.75, 58.0]), [false, false, false, true]);
    // within 3.5 times what one reading is off by (0.35 mm) of the others nobody stands apart, however alike those are
    assert_eq!(outliers(&[54.0, 54.0, 54.0, 55.2]), [false; 4]);
    assert_eq!(outliers(&[54.0, 54.0, 54.0, 55.3]), [false, false, false, true]);
    // two readings alone: nobody can say which
    assert_eq!(outliers(&[54.0, 58.0]), [false, false]);
    // where all are far from each other, none stands apart
    assert_eq!(outliers(&[50.0, 53.0, 57.0]), [false; 3]);
    let with = together(&[read(54.0), read(54.0), read(54.0), read(58.0)]);
    assert_eq!(with.plain, round(55.0), "it counts all the same");
    assert_eq!(with.parts[3].share, Percent(25));
}

/// Iglewicz and Hoaglin (1993), the modified z-score; the data set of their worked example as it is printed in
/// software documentation of that rule, from memory: of 2.1, 2.6, 2.4, 2.5, 2.3, 2.1, 2.3, 2.6, 8.2, 8.3 the last two stand apart.
/// Ten millimetres a unit and fifty more, so that they are sizes.
#[test]
fn outliers_of_the_published_rule() {
    let data = [2.1, 2.6, 2.4, 2.5, 2.3, 2.1, 2.3, 2.6, 8.2, 8.3];
    let readings: Vec<Reading> = data.iter().map(|x| read(30.0 + 5.0 * x)).collect();
    let found: Vec<bool> = together(&readings).parts.iter().map(|part| part.outlier).collect();
    assert_eq!(found, [false, false, false, false, false, false, false, false, true, true]);
}

#[test]
fn readings_that_contradict_each_other_are_asked_about() {
    let again = |all: [f64; 2]| {
        let found = ordered(|inputs| {
            inputs.reading = read(all[0]);
            inputs.others = vec![read(all[1])];
        });
        found.measure_again.iter().map(words::fit::measure_again).collect::<Vec<_>>()
    };
    assert!(again([54.0, 56.5]).is_empty(), "two UK letters are 2.5 mm");
    assert_eq!(again([54.0, 56.6]), ["Measure again: two readings are 2.6 mm apart, more than two UK letters."]);
}

/// 53.0 on Monday and 55.4 on Friday: 1.2 mm from their mean either way, whose variance is so 1.2^2, and half of the
/// 0.3^2 that the hands of a day may be off. Taken on one day their spread, 2.4 / sqrt 2, says as much, and the day and
/// its hands come to it once: who measures again on another day is not surer than who asked for it.
#[test]
fn days_that_disagree_make_nothing_surer() {
    let u = |readings: &[(u32, f64)]| {
        let all: Vec<Reading> = readings.iter().map(|(at, size)| Reading { day: day(*at), ..read(*size) }).collect();
        together(&all).u.mm()
    };
    near("two days apart", u(&[(3, 53.0), (7, 55.4)]), (1.44f64 + 0.045).sqrt(), 0.0001);
    near("one day apart", u(&[(3, 53.0), (3, 55.4)]), (1.44f64 + 0.18).sqrt(), 0.0001);
    // Days that agree are as sure as they were: 0.35^2 + 0.3^2 + 0.3^2, halved.
    near("two days alike", u(&[(3, 54.0), (7, 54.2)]), (0.3025f64 / 2.0).sqrt(), 0.0001);
    // The order's range is as wide as that.
    let found = ordered(|inputs| {
        inputs.reading = Reading { day: day(3), ..read(53.0) };
        inputs.others = vec![Reading { day: day(7), ..read(55.4) }];
    });
    near("the order", found.u_readings.mm(), (1.44f64 + 0.045).sqrt(), 0.0001);
    assert!((found.alone.high.0 - found.alone.low.0).mm() > 2.0 * 1.28 * 1.2);
}

/// A ring already worn: by how it sits, half a UK letter either way; nothing for the hands.
#[test]
fn a_ring_already_worn() {
    let sits = |sits| {
        let found = ordered(|inputs| {
            inputs.reading.sits = Some(sits);
            inputs.reading.hands = Hands::Cold;
            inputs.band.width = mm(3.0);
        });
        assert!(
            found.measure_again.is_empty() && !found.alone.shifts.iter().any(|s| matches!(s.kind, ShiftKind::Hands(_)))
        );
        found.alone.exact.mm()
    };
    near("tight", sits(Sits::Tight), 54.625, 0.0);
    near("right", sits(Sits::Right), 54.0, 0.0);
    near("spins", sits(Sits::Spins), 53.375, 0.0);
    near("summer", sits(Sits::SticksInSummer), 54.3125, 0.0);
}

#[test]
fn cold_hands_do_not_matter_beside_a_normal_reading() {
    let found = ordered(|inputs| {
        inputs.reading.hands = Hands::Cold;
        inputs.others = vec![Reading { day: day(20), ..read(54.6) }];
    });
    assert!(found.measure_again.is_empty());
    let found = ordered(|inputs| inputs.reading.hands = Hands::Cold);
    assert_eq!(found.measure_again, [MeasureAgain::HandsNotNormal(Hands::Cold)]);
}

#[test]
fn every_term_can_be_overruled_and_both_are_kept() {
    let all = |inputs: &mut Inputs| {
        inputs.reading.gauge_off = mm(0.2);
        inputs.reading.gauge.kind = GaugeKind::Stick { taper: constants::STICK_TAPER.value };
        inputs.reading.read_at = ReadAt::Centre;
        inputs.constants.offset = mm(0.1);
        inputs.others = vec![Reading { sits: Some(Sits::Tight), ..inputs.reading.clone() }];
        inputs.joint = Some(round(60.0));
    };
    let by_rule = ordered(all);
    let terms: Vec<Term> = by_rule.alone.shifts.iter().filter_map(|shift| shift.kind.term()).collect();
    assert_eq!(terms, Term::ALL);
    for term in Term::ALL {
        let mine = ordered(|inputs| {
            all(inputs);
            inputs.overrules.set(term, Some(mm(-0.375)));
        });
        let of = |order: &Order| *order.alone.shifts.iter().find(|shift| shift.kind.term() == Some(term)).unwrap();
        let (before, after) = (of(&by_rule), of(&mine));
        if term == Term::Joint {
            assert_eq!(after.amount, mm(-0.375));
            assert!(matches!(mine.alone.joint, Some(JointFinding::Overruled { .. })) && mine.alone.size < round(60.0));
        } else {
            assert_eq!((after.amount, after.worked_out, after.standing), (mm(-0.375), before.amount, Standing::Yours));
        }
        let sum: Length = mine.alone.shifts.iter().map(|shift| shift.amount).sum();
        assert_eq!(
            mine.as_read.0 + sum,
            if term == Term::Joint { mine.alone.exact.0 + sum_below(&mine) } else { mine.alone.exact.0 }
        );
    }
}

/// What the jeweller's joint takes the size below what the base wants: it is never made smaller than that.
fn sum_below(order: &Order) -> Length {
    let sum: Length = order.alone.shifts.iter().map(|shift| shift.amount).sum();
    order.as_read.0 + sum - order.alone.exact.0
}

#[test]
fn one_millimetre_wider() {
    let said =
        |change: fn(&mut Inputs)| words::fit::wider(&wider(&with(change), Worn::Alone).expect("it can be wider"));
    assert_eq!(said(|i| i.reading.as_read = round(53.8)), "1 mm wider: +0.25 mm, one step up.");
    assert_eq!(said(|_| ()), "1 mm wider: +0.25 mm, the same size.");
    assert_eq!(wider(&with(|i| i.band.width = mm(19.5)), Worn::Alone), None);
}
