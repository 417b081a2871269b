//! Rings worn together: totals, verdicts, what is left, the shoulder match, the sentences.

use crate::shared::mm;
use bandwright::trade::band::Profile;
use bandwright::trade::measure::{Length, Percent, Standing};
use bandwright::trade::stack::*;
use bandwright::words;
use proptest::prelude::*;

fn rings(now: &[f64], later: &[f64]) -> StackInputs {
    let ring = |when| move |width: &f64| RingOnFinger { width: mm(*width), when };
    let rings = now.iter().map(ring(When::Now)).chain(later.iter().map(ring(When::Later))).collect();
    StackInputs { rings, measured: None, house: House::default() }
}

/// The example of the design: an engagement ring of 2.6, a band of 3.0, an eternity ring of 2.5 to come.
fn example() -> StackInputs {
    rings(&[2.6, 3.0], &[2.5])
}

#[test]
fn totals_now_and_later() {
    let found = stack(&example()).unwrap();
    assert_eq!((found.now.total, found.now.left), (mm(5.8), mm(18.2)));
    assert_eq!((found.later.total, found.later.left), (mm(8.5), mm(15.5)));
    assert_eq!((found.now.share, found.later.share), (Permille(242), Permille(354)));
    assert_eq!((found.roomy_to, found.full_to), (mm(8.4), mm(12.0)));
    assert_eq!((found.free_length, found.free_standing), (mm(24.0), Standing::FromMemory));
    let laid: Vec<_> = found.later.positions.iter().map(|at| (at.ring, at.from, at.to)).collect();
    assert_eq!(laid, [(0, mm(0.0), mm(2.6)), (1, mm(2.8), mm(5.8)), (2, mm(6.0), mm(8.5))]);
}

#[test]
fn a_planned_ring_may_lie_between_two_others() {
    let mut inputs = example();
    inputs.rings.swap(1, 2);
    let found = stack(&inputs).unwrap();
    let at = |stretch: &Stretch| stretch.positions.iter().map(|at| (at.ring, at.from)).collect::<Vec<_>>();
    assert_eq!(at(&found.now), [(0, mm(0.0)), (2, mm(2.8))]);
    assert_eq!(at(&found.later), [(0, mm(0.0)), (1, mm(2.8)), (2, mm(5.5))]);
}

#[test]
fn verdicts() {
    let check = |now: &[f64], expected, sentence: &str, further: &str| {
        let found = stack(&rings(now, &[])).unwrap();
        assert_eq!(found.now.verdict, expected);
        assert_eq!(found.now, found.later);
        assert_eq!(words::stack::summary(&found, &found.now), sentence);
        assert_eq!(words::stack::further(&found.now), further);
    };
    check(
        &[2.6, 3.0],
        Verdict::Roomy,
        "Roomy: 5.8 of 24 mm, 24.2 %; roomy ends at 8.4 mm.",
        "A further ring of up to 2.4 mm leaves it roomy, of up to 6 mm full.",
    );
    check(
        &[8.4],
        Verdict::Roomy,
        "Roomy: 8.4 of 24 mm, 35.0 %; roomy ends at 8.4 mm.",
        "A further ring of up to 3.4 mm leaves it full; any ring makes it less than roomy.",
    );
    check(
        &[2.6, 3.0, 2.5],
        Verdict::Full,
        "Full: 8.5 of 24 mm, 35.4 %; roomy ends at 8.4 mm, full at 12 mm.",
        "A further ring of up to 3.3 mm leaves it full; any ring makes it less than roomy.",
    );
    check(
        &[12.1],
        Verdict::Crowded,
        "Crowded: 12.1 of 24 mm, 50.4 %; full ends at 12 mm.",
        "Any further ring makes it crowded.",
    );
    check(
        &[20.0, 6.0],
        Verdict::DoesNotFit,
        "Does not fit: 26.2 of 24 mm, 109.2 %; 2.2 mm too long for the finger.",
        "Any further ring makes it crowded.",
    );
}

