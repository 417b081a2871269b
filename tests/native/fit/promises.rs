//! What holds for any input within the ranges, and for the rest: no panic.

use super::*;
use bandwright::words;
use proptest::prelude::*;

/// The size without the levelling: what the formula as such gives.
fn as_the_formula_says(order: &Order) -> Length {
    let level = |shift: &&Shift| matches!(shift.kind, ShiftKind::Level { .. });
    order.alone.exact.0 - order.alone.shifts.iter().filter(level).map(|shift| shift.amount).sum()
}

/// Every width there is, at the corners of the constants: the size never falls, and it is the formula's own wherever
/// no wider band comes out smaller.
#[test]
fn never_falls_over_the_whole_range() {
    let widths: Vec<Length> = (0..=384).map(|i| mm(0.8) + mm(0.05) * f64::from(i)).collect();
    for (k, eta) in [(0.05, 0.2), (0.05, 1.4), (0.15, 1.1), (0.25, 0.8), (0.45, 0.2), (0.45, 1.4)] {
        for (gauge, gauge_bore) in [(3.0, Bore::Flat), (6.0, Bore::Flat), (6.0, Bore::Domed), (12.0, Bore::Flat)] {
            let orders: Vec<Order> = widths
                .iter()
                .map(|width| {
                    ordered(|inputs| {
                        inputs.reading.gauge.width = mm(gauge);
                        inputs.reading.gauge.bore = gauge_bore;
                        inputs.band = Band { width: *width, bore: Bore::Domed, relief: None };
                        inputs.constants.width_per_mm = PerMm(mm(k));
                        inputs.constants.bore_per_mm = PerMm(mm(eta));
                    })
                })
                .collect();
            let mut least_wider = Length::tenthousandths(i64::MAX);
            for order in orders.iter().rev() {
                least_wider = least_wider.min(as_the_formula_says(order));
                let off = (order.alone.exact.0 - least_wider).mm();
                // Between two swept widths the formula may dip lower: by 0.05 mm at its steepest, 0.2 a millimetre.
                assert!((-0.01..=0.0002).contains(&off), "k {k}, eta {eta}, gauge {gauge}: {off}");
            }
            assert!(orders.is_sorted_by(|a, b| a.alone.exact <= b.alone.exact && a.alone.size <= b.alone.size));
        }
    }
}

prop_compose! {
    /// Lengths in ten-thousandths, from and to in millimetres.
    fn length(from: f64, to: f64)(at in mm(from).in_tenthousandths()..=mm(to).in_tenthousandths()) -> Length {
        Length::tenthousandths(at)
    }
}

fn a_bore() -> impl Strategy<Value = (Bore, Option<Length>)> {
    let bore = prop_oneof![Just(Bore::Flat), Just(Bore::Domed)];
    (bore, proptest::option::weighted(0.2, length(0.0, 2.0)))
}

fn some_constants() -> impl Strategy<Value = Constants> {
    // Everything within two standard deviations.
    (length(0.05, 0.45), length(0.2, 1.4)).prop_map(|(k, eta)| Constants {
        width_per_mm: PerMm(k),
        bore_per_mm: PerMm(eta),
        ..Constants::default()
    })
}

fn some_gauge() -> impl Strategy<Value = Gauge> {
    (length(0.5, 20.0), a_bore(), length(0.1, 6.0), length(0.0, 2.0), proptest::option::of(length(0.0, 1.0))).prop_map(
        |(width, (bore, relief), step, own_error, taper)| Gauge {
            kind: taper.map_or(GaugeKind::RingSet, |taper| GaugeKind::Stick { taper: PerMm(taper) }),
            width,
            bore,
            relief,
            step,
            own_error,
        },
    )
}

fn some_inputs() -> impl Strategy<Value = Inputs> {
    let beside = || proptest::collection::vec(length(0.8, 20.0), 0..4);
    let reading = (
        length(30.0, 90.0),
        some_gauge(),
        prop::sample::select(&ReadAt::ALL[..]),
        prop::sample::select(&Hands::ALL[..]),
        beside(),
    )
        .prop_map(|(at, gauge, read_at, hands, beside)| Reading {
            as_read: Circumference(at),
            gauge,
            read_at,
            hands,
            place: Place::Base,
            beside,
            sits: None,
            gauge_off: Length::ZERO,
            day: day(1),
        })
        .boxed();
    let joint = proptest::option::of(length(30.0, 90.0));
    // Some of them of one day, some rings that are worn.
    let other = (reading.clone(), 1u32..4, proptest::option::weighted(0.3, prop::sample::select(&Sits::ALL[..])))
        .prop_map(|(reading, of_may, sits)| Reading { day: day(of_may), sits, ..reading });
    let others = proptest::collection::vec(other, 0..4);
    (reading, others, length(0.8, 20.0), a_bore(), beside(), joint, some_constants(), length(0.1, 6.0)).prop_map(
        |(reading, others, width, (bore, relief), neighbours, joint, constants, step)| Inputs {
            reading,
            others,
            band: Band { width, bore, relief },
            neighbours,
            joint: joint.map(Circumference),
            constants,
            grid: Grid { origin: round(37.5), step },
            ..plain()
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4000))]

    #[test]
    fn never_falls_as_the_width_grows(
        inputs in some_inputs(),
        // from one ten-thousandth to the whole range
        wider in prop_oneof![length(0.0001, 0.01), length(0.01, 0.5), length(0.5, 19.2)],
    ) {
        let width = (inputs.band.width + wider).min(mm(20.0));
        let narrow = order(&inputs).unwrap();
        let wide = order(&Inputs { band: Band { width, ..inputs.band }, ..inputs }).unwrap();
        for (narrow, wide) in [(&narrow.alone, &wide.alone), (&narrow.in_stack, &wide.in_stack)] {
            prop_assert!(wide.exact >= narrow.exact, "exact: {:?} < {:?}", wide.exact, narrow.exact);
            prop_assert!(wide.size >= narrow.size, "size: {:?} < {:?}", wide.size, narrow.size);
        }
        prop_assert!(narrow.in_stack.exact >= narrow.alone.exact);
    }

    #[test]
    fn keeps_its_promises(inputs in some_inputs()) {
        let found = order(&inputs).unwrap();
        for answer in [&found.alone, &found.in_stack] {
            let sum: Length = answer.shifts.iter().map(|shift| shift.amount).sum();
            prop_assert_eq!(found.as_read.0 + sum, answer.exact.0);
            prop_assert!(answer.low <= answer.exact && answer.exact <= answer.high);
            prop_assert!(answer.in_range.contains(&answer.size));
            prop_assert!(answer.in_range.is_sorted_by(|a, b| a < b));
            for size in &answer.in_range {
                prop_assert!((answer.low..=answer.high).contains(size) || *size == answer.size);
                prop_assert_eq!((size.0 - inputs.grid.origin.0).in_tenthousandths() % inputs.grid.step.in_tenthousandths(), 0);
            }
            prop_assert_eq!(answer.joint.is_some(), inputs.joint.is_some());
            if let Some(joint) = inputs.joint {
                prop_assert!(answer.exact >= joint && answer.size >= joint && answer.low >= joint);
                prop_assert!(answer.in_range[0] >= joint);
            } else {
                prop_assert!((answer.size.0 - answer.exact.0).abs() <= inputs.grid.step.half() + mm(0.1001));
            }
            if let Some(tie) = answer.tie {
                prop_assert_eq!(tie.larger.0 - tie.smaller.0, inputs.grid.step);
                prop_assert!(answer.size == tie.smaller || answer.size == tie.larger);
            }
            for shift in &answer.shifts {
                match shift.kind {
                    ShiftKind::Width { .. } => prop_assert!(shift.amount >= mm(-0.6)),
                    ShiftKind::Bore { .. } => prop_assert!(shift.amount.abs() <= mm(0.5001)),
                    ShiftKind::Level { .. } => prop_assert!(shift.amount < Length::ZERO),
                    ShiftKind::Joint { .. } => prop_assert!(shift.amount > Length::ZERO),
                    ShiftKind::Stick { .. }
                    | ShiftKind::Hands(_)
                    | ShiftKind::Gauge
                    | ShiftKind::Sits(_)
                    | ShiftKind::Several { .. }
                    | ShiftKind::Offset => {}
                }
            }
        }
    }

    #[test]
    fn never_panics(
        lengths in proptest::collection::vec(
            prop_oneof![any::<i64>(), Just(i64::MIN), Just(i64::MAX), -200_000i64..900_000], 20),
        inputs in some_inputs(),
        which in any::<u32>(),
    ) {
        let mut inputs = inputs;
        let set = |bit: u32, place: &mut Length| {
            if which & (1 << bit) != 0 {
                *place = Length::tenthousandths(lengths[bit as usize]);
            }
        };
        set(0, &mut inputs.reading.as_read.0);
        set(1, &mut inputs.reading.gauge.width);
        set(2, &mut inputs.reading.gauge.step);
        set(3, &mut inputs.reading.gauge.own_error);
        set(4, &mut inputs.band.width);
        set(5, &mut inputs.grid.step);
        set(6, &mut inputs.grid.origin.0);
        set(7, &mut inputs.constants.width_per_mm.0);
        set(8, &mut inputs.constants.bore_per_mm.0);
        set(9, &mut inputs.constants.cold);
        inputs.neighbours.iter_mut().for_each(|width| set(10, width));
        if let Some(joint) = &mut inputs.joint {
            set(11, &mut joint.0);
        }
        // Every answer and every refusal can be said.
        match order(&inputs) {
            Ok(found) => {
                found.in_stack.shifts.iter().for_each(|shift| assert!(!words::fit::shift_reason(&shift.kind).is_empty()));
            }
            Err(error) => assert!(words::fit::error(&error).ends_with('.')),
        }
    }
}