#[test]
fn a_measured_finger_takes_the_place_of_the_usual_one() {
    let found = stack(&StackInputs { measured: Some(mm(20.0)), ..example() }).unwrap();
    assert_eq!((found.free_length, found.free_standing), (mm(20.0), Standing::Yours));
    assert_eq!((found.now.verdict, found.later.verdict), (Verdict::Roomy, Verdict::Full));
    // 24 mm is the jeweller's own figure where it was measured.
    assert_eq!(stack(&StackInputs { measured: Some(mm(24.0)), ..example() }).unwrap().free_standing, Standing::Yours);
}

#[test]
fn only_planned_rings() {
    let found = stack(&rings(&[], &[3.0])).unwrap();
    assert_eq!((found.now.total, found.now.left, found.now.widest_roomy), (mm(0.0), mm(24.0), Some(mm(8.4))));
    assert_eq!(found.later.total, mm(3.0));
}

#[test]
fn a_band_is_matched_at_the_shoulders() {
    let check = |band: f64, top: f64, shoulders: f64, back: f64, expected: &str| {
        let ring = Taper { top: mm(top), shoulders: mm(shoulders), back: mm(back) };
        assert_eq!(words::stack::shoulder_match(&shoulder_match(mm(band), &ring).unwrap()), expected);
    };
    check(
        3.0,
        1.8,
        2.6,
        2.6,
        "The band is 0.4 mm wider than the ring at three and nine o’clock, where it counts. At the top it is 1.2 mm \
         wider than it. Matched to the top instead, a band would be 1.8 mm wide and 0.8 mm narrower than the ring at \
         three and nine.",
    );
    check(
        2.0,
        2.5,
        2.0,
        1.8,
        "The band is as wide as the ring at three and nine o’clock, where it counts, and at the back it is 0.2 mm wider \
         than it. At the top it is 0.5 mm narrower than it. Matched to the top instead, a band would be 2.5 mm wide and \
         0.5 mm wider than the ring at three and nine.",
    );
    check(
        2.0,
        2.0,
        2.0,
        2.0,
        "The band is as wide as the ring at three and nine o’clock, where it counts. The ring is as wide at the top, so \
         that either place gives the same.",
    );
}

/// A shank filed straight from 1.8 at the top to 2.6 at three o'clock and 2.0 at the back.
#[test]
fn a_tapering_ring_is_as_wide_as_it_is_at_each_angle() {
    let ring = Taper { top: mm(1.8), shoulders: mm(2.6), back: mm(2.0) };
    for (angle, width) in [(0, 1.8), (30, 2.0667), (45, 2.2), (90, 2.6), (120, 2.4), (180, 2.0), (900, 2.0)] {
        assert_eq!(ring.at(FromTop(angle)), mm(width), "{angle}");
    }
}

#[test]
fn with_each_later_ring() {
    let found = stack(&rings(&[2.6, 3.0], &[2.5, 2.0])).unwrap();
    let totals: Vec<Length> = found.steps.iter().map(|step| step.total).collect();
    assert_eq!(totals, [mm(8.5), mm(10.7)]);
    assert_eq!(found.steps.last(), Some(&found.later));
    assert_eq!(stack(&rings(&[2.6], &[])).unwrap().steps, []);
}

#[test]
fn a_profile_is_matched_or_chosen() {
    assert_eq!(profile_match(Profile::Court, Profile::Court), ProfileMatch::Calm);
    assert_eq!(profile_match(Profile::Court, Profile::Flat), ProfileMatch::Deliberate);
}

#[test]
fn what_cannot_be_worked_out() {
    let check = |change: fn(&mut StackInputs), expected: &str| {
        let mut inputs = example();
        change(&mut inputs);
        assert_eq!(words::stack::error(&stack(&inputs).unwrap_err()), expected);
    };
    check(|i| i.rings.clear(), "Enter the width of at least one ring.");
    check(|i| i.rings = vec![i.rings[0]; 9], "Enter at most 8 rings.");
    check(|i| i.rings[0].width = mm(0.0), "A ring’s width must be between 0.5 and 25 mm.");
    check(|i| i.house.gap = mm(-0.1), "The gap between two rings must be between 0 and 5 mm.");
    check(|i| i.measured = Some(mm(2.0)), "The free length of the finger must be between 5 and 60 mm.");
    check(
        |i| (i.rings[0].width, i.measured) = (mm(16.0), Some(mm(15.0))),
        "A ring must be narrower than the finger is free: 16 mm is more than 15 mm.",
    );
    check(
        |i| i.house.roomy = Percent(60),
        "Enter a share for full that is above roomy and at most 100 %: now roomy is 60 % and full is 50 %.",
    );
    let error = shoulder_match(mm(3.0), &Taper { top: mm(41.0), ..Taper::even(mm(2.6)) }).unwrap_err();
    assert_eq!(words::stack::error(&error), "The ring’s width at the top must be between 0.5 and 40 mm.");
}

fn some_stack() -> impl Strategy<Value = StackInputs> {
    let ring = (8_000i64..=200_000, any::<bool>()).prop_map(|(width, now)| RingOnFinger {
        width: Length::tenthousandths(width),
        when: if now { When::Now } else { When::Later },
    });
    let rings = proptest::collection::vec(ring, 1..=RINGS_MOST);
    (rings, proptest::option::of(200_000i64..=600_000), 0i64..=50_000).prop_map(|(rings, measured, gap)| StackInputs {
        rings,
        measured: measured.map(Length::tenthousandths),
        house: House { gap: Length::tenthousandths(gap), ..House::default() },
    })
}

proptest! {
    #[test]
    fn totals_add_up(inputs in some_stack()) {
        let found = stack(&inputs).unwrap();
        prop_assert!(found.now.total <= found.later.total);
        for stretch in [&found.now, &found.later] {
            prop_assert_eq!(stretch.total + stretch.left, found.free_length);
            let widths: Length = stretch.positions.iter().map(|at| inputs.rings[at.ring].width).sum();
            let gaps = (1..stretch.positions.len()).map(|_| inputs.house.gap).sum();
            prop_assert_eq!(widths + gaps, stretch.total);
            prop_assert!(stretch.positions.is_sorted_by(|a, b| a.to <= b.from));
        }
    }

    #[test]
    fn the_widest_further_ring_is_the_widest(inputs in some_stack()) {
        let found = stack(&inputs).unwrap();
        let with = |width: Length| {
            let mut inputs = inputs.clone();
            inputs.rings.push(RingOnFinger { width, when: When::Later });
            stack(&inputs).map(|found| found.later.verdict)
        };
        for (widest, at_most, beyond) in [
            (found.later.widest_roomy, Verdict::Roomy, Verdict::Full),
            (found.later.widest_full, Verdict::Full, Verdict::Crowded),
        ] {
            let Some(widest) = widest else { continue };
            // A ring wider than any, or one ring too many, is refused in its own right.
            if let Ok(verdict) = with(widest) {
                prop_assert_eq!(verdict, at_most);
            }
            if let Ok(verdict) = with(widest + Length::tenthousandths(1)) {
                prop_assert_eq!(verdict, beyond);
            }
        }
    }

    #[test]
    fn never_panics(
        widths in proptest::collection::vec(any::<i64>(), 0..12),
        measured in proptest::option::of(any::<i64>()),
        gap in any::<i64>(),
        free_length in any::<i64>(),
        roomy in any::<u16>(),
        full in any::<u16>(),
    ) {
        let ring = |width: &i64| RingOnFinger { width: Length::tenthousandths(*width), when: When::Now };
        let house = House {
            gap: Length::tenthousandths(gap),
            free_length: Length::tenthousandths(free_length),
            roomy: Percent(roomy),
            full: Percent(full),
            ..House::default()
        };
        let measured = measured.map(Length::tenthousandths);
        match stack(&StackInputs { rings: widths.iter().map(ring).collect(), measured, house }) {
            Ok(found) => prop_assert!(words::stack::summary(&found, &found.now).ends_with('.')),
            Err(error) => prop_assert!(words::stack::error(&error).ends_with('.')),
        }
    }
}
